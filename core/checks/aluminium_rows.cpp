#include "checks/stack_kit.h"

#include <algorithm>

/// Aluminium plies. Clauses for screws are used for bolts and rivets by analogy, marked as such.
namespace thinskin::checks {

namespace {

using layout::Ply;

constexpr double screw_rule_diameter = 6.35; ///< the pull-over clause is written for fasteners up to this

double yield_of(const Ply& p)
{
    const catalogue::Strength s = p.material.strength(p.thickness);
    return s.covered ? s.fy : NAN;
}

/// What presses on the ply: the washer where it counts, else head or nut.
double presses_on(const Context& c, const Ply& p, double fu, bool nut)
{
    const auto& w = nut ? c.h->nut_washer : c.h->head_washer;
    return w && washer_counts(*w) ? counting_diameter(*w, c.h->across_flats, p, fu) : c.h->across_flats;
}

std::string pull_name(bool nut) { return nut ? "pull-through at the nut" : "pull-through at the head"; }

} // namespace

strength::AluminiumBearing aluminium_bearing(const Ply& p, double fu, double d) { return {d, p.thickness, fu, std::min(p.edge_distance, 20 * d)}; }

strength::AluminiumPullOver aluminium_pull_over(const Ply& p, double fu, double presses, double hole, bool one_side)
{
    return {p.thickness, fu, yield_of(p), presses, hole, one_side ? 1.0 : 0.0};
}

void aluminium_bearing_row(const Context& c, const Ply& p, double fu, double d, bool judgement, std::vector<results::Check>& out)
{
    out.push_back(worst_of(ply_place(c, p, "bearing", judgement), shear_demands(c), aluminium_bearing(p, fu, d)));
}

void aluminium_pull_through_row(const Context& c, const Ply& p, double fu, bool nut, std::vector<results::Check>& out)
{
    if (p.thickness >= thick_ply) {
        out.push_back(worst_of(ply_place(c, p, pull_name(nut), true), tension_demands(c), strength::AluminiumPunching{p.thickness, fu, c.h->mean_diameter}));
        return;
    }
    out.push_back(worst_of(ply_place(c, p, pull_name(nut), c.h->d > screw_rule_diameter), tension_demands(c), aluminium_pull_over(p, fu, presses_on(c, p, fu, nut), c.h->hole, false)));
}

void aluminium_screen(const Context& c, const Ply& p, double fu, bool first, bool last, std::vector<results::Check>& out)
{
    if (const auto r = strength::resistance(aluminium_bearing(p, fu, c.h->d)); r.covered) repeated_row(c, p, r.nominal, "bearing", shear_demand, false, out);
    if (!first && !last) return;
    if (const auto r = strength::resistance(aluminium_pull_over(p, fu, presses_on(c, p, fu, last), c.h->hole, false)); r.covered) repeated_row(c, p, r.nominal, "pull-through", tension, true, out);
}

} // namespace thinskin::checks
