#pragma once
#include "layout/layout.h"
#include "results/results.h"

namespace thinskin::actions {

/// What the job adds: item m (1 + tolerance), brackets, reinforcement, kg; on the rear axle by AC-23 with d = road.overhang and
/// L = road.wheelbase. Without one of them, or outside of AC-23: no axle figures, and the reason.
[[nodiscard]] results::Added added(const layout::Layout& l);

} // namespace thinskin::actions
