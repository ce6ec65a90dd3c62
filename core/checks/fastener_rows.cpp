#include "checks/bolt_steel.h"
#include "checks/stack_kit.h"
#include "strength/bearing.h"
#include "strength/bolts.h"
#include "strength/plates.h"

#include <algorithm>

namespace thinskin::checks {

namespace {

using layout::Ply;
using results::FastenerForce;

constexpr double countersunk_head_share = 0.63 / 0.9; ///< of a bolt's tension, EN 1993-1-8 Table 3.4, k2
constexpr double screw_rule_diameter = 6.35; ///< the pull-over clause is written for fasteners up to this

/// Across an open gap a bolt bends, and without a spacer it cannot be tightened.
void gap_rows(const Context& c, std::vector<results::Check>& out)
{
    if (!(c.s->stack->gap > 0)) return;
    const std::string& n = c.s->stack->name;
    out.push_back(worst_of(place(c, "bolt bending", "bending of bolt " + n + " over the gap"), shear_demands(c), strength::BoltBendingOverGap{c.h->stress_area, c.h->fyb, c.s->stack->gap}));
    if (c.h->sleeve) return;
    Place p = place(c, "gap", "tightening of " + n + " over a gap");
    p.lift_with = kind_key(c, "sleeve: yes");
    out.push_back(not_covered(p, fmt::format("{:.0f} mm between two plies and no spacer sleeve: the bolt cannot be tightened", c.s->stack->gap)));
}

void thin_sheet_screen(const Context& c, const Ply& p, double fu, bool first, bool last, std::vector<results::Check>& out)
{
    if (p.thickness >= thick_ply) return;
    if (aluminium(p)) return aluminium_screen(c, p, fu, first, last, out);
    const base::Resistance bearing = strength::bolt_bearing_deformation({c.h->d, p.thickness, fu});
    if (bearing.covered) repeated_row(c, p, bearing.nominal, "bearing", shear_demand, false, out);
    if (!first && !last) return;
    const base::Resistance pull = strength::pull_over(pull_over_input(*c.h, p, fu, last));
    if (pull.covered) repeated_row(c, p, pull.nominal, "pull-through", tension, true, out);
}

/// What bears under a countersunk head is what the countersink leaves of the part (CS-1); it pulls through as on its hole (CS-2).
std::optional<Ply> left_by_countersink(const Context& c, const Ply& p, double fu, std::vector<results::Check>& out)
{
    Place pull = ply_place(c, p, "pull-through at the head", true), bearing = ply_place(c, p, "bearing");
    pull.lift_with = bearing.lift_with = kind_key(c, "countersink: not given, a head that lies on the part");
    const strength::CountersunkPullThrough through{p.thickness, c.h->countersink, c.h->hole, fu};
    out.push_back(worst_of(pull, tension_demands(c), through));
    if (const auto r = strength::resistance(through); r.covered && p.thickness < thick_ply) repeated_row(c, p, r.nominal, "pull-through", tension, true, out);
    const base::Resistance left = strength::countersunk_thickness({p.thickness, c.h->countersink});
    if (!left.covered) {
        out.push_back(not_covered(bearing, left.reason));
        return std::nullopt;
    }
    Ply thinner = p;
    thinner.thickness = left.capacity;
    return thinner;
}

void countersunk_rows(const Context& c, const Ply& p, double fu, double mf, std::vector<results::Check>& out)
{
    if (const auto left = left_by_countersink(c, p, fu, out)) bearing_rows(c, *left, fu, {c.h->d, c.h->hole, mf, true}, out);
    edge_row(c, p, {strength::minimum_edge_distance({c.h->d}), &strength::minimum_edge_distance_card(), c.h->d}, out);
}

void ply_rows(const Context& c, std::size_t i, std::vector<results::Check>& out)
{
    const Ply& p = c.s->stack->plies[i];
    const auto s = strength_of(c, p, out);
    if (!s) return;
    const bool first = i == 0, last = i + 1 == c.s->stack->plies.size();
    const double mf = c.h->head_washer && c.h->nut_washer ? strength::mf_washers_both_sides : strength::mf_bare_or_one_washer;
    if (first && c.h->countersink > 0) return countersunk_rows(c, p, s->fu, mf, out);
    bearing_rows(c, p, s->fu, {c.h->d, c.h->hole, mf, false}, out);
    if (first) pull_through_row(c, p, s->fu, false, out);
    if (last) pull_through_row(c, p, s->fu, true, out);
    edge_row(c, p, {strength::minimum_edge_distance({c.h->d}), &strength::minimum_edge_distance_card(), c.h->d}, out);
    thin_sheet_screen(c, p, s->fu, first, last, out);
}

void bolt_rows(const Context& c, std::vector<results::Check>& out)
{
    bolt_steel_rows(c, out);
    gap_rows(c, out);
    for (std::size_t i = 0; i < c.s->stack->plies.size(); ++i) ply_rows(c, i, out);
}

/// Rules for screws, rivets and inserts know sheets in contact only.
bool open_gap(const Context& c, std::vector<results::Check>& out)
{
    if (!(c.s->stack->gap > 0)) return false;
    Place p = place(c, "gap", "gap at " + c.s->stack->name);
    p.lift_with = kind_key(c, "type: bolt, with a sleeve");
    out.push_back(not_covered(p, fmt::format("{:.0f} mm between two plies: the rules for this fastener are for sheets in contact", c.s->stack->gap)));
    return true;
}

} // namespace

double shear_demand(const FastenerForce& f) { return std::max(std::hypot(f.shear_x_N, f.shear_y_N), f.row_shear_N); }

bool washer_counts(const layout::WasherSize& w) { return w.thickness >= (w.diameter > 15.9 ? 1.6 : 1.27); }

void bolt_steel_rows(const Context& c, std::vector<results::Check>& out)
{
    const std::string& n = c.s->stack->name;
    const double head = c.h->countersink > 0 ? countersunk_head_share : 1.0;
    std::vector<Demand> pulls = tension_demands(c);
    for (Demand& d : pulls) d.value /= head;
    Place where = place(c, "bolt tension", "tension of bolt " + n, head < 1);
    if (head < 1) where.note = "countersunk head: the pull counts 1/0.7 (k2 0.63 in place of 0.9, EN 1993-1-8 Table 3.4)";
    const std::vector<Demand> shears = shear_demands(c);
    out.push_back(bolt_tension_row(where, *c.h, pulls));
    out.push_back(bolt_shear_row(place(c, "bolt shear", "shear of bolt " + n), *c.h, shears));
    if (!pulls.empty()) out.push_back(bolt_tension_beside_shear_row(place(c, "bolt tension with shear", "tension of bolt " + n + " beside its shear", head < 1), *c.h, pulls, shears));
}

void bearing_rows(const Context& c, const Ply& p, double fu, const Shank& s, std::vector<results::Check>& out)
{
    if (aluminium(p)) return aluminium_bearing_row(c, p, fu, s.d, s.judgement, out);
    const auto d = shear_demands(c);
    const double clear = clear_to_edge(p, s.hole, s.d);
    if (p.thickness >= thick_ply) {
        // Never more than what the least spacing of 3 d leaves between two holes.
        out.push_back(worst_of(ply_place(c, p, "bearing", s.judgement), d, strength::HotRolledBearing{s.d, p.thickness, fu, std::min(clear, 3 * s.d - s.hole)}));
        return;
    }
    out.push_back(worst_of(ply_place(c, p, "bearing", s.judgement), d, strength::BoltBearing{s.d, p.thickness, fu, s.mf}));
    out.push_back(worst_of(ply_place(c, p, "bearing with hole growth", s.judgement), d, strength::BoltBearingDeformation{s.d, p.thickness, fu}));
    out.push_back(worst_of(ply_place(c, p, "tear-out", s.judgement), d, strength::SheetTearOut{p.thickness, fu, clear, 1}));
}

double counting_diameter(const layout::WasherSize& w, double head, const Ply& p, double fu)
{
    constexpr double washer_yield = 235; // MPa: the case does not say what a washer is made of (judgement)
    const base::Resistance reach = strength::washer_reach({w.thickness, washer_yield, p.thickness, fu});
    return reach.covered ? std::min(w.diameter, head + 2 * reach.capacity) : std::min(w.diameter, head);
}

strength::PullOver pull_over_input(const layout::Hardware& h, const Ply& p, double fu, bool nut)
{
    const auto& w = nut ? h.nut_washer : h.head_washer;
    // Too thin a washer does not count: the head or nut alone is asked.
    const bool counts = w && washer_counts(*w);
    return {p.thickness, fu, h.across_flats, counts ? 1.0 : 0.0, counts ? counting_diameter(*w, h.across_flats, p, fu) : 0.0, counts ? w->thickness : 0.0};
}

void pull_through_row(const Context& c, const Ply& p, double fu, bool nut, std::vector<results::Check>& out)
{
    if (aluminium(p)) return aluminium_pull_through_row(c, p, fu, nut, out);
    const std::string what = nut ? "pull-through at the nut" : "pull-through at the head";
    if (p.thickness >= thick_ply) out.push_back(worst_of(ply_place(c, p, what), tension_demands(c), strength::Punching{p.thickness, fu, c.h->mean_diameter}));
    else out.push_back(worst_of(ply_place(c, p, what, c.h->d > screw_rule_diameter), tension_demands(c), pull_over_input(*c.h, p, fu, nut)));
}

std::vector<results::Check> stack_rows(const StackForces& s)
{
    const Context c{&s, &s.stack->hardware};
    std::vector<results::Check> out;
    if (!c.h->not_covered.empty()) {
        Place p = place(c, "fastener", "fastener " + s.stack->name);
        p.lift_with = c.h->lift_with.empty() ? kind_key(c, "type: bolt") : c.h->lift_with;
        return {not_covered(p, c.h->not_covered)};
    }
    using Type = layout::Hardware::Type;
    if (c.h->type == Type::bolt) bolt_rows(c, out);
    else if (open_gap(c, out)) return out;
    else if (c.h->type == Type::screw) screw_rows(c, out);
    else if (c.h->type == Type::rivet) rivet_rows(c, out);
    else insert_rows(c, out);
    return out;
}

} // namespace thinskin::checks
