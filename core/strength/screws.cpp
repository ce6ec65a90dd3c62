// Notation (AISI S100-16 J4.3, J4.4.1)
//   d    nominal diameter of the screw           t1, Fu1   sheet under the head
//   tc   lesser of thread penetration and t2     t2, Fu2   sheet at the tip
// Accuracy: closed formulas; tests/published/strength_screws.cpp has printed allowable loads, docs/verification/screws.md laboratory tests.
#include "strength/screws.h"
#include "strength/screw_parts.h"
#include "strength/screw_symbols.h"

#include <algorithm>

namespace thinskin::strength {

namespace {

constexpr double Omega = 3.00;

base::Resistance screw_shear_formula(const ScrewShear& in) { return base::covered(screw_shear_parts(in).nominal_N, Omega); }

base::Resistance screw_pull_out_formula(const ScrewPullOut& in)
{
    return base::covered(parts::pull_out(in.d_mm, in.tc_mm, in.Fu2_MPa, in.thin_sheet), Omega);
}

base::Resistance screw_own_shear_formula(const ScrewOwnShear& in) { return base::covered(in.Pnvs_N, Omega); }
base::Resistance screw_own_tension_formula(const ScrewOwnTension& in) { return base::covered(in.Pnts_N, Omega); }

} // namespace

ScrewShearParts screw_shear_parts(const ScrewShear& in)
{
    const double bearing = std::min(parts::sheet_bearing(in.d_mm, in.t1_mm, in.Fu1_MPa), parts::sheet_bearing(in.d_mm, in.t2_mm, in.Fu2_MPa));
    const double A = std::min(parts::tilting(in.d_mm, in.t2_mm, in.Fu2_MPa), bearing), B = bearing;
    const double share = std::clamp((in.t2_mm / in.t1_mm - 1.0) / 1.5, 0.0, 1.0);
    return {A, B, A + (B - A) * share};
}

template <> const Clause<ScrewShear>& clause<ScrewShear>()
{
    static const Clause<ScrewShear> c{
        {.id = "SC-1",
         .title = "Screw in shear: tilting and bearing of the sheets",
         .formula = "t2/t1 <= 1: A = min(4.2 (t2^3 d)^0.5 Fu2, 2.7 t1 d Fu1, 2.7 t2 d Fu2); t2/t1 >= 2.5: B = min(2.7 t1 d Fu1, 2.7 t2 d Fu2); "
                    "between: A + (B - A)(t2/t1 - 1)/1.5",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J4.3.1",
         .edition = "2016",
         .label = base::Label::published_read,
         .range = "screws of 2.03 to 6.35 mm, sheets in contact. The clause limits no thickness; 0.45 to 12.7 mm is our range (judgement). Read in a copy "
                  "made by others and in printed tables; between the ratios A and B are taken with the actual sheets, which the wording "
                  "allows (a printed table lies up to 13 % lower there)",
         .not_for = "the screw's own strength (SC-4), edge tear-out (TO-2), hard sheet with Fu/Fy below 1.08 (tests reached 0.79 to 0.89 of the nominal), "
                    "a gap between the sheets, repeated load, aluminium"},
        {{&ScrewShear::d_mm, symbols::screw_diameter()},
         {&ScrewShear::t1_mm, symbols::sheet("t1", "core thickness of the sheet under the head")},
         {&ScrewShear::t2_mm, symbols::sheet("t2", "core thickness of the sheet at the tip")},
         {&ScrewShear::Fu1_MPa, symbols::tensile("Fu1", "tensile strength of the sheet under the head")},
         {&ScrewShear::Fu2_MPa, symbols::tensile("Fu2", "tensile strength of the sheet at the tip")}},
        &screw_shear_formula};
    return c;
}

template <> const Clause<ScrewPullOut>& clause<ScrewPullOut>()
{
    static const Clause<ScrewPullOut> c{
        {.id = "SC-2",
         .title = "Screw pulled out of the sheet at its tip",
         .formula = "Pnot = k 0.85 tc d Fu2, k = 0.6 up to tc = 1.2 mm, straight to 1 at 2.0 mm (thin_sheet = 1), or k = 1 as printed (thin_sheet = 0)",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J4.4.1; the thin-sheet factor k is engineering judgement from laboratory ratios",
         .edition = "2016",
         .label = base::Label::judgement,
         .range = "screws of 2.03 to 6.35 mm. The clause limits no thickness; 0.45 to 12.7 mm is our range (judgement). As printed it agrees with "
                  "published tables, but laboratory pull-out reached only 0.63 of it in 1.2 mm sheet and 0.66 in 1.9 mm: a supplement of "
                  "2022 reduces it by 1.63 (tc/25.4)^0.18 (read as cited by others: 0.87 at 0.8 mm, 0.94 at 1.2 mm), k lies below that",
         .not_for = "pull-over at the head (SC-3), the screw itself (SC-5), stripped or oversize holes, repeated load, aluminium"},
        {{&ScrewPullOut::d_mm, symbols::screw_diameter()},
         {&ScrewPullOut::tc_mm, symbols::sheet("tc", "lesser of thread penetration and core thickness of the sheet at the tip")},
         {&ScrewPullOut::Fu2_MPa, symbols::tensile("Fu2", "tensile strength of the sheet at the tip")},
         {&ScrewPullOut::thin_sheet, symbols::thin_sheet()}},
        &screw_pull_out_formula};
    return c;
}

template <> const Clause<ScrewOwnShear>& clause<ScrewOwnShear>()
{
    static const Clause<ScrewOwnShear> c{
        {.id = "SC-4",
         .title = "Shear strength of the screw itself",
         .formula = "Pnvs, the maker's or a tested ultimate",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J4.3.2",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "a value of the maker or of a test for this very screw; no value, no figure: there is no formula; the clause was read in a copy made by others, 3.00 in a "
                  "maker's table of such values as well",
         .not_for = "the sheets (SC-1), a hardened screw's brittleness, repeated load"},
        {{&ScrewOwnShear::Pnvs_N, symbols::maker_value("Pnvs", "ultimate shear strength of the screw, maker's or tested")}},
        &screw_own_shear_formula};
    return c;
}

template <> const Clause<ScrewOwnTension>& clause<ScrewOwnTension>()
{
    static const Clause<ScrewOwnTension> c{
        {.id = "SC-5",
         .title = "Tension strength of the screw itself",
         .formula = "Pnts, the maker's or a tested ultimate",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J4.4.3",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "a value of the maker or of a test for this very screw; no value, no figure: there is no formula; the clause was read in a copy made by others, 3.00 in a "
                  "maker's table of such values as well",
         .not_for = "the sheets (SC-2, SC-3), a hardened screw's brittleness, repeated load"},
        {{&ScrewOwnTension::Pnts_N, symbols::maker_value("Pnts", "ultimate tension strength of the screw, maker's or tested")}},
        &screw_own_tension_formula};
    return c;
}

base::Resistance screw_shear(const ScrewShear& in) { return resistance(in); }
base::Resistance screw_pull_out(const ScrewPullOut& in) { return resistance(in); }
base::Resistance screw_own_shear(const ScrewOwnShear& in) { return resistance(in); }
base::Resistance screw_own_tension(const ScrewOwnTension& in) { return resistance(in); }

const base::Card& screw_shear_card() { return clause<ScrewShear>().card(); }
const base::Card& screw_pull_out_card() { return clause<ScrewPullOut>().card(); }
const base::Card& screw_own_shear_card() { return clause<ScrewOwnShear>().card(); }
const base::Card& screw_own_tension_card() { return clause<ScrewOwnTension>().card(); }

} // namespace thinskin::strength
