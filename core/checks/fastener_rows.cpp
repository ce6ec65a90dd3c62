#include "checks/fastener_rows.h"
#include "strength/angles.h"
#include "strength/bearing.h"
#include "strength/bolts.h"
#include "strength/pull_over.h"
#include "strength/screens.h"

#include <algorithm>

namespace thinskin::checks {

namespace {

using layout::Ply;
using results::FastenerForce;

constexpr double screw_rule_diameter = 6.35; ///< the pull-over clause is written for fasteners up to this
constexpr double thick_ply = 3.0;            ///< hot-rolled rules from here on
constexpr double peaks_per_sigma = 3.0;      ///< a pothole is taken as a three-sigma peak (judgement)

struct Context { const StackForces* s; const layout::Hardware* h; };

Place place(const Context& c, const std::string& what, const std::string& title, bool judgement = false)
{
    return {fmt::format("{}/{}", what, c.s->stack->name), c.s->group, c.s->part, title, judgement, "", ""};
}

std::vector<Demand> demands(const Context& c, double (*value)(const FastenerForce&))
{
    std::vector<Demand> out;
    for (const FastenerForce& f : c.s->forces) out.push_back({f.load_case, value(f), f.stands, f.why_not});
    return out;
}

double tension(const FastenerForce& f) { return positive(f.tension_N); }

/// Shear does not hang on the skin's bending: its figures stand.
std::vector<Demand> shear_demands(const Context& c)
{
    std::vector<Demand> out;
    for (const FastenerForce& f : c.s->forces) out.push_back({f.load_case, shear_demand(f), true, ""});
    return out;
}

void bolt_rows(const Context& c, std::vector<results::Check>& out)
{
    const std::string& n = c.s->stack->name;
    out.push_back(worst_of(place(c, "bolt tension", "tension of bolt " + n, true), demands(c, tension), strength::BoltTension{c.h->d, c.h->fub}));
    out.push_back(worst_of(place(c, "bolt shear", "shear of bolt " + n, true), shear_demands(c), strength::BoltShear{c.h->d, c.h->fub}));
    std::vector<results::Check> both;
    for (const FastenerForce& f : c.s->forces)
        both.push_back(against_clause(place(c, "bolt tension with shear", "tension of bolt " + n + " beside its shear", true), {f.load_case, tension(f), f.stands, f.why_not},
                                      strength::BoltTensionWithShear{c.h->d, c.h->fub, shear_demand(f)}));
    if (!both.empty()) out.push_back(worst(std::move(both)));
    if (c.s->stack->gap > 0)
        out.push_back(worst_of(place(c, "bolt bending", "bending of bolt " + n + " over the gap"), shear_demands(c), strength::BoltBendingOverGap{c.h->stress_area, c.h->fyb, c.s->stack->gap}));
}

std::string of(const Ply& p) { return p.role == Ply::Role::skin ? "the skin" : p.part; }

/// `named` keeps the ids of two plies of one stack apart.
Place ply_place(const Context& c, const Ply& p, const std::string& what, bool judgement = false)
{
    return {fmt::format("{}/{}/{}", what, c.s->stack->name, p.part), c.s->group, c.s->part, fmt::format("{} of {} at {}", what, of(p), c.s->stack->name), judgement, "", ""};
}

void bearing_rows(const Context& c, const Ply& p, double fu, std::vector<results::Check>& out)
{
    const auto d = shear_demands(c);
    const double clear = positive(p.edge_distance - c.h->hole / 2);
    if (p.thickness >= thick_ply) {
        // Never more than what the least spacing of 3 d leaves between two holes.
        out.push_back(worst_of(ply_place(c, p, "bearing"), d, strength::HotRolledBearing{c.h->d, p.thickness, fu, std::min(clear, 3 * c.h->d - c.h->hole)}));
        return;
    }
    const double mf = c.h->head_washer && c.h->nut_washer ? strength::mf_washers_both_sides : strength::mf_bare_or_one_washer;
    out.push_back(worst_of(ply_place(c, p, "bearing"), d, strength::BoltBearing{c.h->d, p.thickness, fu, mf}));
    out.push_back(worst_of(ply_place(c, p, "bearing with hole growth"), d, strength::BoltBearingDeformation{c.h->d, p.thickness, fu}));
    out.push_back(worst_of(ply_place(c, p, "tear-out"), d, strength::SheetTearOut{p.thickness, fu, std::min(clear, 20 * c.h->d), 1}));
}

strength::PullOver pull_over_input(const layout::Hardware& h, const Ply& p, double fu, bool nut)
{
    const auto& w = nut ? h.nut_washer : h.head_washer;
    // Too thin a washer does not count: the head or nut alone is asked.
    const bool counts = w && w->thickness >= (w->diameter > 15.9 ? 1.6 : 1.27);
    return {p.thickness, fu, h.across_flats, counts ? 1.0 : 0.0, counts ? w->diameter : 0.0, counts ? w->thickness : 0.0};
}

void pull_through_row(const Context& c, const Ply& p, double fu, bool nut, std::vector<results::Check>& out)
{
    const std::string what = nut ? "pull-through at the nut" : "pull-through at the head";
    if (p.thickness >= thick_ply) out.push_back(worst_of(ply_place(c, p, what), demands(c, tension), strength::Punching{p.thickness, fu, c.h->mean_diameter}));
    else out.push_back(worst_of(ply_place(c, p, what, c.h->d > screw_rule_diameter), demands(c, tension), pull_over_input(*c.h, p, fu, nut)));
}

void edge_row(const Context& c, const Ply& p, std::vector<results::Check>& out)
{
    if (!std::isfinite(p.edge_distance)) return;
    const base::Resistance need = strength::minimum_edge_distance({c.h->d});
    results::Check r = against(ply_place(c, p, "edge distance"), {"geometry", need.covered ? need.capacity : NAN, true, ""}, base::covered(p.edge_distance, 1), strength::minimum_edge_distance_card(), {{"d", c.h->d}});
    r.note = "to the " + p.edge;
    out.push_back(r);
}

/// One-sigma amplitude: how far a road state takes the force from its parked value, taken as three sigma. Slams are not road.
struct Amplitude { double value = 0; std::string load_case; bool stands = true; std::string why_not; };
Amplitude amplitude(const Context& c, double (*value)(const FastenerForce&), bool pulls)
{
    Amplitude a;
    const auto still = std::find_if(c.s->forces.begin(), c.s->forces.end(), [](const FastenerForce& f) { return f.load_case == "parked"; });
    if (still == c.s->forces.end()) return {NAN, "", true, ""};
    for (const FastenerForce& f : c.s->forces) {
        if (f.load_case.rfind("slam", 0) == 0) continue;
        const double swing = std::abs(value(f) - value(*still)) / peaks_per_sigma;
        if (!(swing <= a.value)) a.value = swing, a.load_case = f.load_case + " over parked";
        if (pulls && (!f.stands || !still->stands)) a.stands = false, a.why_not = f.stands ? still->why_not : f.why_not;
    }
    return a;
}

void repeated_row(const Context& c, const Ply& p, double nominal, const std::string& what, double (*value)(const FastenerForce&), bool pulls, std::vector<results::Check>& out)
{
    const Amplitude a = amplitude(c, value, pulls);
    Place where = ply_place(c, p, "repeated " + what);
    where.note = "amplitude = (road state - parked)/3";
    out.push_back(against_clause(where, {a.load_case, a.value, a.stands, a.why_not}, strength::RepeatedLoad{nominal}));
}

void thin_sheet_screen(const Context& c, const Ply& p, double fu, bool first, bool last, std::vector<results::Check>& out)
{
    if (p.thickness >= thick_ply) return;
    const base::Resistance bearing = strength::bolt_bearing_deformation({c.h->d, p.thickness, fu});
    if (bearing.covered) repeated_row(c, p, bearing.nominal, "bearing", shear_demand, false, out);
    if (!first && !last) return;
    const base::Resistance pull = strength::pull_over(pull_over_input(*c.h, p, fu, last));
    if (pull.covered) repeated_row(c, p, pull.nominal, "pull-through", tension, true, out);
}

void ply_rows(const Context& c, std::size_t i, std::vector<results::Check>& out)
{
    const Ply& p = c.s->stack->plies[i];
    const catalogue::Strength s = p.material.strength(p.thickness);
    if (!s.covered) {
        out.push_back(not_covered(ply_place(c, p, "strength"), s.reason));
        return;
    }
    if (p.material.kind != catalogue::Material::Kind::steel) {
        out.push_back(not_covered(ply_place(c, p, "strength"), p.material.name + ": the clauses here are for steel"));
        return;
    }
    const bool first = i == 0, last = i + 1 == c.s->stack->plies.size();
    bearing_rows(c, p, s.fu, out);
    if (first) pull_through_row(c, p, s.fu, false, out);
    if (last) pull_through_row(c, p, s.fu, true, out);
    edge_row(c, p, out);
    thin_sheet_screen(c, p, s.fu, first, last, out);
}

} // namespace

double shear_demand(const FastenerForce& f) { return std::max(std::hypot(f.shear_x_N, f.shear_y_N), f.row_shear_N); }

std::vector<results::Check> stack_rows(const StackForces& s)
{
    const Context c{&s, &s.stack->hardware};
    if (!s.stack->hardware.not_covered.empty()) {
        Place p = place(c, "fastener", "fastener " + s.stack->name);
        p.lift_with = "fastener_kinds." + s.stack->hardware.kind + ".type: bolt";
        return {not_covered(p, s.stack->hardware.not_covered)};
    }
    std::vector<results::Check> out;
    bolt_rows(c, out);
    for (std::size_t i = 0; i < s.stack->plies.size(); ++i) ply_rows(c, i, out);
    return out;
}

} // namespace thinskin::checks
