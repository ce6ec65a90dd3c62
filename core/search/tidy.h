#pragma once
#include "model/case.h"

#include <string>
#include <vector>

namespace thinskin::search {

/// A scheme as a person would write it: a bracket that repeats another one in the original (mirror_of, copy_of) repeats it here too, where the scheme left the
/// pair alike, and fastener kinds that the original used and the scheme no longer does are gone. The same parts at the same places.
[[nodiscard]] model::Case tidied(const model::Case& original, const model::Case& scheme);

/// What a scheme takes out of the original or writes anew, for a person: blocks, brackets written out, fastener kinds that go.
[[nodiscard]] std::vector<std::string> replaced(const model::Case& original, const model::Case& tidy);

} // namespace thinskin::search
