// Welds, skin, screens. [read] stood in text that was read; [memory] recalled from a printed table; [formula] worked out by hand.
#include "strength/screens.h"
#include "strength/sheet.h"
#include "strength/welds.h"
#include "support/near.h"

using namespace thinskin;
using namespace thinskin::strength;
using thinskin::tests::check_near_rel;
using thinskin::tests::From;
using thinskin::tests::holds;

TEST_SUITE_BEGIN("published: welds, skin, screens");

TEST_CASE("AISC Manual Part 8 (WE-1): 0.928 kip per inch and sixteenth with E70 metal")
{
    holds("WE-1", From::remembered);
    constexpr double kip_per_in = 4448.2216 / 25.4;
    // [memory] 0.928 D kip/in, D in sixteenths of an inch; here D = 4
    check_near_rel(fillet_throat({.w_mm = 0.25 * 25.4, .FEXX_MPa = 70 * 6.894757}).capacity / kip_per_in, 4 * 0.928, 6e-4);
}

TEST_CASE("Allowable unit force on fillet welds (WE-1): E60 and E70, legs of 1/8 to 3/8 in")
{
    // [read] table of a machine design textbook after O. W. Blodgett (ed.), Stress Allowables Affect Weldment Design, 1991: 0.30 FEXX on
    // the throat, kip/in; the clause's 0.60 FEXX over 2.00 is the same
    struct Row { double w_in, FEXX_ksi, printed; };
    constexpr Row table[] = {{0.375, 70, 5.57}, {0.25, 70, 3.71}, {0.1875, 70, 2.78}, {0.125, 70, 1.86}, {0.25, 60, 3.18}, {0.125, 60, 1.59}};
    constexpr double kip_per_in = 4448.2216 / 25.4;
    holds("WE-1", From::read);
    for (const Row& r : table) {
        CAPTURE(r.w_in);
        check_near_rel(fillet_throat({.w_mm = r.w_in * 25.4, .FEXX_MPa = r.FEXX_ksi * 6.894757}).capacity / kip_per_in, r.printed, 0.003); // three digits, truncated
    }
}

TEST_CASE("AISI S100-16 J2.5 (WE-2): shares of t L Fu and factors as printed; the same in a sister code")
{
    // [read] in a copy of the standard made by others, and in Colombia's NSR-10, F.4.5.2.4, in another
    holds("WE-2", From::read);
    const auto beside = [](double L, double direction) { return sheet_beside_fillet({.t_mm = 1, .Fu_MPa = 300, .L_mm = L, .direction = direction}); };
    check_near_rel(beside(20, weld_along_force).nominal / 300, 1 - 0.01 * 20, 1e-12);
    check_near_rel(beside(20, weld_along_force).factor, 2.55, 1e-12);
    check_near_rel(beside(25, weld_along_force).nominal / 300, 0.75, 1e-12);
    check_near_rel(beside(25, weld_along_force).factor, 3.05, 1e-12);
    check_near_rel(beside(20, weld_across_force).nominal / 300, 1, 1e-12);
    check_near_rel(beside(20, weld_across_force).factor, 2.35, 1e-12);
}

TEST_CASE("AISI S100-16 J2.5 (WE-2): 1 mm sheet of 270 MPa beside fillets across and along the force")
{
    holds("WE-2", From::recomputed);
    // [formula] across 270/2.35; along, 20 mm: 0.80 x 270/2.55; along, 40 mm: 0.75 x 270/3.05
    check_near_rel(sheet_beside_fillet({.t_mm = 1, .Fu_MPa = 270, .L_mm = 20, .direction = weld_across_force}).capacity, 114.89, 1e-4);
    check_near_rel(sheet_beside_fillet({.t_mm = 1, .Fu_MPa = 270, .L_mm = 20, .direction = weld_along_force}).capacity, 84.706, 1e-4);
    check_near_rel(sheet_beside_fillet({.t_mm = 1, .Fu_MPa = 270, .L_mm = 40, .direction = weld_along_force}).capacity, 66.393, 1e-4);
}

