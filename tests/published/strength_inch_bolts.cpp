// Inch bolts below 1/2 in. [read] printed; [formula] worked out by hand from the table's stresses, 4 digits.
#include "strength/bolts.h"
#include "strength/inch_bolts.h"
#include "support/near.h"

#include <algorithm>
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

TEST_CASE("AISI S100-16 Table J3.4-1 (BT-2, BV-2): its stresses in ksi and MPa, each grade, threads in and out, factor 2.00")
{
    // [read] in a copy of the standard made by others. Its columns in ksi and MPa differ by up to 2.3 % in shear: the lower one counts
    struct Pair { double ksi, MPa; };
    struct Row { double grade; Pair Fnt, Fnv_in, Fnv_out; };
    constexpr Row table[] = {{grade_A307, {40, 280}, {24, 169}, {24, 169}}, {grade_A449, {81, 560}, {48, 334}, {68, 457}}, {grade_A354_BD, {101, 700}, {61, 411}, {84, 579}}};
    const auto lower = [](const Pair& p) { return std::min(p.ksi * ksi_MPa, p.MPa); };
    const double d = 0.3125 * in_mm, Ab = std::numbers::pi * d * d / 4;
    for (const Row& r : table) {
        CAPTURE(r.grade);
        holds("BT-2", From::read);
        check_near_rel(inch_bolt_tension({d, r.grade}).nominal / Ab, lower(r.Fnt), 1e-9);
        CHECK(inch_bolt_tension({d, r.grade}).factor == 2.00);
        holds("BV-2", From::read);
        check_near_rel(inch_bolt_shear({d, r.grade, threads_in_shear_plane}).nominal / Ab, lower(r.Fnv_in), 1e-9);
        check_near_rel(inch_bolt_shear({d, r.grade, threads_out_of_shear_plane}).nominal / Ab, lower(r.Fnv_out), 1e-9);
        CHECK(inch_bolt_shear({d, r.grade, threads_in_shear_plane}).factor == 2.00);
    }
    CHECK_FALSE(inch_bolt_tension({0.5 * in_mm, grade_A307}).covered); // 1/2 in and more: other rows of the table
    CHECK_FALSE(inch_bolt_tension({0.1875 * in_mm, grade_A307}).covered);
}

TEST_CASE("AISI S100-16 J3.4 (BT-2, BV-2): 1/4 in A307 and 3/8 in A449, threads in the shear plane")
{
    const double quarter = 0.25 * in_mm, three_eighths = 0.375 * in_mm;
    holds("BT-2", From::recomputed);
    check_near_rel(inch_bolt_tension({quarter, grade_A307}).capacity / lbf_N, 981.7, four_digits); // [formula], all of this case
    check_near_rel(inch_bolt_tension({three_eighths, grade_A449}).nominal / lbf_N, 8946, four_digits);
    holds("BV-2", From::recomputed);
    check_near_rel(inch_bolt_shear({quarter, grade_A307, threads_in_shear_plane}).capacity / lbf_N, 589.0, four_digits);
    check_near_rel(inch_bolt_shear({three_eighths, grade_A449, threads_in_shear_plane}).nominal / lbf_N, 5301, four_digits);
}

TEST_CASE("AISI S100-16 against the tables before it (BT-2, BV-2): lower stresses with the threads out, one factor of 2.00 instead of 2.25 and 2.40")
{
    tests::holds_nothing();
    // [read] the stresses up to 2012 in a sister code, Colombia's NSR-10 table F.4.5.3-4, in a copy made by others, in MPa; the factors from memory
    const double d = 0.3125 * in_mm, Ab = std::numbers::pi * d * d / 4;
    CHECK(inch_bolt_tension({d, grade_A307}).capacity / Ab > 279 / 2.25);
    CHECK(inch_bolt_shear({d, grade_A449, threads_in_shear_plane}).capacity / Ab > 324 / 2.40);
    CHECK(inch_bolt_shear({d, grade_A449, threads_out_of_shear_plane}).nominal / Ab < 496);
    CHECK(inch_bolt_shear({d, grade_A354_BD, threads_out_of_shear_plane}).nominal / Ab < 621);
}

TEST_CASE("AISI S100-16 J3.4 (BI-2): A307 beside 5 ksi of shear keeps 35.33 ksi")
{
    holds("BI-2", From::recomputed);
    const double d = 0.25 * in_mm, Ab = std::numbers::pi * d * d / 4;
    const base::Resistance got = inch_bolt_tension_with_shear({d, grade_A307, threads_in_shear_plane, 5 * ksi_MPa * Ab});
    check_near_rel(got.nominal / Ab / ksi_MPa, 35.33, four_digits); // [formula] 52 - 2 x 40/24 x 5
    // [read] equation J3.4-2: at the whole allowable shear, Fnv/2.00, what is left is 1.3 Fnt less Fnt
    holds("BI-2", From::read);
    check_near_rel(inch_bolt_tension_with_shear({d, grade_A449, threads_in_shear_plane, 24 * ksi_MPa * Ab}).nominal / Ab / ksi_MPa, 0.3 * 81, 1e-9);
    tests::holds_nothing();
    CHECK(inch_bolt_tension_with_shear({d, grade_A307, threads_in_shear_plane, 0}).capacity == inch_bolt_tension({d, grade_A307}).capacity);
    CHECK(inch_bolt_tension_with_shear({d, grade_A307, threads_in_shear_plane, 16 * ksi_MPa * Ab}).capacity == 0);
}

TEST_CASE("SAE J429 grade 5 (BT-1, BV-1): inch bolts are inside the threaded-part rule")
{
    // 120 ksi [read] in a torque and clamp-load table; 0.675 and 0.40 of it on the gross area of 3/8 in: 8946 and 5301 lbf [formula]
    const double d = 0.375 * in_mm, Fu = 120 * ksi_MPa;
    holds("BT-1", From::recomputed);
    check_near_rel(bolt_tension({d, Fu}).nominal / lbf_N, 8946, four_digits);
    holds("BV-1", From::recomputed);
    check_near_rel(bolt_shear({d, Fu}).nominal / lbf_N, 5301, four_digits);
}

TEST_SUITE_END();
