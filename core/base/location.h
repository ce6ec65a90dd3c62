#pragma once
#include <string>
#include <vector>

namespace thinskin::base {

/// A place in a text file, 1-based; line 0 = not read from a file.
struct Location {
    std::string file;
    int line = 0;
    int column = 0;
};

enum class Severity { error, caution };

/// One thing wrong with an input: where, which key, what is wrong, what would be right.
struct Diagnostic {
    Location at;
    std::string key_path; ///< "panel.skin.thickness", "brackets[0].leg"; empty for the whole file
    std::string message;  ///< what is wrong and what was expected, in words a fitter understands
    std::string hint;     ///< "did you mean thickness?"; empty = none
    Severity severity = Severity::error;
};

/// "door.yaml:14:16: error: panel.skin.thickness: expected a length such as 0.8 mm, found 0,8 (hint)".
[[nodiscard]] std::string format(const Diagnostic& d);

[[nodiscard]] bool has_errors(const std::vector<Diagnostic>& all);

} // namespace thinskin::base
