#include "idealise/response.h"

#include <algorithm>
#include <cmath>

/// ID-12: a rib bends with the skin it is joined to: its stress comes from the skin's curvature and stretch along its line.
///   sigma(z) = E (eps + kappa z), kappa = 12 (M - nu M')/(E_s t^3), eps = (N - nu N')/(E_s t) + w'^2/2 in large deflection
/// with z from the skin's mid-plane, M, N along the rib and M', N' across it.
namespace thinskin::idealise {

namespace {

struct Along { double eps = 0, kappa = 0; };

Along along(const Structure& s, const fem::Vector& u, layout::Point p, bool level, bool large)
{
    const fem::SheetSection& sheet = s.skin->model.sheet;
    const fem::SkinPoint q = fem::skin_point(*s.skin, u, p.x, p.y);
    const double M = level ? q.M_x : q.M_y, M_across = level ? q.M_y : q.M_x, N = level ? q.N_x : q.N_y, N_across = level ? q.N_y : q.N_x, slope = level ? q.w_x : q.w_y;
    return {(N - sheet.nu * N_across) / (sheet.E * sheet.thickness) + (large ? slope * slope / 2 : 0), 12 * (M - sheet.nu * M_across) / (sheet.E * std::pow(sheet.thickness, 3))};
}

/// Height of the rib off the skin: a flat lies when it is said to.
double height(const layout::Rib& r)
{
    const bool lying = r.section.kind == catalogue::Section::Kind::flat && !r.standing;
    return lying ? std::min(r.section.b, r.section.h) : r.section.kind == catalogue::Section::Kind::flat ? std::max(r.section.b, r.section.h) : r.section.h;
}

results::MemberForce worst_of_rib(const Structure& s, const layout::Rib& r, const Run& run, const fem::Vector& u)
{
    results::MemberForce worst;
    worst.name = r.name;
    worst.load_case = run.load_case.name;
    const bool level = r.from.y == r.to.y;
    const double low = level ? std::min(r.from.x, r.to.x) : std::min(r.from.y, r.to.y), high = level ? std::max(r.from.x, r.to.x) : std::max(r.from.y, r.to.y);
    const double half = s.layout->skin.core / 2, h = height(r);
    for (double at : level ? s.skin->grid.x : s.skin->grid.y) {
        if (at < low - 1e-9 || at > high + 1e-9) continue;
        const double inside = std::min(at, high - 1e-6 * (high - low)); // on its last line a point belongs to the bare skin beyond, whose kink the rib does not share
        const Along a = along(s, u, level ? layout::Point{inside, r.from.y} : layout::Point{r.from.x, inside}, level, run.large.has_value());
        for (double z : {-half, -half - h}) {
            const double sigma = std::abs(r.material.E * (a.eps + a.kappa * z));
            if (takes_over(sigma, worst.stress_MPa)) {
                worst.stress_MPa = sigma;
                worst.at_mm = at - low;
                worst.moment_y_Nm = r.material.E * r.section.I_x * std::abs(a.kappa) / 1000;
                worst.axial_N = r.material.E * r.section.A * (a.eps - a.kappa * (half + h / 2));
            }
        }
    }
    worst.spread_moment_Nm = worst.moment_y_Nm;
    return worst;
}

} // namespace

std::vector<SkinMotion> skin_motions(const Structure& s, const Solution& sol, const Run& run)
{
    std::vector<SkinMotion> out;
    if (run.large_solved()) out.push_back({run.large->skin_u, run.large->skin_support});
    if (run.large) return out;
    std::vector<const fem::Vector*> factors;
    std::vector<const fem::JointState*> joints;
    for (std::size_t v = 0; v < run.states.size(); ++v)
        if (run.solved(v)) factors.push_back(&run.factors), joints.push_back(&run.states[v]);
    for (fem::Recovered& x : fem::recover(s.assembly, s.skin_body, s.loads, factors, sol.free, joints)) out.push_back({std::move(x.u), std::move(x.support)});
    return out;
}

std::string not_all_solved(const Run& run)
{
    if (run.large) return run.large_solved() ? "" : "not solved: " + run.large->where;
    if (run.solved(1) && run.solved(2)) return "";
    return run.solved(1) ? no_stiffer_solution : nothing_else_holds;
}

std::vector<results::MemberForce> rib_forces(const Structure& s, const Solution& sol)
{
    std::vector<results::MemberForce> out;
    if (s.layout->ribs.empty()) return out;
    for (const Run& run : sol.runs) {
        const std::vector<SkinMotion> states = skin_motions(s, sol, run);
        for (const layout::Rib& r : s.layout->ribs) {
            results::MemberForce f;
            f.name = r.name;
            f.load_case = run.load_case.name;
            for (const SkinMotion& x : states)
                if (const results::MemberForce one = worst_of_rib(s, r, run, x.u); takes_over(one.stress_MPa, f.stress_MPa)) f = one;
            f.why_not = not_all_solved(run);
            f.stands = f.why_not.empty();
            out.push_back(f);
        }
    }
    return out;
}

} // namespace thinskin::idealise
