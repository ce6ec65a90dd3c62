// Notation (AISI S100-16 J4.5): Q, V shear and T tension of one screw, service forces; Pns, Pnov, Pnot, Pnvs, Pnts nominal strengths
#include "strength/screw_combinations.h"
#include "strength/screw_parts.h"
#include "strength/screw_symbols.h"
#include "strength/screws.h"

#include <fmt/format.h>

namespace thinskin::strength {

namespace {

/// How many times the forces are allowed: sum <= right/Omega.
base::Resistance times(double right, double sum, double Omega)
{
    if (sum == 0) return base::not_covered("no force: there is nothing to combine");
    return base::covered(right / sum, Omega);
}

base::Resistance screw_shear_with_pull_over_formula(const ScrewShearWithPullOver& in)
{
    if (const double ratio = in.t2_mm / in.t1_mm; !(ratio >= 2.5)) return base::not_covered(fmt::format("t2/t1 = {:.4g} is below 2.5", ratio));
    const base::Resistance over = screw_pull_over({.t1_mm = in.t1_mm, .Fu1_MPa = in.Fu1_MPa, .dh_mm = in.dh_mm, .washer = in.washer,
                                                   .dw_mm = in.dw_mm, .tw_mm = in.tw_mm, .eccentric = in.eccentric});
    if (!over.covered) return over;
    const double Pns = parts::sheet_bearing(in.d_mm, in.t1_mm, in.Fu1_MPa);
    return times(1.10, in.Q_N / Pns + 0.71 * in.T_N / over.nominal, 2.35);
}

base::Resistance screw_shear_with_pull_out_formula(const ScrewShearWithPullOut& in)
{
    constexpr double greatest = 1.62;
    const double ratio = in.Fu2_MPa / in.Fy2_MPa;
    if (!(ratio >= 1.0 && ratio <= greatest)) return base::not_covered(fmt::format("Fu2/Fy2 = {:.4g} is outside 1 .. {:g}", ratio, greatest));
    if (!(in.tc_mm <= in.t2_mm)) return base::not_covered(fmt::format("tc = {:g} mm is above t2 = {:g} mm", in.tc_mm, in.t2_mm));
    const double Pns = parts::tilting(in.d_mm, in.t2_mm, in.Fu2_MPa);
    const double Pnot = parts::pull_out(in.d_mm, in.tc_mm, in.Fu2_MPa, in.thin_sheet);
    return times(1.15, in.Q_N / Pns + in.T_N / Pnot, 2.55);
}

base::Resistance screw_shear_with_tension_formula(const ScrewShearWithTension& in)
{
    return times(1.3, in.V_N / in.Pnvs_N + in.T_N / in.Pnts_N, 3.00);
}

base::Resistance straight_line_formula(const StraightLine& in) { return times(1, in.Q_N / in.Qa_N + in.T_N / in.Ta_N, 1); }

base::Symbol force(const char* name, const char* meaning) { return {.name = name, .unit = "N", .meaning = meaning, .lower = 0}; }
base::Symbol shear() { return force("Q", "shear on the screw in the load case"); }
base::Symbol tension() { return force("T", "tension in the screw in the same load case"); }

} // namespace

template <> const Clause<ScrewShearWithPullOver>& clause<ScrewShearWithPullOver>()
{
    static const Clause<ScrewShearWithPullOver> c{
        {.id = "SC-6",
         .title = "Shear and pull-over of a screw together: how many times the forces are allowed",
         .formula = "Q/Pns + 0.71 T/Pnov <= 1.10/Omega, Pns = 2.7 t1 d Fu1, Pnov of SC-3",
         .unit = "-",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J4.5.1",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "t1 0.724 to 1.13 mm, t2/t1 of 2.5 and more, self-drilling screws No. 12 and No. 14, washer up to 19.1 mm, Fu1 up to 483 MPa; read in a copy "
                  "made by others. There Pnov is that of the washer's whole diameter, here of d'w, on the safe side",
         .not_for = "anything outside the box (SC-9), the single checks (SC-1 to SC-5), repeated load"},
        {{&ScrewShearWithPullOver::Q_N, shear()},
         {&ScrewShearWithPullOver::T_N, tension()},
         {&ScrewShearWithPullOver::d_mm, {.name = "d", .unit = "mm", .meaning = "nominal diameter, No. 12 to No. 14", .lower = 5.48, .upper = 6.35}},
         {&ScrewShearWithPullOver::t1_mm,
          {.name = "t1", .unit = "mm", .meaning = "core thickness of the sheet under the head", .lower = 0.724, .upper = 1.13}},
         {&ScrewShearWithPullOver::t2_mm, symbols::sheet("t2", "core thickness of the sheet at the tip")},
         {&ScrewShearWithPullOver::Fu1_MPa, symbols::tensile("Fu1", "tensile strength of the sheet under the head", 483)},
         {&ScrewShearWithPullOver::dh_mm, symbols::head()},
         {&ScrewShearWithPullOver::washer, symbols::washer()},
         {&ScrewShearWithPullOver::dw_mm, {.name = "dw", .unit = "mm", .meaning = "washer diameter (0 without)", .lower = 0, .upper = 19.1}},
         {&ScrewShearWithPullOver::tw_mm, symbols::washer_thickness()},
         {&ScrewShearWithPullOver::eccentric, symbols::eccentric()}},
        &screw_shear_with_pull_over_formula};
    return c;
}

template <> const Clause<ScrewShearWithPullOut>& clause<ScrewShearWithPullOut>()
{
    static const Clause<ScrewShearWithPullOut> c{
        {.id = "SC-7",
         .title = "Shear and pull-out of a screw together: how many times the forces are allowed",
         .formula = "Q/Pns + T/Pnot <= 1.15/Omega, Pns = 4.2 (t2^3 d)^0.5 Fu2, Pnot of SC-2",
         .unit = "-",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J4.5.2; the thin-sheet factor of SC-2 is engineering judgement",
         .edition = "2016",
         .label = base::Label::judgement,
         .range = "t2 0.754 to 1.84 mm, self-drilling screws No. 8 to No. 14, Fu2 up to 834 MPa, Fu2/Fy2 1.0 to 1.62 (soft drawing grades with their least "
                  "yield are above it); equation, limits and factor were read in a copy made by others",
         .not_for = "anything outside the box (SC-9), the single checks (SC-1 to SC-5), repeated load"},
        {{&ScrewShearWithPullOut::Q_N, shear()},
         {&ScrewShearWithPullOut::T_N, tension()},
         {&ScrewShearWithPullOut::d_mm, {.name = "d", .unit = "mm", .meaning = "nominal diameter, No. 8 to No. 14", .lower = 4.16, .upper = 6.35}},
         {&ScrewShearWithPullOut::t2_mm,
          {.name = "t2", .unit = "mm", .meaning = "core thickness of the sheet at the tip", .lower = 0.754, .upper = 1.84}},
         {&ScrewShearWithPullOut::tc_mm, symbols::sheet("tc", "lesser of thread penetration and t2")},
         {&ScrewShearWithPullOut::Fu2_MPa, symbols::tensile("Fu2", "tensile strength of the sheet at the tip", 834)},
         {&ScrewShearWithPullOut::Fy2_MPa, {.name = "Fy2", .unit = "MPa", .meaning = "yield strength of the sheet at the tip", .lower = 80, .upper = 834}},
         {&ScrewShearWithPullOut::thin_sheet, symbols::thin_sheet()}},
        &screw_shear_with_pull_out_formula};
    return c;
}

template <> const Clause<ScrewShearWithTension>& clause<ScrewShearWithTension>()
{
    static const Clause<ScrewShearWithTension> c{
        {.id = "SC-8",
         .title = "Shear and tension in the screw itself: how many times the forces are allowed",
         .formula = "V/Pnvs + T/Pnts <= 1.3/Omega",
         .unit = "-",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J4.5.3",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "both strengths the maker's or tested, for this very screw; read in a copy made by others",
         .not_for = "the sheets (SC-6, SC-7, SC-9), the single checks (SC-4, SC-5), repeated load"},
        {{&ScrewShearWithTension::V_N, force("V", "shear on the screw in the load case")},
         {&ScrewShearWithTension::T_N, tension()},
         {&ScrewShearWithTension::Pnvs_N, symbols::maker_value("Pnvs", "ultimate shear strength of the screw, maker's or tested")},
         {&ScrewShearWithTension::Pnts_N, symbols::maker_value("Pnts", "ultimate tension strength of the screw, maker's or tested")}},
        &screw_shear_with_tension_formula};
    return c;
}

template <> const Clause<StraightLine>& clause<StraightLine>()
{
    static const Clause<StraightLine> c{
        {.id = "SC-9",
         .title = "Shear and tension together by a straight line: how many times the forces are allowed",
         .formula = "Q/Qa + T/Ta <= 1",
         .unit = "-",
         .rule = "allowable_strength",
         .source = "straight line between the single checks, no clause",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "screws outside the boxes of SC-6 and SC-7, blind rivets, threaded inserts; Qa and Ta are the least ALLOWABLE forces of the single checks",
         .not_for = "screws inside the boxes, bolts (BI-1, BI-2), repeated load"},
        {{&StraightLine::Q_N, force("Q", "shear in the load case")},
         {&StraightLine::T_N, force("T", "tension in the same load case")},
         {&StraightLine::Qa_N, symbols::maker_value("Qa", "least allowable shear of the single checks")},
         {&StraightLine::Ta_N, symbols::maker_value("Ta", "least allowable tension of the single checks")}},
        &straight_line_formula};
    return c;
}

base::Resistance screw_shear_with_pull_over(const ScrewShearWithPullOver& in) { return resistance(in); }
base::Resistance screw_shear_with_pull_out(const ScrewShearWithPullOut& in) { return resistance(in); }
base::Resistance screw_shear_with_tension(const ScrewShearWithTension& in) { return resistance(in); }
base::Resistance straight_line(const StraightLine& in) { return resistance(in); }

const base::Card& screw_shear_with_pull_over_card() { return clause<ScrewShearWithPullOver>().card(); }
const base::Card& screw_shear_with_pull_out_card() { return clause<ScrewShearWithPullOut>().card(); }
const base::Card& screw_shear_with_tension_card() { return clause<ScrewShearWithTension>().card(); }
const base::Card& straight_line_card() { return clause<StraightLine>().card(); }

} // namespace thinskin::strength
