#include "fem/several.h"

#include <stdexcept>

namespace thinskin::fem {

Matrix symmetric_product(const Sparse& K, const Matrix& X)
{
    if (K.rows() != K.cols() || K.cols() != X.rows()) throw std::invalid_argument("symmetric_product: the matrices do not fit");
    Matrix Y(X.rows(), X.cols());
    by_eights(X.cols(), [&]<int Width>(Several<Width>, Eigen::Index first, Eigen::Index count) {
        using Columns = Several<Width>;
        const typename Columns::Pieces x = Columns::from(X, first, count);
        typename Columns::Pieces y(x.rows(), x.cols());
        for (Eigen::Index c = 0; c < K.outerSize(); ++c) {
            typename Columns::Piece sum = Columns::Piece::Zero();
            for (Sparse::InnerIterator it(K, c); it; ++it) sum += it.value() * x.col(it.row());
            y.col(c) = sum;
        }
        Columns::to(Y, first, count, y);
    });
    return Y;
}

} // namespace thinskin::fem
