#pragma once
#include "base/card.h"

#include <vector>

namespace thinskin::strength {

/// The cards of every clause of this folder, in the order of the theory pages. A new clause: one line in cards.cpp.
[[nodiscard]] const std::vector<const base::Card*>& cards();

} // namespace thinskin::strength
