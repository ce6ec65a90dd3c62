// Notation (AISI S100-16 Appendix 1)
//   w, t    flat width and thickness of a wall, mm      k   plate buckling coefficient      rho   effective share of a wall
#include "strength/ribs.h"

#include <algorithm>
#include <cmath>

namespace thinskin::strength {

namespace {

constexpr double held_by_two_edges = 4, held_by_one_edge = 0.43;

double effective_share(double k, double w_t, const ThinRib& in)
{
    const double slenderness = 1.052 * w_t * std::sqrt(in.Fy_MPa / (k * in.E_MPa));
    return slenderness <= 0.673 ? 1.0 : std::min(1.0, (1 - 0.22 / slenderness) / slenderness);
}

base::Resistance formula(const ThinRib& in)
{
    const double share = std::min(effective_share(held_by_two_edges, in.w_held_mm / in.t_mm, in), effective_share(held_by_one_edge, in.w_free_mm / in.t_mm, in));
    return base::covered(share * in.Fy_MPa, 1.67);
}

} // namespace

template <> const Clause<ThinRib>& clause<ThinRib>()
{
    static const Clause<ThinRib> c{
        {.id = "RB-1",
         .title = "Largest stress in a thin-walled rib",
         .formula = "Fn = rho Fy, rho = (1 - 0.22/l)/l above l = 0.673, l = 1.052 (w/t) (Fy/(k E))^0.5, of the wall with the least rho; k = 4 held by two edges, 0.43 by one",
         .unit = "MPa",
         .rule = "allowable_strength",
         .source = "AISI S100-16 Appendix 1, used for the whole section",
         .edition = "2016",
         .label = base::Label::judgement,
         .range = "hats, channels, boxes and angles of sheet, walls up to 200 t wide; the effective width was read in a design manual; that it counts for the whole section is ours, on the safe side",
         .not_for = "distortion of an open rib that nothing holds, crushing where something presses on the crown, spot welds, torsion"},
        {{&ThinRib::w_held_mm, {.name = "w_held", .unit = "mm", .meaning = "widest flat part between two edges, 0: none", .lower = 0, .upper = 300}},
         {&ThinRib::w_free_mm, {.name = "w_free", .unit = "mm", .meaning = "widest flat part with a free edge, 0: none", .lower = 0, .upper = 100}},
         {&ThinRib::t_mm, {.name = "t", .unit = "mm", .meaning = "wall", .lower = 0.4, .upper = 6}},
         {&ThinRib::Fy_MPa, {.name = "Fy", .unit = "MPa", .meaning = "yield strength", .lower = 35, .upper = 550}},
         {&ThinRib::E_MPa, {.name = "E", .unit = "MPa", .meaning = "modulus of elasticity", .lower = 65000, .upper = 215000}}},
        &formula};
    return c;
}

} // namespace thinskin::strength
