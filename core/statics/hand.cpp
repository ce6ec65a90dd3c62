#include "statics/hand.h"

#include "base/quantity.h"

#include <algorithm>
#include <cmath>

// core/statics/hand.cpp - notation
//   F_j  force on mass j: m g a, N           r_j  its place, mm
//   M    moment about a level line in the skin's face: sum(-F_y z + F_z y), positive takes the top off the skin
// Accuracy: as far as the rigid bracket goes; tests/published/demo_hand_sums.cpp.
namespace thinskin::statics {

namespace {

using results::Vec3;

struct Load { Vec3 force{}, at{}; };

Vec3 weighed(double kg, const results::LoadCase& lc)
{
    const double w = kg * base::gravity_m_s2;
    return {w * lc.acceleration_g[0], w * lc.acceleration_g[1], w * lc.acceleration_g[2]};
}

/// Shares of a rigid item on rigid brackets: 1/n + (x_G - x_c)(x_i - x_c)/sum (x - x_c)^2; two brackets: the lever.
struct Spread { double mean = 0, sum2 = 0; };
Spread spread_of(const std::vector<layout::Bracket>& all)
{
    Spread s;
    for (const layout::Bracket& b : all) s.mean += b.web_x / static_cast<double>(all.size());
    for (const layout::Bracket& b : all) s.sum2 += (b.web_x - s.mean) * (b.web_x - s.mean);
    return s;
}

double share_of(const layout::Bracket& b, const layout::Layout& l)
{
    const Spread s = spread_of(l.brackets);
    const double equal = 1.0 / static_cast<double>(l.brackets.size());
    return s.sum2 > 0 ? equal + (l.item->centre[0] - s.mean) * (b.web_x - s.mean) / s.sum2 : equal;
}

Load item_load(const layout::Bracket& b, const layout::Layout& l, const results::LoadCase& lc, double tolerance)
{
    if (!l.item) return {};
    const layout::Item& i = *l.item;
    Vec3 F = weighed(i.mass * (1 + tolerance), lc);
    const double share = share_of(b, l);
    F = {F[0] / static_cast<double>(l.brackets.size()), F[1] * share, F[2] * share}; // sideways: equal brackets
    return {F, {b.web_x, i.centre[1], i.centre[2]}};
}

Load leg_load(const layout::Bracket& b, const results::LoadCase& lc)
{
    const double z = b.leg.face_z + b.leg.standing * b.leg.section.y_c;
    return {weighed(b.leg_mass, lc), {b.web_x, 0.5 * (b.leg.from.y + b.leg.to.y), z}};
}

Load arm_load(const layout::Bracket& b, const results::LoadCase& lc)
{
    return {weighed(b.arm_mass, lc), {b.web_x, b.arm_top_y - b.arm_section.y_c, 0.5 * b.arm_length}};
}

Load brace_load(const layout::Bracket& b, const results::LoadCase& lc)
{
    return {weighed(b.brace_mass, lc), {b.web_x, 0.5 * (b.brace_from_y + b.arm_top_y), 0.5 * b.brace_to_z}};
}

double tilting(const Load& f, double y) { return -f.force[1] * f.at[2] + f.force[2] * (f.at[1] - y); }

/// Sideways force above the arms tips the item; the brackets' couple answers it with vertical forces.
double overturning(const layout::Bracket& b, const layout::Layout& l, const Load& item)
{
    const Spread s = spread_of(l.brackets);
    if (!l.item || !(s.sum2 > 0)) return 0;
    const double whole = item.force[0] * static_cast<double>(l.brackets.size());
    return 0.0 - whole * (item.at[1] - b.arm_top_y) * (b.web_x - s.mean) / s.sum2;
}

struct BracketLoads {
    Load item, leg, arm, brace;
    [[nodiscard]] std::vector<Load> all() const { return {item, leg, arm, brace}; }
};

void take_brace(const layout::Bracket& b, const BracketLoads& loads, BracketHand& out)
{
    out.has_brace = b.has_brace;
    if (!b.has_brace) return;
    const double rise = b.arm_top_y - b.brace_from_y, reach = b.brace_to_z;
    const double root = tilting(loads.item, b.arm_top_y) + tilting(loads.arm, b.arm_top_y);
    out.brace_N = brace_force({.root_moment = root, .rise = rise, .reach = reach});
    // A pin-ended bar hands half of its weight to each end.
    out.brace_own_weight_N = brace_force({.root_moment = -0.5 * loads.brace.force[1] * reach, .rise = rise, .reach = reach});
}

/// The same loads in the panel's plane. Two or more brackets answer the item's tipping with vertical forces, so its force
/// enters at the arm; a bracket alone takes it at the item's own centre.
std::vector<Load> in_plane(const layout::Bracket& b, const layout::Layout& l, const BracketLoads& loads, double overturn)
{
    std::vector<Load> out = loads.all();
    Load& item = out.front();
    const bool alone = l.brackets.size() == 1;
    if (l.item) item.at = {alone ? l.item->centre[0] : b.web_x, alone ? item.at[1] : b.arm_top_y, item.at[2]};
    item.force[1] += overturn;
    return out;
}

std::vector<Plane> group_shears(const layout::Bracket& b, const std::vector<Load>& loads)
{
    BoltGroup g{.at = {}, .force = {0, 0}, .moment = 0};
    for (const layout::Stack& s : b.fasteners) g.at.push_back({s.at.x, s.at.y});
    const Plane c = centroid(g.at);
    for (const Load& f : loads) {
        g.force = {g.force.x + f.force[0], g.force.y + f.force[1]};
        g.moment += (f.at[0] - c.x) * f.force[1] - (f.at[1] - c.y) * f.force[0];
    }
    // One bolt cannot take the moment; the leg's edges do, and the bolt keeps the force.
    if (g.at.size() == 1) g.moment = 0;
    return g.at.size() == 1 ? std::vector<Plane>{g.force} : polar_bolt_group(g);
}

void take_bracket(const layout::Bracket& b, const BracketLoads& loads, BracketHand& out)
{
    out.name = b.name;
    const double foot = b.leg.from.y, top = b.leg.to.y;
    for (const Load& f : loads.all()) {
        for (std::size_t k = 0; k < 3; ++k) out.force_N[k] += f.force[k];
        out.moment_Nm += tilting(f, foot) / 1000;
        out.moment_top_Nm -= tilting(f, top) / 1000;
        out.rocking_Nm += f.force[0] * f.at[2] / 1000;
    }
    take_brace(b, loads, out);
}

void take_bolts(const layout::Bracket& b, const std::vector<Plane>& group, BracketHand& bracket, HandFigures& out)
{
    BoltRow row{.at = {}, .foot = b.leg.from.y, .top = b.leg.to.y, .pull = bracket.force_N[2], .moment = 0};
    for (const layout::Stack& s : b.fasteners) row.at.push_back(s.at.y);
    row.moment = bracket.moment_Nm * 1000 + row.pull * row.foot;
    const RowTensions t = lever_rule(row);
    bracket.pivot = t.pivot;
    bracket.push_N = t.push;
    bracket.push_y_mm = t.push_at;
    const double shear = std::hypot(bracket.force_N[0], bracket.force_N[1]);
    for (std::size_t i = 0; i < b.fasteners.size(); ++i) {
        BoltHand h;
        h.name = b.fasteners[i].name;
        h.bracket = b.name;
        h.tension_N = t.tension[i];
        h.prying_bound_N = prying_bound({.pull = h.tension_N, .a = b.leg.gauge, .b = b.leg.section.b - b.leg.gauge});
        h.shear_shared_N = shear / static_cast<double>(b.fasteners.size());
        h.shear_one_row_N = shear;
        h.shear_group_N = std::hypot(group[i].x, group[i].y);
        out.bolts.push_back(h);
    }
}

double along(const layout::AngleBar& bar, const layout::Point& p) { return (p.x - bar.from.x) * bar.along.x + (p.y - bar.from.y) * bar.along.y; }

/// The angle that takes a bolt's pull: the one nearest to the nut.
const layout::Ply* pulled_angle(const layout::Stack& s)
{
    for (auto ply = s.plies.rbegin(); ply != s.plies.rend(); ++ply)
        if (ply->role == layout::Ply::Role::angle) return &*ply;
    return nullptr;
}

struct AngleLoads { SimpleBeam beam; std::vector<std::string> bolts; };

AngleLoads loads_on(const layout::Angle& a, const layout::Layout& l, const HandFigures& f)
{
    AngleLoads out{.beam = {.first = along(a.bar, a.ends[0].port), .second = along(a.bar, a.ends[1].port), .loads = {}}, .bolts = {}};
    for (const layout::Bracket& b : l.brackets)
        for (const layout::Stack& s : b.fasteners) {
            const layout::Ply* ply = pulled_angle(s);
            if (!ply || ply->part != a.bar.name) continue;
            out.beam.loads.push_back({along(a.bar, s.at), bolt(f, s.name)->tension_N});
            out.bolts.push_back(s.name);
        }
    return out;
}

void take_angle(const layout::Angle& a, const layout::Layout& l, HandFigures& out)
{
    AngleHand h;
    h.name = a.bar.name;
    const AngleLoads loads = loads_on(a, l, out);
    if (!a.ends[0].tied || !a.ends[1].tied) h.reason = "an end is not tied to the frame: the skin holds the angle, and no hand sum says how";
    else if (!(loads.beam.second > loads.beam.first)) h.reason = "the two ends are not apart";
    h.covered = h.reason.empty();
    if (h.covered) {
        const BeamFigures beam = simple_beam(loads.beam);
        h.max_moment_Nm = beam.max_moment / 1000;
        out.ends.push_back({h.name, a.ends[0].side, beam.first});
        out.ends.push_back({h.name, a.ends[1].side, beam.second});
        for (std::size_t i = 0; i < loads.bolts.size(); ++i) out.moments.push_back({h.name, loads.bolts[i], beam.moment_at_loads[i] / 1000});
    }
    out.angles.push_back(h);
}

template <class T, class Match> const T* found(const std::vector<T>& all, Match match)
{
    const auto at = std::find_if(all.begin(), all.end(), match);
    return at == all.end() ? nullptr : &*at;
}

} // namespace

HandFigures hand_figures(const layout::Layout& l, const results::LoadCase& lc, double mass_tolerance)
{
    HandFigures out;
    out.load_case = lc.name;
    for (const layout::Bracket& b : l.brackets) {
        const BracketLoads loads{item_load(b, l, lc, mass_tolerance), leg_load(b, lc), arm_load(b, lc), b.has_brace ? brace_load(b, lc) : Load{}};
        BracketHand h;
        take_bracket(b, loads, h);
        h.overturning_N = overturning(b, l, loads.item);
        take_bolts(b, group_shears(b, in_plane(b, l, loads, h.overturning_N)), h, out);
        out.brackets.push_back(h);
    }
    for (const layout::Angle& a : l.angles) take_angle(a, l, out);
    return out;
}

HandFigures hand_figures(const layout::Layout& l, const results::LoadCase& lc) { return hand_figures(l, lc, l.item ? l.item->tolerance : 0.0); }

const BoltHand* bolt(const HandFigures& f, const std::string& name)
{
    return found(f.bolts, [&](const BoltHand& b) { return b.name == name; });
}

const BracketHand* bracket(const HandFigures& f, const std::string& name)
{
    return found(f.brackets, [&](const BracketHand& b) { return b.name == name; });
}

const AngleEndHand* end(const HandFigures& f, const std::string& angle, const std::string& side)
{
    return found(f.ends, [&](const AngleEndHand& e) { return e.angle == angle && e.side == side; });
}

const AngleHand* angle(const HandFigures& f, const std::string& name)
{
    return found(f.angles, [&](const AngleHand& a) { return a.name == name; });
}

} // namespace thinskin::statics
