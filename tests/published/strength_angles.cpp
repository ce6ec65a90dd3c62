// Single angles. [read] stood in text that was read; [formula] worked out by hand outside this program from the clause, 4 digits.
// The 2016 constants of F10 are from memory; the 2010 form was read in a worked example of the AISC Design Examples, F.11A.
#include "strength/angles.h"
#include "support/near.h"

using namespace thinskin;
using namespace thinskin::strength;
using thinskin::tests::check_near_rel;
using thinskin::tests::From;
using thinskin::tests::holds;

namespace {
constexpr double in_mm = 25.4, ksi_MPa = 6.894757, kip_in = 4448.2216 * 25.4;
constexpr double in3 = in_mm * in_mm * in_mm;
constexpr double four_digits = 6e-4;

AngleBending us_angle(double b, double t, double Sx, double Lb, double Cb, double toe, double restraint)
{
    return {.b_mm = b * in_mm, .t_mm = t * in_mm, .Sx_mm3 = Sx * in3, .Fy_MPa = 36 * ksi_MPa, .E_MPa = 29000 * ksi_MPa,
            .Lb_mm = Lb * in_mm, .Cb = Cb, .toe = toe, .restraint = restraint};
}
} // namespace

TEST_SUITE_BEGIN("published: angles");

TEST_CASE("AISC 360-16 F10.1 (AB-1): L2x2x1/8 of 36 ksi with continuous restraint, toe in tension")
{
    holds("AB-1", From::recomputed);
    // [formula] 1.5 Fy Sx/1.67 = 4.236 kip in; Sx 0.131 in3 [read]
    const AngleBendingDetail got = angle_bending_detail(us_angle(2, 0.125, 0.131, 36, 1, toe_in_tension, restrained_continuously));
    check_near_rel(got.resistance.capacity / kip_in, 4.236, four_digits);
    CHECK(got.governs == "yielding");
}

TEST_CASE("AISC 360-16 F10.2 (AB-1): L2x2x1/8 over 36 in, toe in compression and in tension")
{
    holds("AB-1", From::recomputed);
    const AngleBendingDetail pushed = angle_bending_detail(us_angle(2, 0.125, 0.131, 36, 1, toe_in_compression, unrestrained));
    check_near_rel(pushed.My_Nmm / kip_in, 3.773, four_digits); // [formula], all of this case
    check_near_rel(pushed.Mcr_Nmm / kip_in, 11.78, four_digits);
    check_near_rel(pushed.lateral_Nmm / kip_in, 4.746, four_digits);
    check_near_rel(pushed.resistance.capacity / kip_in, 2.842, four_digits);
    CHECK(pushed.governs == "lateral-torsional buckling");
    const AngleBendingDetail pulled = angle_bending_detail(us_angle(2, 0.125, 0.131, 36, 1, toe_in_tension, unrestrained));
    check_near_rel(pulled.Mcr_Nmm / kip_in, 63.69, four_digits);
    check_near_rel(pulled.resistance.nominal / kip_in, 5.659, four_digits);
    check_near_rel(pulled.resistance.capacity / kip_in, 3.389, four_digits);
}

TEST_CASE("AISC 360-16 F10.3 (AB-1): L2x2x1/8 has legs of b/t = 16, above 15.33")
{
    holds("AB-1", From::recomputed);
    // [formula] bracket 1.460: 5.510 kip in
    const AngleBendingDetail got = angle_bending_detail(us_angle(2, 0.125, 0.131, 36, 1, toe_in_compression, unrestrained));
    check_near_rel(got.leg_Nmm / kip_in, 5.510, four_digits);
    check_near_rel(got.leg_Nmm / kip_in / 1.67, 3.299, four_digits);
}

