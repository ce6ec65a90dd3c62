#pragma once
#include "statics/door_parts.h"

/// The open door: its states solved, where its forces go in the vehicle, and the rows about its check strap.
namespace thinskin::statics {

/// The load of a state with the slope in its worst direction for this door's masses (ST-11).
[[nodiscard]] results::LoadCase load_of(const layout::Layout& l, const results::DoorState& state, double mass_tolerance);

/// Force on the body (forward, left, up) of a force on the door given in the door's own axes, the door opened by theta (ST-12).
[[nodiscard]] results::Vec3 on_body(const layout::Layout& l, const results::Vec3& on_door, double theta_rad);
/// "pulled 225 N rearward and to the right, 647 N down"; pulled: away from the pillar along the leaf, or off the leaf's outer face.
[[nodiscard]] std::string body_words(const layout::Layout& l, const results::Vec3& on_door, double theta_rad);

/// Rows about the check strap. Each part of door.open that is given is required:
///   hold   torque of slope and wind against the measured holding torque         at most judgement: a catch wears
///   pull   the strap's force from it against half its strength                  at most judgement; the 2 is judgement
///   stop   flung open: force on the stop against half of what it bears          at most judgement
/// A figure that is missing makes its row not covered. `statics`: the states of the open door and `slam open`.
[[nodiscard]] std::vector<results::Check> strap_rows(const layout::Layout& l, const std::vector<HingeStatics>& statics);

} // namespace thinskin::statics
