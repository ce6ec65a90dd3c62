#include "report/words.h"

#include "report/figures.h"

#include <cmath>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <limits>
#include <set>
#include <utility>

namespace thinskin::report {

using base::Status;
using results::Check;
using results::Outcome;

bool has_figures(const Outcome& o, const Check& c) { return c.has_numbers() && o.verdict != base::Verdict::not_solved; }

RowFigures row_figures(const Outcome& o, const Check& c)
{
    const bool all = has_figures(o, c);
    const auto known = [all](double v) { return all || v != 0 ? figure(v) : std::string("-"); };
    return {known(c.demand), known(c.capacity), all ? utilisation_text(c.utilisation()) : "-", all ? margin_text(c.margin()) : "-"};
}

std::vector<const Check*> worst_rows(const Outcome& o)
{
    std::set<std::pair<std::string, std::string>> seen;
    std::vector<const Check*> rows;
    for (const Check& c : o.checks)
        if (has_figures(o, c) && seen.insert({c.part, c.title}).second) rows.push_back(&c);
    return rows;
}

std::string source_text(const Check& c)
{
    std::string s = c.source;
    if (!c.edition.empty() && c.edition != "-") s += (s.empty() ? "" : ", ") + c.edition;
    if (!c.label.empty()) s += " [" + c.label + "]";
    return s;
}

std::string stands_on_words(const results::Outcome& o)
{
    if (o.verdict != base::Verdict::pass) return "";
    std::vector<std::string> all;
    for (const results::RestsOn& r : o.rests_on) all.push_back(r.what);
    if (const std::size_t n = o.assumptions.size(); n > 0) all.push_back(fmt::format("{} that nobody measured, listed under assumptions", n == 1 ? "one figure" : fmt::format("{} figures", n)));
    return all.empty() ? "" : fmt::format("This pass stands on: {}.", fmt::join(all, "; "));
}

std::string group_remark(const results::Group& g)
{
    std::string s;
    const auto add = [&s](const std::string& more) { s += (s.empty() ? "" : "; ") + more; };
    if (g.failed > 0) add(fmt::format("{} failed", g.failed));
    if (g.not_covered > 0) add(fmt::format("{} not covered", g.not_covered));
    if (g.judgements > 0) add(fmt::format("{} on judgement", g.judgements));
    if (!g.lift_with.empty()) add("lifted by " + g.lift_with);
    if (!g.required) add("not required");
    return s;
}

std::string not_counted_words(const Check& c)
{
    if (c.required) return "";
    if (c.group != "vibration") return "Not counted in the verdict: it is told so that somebody looks at it.";
    return "Not counted in the verdict. The verdict asks whether all holds under the loads of the road, the shaking that usually comes with them included; this row asks "
           "whether a natural frequency lies where vehicle or item shake it. Inside such a range it shakes more than the loads say and works loose sooner: keep out of it where that can be done, look at the fasteners sooner where it cannot.";
}

std::string symbol_value(const base::Card* card, const std::string& symbol, double value)
{
    std::string unit;
    if (card)
        for (const base::Symbol& s : card->symbols)
            if (s.name == symbol && s.unit != "-") unit = " " + s.unit;
    return fmt::format("{:.6g}{}", value, unit);
}

std::string acceleration_text(const results::LoadCase& c)
{
    return fmt::format("({}, {}, {}) g", fixed(c.acceleration_g[0], 2), fixed(c.acceleration_g[1], 2), fixed(c.acceleration_g[2], 2));
}

namespace {

struct Least { double margin = std::numeric_limits<double>::infinity(); bool figures = false, failed = false, open = false; };

} // namespace

std::map<std::string, std::string> part_notes(const Outcome& o)
{
    std::map<std::string, std::string> notes;
    if (o.verdict == base::Verdict::not_solved) return notes;
    std::map<std::string, Least> least;
    for (const Check& c : o.checks) {
        if (c.group == "vibration") continue; // no strength, and not counted in the verdict
        Least& l = least[c.part];
        l.open = l.open || c.status == Status::not_covered;
        l.failed = l.failed || c.status == Status::fail;
        // As in the groups: a distance that is kept says nothing about strength; it counts when it is not kept.
        if (!c.has_numbers() || (c.load_case == "geometry" && c.status != Status::fail)) continue;
        l.figures = true;
        if (!std::isnan(l.margin) && !(c.margin() >= l.margin)) l.margin = c.margin(); // a missing figure stays
    }
    for (const auto& [part, l] : least)
        notes[part] = l.figures ? margin_text(l.margin) + (l.failed ? " fail" : "") + (l.open ? " n.c." : "") : l.failed ? "fail" : l.open ? "n.c." : "-";
    return notes;
}

} // namespace thinskin::report
