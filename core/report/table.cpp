#include "report/table.h"

#include <algorithm>
#include <sstream>

namespace thinskin::report {
namespace {

std::string spaces(std::size_t n) { return std::string(n, ' '); }

std::string trimmed_right(std::string s)
{
    while (!s.empty() && s.back() == ' ') s.pop_back();
    return s;
}

} // namespace

std::size_t screen_width(std::string_view text)
{
    const auto is_start = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; };
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), is_start));
}

void Table::row(std::vector<std::string> cells)
{
    cells.resize(columns_.size());
    rows_.push_back(std::move(cells));
}

std::vector<std::size_t> Table::widths() const
{
    std::vector<std::size_t> w;
    for (const Column& c : columns_) w.push_back(screen_width(c.title));
    for (const auto& r : rows_)
        for (std::size_t i = 0; i < w.size(); ++i) w[i] = std::max(w[i], screen_width(r[i]));
    return w;
}

std::string Table::line(const std::vector<std::string>& cells, const std::vector<std::size_t>& widths) const
{
    std::string s;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const std::string gap = spaces(widths[i] - screen_width(cells[i]));
        s += "  " + (columns_[i].align == Align::right ? gap + cells[i] : cells[i] + gap);
    }
    return trimmed_right(s) + "\n";
}

std::string Table::text() const
{
    const auto w = widths();
    std::vector<std::string> titles, rules;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        titles.push_back(columns_[i].title);
        rules.emplace_back(w[i], '-');
    }
    std::string s = line(titles, w) + line(rules, w);
    for (const auto& r : rows_) s += line(r, w);
    return s;
}

std::string wrapped(std::string_view first, std::string_view text, int width)
{
    const std::size_t indent = screen_width(first), limit = static_cast<std::size_t>(std::max(width, 40));
    std::string out, line(first);
    bool fresh = true;
    std::istringstream words{std::string(text)};
    for (std::string word; words >> word; fresh = false) {
        if (!fresh && screen_width(line) + 1 + screen_width(word) > limit) {
            out += line + "\n";
            line = spaces(indent);
            fresh = true;
        }
        line += (fresh ? "" : " ") + word;
    }
    return out + trimmed_right(line) + "\n";
}

std::string heading(std::string_view text)
{
    return "\n" + std::string(text) + "\n" + std::string(screen_width(text), '=') + "\n";
}

} // namespace thinskin::report
