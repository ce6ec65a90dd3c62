#include "search/evaluate.h"

#include "search/bounds.h"

#include <algorithm>
#include <cmath>

namespace thinskin::search {

namespace {

using base::Status;
using results::Check;

bool starts(const std::string& text, const char* with) { return text.rfind(with, 0) == 0; }

/// The row's capacity hangs on the bolts through the skin: sisters have another.
bool of_outer_bolt(const Check& c, const layout::Layout& l)
{
    if (c.group == "fixing") return true;
    if (!starts(c.id, "lying leg/")) return false;
    const auto stacks = l.outer_stacks();
    return std::any_of(stacks.begin(), stacks.end(), [&](const layout::Stack* s) { return c.id.ends_with("/" + s->name); });
}

/// Rows that know places and masses only are exact.
double at_most(const Check& c, double slack)
{
    const bool exact = c.load_case == "geometry" || c.group == "door";
    return exact ? c.margin() : (1 + c.margin()) * (1 + slack) - 1;
}

bool counts(const Check& c) { return c.required && c.has_numbers() && (c.load_case != "geometry" || c.status == Status::fail); }

/// What one row says; `open`: a required row without a figure that no other solution lifts.
void take_row(const Check& c, bool of_bolt, bool open, Said& s)
{
    if (!open && !counts(c)) return;
    s.upper = std::min(s.upper, open ? -1 : at_most(c, linear_slack));
    if (!of_bolt) s.upper_of_sisters = std::min(s.upper_of_sisters, open ? -1 : at_most(c, demand_slack));
    if (open) return;
    if (c.group == "panel") s.upper_of_cousins = std::min(s.upper_of_cousins, at_most(c, cousin_slack));
    if (of_bolt && asks(c) == Asks::pull) s.pull_N = std::max(s.pull_N, c.demand);
    if (of_bolt && asks(c) == Asks::shear) s.shear_N = std::max(s.shear_N, c.demand);
}

template <class Open> void take_uppers(const pipeline::Analysis& a, Said& s, Open open)
{
    s.upper = s.upper_of_sisters = s.upper_of_cousins = INFINITY;
    for (const Check& c : a.outcome->checks) take_row(c, of_outer_bolt(c, *a.layout), c.required && c.status == Status::not_covered && open(c), s);
}

bool asks_for_large(const Check& c) { return c.status == Status::not_covered && starts(c.note, "large deflection"); }

/// Without the road and the slam: one load case is left.
model::Case parked_only(model::Case c)
{
    c.road.reset();
    if (c.door) c.door->slam.reset();
    if (c.item) c.item->loads.clear();
    return c;
}

} // namespace

bool whichever_scheme(const Check& c)
{
    const bool of_a_scheme = c.group == "fixing" || c.group == "reinforcement" || c.group == "bracket" || c.group == "panel";
    return !of_a_scheme || starts(c.id, "load case/");
}

namespace {

/// Passes but for such rows.
bool passes(const results::Outcome& o)
{
    if (o.verdict == base::Verdict::pass) return true;
    if (o.verdict != base::Verdict::not_covered) return false;
    return std::all_of(o.checks.begin(), o.checks.end(), [](const Check& c) { return !c.required || c.status != Status::not_covered || whichever_scheme(c); });
}

} // namespace

double upper_of_sister(const Said& said, const BoltCapacity& bolt)
{
    double upper = said.upper_of_sisters;
    if (said.pull_N > 0) upper = std::min(upper, bolt.pull * (1 + demand_slack) / said.pull_N - 1);
    if (said.shear_N > 0) upper = std::min(upper, bolt.shear * (1 + demand_slack) / said.shear_N - 1);
    return upper;
}

Said by_forces(const model::Case& edited, pipeline::Workspace& w, std::stop_token stop)
{
    Said s;
    const pipeline::Analysis a = pipeline::analyse(edited, w, pipeline::Depth::forces, stop);
    s.stopped = stop.stop_requested();
    if (!a.outcome || s.stopped) return s;
    if (!a.outcome->not_solved.empty()) return s; // a mechanism, or no contact state: by linear theory, which large deflection starts from
    for (const Check& c : a.outcome->checks) s.needs_large = s.needs_large || (c.required && asks_for_large(c));
    take_uppers(a, s, [](const Check& c) { return c.group != "panel" && !asks_for_large(c) && !whichever_scheme(c); });
    return s;
}

Said by_parked(const model::Case& edited, pipeline::Workspace& w, std::stop_token stop)
{
    Said s;
    const pipeline::Analysis a = pipeline::analyse(parked_only(edited), w, pipeline::Depth::margins, stop);
    s.stopped = stop.stop_requested();
    if (!a.outcome || s.stopped) return s;
    if (!a.outcome->not_solved.empty()) return s; // alone or among others: the same equations
    take_uppers(a, s, [](const Check&) { return false; });
    return s;
}

Said settled(const model::Case& edited, double wanted, pipeline::Workspace& w, std::stop_token stop)
{
    Said s;
    pipeline::Analysis a = pipeline::analyse(edited, w, pipeline::Depth::settled, stop);
    s.stopped = stop.stop_requested();
    if (!a.outcome || s.stopped) return s;
    take_uppers(a, s, [](const Check&) { return false; });
    if (a.outcome->verdict == base::Verdict::not_solved) s.upper_of_sisters = -1; // other bolts do not change what buckles
    const bool figure = a.outcome->governing.has_value() && a.outcome->verdict != base::Verdict::not_solved;
    s.margin = figure ? a.outcome->governing->margin() : -1;
    s.upper = s.margin;
    s.holds = passes(*a.outcome) && figure && s.margin >= wanted;
    s.outcome = std::move(a.outcome);
    return s;
}

} // namespace thinskin::search
