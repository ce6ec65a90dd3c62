#include "checks/stack_kit.h"
#include "strength/rivets.h"
#include "strength/spacing.h"

#include <algorithm>

/// A blind rivet: head on the first ply, blind side on the last one. All of it is judgement.
namespace thinskin::checks {

namespace {

using layout::Ply;

struct Sheets { const std::vector<Ply>* plies; std::vector<catalogue::Strength> s; };

/// The thinner of two neighbours, with its own strength and edge.
strength::RivetBearing bearing_input(const Context& c, const Sheets& a, std::size_t i)
{
    const std::size_t thin = (*a.plies)[i].thickness <= (*a.plies)[i + 1].thickness ? i : i + 1, thick = 2 * i + 1 - thin;
    const Ply& p = (*a.plies)[thin];
    return {c.h->d, p.thickness, (*a.plies)[thick].thickness, a.s[thin].fu, std::min(p.edge_distance, 20 * c.h->d)};
}

/// An aluminium sheet bears by AL-1, its steel neighbour by RV-4 with itself as the thinner one.
strength::RivetBearing steel_beside_aluminium(const Context& c, const Sheets& a, std::size_t k)
{
    const Ply& p = (*a.plies)[k];
    return {c.h->d, p.thickness, p.thickness, a.s[k].fu, std::min(p.edge_distance, 20 * c.h->d)};
}

bool mixed(const Sheets& a, std::size_t i) { return aluminium((*a.plies)[i]) || aluminium((*a.plies)[i + 1]); }

base::Resistance sheet_of(const Context& c, const Sheets& a, std::size_t k)
{
    return aluminium((*a.plies)[k]) ? strength::resistance(aluminium_bearing((*a.plies)[k], a.s[k].fu, c.h->d)) : strength::rivet_bearing(steel_beside_aluminium(c, a, k));
}

base::Resistance bearing_of(const Context& c, const Sheets& a, std::size_t i)
{
    if (!mixed(a, i)) return strength::rivet_bearing(bearing_input(c, a, i));
    const base::Resistance x = sheet_of(c, a, i), y = sheet_of(c, a, i + 1);
    return !x.covered || (y.covered && x.capacity <= y.capacity) ? x : y;
}

strength::RivetPullThrough pull_input(const Ply& p, const catalogue::Strength& s, double bears) { return {p.thickness, s.fu, bears}; }

/// Head or blind side of a rivet pulled through its sheet; aluminium by the clause for screws.
base::Resistance pull_of(const Context& c, const Ply& p, const catalogue::Strength& s, double bears)
{
    return aluminium(p) ? strength::resistance(aluminium_pull_over(p, s.fu, bears, c.h->hole, false)) : strength::rivet_pull_through(pull_input(p, s, bears));
}

results::Check pull_row(const Context& c, Place where, const Ply& p, const catalogue::Strength& s, double bears)
{
    if (!aluminium(p)) return worst_of(where, tension_demands(c), pull_input(p, s, bears));
    where.judgement = true;
    return worst_of(where, tension_demands(c), aluminium_pull_over(p, s.fu, bears, c.h->hole, false));
}

void own_rows(const Context& c, std::vector<results::Check>& out)
{
    const std::string& n = c.s->stack->name;
    Place shear = place(c, "rivet own shear", "shear of the rivet itself at " + n), pull = place(c, "rivet own tension", "tension of the rivet itself at " + n);
    shear.lift_with = kind_key(c, "grade");
    pull.lift_with = kind_key(c, "grade");
    out.push_back(c.h->own_shear > 0 ? worst_of(shear, shear_demands(c), strength::RivetShear{c.h->own_shear}) : not_covered(shear, "neither the rivet's material nor its shear strength is given"));
    out.push_back(c.h->own_tension > 0 ? worst_of(pull, tension_demands(c), strength::RivetTension{c.h->own_tension}) : not_covered(pull, "neither the rivet's material nor its tension strength is given"));
}

void bearing_row(const Context& c, const Sheets& a, std::vector<results::Check>& out)
{
    std::vector<results::Check> rows;
    for (std::size_t i = 0; i + 1 < a.plies->size(); ++i) {
        Place p = place(c, "rivet bearing", "bearing at rivet " + c.s->stack->name);
        p.note = fmt::format("{} on {}{}", (*a.plies)[i].part, (*a.plies)[i + 1].part, a.plies->size() > 2 ? "; each neighbouring pair by itself with the whole shear" : "");
        if (!mixed(a, i)) rows.push_back(worst_of(p, shear_demands(c), bearing_input(c, a, i)));
        else
            for (std::size_t k : {i, i + 1})
                rows.push_back(aluminium((*a.plies)[k]) ? worst_of(p, shear_demands(c), aluminium_bearing((*a.plies)[k], a.s[k].fu, c.h->d)) : worst_of(p, shear_demands(c), steel_beside_aluminium(c, a, k)));
    }
    out.push_back(worst(std::move(rows)));
}

void combined_row(const Context& c, const Sheets& a, std::vector<results::Check>& out)
{
    double Qa = c.h->own_shear > 0 ? strength::rivet_shear({c.h->own_shear}).capacity : INFINITY;
    for (std::size_t i = 0; i + 1 < a.plies->size(); ++i) Qa = std::min(Qa, least({bearing_of(c, a, i)}));
    const double own = c.h->own_tension > 0 ? strength::rivet_tension({c.h->own_tension}).capacity : INFINITY;
    const double Ta = std::min(own, least({pull_of(c, a.plies->front(), a.s.front(), c.h->across_flats),
                                           pull_of(c, a.plies->back(), a.s.back(), c.h->tip_diameter)}));
    straight_line_row(c, Qa, Ta, out);
}

void repeated_rows(const Context& c, const Sheets& a, std::vector<results::Check>& out)
{
    for (std::size_t i = 0; i + 1 < a.plies->size(); ++i) {
        const std::size_t thin = (*a.plies)[i].thickness <= (*a.plies)[i + 1].thickness ? i : i + 1;
        if (const auto r = bearing_of(c, a, i); r.covered && (*a.plies)[thin].thickness < thick_ply)
            repeated_row(c, (*a.plies)[thin], r.nominal, i == 0 ? "bearing" : "bearing from behind", shear_demand, false, out);
    }
    if (const auto r = pull_of(c, a.plies->front(), a.s.front(), c.h->across_flats); r.covered && a.plies->front().thickness < thick_ply)
        repeated_row(c, a.plies->front(), r.nominal, "pull-through", tension, true, out);
    if (const auto r = pull_of(c, a.plies->back(), a.s.back(), c.h->tip_diameter); r.covered && a.plies->back().thickness < thick_ply)
        repeated_row(c, a.plies->back(), r.nominal, "pull-through", tension, true, out);
}

} // namespace

void rivet_rows(const Context& c, std::vector<results::Check>& out)
{
    own_rows(c, out);
    const Sheets a{&c.s->stack->plies, all_strengths(c, out)};
    if (a.s.empty()) return;
    if (a.s.size() < 2) {
        out.push_back(not_covered(place(c, "rivet bearing", "bearing at rivet " + c.s->stack->name), "one sheet alone: a rivet joins two"));
        return;
    }
    bearing_row(c, a, out);
    out.push_back(pull_row(c, ply_place(c, a.plies->front(), "pull-through at the head"), a.plies->front(), a.s.front(), c.h->across_flats));
    Place blind = ply_place(c, a.plies->back(), "pull-through at the blind side");
    blind.note = "blind side taken as 1.5 times the rivet's diameter (judgement)";
    out.push_back(pull_row(c, blind, a.plies->back(), a.s.back(), c.h->tip_diameter));
    for (const Ply& p : *a.plies) edge_row(c, p, {strength::rivet_edge_distance({c.h->d}), &strength::rivet_edge_distance_card(), c.h->d}, out);
    combined_row(c, a, out);
    repeated_rows(c, a, out);
}

} // namespace thinskin::checks
