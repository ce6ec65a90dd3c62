#include "search/evaluate.h"

#include "search/bounds.h"

#include <algorithm>
#include <cmath>

namespace thinskin::search {

namespace {

using base::Status;
using results::Check;

bool starts(const std::string& text, const char* with) { return text.rfind(with, 0) == 0; }

/// What the row's capacity hangs on: the bolts through the skin, those of the angles' ends, of which sisters have others, or neither.
enum class Of { skin_bolts, end_bolts, rest };

bool names_it(const std::string& id, const std::string& fastener)
{
    const std::size_t at = id.find("/" + fastener);
    const std::size_t end = at + 1 + fastener.size();
    return at != std::string::npos && (end == id.size() || id[end] == '/');
}

Of hangs_on(const Check& c, const layout::Layout& l)
{
    if (c.group == "fixing") return Of::skin_bolts;
    for (const layout::MemberEnd* e : l.member_ends())
        for (const layout::Stack& s : e->fasteners)
            if (names_it(c.id, s.name)) return Of::end_bolts;
    if (!starts(c.id, "lying leg/")) return Of::rest;
    const auto stacks = l.outer_stacks();
    return std::any_of(stacks.begin(), stacks.end(), [&](const layout::Stack* s) { return names_it(c.id, s->name); }) ? Of::skin_bolts : Of::rest;
}

/// Rows that know places and masses only are exact.
double at_most(const Check& c, double slack)
{
    const bool exact = c.load_case == "geometry" || c.group == "door";
    return exact ? c.margin() : (1 + c.margin()) * (1 + slack) - 1;
}

/// It says which part it uses up first, and that may be a bolt: nothing for relatives.
bool answers_slam(const Check& c) { return starts(c.id, "slam/answer"); }

bool counts(const Check& c) { return c.required && c.has_numbers() && (c.load_case != "geometry" || c.status == Status::fail); }

/// What one row says; `open`: a required row without a figure that no other solution lifts. Lives say nothing: they are no forces.
void take_row(const Check& c, Of of, bool open, Said& s)
{
    if ((!open && !counts(c)) || c.group == "fatigue" || answers_slam(c)) return;
    const auto lower = [&](double& upper, double slack) { upper = std::min(upper, open ? -1 : at_most(c, slack)); };
    if (const double before = s.upper; lower(s.upper, s.twin_slack), s.upper < before) s.upper_in = c.load_case;
    if (of != Of::skin_bolts) lower(s.upper_of_twins, s.twin_slack);
    if (of == Of::rest) lower(s.upper_of_sisters, demand_slack);
    if (open) return;
    if (c.group == "panel") lower(s.upper_of_cousins, cousin_slack);
    if (of == Of::skin_bolts && asks(c) == Asks::pull) s.pull_N = std::max(s.pull_N, c.demand);
    if (of == Of::skin_bolts && asks(c) == Asks::shear) s.shear_N = std::max(s.shear_N, c.demand);
}

bool not_covered(const Check& c) { return c.required && c.status == Status::not_covered; }

/// `slack`: how much this solution's demands may be off. `lifted`: whether another solution, or nothing at all, lifts a row that is not covered.
template <class Lifted> void take_uppers(const pipeline::Analysis& a, double slack, Said& s, Lifted lifted)
{
    s.upper = s.upper_of_twins = s.upper_of_sisters = s.upper_of_cousins = INFINITY;
    s.twin_slack = slack;
    for (const Check& c : a.outcome->checks)
        if (const bool open = not_covered(c); !open || !lifted(c)) take_row(c, hangs_on(c, *a.layout), open, s);
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
    return (!of_a_scheme && !answers_slam(c)) || starts(c.id, "load case/");
}

bool passes(const results::Outcome& o)
{
    if (o.verdict == base::Verdict::pass) return true;
    if (o.verdict != base::Verdict::not_covered) return false;
    return std::all_of(o.checks.begin(), o.checks.end(), [](const Check& c) { return !c.required || c.status != Status::not_covered || whichever_scheme(c); });
}

namespace {

/// By what the rows of the bolts are asked for.
double by_bolts(double upper, const Said& said, const BoltCapacity& bolt, double slack)
{
    if (said.pull_N > 0) upper = std::min(upper, bolt.pull * (1 + slack) / said.pull_N - 1);
    if (said.shear_N > 0) upper = std::min(upper, bolt.shear * (1 + slack) / said.shear_N - 1);
    return upper;
}

} // namespace

double upper_of_sister(const Said& said, const BoltCapacity& bolt) { return by_bolts(said.upper_of_sisters, said, bolt, demand_slack); }

double upper_of_twin(const Said& said, const BoltCapacity& bolt) { return by_bolts(said.upper_of_twins, said, bolt, said.twin_slack); }

namespace {

/// Empty: none but parked, which is always among them. A change of stress is of the load case that it goes to.
std::string load_case_of(const std::string& row, const std::vector<results::LoadCase>& all)
{
    for (std::size_t k = 1; k < all.size(); ++k)
        if (row == all[k].name || row == all[k].name + " over " + all.front().name) return all[k].name;
    return "";
}

} // namespace

Said by_forces(const model::Case& edited, pipeline::Workspace& w, std::stop_token stop, const pipeline::Only& only)
{
    Said s;
    const pipeline::Analysis a = pipeline::analyse(edited, w, pipeline::Depth::forces, stop, {}, only);
    s.of_few = !only.empty();
    s.stopped = stop.stop_requested();
    if (!a.outcome || s.stopped) return s;
    if (!a.outcome->not_solved.empty()) return s; // a mechanism, or no contact state: by linear theory, which large deflection starts from
    for (const Check& c : a.outcome->checks) s.needs_large = s.needs_large || (c.required && asks_for_large(c));
    // Of few load cases a row may be without a figure because its load case is left out.
    take_uppers(a, linear_slack, s, [&s](const Check& c) { return s.of_few || c.group == "panel" || asks_for_large(c) || whichever_scheme(c); });
    s.upper_in = load_case_of(s.upper_in, a.outcome->load_cases);
    return s;
}

Said by_parked(const model::Case& edited, pipeline::Workspace& w, std::stop_token stop)
{
    Said s;
    const pipeline::Analysis a = pipeline::analyse(parked_only(edited), w, pipeline::Depth::margins, stop);
    s.stopped = stop.stop_requested();
    if (!a.outcome || s.stopped) return s;
    if (!a.outcome->not_solved.empty()) return s; // alone or among others: the same equations
    take_uppers(a, linear_slack, s, [](const Check&) { return true; });
    return s;
}

Said by_margins(const model::Case& edited, pipeline::Workspace& w, std::stop_token stop)
{
    Said s;
    pipeline::Analysis a = pipeline::analyse(edited, w, pipeline::Depth::margins, stop);
    s.stopped = stop.stop_requested();
    if (!a.outcome || s.stopped) return s;
    if (!a.outcome->not_solved.empty()) {
        s.upper_of_sisters = INFINITY; // other bolts may take it another way
        return s;
    }
    std::erase_if(a.outcome->checks, [](const Check& c) { return c.id == "skin stress"; });
    take_uppers(a, 0, s, [](const Check& c) { return c.group == "panel" || whichever_scheme(c); });
    return s;
}

Said settled(const model::Case& edited, double wanted, pipeline::Workspace& w, std::stop_token stop)
{
    Said s;
    pipeline::Analysis a = pipeline::analyse(edited, w, pipeline::Depth::settled, stop);
    s.stopped = stop.stop_requested();
    if (!a.outcome || s.stopped) return s;
    take_uppers(a, 0, s, [](const Check&) { return true; });
    if (a.outcome->verdict == base::Verdict::not_solved) s.upper_of_twins = -1; // the same equations
    const bool figure = a.outcome->governing.has_value() && a.outcome->verdict != base::Verdict::not_solved;
    s.margin = figure ? a.outcome->governing->margin() : -1;
    s.holds = passes(*a.outcome) && figure && s.margin >= wanted;
    s.outcome = std::move(a.outcome);
    return s;
}

} // namespace thinskin::search
