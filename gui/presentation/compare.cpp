#include "presentation/compare.h"

#include "report/figures.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fmt/format.h>
#include <optional>

namespace thinskin::gui {
namespace {

/// A margin as it is shown, as a number; none for "> 5", "no load", "no figure".
std::optional<double> as_shown(double margin)
{
    const std::string text = report::margin_text(margin);
    char* end = nullptr;
    const double x = std::strtod(text.c_str(), &end);
    return end != text.c_str() && *end == '\0' ? std::optional(x) : std::nullopt;
}

} // namespace

std::string delta_text(double before, double after)
{
    const auto was = as_shown(before), is = as_shown(after);
    if (!was || !is) return "";
    const double hundredths = std::round((*is - *was) * 100);
    return hundredths == 0 ? "" : fmt::format("{:+.2f}", hundredths / 100);
}

std::string compared_words(bool with_accepted, bool linear, const std::vector<std::string>& steps)
{
    std::vector<std::string> all = steps;
    all.erase(std::unique(all.begin(), all.end()), all.end());
    const std::string by = with_accepted ? "changes since the accepted state" : all.size() == 1 ? "change by the last step: " + all.front() : all.empty() ? "changes by the last step" : fmt::format("changes by the last {} steps", all.size());
    return by + (linear ? " (linear, both)" : "");
}

} // namespace thinskin::gui
