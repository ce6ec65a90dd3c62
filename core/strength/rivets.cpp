// Notation: d rivet diameter, t thinner and t1 thicker sheet (RV-4), t1 sheet under the head (RV-3), dh head, e1 end distance along the
// force, from the centre.  Forms of EN 1993-1-3 Table 8.1 (RV-4) and AISI S100-16 J4.4.2 (RV-3); factors are judgement.
#include "strength/rivets.h"
#include "strength/pull_over.h"
#include "strength/screw_symbols.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thinskin::strength {

namespace {

constexpr double factor = 3.00;
constexpr double head_of_the_clause = 7.94; // 5/16 in, as PO-1 demands

base::Resistance rivet_shear_formula(const RivetShear& in) { return base::covered(in.Fv_min_N, factor); }
base::Resistance rivet_tension_formula(const RivetTension& in) { return base::covered(in.Ft_min_N, factor); }

base::Resistance rivet_pull_through_formula(const RivetPullThrough& in)
{
    if (in.dh_mm < head_of_the_clause) return base::covered(1.0 * in.t1_mm * in.dh_mm * in.Fu1_MPa, factor);
    const base::Resistance screw_rule = pull_over({.t1_mm = in.t1_mm, .Fu1_MPa = in.Fu1_MPa, .dh_mm = in.dh_mm, .washer = 0, .dw_mm = 0, .tw_mm = 0});
    return screw_rule.covered ? base::covered(screw_rule.nominal, factor) : screw_rule;
}

base::Resistance rivet_bearing_formula(const RivetBearing& in)
{
    const double d = in.d_mm, t = in.t_mm, Fu = in.Fu_MPa, ratio = in.t1_mm / t;
    if (!(ratio >= 1)) return base::not_covered(fmt::format("t1 = {:g} mm is below t = {:g} mm: t is the thinner sheet", in.t1_mm, t));
    constexpr double most = 2.1;
    const double equal = std::min(3.6 * std::sqrt(t / d), most);
    const double alpha = equal + (most - equal) * std::min((ratio - 1) / 1.5, 1.0);
    return base::covered(std::min(alpha * Fu * d * t, Fu * in.e1_mm * t / 1.2), factor);
}

} // namespace

template <> const Clause<RivetShear>& clause<RivetShear>()
{
    static const Clause<RivetShear> c{
        {.id = "RV-1",
         .title = "Shear strength of a blind rivet itself",
         .formula = "Fv,min, the least shear strength of the product standard or the maker",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "least strength of the product divided by 3.00, no clause",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "open-end blind rivets with protruding head; the minima of the catalogue are from memory",
         .not_for = "the sheets (RV-4), a hole larger than the rivet's own, repeated load (the mandrel falls out)"},
        {{&RivetShear::Fv_min_N, symbols::maker_value("Fv_min", "least shear strength of the rivet")}},
        &rivet_shear_formula};
    return c;
}

template <> const Clause<RivetTension>& clause<RivetTension>()
{
    static const Clause<RivetTension> c{
        {.id = "RV-2",
         .title = "Tension strength of a blind rivet itself",
         .formula = "Ft,min, the least tensile strength of the product standard or the maker",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "least strength of the product divided by 3.00, no clause",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "open-end blind rivets with protruding head; the minima are those of thick test plates",
         .not_for = "pull-through of a skin (RV-3), repeated load (the mandrel falls out)"},
        {{&RivetTension::Ft_min_N, symbols::maker_value("Ft_min", "least tensile strength of the rivet, in thick plates")}},
        &rivet_tension_formula};
    return c;
}

template <> const Clause<RivetPullThrough>& clause<RivetPullThrough>()
{
    static const Clause<RivetPullThrough> c{
        {.id = "RV-3",
         .title = "Pull-through of a blind rivet's head or blind side",
         .formula = "F = 1.5 t1 d'w Fu1, d'w = min(dh, 19.1 mm), for dh of 7.94 mm and more; F = 1.0 t1 dh Fu1 under a smaller head",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "screw rule AISI S100-16 J4.4.2; below its least head the form of EN 1993-1-3 Table 8.2; factor 3.00",
         .edition = "2016",
         .label = base::Label::judgement,
         .range = "by analogy with screws; for a head below 7.94 mm the lower form is used, so the figure steps by 1.5 there",
         .not_for = "the rivet itself (RV-2), soft wide flanges that dish before the sheet does, repeated load, aluminium sheet"},
        {{&RivetPullThrough::t1_mm, {.name = "t1", .unit = "mm", .meaning = "core thickness of the sheet under the head", .lower = 0.5, .upper = 4.76}},
         {&RivetPullThrough::Fu1_MPa, symbols::tensile("Fu1", "tensile strength of that sheet")},
         {&RivetPullThrough::dh_mm,
          {.name = "dh", .unit = "mm", .meaning = "diameter of the head, or of the blind side if that bears on the sheet", .lower = 4, .upper = 25}}},
        &rivet_pull_through_formula};
    return c;
}

template <> const Clause<RivetBearing>& clause<RivetBearing>()
{
    static const Clause<RivetBearing> c{
        {.id = "RV-4",
         .title = "Bearing of the sheets at a blind rivet",
         .formula = "F = alpha Fu d t <= Fu e1 t/1.2; alpha = 3.6 (t/d)^0.5 <= 2.1 at t1 = t, 2.1 at t1 >= 2.5 t, straight between",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "form of EN 1993-1-3 Table 8.1, with a factor of 3.00",
         .edition = "2006",
         .label = base::Label::judgement,
         .range = "rivets of 2.6 to 6.4 mm; the form is from memory, the factor under this rule set is judgement",
         .not_for = "the rivet itself (RV-1), e1 below 2 d (ED-3), a gap between the sheets, repeated load, aluminium"},
        {{&RivetBearing::d_mm, {.name = "d", .unit = "mm", .meaning = "rivet diameter", .lower = 2.6, .upper = 6.4}},
         {&RivetBearing::t_mm, symbols::sheet("t", "core thickness of the thinner sheet")},
         {&RivetBearing::t1_mm, symbols::sheet("t1", "core thickness of the thicker sheet")},
         {&RivetBearing::Fu_MPa, symbols::tensile("Fu", "tensile strength of the thinner sheet", 550)},
         {&RivetBearing::e1_mm,
          {.name = "e1", .unit = "mm", .meaning = "end distance along the force, from the rivet's centre", .lower = 0, .lower_open = true}}},
        &rivet_bearing_formula};
    return c;
}

base::Resistance rivet_shear(const RivetShear& in) { return resistance(in); }
base::Resistance rivet_tension(const RivetTension& in) { return resistance(in); }
base::Resistance rivet_pull_through(const RivetPullThrough& in) { return resistance(in); }
base::Resistance rivet_bearing(const RivetBearing& in) { return resistance(in); }

const base::Card& rivet_shear_card() { return clause<RivetShear>().card(); }
const base::Card& rivet_tension_card() { return clause<RivetTension>().card(); }
const base::Card& rivet_pull_through_card() { return clause<RivetPullThrough>().card(); }
const base::Card& rivet_bearing_card() { return clause<RivetBearing>().card(); }

} // namespace thinskin::strength
