// Inch bolts below 1/2 in. [formula] worked out by hand from the table's stresses (which are from memory), 4 digits; [read] printed.
#include "strength/bolts.h"
#include "strength/inch_bolts.h"
#include "support/near.h"

#include <numbers>

using namespace thinskin;
using namespace thinskin::strength;
using thinskin::tests::check_near_rel;
using thinskin::tests::From;
using thinskin::tests::holds;

namespace {
constexpr double in_mm = 25.4, lbf_N = 4.4482216, ksi_MPa = 6.894757;
constexpr double four_digits = 6e-4;
}

TEST_SUITE_BEGIN("published: inch bolts");

TEST_CASE("AISI S100-16 J3.4 (BT-2, BV-2): 1/4 in A307 and 3/8 in A449, threads in the shear plane")
{
    const double quarter = 0.25 * in_mm, three_eighths = 0.375 * in_mm;
    holds("BT-2", From::recomputed);
    check_near_rel(inch_bolt_tension({quarter, grade_A307}).nominal / lbf_N, 1988, four_digits); // [formula], all of this case
    check_near_rel(inch_bolt_tension({quarter, grade_A307}).capacity / lbf_N, 883.6, four_digits);
    holds("BV-2", From::recomputed);
    check_near_rel(inch_bolt_shear({quarter, grade_A307, threads_in_shear_plane}).nominal / lbf_N, 1178, four_digits);
    check_near_rel(inch_bolt_shear({quarter, grade_A307, threads_in_shear_plane}).capacity / lbf_N, 490.9, four_digits);
    holds("BT-2", From::recomputed);
    check_near_rel(inch_bolt_tension({three_eighths, grade_A449}).nominal / lbf_N, 8946, four_digits);
    check_near_rel(inch_bolt_tension({three_eighths, grade_A449}).capacity / lbf_N, 3976, four_digits);
    holds("BV-2", From::recomputed);
    check_near_rel(inch_bolt_shear({three_eighths, grade_A449, threads_in_shear_plane}).nominal / lbf_N, 5191, four_digits);
    check_near_rel(inch_bolt_shear({three_eighths, grade_A449, threads_in_shear_plane}).capacity / lbf_N, 2163, four_digits);
}

TEST_CASE("AISI S100-16 J3.4 (BT-2, BV-2): stresses of the table in ksi, each grade, threads in and out")
{
    struct Row { double grade, Fnt, Fnv_in, Fnv_out; }; // from memory
    constexpr Row table[] = {{grade_A307, 40.5, 24, 24}, {grade_A449, 81, 47, 72}, {grade_A354_BD, 101, 59, 90}};
    const double d = 0.3125 * in_mm, Ab = std::numbers::pi * d * d / 4;
    for (const Row& r : table) {
        CAPTURE(r.grade);
        holds("BT-2", From::remembered);
        check_near_rel(inch_bolt_tension({d, r.grade}).nominal / Ab / ksi_MPa, r.Fnt, 1e-9);
        holds("BV-2", From::remembered);
        check_near_rel(inch_bolt_shear({d, r.grade, threads_in_shear_plane}).nominal / Ab / ksi_MPa, r.Fnv_in, 1e-9);
        check_near_rel(inch_bolt_shear({d, r.grade, threads_out_of_shear_plane}).nominal / Ab / ksi_MPa, r.Fnv_out, 1e-9);
    }
    CHECK_FALSE(inch_bolt_tension({0.5 * in_mm, grade_A307}).covered); // 1/2 in and more: other rows of the table
    CHECK_FALSE(inch_bolt_tension({0.1875 * in_mm, grade_A307}).covered);
}

TEST_CASE("AISI S100-16 J3.4 (BI-2): A307 beside 5 ksi of shear keeps 32.40 ksi")
{
    holds("BI-2", From::recomputed);
    const double d = 0.25 * in_mm, Ab = std::numbers::pi * d * d / 4;
    const base::Resistance got = inch_bolt_tension_with_shear({d, grade_A307, threads_in_shear_plane, 5 * ksi_MPa * Ab});
    check_near_rel(got.nominal / Ab / ksi_MPa, 32.40, four_digits); // [formula]
    CHECK(inch_bolt_tension_with_shear({d, grade_A307, threads_in_shear_plane, 0}).capacity == inch_bolt_tension({d, grade_A307}).capacity);
    CHECK(inch_bolt_tension_with_shear({d, grade_A307, threads_in_shear_plane, 20 * ksi_MPa * Ab}).capacity == 0);
}

TEST_CASE("SAE J429 grade 5 (BT-1, BV-1): inch bolts are inside the threaded-part rule")
{
    // 120 ksi [read] in a torque and clamp-load table; 0.75 and 0.45 of it on the gross area of 3/8 in: 9940 and 5964 lbf [formula]
    const double d = 0.375 * in_mm, Fu = 120 * ksi_MPa;
    holds("BT-1", From::recomputed);
    check_near_rel(bolt_tension({d, Fu}).nominal / lbf_N, 9940, four_digits);
    holds("BV-1", From::recomputed);
    check_near_rel(bolt_shear({d, Fu}).nominal / lbf_N, 5964, four_digits);
}

TEST_SUITE_END();
