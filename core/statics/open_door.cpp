#include "statics/open_door.h"

#include "base/quantity.h"
#include "statics/door_rules.h"

#include <cmath>
#include <fmt/core.h>

namespace thinskin::statics {

namespace {

using results::Vec3;

/// A force in panel axes in those of the vehicle: forward, left, up. See actions/axes.h for the other way.
Vec3 in_vehicle(model::Faces faces, const Vec3& f)
{
    const auto [x, y, z] = f;
    switch (faces) {
    case model::Faces::rear: return {0.0 - z, 0.0 - x, y};
    case model::Faces::front: return {z, x, y};
    case model::Faces::left: return {0.0 - x, z, y};
    case model::Faces::right: return {x, 0.0 - z, y};
    }
    return {0.0 - z, 0.0 - x, y};
}

constexpr double least = 0.5; ///< N: not worth words

/// "rearward", "to the left", or both when neither is small beside the other.
std::string direction(double forward, double left)
{
    const double share = std::tan(0.3926990817); // half of 45 degrees
    const bool along = std::abs(forward) >= share * std::abs(left), across = std::abs(left) >= share * std::abs(forward);
    const std::string a = forward > 0 ? "forward" : "rearward", b = left > 0 ? "to the left" : "to the right";
    return along && across ? a + " and " + b : along ? a : b;
}

} // namespace

results::LoadCase load_of(const layout::Layout& l, const results::DoorState& state, double mass_tolerance)
{
    const layout::Door& d = *l.door;
    results::LoadCase c;
    c.name = state.name;
    c.source = state.source;
    c.derivation = state.derivation;
    c.door_closed = false;
    c.acceleration_g = {0, -std::cos(state.slope_rad), 0};
    if (state.slope_rad != 0) {
        const FirstMoments all = moments(d, door_masses(l, mass_tolerance));
        const auto [y, e] = leaning_direction({.kg_y = all.kg_y, .kg_e = all.kg_e, .alpha = state.slope_rad});
        const double pull = state.sense * std::sin(state.slope_rad);
        c.acceleration_g[0] = (d.hinges_right ? -1 : 1) * pull * y;
        c.acceleration_g[2] = pull * e;
    }
    if (state.air_N != 0) c.on_item = results::LoadCase::ItemForce{{0, 0, state.sense * state.air_N}, {state.air_at_mm[0], state.air_at_mm[1], 0}};
    return c;
}

Vec3 on_body(const layout::Layout& l, const Vec3& on_door, double theta_rad)
{
    const double towards_edge = l.door->hinges_right ? -1 : 1;
    const auto [t, n] = turned_force({.F_t = 0.0 - towards_edge * on_door[0], .F_n = 0.0 - on_door[2], .theta = theta_rad});
    return in_vehicle(l.faces, {towards_edge * t, 0.0 - on_door[1], n});
}

std::string body_words(const layout::Layout& l, const Vec3& on_door, double theta_rad)
{
    const auto [forward, left, up] = on_body(l, on_door, theta_rad);
    const double along = (l.door->hinges_right ? 1 : -1) * on_door[0], out = 0.0 - on_door[2]; // of the force on the body, in the door's axes
    const double flat = std::hypot(forward, left);
    std::string words;
    if (flat >= least) words = fmt::format("{} {:.0f} N {}", (std::abs(along) >= std::abs(out) ? along : out) > 0 ? "pulled" : "pushed", flat, direction(forward, left));
    if (std::abs(up) >= least) words += fmt::format("{}{:.0f} N {}", words.empty() ? "" : ", ", std::abs(up), up < 0 ? "down" : "up");
    return words.empty() ? "nothing" : words;
}

} // namespace thinskin::statics
