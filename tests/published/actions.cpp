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

// Largest answer of a mount with 5 % damping to a half-sine: 1.65163 times its peak (computed from the formula, AC-4).
TEST_CASE("base pulse of 15 g, 11 ms on a soft mount: 1 + 1.65163 x 15 g down, and as much less the weight up")
{
    tests::Demo d = tests::demo();
    d.source->road->basis = model::Basis::base_pulse;
    d.source->road->pulse = "half-sine 15 g";
    d.source->item->natural_frequency = model::Quantity{10, "10 Hz"};
    const actions::DynamicFactor f = actions::dynamic_factor(d.layout);
    check_near_rel(f.value, 1 + 1.65163 * 15, 2e-4); // its search goes by 2 %
    CHECK(f.basis == "base pulse");
}

// Class D at 60 km/h, empty van, mount of 20 Hz with 5 % damping: 0.586 g rms; 1.0 m behind a wheelbase of 3.3 m: x1.338 (computed from
// the formula, AC-15, AC-14). A year of 15 000 km is 9e5 s. Zero crossings come between wheel hop (10 Hz) and mount (20 Hz): 9e6 to 1.8e7
// cycles, so k = (2 ln N)^0.5 + 0.5772/(2 ln N)^0.5 lies between 5.76 and 5.88.
TEST_CASE("random vibration on a class D road: 1 + (5.76 to 5.88) x 1.338 x 0.586 g down")
{
    tests::Demo d = tests::demo();
    model::Road& r = *d.source->road;
    r.basis = model::Basis::random_vibration;
    r.roughness = "D";
    r.speed = model::Quantity{60e6 / 3600, "60 km/h"};
    r.distance_per_year = model::Quantity{15000e6, "15000 km"};
    r.wheelbase = model::Quantity{3300, "3.3 m"};
    r.overhang = model::Quantity{1000, "1 m"};
    d.source->item->natural_frequency = model::Quantity{20 / 0.85, ""}; // taken 15 % lower
    const actions::DynamicFactor f = actions::dynamic_factor(d.layout);
    check_near_rel(f.value, 1 + 5.82 * 1.338 * 0.586, 0.0095); // half of that band, and the third digit of 0.586
    CHECK(f.basis == "random vibration");
}

TEST_SUITE_END();
