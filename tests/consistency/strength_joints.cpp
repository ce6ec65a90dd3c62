// Where two branches of a clause meet: no jump, or the jump that the clause has and its page states.
#include "strength/angles.h"
#include "strength/bearing.h"
#include "strength/bolts.h"
#include "strength/members.h"
#include "strength/pull_over.h"
#include "strength/welds.h"
#include "support/near.h"

#include <cmath>

using namespace thinskin;
using namespace thinskin::strength;
using thinskin::tests::check_near_abs;
using thinskin::tests::check_near_rel;

namespace {
constexpr double a_hair = 1e-9;
constexpr double below = 1 - a_hair, above = 1 + a_hair;
constexpr double E = 200000;

AngleBending leg(double b_over_t)
{
    return {.b_mm = 4 * b_over_t, .t_mm = 4, .Sx_mm3 = 1600, .Fy_MPa = 235, .E_MPa = E, .Lb_mm = 10, .Cb = 1,
            .toe = toe_in_compression, .restraint = restrained_continuously};
}
} // namespace

TEST_SUITE_BEGIN("consistency: joints of the branches");

TEST_CASE("BB-1: C is continuous at d/t = 10 and 22")
{
    for (double ratio : {10.0, 22.0}) {
        const auto at = [ratio](double f) { return bolt_bearing({.d_mm = ratio * 0.8 * f, .t_mm = 0.8, .Fu_MPa = 270, .mf = 1}).capacity; };
        check_near_rel(at(above), at(below), 1e-8);
    }
}

TEST_CASE("BB-1: between d/t = 20 and 22 a larger bolt bears 1 % less, the clause's own")
{
    const auto at = [](double d_t) { return bolt_bearing({.d_mm = d_t * 0.8, .t_mm = 0.8, .Fu_MPa = 270, .mf = 1}).capacity; };
    check_near_rel(at(22) / at(20), 0.99, 1e-12);
    CHECK(at(19) < at(20));
    CHECK(at(23) > at(22));
}

TEST_CASE("BB-3: tear-out meets bearing at lc = 2 d")
{
    const auto at = [](double f) { return hot_rolled_bearing({.d_mm = 8, .t_mm = 4, .Fu_MPa = 360, .lc_mm = 16 * f}).capacity; };
    check_near_rel(at(above), at(below), 1e-8);
}

TEST_CASE("PO-1: a head as wide as its washer, and a washer that just spreads, count the same either way")
{
    const PullOver washer{.t1_mm = 0.8, .Fu1_MPa = 270, .dh_mm = 10, .washer = 1, .dw_mm = 10 + 2 * 1.6 + 0.8, .tw_mm = 1.6};
    PullOver wider = washer;
    wider.dw_mm = 20;
    CHECK(effective_pull_over_diameter(wider) == doctest::Approx(effective_pull_over_diameter(washer)).epsilon(1e-12));
}

TEST_CASE("BI-1: the reduction starts without a jump and ends at zero without a jump")
{
    const double V = bolt_shear({.d_mm = 8, .Fu_MPa = 800}).capacity;
    const auto at = [V](double share) { return bolt_tension_with_shear({.d_mm = 8, .Fu_MPa = 800, .V_N = share * V}).capacity; };
    check_near_rel(at(0.3 * above), at(0.3 * below), 1e-8);
    check_near_abs(at(1.3 * below), 0, 1e-3);
    CHECK(at(1.3 * above) == 0);
}

TEST_CASE("AB-1: legs jump by 0.1 % at the compact limit (hidden by 1.5 My) and 0.9 % down at the slender limit")
{
    const double root = std::sqrt(E / 235), compact = 0.54 * root, slender = 0.91 * root;
    CHECK(angle_bending(leg(compact * below)).capacity == angle_bending(leg(compact * above)).capacity);
    check_near_rel(angle_bending(leg(slender * above)).capacity / angle_bending(leg(slender * below)).capacity, 0.991, 0.001);
}

TEST_CASE("AB-1: lateral-torsional buckling is continuous at My = Mcr")
{
    AngleBending in = leg(8);
    in.restraint = unrestrained;
    in.toe = toe_in_compression;
    in.Lb_mm = 500;
    const double Mcr = angle_bending_detail(in).Mcr_Nmm;
    const auto at = [&](double f) {
        AngleBending x = in;
        x.Sx_mm3 = Mcr * f / (0.80 * x.Fy_MPa);
        return angle_bending_detail(x).lateral_Nmm;
    };
    check_near_rel(at(above), at(below), 1e-8);
    check_near_rel(at(1), 0.75 * Mcr, 1e-9);
}

TEST_CASE("AB-1: Mcr tends to a limit for a short angle with its toe in compression, without cancellation")
{
    AngleBending in = leg(10);
    in.restraint = unrestrained;
    const double limit = 0.58 * 0.88 / 2 * E * 64; // 0.2552 E t^3
    for (double Lb : {1.0, 1e-3, 1e-6}) {
        in.Lb_mm = Lb;
        check_near_rel(angle_bending_detail(in).Mcr_Nmm, limit, 1e-3);
    }
}

TEST_CASE("BC-1: the two columns meet within 0.05 % at 4.71 (E/Fy)^0.5, the clause's own rounding")
{
    const double joint = 4.71 * std::sqrt(E / 235);
    check_near_rel(flexural_buckling_stress(joint * above, 235, E), flexural_buckling_stress(joint * below, 235, E), 5e-4);
}

TEST_CASE("BC-1: one-leg slenderness is continuous at L/r = 80 (132)")
{
    const auto at = [](double L_r) { return effective_slenderness({1, 1, L_r, 0, 235, E, angle_loaded_by_one_leg}); };
    check_near_rel(at(80 * above), at(80), 1e-8);
    CHECK(at(80) == 132);
}

TEST_CASE("BX-1: rho leaves 1 at lambda = 0.673 within 0.02 %")
{
    // w/t at lambda = 0.673 for 235 MPa
    const double w_t = 0.673 * std::sqrt(4 * std::pow(std::acos(-1.0), 2) * E / (12 * 0.91) / 235);
    const auto at = [w_t](double f) { return box_bending({.h_mm = 30, .b_mm = w_t * f + 2, .t_mm = 1, .Fy_MPa = 235, .E_MPa = E}).capacity; };
    check_near_rel(at(above), at(below), 2e-4);
}

TEST_CASE("WE-2: along the force the strength is continuous at L/t = 25, the factor jumps from 2.55 to 3.05")
{
    const auto at = [](double f) { return sheet_beside_fillet({.t_mm = 1, .Fu_MPa = 270, .L_mm = 25 * f, .direction = weld_along_force}); };
    check_near_rel(at(above).nominal, at(below).nominal, 1e-8);
    check_near_rel(at(above).capacity / at(below).capacity, 2.55 / 3.05, 1e-8);
}

TEST_SUITE_END();
