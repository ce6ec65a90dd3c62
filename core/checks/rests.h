#pragma once
#include "layout/layout.h"
#include "results/results.h"

#include <vector>

namespace thinskin::checks {

/// What the case says, measured or not, that a pass hangs on before all: how hard the door is slammed, what is known of its hinges, the
/// road it is driven on. Each with the least margin of the required rows concerned and what they say together. `o` has its rows.
[[nodiscard]] std::vector<results::RestsOn> rests_on(const layout::Layout& l, const results::Outcome& o);

} // namespace thinskin::checks
