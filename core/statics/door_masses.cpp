#include "base/quantity.h"
#include "statics/door_parts.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace thinskin::statics {

namespace {

using Kind = DoorMass::Kind;

/// The centroid of an angle in the middle of its length.
results::Vec3 centre(const layout::AngleBar& bar)
{
    const layout::Point heel = bar.heel(0.5 * bar.length());
    return {heel.x + bar.section.x_c * bar.lying.x, heel.y + bar.section.x_c * bar.lying.y, bar.face_z + bar.standing * bar.section.y_c};
}

void add_bracket(std::vector<DoorMass>& out, const layout::Bracket& b)
{
    out.push_back({Kind::bracket, b.name + " leg", b.leg_mass, centre(b.leg)});
    out.push_back({Kind::bracket, b.name + " arm", b.arm_mass, {b.web_x, b.arm_top_y - b.arm_section.y_c, 0.5 * b.arm_length}});
    if (b.has_brace)
        out.push_back({Kind::bracket, b.name + " brace", b.brace_mass, {b.web_x, 0.5 * (b.brace_from_y + b.arm_top_y), 0.5 * b.brace_to_z}});
}

double inertia(const layout::Layout& l, const std::vector<DoorMass>& masses, bool whole)
{
    double I = 0;
    for (const DoorMass& m : masses) {
        if (!whole && m.kind != Kind::door) continue;
        const double y = y_of(*l.door, m.at), e = e_of(*l.door, m.at);
        I += m.kg * (y * y + e * e) + own_inertia(l, m); // ST-10
    }
    return I;
}

} // namespace

double own_inertia(const layout::Layout& l, const DoorMass& m)
{
    if (m.kind == Kind::door) return m.kg * l.width * l.width / 12; // even over its width
    if (m.kind != Kind::item || !l.item || !l.item->has_box) return 0;
    return m.kg * (l.item->box_size[0] * l.item->box_size[0] + l.item->box_size[2] * l.item->box_size[2]) / 12;
}

double y_of(const layout::Door& d, const results::Vec3& at) { return d.hinges_right ? d.pin_x - at[0] : at[0] - d.pin_x; }
double e_of(const layout::Door& d, const results::Vec3& at) { return at[2] - d.pin_z; }
double edge_distance(const layout::Layout& l) { return y_of(*l.door, {l.door->hinges_right ? 0.0 : l.width, 0, 0}); }
double hinge_spacing(const layout::Door& d) { return d.hinge_heights.size() < 2 ? 0.0 : d.hinge_heights.back() - d.hinge_heights.front(); }

std::string no_hinges(const layout::Layout& l)
{
    if (l.kind != model::PanelKind::door) return "only a door hinged at its side is covered";
    if (!l.door) return "the door's mass and hinges are not given";
    if (!l.door->has_hinges) return "the door's hinges are not given";
    if (!(hinge_spacing(*l.door) > 0)) return "two hinges at different heights are needed";
    return "";
}

std::string no_hinges_key(const layout::Layout& l)
{
    if (l.kind != model::PanelKind::door) return "panel.kind";
    if (!l.door) return "door";
    return l.door->has_hinges ? "door.hinges.heights" : "door.hinges";
}

std::vector<DoorMass> door_masses(const layout::Layout& l, double mass_tolerance)
{
    std::vector<DoorMass> out;
    if (l.door) out.push_back({Kind::door, "bare door", l.door->mass, l.door->centre});
    if (l.item) out.push_back({Kind::item, l.item->name, l.item->mass * (1 + mass_tolerance), l.item->centre});
    for (const layout::Bracket& b : l.brackets) add_bracket(out, b);
    for (const layout::Angle& a : l.angles) out.push_back({Kind::reinforcement, a.bar.name, a.bar.mass(), centre(a.bar)});
    for (const layout::Strap& s : l.straps) out.push_back({Kind::reinforcement, s.name, s.mass(), {(s.from[0] + s.to[0]) / 2, (s.from[1] + s.to[1]) / 2, (s.from[2] + s.to[2]) / 2}});
    for (const layout::Plate& p : l.plates) out.push_back({Kind::reinforcement, p.name, p.mass(), {(p.low.x + p.high.x) / 2, (p.low.y + p.high.y) / 2, -l.skin.core - p.thickness / 2}});
    if (l.source)
        for (const model::PanelMass& m : l.source->masses) out.push_back({Kind::reinforcement, "mass on the skin", m.mass.value, {m.at.x.value, m.at.y.value, 0}});
    return out;
}

Couples at_rest(const layout::Door& d, const std::vector<DoorMass>& masses)
{
    Couples c;
    const double h = hinge_spacing(d);
    for (const DoorMass& m : masses) {
        const double W = m.kg * base::gravity_m_s2;
        c.V += W;
        c.T += W * y_of(d, m.at) / h; // ST-1
        c.N += W * e_of(d, m.at) / h; // ST-2
    }
    return c;
}

FirstMoments moments(const layout::Door& d, const std::vector<DoorMass>& masses)
{
    FirstMoments f;
    for (const DoorMass& m : masses) {
        f.kg += m.kg;
        f.kg_y += m.kg * y_of(d, m.at);
        f.kg_e += m.kg * e_of(d, m.at);
    }
    return f;
}

FirstMoments added(const layout::Door& d, const std::vector<DoorMass>& masses)
{
    std::vector<DoorMass> without;
    std::copy_if(masses.begin(), masses.end(), std::back_inserter(without), [](const DoorMass& m) { return m.kind != Kind::door; });
    return moments(d, without);
}

results::DoorRatios door_ratios(const layout::Layout& l, double mass_tolerance)
{
    results::DoorRatios r;
    if (!no_hinges(l).empty() || !(l.door->mass > 0)) return r;
    const std::vector<DoorMass> all = door_masses(l, mass_tolerance);
    const Couples whole = at_rest(*l.door, all), bare = at_rest(*l.door, {all.front()});
    if (!(bare.T > 0)) return r;
    r.moment = whole.T / bare.T;
    r.hinge_couple = std::hypot(whole.T, whole.N) / std::hypot(bare.T, bare.N);
    r.inertia = inertia(l, all, true) / inertia(l, all, false);
    r.slam_force = std::sqrt(r.inertia);
    r.known = std::isfinite(r.moment) && std::isfinite(r.hinge_couple) && std::isfinite(r.inertia);
    return r;
}

} // namespace thinskin::statics
