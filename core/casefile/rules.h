#pragma once
#include "casefile/reader.h"

namespace thinskin::casefile {

/// What can be wrong between keys without any geometry: names that nobody defined or that stand twice, copies of copies,
/// a door block for a wall, a case without a load. `places` gives the lines of a file; empty for a case made by a program.
[[nodiscard]] std::vector<base::Diagnostic> check_rules(const model::Case& c, const std::map<std::string, base::Location>& places);

} // namespace thinskin::casefile
