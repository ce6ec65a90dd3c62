#pragma once
#include "fem/body.h"
#include "fem/room.h"
#include "fem/several.h"

#include <cstdint>
#include <stdexcept>

namespace thinskin::fem {

/// A body's matrix is singular or not positive definite; `dof` is where elimination found nothing left to hold it.
class SingularMatrix : public std::runtime_error {
public:
    SingularMatrix(int dof_in, double ratio);
    int dof;
};

/// D^-1/2 L^-1 P b kept only on the supernodes that b reaches, in ascending order (theory FE-6).
struct Column {
    std::vector<int> blocks;             ///< supernode numbers, ascending
    std::vector<int> start;              ///< offset of each in `values`
    std::vector<double> values;
};

/// The two columns' product a^T K^-1 b: only common supernodes meet. Summed in ascending order: same bits every time.
[[nodiscard]] double dot(const Column& a, const Column& b);

class Factor;
/// The same with a whole vector in elimination order, and s a added to one.
[[nodiscard]] double dot(const Factor& f, const Column& a, const Vector& x);
void add(const Factor& f, const Column& a, double s, Vector& x);

/// One supernode: consecutive unknowns first..first+width-1 with a common structure below.
struct Block {
    int first = 0, width = 0, parent = -1;
    std::vector<int> below;              ///< later unknowns this one touches, ascending
    Eigen::Index start = 0;              ///< of its columns in Factor::values
};

/// K = P^T G G^T P over the unsupported dofs, G lower triangular with D^1/2 taken in: G = L D^1/2.
class Factor {
public:
    std::uint64_t id = 0;                ///< never reused, so that a cache cannot mistake a new factor for an old one
    std::vector<int> position;           ///< per dof: place in elimination order, -1 when supported
    std::vector<int> dof;                ///< per place: dof
    std::vector<int> block_of;           ///< per place: supernode
    std::vector<Block> blocks;
    std::shared_ptr<const Room> values;  ///< columns of all supernodes one after the other, (width + below) figures each; null: pattern only

    /// (width + below) x width: lower triangle, then the rows below; what stands above the diagonal is anything.
    [[nodiscard]] Eigen::Map<const Matrix> L(const Block& b) const
    {
        return {values->data() + b.start, b.width + static_cast<Eigen::Index>(b.below.size()), b.width};
    }
    [[nodiscard]] int size() const { return static_cast<int>(dof.size()); }
    void forward(Vector& x) const;       ///< x <- G^-1 x, in elimination order
    void backward(Vector& x) const;      ///< x <- G^-T x
    void forward(Several<4>::Pieces& x) const;   ///< the same for several columns at once: the factor is read once
    void forward(Several<8>::Pieces& x) const;
    void backward(Several<4>::Pieces& x) const;
    void backward(Several<8>::Pieces& x) const;
    /// Forward-only solve of a sparse right-hand side along the elimination tree. `work` holds size() zeros, before and after.
    [[nodiscard]] Column column(const Row& row, Vector& work) const;
};

/// Elimination order and structure of a pattern, no figures in it: for many matrices of one pattern.
[[nodiscard]] Factor analyse_pattern(const Sparse& K, const std::vector<char>& supported, const std::vector<Spot>& spots = {});
/// Factor of K on an analysed pattern (every entry of K lies in it). Throws SingularMatrix as factorise().
[[nodiscard]] std::shared_ptr<const Factor> factorise(const Sparse& K, const Factor& pattern);

} // namespace thinskin::fem
