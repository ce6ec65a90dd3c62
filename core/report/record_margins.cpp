#include "base/status.h"
#include "formulary/formulary.h"
#include "report/figures.h"
#include "report/hardest.h"
#include "report/html.h"
#include "report/record_parts.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>
#include <set>

namespace thinskin::report {
namespace {

using base::Status;
using results::Check;

std::string numbers_in(const base::Card* card, const Check& c)
{
    std::string s;
    for (const auto& [name, value] : c.inputs) s += (s.empty() ? "" : ", ") + name + " = " + symbol_value(card, name, value);
    return s;
}

/// Formula, numbers in, source, note: the second line of a row.
std::string below(const Check& c)
{
    const base::Card* card = c.formula.empty() ? nullptr : formulary::find(c.formula);
    std::string html;
    const auto add = [&html](const std::string& piece) {
        if (!piece.empty()) html += (html.empty() ? "" : " &middot; ") + piece;
    };
    if (!c.formula.empty()) add("<b>" + escaped(c.formula) + "</b>" + (card ? " " + escaped(card->formula) : ""));
    add(escaped(numbers_in(card, c)));
    add(escaped(source_text(c)));
    add(escaped(c.note));
    if (!c.lift_with.empty() && c.note.find(c.lift_with) == std::string::npos) add("lifted by " + escaped(c.lift_with));
    return html;
}

std::string_view css_of(Status s) { return s == Status::fail ? "fail" : s == Status::not_covered ? "open" : ""; }

/// Checks of one kind differ in the part and the place alone: "bearing" by the same formula.
std::string kind_of(const Check& c) { return c.id.substr(0, c.id.find('/')) + "|" + c.formula; }

struct Sorted {
    std::vector<const Check*> in_full, others; ///< in the order of the outcome, least margin first
    std::map<std::string, int> alike;          ///< checks of a kind
};

/// The tightest of each kind, and whatever fails or is open.
Sorted by_kind(const Outcome& o)
{
    Sorted s;
    for (const Check& c : o.checks) {
        const bool first = s.alike[kind_of(c)]++ == 0;
        const bool matters = c.status == Status::fail || c.status == Status::not_covered;
        (first || matters ? s.in_full : s.others).push_back(&c);
    }
    return s;
}

void margin_row(HtmlTable& t, const Outcome& o, const Check& c, int alike)
{
    const std::string of_many = alike > 1 ? fmt::format("one of {} of this kind &middot; ", alike) : "";
    const RowFigures f = row_figures(o, c);
    t.row({c.part, c.title, c.load_case, f.demand, f.capacity, c.unit, f.used, f.margin,
           std::string(base::name(c.status)) + (c.required ? "" : ", not required")},
          fmt::format("class=\"{}\" data-check=\"{}\"", css_of(c.status), escaped(c.id)), of_many + below(c));
}

const std::vector<HtmlColumn> fastener_columns{{"fastener"}, {"load case"}, {"tension", true}, {"by hand", true}, {"prying", true}, {"shear x", true}, {"shear y", true}, {"one row", true}, {"by hand", true}, {"stands"}};

void fastener_row(HtmlTable& t, const results::FastenerForce& f)
{
    const auto n0 = [](double v) { return fixed(v, 0); };
    std::string why = f.difference;
    if (!f.stands) why += (why.empty() ? "" : "; ") + f.why_not;
    t.row({f.name, f.load_case, n0(f.tension_N), n0(f.hand_tension_N), n0(f.prying_N), n0(f.shear_x_N), n0(f.shear_y_N), n0(f.row_shear_N), n0(f.hand_shear_N), f.stands ? "yes" : "no"}, "", escaped(why));
}

} // namespace

std::string record_margins(const Outcome& o)
{
    const Sorted sorted = by_kind(o);
    HtmlTable t({{"part"}, {"check"}, {"load case"}, {"demand", true}, {"capacity", true}, {"unit"}, {"used", true}, {"margin", true}, {"status"}}, "two");
    for (const Check* c : sorted.in_full) margin_row(t, o, *c, sorted.alike.at(kind_of(*c)));
    if (t.empty()) return "";
    return html_paragraph("margin = capacity / demand - 1 (0: exactly used up), rounded down; used = demand / capacity, rounded up. Capacities are already divided by their safety factors. "
                          "Here: of each kind of check the tightest, and all that fail or are not covered; the others follow in small print and, with their numbers, in result.json. "
                          "The line under each check: formula, numbers in, source, edition [how well it is sourced], note.")
           + t.html();
}

std::string record_other_margins(const Outcome& o)
{
    constexpr double far_off = 5; // where figures.h stops to tell margins apart: running text instead of a row
    HtmlTable t({{"part"}, {"check"}, {"load case"}, {"formula"}, {"demand", true}, {"capacity", true}, {"unit"}, {"margin", true}, {"status"}}, "fine");
    std::string far;
    for (const Check* c : by_kind(o).others) {
        const RowFigures f = row_figures(o, *c);
        if (c->margin() > far_off || (c->load_case == "geometry" && c->status == Status::pass))
            far += fmt::format("{}<span data-check=\"{}\">{}: {} of {} {}{}</span>", far.empty() ? "" : "; ", escaped(c->id), escaped(c->title), f.demand, f.capacity, escaped(c->unit), c->status == Status::judgement ? " (j)" : "");
        else t.row({c->part, c->title, c->load_case, c->formula, f.demand, f.capacity, c->unit, f.margin, std::string(base::name(c->status))}, fmt::format("data-check=\"{}\"", escaped(c->id)));
    }
    const std::string rows = t.empty() ? "" : t.html();
    return far.empty() ? rows : rows + "<p class=\"far\"><b>Margins of more than 5, and distances that are kept; demand of capacity, (j): on judgement.</b> " + far + ".</p>\n";
}

std::string record_clauses(const Outcome& o)
{
    std::set<std::string> ids;
    for (const Check& c : o.checks)
        if (!c.formula.empty()) ids.insert(c.formula);
    HtmlTable t({{"id"}, {"formula"}, {"source"}, {"range"}, {"does not say"}}, "clauses");
    for (const std::string& id : ids) {
        const base::Card* card = formulary::find(id);
        if (card) t.row({id, card->title + ": " + card->formula, fmt::format("{}{} [{}]", card->source, card->edition == "-" ? "" : ", " + card->edition, base::name(card->label)), card->range, card->not_for});
    }
    return t.html();
}

std::string record_hand_check(const Outcome& o)
{
    HtmlTable bolts(fastener_columns, "two");
    for (const results::FastenerForce* f : hardest(o.fasteners, [](const auto& x) { return x.name; }, [](const auto& x) { return std::max(std::abs(x.tension_N), std::abs(x.hand_tension_N)); })) fastener_row(bolts, *f);
    HtmlTable ends({{"member"}, {"end"}, {"load case"}, {"x, N", true}, {"y, N", true}, {"z, N", true}, {"z by hand, N", true}, {"stands"}}, "two");
    for (const results::EndForce* end : hardest(o.member_ends, [](const auto& x) { return x.name + "/" + x.end; }, [](const auto& x) { return std::max(std::abs(x.force_N[2]), std::abs(x.hand_N)); })) {
        const results::EndForce& e = *end;
        ends.row({e.name, e.end, e.load_case, fixed(e.force_N[0], 0), fixed(e.force_N[1], 0), fixed(e.force_N[2], 0), fixed(e.hand_N, 0), e.stands ? "yes" : "no"}, "",
                 escaped(e.difference + (e.stands ? "" : (e.difference.empty() ? "" : "; ") + e.why_not)));
    }
    if (bolts.empty() && ends.empty()) return "";
    std::string s = html_paragraph("Of each fastener and each end the load case that pulls hardest, by the solver or by hand; all others are in result.json. By hand: rigid bracket, lever rule, bolt group, worked out from the case alone. Where solver and hand differ by more than 1.5 times, the line below takes the difference apart in newtons.");
    if (!bolts.empty()) s += "<h3>Fasteners, N</h3>\n" + bolts.html();
    if (!ends.empty()) s += "<h3>Ends of members: force of the member on the frame</h3>\n" + ends.html();
    return s;
}

} // namespace thinskin::report
