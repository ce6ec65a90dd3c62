#include "idealise/structure.h"

#include <algorithm>
#include <cmath>

namespace thinskin::idealise {

namespace {

using fem::Joint;
using fem::Law;
using fem::Vec3;

const Vec3 axes[] = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};

int put(Structure& s, Joint j)
{
    s.assembly.joints.push_back(std::move(j));
    return static_cast<int>(s.assembly.joints.size()) - 1;
}

/// A point of the outer part at the skin: of a bracket's leg, or of the item (bracket = -1).
fem::PortRef leg_port(const Structure& s, int bracket, layout::Point p, int direction)
{
    if (bracket < 0) return {s.item_body, fem::rigid_port({p.x, p.y, s.mid_z}, axes[direction])};
    const BracketBody& b = s.brackets[static_cast<std::size_t>(bracket)];
    return {b.body, fem::frame_port(b.frame, b.leg_node(p.y), {p.x, p.y, s.mid_z}, axes[direction])};
}

double along(const layout::AngleBar& bar, layout::Point p) { return (p.x - bar.from.x) * bar.along.x + (p.y - bar.from.y) * bar.along.y; }

fem::PortRef angle_port(const Structure& s, int angle, layout::Point p, int direction)
{
    const AngleBody& a = s.angles[static_cast<std::size_t>(angle)];
    const layout::AngleBar& bar = s.layout->angles[static_cast<std::size_t>(angle)].bar;
    return {a.body, fem::frame_port(a.frame, a.node(along(bar, p)), {p.x, p.y, s.mid_z}, axes[direction])};
}

/// Lying leg between heel and bolt as a cantilever strip, its width spread by 45 degrees to both sides (ID-2).
double lying_leg_compliance(const layout::AngleBar& bar, layout::Point p, double washer)
{
    const double gauge = std::abs((p.x - bar.from.x) * bar.lying.x + (p.y - bar.from.y) * bar.lying.y + bar.gauge);
    const double lever = std::max(gauge - bar.section.t / 2, 1.0), width = washer + 2 * lever;
    const double inertia = width * std::pow(bar.section.t, 3) / 12;
    return std::pow(lever, 3) / (3 * bar.material.E * inertia);
}

int angle_of(const Structure& s, const layout::Stack& f)
{
    for (const layout::Ply& p : f.plies)
        for (std::size_t i = 0; i < s.layout->angles.size(); ++i)
            if (p.role == layout::Ply::Role::angle && s.layout->angles[i].bar.name == p.part) return static_cast<int>(i);
    return -1;
}

int plate_of(const Structure& s, const layout::Stack& f)
{
    for (std::size_t i = 0; i < s.layout->plates.size(); ++i)
        if (s.layout->plates[i].holds(f.at)) return static_cast<int>(i);
    return -1;
}

const layout::Ply& ply(const layout::Stack& f, layout::Ply::Role role)
{
    return *std::find_if(f.plies.begin(), f.plies.end(), [&](const layout::Ply& p) { return p.role == role; });
}

void bolt(Structure& s, int bracket, int fastener)
{
    BoltJoints j;
    j.bracket = bracket;
    j.fastener = fastener;
    const layout::Stack& f = stack_of(s, j);
    j.angle = angle_of(s, f);
    j.plate = plate_of(s, f);
    const bool head_outside = &outer_ply(f) == &f.plies.front();
    const double skin_washer = half_side(outer_diameter(f, head_outside)), hole = half_side(f.hardware.hole);
    const double leg_flex = bracket < 0 ? tie_compliance : lying_leg_compliance(s.layout->brackets[static_cast<std::size_t>(bracket)].leg, f.at, outer_diameter(f, !head_outside));
    if (j.angle >= 0) {
        const layout::AngleBar& bar = s.layout->angles[static_cast<std::size_t>(j.angle)].bar;
        const double flex = leg_flex + lying_leg_compliance(bar, f.at, outer_diameter(f, head_outside));
        j.axial = put(s, {f.name + " axial", leg_port(s, bracket, f.at, 2), angle_port(s, j.angle, f.at, 2), Law::strap, flex, 0, false});
        j.skin_tie = put(s, {f.name + " skin", skin_port(s, f.at, skin_washer, 2), angle_port(s, j.angle, f.at, 2), Law::tie, tie_compliance, 0, true});
    } else if (j.plate >= 0) {
        const fem::PortRef plate = plate_port(s, j.plate, f.at, skin_washer, 2);
        j.axial = put(s, {f.name + " axial", leg_port(s, bracket, f.at, 2), plate, Law::strap, leg_flex, 0, false});
        j.skin_tie = put(s, {f.name + " skin", skin_port(s, f.at, skin_washer, 2), plate, Law::tie, tie_compliance, 0, true});
    } else {
        j.axial = put(s, {f.name + " axial", leg_port(s, bracket, f.at, 2), skin_port(s, f.at, skin_washer, 2), Law::strap, leg_flex, 0, true});
    }
    const double c_skin = slip_compliance(f.hardware) + bearing_compliance(outer_ply(f), ply(f, layout::Ply::Role::skin));
    j.leg_skin_x = put(s, {f.name + " skin x", leg_port(s, bracket, f.at, 0), skin_port(s, f.at, hole, 0), Law::tie, c_skin, 0, false});
    j.leg_skin_y = put(s, {f.name + " skin y", leg_port(s, bracket, f.at, 1), skin_port(s, f.at, hole, 1), Law::tie, c_skin, 0, false});
    if (j.angle >= 0 || j.plate >= 0) {
        const auto role = j.angle >= 0 ? layout::Ply::Role::angle : layout::Ply::Role::plate;
        const double c = slip_compliance(f.hardware) + bearing_compliance(outer_ply(f), ply(f, role));
        const auto behind = [&](int d) { return j.angle >= 0 ? angle_port(s, j.angle, f.at, d) : plate_port(s, j.plate, f.at, hole, d); };
        const std::string what = j.angle >= 0 ? " angle " : " plate ";
        j.leg_behind_x = put(s, {f.name + what + "x", leg_port(s, bracket, f.at, 0), behind(0), Law::tie, c, 0, false});
        j.leg_behind_y = put(s, {f.name + what + "y", leg_port(s, bracket, f.at, 1), behind(1), Law::tie, c, 0, false});
    }
    s.bolts.push_back(j);
}

/// A leg (or a foot of the item, bracket = -1) on what is behind it.
void outer_contact(Structure& s, int bracket, int foot, const ContactPoint& p)
{
    constexpr double pad = 5;
    using Kind = ContactJoint::Kind;
    const Kind kind = p.angle >= 0 ? Kind::leg_angle : p.plate >= 0 ? Kind::leg_plate : Kind::leg_skin;
    const fem::PortRef behind = p.angle >= 0 ? angle_port(s, p.angle, p.at, 2) : p.plate >= 0 ? plate_port(s, p.plate, p.at, 0, 2) : skin_port(s, p.at, pad, 2);
    const int joint = put(s, {"contact", leg_port(s, bracket, p.at, 2), behind, Law::contact, s.options.contact_compliance, 0, kind == Kind::leg_skin});
    s.contacts.push_back({kind, bracket, p.angle, joint, p.at, foot, p.plate, ""});
}

void contacts(Structure& s)
{
    const double c = s.options.contact_compliance, pad = 5;
    for (std::size_t i = 0; i < s.layout->brackets.size(); ++i)
        for (const ContactPoint& p : leg_contacts(*s.layout, s.layout->brackets[i], s.options.leg_station_spacing)) outer_contact(s, static_cast<int>(i), -1, p);
    for (std::size_t k = 0; s.item && k < s.layout->item->feet.size(); ++k)
        for (const ContactPoint& p : foot_contacts(*s.layout, s.layout->item->feet[k])) outer_contact(s, -1, static_cast<int>(k), p);
    for (std::size_t i = 0; i < s.layout->angles.size(); ++i)
        for (layout::Point p : angle_contacts(*s.layout, s.layout->angles[i], s.options.angle_station_spacing)) {
            const int a = static_cast<int>(i);
            const int joint = put(s, {"contact", skin_port(s, p, pad, 2), angle_port(s, a, p, 2), Law::contact, c, 0, true});
            s.contacts.push_back({ContactJoint::Kind::angle_skin, -1, a, joint, p, -1, -1, ""});
        }
}

fem::Row difference(const fem::Row& a, const fem::Row& b, double over)
{
    fem::Row out;
    for (const auto& [dof, c] : a) out.emplace_back(dof, c / over);
    for (const auto& [dof, c] : b) out.emplace_back(dof, -c / over);
    return out;
}

/// Rotation of an angle's end: z displacements at two points of its rigid section, apart by `step` along a direction.
fem::PortRef rotation_port(const Structure& s, int angle, layout::Point p, layout::Point direction)
{
    const AngleBody& a = s.angles[static_cast<std::size_t>(angle)];
    const int node = a.node(along(s.layout->angles[static_cast<std::size_t>(angle)].bar, p));
    const double step = 10;
    const fem::Row far = fem::frame_port(a.frame, node, {p.x + step * direction.x, p.y + step * direction.y, s.mid_z}, axes[2]);
    const fem::Row here = fem::frame_port(a.frame, node, {p.x, p.y, s.mid_z}, axes[2]);
    return {a.body, difference(far, here, step)};
}

fem::PortRef end_port(const Structure& s, int angle, layout::Point p, const Vec3& direction)
{
    const AngleBody& a = s.angles[static_cast<std::size_t>(angle)];
    const layout::AngleBar& bar = s.layout->angles[static_cast<std::size_t>(angle)].bar;
    return {a.body, fem::frame_port(a.frame, a.node(along(bar, p)), {p.x, p.y, s.mid_z}, direction)};
}

/// Its turning along the edge; across the edge it counts as rigid.
fem::PortRef frame_rotation(const Structure& s, const layout::MemberEnd& end, layout::Point direction)
{
    if (!s.options.door_frame) return {};
    const double step = 10;
    const layout::Point far{end.port.x + step * direction.x, end.port.y + step * direction.y};
    return {s.skin_body, difference(frame_port(s, end.side, far, axes[2]).row, frame_port(s, end.side, end.port, axes[2]).row, step)};
}

/// Half the difference of hole and bolt, the least of the end's fasteners; none when one is fitted.
double play(const layout::MemberEnd& end)
{
    double least = end.fasteners.empty() ? 0 : 1e9;
    for (const layout::Stack& f : end.fasteners) least = std::min(least, f.hardware.fitted ? 0.0 : f.hardware.play);
    return least;
}

EndJoints end_joints(Structure& s, int angle, int index)
{
    const layout::Angle& a = s.layout->angles[static_cast<std::size_t>(angle)];
    const layout::MemberEnd& end = a.ends[static_cast<std::size_t>(index)];
    const std::string name = a.bar.name + " " + end.side;
    const Vec3 lengthwise{a.bar.along.x, a.bar.along.y, 0}, crosswise{a.bar.lying.x, a.bar.lying.y, 0};
    // In the plane the end's fasteners bear in the frame's inner sheet; out of it they pull or press.
    const double bearing = end.fasteners.empty() || end.fasteners[0].plies.size() < 2 ? tie_compliance : bearing_compliance(end.fasteners[0].plies[0], end.fasteners[0].plies[1]);
    EndJoints j;
    j.angle = angle;
    j.end = index;
    const fem::PortRef lengthwise_port = end_port(s, angle, end.port, lengthwise), ground_along = frame_port(s, end.side, end.port, lengthwise);
    // A rail that no bolt goes through would lie loose in its play: one end holds it.
    const bool loose = std::none_of(s.bolts.begin(), s.bolts.end(), [&](const BoltJoints& b) { return b.angle == angle; });
    const double gap = loose && index == 0 ? 0.0 : play(end);
    if (gap > 0) {
        j.along_pull = put(s, {name + " along, pull", lengthwise_port, ground_along, Law::strap, bearing, gap, false});
        j.along_push = put(s, {name + " along, push", lengthwise_port, ground_along, Law::contact, bearing, gap, false});
    } else {
        j.along_pull = put(s, {name + " along", lengthwise_port, ground_along, Law::tie, bearing, 0, false});
    }
    j.across = put(s, {name + " across", end_port(s, angle, end.port, crosswise), frame_port(s, end.side, end.port, crosswise), Law::tie, bearing, 0, false});
    j.z = put(s, {name + " z", angle_port(s, angle, end.port, 2), frame_port(s, end.side, end.port, axes[2]), Law::tie, tie_compliance, 0, false});
    const double at = along(a.bar, end.port), bears = s.options.contact_compliance;
    j.heel = put(s, {name + " heel on frame", angle_port(s, angle, a.bar.heel(at), 2), frame_port(s, end.side, a.bar.heel(at), axes[2]), Law::contact, bears, 0, false});
    j.toe = put(s, {name + " toe on frame", angle_port(s, angle, a.bar.toe(at), 2), frame_port(s, end.side, a.bar.toe(at), axes[2]), Law::contact, bears, 0, false});
    if (end.torsion_held) j.torsion = put(s, {name + " torsion", rotation_port(s, angle, end.port, a.bar.lying), frame_rotation(s, end, a.bar.lying), Law::tie, 1e-9, 0, false});
    if (end.rotational_stiffness && *end.rotational_stiffness > 0)
        j.rotation = put(s, {name + " rotation", rotation_port(s, angle, end.port, a.bar.along), frame_rotation(s, end, a.bar.along), Law::tie, 1 / *end.rotational_stiffness, 0, false});
    return j;
}

void ends(Structure& s)
{
    for (std::size_t i = 0; i < s.layout->angles.size(); ++i)
        for (int e = 0; e < 2; ++e)
            if (s.layout->angles[i].ends[static_cast<std::size_t>(e)].tied) s.ends.push_back(end_joints(s, static_cast<int>(i), e));
}

void mounts(Structure& s)
{
    for (std::size_t i = 0; i < s.layout->brackets.size(); ++i)
        for (std::size_t k = 0; k < s.layout->brackets[i].mounts.size(); ++k) {
            const layout::Mount& m = s.layout->brackets[i].mounts[k];
            const BracketBody& b = s.brackets[i];
            const Vec3 at{m.at[0], m.at[1], m.at[2]};
            MountJoints j;
            j.bracket = static_cast<int>(i);
            j.mount = static_cast<int>(k);
            const double c = m.rigid ? tie_compliance : 1 / m.stiffness;
            int* index[] = {&j.x, &j.y, &j.z};
            for (int d = 0; d < 3; ++d)
                *index[d] = put(s, {m.name, {s.item_body, fem::rigid_port(at, axes[d])}, {b.body, fem::frame_port(b.frame, b.arm_node(m.along), at, axes[d])}, Law::tie, c, 0, false});
            s.mounts.push_back(j);
        }
}

} // namespace