TEST_CASE("First yield of the skin (SK-1) and shear yield (SF-1): 140 MPa, 0.76 mm")
{
    holds("SK-1", From::recomputed);
    // [formula] 140/1.67 = 83.83 MPa; 0.6 x 140 x 0.76/1.67 = 38.23 N/mm
    check_near_rel(sheet_stress({.Fy_MPa = 140}).capacity, 83.83, 1e-4);
    holds("SF-1", From::recomputed);
    check_near_rel(shear_flow({.t_mm = 0.76, .Fy_MPa = 140}).capacity, 38.23, 1e-4);
}

TEST_CASE("Shear yield (SF-1): 0.60 Fy, as a paper on webs of cold-formed steel quotes the clause; below the 0.40 Fy that a handbook allows")
{
    holds("SF-1", From::read);
    const base::Resistance got = shear_flow({.t_mm = 1, .Fy_MPa = 250});
    check_near_rel(got.nominal / 250, 0.60, 1e-12);
    CHECK(got.capacity <= 0.40 * 250); // [read] equation 8.17 of a building design handbook, webs that do not buckle
}

TEST_CASE("Repeated-load screen (RL-1): a tenth of the nominal, no further factor (engineering judgement)")
{
    holds("RL-1", From::recomputed);
    check_near_rel(repeated_load({.Rn_N = 2897}).capacity, 289.7, 1e-12);
}

TEST_CASE("UN R11 6.1.5.3 (HI-1): a hinge of n carries the set's load over n")
{
    // [read] set: 11 000 N longitudinal, 9 000 N transverse, 9 000 N vertical (back doors); per hinge [formula]
    const HingeFigures two = hinge_figures(2, rear_door), three = hinge_figures(3, rear_door), side = hinge_figures(2, side_door);
    holds("HI-1", From::read);
    check_near_rel(2 * two.normal_N, 11000, 1e-12);
    check_near_rel(2 * two.in_plane_N, 9000, 1e-12);
    check_near_rel(2 * two.vertical_N, 9000, 1e-12);
    holds("HI-1", From::recomputed);
    check_near_rel(three.normal_N, 3666.7, 1e-5);
    CHECK(three.in_plane_N == 3000);
    CHECK(side.normal_N == 4500); // a side door's normal is transverse
    CHECK(side.in_plane_N == 5500);
    CHECK_FALSE(side.vertical_known);
}

TEST_CASE("UN R11 6.1.5.1 (HI-1): index of a hinge under 259 N out of plane, 756 N in plane, 2082 N on the pins")
{
    holds("HI-1", From::recomputed);
    // [formula] 259/5500 + 756/4500 + 2082/4500 = 0.6778; with the vertical force shared by two 0.4464
    check_near_rel(hinge_index({.n_hinges = 2, .door = rear_door, .Fn_N = 259, .Ft_N = -756, .Fz_N = -2082}).nominal, 0.6778, 1e-4);
    check_near_rel(hinge_index({.n_hinges = 2, .door = rear_door, .Fn_N = 259, .Ft_N = 756, .Fz_N = 1041}).nominal, 0.4464, 1e-4);
}

TEST_CASE("UN R11 6.1.5.1(d) (HI-1): a side door has no vertical figure, so its pins' force is not covered")
{
    const base::Resistance got = hinge_index({.n_hinges = 2, .door = side_door, .Fn_N = 100, .Ft_N = 100, .Fz_N = 1});
    CHECK_FALSE(got.covered);
    CHECK(got.reason == "a side door has no vertical hinge load in the regulation");
    CHECK(hinge_index({.n_hinges = 2, .door = side_door, .Fn_N = 100, .Ft_N = 100, .Fz_N = 0}).covered);
}

TEST_SUITE_END();
