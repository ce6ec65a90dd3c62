#include "idealise/response.h"

#include <cmath>

namespace thinskin::idealise {

namespace {

double weight_on(const Structure& s, const Run& run, int body)
{
    Eigen::Vector3d sum = Eigen::Vector3d::Zero();
    for (std::size_t k = 0; k < s.loads.size(); ++k) {
        const fem::Vector& f = s.loads[k].on_body[static_cast<std::size_t>(body)];
        if (f.size() == 0) continue;
        const fem::Body& b = *s.assembly.bodies[static_cast<std::size_t>(body)];
        const fem::Vector r = b.rigid ? f : fem::Vector(b.rigid_modes.transpose() * f);
        sum += run.factors(static_cast<Eigen::Index>(k)) * r.head<3>();
    }
    return sum.norm();
}

std::string holder(const Structure& s, const BoltJoints& j) { return j.bracket < 0 ? "feet of " + outer_part(s, j) : "bracket " + outer_part(s, j); }

std::string fastener(const Structure& s, const BoltJoints& j)
{
    using Type = layout::Hardware::Type;
    const layout::Stack& stack = stack_of(s, j);
    switch (stack.hardware.type) {
        case Type::bolt: return "bolt " + stack.name;
        case Type::screw: return "screw " + stack.name;
        case Type::rivet: return "rivet " + stack.name;
        case Type::insert: return "insert " + stack.name;
    }
    return stack.name;
}

/// What the panel itself hangs on.
std::string carrier(const Structure& s) { return s.layout->door ? "hinges and latch" : "body of the vehicle"; }

std::string hung_on(const Structure& s, const layout::StrapEnd& end)
{
    if (end.to == model::MemberEnd::To::frame) return "frame at the " + end.side;
    return end.bracket >= 0 ? "bracket " + s.layout->brackets[static_cast<std::size_t>(end.bracket)].name : s.layout->item->name;
}

/// A strap pulls both of its ends together; listed from the end it holds up to the end it hangs on.
void strap_path(const Structure& s, const Picture& p, std::vector<results::PathStep>& out)
{
    for (const StrapJoint& j : s.straps) {
        const layout::Strap& strap = s.layout->straps[static_cast<std::size_t>(j.strap)];
        const std::size_t top = strap.ends[0].to == model::MemberEnd::To::frame ? 0 : 1;
        for (const Picture::Member& m : p.members)
            if (m.name == strap.name) out.push_back({hung_on(s, strap.ends[1 - top]), strap.name + " to " + hung_on(s, strap.ends[top]) + ", pull", m.N});
    }
}

void in_plane_path(const Structure& s, const Run& run, const Picture& p, std::vector<results::PathStep>& out)
{
    if (s.item_body >= 0) out.push_back({s.layout->item->name, s.brackets.empty() ? "its feet, weight and inertia" : "the arms, weight and inertia", weight_on(s, run, s.item_body)});
    double skin_x = 0, skin_y = 0;
    for (std::size_t i = 0; i < s.bolts.size(); ++i) {
        const std::string from = holder(s, s.bolts[i]), &bolt = stack_of(s, s.bolts[i]).name;
        skin_x += p.bolts[i].skin_x;
        skin_y += p.bolts[i].skin_y;
        out.push_back({from, "skin in its plane, bearing at " + bolt, std::hypot(p.bolts[i].skin_x, p.bolts[i].skin_y)});
        if (const std::string& behind = part_behind(s, s.bolts[i]); !behind.empty())
            out.push_back({from, behind + " across, bearing at " + bolt, std::hypot(p.bolts[i].behind_x, p.bolts[i].behind_y)});
    }
    out.push_back({"skin in its plane", "hem and frame, shear and normal flow of all edges", std::hypot(skin_x, skin_y)});
    out.push_back({"frame", carrier(s), std::hypot(skin_x, skin_y)});
}

void pull_path(const Structure& s, const Picture& p, std::vector<results::PathStep>& out)
{
    for (std::size_t i = 0; i < s.bolts.size(); ++i) {
        const std::string from = holder(s, s.bolts[i]), &bolt = stack_of(s, s.bolts[i]).name, held = fastener(s, s.bolts[i]);
        out.push_back({from, held + ", pull", p.bolts[i].tension});
        if (p.bolts[i].contact_beside > 0) out.push_back({from, "contact beside " + bolt + ", push", p.bolts[i].contact_beside});
        if (const std::string& behind = part_behind(s, s.bolts[i]); !behind.empty())
            out.push_back({held, behind + ", net pull", p.bolts[i].tension - p.bolts[i].contact_beside});
        out.push_back({s.bolts[i].plate < 0 ? held : part_behind(s, s.bolts[i]) + " at " + bolt, "skin in bending", p.bolts[i].skin_share});
    }
    for (std::size_t i = 0; i < s.ends.size(); ++i) {
        const layout::Angle& a = s.layout->angles[static_cast<std::size_t>(s.ends[i].angle)];
        const std::string side = a.ends[static_cast<std::size_t>(s.ends[i].end)].side;
        out.push_back({a.bar.name, "frame at its " + side + " end, out of the panel", p.ends[i].force.z()});
        out.push_back({a.bar.name, "frame at its " + side + " end, in the panel", std::hypot(p.ends[i].force.x(), p.ends[i].force.y())});
    }
}

void plate_path(const Structure& s, const Picture& p, std::vector<results::PathStep>& out)
{
    for (std::size_t i = 0; i < s.plate_fasteners.size(); ++i) {
        const layout::Plate& plate = s.layout->plates[static_cast<std::size_t>(s.plate_fasteners[i].plate)];
        const layout::PlateFastener& f = plate.fasteners[static_cast<std::size_t>(s.plate_fasteners[i].fastener)];
        const fem::Vec3& q = p.plate_fasteners[i];
        const std::string to = f.side.empty() ? "skin" : "frame at the " + f.side;
        out.push_back({plate.name, to + " by " + f.stack.name + ", pull", q.z()});
        out.push_back({plate.name, to + " by " + f.stack.name + ", shear", std::hypot(q.x(), q.y())});
    }
}

} // namespace

std::vector<results::PathStep> load_path(const Structure& s, const Solution& sol, const Run& run)
{
    std::vector<results::PathStep> out;
    if (s.bolts.empty()) return out;
    const Picture p = picture(s, sol, run, 0);
    in_plane_path(s, run, p, out);
    pull_path(s, p, out);
    plate_path(s, p, out);
    strap_path(s, p, out);
    return out;
}

} // namespace thinskin::idealise
