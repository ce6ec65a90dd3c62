#pragma once
#include <string>
#include <vector>

namespace thinskin::casefile {

/// Kinds that `thinskin new` knows: "condenser-on-door", "bare-panel".
[[nodiscard]] std::vector<std::string> starter_kinds();

/// A case file with a comment above each key, from the schema; reads without errors. Throws std::invalid_argument for an
/// unknown kind (ask starter_kinds() first).
[[nodiscard]] std::string starter(const std::string& kind);

} // namespace thinskin::casefile
