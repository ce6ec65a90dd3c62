// Notation: tw, fyw washer; tb, fyb, a backing plate (square, side a); s head or nut across flats; t, Fu the skin; c reach beyond the head
#include "strength/plates.h"
#include "strength/screw_symbols.h"

#include <algorithm>
#include <fmt/format.h>

namespace thinskin::strength {

namespace {

constexpr double least_side = 1.5; // of s: a smaller plate is a washer

base::Resistance countersunk_thickness_formula(const CountersunkThickness& in)
{
    if (!(in.t_mm >= in.h_mm)) return base::not_covered(fmt::format("the sheet of {:g} mm is thinner than the countersink of {:g} mm", in.t_mm, in.h_mm));
    return base::covered(in.t_mm - in.h_mm / 2, 1);
}

/// A strip one wide, plastic at the head's face, under the greatest ring load that the skin can give: fyw tw^2/4 = (0.6 t Fu) c.
base::Resistance washer_reach_formula(const WasherReach& in)
{
    return base::covered(in.fyw_MPa * in.tw_mm * in.tw_mm / (4 * (0.6 * in.t_mm * in.Fu_MPa)), 1);
}

base::Resistance plate_bending_formula(const PlateBending& in)
{
    if (!(in.a_mm >= least_side * in.s_mm)) return base::not_covered(fmt::format("a = {:g} mm is below {:g} s: that is a washer (WR-1)", in.a_mm, least_side));
    const double a = in.a_mm, beyond = (a - in.s_mm) / 2;           // of the yield line
    const double Mp = a * in.tb_mm * in.tb_mm * in.fyb_MPa / 4;
    const double lever = (beyond + beyond * beyond / a) / 4;          // of a unit force along the rim: far edge, and both sides up to the line
    return base::covered(Mp / lever, 1.67);
}

base::Resistance plate_rim_formula(const PlateRim& in)
{
    if (!(in.a_mm >= in.s_mm)) return base::not_covered(fmt::format("a = {:g} mm is below s = {:g} mm", in.a_mm, in.s_mm));
    if (in.bends == 1) return base::covered(in.a_mm, 1);
    const base::Resistance reach = washer_reach({.tw_mm = in.tb_mm, .fyw_MPa = in.fyb_MPa, .t_mm = in.t_mm, .Fu_MPa = in.Fu_MPa});
    if (!reach.covered) return reach;
    return base::covered(std::min(in.a_mm, in.s_mm + 2 * reach.nominal), 1);
}

base::Symbol skin() { return {.name = "t", .unit = "mm", .meaning = "core thickness of the skin", .lower = 0.45, .upper = 4.76}; }
base::Symbol yield(const char* name, const char* meaning) { return {.name = name, .unit = "MPa", .meaning = meaning, .lower = 100, .upper = 700}; }
base::Symbol side() { return {.name = "a", .unit = "mm", .meaning = "side of the square plate, or its lesser side", .lower = 10, .upper = 400}; }
base::Symbol head() { return {.name = "s", .unit = "mm", .meaning = "head or nut across flats, or the washer on the plate", .lower = 5, .upper = 60}; }

} // namespace

template <> const Clause<CountersunkThickness>& clause<CountersunkThickness>()
{
    static const Clause<CountersunkThickness> c{
        {.id = "CS-1",
         .title = "Thickness that bears under a countersunk head",
         .formula = "t_bearing = t - h/2",
         .unit = "mm",
         .rule = "allowable_strength",
         .source = "EN 1993-1-8 Table 3.4, note 2, taken over",
         .edition = "2005",
         .label = base::Label::judgement,
         .range = "the part is at least as thick as the countersink is deep; the note was read, its use under this rule set is judgement",
         .not_for = "sheet thinner than the head (dimpled or not): not covered; pull-over of a countersunk head"},
        {{&CountersunkThickness::t_mm, {.name = "t", .unit = "mm", .meaning = "thickness of the part", .lower = 0.45, .upper = 40}},
         {&CountersunkThickness::h_mm, {.name = "h", .unit = "mm", .meaning = "depth of the countersink", .lower = 0, .upper = 20}}},
        &countersunk_thickness_formula};
    return c;
}

template <> const Clause<WasherReach>& clause<WasherReach>()
{
    static const Clause<WasherReach> c{
        {.id = "WR-1",
         .title = "Reach of a washer beyond the head",
         .formula = "c = fyw tw^2/(4 (0.6 t Fu))",
         .unit = "mm",
         .rule = "allowable_strength",
         .source = "plastic strip of the washer under the greatest ring load of the skin, derived here",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "flat steel washers on thin sheet; beyond c the washer bends up and does not count",
         .not_for = "a strength: the diameter of the head + 2 c goes into the pull-over rule, which has its own cap (19.1 mm)"},
        {{&WasherReach::tw_mm, {.name = "tw", .unit = "mm", .meaning = "washer thickness", .lower = 0.5, .upper = 12}},
         {&WasherReach::fyw_MPa, yield("fyw", "yield strength of the washer")},
         {&WasherReach::t_mm, skin()},
         {&WasherReach::Fu_MPa, symbols::tensile("Fu", "tensile strength of the skin")}},
        &washer_reach_formula};
    return c;
}

template <> const Clause<PlateBending>& clause<PlateBending>()
{
    static const Clause<PlateBending> c{
        {.id = "PL-1",
         .title = "Bending of a backing plate by its bolt",
         .formula = "F = 4 a^2 tb^2 fyb/((a - s)(3 a - s))",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "one yield line across a square plate at the head's face, even reaction along the rim; derived here, factor 1.67",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "one bolt in the middle of a flat steel plate with a side of 1.5 s and more",
         .not_for = "the skin at the plate's rim (PL-2), the skin panel that has to carry the force to its edges, several bolts, a plate on a bend or a hem"},
        {{&PlateBending::a_mm, side()},
         {&PlateBending::tb_mm, {.name = "tb", .unit = "mm", .meaning = "plate thickness", .lower = 0.5, .upper = 12}},
         {&PlateBending::s_mm, head()},
         {&PlateBending::fyb_MPa, yield("fyb", "yield strength of the plate")}},
        &plate_bending_formula};
    return c;
}

template <> const Clause<PlateRim>& clause<PlateRim>()
{
    static const Clause<PlateRim> c{
        {.id = "PL-2",
         .title = "Diameter of the rim with which a backing plate pulls on the skin",
         .formula = "d_rim = min(a, s + 2 c), c of WR-1 with the plate as washer; d_rim = a where the plate passes PL-1",
         .unit = "mm",
         .rule = "allowable_strength",
         .source = "washer reach, derived here",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "flat steel plates; the circle inside the square counts, not its corners",
         .not_for = "a strength: the pull-over rules have their own cap (19.1 mm); cracking of the skin at a stiff rim under repeated load"},
        {{&PlateRim::a_mm, side()},
         {&PlateRim::tb_mm, {.name = "tb", .unit = "mm", .meaning = "plate thickness", .lower = 0.5, .upper = 12}},
         {&PlateRim::s_mm, head()},
         {&PlateRim::fyb_MPa, yield("fyb", "yield strength of the plate")},
         {&PlateRim::t_mm, skin()},
         {&PlateRim::Fu_MPa, symbols::tensile("Fu", "tensile strength of the skin")},
         {&PlateRim::bends, {.name = "bends", .unit = "-", .meaning = "1 the plate passes PL-1 for the force at hand, 0 it does not", .choices = {0, 1}}}},
        &plate_rim_formula};
    return c;
}

base::Resistance countersunk_thickness(const CountersunkThickness& in) { return resistance(in); }
base::Resistance washer_reach(const WasherReach& in) { return resistance(in); }
base::Resistance plate_bending(const PlateBending& in) { return resistance(in); }
base::Resistance plate_rim(const PlateRim& in) { return resistance(in); }

const base::Card& countersunk_thickness_card() { return clause<CountersunkThickness>().card(); }
const base::Card& washer_reach_card() { return clause<WasherReach>().card(); }
const base::Card& plate_bending_card() { return clause<PlateBending>().card(); }
const base::Card& plate_rim_card() { return clause<PlateRim>().card(); }

} // namespace thinskin::strength
