#include "statics/rules.h"

#include <algorithm>
#include <cmath>
#include <numeric>

// core/statics/rules.cpp - notation
//   T   bolt tensions, N              F   outward pull on the leg, N
//   d   distance of a bolt from the pivot edge, mm
//   M   moment about the pivot edge or the bolts' centroid, N mm
namespace thinskin::statics {

namespace {

/// Turning about an edge: each bolt pulls in proportion to its distance, T = M d/sum d^2.
RowTensions about_edge(const BoltRow& row, double edge, double sense, double M)
{
    RowTensions out;
    double sum_d2 = 0;
    for (const double y : row.at) sum_d2 += (y - edge) * (y - edge);
    for (const double y : row.at) out.tension.push_back(M * sense * (y - edge) / sum_d2); // ST-4
    out.push = std::accumulate(out.tension.begin(), out.tension.end(), 0.0) - row.pull;
    out.push_at = edge;
    return out;
}

RowTensions off_the_wall(const BoltRow& row)
{
    RowTensions out;
    out.pivot = Pivot::off_the_wall;
    const double n = static_cast<double>(row.at.size());
    const double y_c = std::accumulate(row.at.begin(), row.at.end(), 0.0) / n;
    double S = 0;
    for (const double y : row.at) S += (y - y_c) * (y - y_c);
    const double M_c = row.moment - row.pull * y_c;
    for (const double y : row.at) out.tension.push_back(row.pull / n + (S > 0 ? M_c * (y - y_c) / S : 0.0));
    return out;
}

} // namespace

RowTensions lever_rule(const BoltRow& row)
{
    const double M_foot = row.moment - row.pull * row.foot;
    const double M_top = row.pull * row.top - row.moment;
    if (!row.at.empty() && M_foot > 0) {
        RowTensions foot = about_edge(row, row.foot, 1, M_foot);
        foot.pivot = Pivot::foot;
        if (foot.push >= 0) return foot;
    }
    if (!row.at.empty() && M_top > 0) {
        RowTensions top = about_edge(row, row.top, -1, M_top);
        top.pivot = Pivot::top;
        if (top.push >= 0) return top;
    }
    if (!row.at.empty() && row.pull > 0) return off_the_wall(row);
    RowTensions flat;
    flat.tension.assign(row.at.size(), 0.0);
    flat.push = -row.pull;
    flat.push_at = row.pull != 0 ? row.moment / row.pull : 0.5 * (row.foot + row.top);
    // A comparison with NaN ends here: hand the NaN on instead of a zero.
    if (std::isnan(row.pull) || std::isnan(row.moment)) std::fill(flat.tension.begin(), flat.tension.end(), row.pull + row.moment);
    return flat;
}

Plane centroid(const std::vector<Plane>& at)
{
    Plane c{0, 0};
    const double n = static_cast<double>(at.size());
    for (const Plane& p : at) c = {c.x + p.x / n, c.y + p.y / n};
    return c;
}

std::vector<Plane> polar_bolt_group(const BoltGroup& g)
{
    const double n = static_cast<double>(g.at.size());
    const Plane c = centroid(g.at);
    double J = 0;
    for (const Plane& p : g.at) J += (p.x - c.x) * (p.x - c.x) + (p.y - c.y) * (p.y - c.y);
    std::vector<Plane> out;
    for (const Plane& p : g.at)
        out.push_back({g.force.x / n - g.moment * (p.y - c.y) / J, g.force.y / n + g.moment * (p.x - c.x) / J}); // ST-6
    return out;
}

BeamFigures simple_beam(const SimpleBeam& b)
{
    BeamFigures out;
    const double span = b.second - b.first;
    for (const PointLoad& p : b.loads) {
        out.first += p.force * (b.second - p.at) / span; // ST-5
        out.second += p.force * (p.at - b.first) / span;
    }
    const auto moment_at = [&](double s) {
        double M = 0;
        if (s > b.first) M += out.first * (s - b.first);
        if (s > b.second) M += out.second * (s - b.second);
        for (const PointLoad& p : b.loads)
            if (p.at < s) M -= p.force * (s - p.at);
        return M;
    };
    for (const PointLoad& here : b.loads) out.moment_at_loads.push_back(moment_at(here.at));
    // Loads beyond a support bend the beam most over that support.
    for (const double s : {b.first, b.second}) out.max_moment = std::max(out.max_moment, std::abs(moment_at(s)));
    for (const double M : out.moment_at_loads) out.max_moment = std::max(out.max_moment, std::abs(M));
    return out;
}

double prying_bound(const Prying& p) { return p.pull * (1 + p.a / p.b); }

double brace_force(const Brace& b) { return b.root_moment * std::hypot(b.rise, b.reach) / (b.rise * b.reach); }

} // namespace thinskin::statics
