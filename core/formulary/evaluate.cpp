// "symbol=value" pairs to a resistance. A plain number is in the symbol's inner unit; with a unit it is read as in a case file.
#include "base/quantity.h"
#include "formulary/formulary.h"

#include <array>
#include <charconv>
#include <cmath>
#include <fmt/format.h>
#include <optional>
#include <utility>

namespace thinskin::formulary {

namespace {

struct UnitRow { std::string_view unit; base::Dimension dimension; };

constexpr std::array<UnitRow, 12> units{{{"mm", base::Dimension::length},
                                         {"kg", base::Dimension::mass},
                                         {"N", base::Dimension::force},
                                         {"MPa", base::Dimension::stress},
                                         {"N mm", base::Dimension::moment},
                                         {"rad", base::Dimension::angle},
                                         {"Hz", base::Dimension::frequency},
                                         {"g", base::Dimension::acceleration},
                                         {"mm/s", base::Dimension::speed},
                                         {"g2/Hz", base::Dimension::acceleration_density},
                                         {"s", base::Dimension::time},
                                         {"-", base::Dimension::ratio}}};

std::optional<base::Dimension> dimension_of(std::string_view unit)
{
    for (const UnitRow& row : units)
        if (row.unit == unit) return row.dimension;
    return std::nullopt;
}

std::string_view trimmed(std::string_view s)
{
    while (!s.empty() && s.front() == ' ') s.remove_prefix(1);
    while (!s.empty() && s.back() == ' ') s.remove_suffix(1);
    return s;
}

std::optional<double> plain_number(std::string_view text)
{
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
    return value;
}

/// "97 mm3" where the unit is one that a case file has no name for.
std::optional<double> number_in_own_unit(std::string_view text, std::string_view unit)
{
    if (unit == "-" || !text.ends_with(unit)) return std::nullopt;
    return plain_number(trimmed(text.substr(0, text.size() - unit.size())));
}

struct Read { std::optional<double> value; std::string expected; };

Read read_value(const base::Symbol& s, std::string_view text)
{
    if (const auto number = plain_number(text)) return {number, {}};
    if (const auto number = number_in_own_unit(text, s.unit)) return {number, {}};
    const auto dimension = dimension_of(s.unit);
    if (!dimension) return {std::nullopt, fmt::format("expected a number in {}, found \"{}\"", s.unit, text)};
    base::ReadQuantity read = base::read_quantity(text, *dimension);
    if (!read.ok) return {std::nullopt, std::move(read.expected)};
    return {read.quantity.value, {}};
}

std::string symbol_list(const base::Card& card)
{
    std::string list;
    for (const base::Symbol& s : card.symbols) list += (list.empty() ? "" : ", ") + s.name;
    return list;
}

Evaluation refused(std::string why)
{
    Evaluation e;
    e.error = std::move(why);
    return e;
}

std::optional<std::size_t> position(const base::Card& card, std::string_view name)
{
    for (std::size_t i = 0; i < card.symbols.size(); ++i)
        if (card.symbols[i].name == name) return i;
    return std::nullopt;
}

} // namespace

Evaluation evaluate(const base::Card& card, const std::vector<std::string>& pairs)
{
    std::vector<std::optional<double>> given(card.symbols.size());
    for (const std::string& pair : pairs) {
        const std::size_t equals = pair.find('=');
        if (equals == std::string::npos) return refused(fmt::format("expected symbol=value, found \"{}\"", pair));
        const std::string_view name = trimmed(std::string_view(pair).substr(0, equals));
        const auto i = position(card, name);
        if (!i) return refused(fmt::format("{} has no symbol \"{}\"; it has {}", card.id, name, symbol_list(card)));
        if (given[*i]) return refused(fmt::format("{} is given twice", name));
        Read read = read_value(card.symbols[*i], trimmed(std::string_view(pair).substr(equals + 1)));
        if (!read.value) return refused(fmt::format("{}: {}", name, read.expected));
        given[*i] = read.value;
    }
    Evaluation e;
    for (std::size_t i = 0; i < given.size(); ++i) {
        if (!given[i]) return refused(fmt::format("{} is missing; {} needs {}", card.symbols[i].name, card.id, symbol_list(card)));
        e.values.push_back(*given[i]);
    }
    e.ok = true;
    e.resistance = card.evaluate(e.values);
    return e;
}

} // namespace thinskin::formulary
