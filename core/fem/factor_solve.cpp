#include "fem/factor.h"

#include <algorithm>

namespace thinskin::fem {

namespace {

Eigen::Index most_below(const Factor& f)
{
    std::size_t most = 0;
    for (const Block& b : f.blocks) most = std::max(most, b.below.size());
    return static_cast<Eigen::Index>(most);
}

/// Four columns at once, those of one unknown beside each other: a figure of the factor is read once for eight operations.
constexpr Eigen::Index four = 4;
using Four = Eigen::Array<double, four, 1>;
using Fours = Eigen::Array<double, four, Eigen::Dynamic>; ///< one column for each unknown

/// y(r) += sum over the columns k of the part: L(first + r, k) x(k), four columns of L at a time.
void add_product(const Matrix& L, Eigen::Index first, const Eigen::Ref<const Fours>& x, Fours& y, Eigen::Index rows)
{
    const Eigen::Index whole = x.cols() / four * four;
    for (Eigen::Index k = 0; k < whole; k += four) {
        const double *a = &L(first, k), *b = &L(first, k + 1), *c = &L(first, k + 2), *d = &L(first, k + 3);
        const Four p = x.col(k), q = x.col(k + 1), r = x.col(k + 2), s = x.col(k + 3);
        for (Eigen::Index i = 0; i < rows; ++i) y.col(i) += a[i] * p + b[i] * q + c[i] * r + d[i] * s;
    }
    for (Eigen::Index k = whole; k < x.cols(); ++k) {
        const double* a = &L(first, k);
        const Four p = x.col(k);
        for (Eigen::Index i = 0; i < rows; ++i) y.col(i) += a[i] * p;
    }
}

/// x(k) -= sum over r of L(first + r, k) y(r)
void take_transposed(const Matrix& L, Eigen::Index first, const Fours& y, Eigen::Index rows, Eigen::Ref<Fours> x)
{
    const Eigen::Index whole = x.cols() / four * four;
    for (Eigen::Index k = 0; k < whole; k += four) {
        const double *a = &L(first, k), *b = &L(first, k + 1), *c = &L(first, k + 2), *d = &L(first, k + 3);
        Four p = Four::Zero(), q = p, r = p, s = p;
        for (Eigen::Index i = 0; i < rows; ++i) {
            const Four v = y.col(i);
            p += a[i] * v, q += b[i] * v, r += c[i] * v, s += d[i] * v;
        }
        x.col(k) -= p, x.col(k + 1) -= q, x.col(k + 2) -= r, x.col(k + 3) -= s;
    }
    for (Eigen::Index k = whole; k < x.cols(); ++k) {
        Four p = Four::Zero();
        for (Eigen::Index i = 0; i < rows; ++i) p += L(first + i, k) * y.col(i);
        x.col(k) -= p;
    }
}

void forward_four(const Factor& f, Fours& x)
{
    Fours change(four, most_below(f));
    for (const Block& b : f.blocks) {
        for (int k = 0; k < b.width; ++k) {
            const Four p = x.col(b.first + k) /= b.L(k, k);
            for (int i = k + 1; i < b.width; ++i) x.col(b.first + i) -= b.L(i, k) * p;
        }
        const auto below = static_cast<Eigen::Index>(b.below.size());
        if (below == 0) continue;
        change.leftCols(below).setZero();
        add_product(b.L, b.width, x.middleCols(b.first, b.width), change, below);
        for (Eigen::Index k = 0; k < below; ++k) x.col(b.below[static_cast<std::size_t>(k)]) -= change.col(k);
    }
}

void backward_four(const Factor& f, Fours& x)
{
    Fours later(four, most_below(f));
    for (auto b = f.blocks.rbegin(); b != f.blocks.rend(); ++b) {
        const auto below = static_cast<Eigen::Index>(b->below.size());
        for (Eigen::Index k = 0; k < below; ++k) later.col(k) = x.col(b->below[static_cast<std::size_t>(k)]);
        if (below > 0) take_transposed(b->L, b->width, later, below, x.middleCols(b->first, b->width));
        for (int k = b->width - 1; k >= 0; --k) {
            Four p = x.col(b->first + k);
            for (int i = k + 1; i < b->width; ++i) p -= b->L(i, k) * x.col(b->first + i);
            x.col(b->first + k) = p / b->L(k, k);
        }
    }
}

/// Any number of columns, four by four; what is missing of the last four is zeros.
template <class Sweep> void by_fours(Matrix& x, const Sweep& sweep)
{
    Fours part(four, x.rows());
    for (Eigen::Index first = 0; first < x.cols(); first += four) {
        const Eigen::Index count = std::min(four, x.cols() - first);
        part.topRows(count) = x.middleCols(first, count).transpose();
        part.bottomRows(four - count).setZero();
        sweep(part);
        x.middleCols(first, count) = part.topRows(count).transpose();
    }
}

} // namespace

void Factor::forward(Vector& x) const
{
    Vector change(most_below(*this)); // one working room for all blocks
    for (const Block& b : blocks) {
        auto own = x.segment(b.first, b.width);
        b.L.topRows(b.width).triangularView<Eigen::Lower>().solveInPlace(own);
        const auto below = static_cast<Eigen::Index>(b.below.size());
        if (below == 0) continue;
        change.head(below).noalias() = b.L.bottomRows(below) * own;
        for (Eigen::Index k = 0; k < below; ++k) x(b.below[static_cast<std::size_t>(k)]) -= change(k);
    }
}

void Factor::backward(Vector& x) const
{
    Vector later(most_below(*this));
    for (auto b = blocks.rbegin(); b != blocks.rend(); ++b) {
        auto own = x.segment(b->first, b->width);
        const auto below = static_cast<Eigen::Index>(b->below.size());
        for (Eigen::Index k = 0; k < below; ++k) later(k) = x(b->below[static_cast<std::size_t>(k)]);
        if (below > 0) own.noalias() -= b->L.bottomRows(below).transpose() * later.head(below);
        b->L.topRows(b->width).triangularView<Eigen::Lower>().transpose().solveInPlace(own);
    }
}

void Factor::forward(Matrix& x) const
{
    by_fours(x, [this](Fours& part) { forward_four(*this, part); });
}

void Factor::backward(Matrix& x) const
{
    by_fours(x, [this](Fours& part) { backward_four(*this, part); });
}

Column Factor::column(const Row& row, Vector& work) const
{
    Column c;
    std::vector<char> reached(blocks.size(), 0);
    for (const auto& [d, value] : row) {
        const int place = position[static_cast<std::size_t>(d)];
        if (place < 0) continue;
        work(place) += value;
        for (int b = block_of[static_cast<std::size_t>(place)]; b >= 0 && !reached[static_cast<std::size_t>(b)];
             b = blocks[static_cast<std::size_t>(b)].parent)
            reached[static_cast<std::size_t>(b)] = 1;
    }
    for (std::size_t k = 0; k < blocks.size(); ++k) {
        if (!reached[k]) continue;
        const Block& b = blocks[k];
        auto own = work.segment(b.first, b.width);
        b.L.topRows(b.width).triangularView<Eigen::Lower>().solveInPlace(own);
        const auto below = static_cast<Eigen::Index>(b.below.size());
        if (below > 0) {
            const Vector change = b.L.bottomRows(below) * own;
            for (Eigen::Index i = 0; i < below; ++i) work(b.below[static_cast<std::size_t>(i)]) -= change(i);
        }
        c.blocks.push_back(static_cast<int>(k));
        c.start.push_back(static_cast<int>(c.values.size()));
        c.values.insert(c.values.end(), own.data(), own.data() + b.width);
        own.setZero();
    }
    c.start.push_back(static_cast<int>(c.values.size()));
    return c;
}

namespace {

/// Calls with each piece of a column and the piece of a whole vector that it belongs to.
template <class Whole, class Use>
void pieces(const Factor& f, const Column& a, Whole& x, const Use& use)
{
    for (std::size_t k = 0; k < a.blocks.size(); ++k) {
        const int n = a.start[k + 1] - a.start[k];
        use(Eigen::Map<const Vector>(a.values.data() + a.start[k], n), x.segment(f.blocks[static_cast<std::size_t>(a.blocks[k])].first, n));
    }
}

} // namespace

double dot(const Factor& f, const Column& a, const Vector& x)
{
    double sum = 0;
    pieces(f, a, x, [&sum](const auto& own, const auto& whole) { sum += own.dot(whole); });
    return sum;
}

void add(const Factor& f, const Column& a, double s, Vector& x)
{
    pieces(f, a, x, [s](const auto& own, auto whole) { whole += s * own; });
}

double dot(const Column& a, const Column& b)
{
    double sum = 0;
    std::size_t i = 0, j = 0;
    while (i < a.blocks.size() && j < b.blocks.size()) {
        if (a.blocks[i] < b.blocks[j]) ++i;
        else if (b.blocks[j] < a.blocks[i]) ++j;
        else {
            const int n = a.start[i + 1] - a.start[i];
            sum += Eigen::Map<const Vector>(a.values.data() + a.start[i], n).dot(Eigen::Map<const Vector>(b.values.data() + b.start[j], n));
            ++i, ++j;
        }
    }
    return sum;
}

} // namespace thinskin::fem
