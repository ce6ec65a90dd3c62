#pragma once
#include "layout/layout.h"
#include "results/results.h"

namespace thinskin::actions {

/// A vector in vehicle axes (forward, left, up) written in panel axes (x right, y up, z outward, seen from outside).
///   rear   x = vehicle right,  z = rearward        left   x = rearward,  z = vehicle left
///   front  x = vehicle left,   z = forward         right  x = forward,   z = vehicle right
/// Units pass through; no errors. The only place that knows how a panel stands in the vehicle.
[[nodiscard]] results::Vec3 to_panel(model::Faces faces, const results::Vec3& vehicle);

/// Panel words for the signs of a force on the masses: "down", "up", "out", "in", "left", "right"; the order is
/// y, z, x and a component of zero has no word: {0.35, -3, 0.5} -> "down, out, right".
[[nodiscard]] std::string panel_words(const results::Vec3& panel);

} // namespace thinskin::actions
