#include "idealise/skin_forces.h"

#include <algorithm>

namespace thinskin::idealise {

namespace {

using fem::Vec3;
using fem::Vector;

constexpr double g = base::gravity_m_s2; ///< kg g = N
const Vec3 axes[] = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};

Vector& on(fem::UnitLoad& load, const Structure& s, int body)
{
    Vector& v = load.on_body[static_cast<std::size_t>(body)];
    if (v.size() == 0) v = Vector::Zero(s.assembly.bodies[static_cast<std::size_t>(body)]->dofs);
    return v;
}

void item_weight(fem::UnitLoad& load, const Structure& s, const Vec3& a)
{
    const layout::Item& i = *s.layout->item;
    fem::add(on(load, s, s.item_body), fem::rigid_port({i.centre[0], i.centre[1], i.centre[2]}, a), i.design_mass() * g);
}

/// Mass of a bar shared among its nodes by the length they stand for, at the centroid.
std::vector<fem::NodeMass> shared(const std::vector<Vec3>& nodes, const std::vector<int>& chain, double mass, const Vec3& centroid)
{
    std::vector<fem::NodeMass> out;
    double length = 0;
    for (std::size_t i = 0; i + 1 < chain.size(); ++i) length += (nodes[static_cast<std::size_t>(chain[i + 1])] - nodes[static_cast<std::size_t>(chain[i])]).norm();
    for (std::size_t i = 0; i < chain.size(); ++i) {
        const Vec3& here = nodes[static_cast<std::size_t>(chain[i])];
        double stands_for = 0;
        if (i > 0) stands_for += (here - nodes[static_cast<std::size_t>(chain[i - 1])]).norm() / 2;
        if (i + 1 < chain.size()) stands_for += (nodes[static_cast<std::size_t>(chain[i + 1])] - here).norm() / 2;
        out.push_back({chain[i], here + centroid, mass * stands_for / length});
    }
    return out;
}

std::vector<fem::NodeMass> bracket_masses(const layout::Bracket& b, const BracketBody& body)
{
    const auto& nodes = body.frame.model.nodes;
    std::vector<int> leg, arm{body.arm_root};
    for (int i = 0; i < body.first_arm_node; ++i) leg.push_back(i);
    for (std::size_t i = 0; i < body.arm_z.size(); ++i) arm.push_back(body.first_arm_node + static_cast<int>(i));
    const catalogue::Section &ls = b.leg.section, &as = b.arm_section;
    const double side = b.leg.lying.x;
    auto out = shared(nodes, leg, b.leg_mass, {side * (ls.x_c - ls.x_s), 0, ls.y_c - ls.y_s});
    for (auto& m : shared(nodes, arm, b.arm_mass, {side * (as.x_c - as.x_s), -(as.y_c - as.y_s), 0})) out.push_back(m);
    if (b.has_brace)
        for (int node : {body.leg_node(b.brace_from_y), body.arm_node(b.brace_to_z)}) out.push_back({node, nodes[static_cast<std::size_t>(node)], b.brace_mass / 2});
    return out;
}

std::vector<fem::NodeMass> angle_masses(const layout::Angle& a, const AngleBody& body)
{
    std::vector<int> chain;
    for (std::size_t i = 0; i < body.stations.size(); ++i) chain.push_back(static_cast<int>(i));
    const catalogue::Section& s = a.bar.section;
    const Vec3 centroid{a.bar.lying.x * (s.x_c - s.x_s), a.bar.lying.y * (s.x_c - s.x_s), a.bar.standing * (s.y_c - s.y_s)};
    return shared(body.frame.model.nodes, chain, a.bar.mass(), centroid);
}

fem::SkinDirection skin_direction(int d) { return d == 0 ? fem::SkinDirection::x : d == 1 ? fem::SkinDirection::y : fem::SkinDirection::z; }

/// Mean displacement of a plate: its mass is spread evenly.
fem::Row whole_plate(const PlateBody& p, int d)
{
    const fem::SkinModel& m = p.plate.sheet.model;
    return fem::plate_port(p.plate, {p.plate.x0 + m.width / 2, p.plate.y0 + m.height / 2, m.width / 2, m.height / 2}, skin_direction(d));
}

fem::UnitLoad one_g(const Structure& s, int d)
{
    fem::UnitLoad load;
    load.on_body.resize(s.assembly.bodies.size());
    if (s.item) item_weight(load, s, axes[d]);
    for (std::size_t i = 0; i < s.brackets.size(); ++i)
        on(load, s, s.brackets[i].body) += fem::mass_load(s.brackets[i].frame, bracket_masses(s.layout->brackets[i], s.brackets[i]), axes[d] * g);
    for (std::size_t i = 0; i < s.angles.size(); ++i)
        on(load, s, s.angles[i].body) += fem::mass_load(s.angles[i].frame, angle_masses(s.layout->angles[i], s.angles[i]), axes[d] * g);
    for (std::size_t i = 0; i < s.plates.size(); ++i)
        fem::add(on(load, s, s.plates[i].body), whole_plate(s.plates[i], d), s.layout->plates[i].mass() * g);
    for (const model::PanelMass& m : s.layout->source->masses)
        fem::add(on(load, s, s.skin_body), fem::skin_port(*s.skin, {m.at.x.value, m.at.y.value, 5, 5}, skin_direction(d)), m.mass.value * g);
    return load;
}

/// Unit spin of 1 rad/s2 about the door's pin line: force of every mass at its place, and the couple of the item's own inertia
/// about its vertical axis (a uniform box; without a box the item is a point, which the assumptions say).
fem::UnitLoad unit_spin(const Structure& s)
{
    fem::UnitLoad load;
    load.on_body.resize(s.assembly.bodies.size());
    const layout::Door& d = *s.layout->door;
    const auto field = [&d](const Vec3& at) { return Vec3((at.z() - d.pin_z) / 1000, 0, -(at.x() - d.pin_x) / 1000); }; // m/s2
    if (s.item) {
        const layout::Item& i = *s.layout->item;
        const Vec3 at{i.centre[0], i.centre[1], i.centre[2]}, a = field(at);
        Vector& f = on(load, s, s.item_body);
        for (int k = 0; k < 3; ++k) fem::add(f, fem::rigid_port(at, axes[k]), i.design_mass() * a(k));
        f(4) += i.design_mass() * (i.box_size[0] * i.box_size[0] + i.box_size[2] * i.box_size[2]) / 12 / 1000; // N mm
    }
    for (std::size_t i = 0; i < s.plates.size(); ++i) { // a plate is short beside its distance from the pin line: one acceleration
        const layout::Plate& p = s.layout->plates[i];
        const Vec3 a = field({(p.low.x + p.high.x) / 2, (p.low.y + p.high.y) / 2, s.mid_z});
        for (int k : {0, 2}) fem::add(on(load, s, s.plates[i].body), whole_plate(s.plates[i], k), p.mass() * a(k));
    }
    const auto bars = [&](int body, const fem::Frame& frame, const std::vector<fem::NodeMass>& masses) {
        for (const fem::NodeMass& m : masses) on(load, s, body) += fem::mass_load(frame, {m}, field(m.at));
    };
    for (std::size_t i = 0; i < s.brackets.size(); ++i) bars(s.brackets[i].body, s.brackets[i].frame, bracket_masses(s.layout->brackets[i], s.brackets[i]));
    for (std::size_t i = 0; i < s.angles.size(); ++i) bars(s.angles[i].body, s.angles[i].frame, angle_masses(s.layout->angles[i], s.angles[i]));
    return load;
}

} // namespace

