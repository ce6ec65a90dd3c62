// Four columns and eight rows of a front at a time: what is added up stays in registers. The general routines of the matrix library
// pack their operands first, which at the sizes of a sheet's fronts costs as much as the product itself.
#include "fem/front.h"

namespace thinskin::fem {
namespace {

/// Rows row..row+Rows-1 of four columns from `column` on.
template <int Rows> void take_tile(Front& f, Eigen::Index row, Eigen::Index column, Eigen::Index first, Eigen::Index last)
{
    using Piece = Eigen::Array<double, Rows, 1>;
    Piece a = Piece::Zero(), b = a, c = a, d = a;
    for (Eigen::Index k = first; k < last; ++k) {
        const double* const from = &f(0, k);
        const Piece x = Eigen::Map<const Piece>(from + row);
        a += from[column] * x, b += from[column + 1] * x, c += from[column + 2] * x, d += from[column + 3] * x;
    }
    const auto take = [&](Eigen::Index at, const Piece& sum) { Eigen::Map<Piece>(&f(row, at)) -= sum; };
    take(column, a), take(column + 1, b), take(column + 2, c), take(column + 3, d);
}

void take_column(Front& f, Eigen::Index j, Eigen::Index first, Eigen::Index last)
{
    const Eigen::Index rows = f.rows() - j;
    for (Eigen::Index k = first; k < last; ++k) f.col(j).tail(rows) -= f(j, k) * f.col(k).tail(rows);
}

/// Rows row..row+Rows-1 of the four columns from k on.
template <int Rows> void solve_tile(Front& f, Eigen::Index row, Eigen::Index k)
{
    using Piece = Eigen::Array<double, Rows, 1>;
    const auto at = [&](Eigen::Index column) { return Eigen::Map<Piece>(&f(row, k + column)); };
    const Piece a = at(0) * (1 / f(k, k));
    const Piece b = (at(1) - a * f(k + 1, k)) * (1 / f(k + 1, k + 1));
    const Piece c = (at(2) - a * f(k + 2, k) - b * f(k + 2, k + 1)) * (1 / f(k + 2, k + 2));
    at(3) = (at(3) - a * f(k + 3, k) - b * f(k + 3, k + 1) - c * f(k + 3, k + 2)) * (1 / f(k + 3, k + 3));
    at(0) = a, at(1) = b, at(2) = c;
}

} // namespace

void solve_below(Front& f, Eigen::Index first, Eigen::Index last)
{
    Eigen::Index row = last;
    if (last - first == few_columns) {
        for (; row + 8 <= f.rows(); row += 8) solve_tile<8>(f, row, first);
        for (; row < f.rows(); ++row) solve_tile<1>(f, row, first);
    }
    const Eigen::Index rows = f.rows() - row;
    for (Eigen::Index k = first; k < last && rows > 0; ++k) {
        for (Eigen::Index j = first; j < k; ++j) f.col(k).tail(rows) -= f(k, j) * f.col(j).tail(rows);
        f.col(k).tail(rows) /= f(k, k);
    }
}

void take_panel(Front& f, Eigen::Index first, Eigen::Index last, Eigen::Index end)
{
    const Eigen::Index n = f.rows();
    Eigen::Index column = last;
    for (; column + few_columns <= end; column += few_columns) {
        Eigen::Index row = column;
        for (; row + 8 <= n; row += 8) take_tile<8>(f, row, column, first, last);
        for (; row + 4 <= n; row += 4) take_tile<4>(f, row, column, first, last);
        for (; row < n; ++row) take_tile<1>(f, row, column, first, last);
    }
    for (; column < end; ++column) take_column(f, column, first, last);
}

} // namespace thinskin::fem
