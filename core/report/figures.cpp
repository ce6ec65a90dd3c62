#include "report/figures.h"

#include <cmath>
#include <fmt/format.h>

namespace thinskin::report {
namespace {

constexpr const char* none = "no figure";
// A margin of 0.16 computed as 1.16 - 1 is 0.1599999999: without this slack it would print as 0.15.
constexpr double rounding_slack = 1e-7;

} // namespace

std::string margin_text(double margin)
{
    if (std::isnan(margin)) return none;
    if (std::isinf(margin)) return margin > 0 ? "no load" : none;
    if (margin > 5.0) return "> 5";
    double hundredths = std::floor(margin * 100.0 + rounding_slack);
    if (margin < 0 && hundredths >= 0) hundredths = -1;
    return fmt::format("{:+.2f}", hundredths / 100.0 + 0.0);
}

std::string utilisation_text(double utilisation)
{
    if (!std::isfinite(utilisation)) return none;
    double hundredths = std::ceil(utilisation * 100.0 - rounding_slack);
    if (utilisation > 1.0 && hundredths <= 100.0) hundredths = 101.0;
    return fixed(hundredths / 100.0, 2);
}

std::string fixed(double value, int decimals)
{
    if (!std::isfinite(value)) return none;
    const std::string s = fmt::format("{:.{}f}", value, decimals);
    return s.find_first_not_of("-0.") == std::string::npos && s[0] == '-' ? s.substr(1) : s;
}

std::string figure(double value)
{
    if (!std::isfinite(value)) return none;
    const double size = std::abs(value);
    if (size == 0) return "0";
    if (size >= 1e7 || size < 1e-3) return fmt::format("{:.3g}", value);
    const int before = static_cast<int>(std::floor(std::log10(size))) + 1; // digits before the point; <= 0 below 1
    return fixed(value, before >= 3 ? 0 : 3 - before);
}

} // namespace thinskin::report
