#include "report/figures.h"
#include "report/html.h"
#include "report/record_parts.h"
#include "report/table.h"
#include "report/text_parts.h"

#include <algorithm>
#include <fmt/format.h>

/// Life under repeated stress: what is counted, then kilometres and years for each detail.
namespace thinskin::report {
namespace {

using results::Life;

std::string basis(const Outcome& o)
{
    const results::Shaking& s = o.shaking;
    std::string text = fmt::format("Vertical shaking of the road, {} km wanted ({}), {} km a year; slams, braking, single potholes and what shakes across are not counted. Damage by narrow-band cycles with two slopes and "
                                   "cut-off (FA-2), stress times {:g} (from memory), at the worst frequency any mount may have; limit of the sum {:g} (common practice, no source).",
                                   fixed(s.wanted_mm / 1e6, 0), s.wanted_words, fixed(s.distance_per_year_mm / 1e6, 0), o.fatigue.gamma, o.fatigue.limit);
    if (!s.running_Hz.empty() && s.running_missing.empty()) text += fmt::format(" The item's own running, {:g} g for {:.0f} h a year at each of its frequencies, is added (Miner).", s.running_g, s.running_s_a_year / 3600);
    return text + " Scope: " + o.fatigue.scope + ".";
}

std::string damage(double d) { return d < 1e-4 ? "< 0.0001" : fmt::format("{:.3g}", d); }

/// kind, detail, category, rms, damage, three bands, km, years
std::vector<std::string> cells(const Life& l)
{
    if (!l.why_not.empty()) return {l.kind, l.detail, fmt::format("{:g}", l.category), "-", "not covered", "-", "-", "-"};
    return {l.kind, l.detail, fmt::format("{:g}", l.category), fmt::format("{:.2f}", l.sigma_MPa), damage(l.damage), damage(l.three_band), l.km ? fmt::format("{:.3g}", *l.km) : "no damage", l.years ? fmt::format("{:.3g}", *l.years) : "-"};
}

/// The worst of each kind, or all; worst first within a kind.
std::vector<const Life*> shown(const Outcome& o, bool all)
{
    std::vector<const Life*> out;
    for (const Life& l : o.fatigue.lives) {
        const auto same = std::find_if(out.begin(), out.end(), [&l](const Life* k) { return k->kind == l.kind; });
        if (all || same == out.end()) out.push_back(&l);
        else if (results::worse(l, **same, o.fatigue.limit)) *same = &l;
    }
    return out;
}

} // namespace

std::string life_lines(const Outcome& o, const TextOptions& t)
{
    if (!o.fatigue.run) return "";
    Table table({{"what"}, {"worst of them"}, {"category", Align::right}, {"MPa rms", Align::right}, {"damage", Align::right}, {"by three bands", Align::right}, {"km to the limit", Align::right}, {"years", Align::right}});
    for (const Life* l : shown(o, t.detail)) table.row(cells(*l));
    return heading("Life under repeated stress") + wrapped("", basis(o), t.width) + table.text();
}

std::string record_life(const Outcome& o)
{
    if (!o.fatigue.run) return "";
    HtmlTable table({{"what"}, {"worst of them"}, {"category", true}, {"MPa rms", true}, {"damage", true}, {"by three bands", true}, {"km to the limit", true}, {"years", true}});
    for (const Life* l : shown(o, false)) table.row(cells(*l));
    return html_paragraph(basis(o)) + table.html();
}

} // namespace thinskin::report
