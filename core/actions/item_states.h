#pragma once
#include "actions/road_factors.h"

namespace thinskin::actions {

/// Load cases of the item's own, where the case asks for them:
///   each of item.loads            its force with 1 down; both_ways: once more with its sign turned
///   person                        item.person: weight on one foot at its place, with 1 down, the vehicle parked                 [AC-3]
///   air at speed                  item.air_speed, with the road's `down`: the air on its box by AC-16, at the middle of the box
///     rear panel                  in the wake: suction out of the panel, C = 0.3 on its face
///     side panel                  drag rearward, C = 1.3 on its end; once more each way across the panel, C = 1.3 on its face: crosswind
///                                 and passing vehicles
///     front panel                 pressed on the panel, C = 1.3 on its face
/// C = 1.3: a flat plate square to the stream has 1.28 (experiments in a wind tunnel, teaching page of the United States' aeronautics
/// agency: published (read)); a box beside a wall 1.1 to 1.3, suction in the wake 0.1 to 0.3 (from memory).
/// Not run, with reason and key: no box, a speed outside of AC-16, no road to drive on. What is not asked for is no load case:
/// states_not_asked() says so.
void add_item_states(LoadCases& out, const layout::Layout& l, const RoadFactors& road);

/// "air on the item at speed: not run, ... (item.air_speed)". Empty without an item.
[[nodiscard]] std::vector<std::string> states_not_asked(const layout::Layout& l);

inline constexpr double box_coefficient = 1.3, wake_suction = 0.3;

} // namespace thinskin::actions
