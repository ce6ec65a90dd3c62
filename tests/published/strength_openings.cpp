// Corners of openings (SK-2) against closed forms.
#include "strength/openings.h"
#include "strength/sheet.h"
#include "support/coverage.h"
#include "support/near.h"

#include <cmath>

using namespace thinskin;
using namespace thinskin::strength;
using tests::check_near_rel;
using tests::From;
using tests::holds;

TEST_CASE("SK-2: a round hole raises the stress three times; a square one with round corners more, a slit across the pull most")
{
    holds("SK-2", From::read);
    // Round hole in a wide sheet: 3 (closed form of elasticity, read on two web pages); the handbook's curve fit is within 1.5 % of it there.
    check_near_rel(opening_corner_factor(1, 1), 3, 0.015);
    check_near_rel(opening_corner({.Fy_MPa = 140, .r_mm = 50, .b_mm = 50, .a_mm = 50}).capacity, 83.83 / 3, 0.015);
    // A slot with full round ends has the factor of the ellipse of its length and end radius, 1 + 2 sqrt(a/r) (closed form): 3.83 and 4.65.
    check_near_rel(opening_corner_factor(1, 0.5), 1 + 2 * std::sqrt(2.0), 0.015);
    check_near_rel(opening_corner_factor(1, 0.3), 1 + 2 * std::sqrt(1 / 0.3), 0.015);
    CHECK(opening_corner_factor(0.2, 1) > opening_corner_factor(0.5, 1));
    CHECK(opening_corner_factor(0.2, 0.3) > opening_corner_factor(0.2, 1));
}

TEST_CASE("SK-2: outside of the chart nothing is covered")
{
    CHECK_FALSE(opening_corner({.Fy_MPa = 140, .r_mm = 9, .b_mm = 50, .a_mm = 50}).covered);   // r/b 0.18
    CHECK_FALSE(opening_corner({.Fy_MPa = 140, .r_mm = 51, .b_mm = 50, .a_mm = 50}).covered);
    CHECK_FALSE(opening_corner({.Fy_MPa = 140, .r_mm = 20, .b_mm = 50, .a_mm = 170}).covered); // b/a 0.29
    CHECK_FALSE(opening_corner({.Fy_MPa = 140, .r_mm = 20, .b_mm = 50, .a_mm = 49}).covered);
}
