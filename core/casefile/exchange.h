#pragma once
#include "casefile/edit.h"
#include "model/case.h"

#include <vector>

namespace thinskin::casefile {

/// The changes of its text that give `now` the brackets, the reinforcement, the fastener kinds and the feet of `then`: whole blocks anew where they
/// differ, every other byte kept.
[[nodiscard]] std::vector<Change> exchange(const model::Case& now, const model::Case& then);

} // namespace thinskin::casefile
