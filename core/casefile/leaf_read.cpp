#include "casefile/leaf.h"

#include "base/nearest.h"

#include <cctype>
#include <charconv>
#include <fmt/format.h>
#include <numbers>

namespace thinskin::casefile {
namespace {

bool scalar(const yaml::Node& n, const Row& row, const Report& report)
{
    if (n.refused) return false;
    if (n.kind == yaml::Node::Kind::scalar) return true;
    const bool several = n.kind == yaml::Node::Kind::list && !row.words.empty();
    report.error(n.at, fmt::format("expected {}, found {}{}", expected(row), found(n), several ? ". " + row.help : ""));
    return false;
}

/// A bound as a person would write it.
std::string bound(double x, base::Dimension d)
{
    if (d == base::Dimension::ratio) return fmt::format("{:.4g} %", 100 * x);
    if (d == base::Dimension::angle) return fmt::format("{:.4g} deg", x * 180 / std::numbers::pi);
    return fmt::format("{:.4g} {}", x, base::inner_unit(d));
}

/// Written so that a NaN is refused.
std::string broken_range(double x, const Row& row)
{
    const Range& r = row.range;
    if (!(r.lower_open ? x > r.lower : x >= r.lower))
        return fmt::format("must be {} {}", r.lower_open ? "more than" : "at least", bound(r.lower, row.dimension));
    if (!(r.upper_open ? x < r.upper : x <= r.upper))
        return fmt::format("must be {} {}", r.upper_open ? "less than" : "at most", bound(r.upper, row.dimension));
    return {};
}

bool is_gauge(std::string_view text)
{
    while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
    return text.size() > 2 && text.substr(text.size() - 2) == "ga";
}

bool read_list(const yaml::Node& n, const Row& row, std::size_t count, std::vector<model::Quantity>& out, const Report& report)
{
    if (n.refused) return false;
    const bool wrong_count = count != 0 ? n.items.size() != count : row.required && n.items.empty();
    if (n.kind != yaml::Node::Kind::list || wrong_count) {
        report.error(n.at, fmt::format("expected {}, found {}", expected(row), found(n)));
        return false;
    }
    Row one = row;
    one.type = Type::quantity;
    bool ok = true;
    for (std::size_t i = 0; i < n.items.size(); ++i) {
        const Report here{report.out, fmt::format("{}[{}]", report.path, i)};
        out.emplace_back();
        ok = read_leaf(n.items[i], one, out.back(), here) && ok;
    }
    return ok;
}

/// "24x2 mm" in its numbers; empty = not of that shape.
std::vector<model::Quantity> split_sizes(const std::string& text)
{
    const std::size_t unit_at = text.find_first_not_of("0123456789./-x ");
    const std::string unit = unit_at == std::string::npos ? std::string{} : text.substr(unit_at);
    std::vector<model::Quantity> out;
    std::string numbers = text.substr(0, unit_at);
    for (std::size_t from = 0; from <= numbers.size();) {
        const std::size_t to = std::min(numbers.find('x', from), numbers.size());
        const auto q = base::read_quantity(numbers.substr(from, to - from) + " " + unit, base::Dimension::length);
        if (!q.ok || !(q.quantity.value > 0)) return {};
        out.push_back(q.quantity);
        from = to + 1;
    }
    return out;
}

bool has_control_character(const std::string& text)
{
    for (const char c : text)
        if ((static_cast<unsigned char>(c) < 0x20 && c != '\n') || c == '\x7F') return true;
    return false;
}

} // namespace

std::string found(const yaml::Node& n)
{
    switch (n.kind) {
    case yaml::Node::Kind::null: return "nothing";
    case yaml::Node::Kind::scalar: return fmt::format("\"{}\"", n.text);
    case yaml::Node::Kind::list: return fmt::format("a list of {}", n.items.size());
    case yaml::Node::Kind::map: return "a block of keys";
    }
    return "nothing";
}

std::optional<std::size_t> read_word(const yaml::Node& n, const Row& row, const Report& report)
{
    if (!scalar(n, row, report)) return std::nullopt;
    for (std::size_t i = 0; i < row.words.size(); ++i)
        if (row.words[i] == n.text) return i;
    report.error(n.at, fmt::format("expected {}, found \"{}\"", expected(row), n.text), base::did_you_mean(n.text, row.words));
    return std::nullopt;
}

bool read_leaf(const yaml::Node& n, const Row& row, int& x, const Report& report)
{
    if (!scalar(n, row, report)) return false;
    int v = 0;
    const char* const end = n.text.data() + n.text.size();
    const auto read = std::from_chars(n.text.data(), end, v);
    if (read.ec != std::errc{} || read.ptr != end || v < row.range.lower || v > row.range.upper) {
        report.error(n.at, fmt::format("expected {}, found \"{}\"{}", expected(row), n.text, row.range.upper == 1 ? ": this program reads format 1" : ""));
        return false;
    }
    x = v;
    return true;
}

bool read_leaf(const yaml::Node& n, const Row& row, std::string& x, const Report& report)
{
    if (row.type == Type::word) {
        const auto word = read_word(n, row, report);
        if (word) x = row.words[*word];
        return word.has_value();
    }
    if (!scalar(n, row, report)) return false;
    std::string wrong;
    if (n.text.empty() && (row.required || row.type != Type::text)) wrong = "found an empty text";
    if (has_control_character(n.text) || (row.path != "job.notes" && n.text.find('\n') != std::string::npos)) wrong = "found a control character or a line break in it";
    if (row.type == Type::foot && split_sizes(n.text).size() != 3) wrong = "found " + found(n);
    if (!wrong.empty()) {
        report.error(n.at, fmt::format("expected {}, {}", expected(row), wrong));
        return false;
    }
    x = n.text;
    return true;
}

bool read_leaf(const yaml::Node& n, const Row& row, model::Quantity& x, const Report& report)
{
    if (!scalar(n, row, report)) return false;
    const base::ReadQuantity q = base::read_quantity(n.text, row.dimension);
    std::string wrong = q.expected;
    if (q.ok && row.dimension == base::Dimension::length && row.type != Type::sheet_thickness && is_gauge(n.text))
        wrong = fmt::format("expected {}, found \"{}\": a gauge number is a sheet thickness", expected(row), n.text);
    if (q.ok && wrong.empty()) {
        const std::string range = broken_range(q.quantity.value, row);
        if (!range.empty()) wrong = fmt::format("{}, found \"{}\"", range, n.text);
    }
    if (!wrong.empty()) {
        report.error(n.at, wrong);
        return false;
    }
    x = q.quantity;
    return true;
}

bool read_leaf(const yaml::Node& n, const Row& row, model::Point2& x, const Report& report)
{
    Quantities q;
    if (!read_list(n, row, 2, q, report)) return false;
    x = {q[0], q[1]};
    return true;
}

bool read_leaf(const yaml::Node& n, const Row& row, model::Point3& x, const Report& report)
{
    Quantities q;
    if (!read_list(n, row, 3, q, report)) return false;
    x = {q[0], q[1], q[2]};
    return true;
}

bool read_leaf(const yaml::Node& n, const Row& row, Forces& x, const Report& report)
{
    Quantities q;
    if (!read_list(n, row, 3, q, report)) return false;
    x = {q[0], q[1], q[2]};
    return true;
}

bool read_leaf(const yaml::Node& n, const Row& row, Quantities& x, const Report& report)
{
    Quantities q;
    if (!read_list(n, row, 0, q, report)) return false;
    x = std::move(q);
    return true;
}

bool read_leaf(const yaml::Node& n, const Row& row, model::Washer& x, const Report& report)
{
    if (!scalar(n, row, report)) return false;
    const auto sizes = split_sizes(n.text);
    if (sizes.size() != 2) {
        report.error(n.at, fmt::format("expected {}, found \"{}\"", expected(row), n.text));
        return false;
    }
    x = {sizes[0], sizes[1], n.text};
    return true;
}

bool read_leaf(const yaml::Node& n, const Row& row, Renames& x, const Report& report)
{
    if (n.refused) return false;
    if (n.kind != yaml::Node::Kind::map) {
        report.error(n.at, fmt::format("expected {}, found {}", expected(row), found(n)));
        return false;
    }
    Row name;
    name.required = true;
    bool ok = true;
    for (const yaml::Entry& e : n.entries) ok = read_leaf(e.value, name, x[e.key], {report.out, report.path + "." + e.key}) && ok;
    return ok;
}

void forget_text(model::Quantity& q) { q.text.clear(); }

bool read_leaf(const yaml::Node& n, const Row& row, Texts& x, const Report& report)
{
    if (n.refused) return false;
    if (n.kind != yaml::Node::Kind::list) {
        report.error(n.at, fmt::format("expected {}, found {}", expected(row), found(n)));
        return false;
    }
    Row one;
    one.required = true;
    bool ok = true;
    x.clear();
    for (std::size_t i = 0; i < n.items.size(); ++i) ok = read_leaf(n.items[i], one, x.emplace_back(), {report.out, fmt::format("{}[{}]", report.path, i)}) && ok;
    return ok;
}

} // namespace thinskin::casefile
