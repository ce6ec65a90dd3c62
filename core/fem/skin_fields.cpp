#include "fem/hermite.h"
#include "fem/skin_elements.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace thinskin::fem {

void bending_fields(const Skin& skin, const Vector& u, const ElementPlace& place, SkinPoint& p)
{
    const Interval &ix = place.x, &iy = place.y;
    const SkinLayout l{skin.grid};
    const Hermite x = hermite(ix.length, ix.s), y = hermite(iy.length, iy.s);
    double w_xx = 0, w_yy = 0, w_xy = 0;
    for (std::size_t b = 0; b < 4; ++b)
        for (std::size_t a = 0; a < 4; ++a) {
            const double q = u(l.dof(ix.index + static_cast<int>(a / 2), iy.index + static_cast<int>(b / 2), static_cast<int>(a % 2 + 2 * (b % 2))));
            p.w += x.value[a] * y.value[b] * q;
            p.w_x += x.slope[a] * y.value[b] * q;
            p.w_y += x.value[a] * y.slope[b] * q;
            w_xx += x.curvature[a] * y.value[b] * q;
            w_yy += x.value[a] * y.curvature[b] * q;
            w_xy += x.slope[a] * y.slope[b] * q;
        }
    const double nu = skin.model.sheet.nu, D = rigidity(skin.model.sheet);                              // theory FE-15
    p.M_x = -D * (w_xx + nu * w_yy);
    p.M_y = -D * (w_yy + nu * w_xx);
    p.M_xy = -D * (1 - nu) * w_xy;
}

void in_plane_displacements(const Skin& skin, const Vector& u, const ElementPlace& e, SkinPoint& p)
{
    const SkinLayout l{skin.grid};
    for (int c = 0; c < 4; ++c) {
        const double weight = (c % 2 == 0 ? 1 - e.x.s : e.x.s) * (c / 2 == 0 ? 1 - e.y.s : e.y.s);
        p.u += weight * u(l.dof(e.x.index + c % 2, e.y.index + c / 2, 4));
        p.v += weight * u(l.dof(e.x.index + c % 2, e.y.index + c / 2, 5));
    }
}

namespace {

void membrane_forces(const Skin& skin, const Vector& u, const Interval& ix, const Interval& iy, SkinPoint& p)
{
    const SkinLayout l{skin.grid};
    const SkinElements& e = *skin.elements;
    const ElementBubbles bubbles = element_bubbles(l, e, ix.index, iy.index);
    const MembraneElement& m = *e.membrane_of[l.element(ix.index, iy.index)];
    const Few<12> dofs = membrane_dofs(l, bubbles, ix.index, iy.index);
    Eigen::Matrix<double, Eigen::Dynamic, 1, 0, 12, 1> q(static_cast<Eigen::Index>(dofs.size()));
    for (std::size_t k = 0; k < dofs.size(); ++k) q(static_cast<Eigen::Index>(k)) = u(dofs[k]);
    Eigen::Vector3d N;
    if ((ix.s == 0 || ix.s == 1) && (iy.s == 0 || iy.s == 1)) N.noalias() = m.corner[static_cast<std::size_t>(ix.s + 2 * iy.s)] * q;
    else N = membrane_stiffness(skin.model.sheet) * (membrane_strain(ix.length, iy.length, 2 * ix.s - 1, 2 * iy.s - 1) * (m.recover * q).eval()).eval();
    p.N_x = N(0), p.N_y = N(1), p.N_xy = N(2);
}

} // namespace

SkinPoint skin_point(const Skin& skin, const Vector& u, double x, double y)
{
    if (u.size() != skin.body.dofs) throw std::invalid_argument("skin_point: displacement of the wrong length");
    const ElementPlace e = find_element(skin, x, y, "skin_point: ");
    SkinPoint p;
    bending_fields(skin, u, e, p);
    in_plane_displacements(skin, u, e, p);
    membrane_forces(skin, u, e.x, e.y, p);
    return p;
}

