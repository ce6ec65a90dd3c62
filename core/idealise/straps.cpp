#include "idealise/response.h"

#include <fmt/core.h>

/// ID-11: a strap pulls only, once its slack is used up, along the line between its ends; E A / L gives way. Its weight is left out.
namespace thinskin::idealise {

namespace {

using fem::Vec3;

Vec3 vec(const layout::Vec3& v) { return {v[0], v[1], v[2]}; }

fem::PortRef port(const Structure& s, const layout::StrapEnd& end, const Vec3& direction)
{
    const Vec3 at = vec(end.at);
    if (end.to == model::MemberEnd::To::item) return {s.item_body, fem::rigid_port(at, direction)};
    if (end.to != model::MemberEnd::To::bracket || end.bracket < 0) return {};
    const BracketBody& b = s.brackets[static_cast<std::size_t>(end.bracket)];
    return {b.body, fem::frame_port(b.frame, end.on_arm ? b.arm_node(at.z()) : b.leg_node(at.y()), at, direction)};
}

} // namespace

void build_straps(Structure& s)
{
    for (std::size_t i = 0; i < s.layout->straps.size(); ++i) {
        const layout::Strap& strap = s.layout->straps[i];
        if (!strap.acts()) continue;
        // The ground stands second in a joint: turn the strap round when it starts there.
        const std::size_t a = strap.ends[0].to == model::MemberEnd::To::frame ? 1 : 0;
        const Vec3 away = (vec(strap.ends[a].at) - vec(strap.ends[1 - a].at)).normalized();
        const double compliance = strap.length() / (strap.material.E * strap.section.A);
        s.assembly.joints.push_back({strap.name, port(s, strap.ends[a], away), port(s, strap.ends[1 - a], away), fem::Law::strap, compliance, strap.slack, false});
        s.straps.push_back({static_cast<int>(i), static_cast<int>(s.assembly.joints.size()) - 1});
    }
}

std::vector<results::EndForce> strap_ends(const Structure& s, const std::vector<results::MemberForce>& members)
{
    std::vector<results::EndForce> out;
    for (const StrapJoint& j : s.straps) {
        const layout::Strap& strap = s.layout->straps[static_cast<std::size_t>(j.strap)];
        for (const results::MemberForce& m : members) {
            if (m.name != strap.name) continue;
            for (std::size_t e = 0; e < 2; ++e) {
                const layout::StrapEnd& end = strap.ends[e];
                const Vec3 pull = m.axial_N * (vec(strap.ends[1 - e].at) - vec(end.at)).normalized();
                results::EndForce f;
                f.name = strap.name;
                f.end = end.side;
                f.load_case = m.load_case;
                f.force_N = {pull.x(), pull.y(), pull.z()};
                f.spread_N = f.hand_N = pull.z();
                f.stands = m.stands;
                f.why_not = m.why_not;
                const bool frame = end.to == model::MemberEnd::To::frame;
                for (const layout::Stack& stack : end.fasteners) {
                    results::FastenerForce one;
                    one.name = stack.name;
                    one.part = strap.name;
                    one.load_case = f.load_case;
                    // On the frame the pull off the panel is tension, the rest shear; on bracket or item the strap lies along its own line.
                    one.tension_N = one.own_pull_N = frame && pull.z() > 0 ? pull.z() : 0.0;
                    one.row_shear_N = frame ? std::hypot(pull.x(), pull.y()) : m.axial_N;
                    one.shear_x_N = frame ? pull.x() : 0.0;
                    one.shear_y_N = frame ? pull.y() : 0.0;
                    one.shear_rule = "one fastener of the end carries all";
                    one.stands = f.stands;
                    one.why_not = f.why_not;
                    f.fasteners.push_back(one);
                }
                out.push_back(f);
            }
        }
    }
    return out;
}

} // namespace thinskin::idealise
