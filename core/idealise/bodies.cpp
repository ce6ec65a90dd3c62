#include "idealise/structure.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::idealise {

namespace {

using fem::Vec3;

/// Stations closer than this are one node; ports reach their true place by a rigid offset. Shorter elements would only add rounding.
constexpr double shortest_element = 2.0;

void tidy(std::vector<double>& v)
{
    std::sort(v.begin(), v.end());
    v.erase(std::unique(v.begin(), v.end(), [](double a, double b) { return b - a < shortest_element; }), v.end());
}

Vec3 vec(layout::Point p, double z = 0) { return {p.x, p.y, z}; }

fem::Hold hold(model::EdgeCondition::Kind k)
{
    switch (k) {
    case model::EdgeCondition::Kind::held: return fem::Hold::held;
    case model::EdgeCondition::Kind::hinged: return fem::Hold::hinged;
    case model::EdgeCondition::Kind::free: return fem::Hold::free;
    case model::EdgeCondition::Kind::sprung: return fem::Hold::sprung;
    }
    return fem::Hold::held;
}

fem::RibModel rib_model(const layout::Layout& l, const layout::Rib& r)
{
    const catalogue::Section& s = r.section;
    // A flat stands on its edge unless it is said to lie: read_section gives b along the panel, h off it.
    const bool turn = s.kind == catalogue::Section::Kind::flat && !r.standing && s.h > s.b;
    const double height = turn ? s.b : s.h, y_c = turn ? s.x_c : s.y_c;
    fem::RibModel out;
    out.name = r.name;
    out.from = {r.from.x, r.from.y};
    out.to = {r.to.x, r.to.y};
    out.E = r.material.E;
    out.G = r.material.G;
    out.A = s.A;
    out.I_normal = turn ? s.I_y : s.I_x;
    out.I_lateral = turn ? s.I_x : s.I_y;
    out.J = s.J;
    out.offset_z = -(l.skin.core / 2 + (height > 0 ? y_c : 0));
    for (std::size_t e = 0; e < 2; ++e) out.ends[e] = {r.ends[e].tied, r.ends[e].turning_fixed, r.ends[e].rotational_stiffness.value_or(0)};
    return out;
}

std::string skin_key(const fem::SkinModel& m)
{
    std::string key = fmt::format("{:a} {:a} {:a} {:a} {:a} {:a} {:a} {}", m.width, m.height, m.mid_z, m.spacing, m.sheet.E, m.sheet.nu, m.sheet.thickness, m.in_plane_fixed);
    for (const auto& p : m.held_points) key += fmt::format(" h {:a} {:a}", p[0], p[1]);
    for (const fem::EdgeHold& e : m.edges) key += fmt::format(" {} {:a}", static_cast<int>(e.kind), e.rotational_stiffness);
    for (const fem::RibModel& r : m.ribs) {
        key += fmt::format(" {:a} {:a} {:a} {:a} {:a} {:a} {:a} {:a} {:a} {:a}", r.from[0], r.from[1], r.to[0], r.to[1], r.E, r.A, r.I_normal, r.I_lateral, r.J, r.offset_z);
        for (const fem::RibEnd& e : r.ends) key += fmt::format(" {} {} {:a}", e.held, e.turning_held, e.rotational_stiffness);
    }
    for (const fem::Opening& o : m.openings) key += fmt::format(" o {:a} {:a} {:a} {:a}", o.x0, o.y0, o.x1, o.y1);
    return key;
}

} // namespace

double grid_spacing(model::GridSize size)
{
    switch (size) {
    case model::GridSize::quick: return 45;
    case model::GridSize::normal: return 30;
    case model::GridSize::fine: return 20;
    }
    return 30;
}

