#pragma once
#include "layout/layout.h"
#include "results/results.h"

namespace thinskin::actions {

/// The states of the open door, the vehicle standing: what acts on it, not yet how the door takes it (statics does that).
///   open                  level, no wind: the weight alone, any angle
///   open on the slope     slope of door.open.slope in the direction that turns the door most, either way            [ST-11]
///   open in the wind      C A rho v^2/2 square to the leaf at the middle of the area, either way, C = 1.2            [AC-16]
///   on the slope in the wind: both, the same way
/// The area is the leaf and what of the item's box stands out beside it. A door flung open is a load case (load_cases.h).
/// Every state holds at each angle: a slope of unknown direction and a wind square to the leaf know no angle; only where the forces
/// point on the body changes. Not run, with reason and key: no angle, no slope, no wind, no edge speed. Empty for what is not a
/// side-hinged door. C = 1.2: from memory. The wind is that of the gusts.
[[nodiscard]] results::OpenDoor open_door(const layout::Layout& l);

/// Leaf and item against the wind: area in mm2 and its middle.
struct WindArea { double mm2 = 0, x = 0, y = 0; };
[[nodiscard]] WindArea wind_area(const layout::Layout& l);

/// Force coefficient of a flat leaf square to the wind; from memory.
inline constexpr double leaf_coefficient = 1.2;

} // namespace thinskin::actions
