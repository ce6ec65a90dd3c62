// Notation: Fy yield strength of the sheet, r corner radius, b and a half of the shorter and the longer side of the opening
#include "strength/openings.h"

#include <cmath>
#include <fmt/core.h>

namespace thinskin::strength {

namespace {

constexpr double least_r_b = 0.2, least_b_a = 0.3;

base::Resistance opening_corner_formula(const OpeningCorner& in)
{
    const double r_b = in.r_mm / in.b_mm, b_a = in.b_mm / in.a_mm;
    if (!(r_b >= least_r_b && r_b <= 1)) return base::not_covered(fmt::format("r = {:g} mm is {:.2f} of half the shorter side; covered are 0.2 to 1", in.r_mm, r_b));
    if (!(b_a >= least_b_a && b_a <= 1)) return base::not_covered(fmt::format("the sides are {:.2f} to 1; covered are 0.3 to 1", b_a));
    return base::covered(in.Fy_MPa / opening_corner_factor(r_b, b_a), 1.67);
}

base::Symbol side(const char* name, const char* meaning) { return {.name = name, .unit = "mm", .meaning = meaning, .lower = 5, .upper = 1500}; }

} // namespace

double opening_corner_factor(double r_b, double b_a)
{
    const double q = std::sqrt(r_b);
    const double c1 = 14.815 - 15.774 * q + 8.149 * r_b, c2 = -11.201 - 9.750 * q + 9.600 * r_b;
    const double c3 = 0.202 + 38.662 * q - 27.374 * r_b, c4 = 3.232 - 23.002 * q + 15.482 * r_b;
    return c1 + b_a * (c2 + b_a * (c3 + b_a * c4));
}

template <> const Clause<OpeningCorner>& clause<OpeningCorner>()
{
    static const Clause<OpeningCorner> c{
        {.id = "SK-2",
         .title = "Stress in the skin beside a round corner of an opening",
         .formula = "von Mises <= Fy/(1.67 Kt), Kt(r/b, b/a) of a rectangular hole",
         .unit = "MPa",
         .rule = "allowable_strength",
         .source = "curve fit of the handbook chart for a rectangular hole with round corners, second-hand; on the stress beside the corner: judgement",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "r/b 0.2 to 1, b/a 0.3 to 1; the stress is read one grid spacing and more from the corner, where the opening raises it already",
         .not_for = "cut corners without a radius, cracks, glass that is glued in and takes part, fatigue"},
        {{&OpeningCorner::Fy_MPa, {.name = "Fy", .unit = "MPa", .meaning = "least yield strength of the sheet", .lower = 80, .upper = 700}},
         {&OpeningCorner::r_mm, {.name = "r", .unit = "mm", .meaning = "corner radius of the opening", .lower = 1, .upper = 750}},
         {&OpeningCorner::b_mm, side("b", "half of the opening's shorter side")},
         {&OpeningCorner::a_mm, side("a", "half of the opening's longer side")}},
        &opening_corner_formula};
    return c;
}

base::Resistance opening_corner(const OpeningCorner& in) { return resistance(in); }
const base::Card& opening_corner_card() { return clause<OpeningCorner>().card(); }

} // namespace thinskin::strength