namespace {

BracketBody bracket_body(const Structure& s, const layout::Bracket& b)
{
    const layout::Layout& l = *s.layout;
    BracketBody out;
    const double t = b.leg.section.t, arm_y = b.arm_top_y - b.arm_section.y_s;
    out.leg_y = {b.leg.from.y, b.leg.to.y, arm_y};
    for (const layout::Stack& f : b.fasteners) out.leg_y.push_back(f.at.y);
    for (const ContactPoint& c : leg_contacts(l, b, s.options.leg_station_spacing)) out.leg_y.push_back(c.at.y);
    if (b.has_brace) out.leg_y.push_back(b.brace_from_y);
    for (const layout::Strap& strap : l.straps)
        for (const layout::StrapEnd& e : strap.ends)
            if (e.bracket >= 0 && &l.brackets[static_cast<std::size_t>(e.bracket)] == &b && !e.on_arm) out.leg_y.push_back(std::clamp(e.at[1], b.leg.from.y, b.leg.to.y));
    tidy(out.leg_y);
    out.arm_z = {b.arm_length};
    for (const layout::Mount& m : b.mounts) out.arm_z.push_back(m.along);
    if (b.has_brace) out.arm_z.push_back(b.brace_to_z);
    for (const layout::Strap& strap : l.straps)
        for (const layout::StrapEnd& e : strap.ends)
            if (e.bracket >= 0 && &l.brackets[static_cast<std::size_t>(e.bracket)] == &b && e.on_arm && e.at[2] > 2 && e.at[2] < b.arm_length) out.arm_z.push_back(e.at[2]);
    tidy(out.arm_z);
    out.arm_root = out.leg_node(arm_y);
    out.first_arm_node = static_cast<int>(out.leg_y.size());

    fem::FrameModel m;
    m.name = "bracket " + b.name;
    const double x = b.web_x + b.leg.lying.x * t / 2, z = t / 2;
    for (double y : out.leg_y) m.nodes.emplace_back(x, y, z);
    for (double az : out.arm_z) m.nodes.emplace_back(x, m.nodes[static_cast<std::size_t>(out.arm_root)].y(), az);
    const Vec3 lying = vec(b.leg.lying), up{0, 1, 0}, outward{0, 0, 1};
    const fem::BeamSection leg = beam_section(b.leg.section, b.leg.material, lying, outward, up);
    const fem::BeamSection arm = beam_section(b.arm_section, b.arm_material, lying, -up, outward);
    for (int i = 0; i + 1 < out.first_arm_node; ++i) m.members.push_back({"leg " + b.name, i, i + 1, leg, lying, false, false});
    out.leg_members = static_cast<int>(m.members.size());
    for (std::size_t i = 0; i < out.arm_z.size(); ++i) {
        const int node = out.first_arm_node + static_cast<int>(i);
        m.members.push_back({"arm " + b.name, i == 0 ? out.arm_root : node - 1, node, arm, lying, false, false});
    }
    out.arm_members = static_cast<int>(m.members.size()) - out.leg_members;
    if (b.has_brace) {
        fem::BeamSection brace = beam_section(b.brace_section, b.brace_material, lying, outward, up);
        brace.c_y = brace.c_z = 0;   // the brace is placed on its centroid: it carries axial force (ID-7)
        brace.I_yz = 0;
        m.members.push_back({"brace " + b.name, out.leg_node(b.brace_from_y), out.arm_node(b.brace_to_z), brace, lying, true, true});
    }
    out.frame = fem::make_frame(m);
    return out;
}

AngleBody angle_body(const Structure& s, const layout::Angle& a, int index)
{
    const layout::Layout& l = *s.layout;
    AngleBody out;
    const auto along = [&](layout::Point p) { return (p.x - a.bar.from.x) * a.bar.along.x + (p.y - a.bar.from.y) * a.bar.along.y; };
    out.stations = {0, a.bar.length()};
    for (const layout::MemberEnd& e : a.ends)
        if (e.tied) out.stations.push_back(along(e.port));
    for (const layout::Stack* f : l.outer_stacks())
        for (const layout::Ply& p : f->plies)
            if (p.part == a.bar.name) out.stations.push_back(along(f->at));
    for (std::size_t k = 0; l.item && k < l.item->feet.size(); ++k)
        for (const ContactPoint& c : foot_contacts(l, l.item->feet[k]))
            if (c.angle == index) out.stations.push_back(along(c.at));
    for (const layout::Bracket& b : l.brackets) {
        for (const ContactPoint& c : leg_contacts(l, b, s.options.leg_station_spacing))
            if (c.angle == index) out.stations.push_back(along(c.at));
    }
    for (layout::Point p : angle_contacts(l, a, s.options.angle_station_spacing)) out.stations.push_back(along(p));
    tidy(out.stations);

    fem::FrameModel m;
    m.name = a.bar.name;
    const double t = a.bar.section.t;
    for (double at : out.stations) {
        const layout::Point heel = a.bar.heel(at);
        m.nodes.emplace_back(heel.x + a.bar.lying.x * t / 2, heel.y + a.bar.lying.y * t / 2, a.bar.face_z + a.bar.standing * t / 2);
    }
    const Vec3 lying = vec(a.bar.lying), standing{0, 0, a.bar.standing}, axis = vec(a.bar.along);
    const fem::BeamSection section = beam_section(a.bar.section, a.bar.material, lying, standing, axis);
    for (int i = 0; i + 1 < static_cast<int>(out.stations.size()); ++i) m.members.push_back({a.bar.name, i, i + 1, section, lying, false, false});
    out.frame = fem::make_frame(m);
    return out;
}

} // namespace

