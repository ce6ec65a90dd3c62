#pragma once
#include "base/card.h"

namespace thinskin::actions {

/// AC-1 .. AC-3 slam, combined road state, force of an acceleration; AC-4 .. AC-5 base pulses; AC-6 .. AC-11 random vibration;
/// AC-12 .. AC-15 road roughness through a quarter car; AC-16 .. AC-23 air, open door, tether, axle.
[[nodiscard]] const std::vector<base::Card>& cards();

} // namespace thinskin::actions
