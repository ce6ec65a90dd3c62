// Notation: d bolt diameter, mm. The values are requirements (mm), so the factor is 1.
#include "strength/bearing.h"

namespace thinskin::strength {

namespace {

base::Resistance minimum_edge_distance_formula(const MinimumEdgeDistance& in) { return base::covered(1.5 * in.d_mm, 1); }
base::Resistance minimum_spacing_formula(const MinimumSpacing& in) { return base::covered(3 * in.d_mm, 1); }

} // namespace

template <> const Clause<MinimumEdgeDistance>& clause<MinimumEdgeDistance>()
{
    static const Clause<MinimumEdgeDistance> c{
        {.id = "ED-1",
         .title = "Least edge distance of a bolt",
         .formula = "e_min = 1.5 d, from the bolt's centre",
         .unit = "mm",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J3.2",
         .edition = "2016",
         .label = base::Label::published_read,
         .range = "bolts in sheet; the figure was read in a design handbook and in a copy of the clause made by others",
         .not_for = "strength: tear-out is a check of its own (TO-1)"},
        {{&MinimumEdgeDistance::d_mm, {.name = "d", .unit = "mm", .meaning = "bolt diameter", .lower = 4, .upper = 25.4}}},
        &minimum_edge_distance_formula};
    return c;
}

template <> const Clause<MinimumSpacing>& clause<MinimumSpacing>()
{
    static const Clause<MinimumSpacing> c{
        {.id = "SP-1",
         .title = "Least spacing of bolts",
         .formula = "s_min = 3 d, between centres",
         .unit = "mm",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J3.1",
         .edition = "2016",
         .label = base::Label::published_read,
         .range = "bolts in sheet; the figure was read in a design handbook and in a copy of the clause made by others",
         .not_for = "strength: each bolt's bearing is a check of its own (BB-1, BB-2)"},
        {{&MinimumSpacing::d_mm, {.name = "d", .unit = "mm", .meaning = "bolt diameter", .lower = 4, .upper = 25.4}}},
        &minimum_spacing_formula};
    return c;
}

base::Resistance minimum_edge_distance(const MinimumEdgeDistance& in) { return resistance(in); }
base::Resistance minimum_spacing(const MinimumSpacing& in) { return resistance(in); }

const base::Card& minimum_edge_distance_card() { return clause<MinimumEdgeDistance>().card(); }
const base::Card& minimum_spacing_card() { return clause<MinimumSpacing>().card(); }

} // namespace thinskin::strength