void build_skin(Structure& s, SkinCache& cache)
{
    const layout::Layout& l = *s.layout;
    fem::SkinModel m;
    m.width = l.width;
    m.height = l.height;
    m.mid_z = s.mid_z;
    m.spacing = s.options.grid_spacing;
    m.sheet = {l.skin.material.E, l.skin.material.nu, l.skin.core};
    for (std::size_t i = 0; i < 4; ++i) m.edges[i] = {hold(l.edges[i].kind), l.edges[i].rotational_stiffness.value};
    m.in_plane_fixed = l.in_plane_fixed;
    for (const layout::Rib& r : l.ribs) m.ribs.push_back(rib_model(l, r));
    for (const layout::Opening& o : l.openings) m.openings.push_back({o.name, o.low.x, o.low.y, o.high.x, o.high.y});
    if (s.options.door_frame) put_on_door_frame(l, m);
    const std::string key = skin_key(m);
    if (cache.key != key) {
        // on its own frame the sheet is asked for frequencies only, which take another factor than statics
        cache.skin = std::make_shared<const fem::Skin>(s.options.door_frame ? fem::skin_without_factor(m) : fem::make_skin(m));
        cache.buckling = s.options.door_frame ? nullptr : fem::make_buckling(m);
        cache.large = nullptr;
        cache.key = key;
    }
    s.skin = cache.skin;
}

void build_brackets(Structure& s)
{
    for (const layout::Bracket& b : s.layout->brackets) s.brackets.push_back(bracket_body(s, b));
}

void build_angles(Structure& s)
{
    for (std::size_t i = 0; i < s.layout->angles.size(); ++i) s.angles.push_back(angle_body(s, s.layout->angles[i], static_cast<int>(i)));
}

std::unique_ptr<Structure> build(const layout::Layout& l, const Options& options, SkinCache& cache)
{
    auto s = std::make_unique<Structure>();
    s->layout = &l;
    s->options = options;
    s->mid_z = -l.skin.core / 2;
    build_skin(*s, cache);
    build_brackets(*s);
    build_angles(*s);
    build_plates(*s);
    if (l.item) s->item = fem::make_rigid(l.item->name);
    // The assembly points at the bodies; their containers do not grow any more.
    s->assembly.bodies.push_back(&s->skin->body);
    for (BracketBody& b : s->brackets) {
        b.body = static_cast<int>(s->assembly.bodies.size());
        s->assembly.bodies.push_back(&b.frame.body);
    }
    for (AngleBody& a : s->angles) {
        a.body = static_cast<int>(s->assembly.bodies.size());
        s->assembly.bodies.push_back(&a.frame.body);
    }
    for (PlateBody& p : s->plates) {
        p.body = static_cast<int>(s->assembly.bodies.size());
        s->assembly.bodies.push_back(&p.plate.sheet.body);
    }
    if (s->item) {
        s->item_body = static_cast<int>(s->assembly.bodies.size());
        s->assembly.bodies.push_back(&*s->item);
    }
    build_joints(*s);
    build_loads(*s);
    return s;
}

} // namespace thinskin::idealise
