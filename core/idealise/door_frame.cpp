// The door's own frame members under the skin's edges, for vibration (ID-13).
#include "idealise/structure.h"
#include "idealise/vibration.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::idealise {

namespace {

constexpr const char* sides[] = {"left", "right", "bottom", "top"};
constexpr double tonnes_mm3 = 1e-12;         // kg/m3 -> t/mm3

bool upright(std::size_t side) { return side < 2; }
double length(const layout::Layout& l, std::size_t side) { return upright(side) ? l.height : l.width; }

/// Depth direction of the section stands off the skin; the frame is of the skin's metal.
fem::RibModel frame_member(const layout::Layout& l, std::size_t side)
{
    const catalogue::Section& s = *l.frames[side].section;
    const catalogue::Material& m = l.skin.material;
    fem::RibModel r;
    r.name = fmt::format("frame {}", sides[side]);
    const double x = side == 1 ? l.width : 0, y = side == 3 ? l.height : 0;
    r.from = {x, y};
    r.to = {upright(side) ? x : l.width, upright(side) ? l.height : y};
    r.E = m.E;
    r.G = m.G;
    r.A = s.A;
    r.I_normal = s.I_x;
    r.I_lateral = s.I_y;
    // A skin that is hinged or sprung along the edge does not turn with the frame.
    r.J = l.edges[side].kind == model::EdgeCondition::Kind::held ? s.J : 0;
    r.offset_z = -(l.skin.core / 2 + s.y_c);
    return r;
}

} // namespace

std::string missing_frame(const layout::Layout& l)
{
    if (!on_a_door(l)) return "";
    if (!l.door) return "door";
    for (std::size_t k = 0; k < 4; ++k)
        if (!l.frames[k].section) return fmt::format("panel.frame.{}.section", sides[k]);
    if (!l.door->has_hinges) return "door.hinges";
    return l.door->latches.empty() ? "door.latches" : "";
}

void put_on_door_frame(const layout::Layout& l, fem::SkinModel& m)
{
    for (fem::RibModel& r : m.ribs) r.ends = {}; // they end in the frame, which now moves
    for (std::size_t k = 0; k < 4; ++k) {
        m.edges[k] = {fem::Hold::free, 0};
        m.ribs.push_back(frame_member(l, k));
    }
    for (const double y : l.door->hinge_heights) m.held_points.push_back({l.door->hinges_right ? l.width : 0, std::clamp(y, 0.0, l.height)});
    for (const layout::Point p : l.door->latches) m.held_points.push_back({std::clamp(p.x, 0.0, l.width), std::clamp(p.y, 0.0, l.height)});
}

std::vector<double> door_frame_masses(const layout::Layout& l)
{
    const double density = l.skin.material.density * tonnes_mm3;
    double known = density * l.width * l.height * l.skin.core;
    std::vector<double> out;
    for (std::size_t k = 0; k < 4; ++k) {
        out.push_back(density * l.frames[k].section->A);
        known += out.back() * length(l, k);
    }
    const double rest = std::max(l.door->mass * 1e-3 - known, 0.0) / (2 * (l.width + l.height));
    for (double& m : out) m += rest;
    return out;
}

} // namespace thinskin::idealise
