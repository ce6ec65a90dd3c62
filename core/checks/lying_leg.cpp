#include "checks/stack_kit.h"
#include "strength/angles.h"

#include <algorithm>

namespace thinskin::checks {

namespace {

double along(const layout::AngleBar& bar, layout::Point p) { return (p.x - bar.from.x) * bar.along.x + (p.y - bar.from.y) * bar.along.y; }

} // namespace

double strip_available(const layout::AngleBar& bar, const layout::Stack& at, const std::vector<const layout::Stack*>& on_bar, double reach)
{
    const double s = along(bar, at.at);
    double before = std::min(reach, s), after = std::min(reach, bar.length() - s);
    for (const layout::Stack* other : on_bar) {
        const double gap = along(bar, other->at) - s;
        if (gap < 0) before = std::min(before, -gap / 2);
        if (gap > 0) after = std::min(after, gap / 2);
    }
    return before + after;
}

double pressing_diameter(const layout::Stack& s, const std::string& part)
{
    const auto& washer = s.plies.back().part == part && s.plies.front().part != part ? s.hardware.nut_washer : s.hardware.head_washer;
    return washer && washer_counts(*washer) ? washer->diameter : s.hardware.across_flats;
}

results::Check lying_leg_row(const Place& p, const layout::AngleBar& bar, const layout::Stack& s, const std::vector<const layout::Stack*>& on_bar, const std::vector<results::FastenerForce>& forces)
{
    const catalogue::Strength strength = bar.material.strength(bar.section.t);
    if (!strength.covered) return not_covered(p, strength.reason);
    std::vector<Demand> demands;
    for (const results::FastenerForce& f : forces) demands.push_back({f.load_case, positive(f.tension_N), f.stands, f.why_not});
    const double lever = bar.gauge - bar.section.t, washer = pressing_diameter(s, bar.name);
    return worst_of(p, demands, strength::LyingLeg{bar.section.t, strength.fy, lever, washer, strip_available(bar, s, on_bar, washer / 2 + lever)});
}

} // namespace thinskin::checks
