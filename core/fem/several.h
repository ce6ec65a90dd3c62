#pragma once
#include "fem/types.h"

#include <algorithm>

/// Internal to core/fem: several columns worked on at once, so that a matrix is read once for all of them.
namespace thinskin::fem {

/// Columns of a matrix, those of one row beside each other.
template <int Width> struct Several {
    using Piece = Eigen::Array<double, Width, 1>;
    using Pieces = Eigen::Array<double, Width, Eigen::Dynamic>; ///< one column for each row

    /// Columns first .. first + count - 1; what is missing of the width is zeros.
    [[nodiscard]] static Pieces from(const Matrix& x, Eigen::Index first, Eigen::Index count)
    {
        Pieces part(Width, x.rows());
        part.topRows(count) = x.middleCols(first, count).transpose();
        part.bottomRows(Width - count).setZero();
        return part;
    }
    static void to(Matrix& x, Eigen::Index first, Eigen::Index count, const Pieces& part) { x.middleCols(first, count) = part.topRows(count).transpose(); }

    /// The same of some rows only, in the order of `rows`.
    [[nodiscard]] static Pieces from(const Matrix& x, Eigen::Index first, Eigen::Index count, const std::vector<int>& rows)
    {
        Pieces part = Pieces::Zero(Width, static_cast<Eigen::Index>(rows.size()));
        for (Eigen::Index c = 0; c < count; ++c)
            for (std::size_t k = 0; k < rows.size(); ++k) part(c, static_cast<Eigen::Index>(k)) = x(rows[k], first + c);
        return part;
    }
    static void to(Matrix& x, Eigen::Index first, Eigen::Index count, const Pieces& part, const std::vector<int>& rows)
    {
        for (Eigen::Index c = 0; c < count; ++c)
            for (std::size_t k = 0; k < rows.size(); ++k) x(rows[k], first + c) = part(c, static_cast<Eigen::Index>(k));
    }
};

/// Any number of columns, eight by eight, the last four or fewer by themselves: run(Several<8>{}, first column, count).
template <class Run> void by_eights(Eigen::Index columns, const Run& run)
{
    for (Eigen::Index first = 0; first < columns; first += 8) {
        const Eigen::Index count = std::min<Eigen::Index>(8, columns - first);
        if (count > 4) run(Several<8>{}, first, count);
        else run(Several<4>{}, first, count);
    }
}

/// K X of a symmetric K with both triangles, K n x n, X n x any; summed in ascending order: the same bits every time.
[[nodiscard]] Matrix symmetric_product(const Sparse& K, const Matrix& X);

} // namespace thinskin::fem