TEST_CASE("AISC 360-16 F10 (AB-1): L3x3x1/4 over 24 in and L4x4x1/4 over 72 in, toe in compression")
{
    holds("AB-1", From::recomputed);
    const AngleBendingDetail three = angle_bending_detail(us_angle(3, 0.25, 0.569, 24, 1, toe_in_compression, unrestrained));
    check_near_rel(three.My_Nmm / kip_in, 16.39, four_digits); // [formula]; 2010 constants give 107.97 and 24.0
    check_near_rel(three.Mcr_Nmm / kip_in, 106.1, four_digits);
    check_near_rel(three.resistance.nominal / kip_in, 23.93, four_digits);
    // inputs and limits 15.3 and 25.8 [read] Design Examples F.11A; moments [formula]
    const AngleBendingDetail four = angle_bending_detail(us_angle(4, 0.25, 1.03, 72, 1.14, toe_in_compression, unrestrained));
    check_near_rel(four.My_Nmm / kip_in, 29.66, four_digits);
    check_near_rel(four.Mcr_Nmm / kip_in, 107.4, four_digits);
    check_near_rel(four.lateral_Nmm / kip_in, 38.72, four_digits);
    check_near_rel(four.leg_Nmm / kip_in, 43.32, four_digits);
}

TEST_CASE("AISC Design Example F.11A (AB-1): L4x4x1/4 of 50 ksi over 6 ft, toe in compression: 2.46 kip ft allowable")
{
    holds("AB-1", From::read);
    // [read] Design Examples, version 16 (2022 specification: 0.58, 0.88, 0.80 Fy Sx), in a copy made by others; three digits
    const AngleBendingDetail got = angle_bending_detail({.b_mm = 4 * in_mm, .t_mm = 0.25 * in_mm, .Sx_mm3 = 1.03 * in3, .Fy_MPa = 50 * ksi_MPa, .E_MPa = 29000 * ksi_MPa,
                                                         .Lb_mm = 72 * in_mm, .Cb = 1.14, .toe = toe_in_compression, .restraint = unrestrained});
    check_near_rel(got.My_Nmm / kip_in, 41.2, 0.0013);
    check_near_rel(got.Mcr_Nmm / kip_in, 107, 0.005);
    check_near_rel(got.lateral_Nmm / kip_in, 49.2, 0.002);
    check_near_rel(got.leg_Nmm / kip_in, 53.0, 0.002);
    check_near_rel(got.resistance.capacity / (12 * kip_in), 2.46, 0.002);
    CHECK(got.governs == "lateral-torsional buckling");
}

TEST_CASE("AISC Design Example F.11B (AB-1): the same braced in the middle, Cb 1.30: Mcr 176, 66.3 kip in by lateral-torsional buckling")
{
    holds("AB-1", From::read);
    const AngleBendingDetail got = angle_bending_detail({.b_mm = 4 * in_mm, .t_mm = 0.25 * in_mm, .Sx_mm3 = 1.03 * in3, .Fy_MPa = 50 * ksi_MPa, .E_MPa = 29000 * ksi_MPa,
                                                         .Lb_mm = 36 * in_mm, .Cb = 1.30, .toe = toe_in_compression, .restraint = restrained_at_maximum});
    check_near_rel(got.My_Nmm / kip_in, 51.5, 0.001);
    check_near_rel(got.Mcr_Nmm / kip_in, 176, 0.003);
    check_near_rel(got.lateral_Nmm / kip_in, 66.3, 0.002);
}

TEST_CASE("AISC 360-16 F10.2, F10.3 (AB-1): slender angles of S235, toe in compression")
{
    holds("AB-1", From::recomputed);
    // [formula] 40x40x2 over 4 m, Sx 800 mm3: My 150 400 above Mcr 140900: elastic buckling, 107190 N mm
    AngleBending in{.b_mm = 40, .t_mm = 2, .Sx_mm3 = 800, .Fy_MPa = 235, .E_MPa = 200000, .Lb_mm = 4000, .Cb = 1,
                    .toe = toe_in_compression, .restraint = unrestrained};
    const AngleBendingDetail elastic = angle_bending_detail(in);
    check_near_rel(elastic.Mcr_Nmm, 140900, 1e-4);
    check_near_rel(elastic.lateral_Nmm, 107190, 1e-4);
    // [formula] 40x40x4 over 2 m held at the greatest moment only: My = Fy Sx, 1.25 Mcr = 1409000: 483400 N mm
    in = {.b_mm = 40, .t_mm = 4, .Sx_mm3 = 1553, .Fy_MPa = 235, .E_MPa = 200000, .Lb_mm = 2000, .Cb = 1,
          .toe = toe_in_compression, .restraint = restrained_at_maximum};
    const AngleBendingDetail held = angle_bending_detail(in);
    check_near_rel(held.Mcr_Nmm, 1409000, 1e-4);
    check_near_rel(held.lateral_Nmm, 483400, 1e-4);
    // [formula] 60x60x2, b/t 30 above 26.5: Fcr = 0.71 E/900 = 157.8 MPa on 0.80 x 1900 mm3
    in = {.b_mm = 60, .t_mm = 2, .Sx_mm3 = 1900, .Fy_MPa = 235, .E_MPa = 200000, .Lb_mm = 500, .Cb = 1,
          .toe = toe_in_compression, .restraint = unrestrained};
    const AngleBendingDetail leg = angle_bending_detail(in);
    check_near_rel(leg.leg_Nmm, 239820, 1e-4);
    CHECK(leg.governs == "leg local buckling");
}

