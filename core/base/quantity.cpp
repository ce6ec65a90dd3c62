#include "base/quantity.h"

#include "base/units.h"

#include <charconv>
#include <cmath>
#include <fmt/format.h>
#include <optional>

namespace thinskin::base {
namespace {

bool digit(char c) { return c >= '0' && c <= '9'; }

std::string_view trim(std::string_view s)
{
    while (!s.empty() && s.front() == ' ') s.remove_prefix(1);
    while (!s.empty() && s.back() == ' ') s.remove_suffix(1);
    return s;
}

/// Cursor over the text; each `take_` moves past what it read.
struct Cursor {
    std::string_view rest;

    std::optional<long> take_whole()
    {
        long n = 0;
        const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), n);
        if (rest.empty() || !digit(rest.front()) || error != std::errc{}) return std::nullopt;
        rest.remove_prefix(static_cast<std::size_t>(end - rest.data()));
        return n;
    }

    bool take(char c)
    {
        if (rest.empty() || rest.front() != c) return false;
        rest.remove_prefix(1);
        return true;
    }

    std::optional<double> take_fraction()
    {
        Cursor c = *this;
        const auto above = c.take_whole();
        if (!above || !c.take('/')) return std::nullopt;
        const auto below = c.take_whole();
        if (!below || *below == 0) return std::nullopt;
        *this = c;
        return static_cast<double>(*above) / static_cast<double>(*below);
    }

    /// 1-1/4 or 1 1/4
    std::optional<double> take_mixed()
    {
        Cursor c = *this;
        const auto whole = c.take_whole();
        if (!whole || !(c.take('-') || c.take(' '))) return std::nullopt;
        const auto part = c.take_fraction();
        if (!part || *part >= 1) return std::nullopt;
        *this = c;
        return static_cast<double>(*whole) + *part;
    }

    std::optional<double> take_decimal()
    {
        const bool starts = !rest.empty() && (digit(rest[0]) || (rest.size() > 1 && rest[0] == '.' && digit(rest[1])));
        if (!starts) return std::nullopt; // from_chars would read nan and inf
        double x = 0;
        const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), x);
        if (error != std::errc{} || !std::isfinite(x)) return std::nullopt;
        rest.remove_prefix(static_cast<std::size_t>(end - rest.data()));
        return x;
    }
};

struct Number {
    double value = 0;
    std::string_view unit;
    bool whole_digits = false; ///< written as a plain whole number
};

std::optional<Number> take_number(std::string_view text)
{
    Cursor c{text};
    const bool minus = c.take('-');
    if (!minus) c.take('+');
    const std::string_view start = c.rest;
    std::optional<double> x = c.take_mixed();
    if (!x) x = c.take_fraction();
    if (!x) x = c.take_decimal();
    if (!x) return std::nullopt;
    const std::string_view read = start.substr(0, start.size() - c.rest.size());
    const bool whole = !minus && read.find_first_not_of("0123456789") == std::string_view::npos;
    return Number{minus ? -*x : *x, trim(c.rest), whole};
}

std::string with_article(Dimension d)
{
    const std::string_view n = name(d);
    return fmt::format("{} {}", n == "angle" || n == "acceleration" ? "an" : "a", n);
}

ReadQuantity refuse(Dimension wanted, std::string_view text, std::string_view reason = {})
{
    ReadQuantity r;
    r.expected = fmt::format("expected {} such as \"{}\", found \"{}\"", with_article(wanted), example(wanted), text);
    if (!reason.empty()) r.expected += fmt::format(": {}", reason);
    return r;
}

ReadQuantity accept(double value, std::string_view text)
{
    return {true, {value, std::string(text)}, {}};
}

bool decimal_comma(std::string_view text)
{
    for (std::size_t i = 1; i + 1 < text.size(); ++i)
        if (text[i] == ',' && digit(text[i - 1]) && digit(text[i + 1])) return true;
    return false;
}

ReadQuantity read_gauge(const Number& n, std::string_view text)
{
    const auto mm = n.whole_digits && n.value < 100 ? steel_gauge_mm(static_cast<int>(n.value)) : std::nullopt;
    if (mm) return accept(*mm, text);
    return refuse(Dimension::length, text, "steel gauge is known from 10 ga to 26 ga, whole numbers only");
}

