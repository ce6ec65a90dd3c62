#include "presentation/margins.h"

#include "formulary/formulary.h"
#include "presentation/compare.h"
#include "report/figures.h"
#include "report/words.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <set>

namespace thinskin::gui {

using results::Check;
using results::Outcome;

namespace {

const Check* row_of(const Outcome* o, const std::string& id)
{
    if (o)
        for (const Check& c : o->checks)
            if (c.id == id) return &c;
    return nullptr;
}

std::optional<double> margin_of(const Outcome& o, const Check& c)
{
    if (o.verdict == base::Verdict::not_solved) return std::nullopt;
    const double m = report::has_figures(o, c) ? c.margin() : c.by_linear ? c.by_linear->margin() : std::nan("");
    return std::isnan(m) ? std::nullopt : std::optional(m);
}

void take_figures(MarginRow& r, double demand, double capacity, const std::string& unit, UnitSystem u)
{
    const ShownFigure d = shown_figure(demand, unit, u), k = shown_figure(capacity, unit, u);
    r.demand = d.text;
    r.capacity = k.text;
    r.unit = d.unit;
}

void take_delta(MarginRow& r, const Outcome& o, const Check& c, const MarginOptions& options)
{
    if (!options.compare_with) return;
    const Check* before = row_of(options.compare_with, c.id);
    if (!before) {
        r.delta = "new";
        return;
    }
    // A figure of linear theory that does not stand, beside one that does: the difference is that of the theories.
    if (report::has_figures(*options.compare_with, *before) != report::has_figures(o, c)) return;
    const auto was = margin_of(*options.compare_with, *before), is = margin_of(o, c);
    if (!was || !is) return;
    r.delta = delta_text(*was, *is);
    if (!r.delta.empty()) r.better = *is > *was ? 1 : -1;
}

/// Linear figures stand in a row only while nothing better is there, and under their own mark.
MarginRow row(const Outcome& o, const Check& c, const MarginOptions& options)
{
    MarginRow r;
    r.check_id = c.id;
    r.load_case = c.load_case;
    r.part = c.part;
    r.title = c.title;
    r.group = c.group;
    r.unit = shown_figure(0, c.unit, options.units).unit;
    r.mark = mark_of(c.status);
    r.governing = o.governing && o.governing->id == c.id && o.governing->load_case == c.load_case;
    r.value = margin_of(o, c);
    r.demand = r.capacity = r.used = r.margin = "-";
    if (report::has_figures(o, c)) {
        const report::RowFigures f = report::row_figures(o, c);
        take_figures(r, c.demand, c.capacity, c.unit, options.units);
        r.used = f.used;
        r.margin = f.margin;
    } else if (r.value) {
        r.mark = Mark::linear;
        r.load_case = c.by_linear->load_case;
        take_figures(r, c.by_linear->demand, c.by_linear->capacity, c.by_linear->unit, options.units);
        r.used = report::utilisation_text(c.by_linear->utilisation());
        r.margin = report::margin_text(*r.value);
    }
    r.counted = c.required;
    if (!r.counted && r.mark == Mark::fail) r.mark = Mark::aside;
    r.status = std::string(word(r.mark)) + (r.counted ? "" : ", not counted");
    take_delta(r, o, c, options);
    return r;
}

/// Governing first, then by margin, then what has no figure, then what does not count.
int rank(const MarginRow& r) { return r.governing ? 0 : !r.counted ? 3 : r.value ? 1 : 2; }

bool before(const MarginRow& a, const MarginRow& b)
{
    if (rank(a) != rank(b)) return rank(a) < rank(b);
    return a.value && b.value && *a.value < *b.value;
}

const results::LoadCase* load_case_of(const Outcome& o, const std::string& name)
{
    for (const results::LoadCase& lc : o.load_cases)
        if (lc.name == name) return &lc;
    return nullptr;
}

std::string theory_of(const Outcome& o, const std::string& load_case)
{
    for (const results::SkinState& k : o.skin)
        if (k.load_case == load_case) return k.stands ? k.theory : k.theory + ", does not stand: " + k.why_not;
    return "";
}

/// "bearing/L1/skin" names L1.
bool names(const std::string& id, const std::string& fastener)
{
    return ("/" + id + "/").find("/" + fastener + "/") != std::string::npos;
}

void hand_lines(const results::FastenerForce& f, std::vector<std::string>& out)
{
    out.push_back(fmt::format("{}: tension {} N, by hand {} N; shear {} N, by hand {} N", f.name, report::fixed(f.tension_N, 0), report::fixed(f.hand_tension_N, 0),
                              report::fixed(std::hypot(f.shear_x_N, f.shear_y_N), 0), report::fixed(f.hand_shear_N, 0)));
    if (!f.difference.empty()) out.push_back(f.difference);
}

std::vector<std::string> hand_check(const Outcome& o, const Check& c, const std::string& load_case)
{
    std::vector<std::string> out;
    for (const results::FastenerForce& f : o.fasteners)
        if (f.load_case == load_case && (names(c.id, f.name) || c.part == f.name)) hand_lines(f, out);
    for (const results::EndForce& e : o.member_ends) {
        const bool of_end = std::any_of(e.fasteners.begin(), e.fasteners.end(), [&c](const results::FastenerForce& f) { return names(c.id, f.name); });
        if (e.load_case != load_case || (!of_end && e.name != c.part)) continue;
        out.push_back(fmt::format("{} end of {}: {} N out of the panel, by hand {} N", e.end, e.name, report::fixed(e.force_N[2], 0), report::fixed(e.hand_N, 0)));
        if (!e.difference.empty()) out.push_back(e.difference);
    }
    return out;
}

std::string load_case_text(const results::LoadCase& lc)
{
    std::string s = lc.name + ": " + report::acceleration_text(lc);
    for (const std::string& more : {lc.source, lc.derivation})
        if (!more.empty()) s += "; " + more;
    return s;
}

void take_clause(const Check& c, MarginCard& card)
{
    card.formula_id = c.formula;
    const base::Card* k = c.formula.empty() ? nullptr : formulary::find(c.formula);
    if (k) {
        card.formula_title = k->title;
        card.formula = k->formula;
        card.not_for = k->not_for;
        for (const base::Symbol& s : k->symbols) {
            const auto value = c.inputs.find(s.name);
            card.symbols.push_back({s.name, value == c.inputs.end() ? "-" : report::symbol_value(nullptr, s.name, value->second), s.unit, s.meaning, base::range_text(s)});
        }
    }
    for (const auto& input : c.inputs)
        if (std::none_of(card.symbols.begin(), card.symbols.end(), [&input](const MarginCard::Symbol& s) { return s.name == input.first; }))
            card.symbols.push_back({input.first, report::symbol_value(nullptr, input.first, input.second), "", "", ""});
    card.source = report::source_text(c);
    card.range = c.range;
}

std::string with_unit(const std::string& figure, const std::string& unit) { return unit.empty() || unit == "-" ? figure : figure + " " + unit; }

} // namespace

std::vector<MarginRow> margin_rows(const Outcome& o, const MarginOptions& options)
{
    std::vector<MarginRow> out;
    if (o.verdict == base::Verdict::not_solved) return out;
    std::set<std::pair<std::string, std::string>> seen;
    for (const Check& c : o.checks) {
        if ((!options.group.empty() && c.group != options.group) || (!options.part.empty() && c.part != options.part)) continue;
        if (!options.every_load_case && !seen.insert({c.part, c.title}).second) continue;
        out.push_back(row(o, c, options));
    }
    std::stable_sort(out.begin(), out.end(), before);
    return out;
}

/// What shakes is told beside the verdict, with a way to it, not in it.
static void take_aside(const Outcome& o, VerdictLines& v)
{
    const auto it = std::find_if(o.checks.begin(), o.checks.end(), [](const Check& c) { return !c.required && c.group == "vibration" && c.status == base::Status::fail; });
    if (o.verdict == base::Verdict::not_solved || it == o.checks.end()) return;
    v.aside = "Not counted: it shakes with " + it->title;
    v.aside_check = it->id;
    v.aside_case = it->load_case;
    if (!o.aside.empty() && v.headline.ends_with(o.aside)) v.headline.erase(v.headline.size() - o.aside.size());
}

VerdictLines verdict_lines(const Outcome& o)
{
    VerdictLines v;
    v.mark = mark_of(o.verdict);
    v.word = word(v.mark);
    v.headline = o.headline;
    take_aside(o, v);
    v.advice = o.advice;
    v.advice_at = o.advice_at;
    int failed = 0, open = 0, judged = 0, passed = 0;
    for (const results::Group& g : o.groups) {
        if (g.required) failed += g.failed; // what does not count is said by itself
        open += g.not_covered;
        judged += g.judgements;
        passed += g.passed;
    }
    v.counts = fmt::format("{} failed, {} not covered, {} pass on judgement, {} pass", failed, open, judged, passed);
    return v;
}

VerdictLines verdict_so_far(const Outcome& o)
{
    VerdictLines v = verdict_lines(o);
    if (v.mark != Mark::pass) return v;
    v.mark = Mark::not_covered;
    v.word = "not decided yet";
    v.headline = "Nothing fails so far, which is no pass: large deflection, the skin's stress on a fine grid, what the item answers to a slam and natural frequencies are still to come.";
    v.advice = v.aside = v.counts = "";
    v.advice_at.clear();
    return v;
}

std::vector<GroupRow> group_rows(const Outcome& o, const Outcome* compare_with)
{
    std::vector<GroupRow> out;
    for (const results::Group& g : o.groups) {
        GroupRow r{g.name, std::string(base::name(g.status)), "-", g.part, g.check, report::group_remark(g), mark_of(g.status), "", 0};
        if (!g.required && r.mark == Mark::fail) {
            r.mark = Mark::aside;
            r.status = "not counted";
        }
        const bool solved = o.verdict != base::Verdict::not_solved;
        if (g.least_margin && solved) r.margin = report::margin_text(*g.least_margin);
        for (const results::Group& was : compare_with ? compare_with->groups : std::vector<results::Group>{})
            if (was.name == g.name && was.least_margin && g.least_margin && solved) {
                r.delta = delta_text(*was.least_margin, *g.least_margin);
                if (!r.delta.empty()) r.better = *g.least_margin > *was.least_margin ? 1 : -1;
            }
        out.push_back(std::move(r));
    }
    return out;
}

void take_so_far(std::vector<GroupRow>& groups)
{
    for (GroupRow& g : groups)
        if (g.mark == Mark::pass || g.mark == Mark::judgement) g.mark = Mark::aside, g.status = "so far";
}

std::optional<MarginCard> margin_card(const Outcome& o, const std::string& check_id, const std::string& load_case, const MarginOptions& options)
{
    const Check* c = nullptr;
    for (const Check& k : o.checks)
        if (k.id == check_id && (!c || k.load_case == load_case)) c = &k;
    if (!c || o.verdict == base::Verdict::not_solved) return std::nullopt;
    MarginCard card;
    card.row = row(o, *c, options);
    take_clause(*c, card);
    if (card.row.value) card.sum = fmt::format("margin = capacity / demand - 1 = {} / {} - 1 = {}", with_unit(card.row.capacity, card.row.unit), with_unit(card.row.demand, card.row.unit), card.row.margin);
    card.hand_check = hand_check(o, *c, card.row.load_case);
    if (const auto* lc = load_case_of(o, card.row.load_case)) card.load_case = load_case_text(*lc);
    card.theory = theory_of(o, card.row.load_case);
    if (!c->help.empty()) card.help.push_back(c->help);
    if (c->status == base::Status::not_covered && !c->lift_with.empty() && c->help.find(c->lift_with) == std::string::npos) card.help.push_back("What would lift it: " + c->lift_with + ".");
    card.help_at = c->help_at;
    card.note = c->note;
    card.not_counted = report::not_counted_words(*c);
    return card;
}

std::map<std::string, std::string> part_margins(const Outcome& o) { return report::part_notes(o); }

std::vector<LoadCaseRow> load_case_rows(const Outcome& o)
{
    std::vector<LoadCaseRow> out;
    for (const results::LoadCase& lc : o.load_cases)
        out.push_back({lc.name, report::acceleration_text(lc), theory_of(o, lc.name), lc.source, lc.derivation, o.governing && o.governing->load_case == lc.name});
    return out;
}

} // namespace thinskin::gui
