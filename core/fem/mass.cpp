// Consistent masses (theory FE-24): integrals of the shape functions that also make the stiffness.
#include "fem/hermite.h"
#include "fem/modes.h"
#include "fem/skin_elements.h"

#include <cmath>
#include <stdexcept>

namespace thinskin::fem {
namespace {

using Triplets = std::vector<Eigen::Triplet<double>>;

void require(bool good, const std::string& what)
{
    if (!good) throw std::invalid_argument(what);
}

template <class M, class Dofs = std::vector<int>>
void scatter(const M& m, const Dofs& dofs, Triplets& out)
{
    for (std::size_t a = 0; a < dofs.size(); ++a)
        for (std::size_t b = 0; b < dofs.size(); ++b)
            if (const double v = m(static_cast<Eigen::Index>(a), static_cast<Eigen::Index>(b)); v != 0) out.emplace_back(dofs[a], dofs[b], v);
}

MassMatrix assembled(const Triplets& entries, int dofs)
{
    MassMatrix m{Sparse(dofs, dofs)};
    m.M.setFromTriplets(entries.begin(), entries.end());
    return m;
}

Matrix16 bending_mass(double lx, double ly)
{
    const LineIntegrals x = line_integrals(lx), y = line_integrals(ly);
    Matrix16 m;
    for (int e = 0; e < 16; ++e)
        for (int f = 0; f < 16; ++f)
            m(e, f) = x.m00(2 * (e / 4 % 2) + e % 2, 2 * (f / 4 % 2) + f % 2) * y.m00(2 * (e / 8) + e % 4 / 2, 2 * (f / 8) + f % 4 / 2);
    return m;
}

/// Order of membrane_dofs: u, v at the four nodes, then the bubbles.
Matrix in_plane_mass(double lx, double ly, const ElementBubbles& bubbles)
{
    const auto n = static_cast<Eigen::Index>(8 + bubbles.dofs.size());
    Matrix m = Matrix::Zero(n, n);
    for (const GaussPoint& gx : gauss_3)
        for (const GaussPoint& gy : gauss_3) {
            Vector u = Vector::Zero(n), v = Vector::Zero(n);
            for (int c = 0; c < 4; ++c)
                u(2 * c) = v(2 * c + 1) = (c % 2 == 0 ? 1 - gx.s : gx.s) * (c / 2 == 0 ? 1 - gy.s : gy.s);
            Eigen::Index next = 8;
            for (unsigned k = 0; k < 4; ++k) {
                if ((bubbles.edges >> k & 1U) == 0) continue;
                const double along = k < 2 ? gx.s : gy.s, across = k < 2 ? gy.s : gx.s;
                (k < 2 ? u : v)(next++) = 4 * along * (1 - along) * (k % 2 == 0 ? 1 - across : across);
            }
            m += gx.weight * gy.weight * lx * ly * (u * u.transpose() + v * v.transpose());
        }
    return m;
}

void add_sheet(const Skin& skin, double per_area, Triplets& out)
{
    const SkinLayout l{skin.grid};
    const SkinElements& e = *skin.elements;
    std::map<std::array<int, 2>, Matrix16> known;
    for (int j = 0; j + 1 < l.ny(); ++j)
        for (int i = 0; i + 1 < l.nx(); ++i) {
            if (e.missing[l.element(i, j)]) continue;
            const int cx = e.x_class[static_cast<std::size_t>(i)], cy = e.y_class[static_cast<std::size_t>(j)];
            const double lx = e.x_length[static_cast<std::size_t>(cx)], ly = e.y_length[static_cast<std::size_t>(cy)];
            if (!known.contains({cx, cy})) known[{cx, cy}] = per_area * bending_mass(lx, ly);
            std::vector<int> bending;
            for (int k = 0; k < 16; ++k) bending.push_back(l.dof(i + k / 4 % 2, j + k / 8, k % 4));
            scatter(known[{cx, cy}], bending, out);
            const ElementBubbles b = element_bubbles(l, e, i, j);
            scatter(Matrix(per_area * in_plane_mass(lx, ly, b)), membrane_dofs(l, b, i, j), out);
        }
}

/// On the rib's line: transverse, along and across; order w, w' at a, at b; along and across at a, at b; bubble of along.
Eigen::Matrix<double, 9, 9> rib_segment_mass(double h)
{
    Eigen::Matrix<double, 9, 9> m = Eigen::Matrix<double, 9, 9>::Zero();
    for (const GaussPoint& g : gauss_4) {
        const Hermite f = hermite(h, g.s);
        Eigen::Matrix<double, 9, 3> N = Eigen::Matrix<double, 9, 3>::Zero();
        for (int k = 0; k < 4; ++k) N(k, 0) = f.value[static_cast<std::size_t>(k)];
        N(4, 1) = N(5, 2) = 1 - g.s;
        N(6, 1) = N(7, 2) = g.s;
        N(8, 1) = 4 * g.s * (1 - g.s);
        m += g.weight * h * N * N.transpose();
    }
    return m;
}

void add_rib(const Skin& skin, const RibModel& rib, double per_length, Triplets& out)
{
    const SkinLayout l{skin.grid};
    const SkinElements& e = *skin.elements;
    const RibLine r = rib_line(skin.grid, rib);
    const std::vector<double>& lines = r.along_x ? skin.grid.x : skin.grid.y;
    const int slope = r.along_x ? 1 : 2, along = r.along_x ? 4 : 5, across = r.along_x ? 5 : 4;
    for (int k = r.first; k < r.last; ++k) {
        const int a = r.along_x ? l.dof(k, r.line, 0) : l.dof(r.line, k, 0), b = r.along_x ? l.dof(k + 1, r.line, 0) : l.dof(r.line, k + 1, 0);
        const int bubble = r.along_x ? e.x_bubble[static_cast<std::size_t>(k + (l.nx() - 1) * r.line)]
                                     : e.y_bubble[static_cast<std::size_t>(r.line + l.nx() * k)];
        const double h = lines[static_cast<std::size_t>(k) + 1] - lines[static_cast<std::size_t>(k)];
        scatter(Matrix(per_length * rib_segment_mass(h)), {a, a + slope, b, b + slope, a + along, a + across, b + along, b + across, bubble}, out);
    }
}

} // namespace

MassMatrix skin_mass(const Skin& skin, double density, const std::vector<double>& rib_mass)
{
    require(std::isfinite(density) && density > 0, "skin_mass: density must be positive");
    require(rib_mass.empty() || rib_mass.size() == skin.model.ribs.size(), "skin_mass: one mass per rib, or none");
    Triplets entries;
    add_sheet(skin, density * skin.model.sheet.thickness, entries);
    for (std::size_t k = 0; k < rib_mass.size(); ++k) {
        require(std::isfinite(rib_mass[k]) && rib_mass[k] >= 0, "skin_mass: a rib's mass must be finite and not negative");
        add_rib(skin, skin.model.ribs[k], rib_mass[k], entries);
    }
    return assembled(entries, skin.body.dofs);
}

namespace {

/// Velocity of the centroid's line (straight u and twist, cubic v and w) and spin about the axis, per end displacement; local axes.
Matrix member_mass(const BeamSection& s, double L, double density)
{
    Matrix m = Matrix::Zero(12, 12);
    for (const GaussPoint& g : gauss_4) {
        const Hermite f = hermite(L, g.s);
        Eigen::Matrix<double, 12, 4> N = Eigen::Matrix<double, 12, 4>::Zero();
        for (int end = 0; end < 2; ++end) {
            const int d = 6 * end;
            const double straight = end == 0 ? 1 - g.s : g.s;
            const auto value = static_cast<std::size_t>(2 * end), slope = value + 1;
            N(d, 0) = N(d + 3, 3) = straight;
            N(d + 1, 1) = f.value[value], N(d + 5, 1) = f.value[slope];
            N(d + 2, 2) = f.value[value], N(d + 4, 2) = -f.value[slope];
            N(d + 1, 0) -= s.c_y * f.slope[value], N(d + 5, 0) -= s.c_y * f.slope[slope];              // u - c_y v' - c_z w'
            N(d + 2, 0) -= s.c_z * f.slope[value], N(d + 4, 0) += s.c_z * f.slope[slope];
            N(d + 3, 1) -= s.c_z * straight, N(d + 3, 2) += s.c_y * straight;
        }
        Eigen::Vector4d inertia(s.A, s.A, s.A, s.I_y + s.I_z);
        m += density * g.weight * L * N * inertia.asDiagonal() * N.transpose();
    }
    return m;
}

} // namespace

MassMatrix frame_mass(const Frame& frame, double density, const std::vector<NodeMass>& masses)
{
    const FrameModel& model = frame.model;
    require(std::isfinite(density) && density >= 0, "frame_mass: density must be finite and not negative");
    Triplets entries;
    for (std::size_t k = 0; k < model.members.size() && density > 0; ++k) {
        const MemberFrame f = member_frame(frame, static_cast<int>(k));
        const Matrix local = f.keep.transpose() * member_mass(model.members[k].section, f.length, density) * f.keep;
        scatter(Matrix(f.rotation.transpose() * local * f.rotation), f.dofs, entries);
    }
    for (const NodeMass& p : masses) {
        require(std::isfinite(p.mass) && p.mass >= 0 && p.at.allFinite(), "frame_mass: a point's mass must be finite and not negative");
        for (int d = 0; d < 3; ++d) {
            const Row row = frame_port(frame, p.node, p.at, Vec3::Unit(d));
            for (const auto& [a, x] : row)
                for (const auto& [b, y] : row) entries.emplace_back(a, b, p.mass * x * y);
        }
    }
    return assembled(entries, frame.body.dofs);
}

MassMatrix rigid_mass(double mass, const Vec3& centre, const Eigen::Matrix3d& inertia)
{
    require(std::isfinite(mass) && mass > 0 && centre.allFinite() && inertia.allFinite(), "rigid_mass: mass must be positive, all figures finite");
    require((inertia - inertia.transpose()).norm() <= 1e-9 * inertia.norm(), "rigid_mass: the inertia must be symmetric");
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> principal(inertia);
    require(principal.eigenvalues()(0) > 0, "rigid_mass: the inertia must be positive about every axis");
    Eigen::Matrix<double, 3, 6> velocity;                       // of the centre of mass
    for (int k = 0; k < 3; ++k) {
        velocity.col(k) = Vec3::Unit(k);
        velocity.col(3 + k) = Vec3::Unit(k).cross(centre);
    }
    Matrix m = mass * velocity.transpose() * velocity;
    m.bottomRightCorner(3, 3) += inertia;
    MassMatrix out{Sparse(6, 6)};
    out.M = m.sparseView();
    return out;
}

} // namespace thinskin::fem