namespace {

std::vector<double> with_places_between(const std::vector<double>& lines, int between)
{
    std::vector<double> all;
    for (std::size_t i = 0; i + 1 < lines.size(); ++i)
        for (int k = 0; k <= between; ++k) all.push_back(lines[i] + (lines[i + 1] - lines[i]) * k / (between + 1));
    all.push_back(lines.back());
    return all;
}

/// A place between grid lines in one direction, with the functions there.
struct LinePlace { int index = 0; std::array<double, 4> value{}; };

std::vector<LinePlace> places_on(const std::vector<double>& lines, const std::vector<double>& at)
{
    std::vector<LinePlace> out;
    for (const double p : at) {
        const Interval i = find_interval(lines, p);
        out.push_back({i.index, hermite(i.length, i.s).value});
    }
    return out;
}

/// On a grid line only that line's unknowns count, so that it does not matter on which side the element lies.
double deflection(const Skin& skin, const Vector& u, const LinePlace& x, const LinePlace& y)
{
    const SkinLayout l{skin.grid};
    double w = 0;
    for (std::size_t b = 0; b < 4; ++b)
        for (std::size_t a = 0; a < 4; ++a)
            w += x.value[a] * y.value[b] * u(l.dof(x.index + static_cast<int>(a / 2), y.index + static_cast<int>(b / 2), static_cast<int>(a % 2 + 2 * (b % 2))));
    return w;
}

} // namespace

SkinDeflection skin_deflection(const Skin& skin, const Vector& u, int between)
{
    if (between < 0 || u.size() != skin.body.dofs) throw std::invalid_argument("skin_deflection: places between lines at least 0, displacement of the skin's length");
    SkinDeflection d{with_places_between(skin.grid.x, between), with_places_between(skin.grid.y, between), {}};
    const std::vector<LinePlace> along_x = places_on(skin.grid.x, d.x), along_y = places_on(skin.grid.y, d.y);
    const bool any_opening = !skin.model.openings.empty();
    d.w.reserve(along_x.size() * along_y.size());
    for (std::size_t iy = 0; iy < d.y.size(); ++iy)
        for (std::size_t ix = 0; ix < d.x.size(); ++ix)
            d.w.push_back(any_opening && in_opening(skin.model, d.x[ix], d.y[iy]) ? std::nan("") : deflection(skin, u, along_x[ix], along_y[iy]));
    return d;
}

double von_mises(const SheetSection& sheet, const SkinPoint& p)
{
    double largest = 0;
    for (const double face : {1.0, -1.0}) {                                                            // theory FE-15
        const double t = sheet.thickness, b = face * 6 / (t * t);
        const double sx = p.N_x / t + b * p.M_x, sy = p.N_y / t + b * p.M_y, txy = p.N_xy / t + b * p.M_xy;
        const double v = std::sqrt(sx * sx - sx * sy + sy * sy + 3 * txy * txy);
        if (!(v <= largest)) largest = v; // keeps a NaN
    }
    return largest;
}

EdgeStation edge_station(const SkinModel& m, int edge, double share)
{
    constexpr double inward = 0.01; // mm
    EdgeStation at;
    at.along = share * (edge < 2 ? m.height : m.width);
    at.x = edge == 0 ? 0 : edge == 1 ? m.width : at.along;
    at.y = edge == 2 ? 0 : edge == 3 ? m.height : at.along;
    at.sheet = !in_opening(m, at.x + (edge == 0 ? inward : edge == 1 ? -inward : 0), at.y + (edge == 2 ? inward : edge == 3 ? -inward : 0));
    return at;
}

std::vector<EdgeFlow> edge_flow(const SkinModel& m, int edge, int stations, const std::function<SkinPoint(double x, double y)>& field)
{
    if (edge < 0 || edge > 3 || stations < 1) throw std::invalid_argument("edge_flow: edge 0..3 and at least one station");
    std::vector<EdgeFlow> flow;
    for (int k = 0; k < stations; ++k) {
        const EdgeStation at = edge_station(m, edge, (k + 0.5) / stations);
        if (!at.sheet) {
            flow.push_back({at.along, 0, 0});
            continue;
        }
        const SkinPoint p = field(at.x, at.y);
        flow.push_back({at.along, p.N_xy, edge < 2 ? p.N_x : p.N_y});
    }
    return flow;
}

std::vector<EdgeFlow> edge_flow(const Skin& skin, const Vector& u, int edge, int stations)
{
    return edge_flow(skin.model, edge, stations, [&](double x, double y) { return skin_point(skin, u, x, y); });
}

} // namespace thinskin::fem
