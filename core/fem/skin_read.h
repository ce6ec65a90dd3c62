#pragma once
#include "fem/hermite.h"
#include "fem/skin_elements.h"

#include <cmath>

/// Internal to core/fem: fields of an element from its unknowns, of one state or of several at once. u(d): figures of unknown d.
namespace thinskin::fem {

/// Deflection, slopes and moments of a point in the element there.
template <class Figure, class Unknown> void read_bending(const Skin& skin, const Unknown& u, const ElementPlace& place, SkinPointOf<Figure>& p)
{
    const Interval &ix = place.x, &iy = place.y;
    const SkinLayout l{skin.grid};
    const Hermite x = hermite(ix.length, ix.s), y = hermite(iy.length, iy.s);
    Figure w_xx = p.none(), w_yy = p.none(), w_xy = p.none();
    for (std::size_t b = 0; b < 4; ++b)
        for (std::size_t a = 0; a < 4; ++a) {
            const Figure q = u(l.dof(ix.index + static_cast<int>(a / 2), iy.index + static_cast<int>(b / 2), static_cast<int>(a % 2 + 2 * (b % 2))));
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

/// Displacements in the sheet's plane, the bilinear part.
template <class Figure, class Unknown> void read_displacements(const Skin& skin, const Unknown& u, const ElementPlace& e, SkinPointOf<Figure>& p)
{
    const SkinLayout l{skin.grid};
    for (int c = 0; c < 4; ++c) {
        const double weight = (c % 2 == 0 ? 1 - e.x.s : e.x.s) * (c / 2 == 0 ? 1 - e.y.s : e.y.s);
        p.u += weight * u(l.dof(e.x.index + c % 2, e.y.index + c / 2, 4));
        p.v += weight * u(l.dof(e.x.index + c % 2, e.y.index + c / 2, 5));
    }
}

/// From an element's in-plane unknowns to N_x, N_y, N_xy at a place in it; `dofs`: which unknowns.
struct MembranePlace { Few<12> dofs; Eigen::Matrix<double, 3, Eigen::Dynamic, 0, 3, 12> N; };
[[nodiscard]] MembranePlace membrane_place(const Skin& skin, const ElementPlace& e);

template <class Figure, class Unknown> void read_membrane(const Skin& skin, const Unknown& u, const ElementPlace& e, SkinPointOf<Figure>& p)
{
    const MembranePlace m = membrane_place(skin, e);
    for (std::size_t k = 0; k < m.dofs.size(); ++k) {
        const Figure q = u(m.dofs[k]);
        const auto c = static_cast<Eigen::Index>(k);
        p.N_x += m.N(0, c) * q, p.N_y += m.N(1, c) * q, p.N_xy += m.N(2, c) * q;
    }
}

/// At each face: +1, -1.
template <class Figure> Figure face_mises(const SheetSection& sheet, const SkinPointOf<Figure>& p, double face)
{
    using std::sqrt;
    const double t = sheet.thickness, b = face * 6 / (t * t);                                           // theory FE-15
    const Figure sx = p.N_x / t + b * p.M_x, sy = p.N_y / t + b * p.M_y, txy = p.N_xy / t + b * p.M_xy;
    return sqrt(sx * sx - sx * sy + sy * sy + 3 * txy * txy);
}

/// A place between grid lines in one direction, with the functions there.
struct LinePlace { int index = 0; std::array<double, 4> value{}; };

/// On a grid line only that line's unknowns count, so that it does not matter on which side the element lies.
template <class Figure, class Unknown> Figure read_deflection(const SkinLayout& l, const Unknown& u, const LinePlace& x, const LinePlace& y)
{
    Figure w = SkinPointOf<Figure>::none();
    for (std::size_t b = 0; b < 4; ++b)
        for (std::size_t a = 0; a < 4; ++a)
            w += x.value[a] * y.value[b] * u(l.dof(x.index + static_cast<int>(a / 2), y.index + static_cast<int>(b / 2), static_cast<int>(a % 2 + 2 * (b % 2))));
    return w;
}

/// Grid lines and `between` places between neighbouring ones, both ways; use(x, y): of each in turn, row after row along x, nowhere() inside an opening.
struct PictureGrid {
    std::vector<double> x, y;
    std::vector<LinePlace> along_x, along_y;
    PictureGrid(const SkinGrid& grid, int between);
    template <class Use, class Nowhere> void each(const SkinModel& model, const Use& use, const Nowhere& nowhere) const
    {
        for (std::size_t iy = 0; iy < y.size(); ++iy)
            for (std::size_t ix = 0; ix < x.size(); ++ix) {
                if (!model.openings.empty() && in_opening(model, x[ix], y[iy])) nowhere();
                else use(along_x[ix], along_y[iy]);
            }
    }
};

} // namespace thinskin::fem
