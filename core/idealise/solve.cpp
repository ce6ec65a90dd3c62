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

} // namespace

Solution solve(const Structure& s, const std::vector<results::LoadCase>& cases, fem::ColumnCache& cache, std::stop_token stop)
{
    Solution sol;
    sol.condensed = fem::condense(s.assembly, s.skin_body, cache);
    sol.free = fem::free_motion(s.assembly, sol.condensed, s.loads);
    const std::vector<char> all_closed(s.assembly.joints.size(), 1);
    std::array<fem::JointFactors, skin_factors.size()> kept;
    for (const results::LoadCase& lc : cases) {
        if (stop.stop_requested()) {
            sol.stopped = true;
            return sol;
        }
        Run run;
        run.load_case = lc;
        run.factors = load_factors(s, lc);
        run.states[0] = fem::solve_joints(s.assembly, sol.condensed, sol.free, run.factors, all_closed, skin_factors[0], &kept[0]);
        if (!run.solved(0)) {
            sol.solved = false;
            sol.where = reason(run.states[0], lc.name);
            return sol;
        }
        for (std::size_t v : {1UL, 2UL}) run.states[v] = fem::solve_joints(s.assembly, sol.condensed, sol.free, run.factors, run.states[0].active, skin_factors[v], &kept[v]);
        sol.runs.push_back(std::move(run));
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
