#include "idealise/response.h"

#include <algorithm>
#include <cmath>

/// The skin beside the rim of a backing plate, where a small stiff plate cracks it under repeated load (ID-14): stress across the
/// rim on both faces, sigma = N/t +- 6 M/t^2, read 10 mm outside the rim. Nearer the skin's grid does not see the rim's line.
namespace thinskin::idealise {

namespace {

constexpr double beside = 10; // mm

struct Station { layout::Point at; bool across_x; };

std::vector<Station> stations(const Structure& s, const layout::Plate& p)
{
    std::vector<Station> out;
    const auto add = [&](double x, double y, bool across_x) {
        const bool inside = x > beside && y > beside && x < s.layout->width - beside && y < s.layout->height - beside;
        if (inside) out.push_back({{x, y}, across_x});
    };
    constexpr int count = 12;
    for (int k = 0; k <= count; ++k) {
        const double x = p.low.x + (p.high.x - p.low.x) * k / count, y = p.low.y + (p.high.y - p.low.y) * k / count;
        for (double at : {p.low.x - beside, p.high.x + beside}) add(at, y, true);
        for (double at : {p.low.y - beside, p.high.y + beside}) add(x, at, false);
    }
    return out;
}

} // namespace

std::vector<fem::Vector> rim_values(const Structure& s, const PointField& field)
{
    std::vector<fem::Vector> out;
    const double t = s.skin->model.sheet.thickness;
    for (const layout::Plate& p : s.layout->plates) {
        const std::vector<Station> at = stations(s, p);
        fem::Vector v(static_cast<Eigen::Index>(2 * at.size()));
        for (std::size_t i = 0; i < at.size(); ++i) {
            const fem::SkinPoint q = field(at[i].at.x, at[i].at.y);
            const double N = at[i].across_x ? q.N_x : q.N_y, M = at[i].across_x ? q.M_x : q.M_y;
            v(static_cast<Eigen::Index>(2 * i)) = N / t + 6 * M / (t * t);
            v(static_cast<Eigen::Index>(2 * i + 1)) = N / t - 6 * M / (t * t);
        }
        out.push_back(std::move(v));
    }
    return out;
}

std::vector<results::RimStress> rim_stresses(const Structure& s, const Solution& sol, const Fields& fields)
{
    std::vector<results::RimStress> out;
    for (std::size_t p = 0; p < s.layout->plates.size(); ++p) {
        const std::vector<Station> at = stations(s, s.layout->plates[p]);
        if (at.empty()) continue;
        const auto parked = std::find_if(fields.skin.begin(), fields.skin.end(), [](const results::SkinState& x) { return x.load_case == "parked"; });
        for (std::size_t k = 0; k < fields.skin.size(); ++k) {
            const fem::Vector& v = fields.rims[k][p];
            results::RimStress r;
            r.plate = s.layout->plates[p].name;
            r.load_case = fields.skin[k].load_case;
            Eigen::Index worst = 0;
            r.stress_MPa = v.size() == 0 ? NAN : v.cwiseAbs().maxCoeff(&worst);
            const layout::Point where = at[static_cast<std::size_t>(worst / 2)].at;
            r.at_mm = {where.x, where.y};
            r.rare = sol.runs[k].load_case.on_item.has_value();
            const bool known = parked != fields.skin.end();
            const fem::Vector still = known ? fields.rims[static_cast<std::size_t>(parked - fields.skin.begin())][p] : fem::Vector();
            r.swing_MPa = v.size() == 0 || still.size() != v.size() ? NAN : (v - still).cwiseAbs().maxCoeff();
            r.stands = fields.skin[k].stands && known && parked->stands;
            if (!r.stands) r.why_not = !fields.skin[k].stands ? fields.skin[k].why_not : known ? parked->why_not : "no parked state to compare with";
            out.push_back(std::move(r));
        }
    }
    return out;
}

} // namespace thinskin::idealise
