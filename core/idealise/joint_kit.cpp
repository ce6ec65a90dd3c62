#include "idealise/structure.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thinskin::idealise {

double half_side(double diameter) { return diameter * std::sqrt(std::numbers::pi) / 4; }

/// Holes and shank in bearing: 1/(E t) for the ply and 1/(E t) for the bolt, each ply.
/// Source: Tate and Rosenfeld 1946, from memory, shank bending left out.
double bearing_compliance(const layout::Ply& a, const layout::Ply& b)
{
    return 2 / (a.material.E * a.thickness) + 2 / (b.material.E * b.thickness);
}

/// A clearance hole gives way by its play before it bears, and friction is not counted: the joint gets the secant stiffness
/// through half the play at a force of the order a thin sheet bears (judgement). Without it the bolts would make skin and
/// angle one composite beam, which no clearance hole does.
double slip_compliance(const layout::Hardware& h)
{
    constexpr double force_at_play = 1000; // N
    return h.fitted ? 0.0 : h.play / force_at_play;
}

double outer_diameter(const layout::Stack& f, bool nut)
{
    const auto& washer = nut ? f.hardware.nut_washer : f.hardware.head_washer;
    if (washer) return washer->diameter;
    return nut ? f.hardware.tip_diameter : f.hardware.across_flats;
}

constexpr fem::SkinDirection directions[] = {fem::SkinDirection::x, fem::SkinDirection::y, fem::SkinDirection::z};

fem::PortRef skin_port(const Structure& s, layout::Point p, double half, int direction)
{
    const fem::Footprint where{p.x, p.y, half, half};
    return {s.skin_body, fem::skin_port(*s.skin, where, directions[direction]), where, directions[direction]};
}

fem::PortRef plate_port(const Structure& s, int plate, layout::Point p, double half, int direction)
{
    const PlateBody& b = s.plates[static_cast<std::size_t>(plate)];
    return {b.body, fem::plate_port(b.plate, {p.x, p.y, half, half}, directions[direction])};
}

/// What the end of an angle or a plate is fixed to: the ground, or the frame member of its side where that is in the model.
fem::PortRef frame_port(const Structure& s, const std::string& side, layout::Point p, const fem::Vec3& direction)
{
    if (!s.options.door_frame) return {};
    if (side == "left" || side == "right") p = {side == "left" ? 0 : s.layout->width, std::clamp(p.y, 0.0, s.layout->height)};
    else p = {std::clamp(p.x, 0.0, s.layout->width), side == "bottom" ? 0 : s.layout->height};
    fem::PortRef out{s.skin_body, {}};
    for (int d = 0; d < 3; ++d)
        if (direction(d) != 0)
            for (const auto& [dof, c] : skin_port(s, p, 0, d).row) out.row.emplace_back(dof, direction(d) * c);
    return out;
}

} // namespace thinskin::idealise
