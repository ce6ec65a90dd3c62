#include "idealise/response.h"

#include <cmath>

namespace thinskin::idealise {

namespace {

using fem::Vec3;

double force(const fem::JointState& state, int joint) { return joint < 0 ? 0.0 : state.lambda(joint); }

/// A bolt that a contact point belongs to: same bracket, same part behind, nearest; a foot: its own.
int owner(const Structure& s, const ContactJoint& c)
{
    int best = -1;
    double distance = INFINITY;
    for (std::size_t i = 0; i < s.bolts.size(); ++i) {
        const BoltJoints& b = s.bolts[i];
        if (b.bracket != c.bracket || (c.foot >= 0 ? b.fastener != c.foot : b.angle != c.angle || b.plate != c.plate)) continue;
        const layout::Point p = stack_of(s, b).at;
        const double d = std::hypot(p.x - c.at.x, p.y - c.at.y);
        if (d < distance) {
            distance = d;
            best = static_cast<int>(i);
        }
    }
    return best;
}

/// The bolt through a plate that a contact point of plate and skin lies nearest to.
int nearest_on_plate(const Structure& s, const ContactJoint& c)
{
    int best = -1;
    double distance = INFINITY;
    for (std::size_t i = 0; i < s.bolts.size(); ++i) {
        if (s.bolts[i].plate != c.plate) continue;
        const layout::Point p = stack_of(s, s.bolts[i]).at;
        if (const double d = std::hypot(p.x - c.at.x, p.y - c.at.y); d < distance) distance = d, best = static_cast<int>(i);
    }
    return best;
}

void bolts(const Structure& s, const fem::JointState& state, Picture& out)
{
    for (const BoltJoints& j : s.bolts) {
        Picture::Bolt b;
        b.tension = force(state, j.axial);
        b.skin_x = force(state, j.leg_skin_x);
        b.skin_y = force(state, j.leg_skin_y);
        b.behind_x = force(state, j.leg_behind_x);
        b.behind_y = force(state, j.leg_behind_y);
        b.skin_share = -force(state, j.skin_tie);
        out.bolts.push_back(b);
    }
    for (const ContactJoint& c : s.contacts)
        if (const int i = c.bracket < 0 && c.foot < 0 ? -1 : owner(s, c); i >= 0) out.bolts[static_cast<std::size_t>(i)].contact_beside -= state.lambda(c.joint);
    for (const ContactJoint& c : s.contacts)
        if (const int i = c.kind == ContactJoint::Kind::plate_skin ? nearest_on_plate(s, c) : -1; i >= 0) out.bolts[static_cast<std::size_t>(i)].skin_share -= state.lambda(c.joint);
    for (std::size_t i = 0; i < s.bolts.size(); ++i)
        if (s.bolts[i].angle < 0 && s.bolts[i].plate < 0) out.bolts[i].skin_share = out.bolts[i].tension - out.bolts[i].contact_beside;
}


/// Largest normal stress over the section's outer corners, moments about the centroid:
///   sigma = N/A + a y + b z,  a I_yz + b I_y = M_y,  a I_z + b I_yz = -M_z
double stress(const fem::BeamSection& b, const catalogue::Section& s, double side, double N, double M_y, double M_z)
{
    const double det = b.I_z * b.I_y - b.I_yz * b.I_yz;
    const double slope_y = (-M_z * b.I_y - M_y * b.I_yz) / det, slope_z = (M_y * b.I_z + M_z * b.I_yz) / det;
    double worst = 0;
    for (const auto& corner : s.corners) base::keep_largest(worst, std::abs(N / b.A + slope_y * (corner[0] - s.x_c) + slope_z * side * (corner[1] - s.y_c)));
    return worst;
}

struct Walk { const fem::Frame* frame; const fem::Vector* u; int first, count; std::string name; const catalogue::Section* section; double side; };

/// Internal forces at both ends of every member of a bar; keeps the station of the largest stress, with the largest torque wherever it is.
Picture::Member worst_station(const Walk& w)
{
    Picture::Member worst;
    worst.name = w.name;
    worst.stress = -1;
    double at = 0, torque = 0;
    for (int m = w.first; m < w.first + w.count; ++m) {
        const auto& member = w.frame->model.members[static_cast<std::size_t>(m)];
        const auto f = fem::member_forces(*w.frame, m, *w.u);
        const double length = (w.frame->model.nodes[static_cast<std::size_t>(member.b)] - w.frame->model.nodes[static_cast<std::size_t>(member.a)]).norm();
        for (int end = 0; end < 2; ++end) {
            const double sign = end == 0 ? -1 : 1;
            const auto q = f.segment<6>(6 * end) * sign;
            const double N = q(0), M_y = q(4) - N * member.section.c_z, M_z = q(5) + N * member.section.c_y;
            const double sigma = stress(member.section, *w.section, w.side, N, M_y, M_z);
            if (sigma > worst.stress) worst = {w.name, at + end * length, N, std::hypot(q(1), q(2)), M_y, M_z, 0, sigma};
        }
        base::keep_largest(torque, std::abs(f(9)));
        at += length;
    }
    worst.T = torque;
    return worst;
}

double side_of(const Vec3& axis, const Vec3& lying, const Vec3& standing) { return axis.cross(lying).dot(standing) > 0 ? 1.0 : -1.0; }

void put_member(Picture& out, const Walk& w) { out.members.push_back(worst_station(w)); }

/// What a part hands to its neighbour at a joint, in panel axes, from its end forces in local axes.
Picture::Joint joint_force(const std::string& name, const std::string& part, const fem::Frame& frame, int member, const fem::Vector& u, bool at_a)
{
    const auto& m = frame.model.members[static_cast<std::size_t>(member)];
    const Vec3 x = (frame.model.nodes[static_cast<std::size_t>(m.b)] - frame.model.nodes[static_cast<std::size_t>(m.a)]).normalized();
    const Vec3 y = (m.local_y - m.local_y.dot(x) * x).normalized(), z = x.cross(y);
    const auto f = fem::member_forces(frame, member, u);
    const int o = at_a ? 0 : 6;
    return {name, part, -(f(o) * x + f(o + 1) * y + f(o + 2) * z), -(f(o + 3) * x + f(o + 4) * y + f(o + 5) * z)};
}

void bracket_members(const Structure& s, std::size_t i, const fem::Vector& u, Picture& out)
{
    const layout::Bracket& b = s.layout->brackets[i];
    const BracketBody& body = s.brackets[i];
    const Vec3 lying{b.leg.lying.x, b.leg.lying.y, 0}, up{0, 1, 0}, outward{0, 0, 1};
    put_member(out, {&body.frame, &u, 0, body.leg_members, "leg " + b.name, &b.leg.section, side_of(up, lying, outward)});
    put_member(out, {&body.frame, &u, body.leg_members, body.arm_members, "arm " + b.name, &b.arm_section, side_of(outward, lying, -up)});
    const int brace = body.leg_members + body.arm_members;
    out.joints.push_back(joint_force("arm to leg", b.name, body.frame, body.leg_members, u, true));
    if (!b.has_brace) return;
    put_member(out, {&body.frame, &u, brace, 1, "brace " + b.name, &b.brace_section, 1});
    out.joints.push_back(joint_force("brace to leg", b.name, body.frame, brace, u, true));
    out.joints.push_back(joint_force("brace to arm", b.name, body.frame, brace, u, false));
}

} // namespace

Picture picture(const Structure& s, const Solution& sol, const Run& run, std::size_t variant)
{
    Picture out;
    const fem::JointState& state = run.state(variant);
    bolts(s, state, out);
    for (const EndJoints& e : s.ends) {
        const layout::AngleBar& bar = s.layout->angles[static_cast<std::size_t>(e.angle)].bar;
        const double lengthwise = force(state, e.along_pull) + force(state, e.along_push), crosswise = force(state, e.across);
        const double fixing = force(state, e.z), net = fixing + force(state, e.heel) + force(state, e.toe);
        out.ends.push_back({{lengthwise * bar.along.x + crosswise * bar.lying.x, lengthwise * bar.along.y + crosswise * bar.lying.y, net}, fixing, force(state, e.torsion), force(state, e.rotation)});
    }
    for (const MountJoints& m : s.mounts) out.mounts.emplace_back(force(state, m.x), force(state, m.y), force(state, m.z));
    for (std::size_t i = 0; i < s.brackets.size(); ++i)
        bracket_members(s, i, fem::recover(s.assembly, s.brackets[i].body, s.loads, run.factors, sol.free, state).u, out);
    for (std::size_t i = 0; i < s.angles.size(); ++i) {
        const layout::AngleBar& bar = s.layout->angles[i].bar;
        const fem::Vector u = fem::recover(s.assembly, s.angles[i].body, s.loads, run.factors, sol.free, state).u;
        const Vec3 lying{bar.lying.x, bar.lying.y, 0}, along{bar.along.x, bar.along.y, 0};
        put_member(out, {&s.angles[i].frame, &u, 0, static_cast<int>(s.angles[i].frame.model.members.size()), bar.name, &bar.section, side_of(along, lying, {0, 0, bar.standing})});
    }
    for (std::size_t i = 0; i < s.plates.size(); ++i)
        out.members.push_back(plate_member(s, i, fem::recover(s.assembly, s.plates[i].body, s.loads, run.factors, sol.free, state).u));
    for (const PlateJoints& j : s.plate_fasteners) out.plate_fasteners.emplace_back(force(state, j.x), force(state, j.y), force(state, j.z));
    for (const StrapJoint& j : s.straps) {
        const layout::Strap& strap = s.layout->straps[static_cast<std::size_t>(j.strap)];
        const double pull = force(state, j.joint);
        out.members.push_back({strap.name, 0, pull, 0, 0, 0, 0, pull / strap.section.A});
    }
    return out;
}

} // namespace thinskin::idealise
