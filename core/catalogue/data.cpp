#include "catalogue/data.h"

#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace thinskin::catalogue {
namespace {

[[noreturn]] void bad_line(std::string_view file, int line, const std::string& what)
{
    throw std::logic_error(std::string(file) + ".yaml:" + std::to_string(line) + ": " + what);
}

struct Cell { std::string key, value; };

/// Reads `key: value` or `key: "value"` from the front of `rest`, with the comma behind it.
Cell take_cell(std::string_view& rest, std::string_view file, int line)
{
    const std::size_t colon = rest.find(": ");
    if (colon == std::string_view::npos || colon == 0) bad_line(file, line, "expected `key: value`");
    Cell cell{std::string(rest.substr(0, colon)), {}};
    rest.remove_prefix(colon + 2);
    const bool quoted = !rest.empty() && rest.front() == '"';
    if (quoted) rest.remove_prefix(1);
    const std::size_t end = rest.find(quoted ? '"' : ',');
    if (quoted && end == std::string_view::npos) bad_line(file, line, "a quote is not closed");
    cell.value = std::string(rest.substr(0, end));
    rest.remove_prefix(end == std::string_view::npos ? rest.size() : end + (quoted ? 1 : 0));
    if (cell.value.empty()) bad_line(file, line, cell.key + " is empty");
    if (!rest.empty() && !rest.starts_with(", ")) bad_line(file, line, "expected a comma and a space after " + cell.key);
    if (!rest.empty()) rest.remove_prefix(2);
    return cell;
}

std::vector<Cell> take_row(std::string_view text, std::string_view file, int line)
{
    constexpr std::string_view open = "- {", close = "}";
    if (!text.starts_with(open) || !text.ends_with(close)) bad_line(file, line, "expected `- {key: value, ...}`");
    text = text.substr(open.size(), text.size() - open.size() - close.size());
    std::vector<Cell> cells;
    while (!text.empty()) cells.push_back(take_cell(text, file, line));
    return cells;
}

bool ends_with_origin(const std::vector<std::string>& columns)
{
    const std::size_t n = columns.size();
    return n > 3 && columns[n - 3] == "source" && columns[n - 2] == "label" && columns[n - 1] == "note";
}

void add_row(Rows& rows, const std::vector<Cell>& cells, int line)
{
    std::vector<std::string> keys, values;
    for (const Cell& c : cells) {
        keys.push_back(c.key);
        values.push_back(c.value);
    }
    if (rows.columns.empty()) rows.columns = keys;
    if (keys != rows.columns) bad_line(rows.file, line, "the keys or their order differ from the first row");
    if (!ends_with_origin(keys)) bad_line(rows.file, line, "a row ends with source, label, note");
    rows.cells.push_back(values);
}

} // namespace

Rows read_rows(std::string_view file, std::string_view text)
{
    Rows rows{std::string(file), {}, {}};
    int line = 0;
    while (!text.empty()) {
        ++line;
        const std::size_t end = text.find('\n');
        const std::string_view one = text.substr(0, end);
        if (!one.empty() && one.front() != '#') add_row(rows, take_row(one, file, line), line);
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    }
    if (rows.cells.empty()) bad_line(file, line, "no rows");
    return rows;
}

Rows read_rows(std::string_view file)
{
    for (const DataFile& d : data_files())
        if (d.name == file) return read_rows(file, d.text);
    throw std::logic_error("no data file " + std::string(file));
}

const std::string& RowView::text(std::string_view column) const
{
    for (std::size_t i = 0; i < rows_.columns.size(); ++i)
        if (rows_.columns[i] == column) return rows_.cells[index_][i];
    fail(column, "no such column");
}

double RowView::number(std::string_view column) const
{
    const std::string& s = text(column);
    double value = 0;
    const auto [end, error] = std::from_chars(s.data(), s.data() + s.size(), value);
    if (error != std::errc() || end != s.data() + s.size() || !std::isfinite(value) || !(value > 0))
        fail(column, "not a finite number above zero");
    return value;
}

base::Label RowView::label() const
{
    using enum base::Label;
    for (const base::Label l : std::array{published_read, read_in_copy, computed, from_memory, common_practice, judgement})
        if (base::name(l) == text("label")) return l;
    fail("label", "not one of the six labels");
}

void RowView::fail(std::string_view column, std::string_view what) const
{
    throw std::logic_error(rows_.file + ".yaml, row " + rows_.cells[index_].front() + ", " + std::string(column) + ": " +
                           std::string(what));
}

} // namespace thinskin::catalogue
