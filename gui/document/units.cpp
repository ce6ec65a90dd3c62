#include "document/units.h"

#include "base/units.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <fmt/format.h>

namespace thinskin::gui {

using base::Dimension;

std::string_view unit_of(std::string_view text)
{
    const auto letter = std::find_if(text.begin(), text.end(), [](unsigned char c) { return std::isalpha(c) != 0 || c == '%' || c >= 0x80; });
    return text.substr(static_cast<std::size_t>(letter - text.begin()));
}

namespace {

enum class Home { metric, us, both };

Home home_of_word(std::string_view word)
{
    static constexpr std::array<std::string_view, 8> us = {"in", "ft", "lb", "lbf", "psi", "ksi", "mph", "ga"};
    static constexpr std::array<std::string_view, 10> both = {"deg", "rad", "Hz", "rpm", "g", "s", "ms", "km", "per", ""};
    if (std::find(us.begin(), us.end(), word) != us.end()) return Home::us;
    return std::find(both.begin(), both.end(), word) != both.end() ? Home::both : Home::metric;
}

/// "N*m/rad per m" is metric, "20 ms" is at home in both. (There is no mile among the units: kilometres stay.)
Home home_of(std::string_view unit)
{
    Home home = Home::both;
    for (std::size_t i = 0; i < unit.size();) {
        std::size_t end = i;
        while (end < unit.size() && std::isalpha(static_cast<unsigned char>(unit[end])) != 0) ++end;
        if (const Home h = home_of_word(unit.substr(i, end - i)); h != Home::both) home = h;
        i = end + 1;
    }
    return home;
}

bool at_home(std::string_view text, UnitSystem u)
{
    const Home h = home_of(base::tidy_unit(unit_of(text)));
    return h == Home::both || (h == Home::us) == (u == UnitSystem::us);
}

std::string without_zeros(std::string s)
{
    if (s.find('.') != std::string::npos) {
        while (s.back() == '0') s.pop_back();
        if (s.back() == '.') s.pop_back();
    }
    return s == "-0" ? "0" : s;
}

std::string trimmed(std::string_view s)
{
    const auto from = s.find_first_not_of(" \t"), to = s.find_last_not_of(" \t");
    return from == std::string_view::npos ? std::string{} : std::string(s.substr(from, to - from + 1));
}

} // namespace

std::string_view shown_unit(Dimension d, UnitSystem u)
{
    const bool metric = u == UnitSystem::metric;
    switch (d) {
    case Dimension::length: return metric ? "mm" : "in";
    case Dimension::mass: return metric ? "kg" : "lb";
    case Dimension::force: return metric ? "N" : "lbf";
    case Dimension::stress: return metric ? "MPa" : "psi";
    case Dimension::moment: return metric ? "N·m" : "lbf·in";
    case Dimension::rotational_stiffness: return metric ? "N·m/rad per m" : "lbf·in/rad per in";
    case Dimension::angle: return "deg";
    case Dimension::frequency: return "Hz";
    case Dimension::acceleration: return "g";
    case Dimension::speed: return metric ? "m/s" : "mph";
    case Dimension::time: return "ms";
    case Dimension::ratio: return "%";
    case Dimension::stiffness: return metric ? "N/mm" : "lbf/in";
    case Dimension::rotational_spring: return metric ? "N·m/rad" : "lbf·in/rad";
    case Dimension::acceleration_density: return "g2/Hz";
    }
    return "";
}

std::string shown_value(double inner, Dimension d, UnitSystem u, bool with_unit)
{
    const std::string_view unit = shown_unit(d, u);
    const auto ratio = base::find_unit(base::tidy_unit(unit), d);
    const double x = ratio ? inner * ratio->denominator / ratio->numerator : inner;
    if (!ratio || !std::isfinite(x)) return "no figure";
    const int before = x == 0 ? 1 : static_cast<int>(std::floor(std::log10(std::abs(x)))) + 1;
    std::string s = without_zeros(fmt::format("{:.{}f}", x, std::clamp(5 - before, 0, 9)));
    return with_unit ? s + " " + std::string(unit) : s;
}

std::string drawn_length(double mm, UnitSystem u)
{
    const double x = u == UnitSystem::us ? std::round(mm / 25.4 * 100) / 100 : std::round(mm * 10) / 10;
    return without_zeros(fmt::format("{:.2f}", x + 0.0)); // no -0
}

std::string shown(const base::Quantity& q, Dimension d, UnitSystem u)
{
    if (!q.text.empty() && at_home(q.text, u)) return q.text;
    return shown_value(q.value, d, u);
}

Typed typed(std::string_view text, Dimension d, UnitSystem u) { return typed_in(text, d, shown_unit(d, u)); }

Typed typed_in(std::string_view text, Dimension d, std::string_view unit)
{
    std::string t = trimmed(text);
    if (!t.empty() && unit_of(t).empty()) t += " " + std::string(unit);
    const base::ReadQuantity read = base::read_quantity(t, d);
    if (!read.ok) return {false, "", read.expected};
    return {true, t, ""};
}

UnitSystem system_of(std::string_view text) { return home_of(base::tidy_unit(unit_of(text))) == Home::us ? UnitSystem::us : UnitSystem::metric; }

std::string written_length(double mm, UnitSystem u)
{
    if (u == UnitSystem::metric) return without_zeros(fmt::format("{:.3f}", mm)) + " mm";
    return without_zeros(fmt::format("{:.4f}", mm / 25.4)) + " in"; // 1 in = 25.4 mm, exact by definition
}

} // namespace thinskin::gui
