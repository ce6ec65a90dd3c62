#pragma once
#include "base/location.h"

#include <string>
#include <vector>

namespace thinskin::gui {

struct DiagnosticRow {
    bool error = true;                   ///< else a caution
    int line = 0, column = 0;            ///< 0: not at a place of the file
    std::string key_path, message, hint;
    std::string source_line;             ///< the file's line, as it stands
    std::string word;                    ///< "error", "caution"
};

/// Errors first, else in the order of the file. `text` is the document's text, for the lines.
[[nodiscard]] std::vector<DiagnosticRow> diagnostic_rows(const std::vector<base::Diagnostic>& all, const std::string& text);
/// "2 errors, 1 caution"; empty when there is nothing.
[[nodiscard]] std::string diagnostic_summary(const std::vector<base::Diagnostic>& all);

} // namespace thinskin::gui
