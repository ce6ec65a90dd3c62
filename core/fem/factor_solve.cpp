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

} // namespace

void Factor::forward(Vector& x) const
{
    Vector change(most_below(*this)); // one working room for all blocks
    for (const Block& b : blocks) {
        auto own = x.segment(b.first, b.width);
        L(b).topRows(b.width).triangularView<Eigen::Lower>().solveInPlace(own);
        const auto below = static_cast<Eigen::Index>(b.below.size());
        if (below == 0) continue;
        change.head(below).noalias() = L(b).bottomRows(below) * own;
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
        if (below > 0) own.noalias() -= L(*b).bottomRows(below).transpose() * later.head(below);
        L(*b).topRows(b->width).transpose().triangularView<Eigen::Upper>().solveInPlace(own);
    }
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
        L(b).topRows(b.width).triangularView<Eigen::Lower>().solveInPlace(own);
        const auto below = static_cast<Eigen::Index>(b.below.size());
        if (below > 0) {
            const Vector change = L(b).bottomRows(below) * own;
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
