#include "layout/resolver.h"

namespace thinskin::layout {

namespace {

/// A row that the road names: the program's, the case's own, or an error.
template <class Row, class Own>
void look_up(Resolver& r, const char* key, const std::string& name, const Row* known, const base::Location& at, const std::vector<Own>& own, catalogue::Lookup what, const char* noun)
{
    if (known) return;
    if (const Own* row = catalogue::find_own(own, name)) return r.took(noun, *row);
    std::vector<std::string> names;
    for (const Own& o : own) names.push_back(o.name);
    r.error(at, std::string("road.") + key, catalogue::no_such_row(what, name, names));
}

/// A road that asks less than a sealed one is worth a look, whoever wrote it.
void compare_with_sealed(Resolver& r, const std::string& name)
{
    const auto* own = catalogue::find_own(r.source.own.roads, name);
    const auto* sealed = catalogue::road_surface("sealed");
    if (!own || !sealed) return;
    const catalogue::RoadSurface road = catalogue::as_row(*own);
    if (road.down < sealed->down || road.up < sealed->up || road.lateral < sealed->lateral || road.fore_aft < sealed->fore_aft)
        r.caution("the case's own road " + name + " asks less, in some direction, than the program's row for sealed roads");
}

} // namespace

void check_own_rows(Resolver& r)
{
    for (const catalogue::OwnRowProblem& p : catalogue::problems_of(r.source.own)) r.error(p.at, p.path, p.message);
    if (!r.source.road) return;
    const model::Road& road = *r.source.road;
    if (!road.pulse.empty()) look_up(r, "pulse", road.pulse, catalogue::base_pulse(road.pulse), road.pulse_at, r.source.own.base_pulses, catalogue::Lookup::base_pulse, "base pulse");
    look_up(r, "surface", road.surface, catalogue::road_surface(road.surface), road.surface_at, r.source.own.roads, catalogue::Lookup::road_surface, "road");
    compare_with_sealed(r, road.surface);
}

} // namespace thinskin::layout
