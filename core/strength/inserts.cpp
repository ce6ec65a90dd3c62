// Notation: df circle that bears on the skin (flange or collapsed bulb), dhole hole in the skin, t, Fu the skin. No standard has a rule.
#include "strength/rivets.h"
#include "strength/screw_symbols.h"

#include <algorithm>
#include <fmt/format.h>
#include <numbers>

namespace thinskin::strength {

namespace {

constexpr double factor = 3.00;

base::Resistance insert_skin_bound_formula(const InsertSkinBound& in)
{
    if (!(in.df_mm >= in.dhole_mm)) return base::not_covered(fmt::format("df = {:g} mm is below the hole of {:g} mm", in.df_mm, in.dhole_mm));
    const double ring = 0.6 * std::numbers::pi * in.df_mm * in.t_mm * in.Fu_MPa;
    const double dish = 1.0 * in.df_mm * in.t_mm * in.Fu_MPa;
    const double hole = 0.6 * std::numbers::pi * in.dhole_mm * in.t_mm * in.Fu_MPa;
    return base::covered(std::min({ring, dish, hole}), factor);
}

base::Resistance insert_tested_formula(const InsertTested& in) { return base::covered(in.F_N, factor); }

} // namespace

template <> const Clause<InsertSkinBound>& clause<InsertSkinBound>()
{
    static const Clause<InsertSkinBound> c{
        {.id = "IN-1",
         .title = "Threaded insert pulled out of a skin: bound for the skin",
         .formula = "F = min(0.6 pi df t Fu, 1.0 df t Fu, 0.6 pi dhole t Fu)",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "punching of the ring, thin-sheet pull-through form, punching of the hole; factor 3.00; no clause",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "a bound for the SKIN where neither maker nor test gives a value; df is the part that bears: the flange, or the collapsed bulb when the "
                  "pull is away from the flange; where df is not known give the hole's diameter",
         .not_for = "the insert's own thread and body, spin-out, shear, a skin as the only support without saying so, repeated load"},
        {{&InsertSkinBound::df_mm, {.name = "df", .unit = "mm", .meaning = "diameter of the circle that bears on the skin", .lower = 4, .upper = 40}},
         {&InsertSkinBound::dhole_mm, {.name = "dhole", .unit = "mm", .meaning = "diameter of the insert's hole in the skin", .lower = 4, .upper = 25}},
         {&InsertSkinBound::t_mm, {.name = "t", .unit = "mm", .meaning = "core thickness of the skin", .lower = 0.5, .upper = 3}},
         {&InsertSkinBound::Fu_MPa, symbols::tensile("Fu", "tensile strength of the skin")}},
        &insert_skin_bound_formula};
    return c;
}

template <> const Clause<InsertTested>& clause<InsertTested>()
{
    static const Clause<InsertTested> c{
        {.id = "IN-2",
         .title = "Threaded insert by its maker's or a tested value",
         .formula = "F, the ultimate for this insert, sheet thickness, hole and direction of force",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "maker's or tested ultimate divided by 3.00, no clause",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "pull-out or shear, each with its own value for this sheet thickness; a value for the thickest sheet says nothing about a thin skin; "
                  "no value, no figure",
         .not_for = "spin-out torque (it has to be above the bolt's tightening torque), repeated load"},
        {{&InsertTested::F_N, symbols::maker_value("F", "ultimate force, maker's or tested, in this sheet")}},
        &insert_tested_formula};
    return c;
}

base::Resistance insert_skin_bound(const InsertSkinBound& in) { return resistance(in); }
base::Resistance insert_tested(const InsertTested& in) { return resistance(in); }

const base::Card& insert_skin_bound_card() { return clause<InsertSkinBound>().card(); }
const base::Card& insert_tested_card() { return clause<InsertTested>().card(); }

} // namespace thinskin::strength