ReadQuantity wrong_unit(Dimension wanted, std::string_view text, const Number& number, const std::string& unit)
{
    if (wanted == Dimension::length && !other_gauge(unit).empty()) return refuse(wanted, text, other_gauge(unit));
    if (wanted == Dimension::force && unit == "lb") return refuse(wanted, text, "lb is a mass; a force is written in lbf");
    if (wanted == Dimension::mass && unit == "lbf") return refuse(wanted, text, "lbf is a force; a mass is written in lb");
    if (const auto other = dimension_of(unit))
        return refuse(wanted, text, fmt::format("{} is a unit of {}", number.unit, name(*other)));
    return refuse(wanted, text, fmt::format("units here: {}", unit_list(wanted)));
}

} // namespace

ReadQuantity read_quantity(std::string_view raw, Dimension wanted)
{
    const std::string_view text = trim(raw);
    if (decimal_comma(text)) return refuse(wanted, text, "write decimals with a point and thousands without a mark");
    const auto number = take_number(text);
    if (!number) return refuse(wanted, text);
    if (number->unit.empty()) return refuse(wanted, text, fmt::format("the unit is missing; units here: {}", unit_list(wanted)));
    const std::string unit = tidy_unit(number->unit);
    if (unit == "ga" && wanted == Dimension::length) return read_gauge(*number, text);
    const auto found = find_unit(unit, wanted);
    if (!found) return wrong_unit(wanted, text, *number, unit);
    const double value = number->value * found->numerator / found->denominator;
    if (!std::isfinite(value)) return refuse(wanted, text, "the number is too large");
    return accept(value, text);
}

std::string_view name(Dimension d)
{
    switch (d) {
    case Dimension::length: return "length";
    case Dimension::mass: return "mass";
    case Dimension::force: return "force";
    case Dimension::stress: return "stress or pressure";
    case Dimension::moment: return "moment";
    case Dimension::rotational_stiffness: return "rotational stiffness of an edge";
    case Dimension::angle: return "angle";
    case Dimension::frequency: return "frequency";
    case Dimension::acceleration: return "acceleration";
    case Dimension::speed: return "speed";
    case Dimension::time: return "time";
    case Dimension::ratio: return "share";
    case Dimension::stiffness: return "stiffness";
    case Dimension::rotational_spring: return "rotational stiffness of an end";
    case Dimension::acceleration_density: return "density of an acceleration";
    }
    return "quantity";
}

std::string_view example(Dimension d)
{
    switch (d) {
    case Dimension::length: return "0.8 mm";
    case Dimension::mass: return "36 kg";
    case Dimension::force: return "250 N";
    case Dimension::stress: return "120 Pa";
    case Dimension::moment: return "12 N·m";
    case Dimension::rotational_stiffness: return "120 N·m/rad per m";
    case Dimension::angle: return "180 deg";
    case Dimension::frequency: return "48 Hz";
    case Dimension::acceleration: return "3 g";
    case Dimension::speed: return "1.2 m/s";
    case Dimension::time: return "20 ms";
    case Dimension::ratio: return "5 %";
    case Dimension::stiffness: return "80 N/mm";
    case Dimension::rotational_spring: return "500 N·m/rad";
    case Dimension::acceleration_density: return "0.015 g2/Hz";
    }
    return "";
}

std::string_view inner_unit(Dimension d)
{
    switch (d) {
    case Dimension::length: return "mm";
    case Dimension::mass: return "kg";
    case Dimension::force: return "N";
    case Dimension::stress: return "MPa";
    case Dimension::moment: return "N·mm";
    case Dimension::rotational_stiffness: return "N·mm/rad per mm";
    case Dimension::angle: return "rad";
    case Dimension::frequency: return "Hz";
    case Dimension::acceleration: return "g";
    case Dimension::speed: return "mm/s";
    case Dimension::time: return "s";
    case Dimension::ratio: return "";
    case Dimension::stiffness: return "N/mm";
    case Dimension::rotational_spring: return "N·mm/rad";
    case Dimension::acceleration_density: return "g2/Hz";
    }
    return "";
}

} // namespace thinskin::base
