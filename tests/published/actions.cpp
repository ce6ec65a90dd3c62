#include "actions/cards.h"
#include "actions/load_cases.h"
#include "actions/slam.h"
#include "support/demo_layout.h"
#include "support/near.h"

#include <cmath>
#include <numbers>

using namespace thinskin;
using tests::check_near_rel;
using thinskin::tests::From;
using thinskin::tests::holds;

TEST_SUITE_BEGIN("actions");

// Figures worked from A = pi v_n (1 + e)/(2 D) outside the program: computed from the formula.
// Speeds of 1.0 to 1.5 m/s for firm closing: from memory; one case study starts from 1.2 m/s: published (read).
TEST_CASE("half-sine stop of a door (AC-1): peak for three durations and two rebounds, edge 1.2 m/s, mass at 400 of 750 mm")
{
    holds("AC-1", From::recomputed);
    struct Row { double D_ms, e, A_g; };
    constexpr Row table[] = {{6, 0, 17.09}, {11, 0, 9.32}, {20, 0, 5.13}, {6, 0.3, 22.21}, {11, 0.3, 12.12}, {20, 0.3, 6.66}};
    for (const Row& r : table) {
        CAPTURE(r.D_ms);
        const auto A = actions::half_sine_stop_g({.v_edge_mm_s = 1200, .y_mm = 400, .y_edge_mm = 750, .D_s = r.D_ms / 1000, .e = r.e});
        REQUIRE(A.has_value());
        tests::check_near_abs(*A, r.A_g, 0.005); // half of the last printed digit
    }
}

// Speed change of a half-sine 2 A D/pi: elementary; 500 m/s2 in 6 ms = 1.910 m/s is computed from the formula.
TEST_CASE("half-sine stop: a mass at the edge that is stopped in 6 ms from 1.910 m/s feels 500 m/s2")
{
    holds("AC-1", From::recomputed);
    const auto A = actions::half_sine_stop_g({.v_edge_mm_s = 1910, .y_mm = 750, .y_edge_mm = 750, .D_s = 0.006, .e = 0});
    REQUIRE(A.has_value());
    check_near_rel(*A * base::gravity_m_s2, 500, 0.0003); // four digits of 1.910
}

// Computed from the formula, outside the program: (9 + 0.35^2 + 0.5^2)^0.5.
TEST_CASE("combined road state (AC-2): 3 g down with half of 0.7 g sideways and half of 1 g fore and aft is 3.0615 g")
{
    for (const base::Card& card : actions::cards())
        if (card.id == "AC-2") {
            holds("AC-2", From::recomputed);
            check_near_rel(card.evaluate({3, 0.7, 1}).capacity, 3.0615, 2e-5); // five digits
        }
}

TEST_SUITE_END();
