// Screws, rivets, plates, wood: where two branches of a clause meet, and identities between clauses.
#include "strength/bolts.h"
#include "strength/inch_bolts.h"
#include "strength/plates.h"
#include "strength/pull_over.h"
#include "strength/rivets.h"
#include "strength/screw_combinations.h"
#include "strength/screws.h"
#include "strength/wood.h"
#include "support/near.h"

#include <random>

using namespace thinskin;
using namespace thinskin::strength;
using thinskin::tests::check_near_rel;

namespace {
constexpr double a_hair = 1e-9;
constexpr double below = 1 - a_hair, above = 1 + a_hair;
}

TEST_SUITE_BEGIN("consistency: joints of the screw clauses");

TEST_CASE("SC-1: no jump at t2/t1 = 1 and 2.5, and none on the way")
{
    for (const double ratio : {1.0, 1.7, 2.5}) {
        const auto at = [ratio](double f) { return screw_shear({4.8, 0.8, 0.8 * ratio * f, 270, 360}).capacity; };
        check_near_rel(at(above), at(below), 1e-7);
    }
}

TEST_CASE("SC-1: a thicker sheet under the head can cost strength: it turns bearing into tilting, the clause's own")
{
    // same tip sheet of 1.2 mm: 1.0 mm of weak sheet under the head bears, 1.2 mm of it lets the screw tilt
    const auto at = [](double t1) { return screw_shear({6.3, t1, 1.2, 690, 270}).capacity; };
    CHECK(at(1.2) < at(0.8));
    check_near_rel(at(1.2), at(2.4), 1e-12); // tilting knows the tip sheet only
}

TEST_CASE("SC-2: the thin-sheet factor has no jump at 1.2 and 2.0 mm and never adds strength")
{
    for (const double t : {1.2, 2.0}) {
        const auto at = [t](double f) { return screw_pull_out({4.8, t * f, 270, thin_sheet_applied}).capacity; };
        check_near_rel(at(above), at(below), 1e-7);
    }
    for (double t = 0.45; t < 4; t += 0.05)
        CHECK(screw_pull_out({4.8, t, 270, thin_sheet_applied}).capacity <= screw_pull_out({4.8, t, 270, thin_sheet_as_printed}).capacity);
}

TEST_CASE("SC-3 is PO-1 wherever the washer is not domed and the pull not eccentric, refusals included")
{
    std::mt19937 random(5);
    std::uniform_real_distribution<double> t(0.5, 4.7), d(5, 30), w(0, 4);
    int covered = 0;
    for (int i = 0; i < 500; ++i) {
        const PullOver bolt{.t1_mm = t(random), .Fu1_MPa = 300, .dh_mm = d(random), .washer = static_cast<double>(i % 2), .dw_mm = d(random), .tw_mm = w(random)};
        const base::Resistance want = pull_over(bolt);
        const base::Resistance got = screw_pull_over({bolt.t1_mm, bolt.Fu1_MPa, bolt.dh_mm, bolt.washer, bolt.dw_mm, bolt.tw_mm, concentric_pull});
        CHECK(got.covered == want.covered);
        CHECK(got.capacity == want.capacity);
        CHECK(got.reason == want.reason);
        covered += got.covered ? 1 : 0;
    }
    CHECK(covered > 100);
}

TEST_CASE("SC-6 to SC-9: twice the forces, half the times; the single checks' full shear still leaves something for tension")
{
    const auto over = [](double f) { return screw_shear_with_pull_over({f * 500, f * 300, 5.5, 0.9, 2.5, 310, 14, 0, 0, 0, 0}).capacity; };
    const auto out = [](double f) { return screw_shear_with_pull_out({f * 500, f * 300, 4.8, 1.2, 1.2, 310, 230, 1}).capacity; };
    const auto own = [](double f) { return screw_shear_with_tension({f * 500, f * 300, 4900, 7300}).capacity; };
    const auto line = [](double f) { return straight_line({f * 500, f * 300, 900, 700}).capacity; };
    check_near_rel(over(2), over(1) / 2, 1e-12);
    check_near_rel(out(2), out(1) / 2, 1e-12);
    check_near_rel(own(2), own(1) / 2, 1e-12);
    check_near_rel(line(2), line(1) / 2, 1e-12);
    CHECK(screw_shear_with_tension({4900 / 3.0, 0, 4900, 7300}).capacity > 1);
    check_near_rel(straight_line({900, 0, 900, 700}).capacity, 1, 1e-12);
}

