#include "base/card.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <utility>

namespace thinskin::base {

namespace {

std::string with_unit(std::string text, const std::string& unit)
{
    return unit.empty() || unit == "-" ? text : text + " " + unit;
}

std::string choices_text(const std::vector<double>& choices)
{
    std::string text = choices.size() == 1 ? "" : "one of ";
    for (std::size_t i = 0; i < choices.size(); ++i) text += fmt::format("{}{:g}", i ? ", " : "", choices[i]);
    return text;
}

/// Written so that NaN fails every comparison.
bool admissible(const Symbol& s, double value)
{
    if (!std::isfinite(value)) return false;
    if (!s.choices.empty()) return std::find(s.choices.begin(), s.choices.end(), value) != s.choices.end();
    const bool above = s.lower_open ? value > s.lower : value >= s.lower;
    return above && value <= s.upper;
}

} // namespace

Resistance covered(double nominal, double factor)
{
    if (!(std::isfinite(nominal) && nominal >= 0)) return not_covered(fmt::format("the formula gives {:g}, which is no strength", nominal));
    if (!(std::isfinite(factor) && factor > 0)) return not_covered(fmt::format("a factor of {:g} is no safety factor", factor));
    return {.covered = true, .nominal = nominal, .factor = factor, .capacity = nominal / factor, .reason = {}};
}

Resistance not_covered(std::string reason)
{
    return {.covered = false, .nominal = 0, .factor = 1, .capacity = 0, .reason = std::move(reason)};
}

std::string range_text(const Symbol& s)
{
    if (!s.choices.empty()) return with_unit(choices_text(s.choices), s.unit);
    const bool has_lower = std::isfinite(s.lower), has_upper = std::isfinite(s.upper);
    if (!has_lower && !has_upper) return "any finite value";
    const std::string least = fmt::format("{} {:g}", s.lower_open ? ">" : ">=", s.lower);
    const std::string most = fmt::format("<= {:g}", s.upper);
    if (!has_upper) return with_unit(least, s.unit);
    if (!has_lower) return with_unit(most, s.unit);
    if (s.lower_open) return with_unit(least + ", " + most, s.unit);
    return with_unit(fmt::format("{:g} .. {:g}", s.lower, s.upper), s.unit);
}

std::string outside(const Symbol& s, double value)
{
    if (admissible(s, value)) return {};
    const std::string_view verb = s.choices.empty() ? "is outside" : "is not";
    return fmt::format("{} = {} {} {}", s.name, with_unit(fmt::format("{:.9g}", value), s.unit), verb, range_text(s));
}

} // namespace thinskin::base
