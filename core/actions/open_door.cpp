#include "actions/open_door.h"

#include "actions/vehicle.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::actions {

namespace {

using results::DoorState;
using results::OpenDoor;

const char* way(int sense) { return sense > 0 ? "turns it farther open" : "turns it shut"; }

DoorState at_rest()
{
    DoorState s;
    s.name = "open";
    s.source = "weight";
    s.derivation = "standing level, no wind: the weight alone, the same at every angle";
    return s;
}

void lean(DoorState& s, double slope)
{
    s.slope_rad = std::atan(slope);
    s.derivation += fmt::format("{}slope of {:g} % in the direction that {} most", s.derivation.empty() ? "" : "; ", slope * 100, way(s.sense));
}

void blow(DoorState& s, const layout::Layout& l, double wind)
{
    const WindArea a = wind_area(l);
    s.air_N = air_force({.C = leaf_coefficient, .A_mm2 = a.mm2, .v_mm_s = wind}).nominal;
    s.air_at_mm = {a.x, a.y};
    s.derivation += fmt::format("{}wind of {:g} m/s square to the leaf, {:.2f} m2 with C = {:g}: {:.0f} N in the middle of the area (AC-16)", s.derivation.empty() ? "" : "; ", wind / 1000, a.mm2 / 1e6,
                                leaf_coefficient, s.air_N);
}

/// Both ways round: a parked vehicle stands as it stands, the wind comes from where it comes.
void add_both(OpenDoor& out, const layout::Layout& l, const char* name, bool slope, bool wind)
{
    for (const int sense : {1, -1}) {
        DoorState s;
        s.name = fmt::format("{}, {}", name, way(sense));
        s.source = "case file, door.open";
        s.sense = sense;
        if (slope) lean(s, *l.door->slope);
        if (wind) blow(s, l, *l.door->wind);
        out.states.push_back(std::move(s));
    }
}

void name_missing(OpenDoor& out, const layout::Door& d)
{
    if (d.angles.empty()) out.not_run.push_back({"door open at an angle", "how far it opens is not given", "door.opening_angle"});
    if (!d.slope) out.not_run.push_back({"door open on a slope", "no slope is given", "door.open.slope"});
    if (!d.wind) out.not_run.push_back({"wind on the open door", "no wind is given", "door.open.wind"});
    if (!d.open_edge_speed) out.not_run.push_back({"door flung open into its stop", "edge speed and stop are not given", "door.open.edge_speed"});
}

} // namespace

WindArea wind_area(const layout::Layout& l)
{
    WindArea a{l.width * l.height, l.width / 2, l.height / 2};
    if (!l.item || !l.item->has_box) return a;
    const auto& from = l.item->box_from;
    const auto& size = l.item->box_size;
    const auto overlap = [](double low, double high, double to) { return std::max(0.0, std::min(high, to) - std::max(low, 0.0)); };
    const auto middle = [](double low, double high, double to) { return 0.5 * (std::min(high, to) + std::max(low, 0.0)); };
    const double x1 = from[0] + size[0], y1 = from[1] + size[1];
    const double box = size[0] * size[1], hidden = overlap(from[0], x1, l.width) * overlap(from[1], y1, l.height);
    // The box less what of it lies over the leaf.
    const double x = box * (from[0] + x1) / 2 - (hidden > 0 ? hidden * middle(from[0], x1, l.width) : 0);
    const double y = box * (from[1] + y1) / 2 - (hidden > 0 ? hidden * middle(from[1], y1, l.height) : 0);
    const double all = a.mm2 + box - hidden;
    return {all, (a.mm2 * a.x + x) / all, (a.mm2 * a.y + y) / all};
}

OpenDoor open_door(const layout::Layout& l)
{
    OpenDoor out;
    if (l.kind != model::PanelKind::door || !l.door || !l.door->has_hinges) return out;
    const layout::Door& d = *l.door;
    out.angles_rad = d.angles;
    name_missing(out, d);
    if (d.angles.empty() && !d.slope && !d.wind) return out;
    if (d.angles.empty()) out.angles_rad = {0};
    out.states.push_back(at_rest());
    if (d.slope) add_both(out, l, "open on the slope", true, false);
    if (d.wind) add_both(out, l, "open in the wind", false, true);
    if (d.slope && d.wind) add_both(out, l, "open on the slope in the wind", true, true);
    return out;
}

} // namespace thinskin::actions
