#include "base/location.h"

#include <algorithm>
#include <fmt/format.h>

namespace thinskin::base {

std::string format(const Diagnostic& d)
{
    std::string place = d.at.file;
    if (d.at.line > 0) place += fmt::format("{}{}:{}", place.empty() ? "" : ":", d.at.line, d.at.column);
    std::string out;
    if (!place.empty()) out += place + ": ";
    out += d.severity == Severity::error ? "error: " : "caution: ";
    if (!d.key_path.empty()) out += d.key_path + ": ";
    out += d.message;
    if (!d.hint.empty()) out += " (" + d.hint + ")";
    return out;
}

bool has_errors(const std::vector<Diagnostic>& all)
{
    return std::any_of(all.begin(), all.end(), [](const Diagnostic& d) { return d.severity == Severity::error; });
}

} // namespace thinskin::base
