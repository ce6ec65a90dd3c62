#include "base/status.h"
#include "formulary/formulary.h"
#include "report/figures.h"
#include "report/table.h"
#include "report/text_parts.h"
#include "report/words.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>
#include <tuple>
#include <utility>
#include <vector>

namespace thinskin::report {
namespace {

using base::Status;
using results::Check;

constexpr std::size_t short_rows = 15;

std::vector<std::string> row_cells(const Outcome& o, const Check& c)
{
    const RowFigures f = row_figures(o, c);
    return {c.part, c.title, c.load_case, f.demand, f.capacity, c.unit, f.used, f.margin, std::string(base::name(c.status))};
}

std::string more_line(const std::vector<const Check*>& rows)
{
    if (rows.size() <= short_rows) return "";
    const auto failing = std::count_if(rows.begin() + short_rows, rows.end(), [](const Check* c) { return c->status == Status::fail; });
    return fmt::format("  ... and {} more{}; --detail shows every row in every load case\n", rows.size() - short_rows,
                       failing > 0 ? fmt::format(", {} of them failing", failing) : "");
}

std::vector<const Check*> all_rows(const Outcome& o)
{
    std::vector<const Check*> rows;
    for (const Check& c : o.checks) rows.push_back(&c);
    return rows;
}

std::string inputs_text(const Check& c)
{
    std::string s;
    for (const auto& [name, value] : c.inputs) s += (s.empty() ? "" : ", ") + fmt::format("{} = {}", name, fmt::format("{:.6g}", value));
    return s;
}

/// Id and formula of the clause as `thinskin formula` prints them.
std::string clause_text(const Check& c)
{
    if (c.formula.empty()) return "";
    const base::Card* card = formulary::find(c.formula);
    return card == nullptr ? c.formula : fmt::format("{}  {}", c.formula, card->formula);
}

std::string detail_of(const Check& c, int width)
{
    std::string s = fmt::format("  {} ({}, {}): {}\n", c.id, c.load_case.empty() ? "no load case" : c.load_case, c.group, base::name(c.status));
    const auto line = [&](std::string_view name, const std::string& text) {
        if (!text.empty()) s += wrapped(fmt::format("    {:<8} ", name), text, width);
    };
    line("clause", clause_text(c));
    line("inputs", inputs_text(c));
    line("source", source_text(c));
    line("range", c.range);
    line("note", c.note);
    return s;
}

std::string reason(const Check& c)
{
    const bool named = c.part.empty() || c.title.find(c.part) != std::string::npos;
    std::string text = fmt::format("{}{}: {}", c.title, named ? "" : " (" + c.part + ")", c.note);
    if (c.lift_with.empty() || c.note.find(c.lift_with) != std::string::npos) return text;
    if (text.back() == '.') text.pop_back();
    return text + "; lifted by " + c.lift_with;
}

} // namespace

std::string margin_table(const Outcome& o, const TextOptions& t)
{
    std::vector<const Check*> rows = t.detail ? all_rows(o) : worst_rows(o);
    if (rows.empty()) return "";
    const std::string more = t.detail ? "" : more_line(rows);
    if (!t.detail && rows.size() > short_rows) rows.resize(short_rows);
    Table table({{"part"}, {"check"}, {"load case"}, {"demand", Align::right}, {"capacity", Align::right}, {"unit"}, {"used", Align::right},
                 {"margin", Align::right}, {"status"}});
    for (const Check* c : rows) table.row(row_cells(o, *c));
    std::string s = heading(t.detail ? "Margins, least first, every row" : "Margins, least first, worst load case of each");
    s += wrapped("", "margin = capacity / demand - 1 (0: exactly used up), rounded down; used = demand / capacity, rounded up. "
                     "Capacities are already divided by their safety factors.", t.width);
    return s + table.text() + more;
}

std::vector<std::string> not_covered_items(const Outcome& o)
{
    std::vector<std::string> lines;
    std::set<std::tuple<std::string, std::string, std::string>> seen;
    for (const Check& c : o.checks)
        if (c.status == Status::not_covered && seen.insert({c.part, c.title, c.note}).second) lines.push_back(reason(c));
    for (const std::string& extra : o.not_covered)
        if (std::find(lines.begin(), lines.end(), extra) == lines.end()) lines.push_back(extra);
    return lines;
}

std::string not_covered_lines(const Outcome& o, const TextOptions& t)
{
    const std::vector<std::string> lines = not_covered_items(o);
    return lines.empty() ? "" : heading("Not covered: no figure here says that these hold") + bullet_list(lines, t.width);
}

std::string check_details(const Outcome& o, const TextOptions& t)
{
    if (o.checks.empty()) return "";
    std::string s = heading("Clause, inputs and source of each check");
    for (const Check& c : o.checks) s += detail_of(c, t.width);
    return s;
}

} // namespace thinskin::report
