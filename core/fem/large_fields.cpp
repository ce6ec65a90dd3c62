// Membrane forces of the deflected skin (theory FE-23). Inside an element they are most exact in its middle; the nodes get theirs
// from the middles around them, and in between they run straight.
#include "fem/large_model.h"

#include "fem/skin_read.h"

#include <cmath>
#include <stdexcept>

namespace thinskin::fem {
namespace {

struct Middle { double x = 0, y = 0; Eigen::Vector3d N{0, 0, 0}; bool live = false; };

std::vector<Middle> middles(const LargeModel& model, const Vector& u)
{
    const Skin& skin = *model.skin;
    const SkinLayout l{skin.grid};
    std::vector<Middle> out(model.piece_of.size());
    for (int j = 0; j + 1 < l.ny(); ++j)
        for (int i = 0; i + 1 < l.nx(); ++i) {
            const std::size_t e = l.element(i, j);
            const auto a = static_cast<std::size_t>(i), b = static_cast<std::size_t>(j);
            out[e].x = 0.5 * (skin.grid.x[a] + skin.grid.x[a + 1]);
            out[e].y = 0.5 * (skin.grid.y[b] + skin.grid.y[b + 1]);
            if (model.piece_of[e] < 0) continue;
            const QuadraticPiece& piece = model.pieces[static_cast<std::size_t>(model.piece_of[e])];
            const PieceState state = piece_state(piece, u);
            const double area = (skin.grid.x[a + 1] - skin.grid.x[a]) * (skin.grid.y[b + 1] - skin.grid.y[b]);
            for (std::size_t k = 0; k < piece.element->used.size(); ++k)
                if (piece.element->used[k] % 3 == 0) out[e].N(piece.element->used[k] / 3) = state.s(static_cast<Eigen::Index>(k)) / area;
            out[e].live = true;
        }
    return out;
}

/// Live elements in columns i-reach..i+reach-1 and rows alike of node (i, j).
std::vector<const Middle*> around(const SkinLayout& l, const std::vector<Middle>& all, int i, int j, int reach)
{
    std::vector<const Middle*> out;
    for (int n = std::max(j - reach, 0); n < std::min(j + reach, l.ny() - 1); ++n)
        for (int m = std::max(i - reach, 0); m < std::min(i + reach, l.nx() - 1); ++m)
            if (const Middle& e = all[l.element(m, n)]; e.live) out.push_back(&e);
    return out;
}

/// The straight field closest to the middles, at (x, y); their mean when they do not fix one.
Eigen::Vector3d fit(const std::vector<const Middle*>& elements, double x, double y)
{
    const auto n = static_cast<Eigen::Index>(elements.size());
    Matrix A(n, 3), values(n, 3);
    Eigen::Vector3d mean = Eigen::Vector3d::Zero();
    for (Eigen::Index k = 0; k < n; ++k) {
        const Middle& e = *elements[static_cast<std::size_t>(k)];
        A.row(k) << 1, e.x - x, e.y - y;
        values.row(k) = e.N.transpose();
        mean += e.N / static_cast<double>(n);
    }
    const Eigen::ColPivHouseholderQR<Matrix> qr(A);
    if (n < 3 || qr.rank() < 3) return mean;
    return qr.solve(values).row(0).transpose();
}

double mises(double x, double y, double xy) { return std::sqrt(x * x - x * y + y * y + 3 * xy * xy); }

} // namespace

LargeField large_field(const LargeModel& model, const Vector& skin_u)
{
    if (skin_u.size() != model.skin->body.dofs) throw std::invalid_argument("large_field: displacement of the wrong length");
    const SkinLayout l{model.skin->grid};
    const std::vector<Middle> all = middles(model, skin_u);
    LargeField field{skin_u, Eigen::Matrix<double, 3, Eigen::Dynamic>::Zero(3, l.nx() * l.ny())};
    for (int j = 0; j < l.ny(); ++j)
        for (int i = 0; i < l.nx(); ++i) {
            std::vector<const Middle*> near = around(l, all, i, j, 1);
            if (near.empty()) continue;
            if (near.size() < 4) near = around(l, all, i, j, 2); // at an edge: straight on from the two rows beside it
            field.N.col(l.node(i, j)) = fit(near, model.skin->grid.x[static_cast<std::size_t>(i)], model.skin->grid.y[static_cast<std::size_t>(j)]);
        }
    return field;
}

SkinPoint skin_point_large(const LargeModel& model, const LargeField& field, double x, double y)
{
    const Skin& skin = *model.skin;
    const SkinLayout l{skin.grid};
    if (field.u.size() != skin.body.dofs || field.N.cols() != l.nx() * l.ny()) throw std::invalid_argument("skin_point_large: not the field of this skin");
    const ElementPlace e = find_element(skin, x, y, "skin_point_large: ");
    SkinPoint p;
    read_bending(skin, field.u, e, p);
    read_displacements(skin, field.u, e, p);
    Eigen::Vector3d N = Eigen::Vector3d::Zero();
    for (int c = 0; c < 4; ++c) {
        const double weight = (c % 2 == 0 ? 1 - e.x.s : e.x.s) * (c / 2 == 0 ? 1 - e.y.s : e.y.s);
        N += weight * field.N.col(l.node(e.x.index + c % 2, e.y.index + c / 2));
    }
    p.N_x = N(0), p.N_y = N(1), p.N_xy = N(2);
    return p;
}

FaceStress face_stress(const SheetSection& sheet, const SkinPoint& p)
{
    const double n = 1 / sheet.thickness, m = 6 / (sheet.thickness * sheet.thickness);
    FaceStress s;
    s.membrane = mises(n * p.N_x, n * p.N_y, n * p.N_xy);
    s.bending = mises(m * p.M_x, m * p.M_y, m * p.M_xy);
    s.top = mises(n * p.N_x + m * p.M_x, n * p.N_y + m * p.M_y, n * p.N_xy + m * p.M_xy);
    s.bottom = mises(n * p.N_x - m * p.M_x, n * p.N_y - m * p.M_y, n * p.N_xy - m * p.M_xy);
    return s;
}

std::vector<EdgeFlow> edge_flow_large(const LargeModel& model, const LargeField& field, int edge, int stations)
{
    return edge_flow(model.skin->model, edge, stations, [&](double x, double y) { return skin_point_large(model, field, x, y); });
}

} // namespace thinskin::fem
