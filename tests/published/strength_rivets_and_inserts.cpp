// Blind rivets, threaded inserts, countersunk heads, washers' reach, backing plates: judgement throughout. [formula] worked out by hand
// from the form named, outside this program, 4 digits; [memory] recalled from the product standard.
#include "strength/plates.h"
#include "strength/pull_over.h"
#include "strength/rivets.h"
#include "strength/spacing.h"
#include "support/near.h"

using namespace thinskin;
using namespace thinskin::strength;
using thinskin::tests::check_near_rel;
using thinskin::tests::From;
using thinskin::tests::holds;

namespace {
constexpr double four_digits = 6e-4;
}

TEST_SUITE_BEGIN("published: rivets, inserts, plates");

TEST_CASE("EN 1993-1-3 Table 8.1 (RV-4): bearing with gamma 1.25, four pairs of sheets")
{
    holds("RV-4", From::recomputed);
    struct Row { double d, t, t1, Fu, e1, design; }; // N with 1.25 [formula]
    constexpr Row rows[] = {{4.0, 0.8, 0.8, 270, 12, 1113}, {4.8, 0.8, 1.2, 270, 15, 1393}, {4.8, 1.0, 3.0, 270, 15, 2177},
                            {6.4, 1.2, 1.2, 360, 10, 2880}}; // the last by its end distance
    for (const Row& r : rows) {
        CAPTURE(r.d);
        const base::Resistance got = rivet_bearing({r.d, r.t, r.t1, r.Fu, r.e1});
        check_near_rel(got.nominal / 1.25, r.design, four_digits);
        CHECK(got.factor == 3.00);
    }
    CHECK_FALSE(rivet_bearing({4.8, 1.0, 0.8, 270, 15}).covered); // t is the thinner sheet
}

TEST_CASE("Rivet minima over 3 (RV-1, RV-2): 4.8 steel rivet")
{
    holds("RV-1", From::recomputed);
    // [memory] ISO 15979: 2900 N shear, 3100 N tension
    check_near_rel(rivet_shear({.Fv_min_N = 2900}).capacity, 966.7, 1e-4);
    holds("RV-2", From::recomputed);
    check_near_rel(rivet_tension({.Ft_min_N = 3100}).capacity, 1033.3, 1e-4);
    CHECK_FALSE(rivet_tension({.Ft_min_N = 0}).covered);
}

TEST_CASE("Pull-through of a rivet's head (RV-3): PO-1's rule from 7.94 mm on, the lower form below")
{
    holds("RV-3", From::recomputed);
    // [formula] 1.5 x 0.8 x 8.3 x 270 = 2689 N; 1.0 x 0.8 x 6.9 x 270 = 1490 N
    check_near_rel(rivet_pull_through({.t1_mm = 0.8, .Fu1_MPa = 270, .dh_mm = 8.3}).nominal, 2689, four_digits);
    check_near_rel(rivet_pull_through({.t1_mm = 0.8, .Fu1_MPa = 270, .dh_mm = 6.9}).nominal, 1490, four_digits);
    CHECK(rivet_pull_through({.t1_mm = 0.8, .Fu1_MPa = 270, .dh_mm = 22}).capacity ==
          pull_over({.t1_mm = 0.8, .Fu1_MPa = 270, .dh_mm = 22, .washer = 0, .dw_mm = 0, .tw_mm = 0}).capacity);
}

TEST_CASE("Distances of rivets and inserts (ED-3, SP-3, ED-4, SP-4)")
{
    // [read] US Army TM 10-5410-229-13&P, 5-6, and a course of the sheet metal trade: 2 d to the edge, 3 d between; inserts are judgement
    holds("ED-3", From::read);
    check_near_rel(rivet_edge_distance({.d_mm = 4.8}).capacity, 9.6, 1e-12);
    holds("SP-3", From::read);
    check_near_rel(rivet_spacing({.d_mm = 4.8}).capacity, 14.4, 1e-12);
    holds("ED-4", From::recomputed);
    check_near_rel(insert_edge_distance({.d_hole_mm = 9}).capacity, 18, 1e-12);
    holds("SP-4", From::recomputed);
    check_near_rel(insert_spacing({.d_hole_mm = 9}).capacity, 27, 1e-12);
}

