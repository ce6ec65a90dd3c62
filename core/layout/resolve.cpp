#include "layout/resolver.h"

namespace thinskin::layout {

namespace {

void note_what_is_not_covered(Resolver& r)
{
    const model::Reinforcement& more = r.source.reinforcement;
    for (const auto& b : more.boards) r.not_covered("reinforcement", b.name, "the catalogue has no stiffness and no bending strength of wood: a board is left out", "reinforcement.backing_plates: a steel plate instead of the board");
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
    check_own_rows(r);
    check_geometry(r);
    Result result;
    result.diagnostics = std::move(r.diagnostics);
    if (!base::has_errors(result.diagnostics)) result.layout = std::move(r.out);
    return result;
}

} // namespace thinskin::layout
