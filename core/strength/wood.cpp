// Notation (NDS 2018 12.2, 12.4): G specific gravity, D nominal diameter, pt thread length in the wood, DH head diameter, tns board,
// W', Z' adjusted withdrawal and lateral values, a angle between the force and the wood's surface
#include "strength/wood.h"
#include "strength/screw_symbols.h"
#include "strength/wood_symbols.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thinskin::strength {

namespace {

using wood::psi;

base::Resistance wood_screw_withdrawal_formula(const WoodScrewWithdrawal& in)
{
    const double W = 2850 * psi * in.G * in.G * in.D_mm; // 12.2-2, N per mm of thread
    return base::covered(W * in.pt_mm * in.C_D * in.C_M * in.C_t, 1);
}

base::Resistance wood_head_pull_through_formula(const WoodHeadPullThrough& in)
{
    const double counted = std::min(in.tns_mm, 2.5 * in.DH_mm);
    const double W_H = 690 * psi * std::numbers::pi * in.DH_mm * in.G * in.G * counted; // 12.2-6a
    return base::covered(W_H * in.C_D * in.C_M * in.C_t, 1);
}

base::Resistance wood_screw_combined_formula(const WoodScrewCombined& in)
{
    const double c = std::cos(in.a_rad), s = std::sin(in.a_rad);
    return base::covered(in.W_N * in.Z_N / (in.W_N * c * c + in.Z_N * s * s), 1); // 12.4-1
}

} // namespace

template <> const Clause<WoodScrewWithdrawal>& clause<WoodScrewWithdrawal>()
{
    static const Clause<WoodScrewWithdrawal> c{
        {.id = "WS-1",
         .title = "Wood screw pulled out of wood",
         .formula = "W' = 2850 psi G^2 D pt C_D C_M C_t",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "NDS 12.2.2",
         .edition = "2018",
         .label = base::Label::published_read,
         .range = "screws No. 6 to No. 24 in side grain, G 0.31 to 0.73; read in handbooks and in a copy of the standard made by others. The value contains its margin: "
                  "factor 1",
         .not_for = "end grain (not permitted), plywood (a study found the formula too high for it: take G 0.42 and test), the screw's own tension (SC-5), "
                    "pull-through at the head (WS-2), repeated load"},
        {{&WoodScrewWithdrawal::D_mm, {.name = "D", .unit = "mm", .meaning = "nominal diameter of the screw", .lower = 3.5, .upper = 9.45}},
         {&WoodScrewWithdrawal::G, wood::gravity()},
         {&WoodScrewWithdrawal::pt_mm,
          {.name = "pt", .unit = "mm", .meaning = "length of THREAD in the wood (about 2/3 of the screw)", .lower = 0, .upper = 200, .lower_open = true}},
         {&WoodScrewWithdrawal::C_D, wood::duration()},
         {&WoodScrewWithdrawal::C_M, wood::moisture()},
         {&WoodScrewWithdrawal::C_t, wood::temperature()}},
        &wood_screw_withdrawal_formula};
    return c;
}

template <> const Clause<WoodHeadPullThrough>& clause<WoodHeadPullThrough>()
{
    static const Clause<WoodHeadPullThrough> c{
        {.id = "WS-2",
         .title = "Head of a wood screw pulled through a board",
         .formula = "W_H' = 690 psi pi DH G^2 tns C_D C_M C_t, tns counted up to 2.5 DH",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "NDS 12.2.5",
         .edition = "2018",
         .label = base::Label::from_memory,
         .range = "heads with a flat underside of 5.94 to 12.7 mm, board 7.93 to 38.1 mm; the equation was read in a copy made by others, the limit of 2.5 DH is from "
                  "memory. The value contains its margin: factor 1",
         .not_for = "countersunk heads (some tested lower), a washer under the head, withdrawal of the thread (WS-1), repeated load"},
        {{&WoodHeadPullThrough::DH_mm, {.name = "DH", .unit = "mm", .meaning = "head diameter", .lower = 5.94, .upper = 12.7}},
         {&WoodHeadPullThrough::G, wood::gravity()},
         {&WoodHeadPullThrough::tns_mm, {.name = "tns", .unit = "mm", .meaning = "net thickness of the board under the head", .lower = 7.93, .upper = 38.1}},
         {&WoodHeadPullThrough::C_D, wood::duration()},
         {&WoodHeadPullThrough::C_M, wood::moisture()},
         {&WoodHeadPullThrough::C_t, wood::temperature()}},
        &wood_head_pull_through_formula};
    return c;
}

template <> const Clause<WoodScrewCombined>& clause<WoodScrewCombined>()
{
    static const Clause<WoodScrewCombined> c{
        {.id = "WS-4",
         .title = "Wood screw pulled at an angle",
         .formula = "Z'a = W' Z'/(W' cos^2 a + Z' sin^2 a)",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "NDS 12.4.1",
         .edition = "2018",
         .label = base::Label::read_in_copy,
         .range = "W' and Z' are the adjusted values of WS-1 and WS-3; the capacity is for the resultant force; read in a copy of the standard made by others",
         .not_for = "metal that governs: the plate's own bearing (SC-1) and the screw (SC-4, SC-5) are checks of their own"},
        {{&WoodScrewCombined::W_N, symbols::maker_value("W", "adjusted withdrawal value of WS-1, the whole screw")},
         {&WoodScrewCombined::Z_N, symbols::maker_value("Z", "adjusted lateral value of WS-3")},
         {&WoodScrewCombined::a_rad,
          {.name = "a", .unit = "rad", .meaning = "angle between the force and the wood's surface", .lower = 0, .upper = 1.5708}}},
        &wood_screw_combined_formula};
    return c;
}

base::Resistance wood_screw_withdrawal(const WoodScrewWithdrawal& in) { return resistance(in); }
base::Resistance wood_head_pull_through(const WoodHeadPullThrough& in) { return resistance(in); }
base::Resistance wood_screw_combined(const WoodScrewCombined& in) { return resistance(in); }

const base::Card& wood_screw_withdrawal_card() { return clause<WoodScrewWithdrawal>().card(); }
const base::Card& wood_head_pull_through_card() { return clause<WoodHeadPullThrough>().card(); }
const base::Card& wood_screw_combined_card() { return clause<WoodScrewCombined>().card(); }

} // namespace thinskin::strength