TEST_CASE("AISC 360-16 F10.1 (AB-1): 40x40x4 of S235 on a short length")
{
    holds("AB-1", From::recomputed);
    // [formula] 1.5 x 0.8 x 235 x 1615 mm3 (sharp corners)/1.67 = 272.8 N m
    const base::Resistance got = angle_bending({.b_mm = 40, .t_mm = 4, .Sx_mm3 = 1615, .Fy_MPa = 235, .E_MPa = 200000,
                                                .Lb_mm = 100, .Cb = 1, .toe = toe_in_compression, .restraint = unrestrained});
    check_near_rel(got.capacity, 272800, four_digits);
}

TEST_CASE("Saint-Venant torsion of a narrow rectangle (AT-1): shear is T t/J, as in any textbook")
{
    holds("AT-1", From::recomputed);
    // [formula] 30 x 3: J = 270 mm4; 0.6 x 235 x 270/3 = 12 690 N mm, over 1.67
    check_near_rel(open_section_torsion({.J_mm4 = 30 * 27 / 3.0, .t_mm = 3, .Fy_MPa = 235}).capacity, 12690 / 1.67, 1e-12);
}

TEST_CASE("Torsion of a channel 25 x 1.5 and 50 x 2.5 (AT-1): 10 N m make 78.9 MPa in the web, J 316.7 mm4")
{
    holds("AT-1", From::read);
    // [read] a textbook of aircraft structures, example 9.8. 0.6 Fy = 78.9 MPa is reached by the nominal torque
    const double J = (2 * 25 * std::pow(1.5, 3) + 50 * std::pow(2.5, 3)) / 3;
    check_near_rel(J, 316.7, 2e-4);
    check_near_rel(open_section_torsion({.J_mm4 = J, .t_mm = 2.5, .Fy_MPa = 78.9 / 0.6}).nominal, 10e3, 1e-3);
}

TEST_CASE("Plastic strip (LL-1): thickness at which a leg carries 17.8 kip without prying, 0.993 in, and a flange 40.6 kip, 1.215 in")
{
    // [read] a handbook of connections in structural steel, pages 164 and 107: t = (4.44 T b/(p Fu))^0.5, 4.44 = 4/0.9; it takes Fu for the
    // stress, its own lever b and width p; the room available makes our strip as wide as p
    struct Row { double t, b, p, Fu, T; };
    holds("LL-1", From::read);
    for (const Row& r : {Row{0.993, 2.08, 2.875, 58, 17.8}, Row{1.215, 1.598, 3, 65, 40.6}}) {
        CAPTURE(r.t);
        const LyingLeg in{.t_mm = r.t * 25.4, .Fy_MPa = r.Fu * 6.894757, .a_mm = r.b * 25.4, .washer_mm = 20, .available_mm = r.p * 25.4};
        check_near_rel(0.9 * lying_leg(in).nominal / 4448.2216, r.T, 0.003);
    }
}

TEST_CASE("Plastic strip (LL-1): 4 mm leg of S235, bolt 21 mm from the standing leg, 24 mm washer")
{
    holds("LL-1", From::recomputed);
    // [formula] w = 24 + 42 = 66 mm: M = 235 x 66 x 16/4 = 62 040 N mm, F = 2954.3 N; 50 mm available: 2238.1 N
    const LyingLeg in{.t_mm = 4, .Fy_MPa = 235, .a_mm = 21, .washer_mm = 24, .available_mm = 200};
    check_near_rel(lying_leg(in).nominal, 2954.3, 5e-5);
    LyingLeg narrow = in;
    narrow.available_mm = 50;
    check_near_rel(lying_leg(narrow).nominal, 2238.1, 5e-5);
}

TEST_SUITE_END();
