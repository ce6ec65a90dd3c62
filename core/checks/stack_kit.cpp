#include "checks/stack_kit.h"
#include "base/largest.h"
#include "strength/screens.h"
#include "strength/screw_combinations.h"

#include <algorithm>

namespace thinskin::checks {

namespace {

using layout::Ply;
using results::FastenerForce;

constexpr double peaks_per_sigma = 3.0; ///< a road state is taken as a three-sigma peak (judgement)

std::string of(const Ply& p) { return p.role == Ply::Role::skin ? "the skin" : p.part; }

/// One-sigma amplitude: how far a road state takes the force from its parked value, taken as three sigma. Slams are not road.
struct Amplitude { double value = 0; std::string load_case; bool stands = true; std::string why_not; };
Amplitude amplitude(const Context& c, Value value, bool pulls)
{
    Amplitude a;
    const auto still = std::find_if(c.s->forces.begin(), c.s->forces.end(), [](const FastenerForce& f) { return f.load_case == "parked"; });
    if (still == c.s->forces.end()) return {NAN, "", true, ""};
    for (const FastenerForce& f : c.s->forces) {
        if (f.load_case.rfind("slam", 0) == 0 || f.rare) continue;
        const double swing = std::abs(value(f) - value(*still)) / peaks_per_sigma;
        if (base::takes_over(swing, a.value)) a.value = swing, a.load_case = f.load_case + " over parked";
        if (pulls && (!f.stands || !still->stands)) a.stands = false, a.why_not = f.stands ? still->why_not : f.why_not;
    }
    return a;
}

} // namespace

Place place(const Context& c, const std::string& what, const std::string& title, bool judgement)
{
    return {fmt::format("{}/{}", what, c.s->stack->name), c.s->group, c.s->part, title, judgement, "", ""};
}

Place ply_place(const Context& c, const Ply& p, const std::string& what, bool judgement)
{
    return {fmt::format("{}/{}/{}", what, c.s->stack->name, p.part), c.s->group, c.s->part, fmt::format("{} of {} at {}", what, of(p), c.s->stack->name), judgement, "", ""};
}

std::string kind_key(const Context& c, const char* key) { return fmt::format("fastener_kinds.{}.{}", c.h->kind, key); }

double tension(const FastenerForce& f) { return positive(f.tension_N); }

std::vector<Demand> tension_demands(const Context& c)
{
    std::vector<Demand> out;
    for (const FastenerForce& f : c.s->forces) out.push_back({f.load_case, tension(f), f.stands, f.why_not});
    return out;
}

std::vector<Demand> shear_demands(const Context& c)
{
    std::vector<Demand> out;
    for (const FastenerForce& f : c.s->forces) out.push_back({f.load_case, shear_demand(f), true, ""});
    return out;
}

std::optional<catalogue::Strength> strength_of(const Context& c, const Ply& p, std::vector<results::Check>& out)
{
    const catalogue::Strength s = p.material.strength(p.thickness);
    if (s.covered) return s;
    out.push_back(not_covered(ply_place(c, p, "strength"), s.reason));
    return std::nullopt;
}

std::vector<catalogue::Strength> all_strengths(const Context& c, std::vector<results::Check>& out)
{
    std::vector<catalogue::Strength> all;
    bool whole = true;
    for (const Ply& p : c.s->stack->plies) {
        const auto s = strength_of(c, p, out);
        if (s) all.push_back(*s);
        whole = whole && s.has_value();
    }
    return whole ? all : std::vector<catalogue::Strength>{};
}

double clear_to_edge(const Ply& p, double hole, double d) { return std::min(positive(p.edge_distance - hole / 2), 20 * d); }

void edge_row(const Context& c, const Ply& p, const Wanted& w, std::vector<results::Check>& out)
{
    if (!std::isfinite(p.edge_distance)) return;
    results::Check r = against(ply_place(c, p, "edge distance"), {"geometry", w.need.covered ? w.need.capacity : NAN, true, ""}, base::covered(p.edge_distance, 1), *w.card, {{"d", w.d}});
    r.note = "to the " + p.edge;
    out.push_back(r);
}

void repeated_row(const Context& c, const Ply& p, double nominal, const std::string& what, Value value, bool pulls, std::vector<results::Check>& out)
{
    const Amplitude a = amplitude(c, value, pulls);
    Place where = ply_place(c, p, "repeated " + what);
    where.note = "amplitude = (road state - parked)/3";
    if (aluminium(p)) where.note += "; aluminium: a third of the static nominal counts, as its fatigue strength is about a third of steel's (judgement)";
    out.push_back(against_clause(where, {a.load_case, a.value, a.stands, a.why_not}, strength::RepeatedLoad{aluminium(p) ? nominal / 3 : nominal}));
}

void straight_line_row(const Context& c, double Qa, double Ta, std::vector<results::Check>& out)
{
    if (!(std::isfinite(Qa) && Qa > 0 && std::isfinite(Ta) && Ta > 0)) return;
    std::vector<results::Check> rows;
    for (const FastenerForce& f : c.s->forces)
        if (const double Q = shear_demand(f), T = tension(f); !(Q == 0 && T == 0))
            rows.push_back(against_clause(place(c, "shear with tension", "shear and tension together at " + c.s->stack->name), {f.load_case, 1, f.stands, f.why_not}, strength::StraightLine{Q, T, Qa, Ta}));
    if (!rows.empty()) out.push_back(worst(std::move(rows)));
}

double least(std::initializer_list<base::Resistance> all)
{
    double out = INFINITY;
    for (const base::Resistance& r : all)
        if (r.covered) out = std::min(out, r.capacity);
    return out;
}

} // namespace thinskin::checks