TEST_CASE("Threaded insert in a skin (IN-1): flange 13 mm in 0.8 and 1.0 mm of 270 MPa")
{
    holds("IN-1", From::recomputed);
    // [formula] F1 5293, F2 2808, F3 (hole 9) 3664 N: F2 governs, 936.0 N; 1.0 mm: 6616 and 3510 N
    const base::Resistance got = insert_skin_bound({.df_mm = 13, .dhole_mm = 9, .t_mm = 0.8, .Fu_MPa = 270});
    check_near_rel(got.nominal, 2808, four_digits);
    check_near_rel(got.capacity, 936.0, four_digits);
    check_near_rel(insert_skin_bound({.df_mm = 13, .dhole_mm = 9, .t_mm = 1.0, .Fu_MPa = 270}).nominal, 3510, four_digits);
    // flange far wider than its hole: the hole's ring governs, 3664 N
    check_near_rel(insert_skin_bound({.df_mm = 20, .dhole_mm = 9, .t_mm = 0.8, .Fu_MPa = 270}).nominal, 3664, four_digits);
    CHECK_FALSE(insert_skin_bound({.df_mm = 8, .dhole_mm = 9, .t_mm = 0.8, .Fu_MPa = 270}).covered);
}

TEST_CASE("Threaded insert by its tested value (IN-2): over 3, nothing without a value")
{
    holds("IN-2", From::recomputed);
    check_near_rel(insert_tested({.F_N = 2700}).capacity, 900, 1e-12); // [formula]
    CHECK_FALSE(insert_tested({.F_N = 0}).covered);
    CHECK_FALSE(insert_tested({.F_N = std::nan("")}).covered);
}

TEST_CASE("CS-2: 5 mm of 360 MPa, countersunk 3 mm, hole of 9 mm: 1.5 9 3.5 360/3 N, worked out by hand")
{
    holds("CS-2", From::recomputed);
    check_near_rel(resistance(CountersunkPullThrough{5, 3, 9, 360}).capacity, 5670, 1e-12);
    CHECK_FALSE(resistance(CountersunkPullThrough{2, 3, 9, 360}).covered);
}

TEST_CASE("EN 1993-1-8 Table 3.4 note 2 (CS-1): thickness less half the countersink")
{
    holds("CS-1", From::read); // the note: minus half the depth
    check_near_rel((6 - countersunk_thickness({.t_mm = 6, .h_mm = 4.4}).capacity) / 4.4, 0.5, 1e-12);
    holds("CS-1", From::recomputed); // 6 - 4.4/2 = 3.8 mm [formula]
    check_near_rel(countersunk_thickness({.t_mm = 6, .h_mm = 4.4}).capacity, 3.8, 1e-12);
    CHECK(countersunk_thickness({.t_mm = 0.8, .h_mm = 3}).reason == "the sheet of 0.8 mm is thinner than the countersink of 3 mm");
}

TEST_CASE("Plastic strip (WR-1): washers of 235 MPa on 0.8 mm of 270 MPa")
{
    holds("WR-1", From::recomputed);
    struct Row { double tw, c; }; // [formula]
    constexpr Row rows[] = {{2, 1.813}, {3, 4.080}, {1.6, 1.160}};
    for (const Row& r : rows) check_near_rel(washer_reach({r.tw, 235, 0.8, 270}).capacity, r.c, four_digits);
}

TEST_CASE("Yield line at the head's face (PL-1): square plates of 235 MPa under an M8")
{
    holds("PL-1", From::recomputed);
    // [formula] a 50, tb 2: Mp = 50 x 4 x 235/4 = 11 750 N mm; F/4 of the rim at 18.5 mm, 2 x 18.5/200 of it at 9.25 mm: lever 6.336 mm
    struct Row { double a, tb, nominal; };
    constexpr Row rows[] = {{50, 2, 1854}, {50, 3, 4172}, {60, 4, 6898}};
    for (const Row& r : rows) check_near_rel(plate_bending({r.a, r.tb, 13, 235}).nominal, r.nominal, four_digits);
    check_near_rel(plate_bending({50, 2, 13, 235}).capacity, 1110, four_digits);
    CHECK_FALSE(plate_bending({19, 2, 13, 235}).covered); // below 1.5 s it is a washer
}

TEST_CASE("Rim of a backing plate (PL-2): head and twice the reach, or the whole plate where it passes in bending")
{
    holds("PL-2", From::recomputed);
    // [formula] 13 + 2 x 4.080 = 21.16 mm
    const PlateRim plate{.a_mm = 50, .tb_mm = 3, .s_mm = 13, .fyb_MPa = 235, .t_mm = 0.8, .Fu_MPa = 270, .bends = 0};
    check_near_rel(plate_rim(plate).capacity, 21.16, four_digits);
    PlateRim whole = plate;
    whole.bends = 1;
    CHECK(plate_rim(whole).capacity == 50);
    PlateRim small = plate;
    small.a_mm = 20;
    CHECK(plate_rim(small).capacity == 20);
}

TEST_SUITE_END();
