#pragma once
#include "base/card.h"

namespace thinskin::actions {

/// AC-1 half-sine stop of a slammed door, AC-2 combined road state, AC-3 force of an acceleration on a mass.
[[nodiscard]] const std::vector<base::Card>& cards();

} // namespace thinskin::actions
