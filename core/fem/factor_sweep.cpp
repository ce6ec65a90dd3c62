// Solves with several right-hand sides at once. By itself, because here a product and its sum are rounded once (core/CMakeLists.txt).
#include "fem/factor.h"

#include <algorithm>

namespace thinskin::fem {
namespace {

Eigen::Index tallest(const Factor& f)
{
    Eigen::Index most = 0;
    for (const Block& b : f.blocks) most = std::max(most, b.width + static_cast<Eigen::Index>(b.below.size()));
    return most;
}

template <int Width> struct Sweep {
    using Piece = typename Several<Width>::Piece;
    using Pieces = typename Several<Width>::Pieces;

    /// The block's own unknowns, then those below it: y <- L^-1 y, and what they take from those below.
    static void forward(const Eigen::Map<const Matrix>& L, Pieces& y)
    {
        const Eigen::Index rows = L.rows(), width = L.cols();
        Eigen::Index k = 0;
        for (; k + 4 <= width; k += 4) {
            const double *const p = L.col(k).data(), *const q = L.col(k + 1).data(), *const r = L.col(k + 2).data(), *const s = L.col(k + 3).data();
            const Piece a = y.col(k) * (1 / p[k]);
            const Piece b = (y.col(k + 1) - p[k + 1] * a) * (1 / q[k + 1]);
            const Piece c = (y.col(k + 2) - p[k + 2] * a - q[k + 2] * b) * (1 / r[k + 2]);
            const Piece d = (y.col(k + 3) - p[k + 3] * a - q[k + 3] * b - r[k + 3] * c) * (1 / s[k + 3]);
            y.col(k) = a, y.col(k + 1) = b, y.col(k + 2) = c, y.col(k + 3) = d;
            for (Eigen::Index i = k + 4; i < rows; ++i) y.col(i) = y.col(i) - p[i] * a - q[i] * b - r[i] * c - s[i] * d;
        }
        for (; k < width; ++k) {
            const Piece a = y.col(k) * (1 / L(k, k));
            y.col(k) = a;
            for (Eigen::Index i = k + 1; i < rows; ++i) y.col(i) -= L(i, k) * a;
        }
    }

    /// y <- L^-T y of the block's own unknowns, those below known.
    static void backward(const Eigen::Map<const Matrix>& L, Pieces& y)
    {
        const Eigen::Index rows = L.rows(), whole = L.cols() / 4 * 4;
        for (Eigen::Index k = L.cols() - 1; k >= whole; --k) {
            Piece a = y.col(k);
            for (Eigen::Index i = k + 1; i < rows; ++i) a -= L(i, k) * y.col(i);
            y.col(k) = a * (1 / L(k, k));
        }
        for (Eigen::Index k = whole - 4; k >= 0; k -= 4) {
            const double *const p = L.col(k).data(), *const q = L.col(k + 1).data(), *const r = L.col(k + 2).data(), *const s = L.col(k + 3).data();
            Piece a = y.col(k), b = y.col(k + 1), c = y.col(k + 2), d = y.col(k + 3);
            for (Eigen::Index i = k + 4; i < rows; ++i) {
                const Piece v = y.col(i);
                a -= p[i] * v, b -= q[i] * v, c -= r[i] * v, d -= s[i] * v;
            }
            y.col(k + 3) = d = d * (1 / s[k + 3]);
            y.col(k + 2) = c = (c - r[k + 3] * d) * (1 / r[k + 2]);
            y.col(k + 1) = b = (b - q[k + 2] * c - q[k + 3] * d) * (1 / q[k + 1]);
            y.col(k) = (a - p[k + 1] * b - p[k + 2] * c - p[k + 3] * d) * (1 / p[k]);
        }
    }

    static void forward(const Factor& f, Pieces& x)
    {
        Pieces y(Width, tallest(f));
        for (const Block& b : f.blocks) {
            const auto below = static_cast<Eigen::Index>(b.below.size());
            if (!(x.middleCols(b.first, b.width) != 0).any()) continue; // a few loads leave most of the sheet untouched; NaN is not 0
            y.leftCols(b.width) = x.middleCols(b.first, b.width);
            y.middleCols(b.width, below).setZero();
            forward(f.L(b), y);
            x.middleCols(b.first, b.width) = y.leftCols(b.width);
            for (Eigen::Index k = 0; k < below; ++k) x.col(b.below[static_cast<std::size_t>(k)]) += y.col(b.width + k);
        }
    }

    static void backward(const Factor& f, Pieces& x)
    {
        Pieces y(Width, tallest(f));
        for (auto b = f.blocks.rbegin(); b != f.blocks.rend(); ++b) {
            y.leftCols(b->width) = x.middleCols(b->first, b->width);
            for (std::size_t k = 0; k < b->below.size(); ++k) y.col(b->width + static_cast<Eigen::Index>(k)) = x.col(b->below[k]);
            backward(f.L(*b), y);
            x.middleCols(b->first, b->width) = y.leftCols(b->width);
        }
    }
};

} // namespace

void Factor::forward(Several<4>::Pieces& x) const { Sweep<4>::forward(*this, x); }
void Factor::forward(Several<8>::Pieces& x) const { Sweep<8>::forward(*this, x); }
void Factor::backward(Several<4>::Pieces& x) const { Sweep<4>::backward(*this, x); }
void Factor::backward(Several<8>::Pieces& x) const { Sweep<8>::backward(*this, x); }

} // namespace thinskin::fem
