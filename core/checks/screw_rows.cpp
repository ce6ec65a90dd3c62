#include "checks/stack_kit.h"
#include "strength/screw_combinations.h"
#include "strength/screws.h"
#include "strength/spacing.h"

#include <algorithm>

/// A self-drilling or thread-forming screw: the head holds the first ply, the thread the last one; its tip is taken as through.
namespace thinskin::checks {

namespace {

using layout::Ply;
using results::FastenerForce;

/// A stack of sheets with their strengths, head first.
struct Sheets { const std::vector<Ply>* plies; std::vector<catalogue::Strength> s; };

strength::ScrewShear shear_input(const Context& c, const Sheets& a, std::size_t i)
{
    return {c.h->d, (*a.plies)[i].thickness, (*a.plies)[i + 1].thickness, a.s[i].fu, a.s[i + 1].fu};
}

strength::ScrewPullOut pull_out_input(const Context& c, const Sheets& a)
{
    return {c.h->d, a.plies->back().thickness, a.s.back().fu, strength::thin_sheet_applied};
}

bool pulls_at_one_side(const Ply& p) { return p.role == Ply::Role::leg || p.role == Ply::Role::angle; }

/// A lying leg pulls at one side of the head.
strength::ScrewPullOver pull_over_of(const Context& c, const Sheets& a)
{
    const auto& w = c.h->head_washer;
    const bool counts = w && washer_counts(*w), leg = pulls_at_one_side(a.plies->front());
    return {a.plies->front().thickness, a.s.front().fu, c.h->across_flats, counts ? strength::solid_washer : strength::no_separate_washer, counts ? counting_diameter(*w, c.h->across_flats, a.plies->front(), a.s.front().fu) : 0.0,
            counts ? w->thickness : 0.0, leg ? strength::eccentric_pull : strength::concentric_pull};
}

/// Where a sheet of the pair is aluminium its manual's clause stands for both.
strength::AluminiumScrewShear aluminium_shear(const Context& c, const Sheets& a, std::size_t i)
{
    const auto edge = [&](std::size_t k) { return std::min((*a.plies)[k].edge_distance, 20 * c.h->d); };
    return {c.h->d, (*a.plies)[i].thickness, (*a.plies)[i + 1].thickness, a.s[i].fu, a.s[i + 1].fu, edge(i), edge(i + 1)};
}

strength::AluminiumPullOver aluminium_head(const Context& c, const Sheets& a)
{
    const Ply& p = a.plies->front();
    const auto& w = c.h->head_washer;
    const double presses = w && washer_counts(*w) ? counting_diameter(*w, c.h->across_flats, p, a.s.front().fu) : c.h->across_flats;
    return aluminium_pull_over(p, a.s.front().fu, presses, c.h->hole, pulls_at_one_side(p));
}

strength::AluminiumPullOut aluminium_tip(const Context& c, const Sheets& a) { return {c.h->d, a.plies->back().thickness, a.s.back().fy}; }

bool mixed(const Sheets& a, std::size_t i) { return aluminium((*a.plies)[i]) || aluminium((*a.plies)[i + 1]); }

base::Resistance shear_of(const Context& c, const Sheets& a, std::size_t i)
{
    return mixed(a, i) ? strength::resistance(aluminium_shear(c, a, i)) : strength::screw_shear(shear_input(c, a, i));
}
base::Resistance pull_out_of(const Context& c, const Sheets& a)
{
    return aluminium(a.plies->back()) ? strength::resistance(aluminium_tip(c, a)) : strength::screw_pull_out(pull_out_input(c, a));
}
base::Resistance head_of(const Context& c, const Sheets& a)
{
    return aluminium(a.plies->front()) ? strength::resistance(aluminium_head(c, a)) : strength::screw_pull_over(pull_over_of(c, a));
}

void own_rows(const Context& c, std::vector<results::Check>& out)
{
    const std::string& n = c.s->stack->name;
    Place shear = place(c, "screw own shear", "shear of the screw itself at " + n), pull = place(c, "screw own tension", "tension of the screw itself at " + n);
    shear.lift_with = kind_key(c, "shear_strength");
    pull.lift_with = kind_key(c, "tension_strength");
    out.push_back(c.h->own_shear > 0 ? worst_of(shear, shear_demands(c), strength::ScrewOwnShear{c.h->own_shear}) : not_covered(shear, "the screw's own shear strength is its maker's; it is not given"));
    out.push_back(c.h->own_tension > 0 ? worst_of(pull, tension_demands(c), strength::ScrewOwnTension{c.h->own_tension}) : not_covered(pull, "the screw's own tension strength is its maker's; it is not given"));
}

/// Each neighbouring pair by itself with the whole shear, the worse counts.
void shear_row(const Context& c, const Sheets& a, std::vector<results::Check>& out)
{
    std::vector<results::Check> rows;
    for (std::size_t i = 0; i + 1 < a.plies->size(); ++i) {
        Place p = place(c, "screw shear", "shear of screw " + c.s->stack->name + ": tilting and bearing");
        p.note = fmt::format("{} on {}{}", (*a.plies)[i].part, (*a.plies)[i + 1].part, a.plies->size() > 2 ? "; each neighbouring pair by itself with the whole shear" : "");
        rows.push_back(mixed(a, i) ? worst_of(p, shear_demands(c), aluminium_shear(c, a, i)) : worst_of(p, shear_demands(c), shear_input(c, a, i)));
    }
    if (!rows.empty()) out.push_back(worst(std::move(rows)));
}

void tear_out_rows(const Context& c, const Sheets& a, std::vector<results::Check>& out)
{
    for (std::size_t i = 0; i < a.plies->size(); ++i) {
        const Ply& p = (*a.plies)[i];
        if (!std::isfinite(p.edge_distance)) continue;
        if (!aluminium(p)) out.push_back(worst_of(ply_place(c, p, "tear-out"), shear_demands(c), strength::ScrewTearOut{p.thickness, a.s[i].fu, clear_to_edge(p, c.h->d, c.h->d), 1}));
        edge_row(c, p, {strength::screw_edge_distance({c.h->d}), &strength::screw_edge_distance_card(), c.h->d}, out);
    }
}

/// One clause for all load cases in its box; false when it is outside of the box.
template <class In, class Make> bool in_box(const Place& p, const Context& c, Make make, std::vector<results::Check>& out)
{
    std::vector<results::Check> rows;
    for (const FastenerForce& f : c.s->forces) {
        const double Q = shear_demand(f), T = tension(f);
        if (Q == 0 && T == 0) continue;
        const In in = make(Q, T);
        if (!strength::resistance(in).covered) return false;
        rows.push_back(against_clause(p, {f.load_case, 1, f.stands, f.why_not}, in));
    }
    if (!rows.empty()) out.push_back(worst(std::move(rows)));
    return true;
}

double least_shear(const Context& c, const Sheets& a)
{
    double least_so_far = c.h->own_shear > 0 ? strength::screw_own_shear({c.h->own_shear}).capacity : INFINITY;
    for (std::size_t i = 0; i + 1 < a.plies->size(); ++i) least_so_far = std::min(least_so_far, least({shear_of(c, a, i)}));
    for (std::size_t i = 0; i < a.plies->size(); ++i)
        if (std::isfinite((*a.plies)[i].edge_distance) && !aluminium((*a.plies)[i]))
            least_so_far = std::min(least_so_far, least({strength::screw_tear_out({(*a.plies)[i].thickness, a.s[i].fu, clear_to_edge((*a.plies)[i], c.h->d, c.h->d), 1})}));
    return least_so_far;
}

double least_tension(const Context& c, const Sheets& a)
{
    const double own = c.h->own_tension > 0 ? strength::screw_own_tension({c.h->own_tension}).capacity : INFINITY;
    return std::min(own, least({pull_out_of(c, a), head_of(c, a)}));
}

void combined_rows(const Context& c, const Sheets& a, std::vector<results::Check>& out)
{
    const std::string& n = c.s->stack->name;
    const auto over = pull_over_of(c, a);
    const auto tip = pull_out_input(c, a);
    const bool steel = std::none_of(a.plies->begin(), a.plies->end(), [](const Ply& p) { return aluminium(p); });
    const bool head = steel && in_box<strength::ScrewShearWithPullOver>(place(c, "shear with pull-over", "shear with pull-over at screw " + n), c, [&](double Q, double T) {
        return strength::ScrewShearWithPullOver{Q, T, c.h->d, over.t1_mm, (*a.plies)[1].thickness, over.Fu1_MPa, over.dh_mm, over.washer, over.dw_mm, over.tw_mm, over.eccentric};
    }, out);
    const bool thread = steel && in_box<strength::ScrewShearWithPullOut>(place(c, "shear with pull-out", "shear with pull-out at screw " + n), c, [&](double Q, double T) {
        return strength::ScrewShearWithPullOut{Q, T, c.h->d, tip.tc_mm, tip.tc_mm, tip.Fu2_MPa, a.s.back().fy, tip.thin_sheet};
    }, out);
    if (!head || !thread) straight_line_row(c, least_shear(c, a), least_tension(c, a), out);
    if (c.h->own_shear > 0 && c.h->own_tension > 0)
        in_box<strength::ScrewShearWithTension>(place(c, "screw own shear with tension", "shear with tension in the screw itself at " + n), c, [&](double Q, double T) {
            return strength::ScrewShearWithTension{Q, T, c.h->own_shear, c.h->own_tension};
        }, out);
}

void repeated_rows(const Context& c, const Sheets& a, std::vector<results::Check>& out)
{
    for (std::size_t i = 0; i < a.plies->size(); ++i) {
        if ((*a.plies)[i].thickness >= thick_ply) continue;
        double nominal = INFINITY;
        for (std::size_t pair : {i > 0 ? i - 1 : i, i})
            if (pair + 1 < a.plies->size())
                if (const auto r = shear_of(c, a, pair); r.covered) nominal = std::min(nominal, r.nominal);
        if (std::isfinite(nominal)) repeated_row(c, (*a.plies)[i], nominal, "bearing", shear_demand, false, out);
    }
    if (const auto r = pull_out_of(c, a); r.covered && a.plies->back().thickness < thick_ply)
        repeated_row(c, a.plies->back(), r.nominal, "pull-out", tension, true, out);
    if (const auto r = head_of(c, a); r.covered && a.plies->front().thickness < thick_ply)
        repeated_row(c, a.plies->front(), r.nominal, "pull-over", tension, true, out);
}

} // namespace

void screw_rows(const Context& c, std::vector<results::Check>& out)
{
    own_rows(c, out);
    const Sheets a{&c.s->stack->plies, all_strengths(c, out)};
    if (a.s.empty()) return;
    if (a.s.size() < 2) {
        out.push_back(not_covered(place(c, "screw shear", "shear of screw " + c.s->stack->name), "one sheet alone: what the thread holds in is not given"));
        return;
    }
    shear_row(c, a, out);
    Place tip = ply_place(c, a.plies->back(), "pull-out at the tip");
    tip.note = "thin-sheet factor applied; the thread is taken as through the sheet";
    out.push_back(aluminium(a.plies->back()) ? worst_of(tip, tension_demands(c), aluminium_tip(c, a)) : worst_of(tip, tension_demands(c), pull_out_input(c, a)));
    const Place head = ply_place(c, a.plies->front(), "pull-over at the head");
    out.push_back(aluminium(a.plies->front()) ? worst_of(head, tension_demands(c), aluminium_head(c, a)) : worst_of(head, tension_demands(c), pull_over_of(c, a)));
    tear_out_rows(c, a, out);
    combined_rows(c, a, out);
    repeated_rows(c, a, out);
}

} // namespace thinskin::checks
