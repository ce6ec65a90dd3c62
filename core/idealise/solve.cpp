#include "base/side_by_side.h"
#include "idealise/response.h"

#include <algorithm>
#include <fmt/core.h>

namespace thinskin::idealise {

namespace {

std::string reason(const fem::JointState& state, const std::string& load_case)
{
    switch (state.status) {
    case fem::SolveStatus::mechanism: return fmt::format("{}: {}", load_case, state.where);
    case fem::SolveStatus::no_contact_state: return fmt::format("{}: contact and lift-off do not settle", load_case);
    default: return fmt::format("{}: the equations are too ill-conditioned for a number to be shown (residual {:.1e})", load_case, state.residual);
    }
}

using Kept = std::array<fem::JointFactors, skin_factors.size()>;

/// One load case with all three stiffnesses of the skin. start: which contacts are closed at first. The answer does not depend on it (theory FE-12);
/// whether one is found may, so where none is, all closed are tried as well: a neighbour never takes a solution away.
Run run_of(const Structure& s, const Solution& sol, const results::LoadCase& lc, const std::vector<char>& start, Kept& kept)
{
    Run run;
    run.load_case = lc;
    run.factors = load_factors(s, lc);
    const auto solved = [&](std::size_t v, const std::vector<char>& from) { return fem::solve_joints(s.assembly, sol.condensed, sol.free, run.factors, from, skin_factors[v], &kept[v]); };
    run.states[0] = solved(0, start);
    if (!run.solved(0)) run.states[0] = solved(0, std::vector<char>(start.size(), 1));
    if (!run.solved(0)) return run;
    for (std::size_t v = 1; v < skin_factors.size(); ++v) run.states[v] = solved(v, run.states[0].active);
    return run;
}

/// Load cases in turn, each from the contacts of the one before it. Ends with the first that has no solution.
std::vector<Run> runs_of(const Structure& s, const Solution& sol, const std::vector<results::LoadCase>& cases, std::size_t first, std::size_t last, std::stop_token stop)
{
    Kept kept;
    std::vector<char> start(s.assembly.joints.size(), 1);
    std::vector<Run> runs;
    for (std::size_t k = first; k < last && !stop.stop_requested(); ++k) {
        runs.push_back(run_of(s, sol, cases[k], start, kept));
        if (!runs.back().solved(0)) break;
        start = runs.back().states[0].active;
    }
    return runs;
}

} // namespace

Solution solve(const Structure& s, const std::vector<results::LoadCase>& cases, fem::ColumnCache& cache, std::stop_token stop)
{
    Solution sol;
    sol.condensed = fem::condense(s.assembly, s.skin_body, cache);
    sol.free = fem::free_motion(s.assembly, sol.condensed, s.loads);
    auto parts = base::side_by_side((cases.size() + together - 1) / together, [&](std::size_t part) {
        return runs_of(s, sol, cases, part * together, std::min((part + 1) * together, cases.size()), stop);
    });
    for (std::size_t part = 0; part < parts.size(); ++part) {
        for (Run& run : parts[part]) {
            if (!run.solved(0)) {
                sol.solved = false;
                sol.where = reason(run.states[0], run.load_case.name);
                return sol;
            }
            sol.runs.push_back(std::move(run));
        }
        sol.stopped = sol.runs.size() < std::min((part + 1) * together, cases.size());
        if (sol.stopped) return sol; // what later rows have found has no load cases before it
    }
    return sol;
}

namespace {

/// The named runs, each after the one whose joint forces are closest, smallest first: what Newton divides by is then of a state nearby.
std::vector<Run*> by_neighbours(std::vector<Run>& runs, const std::vector<std::string>& load_cases)
{
    std::vector<Run*> left, out;
    for (Run& run : runs)
        if (std::find(load_cases.begin(), load_cases.end(), run.load_case.name) != load_cases.end()) left.push_back(&run);
    while (!left.empty()) {
        const auto distance = [&](const Run* r) { return out.empty() ? r->states[0].lambda.norm() : (r->states[0].lambda - out.back()->states[0].lambda).norm(); };
        const auto next = std::min_element(left.begin(), left.end(), [&](const Run* a, const Run* b) { return distance(a) < distance(b); });
        out.push_back(*next);
        left.erase(next);
    }
    return out;
}

} // namespace

void solve_large_cases(const Structure& s, Solution& sol, const std::vector<std::string>& load_cases, fem::ColumnCache& cache, const fem::LargeModel& model, std::stop_token stop, const std::function<void(const std::string&, std::size_t, std::size_t)>& tell)
{
    fem::LargeMemory memory;
    std::size_t before = 0;
    for (Run* const run : by_neighbours(sol.runs, load_cases)) {
        if (stop.stop_requested()) {
            sol.stopped = true;
            return;
        }
        if (tell) tell(run->load_case.name, before++, load_cases.size());
        fem::NewtonRule rule;
        rule.force_tolerance = 1e-10; // the sum over the whole is held to 1e-8
        rule.keep_below = 0.2;
        run->large = fem::solve_large(s.assembly, s.skin_body, model, s.loads, run->factors, run->states[0], cache, rule, stop, nullptr, &memory);
    }
}

} // namespace thinskin::idealise
