#include "idealise/response.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::idealise {

namespace {

double along(int side, layout::Point p) { return side < 2 ? p.y : p.x; }

/// Where a frame member is taken as held out of the panel: its corners, the hinges and the latches on its side (ID-8).
std::vector<double> held_at(const layout::Layout& l, int side)
{
    std::vector<double> out{0, side < 2 ? l.height : l.width};
    if (!l.door) return out;
    const bool hinge_side = l.door->has_hinges && side == (l.door->hinges_right ? 1 : 0);
    if (hinge_side) out.insert(out.end(), l.door->hinge_heights.begin(), l.door->hinge_heights.end());
    for (layout::Point p : l.door->latches) {
        const double distance[] = {p.x, l.width - p.x, p.y, l.height - p.y};
        if (std::min_element(distance, distance + 4) - distance == side) out.push_back(along(side, p));
    }
    std::sort(out.begin(), out.end());
    return out;
}

struct Load { double at, force; bool stands; std::string why; };

/// A straight beam over rigid supports; bending stiffness cancels. Exact for point loads on nodes.
struct Beam { std::vector<double> at; fem::Frame frame; };

Beam continuous_beam(const std::vector<double>& held, const std::vector<Load>& loads)
{
    Beam b;
    b.at = held;
    for (const Load& q : loads) b.at.push_back(q.at);
    std::sort(b.at.begin(), b.at.end());
    b.at.erase(std::unique(b.at.begin(), b.at.end(), [](double x, double y) { return y - x < 0.5; }), b.at.end());
    fem::FrameModel m;
    m.name = "frame member";
    for (double y : b.at) m.nodes.emplace_back(0, y, 0);
    const fem::BeamSection unit{1e3, 1e3, 1e3, 1e3, 1e3, 0, 1e3, 0, 0};
    for (int i = 0; i < static_cast<int>(b.at.size()); ++i) {
        if (i > 0) m.members.push_back({"frame member", i - 1, i, unit, {1, 0, 0}, false, false});
        for (int d : {0, 1, 4, 5}) m.supports.emplace_back(i, d);          // only z and rotation about x are free
        const bool on_support = std::any_of(held.begin(), held.end(), [&](double h) { return std::abs(h - b.at[static_cast<std::size_t>(i)]) < 0.5; });
        if (on_support) m.supports.emplace_back(i, 2);
    }
    b.frame = fem::make_frame(m);
    return b;
}

void take_moments(const Beam& b, const std::vector<Load>& loads, results::MemberForce& worst)
{
    fem::Vector f = fem::Vector::Zero(b.frame.body.dofs);
    for (const Load& q : loads) {
        const auto node = std::min_element(b.at.begin(), b.at.end(), [&](double x, double y) { return std::abs(x - q.at) < std::abs(y - q.at); }) - b.at.begin();
        fem::add(f, fem::frame_port(b.frame, static_cast<int>(node), b.frame.model.nodes[static_cast<std::size_t>(node)], {0, 0, 1}), q.force < 0 ? 0.0 : q.force);
    }
    const fem::Vector u = fem::solve(b.frame.body, f);
    for (int m = 0; m < static_cast<int>(b.frame.model.members.size()); ++m) {
        const auto q = fem::member_forces(b.frame, m, u);
        for (int end = 0; end < 2; ++end) {
            const double moment = std::hypot(q(6 * end + 4), q(6 * end + 5)) / 1000;
            if (moment > worst.moment_y_Nm) {
                worst.moment_y_Nm = moment;
                worst.at_mm = b.at[static_cast<std::size_t>(m + end)];
            }
        }
    }
}

results::MemberForce worst_on(const std::string& name, const std::string& load_case, const std::vector<double>& held, const std::vector<Load>& loads)
{
    results::MemberForce worst;
    worst.name = name;
    worst.load_case = load_case;
    for (const Load& q : loads) {
        base::keep_largest(worst.shear_N, q.force);
        worst.stands = worst.stands && q.stands;
        if (!q.stands) worst.why_not = q.why;
    }
    take_moments(continuous_beam(held, loads), loads, worst);
    worst.spread_moment_Nm = worst.moment_y_Nm;
    return worst;
}

} // namespace

std::vector<results::MemberForce> frame_members(const layout::Layout& l, const std::vector<results::EndForce>& ends)
{
    static const char* sides[] = {"left", "right", "bottom", "top"};
    std::vector<results::MemberForce> out;
    for (int side = 0; side < 4; ++side) {
        const std::vector<double> held = held_at(l, side);
        std::vector<std::string> order;
        for (const results::EndForce& e : ends)
            if (e.end == sides[side] && std::find(order.begin(), order.end(), e.load_case) == order.end()) order.push_back(e.load_case);
        for (const std::string& lc : order) {
            std::vector<Load> loads;
            for (const results::EndForce& e : ends) {
                if (e.end != sides[side] || e.load_case != lc) continue;
                for (const layout::Angle& a : l.angles)
                    for (const layout::MemberEnd& end : a.ends)
                        if (a.bar.name == e.name && end.side == e.end) loads.push_back({along(side, end.port), e.force_N[2], e.stands, e.why_not});
                for (const layout::Rib& rib : l.ribs)
                    for (const layout::MemberEnd& end : rib.ends)
                        if (rib.name == e.name && end.tied && end.side == e.end) loads.push_back({along(side, end.port), e.force_N[2], e.stands, e.why_not});
                for (const layout::Strap& strap : l.straps)
                    for (const layout::StrapEnd& end : strap.ends)
                        if (strap.name == e.name && end.side == e.end && end.to == model::MemberEnd::To::frame) loads.push_back({along(side, {end.at[0], end.at[1]}), e.force_N[2], e.stands, e.why_not});
                for (const layout::Plate& plate : l.plates)
                    if (plate.name == e.name)
                        for (const results::FastenerForce& f : e.fasteners) // each where it is
                            for (const layout::PlateFastener& own : plate.fasteners)
                                if (own.stack.name == f.name) loads.push_back({along(side, own.stack.at), f.own_pull_N, f.stands, f.why_not});
            }
            out.push_back(worst_on(fmt::format("frame {}", sides[side]), lc, held, loads));
        }
    }
    return out;
}

} // namespace thinskin::idealise