fem::Footprint footprint(const model::PanelForce& f)
{
    if (!f.spread_over) return {f.at.x.value, f.at.y.value, 0, 0};
    return {f.at.x.value, f.at.y.value, f.spread_over->x.value / 2, f.spread_over->y.value / 2};
}

namespace {

fem::UnitLoad applied(const Structure& s, const std::string& when)
{
    fem::UnitLoad load;
    load.on_body.resize(s.assembly.bodies.size());
    for (const model::PanelForce& f : s.layout->source->forces) {
        if (f.when != when) continue;
        const fem::Footprint where = footprint(f);
        for (int d = 0; d < 3; ++d)
            if (f.force[static_cast<std::size_t>(d)].value != 0)
                fem::add(on(load, s, s.skin_body), fem::skin_port(*s.skin, where, skin_direction(d)), f.force[static_cast<std::size_t>(d)].value);
    }
    for (const model::PanelPressure& p : s.layout->source->pressures)
        if (p.when == when) on(load, s, s.skin_body) += fem::skin_pressure(*s.skin, p.value.value);
    return load;
}

/// 1 N along, or 1 N mm about, an axis through the origin.
fem::UnitLoad on_item(const Structure& s, int coordinate)
{
    fem::UnitLoad load;
    load.on_body.resize(s.assembly.bodies.size());
    on(load, s, s.item_body)(coordinate) = 1;
    return load;
}

void note(std::vector<WhenLoad>& all, const std::string& when)
{
    if (std::none_of(all.begin(), all.end(), [&](const WhenLoad& w) { return w.when == when; })) all.push_back({when});
}

} // namespace

void build_loads(Structure& s)
{
    for (int d = 0; d < 3; ++d) s.loads.push_back(one_g(s, d));
    for (const model::PanelForce& f : s.layout->source->forces) note(s.when, f.when);
    for (const model::PanelPressure& p : s.layout->source->pressures) note(s.when, p.when);
    for (const WhenLoad& w : s.when) s.loads.push_back(applied(s, w.when));
    if (s.item && !s.layout->item->loads.empty()) {
        s.item_force = static_cast<int>(s.loads.size());
        for (int d = 0; d < 6; ++d) s.loads.push_back(on_item(s, d));
    }
    if (s.layout->door && s.layout->door->has_hinges) {
        s.spin = static_cast<int>(s.loads.size());
        s.loads.push_back(unit_spin(s));
    }
}

/// Force and moment about the origin of a force on the item.
static void add_item_force(const results::LoadCase::ItemForce& f, int first, Vector& factors)
{
    const Vec3 force{f.force_N[0], f.force_N[1], f.force_N[2]}, at{f.at_mm[0], f.at_mm[1], f.at_mm[2]};
    factors.segment<3>(first) += force;
    factors.segment<3>(first + 3) += at.cross(force);
}

/// In a bare panel's one load case everything that is applied acts at once; masses hang with 1 g.
fem::Vector load_factors(const Structure& s, const results::LoadCase& lc)
{
    Vector f = Vector::Zero(static_cast<Eigen::Index>(s.loads.size()));
    for (int d = 0; d < 3; ++d) f(d) = lc.turns && d != 1 ? 0.0 : lc.acceleration_g[static_cast<std::size_t>(d)];
    if (lc.turns && s.spin >= 0) f(s.spin) = lc.spin_rad_s2;
    if (lc.on_item && s.item_force >= 0) add_item_force(*lc.on_item, s.item_force, f);
    for (std::size_t i = 0; i < s.when.size(); ++i)
        f(3 + static_cast<Eigen::Index>(i)) = lc.applied_only || s.when[i].when == lc.name ? 1.0 : 0.0;
    return f;
}

} // namespace thinskin::idealise
