// Nested dissection (theory FE-6): a part is cut along the line through its middle, across its longer side; what lies on both sides is
// eliminated first, each cut again in the same way, and the line last.
#include "fem/ordering.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

namespace thinskin::fem {
namespace {

constexpr std::size_t uncut = 32;        // unknowns that are eliminated in one block: smaller ones cost more than the zeros they save

enum Side : char { none, low, high };

class Dissection {
public:
    Dissection(const Groups& groups, const std::vector<Spot>& spots) : g_(groups), spot_(spots), side_(groups.dofs.size(), none) {}

    Symbolic run()
    {
        std::vector<int> part(g_.dofs.size());
        std::iota(part.begin(), part.end(), 0);
        const auto end = part.end();
        for (auto begin = part.begin(); begin != end;) {
            const auto next = gather_connected(begin, end);
            cut(begin, next);
            begin = next;
        }
        s_.first.push_back(static_cast<int>(s_.order.size()));
        find_structure();
        return std::move(s_);
    }

private:
    using At = std::vector<int>::iterator;

    const Groups& g_;
    const std::vector<Spot>& spot_;
    std::vector<char> side_;
    Symbolic s_;

    [[nodiscard]] double along(int group, bool x) const { return x ? spot_[static_cast<std::size_t>(group)].x : spot_[static_cast<std::size_t>(group)].y; }
    char& side(int group) { return side_[static_cast<std::size_t>(group)]; }
    [[nodiscard]] const std::vector<int>& neighbours(int group) const { return g_.neighbours[static_cast<std::size_t>(group)]; }

    /// Brings all that hangs together with the first group to the front: bending and stretching of a flat sheet are two parts.
    At gather_connected(At begin, At end)
    {
        std::vector<int> reached{*begin};
        side(*begin) = low;
        for (std::size_t k = 0; k < reached.size(); ++k)
            for (const int n : neighbours(reached[k]))
                if (side(n) == none) side(n) = low, reached.push_back(n);
        const At next = std::stable_partition(begin, end, [this](int group) { return side(group) == low; });
        for (const int group : reached) side(group) = none;
        return next;
    }

    [[nodiscard]] double extent(At begin, At end, bool x) const
    {
        const auto [least, most] = std::minmax_element(begin, end, [&](int a, int b) { return along(a, x) < along(b, x); });
        return along(*most, x) - along(*least, x);
    }

    void cut(At begin, At end)
    {
        if (begin == end) return;
        std::size_t unknowns = 0;
        for (At at = begin; at != end; ++at) unknowns += g_.dofs[static_cast<std::size_t>(*at)].size();
        const double wide = extent(begin, end, true), tall = extent(begin, end, false);
        if (unknowns <= uncut || (wide == 0 && tall == 0)) {
            take_block(begin, end, wide >= tall);
            return;
        }
        const auto [above, line] = divide(begin, end, wide >= tall);
        cut(begin, above);
        cut(above, line);
        take_block(line, end, wide < tall);
    }

    /// Below the middle line, above it, and the line itself with whoever would still meet a group on the other side.
    std::pair<At, At> divide(At begin, At end, bool x)
    {
        const At middle = begin + (end - begin) / 2;
        std::nth_element(begin, middle, end, [&](int a, int b) { return along(a, x) < along(b, x); });
        const double at = along(*middle, x);
        for (At k = begin; k != end; ++k) side(*k) = along(*k, x) < at ? low : along(*k, x) > at ? high : none;
        for (At k = begin; k != end; ++k)
            if (side(*k) == low && std::any_of(neighbours(*k).begin(), neighbours(*k).end(), [this](int n) { return side(n) == high; })) side(*k) = none;
        const At above = std::partition(begin, end, [this](int group) { return side(group) == low; });
        const At line = std::partition(above, end, [this](int group) { return side(group) == high; });
        for (At k = begin; k != end; ++k) side(*k) = none;
        return {above, line};
    }

    void take_block(At begin, At end, bool x)
    {
        if (begin == end) return;
        std::sort(begin, end, [&](int a, int b) { return along(a, x) != along(b, x) ? along(a, x) < along(b, x) : a < b; });
        s_.first.push_back(static_cast<int>(s_.order.size()));
        s_.order.insert(s_.order.end(), begin, end);
    }

    /// Of every block: later places that its own groups meet, or that a block before it brings.
    void find_structure()
    {
        const std::size_t blocks = s_.first.size() - 1;
        std::vector<int> place(s_.order.size()), owner(s_.order.size()), seen(s_.order.size(), -1);
        std::vector<std::vector<int>> children(blocks);
        for (std::size_t k = 0; k < place.size(); ++k) place[static_cast<std::size_t>(s_.order[k])] = static_cast<int>(k);
        for (std::size_t b = 0; b < blocks; ++b)
            for (int k = s_.first[b]; k < s_.first[b + 1]; ++k) owner[static_cast<std::size_t>(k)] = static_cast<int>(b);
        for (std::size_t b = 0; b < blocks; ++b) {
            std::vector<int> below;
            const auto take = [&](int p) {
                if (p < s_.first[b + 1] || seen[static_cast<std::size_t>(p)] == static_cast<int>(b)) return;
                seen[static_cast<std::size_t>(p)] = static_cast<int>(b);
                below.push_back(p);
            };
            for (int k = s_.first[b]; k < s_.first[b + 1]; ++k)
                for (const int n : neighbours(s_.order[static_cast<std::size_t>(k)])) take(place[static_cast<std::size_t>(n)]);
            for (const int c : children[b])
                for (const int p : s_.below[static_cast<std::size_t>(c)]) take(p);
            std::sort(below.begin(), below.end());
            s_.parent.push_back(below.empty() ? -1 : owner[static_cast<std::size_t>(below.front())]);
            if (!below.empty()) children[static_cast<std::size_t>(s_.parent.back())].push_back(static_cast<int>(b));
            s_.below.push_back(std::move(below));
        }
    }
};

} // namespace

Symbolic dissect(const Groups& groups, const std::vector<Spot>& spots)
{
    if (spots.size() != groups.dofs.size()) throw std::invalid_argument("dissect: one spot per group");
    for (const Spot& s : spots)
        if (!std::isfinite(s.x) || !std::isfinite(s.y)) throw std::invalid_argument("dissect: a spot is not a number");
    return Dissection(groups, spots).run();
}

} // namespace thinskin::fem
