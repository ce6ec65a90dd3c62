#include "layout/resolver.h"

namespace thinskin::layout {

namespace {

void note_what_is_not_covered(Resolver& r)
{
    const model::Reinforcement& more = r.source.reinforcement;
    for (const auto& b : more.boards) r.not_covered("reinforcement", b.name, "the catalogue has no stiffness and no bending strength of wood: a board is left out", "reinforcement.backing_plates: a steel plate instead of the board");
    if (r.source.road && !r.source.road->pulse.empty() && !catalogue::base_pulse(r.source.road->pulse))
        r.error(r.source.road->at, "road.pulse", catalogue::no_such_row(catalogue::Lookup::base_pulse, r.source.road->pulse));
    if (r.source.road && !catalogue::road_surface(r.source.road->surface))
        r.error(r.source.road->at, "road.surface", catalogue::no_such_row(catalogue::Lookup::road_surface, r.source.road->surface));
}

} // namespace

Result resolve(const model::Case& c)
{
    Resolver r{c};
    r.out.source = &c;
    resolve_panel(r);
    resolve_item(r);
    resolve_door(r);
    resolve_angles(r);      // before the brackets: stacks go through them
    resolve_plates(r);
    resolve_brackets(r);
    resolve_feet(r);
    resolve_straps(r);
    note_what_is_not_covered(r);
    check_geometry(r);
    Result result;
    result.diagnostics = std::move(r.diagnostics);
    if (!base::has_errors(result.diagnostics)) result.layout = std::move(r.out);
    return result;
}

} // namespace thinskin::layout