const layout::Stack& stack_of(const Structure& s, const BoltJoints& j)
{
    const auto k = static_cast<std::size_t>(j.fastener);
    return j.bracket < 0 ? s.layout->item->feet[k].stack : s.layout->brackets[static_cast<std::size_t>(j.bracket)].fasteners[k];
}

const std::string& outer_part(const Structure& s, const BoltJoints& j) { return j.bracket < 0 ? s.layout->item->name : s.layout->brackets[static_cast<std::size_t>(j.bracket)].name; }

const std::string& part_behind(const Structure& s, const BoltJoints& j)
{
    static const std::string none;
    return j.angle >= 0 ? s.layout->angles[static_cast<std::size_t>(j.angle)].bar.name : j.plate >= 0 ? s.layout->plates[static_cast<std::size_t>(j.plate)].name : none;
}

const layout::Ply& outer_ply(const layout::Stack& f)
{
    return *std::find_if(f.plies.begin(), f.plies.end(), [](const layout::Ply& p) { return p.role == layout::Ply::Role::leg || p.role == layout::Ply::Role::foot; });
}

void build_joints(Structure& s)
{
    for (std::size_t i = 0; i < s.layout->brackets.size(); ++i)
        for (std::size_t f = 0; f < s.layout->brackets[i].fasteners.size(); ++f) bolt(s, static_cast<int>(i), static_cast<int>(f));
    for (std::size_t k = 0; s.item && k < s.layout->item->feet.size(); ++k) bolt(s, -1, static_cast<int>(k));
    contacts(s);
    ends(s);
    if (s.item) mounts(s);
    build_straps(s);
    build_plate_joints(s);
}

} // namespace thinskin::idealise
