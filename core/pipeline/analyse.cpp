#include "pipeline/analyse.h"
#include "actions/added_mass.h"
#include "actions/item_states.h"
#include "actions/load_cases.h"
#include "actions/open_door.h"
#include "actions/second_path.h"
#include "base/memory.h"
#include "base/side_by_side.h"
#include "checks/checks.h"
#include "checks/rests.h"
#include "idealise/local_stress.h"
#include "idealise/response.h"
#include "idealise/vibration.h"
#include "layout/layout.h"
#include "pipeline/assemble.h"
#include "pipeline/slam_answer.h"
#include "pipeline/wind_limit.h"
#include "statics/door.h"

#include <array>
#include <chrono>
#include <iterator>

namespace thinskin::pipeline {

struct Workspace::Impl {
    idealise::SkinCache skin, framed;    ///< framed: on the door's own frame, for vibration
    fem::ColumnCache columns;
    Tell tell;                           ///< of the run; may be empty
    void say(const Step& step) const { if (tell) tell(step); }
};

Workspace::Workspace() : impl(std::make_unique<Impl>()) {}
Workspace::~Workspace() = default;
Workspace::Workspace(Workspace&&) noexcept = default;
Workspace& Workspace::operator=(Workspace&&) noexcept = default;

namespace {

/// Milliseconds since the last call; for --detail only.
class Watch {
public:
    double lap()
    {
        const auto now = std::chrono::steady_clock::now();
        const double ms = std::chrono::duration<double, std::milli>(now - last_).count();
        last_ = now;
        return ms;
    }

private:
    std::chrono::steady_clock::time_point last_ = std::chrono::steady_clock::now();
};

struct Solved {
    std::unique_ptr<idealise::Structure> structure;
    idealise::Solution solution;
    idealise::Forces forces;
    idealise::Fields fields;
};

/// Load cases that need the large-deflection solution: those beyond the linear criteria, all, or none (`analysis.skin`).
std::vector<std::string> asked_for(const model::Case& c, const std::vector<results::LoadCase>& cases, const Solved& s)
{
    std::vector<std::string> all;
    for (const results::LoadCase& lc : cases) all.push_back(lc.name);
    switch (c.skin) {
    case model::SkinTheory::linear: return {};
    case model::SkinTheory::large_deflection: return all;
    case model::SkinTheory::automatic: return idealise::cases_beyond_linear(s.forces, s.fields);
    }
    return {};
}

/// Steps 3 to 5: bodies and joints, forces of all load cases, fields. Singular bodies throw; the message names the body.
Solved solve(const layout::Layout& l, const std::vector<results::LoadCase>& cases, Workspace::Impl& w, Depth depth, std::stop_token stop, results::Timing& t)
{
    Watch watch;
    Solved s;
    s.structure = idealise::build(l, {.grid_spacing = idealise::grid_spacing(l.source->grid)}, w.skin);
    t.bodies_ms = watch.lap();
    s.solution = idealise::solve(*s.structure, cases, w.columns, stop);
    t.condense_ms = watch.lap();
    if (!s.solution.solved || s.solution.stopped) return s;
    const double allowable = checks::skin_allowable(l);
    s.forces = idealise::forces(*s.structure, s.solution);
    if (depth == Depth::forces) return s;
    s.fields = idealise::fields(*s.structure, s.solution, *w.skin.buckling, allowable, stop);
    t.load_cases_ms = watch.lap();
    if (const auto beyond = asked_for(*l.source, cases, s); !beyond.empty() && !stop.stop_requested()) {
        if (!w.skin.large) w.skin.large = fem::make_large(w.skin.skin);
        idealise::solve_large_cases(*s.structure, s.solution, beyond, w.columns, *w.skin.large, stop, [&w](const std::string& load_case, std::size_t before, std::size_t of) { w.say({"large deflection, " + load_case, before, of}); });
        if (s.solution.stopped) return s;
        s.forces = idealise::forces(*s.structure, s.solution);
        s.fields = idealise::fields_with_large(*s.structure, s.solution, s.fields, *w.skin.large, stop);
    }
    if (depth != Depth::margins && l.source->skin != model::SkinTheory::linear) {
        if (!w.skin.large) w.skin.large = fem::make_large(w.skin.skin);
        idealise::settle_stress(*s.structure, s.solution, *w.skin.large, allowable, s.fields.skin, w.skin.local, stop);
    }
    t.large_ms = watch.lap();
    return s;
}

std::vector<results::Check> all_rows(const checks::Demands& d)
{
    constexpr std::array parts{checks::fixing, checks::reinforcement, checks::bracket, checks::panel, checks::tether, checks::fatigue, checks::vehicle, checks::vibration, checks::not_covered_parts};
    std::vector<results::Check> rows;
    for (auto& more : base::side_by_side(parts.size(), [&](std::size_t k) { return parts[k](d); }))
        rows.insert(rows.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
    return rows;
}

void take_door(const layout::Layout& l, results::Outcome& o)
{
    o.open_door = actions::open_door(l);
    const statics::DoorFigures door = statics::door_figures(l, o.load_cases, o.open_door);
    o.hinges = door.hinges;
    o.latches = door.latches;
    o.stops = door.stops;
    o.door_ratios = door.ratios;
    o.door_sag = door.sag;
    o.checks.insert(o.checks.end(), door.checks.begin(), door.checks.end());
    o.not_covered.insert(o.not_covered.end(), door.not_covered.begin(), door.not_covered.end());
}

void conclude(const layout::Layout& l, results::Outcome& o)
{
    checks::sort_rows(o.checks);
    for (results::Check& c : o.checks) {
        checks::Advice a = checks::help(c, l);
        c.help = std::move(a.words);
        c.help_at = std::move(a.at);
    }
    o.groups = checks::groups(o.checks);
    o.governing = checks::governing(o.checks);
    // A load case without a solution leaves the verdict open, unless what was solved already fails.
    const base::Verdict of_rows = o.checks.empty() ? base::Verdict::not_solved : checks::verdict(o.groups);
    o.verdict = o.not_solved.empty() || of_rows == base::Verdict::fail ? of_rows : base::Verdict::not_solved;
    o.aside = checks::aside(o);
    o.headline = checks::headline(o);
    o.rests_on = checks::rests_on(l, o);
    checks::Advice a = checks::advice(o, l);
    o.advice = std::move(a.words);
    o.advice_at = std::move(a.at);
    if (!o.governing || (o.verdict != base::Verdict::fail && o.verdict != base::Verdict::pass)) return;
    const auto says_the_same = [&o](results::Check& c) { // one row, one advice
        c.help = o.advice;
        c.help_at = o.advice_at;
    };
    for (results::Check& c : o.checks)
        if (c.id == o.governing->id && c.load_case == o.governing->load_case) says_the_same(c);
    says_the_same(*o.governing);
}

/// Once a structure, about the parked state (a bare panel: about its one load case).
results::Vibration vibration(const layout::Layout& l, const Solved& s, Workspace::Impl& w, idealise::Modes which)
{
    results::Vibration out;
    if (s.solution.runs.empty()) return out;
    const auto parked = std::find_if(s.solution.runs.begin(), s.solution.runs.end(), [](const idealise::Run& r) { return r.load_case.name == actions::name_parked; });
    const idealise::Run& about = parked == s.solution.runs.end() ? s.solution.runs.front() : *parked;
    try {
        auto both = base::side_by_side(2, [&](std::size_t k) {
            if (k == 0) return idealise::vibration(*s.structure, about.states[0], idealise::highest_asked_Hz(l), which, w.skin);
            results::Vibration framed;
            framed.with_frame = idealise::door_frame_modes(l, s.structure->options, about.states[0], which, w.framed);
            return framed;
        });
        out = std::move(both[0]);
        if (out.run) out.with_frame = std::move(both[1].with_frame);
    } catch (const std::exception& e) {
        out = {};
        out.why_not = e.what();
    }
    out.large_deflection = about.large.has_value();
    out.large_in_others = std::any_of(s.solution.runs.begin(), s.solution.runs.end(), [](const idealise::Run& r) { return r.large.has_value(); });
    out.bound = idealise::bound_words(l, out);
    return out;
}

/// Of what hangs; from the list where there is one.
std::optional<double> mount_Hz(const layout::Layout& l, const Solved& s, Workspace::Impl& w, const results::Vibration& listed)
{
    const bool is_listed = listed.run || !listed.why_not.empty();
    return idealise::lowest_hung_Hz(is_listed ? listed : vibration(l, s, w, idealise::Modes::lowest_hung));
}

/// Lowest natural frequency about the parked state, where the road's basis asks for one that nobody measured. None: it has none to give.
std::optional<double> solver_frequency(const layout::Layout& l, Workspace::Impl& w, std::stop_token stop)
{
    if (!actions::wants_solver_frequency(l)) return std::nullopt;
    try {
        results::Timing not_kept;
        const Solved parked = solve(l, {actions::load_cases(l).cases.front()}, w, Depth::margins, stop, not_kept);
        if (!parked.solution.solved || stop.stop_requested()) return std::nullopt;
        return idealise::lowest_hung_Hz(vibration(l, parked, w, idealise::Modes::lowest_hung));
    } catch (const std::exception&) {
        return std::nullopt; // the same bodies are solved again for all load cases, and say there what is wrong
    }
}

/// Load cases on top of those of the case, on the same bodies.
std::optional<results::Outcome> solve_more(const layout::Layout& l, const std::vector<results::LoadCase>& cases, Workspace::Impl& w, Depth depth, std::stop_token stop)
{
    try {
        results::Outcome more;
        more.load_cases = cases;
        const Solved s = solve(l, cases, w, depth, stop, more.timing);
        if (!s.solution.solved || stop.stop_requested()) return std::nullopt;
        take_solution(s.structure.get(), s.solution, s.forces, s.fields, more);
        if (!more.not_solved.empty() || !(more.balance.worst_relative_error <= 1e-8)) return std::nullopt;
        return more;
    } catch (const std::exception&) {
        return std::nullopt;
    }
}

void leave_out(const Only& only, actions::LoadCases& all)
{
    std::vector<results::LoadCase> kept;
    for (const results::LoadCase& lc : all.cases) {
        if (kept.empty() || std::find(only.begin(), only.end(), lc.name) != only.end()) kept.push_back(lc);
        else all.not_run.push_back({lc.name, "left out of this analysis", ""});
    }
    all.cases = std::move(kept);
}

results::Outcome run(const model::Case& c, const layout::Layout& l, Workspace::Impl& w, Depth depth, std::stop_token stop, const Only& only)
{
    Watch watch;
    results::Outcome o = outcome_of_case(c, l);                                 // names, weights, assumptions, cautions
    const std::optional<double> solver_Hz = solver_frequency(l, w, stop);
    actions::LoadCases cases = actions::load_cases(l, solver_Hz);               // 2. accelerations
    o.tether = actions::tether(l, cases.cases);                                 // it knows masses alone: of all of them
    if (!only.empty()) leave_out(only, cases);
    take_load_cases(cases, actions::dynamic_factor(l, solver_Hz), o);
    o.added = actions::added(l);
    for (const std::string& s : actions::states_not_asked(l)) o.not_covered.push_back(s);
    for (const std::string& s : checks::vehicle_not_checked(demands(l, o))) o.not_covered.push_back(s);
    if (c.rules != model::Rules::allowable_strength) {
        o.checks.push_back(no_rule_set(l));
        conclude(l, o);
        return o;
    }
    Solved s;
    w.say({"bodies and linear load cases"});
    try {
        s = solve(l, cases.cases, w, depth, stop, o.timing);                           // 3. - 5. bodies, forces, fields
    } catch (const std::exception& e) {
        s.solution.solved = false;
        s.solution.where = e.what();
    }
    bool solved = s.solution.solved && !stop.stop_requested();
    if (stop.stop_requested()) o.not_solved.push_back("stopped before the end");
    else if (!s.solution.solved) o.not_solved.push_back(s.solution.where);
    else take_solution(s.structure.get(), s.solution, s.forces, s.fields, o);
    if (solved && !(o.balance.worst_relative_error <= 1e-8)) {
        o.not_solved.push_back(balance_words(o.balance));
        solved = false;
    }
    o.timing.solver_ms = watch.lap();
    if (solved && depth == Depth::full) {
        w.say({"natural frequencies"});
        w.skin.local = {}; // their room is wanted now; they are made again in a few hundredths of a second
        base::give_back_memory();
        o.vibration = vibration(l, s, w, idealise::Modes::all);
        o.timing.vibration_ms = watch.lap();
    }
    if (solved) {
        take_hand_figures(l, o);                                                // 6. independent figures beside the demands
        o.fatigue = checks::fatigue_lives(demands(l, o));
        if (o.fatigue.run) o.cautions.push_back("life under repeated stress: " + o.fatigue.scope);
        if (depth == Depth::full) o.wind_limits = wind_limits(demands(l, o), all_rows);
        o.checks = all_rows(demands(l, o));                                              // 7. demands against clauses
        take_door(l, o);
        if (depth == Depth::settled || depth == Depth::full) {
            const auto more = [&](const std::vector<results::LoadCase>& again) { return solve_more(l, again, w, depth, stop); };
            for (results::Check& row : slam_answer_rows(demands(l, o), all_rows, more, [&] { return mount_Hz(l, s, w, o.vibration); })) o.checks.push_back(std::move(row));
        }
        note_cases_not_run(cases, o);
    }
    conclude(l, o);                                                             // 8. groups, verdict, words
    if (!only.empty() && o.verdict != base::Verdict::fail) o.verdict = base::Verdict::not_solved; // whatever the rows say
    o.timing.checks_ms = watch.lap();
    return o;
}

} // namespace

checks::Demands demands(const layout::Layout& l, const results::Outcome& o)
{
    return {&l, &o.fasteners, &o.members, &o.member_ends, &o.mounts, &o.joints, &o.skin, &o.vibration, &o.plate_rims, &o.opening_corners, &o.tether, &o.added, &o.load_cases, &o.shaking, &o.fatigue};
}

Analysis analyse(const model::Case& c, Workspace& workspace, Depth depth, std::stop_token stop, const Tell& tell, const Only& only)
{
    Analysis a;
    layout::Result resolved = layout::resolve(c);                               // 1. names, copies, stacks, geometry
    a.diagnostics = std::move(resolved.diagnostics);
    if (!resolved.layout) return a;
    a.layout = std::make_shared<const layout::Layout>(std::move(*resolved.layout));
    workspace.impl->tell = tell;
    a.outcome = run(c, *a.layout, *workspace.impl, depth, stop, only);
    workspace.impl->tell = {};
    return a;
}

void add_contact_bounds(const model::Case& c, results::Outcome& outcome)
{
    if (!outcome.vibration.run) return;
    const layout::Result r = layout::resolve(c);
    if (!r.layout) return;
    idealise::SkinCache skin;
    const auto structure = idealise::build(*r.layout, {.grid_spacing = idealise::grid_spacing(c.grid)}, skin);
    idealise::add_contact_bounds(*structure, idealise::highest_asked_Hz(*r.layout), outcome.vibration);
}

void apply_strict(results::Outcome& outcome) { checks::apply_strict(outcome); }

} // namespace thinskin::pipeline