TEST_CASE("BI-2: starts and ends without a jump")
{
    const double V = inch_bolt_shear({9.525, grade_A449, threads_in_shear_plane}).capacity;
    const auto at = [V](double share) { return inch_bolt_tension_with_shear({9.525, grade_A449, threads_in_shear_plane, share * V}).capacity; };
    check_near_rel(at(0.3 * above), at(0.3 * below), 1e-7);
    CHECK(at(1.31) == 0);
    check_near_rel(at(1), 0.3 * at(0), 1e-9);
}

TEST_CASE("RV-3: the step at a head of 7.94 mm is 1.5, the rule's own")
{
    const auto at = [](double dh) { return rivet_pull_through({0.8, 270, dh}).capacity; };
    check_near_rel(at(7.94) / at(7.94 * below), 1.5, 1e-7);
}

TEST_CASE("RV-4: no jump at t1 = t and 2.5 t")
{
    for (const double ratio : {1.0 + 1e-6, 2.5}) {
        const auto at = [ratio](double f) { return rivet_bearing({4.8, 0.8, 0.8 * ratio * f, 270, 100}).capacity; };
        check_near_rel(at(above), at(below), 1e-7);
    }
}

TEST_CASE("PL-2: a plate that bends counts no more than one that does not, and never beyond its side")
{
    for (double a = 15; a < 100; a += 5) {
        const double soft = plate_rim({a, 3, 13, 235, 0.8, 270, 0}).capacity, stiff = plate_rim({a, 3, 13, 235, 0.8, 270, 1}).capacity;
        CHECK(soft <= stiff);
        CHECK(stiff == a);
    }
    check_near_rel(plate_rim({80, 3, 13, 235, 0.8, 270, 0}).capacity, 13 + 2 * washer_reach({3, 235, 0.8, 270}).capacity, 1e-12);
}

TEST_CASE("WS-2: no jump at 2.5 head diameters of board; WS-3: none at ten diameters of penetration")
{
    const auto head = [](double f) { return wood_head_pull_through({8, 0.42, 20 * f, 1, 1, 1}).capacity; };
    check_near_rel(head(above), head(below), 1e-7);
    const auto lateral = [](double f) { return wood_screw_lateral({4.8, 3.9, 0.5, 48 * f, 1, 310, 1, 1, 1}).capacity; };
    check_near_rel(lateral(above), lateral(below), 1e-7);
}

TEST_CASE("WS-3: KD has no jump at a root of 0.17 in; the bands of Fyb cost at most 6 % of strength")
{
    check_near_rel(reduction_term(0.17 * 25.4 * above), reduction_term(0.17 * 25.4 * below), 1e-7);
    for (const double joint : {0.142, 0.177, 0.236}) {
        const auto at = [joint](double f) { return wood_screw_lateral({joint * 25.4 * f, 3.0, 0.5, 80, 1, 310, 1, 1, 1}).capacity; };
        CHECK(at(above) <= at(below));
        CHECK(at(above) > 0.93 * at(below));
    }
}

TEST_CASE("WS-3: a thicker plate holds more, but for a dip where a thin plate begins to bend the screw")
{
    // IIIs falls with ls before it rises; never by more than one part in fifty here
    for (const double G : {0.36, 0.42, 0.55, 0.70}) {
        double greatest = 0;
        for (double ts = 0.6; ts <= 6.35; ts += 0.05) {
            const double Z = wood_screw_lateral({4.8, 3.9, G, 60, ts, 310, 1, 1, 1}).capacity;
            CHECK(Z >= 0.98 * greatest);
            greatest = std::max(greatest, Z);
        }
    }
}

TEST_CASE("WS-4: along the surface it is Z, along the screw it is W, between it lies between")
{
    check_near_rel(wood_screw_combined({600, 500, 0}).capacity, 500, 1e-12);
    check_near_rel(wood_screw_combined({600, 500, 1.5707963267948966}).capacity, 600, 1e-12);
    for (double a = 0.1; a < 1.5; a += 0.1) {
        const double got = wood_screw_combined({600, 500, a}).capacity;
        CHECK(got >= 500);
        CHECK(got <= 600);
    }
}

TEST_SUITE_END();
