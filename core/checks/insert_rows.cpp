#include "checks/stack_kit.h"
#include "strength/bearing.h"
#include "strength/bolts.h"
#include "strength/rivets.h"
#include "strength/spacing.h"

#include <algorithm>

/// A threaded insert in the last ply, with its bolt from outside. No standard has a rule; bearing of the sheet goes by analogy.
namespace thinskin::checks {

namespace {

using layout::Ply;

strength::InsertSkinBound bound_input(const Context& c, const Ply& p, double fu) { return {c.h->tip_diameter, c.h->hole, p.thickness, fu}; }

void pull_row(const Context& c, const Ply& p, double fu, std::vector<results::Check>& out)
{
    Place where = ply_place(c, p, "pull of the insert out");
    if (bare_skin_insert(*c.s->stack)) where.note = "an insert in bare skin as the only hold: for a few kilograms at most; ";
    if (c.h->sheet_strength > 0) {
        where.note += "maker's or tested pull in this sheet";
        out.push_back(worst_of(where, tension_demands(c), strength::InsertTested{c.h->sheet_strength}));
        return;
    }
    where.note += c.h->flange_given ? "bound for the skin alone, on the flange given" : "bound for the skin alone, on the hole: the flange is not given";
    where.judgement = true;
    out.push_back(worst_of(where, tension_demands(c), bound_input(c, p, fu)));
}

void own_rows(const Context& c, std::vector<results::Check>& out)
{
    const std::string& n = c.s->stack->name;
    Place shear = place(c, "insert own shear", "shear of the insert itself at " + n);
    shear.lift_with = kind_key(c, "shear_strength");
    out.push_back(c.h->own_shear > 0 ? worst_of(shear, shear_demands(c), strength::InsertTested{c.h->own_shear}) : not_covered(shear, "the insert's own shear strength is its maker's; it is not given"));
    Place bolt = place(c, "bolt tension", "bolt in the insert at " + n);
    bolt.lift_with = kind_key(c, "grade");
    if (c.h->fub > 0) bolt_steel_rows(c, out);
    else out.push_back(not_covered(bolt, "the property class of the bolt in the insert is not given"));
}

void holding_ply_rows(const Context& c, const Ply& p, double fu, std::vector<results::Check>& out)
{
    pull_row(c, p, fu, out);
    bearing_rows(c, p, fu, {c.h->hole, c.h->hole, strength::mf_bare_or_one_washer, true}, out);
    const double Qa = std::min(c.h->own_shear > 0 ? strength::insert_tested({c.h->own_shear}).capacity : INFINITY,
                               aluminium(p) ? least({strength::resistance(aluminium_bearing(p, fu, c.h->hole))})
                               : p.thickness >= thick_ply ? least({strength::hot_rolled_bearing({c.h->hole, p.thickness, fu, std::min(clear_to_edge(p, c.h->hole, c.h->hole), 2 * c.h->hole)})})
                                                        : least({strength::bolt_bearing({c.h->hole, p.thickness, fu, strength::mf_bare_or_one_washer}), strength::bolt_bearing_deformation({c.h->hole, p.thickness, fu})}));
    const base::Resistance pull = c.h->sheet_strength > 0 ? strength::insert_tested({c.h->sheet_strength}) : strength::insert_skin_bound(bound_input(c, p, fu));
    straight_line_row(c, Qa, pull.covered ? pull.capacity : NAN, out);
    if (p.thickness >= thick_ply) return;
    if (const auto r = aluminium(p) ? strength::resistance(aluminium_bearing(p, fu, c.h->hole)) : strength::bolt_bearing_deformation({c.h->hole, p.thickness, fu}); r.covered) repeated_row(c, p, r.nominal, "bearing", shear_demand, false, out);
    if (pull.covered) repeated_row(c, p, pull.nominal, "pull of the insert", tension, true, out);
}

} // namespace

bool bare_skin_insert(const layout::Stack& s)
{
    return s.hardware.type == layout::Hardware::Type::insert && !s.plies.empty() && s.plies.back().role == Ply::Role::skin;
}

void insert_rows(const Context& c, std::vector<results::Check>& out)
{
    own_rows(c, out);
    const auto& plies = c.s->stack->plies;
    const double bolt_hole = c.h->d + 2 * c.h->play;
    for (std::size_t i = 0; i < plies.size(); ++i) {
        const auto s = strength_of(c, plies[i], out);
        if (!s) continue;
        const bool holds = i + 1 == plies.size();
        if (holds) holding_ply_rows(c, plies[i], s->fu, out);
        else bearing_rows(c, plies[i], s->fu, {c.h->d, bolt_hole, strength::mf_bare_or_one_washer, false}, out);
        if (i == 0 && !holds) pull_through_row(c, plies[i], s->fu, false, out);
        const base::Resistance need = holds ? strength::insert_edge_distance({c.h->hole}) : strength::minimum_edge_distance({c.h->d});
        edge_row(c, plies[i], {need, holds ? &strength::insert_edge_distance_card() : &strength::minimum_edge_distance_card(), holds ? c.h->hole : c.h->d}, out);
    }
}

} // namespace thinskin::checks
