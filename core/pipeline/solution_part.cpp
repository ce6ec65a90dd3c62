#include "pipeline/assemble.h"
#include "base/largest.h"
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

/// Moment about the leg's foot of what the brackets' bolts pull on the parts behind, net of the contact beside them, N mm.
double solved_moment(const layout::Bracket& b, const std::string& load_case, const results::Outcome& o)
{
    double moment = 0;
    for (const results::FastenerForce& f : o.fasteners)
        if (f.part == b.name && f.load_case == load_case)
            for (const layout::Stack& s : b.fasteners)
                if (s.name == f.name) moment += f.own_pull_N * (s.at.y - b.leg.from.y);
    return moment;
}

/// solver = hand + prying + bracket share + skin share + pivot shift, in newtons; the five add up.
///   prying         contact beside the bolt, which its tension has to balance
///   bracket share  the bracket takes another moment than the hand sum gave it: hand (M/M_hand - 1)
///   skin share     what goes into the skin's bending at this bolt
///   pivot shift    the rest: the pull turns about another line than the leg's foot or top
std::string apart(const results::FastenerForce& f, const layout::Layout& l, const statics::HandFigures& hand, const results::Outcome& o)
{
    double share = 0;
    for (const layout::Bracket& b : l.brackets) {
        const statics::BracketHand* h = b.name == f.part ? statics::bracket(hand, b.name) : nullptr;
        if (h && std::abs(h->moment_Nm) > 1e-6) share = f.hand_tension_N * (solved_moment(b, f.load_case, o) / (h->moment_Nm * 1000) - 1);
    }
    const double pivot = f.tension_N - f.hand_tension_N - f.prying_N - share - f.skin_share_N;
    return fmt::format("solver {:.0f} N = hand {:.0f} N + prying {:.0f} N + bracket share {:.0f} N + skin share {:.0f} N + pivot shift {:.0f} N", f.tension_N, f.hand_tension_N, f.prying_N, share,
                       f.skin_share_N, pivot);
}

void hand_for_fasteners(const layout::Layout& l, const statics::HandFigures& hand, results::Outcome& o)
{
    for (results::FastenerForce& f : o.fasteners) {
        const statics::BoltHand* b = f.load_case == hand.load_case ? statics::bolt(hand, f.name) : nullptr;
        if (!b) continue;
        f.hand_tension_N = b->tension_N;
        f.hand_shear_N = b->shear_group_N;
        if (differs(f.tension_N, f.hand_tension_N)) f.difference = apart(f, l, hand, o);
    }
}

void hand_for_ends(const statics::HandFigures& hand, results::Outcome& o)
{
    for (results::EndForce& e : o.member_ends) {
        const statics::AngleEndHand* h = e.load_case == hand.load_case ? statics::end(hand, e.name, e.end) : nullptr;
        if (!h) continue;
        e.hand_N = h->force_N;
        if (differs(e.force_N[2], e.hand_N))
            e.difference = fmt::format("solver {:.0f} N = hand {:.0f} N + {:.0f} N by contact: what the legs push on the angle, which the hand sum leaves to the skin", e.force_N[2], e.hand_N, e.force_N[2] - e.hand_N);
    }
}

} // namespace

void take_load_cases(const actions::LoadCases& cases, const actions::DynamicFactor& factor, results::Outcome& o)
{
    o.load_cases = cases.cases;
    o.shaking = cases.shaking;
    o.dynamic_factor = factor.value;
    o.dynamic_basis = factor.basis;
    o.dynamic_derivation = factor.derivation;
    o.assumptions.insert(o.assumptions.end(), cases.assumptions.begin(), cases.assumptions.end());
    o.cautions.insert(o.cautions.end(), cases.cautions.begin(), cases.cautions.end());
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
    if (!fields.skin.empty()) o.plate_rims = idealise::rim_stresses(*s, sol, fields); // not at Depth::forces
    o.opening_corners = fields.corners;
    o.skin = fields.skin;
    o.skin_fields = fields.pictures;
    o.gauges = fields.gauges;
    o.balance = fields.balance;
    int large = 0;
    for (results::LoadCase& lc : o.load_cases) {
        lc.theory = "linear";
        for (const idealise::Run& run : sol.runs)
            if (run.load_case.name == lc.name && run.large) {
                lc.theory = "large deflection";
                ++large;
                if (!run.large_solved()) o.not_solved.push_back(fmt::format("load case {}: {}", lc.name, run.large->where));
            }
    }
    o.skin_theory = large == 0 ? "linear" : fmt::format("large deflection in {} of {} load cases, linear in the others", large, o.load_cases.size());
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
    if (l.brackets.empty() || !l.item || !l.item->feet.empty()) return; // the hand sum knows brackets only
    for (const results::LoadCase& lc : o.load_cases) {
        const statics::HandFigures hand = statics::hand_figures(l, lc);
        hand_for_fasteners(l, hand, o);
        hand_for_ends(hand, o);
    }
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
        if (const double of_body = base::larger(x.force_error, x.moment_error); base::takes_over(of_body, error)) {
            error = of_body;
            worst = x.body;
            lc = x.load_case;
        }
    return fmt::format("{}: forces on {} do not balance (relative error {:.1e}); no margin is printed", lc, worst, error);
}

} // namespace thinskin::pipeline
