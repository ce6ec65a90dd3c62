// Welds, skin, screens. [read] stood in text that was read; [memory] recalled from a printed table; [formula] worked out by hand.
#include "strength/screens.h"
#include "strength/sheet.h"
#include "strength/welds.h"
#include "support/near.h"

using namespace thinskin;
using namespace thinskin::strength;
using thinskin::tests::check_near_rel;

TEST_SUITE_BEGIN("published: welds, skin, screens");

TEST_CASE("AISC Manual Part 8 (WE-1): 0.928 kip per inch and sixteenth with E70 metal")
{
    constexpr double kip_per_in = 4448.2216 / 25.4;
    // [memory] 0.928 D kip/in, D in sixteenths of an inch; here D = 4
    check_near_rel(fillet_throat({.w_mm = 0.25 * 25.4, .FEXX_MPa = 70 * 6.894757}).capacity / kip_per_in, 4 * 0.928, 6e-4);
}

TEST_CASE("AISI S100-16 J2.5 (WE-2): 1 mm sheet of 270 MPa beside fillets across and along the force")
{
    // [formula] across 270/2.35; along, 20 mm: 0.80 x 270/2.55; along, 40 mm: 0.75 x 270/3.05
    check_near_rel(sheet_beside_fillet({.t_mm = 1, .Fu_MPa = 270, .L_mm = 20, .direction = weld_across_force}).capacity, 114.89, 1e-4);
    check_near_rel(sheet_beside_fillet({.t_mm = 1, .Fu_MPa = 270, .L_mm = 20, .direction = weld_along_force}).capacity, 84.706, 1e-4);
    check_near_rel(sheet_beside_fillet({.t_mm = 1, .Fu_MPa = 270, .L_mm = 40, .direction = weld_along_force}).capacity, 66.393, 1e-4);
}

TEST_CASE("First yield of the skin (SK-1) and shear yield (SF-1): 140 MPa, 0.76 mm")
{
    // [formula] 140/1.67 = 83.83 MPa; 0.6 x 140 x 0.76/1.67 = 38.23 N/mm
    check_near_rel(sheet_stress({.Fy_MPa = 140}).capacity, 83.83, 1e-4);
    check_near_rel(shear_flow({.t_mm = 0.76, .Fy_MPa = 140}).capacity, 38.23, 1e-4);
}

TEST_CASE("Repeated-load screen (RL-1): a tenth of the nominal, no further factor (engineering judgement)")
{
    check_near_rel(repeated_load({.Rn_N = 2897}).capacity, 289.7, 1e-12);
}

TEST_CASE("UN R11 6.1.5.3 (HI-1): a hinge of n carries the set's load over n")
{
    // [read] set: 11 000 N longitudinal, 9 000 N transverse, 9 000 N vertical (back doors); per hinge [formula]
    const HingeFigures two = hinge_figures(2, rear_door), three = hinge_figures(3, rear_door), side = hinge_figures(2, side_door);
    CHECK(two.normal_N == 5500);
    CHECK(two.in_plane_N == 4500);
    CHECK(two.vertical_N == 4500);
    check_near_rel(three.normal_N, 3666.7, 1e-5);
    CHECK(three.in_plane_N == 3000);
    CHECK(side.normal_N == 4500); // a side door's normal is transverse
    CHECK(side.in_plane_N == 5500);
    CHECK_FALSE(side.vertical_known);
}

TEST_CASE("UN R11 6.1.5.1 (HI-1): index of a hinge under 259 N out of plane, 756 N in plane, 2082 N on the pins")
{
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
