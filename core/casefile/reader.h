#pragma once
#include "base/location.h"
#include "model/case.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace thinskin::casefile {

/// `value` is set when there is no error; cautions may stand beside it. Diagnostics are in the order of the file.
/// A syntax error (or a file that is too large, too deep, not UTF-8) is reported alone, all others in one run.
struct ReadResult {
    std::optional<model::Case> value;
    std::vector<base::Diagnostic> diagnostics;
    std::map<std::string, base::Location> places; ///< key path -> where its value stands; keys that were not written are absent
};

[[nodiscard]] ReadResult read_file(const std::string& path);
[[nodiscard]] ReadResult read_text(std::string text, std::string file_name);

} // namespace thinskin::casefile
