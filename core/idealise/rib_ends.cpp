#include "idealise/response.h"

#include <algorithm>
#include <cmath>

/// ID-12: what the end of a rib hands to the frame: the reaction of the skin's node there, and its moment about the panel edge.
///   T_i = |R_z| (next to the span) or |R_z| / n + |M| |s_i - s_m| / sum (s - s_m)^2, s along the rib: each fastener of the end in tension
namespace thinskin::idealise {

namespace {

struct Reaction { layout::Vec3 force{}; double moment = 0; }; ///< of the rib on the frame, N and N mm

Reaction reaction(const Structure& s, std::size_t rib, std::size_t end, const fem::Vector& u, const fem::Vector& support)
{
    const fem::RibEndPlace p = fem::rib_end_place(*s.skin, rib, end);
    const fem::RibEnd& tie = s.skin->model.ribs[rib].ends[end];
    const double moment = tie.turning_held ? -support(p.slope) : tie.rotational_stiffness * u(p.slope);
    return {{-support(p.u), -support(p.v), -support(p.w)}, moment};
}

/// Place along the rib, from the end's edge inwards whichever end it is: only distances count.
double along(const layout::Rib& r, layout::Point p) { return r.from.y == r.to.y ? p.x : p.y; }

double mean_place(const layout::Rib& r, const layout::MemberEnd& end)
{
    double sum = 0;
    for (const layout::Stack& f : end.fasteners) sum += along(r, f.at) / static_cast<double>(end.fasteners.size());
    return sum;
}

std::vector<results::FastenerForce> shared(const layout::Rib& r, const layout::MemberEnd& end, const Reaction& at, const results::EndForce& of)
{
    const double mean = mean_place(r, end), middle = (along(r, r.from) + along(r, r.to)) / 2;
    double squares = 0, nearest = INFINITY;
    for (const layout::Stack& f : end.fasteners) {
        squares += std::pow(along(r, f.at) - mean, 2);
        nearest = std::min(nearest, std::abs(along(r, f.at) - middle));
    }
    std::vector<results::FastenerForce> out;
    for (const layout::Stack& f : end.fasteners) {
        const bool next_to_span = std::abs(along(r, f.at) - middle) <= nearest + 1;
        const double couple = squares > 0 ? std::abs(at.moment) * std::abs(along(r, f.at) - mean) / squares : 0;
        results::FastenerForce one;
        one.name = f.name;
        one.part = r.name;
        one.load_case = of.load_case;
        one.own_pull_N = std::abs(at.force[2]) / (next_to_span ? 1.0 : static_cast<double>(end.fasteners.size()));
        one.tension_N = one.own_pull_N + couple;
        one.prying_N = couple;
        one.shear_x_N = at.force[0];
        one.shear_y_N = at.force[1];
        one.row_shear_N = std::hypot(at.force[0], at.force[1]);
        one.shear_rule = "one fastener of the end carries all shear, the one next to the span all pull, all of them the end's moment";
        one.stands = of.stands;
        one.why_not = of.why_not;
        out.push_back(one);
    }
    return out;
}

results::EndForce end_force(const layout::Rib& r, const layout::MemberEnd& end, const Run& run, const Reaction* at)
{
    results::EndForce f;
    f.name = r.name;
    f.end = end.side;
    f.load_case = run.load_case.name;
    f.stands = at != nullptr;
    if (!at) f.why_not = "not solved: " + run.large->where;
    const Reaction none{{std::nan(""), std::nan(""), std::nan("")}, std::nan("")};
    const Reaction& x = at ? *at : none;
    f.force_N = x.force;
    f.spread_N = f.hand_N = x.force[2]; // no hand sum: a rib shares with the skin along its whole line
    f.moment_Nm = {0, x.moment / 1000, 0};
    f.fasteners = shared(r, end, x, f);
    for (results::FastenerForce& one : f.fasteners) one.rare = run.load_case.on_item.has_value();
    return f;
}

/// Each fastener keeps its hardest pull and its hardest shear, whichever state they come from.
void take_worse(results::EndForce& worst, const results::EndForce& x)
{
    for (std::size_t i = 0; i < worst.fasteners.size(); ++i) {
        results::FastenerForce& f = worst.fasteners[i];
        const results::FastenerForce& g = x.fasteners[i];
        if (takes_over(g.tension_N, f.tension_N)) f.tension_N = g.tension_N, f.own_pull_N = g.own_pull_N, f.prying_N = g.prying_N;
        if (takes_over(g.row_shear_N, f.row_shear_N)) f.row_shear_N = g.row_shear_N, f.shear_x_N = g.shear_x_N, f.shear_y_N = g.shear_y_N;
    }
    if (takes_over(std::abs(x.moment_Nm[1]), std::abs(worst.moment_Nm[1]))) worst.moment_Nm = x.moment_Nm;
    if (takes_over(std::abs(x.force_N[2]), std::abs(worst.force_N[2]))) worst.force_N = x.force_N, worst.spread_N = x.spread_N, worst.hand_N = x.hand_N;
}

void does_not_stand(results::EndForce& f, const std::string& why)
{
    f.stands = false;
    f.why_not = why;
    for (results::FastenerForce& one : f.fasteners) one.stands = false, one.why_not = why;
}

/// Worst of the states; none: not solved. By linear theory it stands only where all three stiffnesses have a solution.
results::EndForce worst_end(const Structure& s, const Run& run, std::size_t rib, std::size_t end, const std::vector<SkinMotion>& states)
{
    const layout::Rib& r = s.layout->ribs[rib];
    if (states.empty()) return end_force(r, r.ends[end], run, nullptr);
    std::optional<results::EndForce> worst;
    for (const SkinMotion& x : states) {
        const Reaction at = reaction(s, rib, end, x.u, x.support);
        const results::EndForce one = end_force(r, r.ends[end], run, &at);
        if (worst) take_worse(*worst, one);
        else worst = one;
    }
    if (const std::string why = not_all_solved(run); !why.empty()) does_not_stand(*worst, why);
    return *worst;
}

} // namespace

std::vector<results::EndForce> rib_ends(const Structure& s, const Solution& sol)
{
    std::vector<results::EndForce> out;
    const auto& ribs = s.layout->ribs;
    const bool any = std::any_of(ribs.begin(), ribs.end(), [](const layout::Rib& r) { return r.ends[0].tied || r.ends[1].tied; });
    if (!any) return out;
    for (const Run& run : sol.runs) {
        const std::vector<SkinMotion> states = skin_motions(s, sol, run);
        for (std::size_t i = 0; i < ribs.size(); ++i)
            for (std::size_t e = 0; e < 2; ++e)
                if (ribs[i].ends[e].tied) out.push_back(worst_end(s, run, i, e, states));
    }
    return out;
}

} // namespace thinskin::idealise
