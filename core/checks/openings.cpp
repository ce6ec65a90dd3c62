// Stress of the skin beside the corners of windows and access holes.
#include "checks/checks.h"
#include "checks/rows.h"
#include "strength/openings.h"

#include <algorithm>

namespace thinskin::checks {

namespace {

results::Check corner_row(const Demands& d, const layout::Opening& o, double fy)
{
    Place p{"opening corners/" + o.name, "panel", o.name, "stress of the skin beside the corners of " + o.name, true, "panel.openings." + o.name + ".corner_radius", "largest stress between one and two grid spacings from a corner; its peak is in the capacity"};
    if (!o.corner_radius) return not_covered(p, "the corner radius is not given: elastic theory has no bound for a sharp corner");
    std::vector<Demand> demands;
    for (const results::CornerStress& c : *d.corners)
        if (c.opening == o.name) demands.push_back({c.load_case, c.stress_MPa, c.stands, c.why_not});
    const double width = (o.high.x - o.low.x) / 2, height = (o.high.y - o.low.y) / 2;
    return worst_of(p, demands, strength::OpeningCorner{fy, *o.corner_radius, std::min(width, height), std::max(width, height)});
}

} // namespace

void opening_rows(const Demands& d, double fy, std::vector<results::Check>& out)
{
    for (const layout::Opening& o : d.layout->openings) out.push_back(corner_row(d, o, fy));
}

} // namespace thinskin::checks
