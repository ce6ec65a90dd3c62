#include "fem/skin_read.h"

#include "base/largest.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace thinskin::fem {

MembranePlace membrane_place(const Skin& skin, const ElementPlace& place)
{
    const Interval &ix = place.x, &iy = place.y;
    const SkinLayout l{skin.grid};
    const SkinElements& e = *skin.elements;
    const MembraneElement& m = *e.membrane_of[l.element(ix.index, iy.index)];
    MembranePlace out{membrane_dofs(l, element_bubbles(l, e, ix.index, iy.index), ix.index, iy.index), {}};
    if ((ix.s == 0 || ix.s == 1) && (iy.s == 0 || iy.s == 1)) out.N = m.corner[static_cast<std::size_t>(ix.s + 2 * iy.s)];
    else {
        const Eigen::Matrix<double, 3, 16> forces = membrane_stiffness(skin.model.sheet) * membrane_strain(ix.length, iy.length, 2 * ix.s - 1, 2 * iy.s - 1);
        out.N.noalias() = forces.lazyProduct(m.recover);
    }
    return out;
}

SkinPoint skin_point(const Skin& skin, const Vector& u, double x, double y)
{
    if (u.size() != skin.body.dofs) throw std::invalid_argument("skin_point: displacement of the wrong length");
    const ElementPlace e = find_element(skin, x, y, "skin_point: ");
    SkinPoint p;
    read_bending(skin, u, e, p);
    read_displacements(skin, u, e, p);
    read_membrane(skin, u, e, p);
    return p;
}

namespace {

std::vector<double> with_places_between(const std::vector<double>& lines, int between)
{
    if (between < 0) throw std::invalid_argument("places between grid lines: at least 0");
    std::vector<double> all;
    for (std::size_t i = 0; i + 1 < lines.size(); ++i)
        for (int k = 0; k <= between; ++k) all.push_back(lines[i] + (lines[i + 1] - lines[i]) * k / (between + 1));
    all.push_back(lines.back());
    return all;
}

std::vector<LinePlace> places_on(const std::vector<double>& lines, const std::vector<double>& at)
{
    std::vector<LinePlace> out;
    for (const double p : at) {
        const Interval i = find_interval(lines, p);
        out.push_back({i.index, hermite(i.length, i.s).value});
    }
    return out;
}

} // namespace

PictureGrid::PictureGrid(const SkinGrid& grid, int between) : x(with_places_between(grid.x, between)), y(with_places_between(grid.y, between)), along_x(places_on(grid.x, x)), along_y(places_on(grid.y, y)) {}

SkinDeflection skin_deflection(const Skin& skin, const Vector& u, int between)
{
    if (u.size() != skin.body.dofs) throw std::invalid_argument("skin_deflection: displacement of the wrong length");
    const PictureGrid grid(skin.grid, between);
    const SkinLayout l{skin.grid};
    SkinDeflection d{grid.x, grid.y, {}};
    d.w.reserve(d.x.size() * d.y.size());
    grid.each(skin.model, [&](const LinePlace& x, const LinePlace& y) { d.w.push_back(read_deflection<double>(l, u, x, y)); }, [&] { d.w.push_back(std::nan("")); });
    return d;
}

double von_mises(const SheetSection& sheet, const SkinPoint& p)
{
    double largest = 0;
    for (const double face : {1.0, -1.0})
        base::keep_largest(largest, face_mises(sheet, p, face));
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
