// Notation (AISC 360-16 J2.4, AISI S100-16 J2.5): w leg size, FEXX electrode strength, t, Fu sheet beside the weld, L weld length
#include "strength/welds.h"

namespace thinskin::strength {

namespace {

base::Resistance fillet_throat_formula(const FilletThroat& in)
{
    return base::covered(0.60 * in.FEXX_MPa * 0.707 * in.w_mm, 2.00);
}

base::Resistance sheet_beside_fillet_formula(const SheetBesideFillet& in)
{
    const double t = in.t_mm, Fu = in.Fu_MPa, L_t = in.L_mm / t;
    if (in.direction == weld_across_force) return base::covered(t * Fu, 2.35);
    if (L_t < 25) return base::covered((1 - 0.01 * L_t) * t * Fu, 2.55);
    return base::covered(0.75 * t * Fu, 3.05);
}

} // namespace

template <> const Clause<FilletThroat>& clause<FilletThroat>()
{
    static const Clause<FilletThroat> c{
        {.id = "WE-1",
         .title = "Fillet weld on its throat, per mm",
         .formula = "rn = 0.60 FEXX 0.707 w",
         .unit = "N/mm",
         .rule = "allowable_strength",
         .source = "AISC 360-16 J2.4",
         .edition = "2016",
         .label = base::Label::from_memory,
         .range = "equal-leg fillets with full throat, any direction of force taken as along the weld",
         .not_for = "the part beside the weld (WE-2), partial or cold welds, root opening, fatigue, aluminium"},
        {{&FilletThroat::w_mm, {.name = "w", .unit = "mm", .meaning = "leg size", .lower = 2, .upper = 16}},
         {&FilletThroat::FEXX_MPa, {.name = "FEXX", .unit = "MPa", .meaning = "tensile strength of the weld metal", .lower = 400, .upper = 760}}},
        &fillet_throat_formula};
    return c;
}

template <> const Clause<SheetBesideFillet>& clause<SheetBesideFillet>()
{
    static const Clause<SheetBesideFillet> c{
        {.id = "WE-2",
         .title = "Sheet or thin part beside a fillet weld, per mm",
         .formula = "across: t Fu (2.35); along: (1 - 0.01 L/t) t Fu for L/t < 25 (2.55), 0.75 t Fu above (3.05)",
         .unit = "N/mm",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J2.5",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "thinner part 0.61 to 4.76 mm; above 2.54 mm the throat is a check of its own (WE-1); at L/t = 25 the factor jumps, so the capacity does; read in a copy made by others, 0.61 mm is ours; its own throat rule, 0.75 FEXX over 2.55, is 2 % below WE-1",
         .not_for = "welds shorter than 10 mm, flare welds, fatigue, aluminium"},
        {{&SheetBesideFillet::t_mm, {.name = "t", .unit = "mm", .meaning = "core thickness of the thinner part", .lower = 0.61, .upper = 4.76}},
         {&SheetBesideFillet::Fu_MPa, {.name = "Fu", .unit = "MPa", .meaning = "tensile strength of that part", .lower = 200, .upper = 690}},
         {&SheetBesideFillet::L_mm, {.name = "L", .unit = "mm", .meaning = "length of the weld", .lower = 10}},
         {&SheetBesideFillet::direction,
          {.name = "direction", .unit = "-", .meaning = "0 weld along the force, 1 across it", .choices = {weld_along_force, weld_across_force}}}},
        &sheet_beside_fillet_formula};
    return c;
}

base::Resistance fillet_throat(const FilletThroat& in) { return resistance(in); }
base::Resistance sheet_beside_fillet(const SheetBesideFillet& in) { return resistance(in); }

const base::Card& fillet_throat_card() { return clause<FilletThroat>().card(); }
const base::Card& sheet_beside_fillet_card() { return clause<SheetBesideFillet>().card(); }

} // namespace thinskin::strength
