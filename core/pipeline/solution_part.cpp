#include "pipeline/assemble.h"
#include "statics/hand.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::pipeline {

namespace {

constexpr double same_within = 1.5; ///< hand and solver agree within this factor, else the difference is taken apart

bool differs(double solver, double hand)
{
    const double a = std::abs(solver), b = std::abs(hand), small = 5; // N: not worth words
    if (std::max(a, b) < small) return false;
    return std::max(a, b) > same_within * std::max(std::min(a, b), 1e-9);
}

/// T - hand = prying + (own pull - hand): prying is the contact beside the bolt, the rest is how the brackets, their pivots and
/// the skin share the pull, which the hand sum fixes beforehand. The figures add up.
std::string apart(const results::FastenerForce& f)
{
    return fmt::format("solver {:.0f} N = hand {:.0f} N + prying {:.0f} N + pivot and share {:.0f} N (of which skin {:.0f} N)", f.tension_N, f.hand_tension_N, f.prying_N,
                       f.tension_N - f.prying_N - f.hand_tension_N, f.skin_share_N);
}

void hand_for_case(const statics::HandFigures& hand, results::Outcome& o)
{
    for (results::FastenerForce& f : o.fasteners) {
        if (f.load_case != hand.load_case) continue;
        if (const statics::BoltHand* b = statics::bolt(hand, f.name)) {
            f.hand_tension_N = b->tension_N;
            f.hand_shear_N = b->shear_group_N;
            if (differs(f.tension_N, f.hand_tension_N)) f.difference = apart(f);
        }
    }
    for (results::EndForce& e : o.member_ends) {
        if (e.load_case != hand.load_case) continue;
        if (const statics::AngleEndHand* h = statics::end(hand, e.name, e.end)) {
            e.hand_N = h->force_N;
            if (differs(e.force_N[2], e.hand_N))
                e.difference = fmt::format("solver {:.0f} N = hand {:.0f} N + sharing between the angles, contact and skin {:.0f} N", e.force_N[2], e.hand_N, e.force_N[2] - e.hand_N);
        }
    }
}

} // namespace

void take_load_cases(const layout::Layout& l, const actions::LoadCases& cases, results::Outcome& o)
{
    o.load_cases = cases.cases;
    const actions::DynamicFactor f = actions::dynamic_factor(l);
    o.dynamic_factor = f.value;
    o.dynamic_basis = f.basis;
    o.dynamic_derivation = f.derivation;
    for (const actions::NotRun& n : cases.not_run) o.not_covered.push_back(fmt::format("load case {}: {}", n.load_case, n.reason));
}

void take_solution(const idealise::Structure* s, const idealise::Solution& sol, const idealise::Forces& f, const idealise::Fields& fields, results::Outcome& o)
{
    o.fasteners = f.fasteners;
    o.members = f.members;
    o.member_ends = f.ends;
    o.mounts = f.mounts;
    o.joints = f.joints;
    o.contacts = f.contacts;
    o.skin = fields.skin;
    o.gauges = fields.gauges;
    o.balance = fields.balance;
    o.skin_theory = "linear";
    for (results::LoadCase& lc : o.load_cases) lc.theory = "linear";
    const fem::SkinGrid& grid = s->skin->grid;
    o.grid.nodes = static_cast<int>(grid.x.size() * grid.y.size());
    for (const fem::Body* b : s->assembly.bodies) o.grid.unknowns += b->dofs;
    o.grid.joints = static_cast<int>(s->assembly.joints.size());
    o.grid.spacing_mm = s->options.grid_spacing;
    for (const idealise::Run& run : sol.runs) {
        if (run.load_case.name != actions::name_pothole) continue;
        o.load_path = idealise::load_path(*s, sol, run);
        o.load_path_case = run.load_case.name;
    }
}

void take_hand_figures(const layout::Layout& l, results::Outcome& o)
{
    if (l.brackets.empty() || !l.item) return;
    for (const results::LoadCase& lc : o.load_cases) hand_for_case(statics::hand_figures(l, lc), o);
}

void note_cases_not_run(const actions::LoadCases& cases, results::Outcome& o)
{
    for (const actions::NotRun& n : cases.not_run) {
        const bool door_only = n.load_case.rfind("slam", 0) == 0;
        for (const char* group : {"fixing", "reinforcement", "bracket", "panel", "door"}) {
            if (door_only && std::string(group) != "door") continue;
            const bool exists = std::any_of(o.checks.begin(), o.checks.end(), [&](const results::Check& c) { return c.group == group; });
            if (!exists) continue;
            results::Check c;
            c.id = fmt::format("load case/{}/{}", n.load_case, group);
            c.group = group;
            c.part = "load cases";
            c.title = "load case " + n.load_case;
            c.note = n.reason;
            c.lift_with = n.lift_with;
            o.checks.push_back(c);
        }
    }
}

std::string balance_words(const results::Balance& b)
{
    std::string worst = "a body";
    std::string lc;
    double error = 0;
    for (const results::BodyBalance& x : b.bodies)
        if (!(std::max(x.force_error, x.moment_error) <= error)) {
            error = std::max(x.force_error, x.moment_error);
            worst = x.body;
            lc = x.load_case;
        }
    return fmt::format("{}: forces on {} do not balance (relative error {:.1e}); no margin is printed", lc, worst, error);
}

} // namespace thinskin::pipeline
