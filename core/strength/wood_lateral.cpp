// Notation (NDS 2018 12.3): main member the wood, side member the steel plate
//   lm, ls    bearing lengths           Fem, Fes  dowel bearing strengths      Fyb  bending yield strength of the screw
//   Re = Fem/Fes, Rt = lm/ls            D         root diameter in the modes   p    penetration with the tip
// Accuracy: closed formulas; tests/published/strength_wood.cpp reproduces printed cells of the standard's tables.
#include "strength/screw_symbols.h"
#include "strength/wood.h"
#include "strength/wood_symbols.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thinskin::strength {

namespace {

using wood::in_mm;
using wood::psi;

base::Resistance wood_screw_lateral_formula(const WoodScrewLateral& in)
{
    const double D = in.D_mm;
    if (!(in.Dr_mm < D)) return base::not_covered(fmt::format("Dr = {:g} mm is not below D = {:g} mm", in.Dr_mm, D));
    if (!(in.p_mm >= 6 * D)) return base::not_covered(fmt::format("p = {:g} mm is below 6 D = {:g} mm", in.p_mm, 6 * D));
    const YieldModes m = yield_modes({.D = in.Dr_mm, .lm = in.p_mm - D, .ls = in.ts_mm, .Fem = dowel_bearing_MPa(in.G),
                                      .Fes = 2.2 * in.Fus_MPa / 1.6, .Fyb = bending_yield_MPa(D)});
    const double Z = least(m) / reduction_term(in.Dr_mm) * std::min(in.p_mm / (10 * D), 1.0);
    return base::covered(Z * in.C_D * in.C_M * in.C_t, 1);
}

} // namespace

YieldModes yield_modes(const YieldLimits& in)
{
    const double D = in.D, Re = in.Fem / in.Fes, Rt = in.lm / in.ls, bend = 2 * in.Fyb * D * D / (3 * in.Fem);
    const double k1 = (std::sqrt(Re + 2 * Re * Re * (1 + Rt + Rt * Rt) + Rt * Rt * Re * Re * Re) - Re * (1 + Rt)) / (1 + Re);
    const double k2 = -1 + std::sqrt(2 * (1 + Re) + bend * (1 + 2 * Re) / (in.lm * in.lm));
    const double k3 = -1 + std::sqrt(2 * (1 + Re) / Re + bend * (2 + Re) / (in.ls * in.ls));
    return {.Im = D * in.lm * in.Fem,
            .Is = D * in.ls * in.Fes,
            .II = k1 * D * in.ls * in.Fes,
            .IIIm = k2 * D * in.lm * in.Fem / (1 + 2 * Re),
            .IIIs = k3 * D * in.ls * in.Fem / (2 + Re),
            .IV = D * D * std::sqrt(2 * in.Fem * in.Fyb / (3 * (1 + Re)))};
}

double least(const YieldModes& m) { return std::min({m.Im, m.Is, m.II, m.IIIm, m.IIIs, m.IV}); }

double reduction_term(double Dr_mm)
{
    const double D = Dr_mm / in_mm; // Table 12.3.1B, footnote 1: the root diameter
    return D <= 0.17 ? 2.2 : 10 * D + 0.5;
}

double dowel_bearing_MPa(double G) { return 16600 * psi * std::pow(G, 1.84); } // D below 1/4 in

double bending_yield_MPa(double D_mm)
{
    const double D = D_mm / in_mm; // Table I1, nominal diameter
    const double ksi = D <= 0.142 ? 100 : D <= 0.177 ? 90 : D <= 0.236 ? 80 : 70;
    return 1000 * ksi * psi;
}

template <> const Clause<WoodScrewLateral>& clause<WoodScrewLateral>()
{
    static const Clause<WoodScrewLateral> c{
        {.id = "WS-3",
         .title = "Wood screw in shear through a steel plate or skin",
         .formula = "Z' = min(Im, Is, II, IIIm, IIIs, IV)/KD min(p/(10 D), 1) C_D C_M C_t, lm = p - D, ls = ts, Fem = 16600 psi G^1.84, Fes = 2.2 Fus/1.6",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "NDS 12.3",
         .edition = "2018",
         .label = base::Label::read_in_copy,
         .range = "screws No. 6 to No. 14, p of 6 D and more; read in a copy of the standard made by others, with the yield bands of its table I1. Printed tables "
                  "start at a plate of 0.91 mm, the equations have no limit: 0.6 mm is ours (judgement). The value contains its margin: factor 1",
         .not_for = "the plate's own bearing (2.7 t1 d Fu1 as in SC-1, over 3.00, judgement) and tear-out (TO-2), end grain, "
                    "splitting near an edge, repeated load"},
        {{&WoodScrewLateral::D_mm, {.name = "D", .unit = "mm", .meaning = "nominal diameter of the screw", .lower = 3.5, .upper = 6.34}},
         {&WoodScrewLateral::Dr_mm, {.name = "Dr", .unit = "mm", .meaning = "root diameter of the thread", .lower = 2.2, .upper = 5.5}},
         {&WoodScrewLateral::G, wood::gravity()},
         {&WoodScrewLateral::p_mm, {.name = "p", .unit = "mm", .meaning = "penetration into the wood, with the tip", .lower = 0, .upper = 200}},
         {&WoodScrewLateral::ts_mm, {.name = "ts", .unit = "mm", .meaning = "core thickness of the steel plate or skin", .lower = 0.6, .upper = 6.35}},
         {&WoodScrewLateral::Fus_MPa, symbols::tensile("Fus", "tensile strength of the plate or skin")},
         {&WoodScrewLateral::C_D, wood::duration()},
         {&WoodScrewLateral::C_M, wood::moisture()},
         {&WoodScrewLateral::C_t, wood::temperature()}},
        &wood_screw_lateral_formula};
    return c;
}

base::Resistance wood_screw_lateral(const WoodScrewLateral& in) { return resistance(in); }
const base::Card& wood_screw_lateral_card() { return clause<WoodScrewLateral>().card(); }

} // namespace thinskin::strength
