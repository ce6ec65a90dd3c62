#include "presentation/diagnostics.h"

#include <algorithm>
#include <fmt/format.h>

namespace thinskin::gui {
namespace {

std::string line_of(const std::string& text, int line)
{
    std::size_t at = 0;
    for (int k = 1; k < line && at != std::string::npos; ++k) at = text.find('\n', at) == std::string::npos ? std::string::npos : text.find('\n', at) + 1;
    if (line < 1 || at == std::string::npos || at > text.size()) return "";
    std::string s = text.substr(at, std::min(text.find('\n', at), text.size()) - at);
    if (!s.empty() && s.back() == '\r') s.pop_back();
    return s;
}

std::string counted(std::ptrdiff_t n, const char* what) { return fmt::format("{} {}{}", n, what, n == 1 ? "" : "s"); }

} // namespace

std::vector<DiagnosticRow> diagnostic_rows(const std::vector<base::Diagnostic>& all, const std::string& text)
{
    std::vector<DiagnosticRow> out;
    for (const base::Diagnostic& d : all) {
        const bool error = d.severity == base::Severity::error;
        out.push_back({error, d.at.line, d.at.column, d.key_path, d.message, d.hint, line_of(text, d.at.line), error ? "error" : "caution"});
    }
    std::stable_partition(out.begin(), out.end(), [](const DiagnosticRow& r) { return r.error; });
    return out;
}

std::string diagnostic_summary(const std::vector<base::Diagnostic>& all)
{
    const auto errors = std::count_if(all.begin(), all.end(), [](const base::Diagnostic& d) { return d.severity == base::Severity::error; });
    const auto cautions = static_cast<std::ptrdiff_t>(all.size()) - errors;
    std::string s = errors > 0 ? counted(errors, "error") : "";
    if (cautions > 0) s += (s.empty() ? "" : ", ") + counted(cautions, "caution");
    return s;
}

} // namespace thinskin::gui
