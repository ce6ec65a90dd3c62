#include "fem/hermite.h"
#include "fem/skin_elements.h"

namespace thinskin::fem {
namespace {

/// One segment of a rib of length h (theory FE-3). Order: w, w' at a, at b; axial u at a, b; the bubble of the edge's axial u.
Eigen::Matrix<double, 7, 7> bending_and_axial(const RibModel& rib, double h)
{
    Eigen::Matrix<double, 7, 7> k = Eigen::Matrix<double, 7, 7>::Zero();
    for (const GaussPoint& g : gauss_2) {
        const Hermite f = hermite(h, g.s);
        Eigen::Matrix<double, 7, 1> curvature = Eigen::Matrix<double, 7, 1>::Zero(), strain = curvature;
        for (int i = 0; i < 4; ++i) curvature(i) = f.curvature[static_cast<std::size_t>(i)];
        strain(4) = -1 / h;
        strain(5) = 1 / h;
        strain(6) = -4 * (2 * g.s - 1) / h;
        strain -= rib.offset_z * curvature;
        k += (rib.E * rib.I_normal * h * g.weight) * curvature * curvature.transpose()
            + (rib.E * rib.A * h * g.weight) * strain * strain.transpose();
    }
    return k;
}

template <class M, std::size_t N>
void scatter(const M& k, const std::array<int, N>& dofs, std::vector<Eigen::Triplet<double>>& out)
{
    for (std::size_t a = 0; a < N; ++a)
        for (std::size_t b = 0; b < N; ++b)
            out.emplace_back(dofs[a], dofs[b], k(static_cast<Eigen::Index>(a), static_cast<Eigen::Index>(b)));
}

} // namespace

void add_ribs(const SkinModel& model, const SkinGrid& grid, const SkinElements& e, std::vector<Eigen::Triplet<double>>& out)
{
    const SkinLayout l{grid};
    for (const RibModel& rib : model.ribs) {
        const RibLine r = rib_line(grid, rib);
        const std::vector<double>& along = r.along_x ? grid.x : grid.y;
        const int slope = r.along_x ? 1 : 2, twist = r.along_x ? 2 : 1, axial = r.along_x ? 4 : 5;
        for (int k = r.first; k < r.last; ++k) {
            const double h = along[static_cast<std::size_t>(k) + 1] - along[static_cast<std::size_t>(k)];
            const int a = r.along_x ? l.dof(k, r.line, 0) : l.dof(r.line, k, 0);
            const int b = r.along_x ? l.dof(k + 1, r.line, 0) : l.dof(r.line, k + 1, 0);
            const int bubble = r.along_x ? e.x_bubble[static_cast<std::size_t>(k + (l.nx() - 1) * r.line)]
                                         : e.y_bubble[static_cast<std::size_t>(r.line + l.nx() * k)];
            scatter(bending_and_axial(rib, h), std::array<int, 7>{a, a + slope, b, b + slope, a + axial, b + axial, bubble}, out);
            const Eigen::Matrix4d torsion = rib.G * rib.J * line_integrals(h).m11;
            scatter(torsion, std::array<int, 4>{a + twist, a + 3, b + twist, b + 3}, out);
        }
    }
}

namespace {

RibEndPlace place_of(const SkinGrid& grid, const RibModel& rib, std::size_t end)
{
    const SkinLayout l{grid};
    const RibLine r = rib_line(grid, rib);
    const std::size_t a = r.along_x ? 0 : 1;
    const int k = (end == 0) == (rib.from[a] <= rib.to[a]) ? r.first : r.last;
    const int node = r.along_x ? l.dof(k, r.line, 0) : l.dof(r.line, k, 0);
    return {node, node + (r.along_x ? 1 : 2), node + 4, node + 5};
}

} // namespace

RibEndPlace rib_end_place(const Skin& skin, std::size_t rib, std::size_t end) { return place_of(skin.grid, skin.model.ribs.at(rib), end); }

void hold_rib_ends(const SkinModel& model, const SkinGrid& grid, std::vector<char>& supported)
{
    const auto hold = [&](int dof) { supported[static_cast<std::size_t>(dof)] = 1; };
    for (const RibModel& rib : model.ribs)
        for (std::size_t end = 0; end < 2; ++end) {
            const RibEndPlace p = place_of(grid, rib, end);
            if (rib.ends[end].held)
                for (const int dof : {p.w, p.u, p.v}) hold(dof);
            if (rib.ends[end].turning_held) hold(p.slope);
        }
}

void add_rib_end_springs(const SkinModel& model, const SkinGrid& grid, std::vector<Eigen::Triplet<double>>& out)
{
    for (const RibModel& rib : model.ribs)
        for (std::size_t end = 0; end < 2; ++end) {
            const int slope = place_of(grid, rib, end).slope;
            if (rib.ends[end].rotational_stiffness > 0) out.emplace_back(slope, slope, rib.ends[end].rotational_stiffness);
        }
}

} // namespace thinskin::fem
