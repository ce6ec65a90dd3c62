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

/// Moment under a load on a simple span from a to b, all loads of that span acting.
double moment_under(double at, double a, double b, const std::vector<Load>& loads)
{
    double m = 0;
    for (const Load& q : loads) {
        if (q.at <= a || q.at >= b) continue;
        const double near = std::min(q.at, at), far = std::max(q.at, at);
        m += q.force * (near - a) * (b - far) / (b - a);
    }
    return m;
}

results::MemberForce worst_on(const std::string& name, const std::string& load_case, const std::vector<double>& held, const std::vector<Load>& loads)
{
    results::MemberForce worst;
    worst.name = name;
    worst.load_case = load_case;
    for (const Load& q : loads) {
        const auto b = std::find_if(held.begin(), held.end(), [&](double h) { return h >= q.at; });
        worst.shear_N = std::max(worst.shear_N, std::abs(q.force));
        worst.stands = worst.stands && q.stands;
        if (!q.stands) worst.why_not = q.why;
        if (b == held.begin() || b == held.end()) continue;
        const double m = moment_under(q.at, *(b - 1), *b, loads) / 1000;
        if (std::abs(m) > std::abs(worst.moment_y_Nm)) {
            worst.moment_y_Nm = m;
            worst.at_mm = q.at;
        }
    }
    worst.spread_moment_Nm = std::abs(worst.moment_y_Nm);
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
            }
            out.push_back(worst_on(fmt::format("frame {}", sides[side]), lc, held, loads));
        }
    }
    return out;
}

} // namespace thinskin::idealise
