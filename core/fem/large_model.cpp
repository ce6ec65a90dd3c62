// The tangent's pattern and the places of every element in it, found once per skin (theory FE-21).
#include "fem/large_model.h"

#include <algorithm>
#include <stdexcept>

namespace thinskin::fem {

LargeModel::LargeModel(std::shared_ptr<const Skin> skin_in) : skin(std::move(skin_in))
{
    add_sheet();
    add_ribs();
    make_pattern();
    find_entries();
    pattern = analyse_pattern(small, skin->body.supported, skin->body.spots);
}

void LargeModel::add_sheet()
{
    const SkinLayout l{skin->grid};
    const SkinElements& e = *skin->elements;
    piece_of.assign(e.missing.size(), -1);
    for (int j = 0; j + 1 < l.ny(); ++j)
        for (int i = 0; i + 1 < l.nx(); ++i) {
            if (e.missing[l.element(i, j)]) continue;
            const int cx = e.x_class[static_cast<std::size_t>(i)], cy = e.y_class[static_cast<std::size_t>(j)];
            const double lx = e.x_length[static_cast<std::size_t>(cx)], ly = e.y_length[static_cast<std::size_t>(cy)];
            const ElementBubbles b = element_bubbles(l, e, i, j);
            const std::array<unsigned, 3> key{static_cast<unsigned>(cx), static_cast<unsigned>(cy), b.edges};
            if (!elements_.contains(key)) elements_[key] = quadratic_sheet(skin->model.sheet, lx, ly, b.edges);
            if (!gradients_.contains({cx, cy})) gradients_[{cx, cy}] = sheet_gradients(lx, ly);
            QuadraticPiece piece;
            piece.element = &elements_[key];
            piece.sheet = gradients_[{cx, cy}].data();
            for (int k = 0; k < 16; ++k) piece.dofs.push_back(l.dof(i + k / 4 % 2, j + k / 8, k % 4));
            for (const int d : membrane_dofs(l, b, i, j)) piece.dofs.push_back(d);
            piece_of[l.element(i, j)] = static_cast<int>(pieces.size());
            pieces.push_back(std::move(piece));
        }
}

void LargeModel::add_ribs()
{
    const SkinLayout l{skin->grid};
    const SkinElements& e = *skin->elements;
    for (std::size_t n = 0; n < skin->model.ribs.size(); ++n) {
        const RibModel& rib = skin->model.ribs[n];
        const RibLine r = rib_line(skin->grid, rib);
        const int slope = r.along_x ? 1 : 2, axial = r.along_x ? 4 : 5;
        for (int k = r.first; k < r.last; ++k) {
            const int c = (r.along_x ? e.x_class : e.y_class)[static_cast<std::size_t>(k)];
            const double h = (r.along_x ? e.x_length : e.y_length)[static_cast<std::size_t>(c)];
            const std::array<int, 2> key{static_cast<int>(n), c};
            if (!ribs_.contains(key)) ribs_[key] = {quadratic_rib(rib, h), rib_gradients(h)};
            const int a = r.along_x ? l.dof(k, r.line, 0) : l.dof(r.line, k, 0);
            const int b = r.along_x ? l.dof(k + 1, r.line, 0) : l.dof(r.line, k + 1, 0);
            const int bubble = r.along_x ? e.x_bubble[static_cast<std::size_t>(k + (l.nx() - 1) * r.line)]
                                         : e.y_bubble[static_cast<std::size_t>(r.line + l.nx() * k)];
            QuadraticPiece piece;
            piece.element = &ribs_[key].element;
            piece.rib = ribs_[key].gradients.data();
            piece.bending = 4;
            piece.dofs = {a, a + slope, b, b + slope, a + axial, b + axial, bubble};
            pieces.push_back(std::move(piece));
        }
    }
}

/// All six dofs of a node meet all six of its (up to nine) neighbours; bubbles meet what their pieces hold.
void LargeModel::make_pattern()
{
    const SkinLayout l{skin->grid};
    const int dofs = skin->body.dofs;
    Sparse grid(dofs, dofs);
    const auto around = [](int i, int count) { return std::array<int, 2>{std::max(i - 1, 0), std::min(i + 1, count - 1)}; };
    Eigen::Index entries = 0;
    for (int j = 0; j < l.ny(); ++j)
        for (int i = 0; i < l.nx(); ++i) {
            const auto x = around(i, l.nx()), y = around(j, l.ny());
            for (int k = 0; k < 6; ++k) {
                grid.outerIndexPtr()[l.dof(i, j, k)] = static_cast<int>(entries);
                entries += 6 * (x[1] - x[0] + 1) * (y[1] - y[0] + 1);
            }
        }
    for (int d = l.grid_dofs(); d <= dofs; ++d) grid.outerIndexPtr()[d] = static_cast<int>(entries);
    grid.resizeNonZeros(entries);
    std::fill_n(grid.valuePtr(), entries, 0.0);
    int* index = grid.innerIndexPtr();
    for (int j = 0; j < l.ny(); ++j)
        for (int i = 0; i < l.nx(); ++i) {
            const auto x = around(i, l.nx()), y = around(j, l.ny());
            for (int k = 0; k < 6; ++k)
                for (int n = y[0]; n <= y[1]; ++n)
                    for (int m = x[0]; m <= x[1]; ++m)
                        for (int b = 0; b < 6; ++b) *index++ = l.dof(m, n, b);
        }
    std::vector<Eigen::Triplet<double>> extra;
    for (const QuadraticPiece& p : pieces)
        for (const int a : p.dofs)
            for (const int b : p.dofs)
                if (a >= l.grid_dofs() || b >= l.grid_dofs()) extra.emplace_back(a, b, 0.0);
    Sparse bubbles(dofs, dofs);
    bubbles.setFromTriplets(extra.begin(), extra.end());
    small = Sparse(grid + bubbles) + skin->body.K;
    small.makeCompressed();
}

void LargeModel::find_entries()
{
    for (QuadraticPiece& p : pieces) {
        p.entry.reserve(p.dofs.size() * p.dofs.size());
        for (const int column : p.dofs) {
            const int* const first = small.innerIndexPtr() + small.outerIndexPtr()[column];
            const int* const last = small.innerIndexPtr() + small.outerIndexPtr()[column + 1];
            const int* at = first;
            for (const int row : p.dofs) {
                if (at != first && at != last && *at == row) ++at; // dofs of one node follow each other
                else at = std::lower_bound(first, last, row) + 1;
                p.entry.push_back(static_cast<int>(at - 1 - small.innerIndexPtr()));
            }
        }
    }
}

void internal_force(const LargeModel& model, const Vector& u, Vector& force)
{
    force.noalias() = model.skin->body.K * u;
    for (const QuadraticPiece& p : model.pieces) {
        const PieceVector f = piece_force(p, piece_state(p, u));
        for (std::size_t k = 0; k < p.dofs.size(); ++k) force(p.dofs[k]) += f(static_cast<Eigen::Index>(k));
    }
}

void tangent(const LargeModel& model, const Vector& u, double geometric, Tangent& out)
{
    if (out.K.nonZeros() != model.small.nonZeros()) out.K = model.small;
    else std::copy_n(model.small.valuePtr(), model.small.nonZeros(), out.K.valuePtr());
    out.force.noalias() = model.skin->body.K * u;
    double* const values = out.K.valuePtr();
    for (const QuadraticPiece& p : model.pieces) {
        const PieceState state = piece_state(p, u);
        const PieceVector f = piece_force(p, state);
        const PieceMatrix T = piece_tangent(p, state, geometric);
        for (std::size_t k = 0; k < p.dofs.size(); ++k) out.force(p.dofs[k]) += f(static_cast<Eigen::Index>(k));
        for (std::size_t k = 0; k < p.entry.size(); ++k) values[p.entry[k]] += T.data()[k];
    }
}

std::shared_ptr<const LargeModel> make_large(std::shared_ptr<const Skin> skin)
{
    if (!skin) throw std::invalid_argument("make_large: no skin");
    return std::make_shared<const LargeModel>(std::move(skin));
}

const Skin& skin_of(const LargeModel& model) { return *model.skin; }

} // namespace thinskin::fem
