#include "fem/skin_elements.h"

#include "fem/hermite.h"

namespace thinskin::fem {

double rigidity(const SheetSection& s) { return s.E * s.thickness * s.thickness * s.thickness / (12 * (1 - s.nu * s.nu)); }

Matrix16 bending_element(double D, double nu, double lx, double ly)
{
    const LineIntegrals x = line_integrals(lx), y = line_integrals(ly);
    const auto index_x = [](int e) { return 2 * (e / 4 % 2) + e % 2; };      // Hermite function along x of element dof e
    const auto index_y = [](int e) { return 2 * (e / 8) + e % 4 / 2; };
    Matrix16 k;
    for (int e = 0; e < 16; ++e)
        for (int f = 0; f < 16; ++f) {
            const int i = index_x(e), j = index_y(e), m = index_x(f), n = index_y(f);
            k(e, f) = D * (x.m22(i, m) * y.m00(j, n) + x.m00(i, m) * y.m22(j, n)                        // theory FE-1
                           + nu * (x.m20(i, m) * y.m20(n, j) + x.m20(m, i) * y.m20(j, n))
                           + 2 * (1 - nu) * x.m11(i, m) * y.m11(j, n));
        }
    return 0.5 * (k + k.transpose());
}

Eigen::Matrix3d membrane_stiffness(const SheetSection& s)
{
    const double c = s.E * s.thickness / (1 - s.nu * s.nu);
    Eigen::Matrix3d C;
    C << c, c * s.nu, 0, c * s.nu, c, 0, 0, 0, c * (1 - s.nu) / 2;
    return C;
}

Eigen::Matrix<double, 3, 16> membrane_strain(double lx, double ly, double xi, double eta)
{
    Eigen::Matrix<double, 3, 16> B = Eigen::Matrix<double, 3, 16>::Zero();
    const auto put = [&](int column, bool is_v, double d_xi, double d_eta) {
        const double dx = d_xi * 2 / lx, dy = d_eta * 2 / ly;
        if (is_v) B(1, column) = dy, B(2, column) = dx;
        else B(0, column) = dx, B(2, column) = dy;
    };
    for (int c = 0; c < 4; ++c) {
        const double sx = c % 2 == 0 ? -1 : 1, sy = c / 2 == 0 ? -1 : 1;
        for (int v = 0; v < 2; ++v) put(2 * c + v, v == 1, sx * (1 + sy * eta) / 4, sy * (1 + sx * xi) / 4);
    }
    for (int v = 0; v < 2; ++v) {
        put(8 + 2 * v, v == 1, -2 * xi, 0);                                  // mode 1 - xi^2
        put(9 + 2 * v, v == 1, 0, -2 * eta);                                 // mode 1 - eta^2
    }
    put(12, false, -xi * (1 - eta), -(1 - xi * xi) / 2);                     // u on the bottom edge
    put(13, false, -xi * (1 + eta), (1 - xi * xi) / 2);                      // u on the top edge
    put(14, true, -(1 - eta * eta) / 2, -eta * (1 - xi));                    // v on the left edge
    put(15, true, (1 - eta * eta) / 2, -eta * (1 + xi));                     // v on the right edge
    return B;
}

MembraneElement membrane_element(const SheetSection& sheet, double lx, double ly, unsigned edges)
{
    Eigen::Matrix<double, 16, 16> full = Eigen::Matrix<double, 16, 16>::Zero();
    const Eigen::Matrix3d C = membrane_stiffness(sheet);
    for (const GaussPoint& gx : gauss_3)
        for (const GaussPoint& gy : gauss_3) {
            const auto B = membrane_strain(lx, ly, 2 * gx.s - 1, 2 * gy.s - 1);
            full += B.transpose() * C * B * (gx.weight * gy.weight * lx * ly);                          // theory FE-2
        }
    // A rib's edge bubble takes the place of the incompatible mode of the same kind; together they would tear at the edge.
    std::vector<int> kept{0, 1, 2, 3, 4, 5, 6, 7}, condensed{9, 10};
    if ((edges & (rib_bottom | rib_top)) == 0) condensed.push_back(8);
    if ((edges & (rib_left | rib_right)) == 0) condensed.push_back(11);
    for (int b = 0; b < 4; ++b)
        if ((edges >> b & 1U) != 0) kept.push_back(12 + b);
    const Matrix aa = full(condensed, condensed), ak = full(condensed, kept);
    const Matrix modes = -aa.ldlt().solve(ak);
    MembraneElement m;
    m.K = full(kept, kept) + ak.transpose() * modes;
    m.K = (0.5 * (m.K + m.K.transpose())).eval();
    m.recover = Matrix::Zero(16, static_cast<Eigen::Index>(kept.size()));
    for (std::size_t k = 0; k < kept.size(); ++k) m.recover(kept[k], static_cast<Eigen::Index>(k)) = 1;
    for (std::size_t k = 0; k < condensed.size(); ++k) m.recover.row(condensed[k]) = modes.row(static_cast<Eigen::Index>(k));
    for (std::size_t c = 0; c < 4; ++c) m.corner[c] = C * membrane_strain(lx, ly, c % 2 == 0 ? -1 : 1, c / 2 == 0 ? -1 : 1) * m.recover;
    return m;
}

ElementBubbles element_bubbles(const SkinLayout& l, const SkinElements& e, int i, int j)
{
    const int bubbles[4] = {e.x_bubble[static_cast<std::size_t>(i + (l.nx() - 1) * j)],
                            e.x_bubble[static_cast<std::size_t>(i + (l.nx() - 1) * (j + 1))],
                            e.y_bubble[static_cast<std::size_t>(i + l.nx() * j)],
                            e.y_bubble[static_cast<std::size_t>(i + 1 + l.nx() * j)]};
    ElementBubbles b;
    for (unsigned k = 0; k < 4; ++k)
        if (bubbles[k] >= 0) b.edges |= 1U << k, b.dofs.push_back(bubbles[k]);
    return b;
}

Few<12> membrane_dofs(const SkinLayout& l, const ElementBubbles& bubbles, int i, int j)
{
    Few<12> dofs;
    for (int c = 0; c < 4; ++c)
        for (int v = 0; v < 2; ++v) dofs.push_back(l.dof(i + c % 2, j + c / 2, 4 + v));
    for (const int d : bubbles.dofs) dofs.push_back(d);
    return dofs;
}

} // namespace thinskin::fem
