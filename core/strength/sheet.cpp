// Notation: Fy yield strength of the sheet, t core thickness
#include "strength/sheet.h"

namespace thinskin::strength {

namespace {

constexpr double Omega = 1.67;

base::Resistance sheet_stress_formula(const SheetStress& in) { return base::covered(in.Fy_MPa, Omega); }
base::Resistance shear_flow_formula(const ShearFlow& in) { return base::covered(0.6 * in.Fy_MPa * in.t_mm, Omega); }

base::Symbol yield()
{
    return {.name = "Fy", .unit = "MPa", .meaning = "least yield strength of the sheet (drawing grades list a greatest one)", .lower = 80, .upper = 700};
}

} // namespace

template <> const Clause<SheetStress>& clause<SheetStress>()
{
    static const Clause<SheetStress> c{
        {.id = "SK-1",
         .title = "Stress in the skin outside washers",
         .formula = "von Mises <= Fy/1.67",
         .unit = "MPa",
         .rule = "allowable_strength",
         .source = "first yield of the surface with the factor of bending members",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "both faces, outside the footprints of washers and plates",
         .not_for = "hole edges, buckling, denting and oil-canning, fatigue"},
        {{&SheetStress::Fy_MPa, yield()}},
        &sheet_stress_formula};
    return c;
}

template <> const Clause<ShearFlow>& clause<ShearFlow>()
{
    static const Clause<ShearFlow> c{
        {.id = "SF-1",
         .title = "Shear flow in the skin",
         .formula = "q = 0.6 Fy t",
         .unit = "N/mm",
         .rule = "allowable_strength",
         .source = "AISI S100-16 G2.1, yield branch",
         .edition = "2016",
         .label = base::Label::from_memory,
         .range = "yield only; 0.60 Fy was read in a paper that quotes the clause, a handbook of the 1990s allows 0.40 Fy; 1.67, the factor of hot-rolled steel, in place of "
                  "the clause's 1.60 (from memory); SHEAR BUCKLING IS NOT INCLUDED",
         .not_for = "shear buckling of the field, the joint between skin and frame (folded, glued or spot-welded hem)"},
        {{&ShearFlow::t_mm, {.name = "t", .unit = "mm", .meaning = "core thickness of the sheet", .lower = 0.3, .upper = 4.76}},
         {&ShearFlow::Fy_MPa, yield()}},
        &shear_flow_formula};
    return c;
}

base::Resistance sheet_stress(const SheetStress& in) { return resistance(in); }
base::Resistance shear_flow(const ShearFlow& in) { return resistance(in); }

const base::Card& sheet_stress_card() { return clause<SheetStress>().card(); }
const base::Card& shear_flow_card() { return clause<ShearFlow>().card(); }

} // namespace thinskin::strength
