// Stress of the skin near the corners of openings: the corner itself has no bound in elastic theory, its peak is in the clause (SK-2).
#include "idealise/local_stress.h"

#include <algorithm>
#include <cmath>

namespace thinskin::idealise {

namespace {

/// Within so many grid spacings of a corner; closer than one nothing is readable.
constexpr double near = 2.1;

bool beside_a_corner(const layout::Opening& o, double x, double y, double reach)
{
    const double dx = std::min(std::abs(x - o.low.x), std::abs(x - o.high.x)), dy = std::min(std::abs(y - o.low.y), std::abs(y - o.high.y));
    return dx <= reach && dy <= reach;
}

void look(const Structure& s, const layout::Opening& o, const PointField& field, results::CornerStress& c)
{
    c.stress_MPa = NAN; // no point to read: no figure
    for (const double x : s.skin->grid.x)
        for (const double y : s.skin->grid.y) {
            if (!beside_a_corner(o, x, y, near * s.options.grid_spacing) || !readable(s, x, y)) continue;
            const double stress = fem::von_mises(s.skin->model.sheet, field(x, y));
            if (stress <= c.stress_MPa) continue;
            c.stress_MPa = stress;
            c.at_mm = {x, y};
            if (std::isnan(stress)) return;
        }
}

} // namespace

std::vector<results::CornerStress> corner_stresses(const Structure& s, const PointField& field, const results::SkinState& state)
{
    std::vector<results::CornerStress> out;
    for (const layout::Opening& o : s.layout->openings) {
        results::CornerStress c{o.name, state.load_case, NAN, {}, state.stands, state.why_not};
        if (field) look(s, o, field, c);
        out.push_back(std::move(c));
    }
    return out;
}

} // namespace thinskin::idealise
