#include "fem/ordering.h"

#include <Eigen/OrderingMethods>

#include <algorithm>
#include <cstdint>

namespace thinskin::fem {
namespace {

/// Free rows of a column (K's rows ascend), itself among them, ascending. `rows` is written anew: one room for all columns.
void free_rows(const Sparse& K, int column, const std::vector<char>& supported, std::vector<int>& rows)
{
    rows.clear();
    bool itself = false;
    for (Sparse::InnerIterator it(K, column); it; ++it) {
        const int row = static_cast<int>(it.row());
        if (row != column && supported[static_cast<std::size_t>(row)]) continue;
        itself = itself || row == column;
        rows.push_back(row);
    }
    if (!itself) rows.insert(std::lower_bound(rows.begin(), rows.end(), column), column);
}

/// Column d lists the same rows as the one before it, both of them among the rows: then they are one group.
bool as_the_one_before(const Sparse& K, int d)
{
    const int *outer = K.outerIndexPtr(), *begin = K.innerIndexPtr() + outer[d], *end = K.innerIndexPtr() + outer[d + 1];
    return K.isCompressed() && outer[d] - outer[d - 1] == end - begin && std::equal(begin, end, K.innerIndexPtr() + outer[d - 1])
        && std::binary_search(begin, end, d - 1) && std::binary_search(begin, end, d);
}

std::uint64_t hash_of(const std::vector<int>& rows)
{
    std::uint64_t h = 1469598103934665603ULL;
    for (const int r : rows) h = (h ^ static_cast<std::uint64_t>(r)) * 1099511628211ULL;
    return h;
}

using Lists = std::vector<std::vector<int>>;

/// Structure of every column of the factor, in the given order; parent = first entry.
Lists structures(const Lists& neighbours, const std::vector<int>& order, const std::vector<int>& place)
{
    const std::size_t n = order.size();
    Lists structure(n), children(n);
    std::vector<int> seen(n, -1);
    for (std::size_t k = 0; k < n; ++k) {
        std::vector<int>& s = structure[k];
        const auto take = [&](int p) {
            if (p > static_cast<int>(k) && seen[static_cast<std::size_t>(p)] != static_cast<int>(k)) {
                seen[static_cast<std::size_t>(p)] = static_cast<int>(k);
                s.push_back(p);
            }
        };
        for (const int g : neighbours[static_cast<std::size_t>(order[k])]) take(place[static_cast<std::size_t>(g)]);
        for (const int c : children[k])
            for (const int p : structure[static_cast<std::size_t>(c)]) take(p);
        std::sort(s.begin(), s.end());
        if (!s.empty()) children[static_cast<std::size_t>(s.front())].push_back(static_cast<int>(k));
    }
    return structure;
}

/// New place of every old place so that each subtree is consecutive.
std::vector<int> postorder(const Lists& structure)
{
    const std::size_t n = structure.size();
    Lists children(n);
    std::vector<int> roots, label(n, -1);
    for (std::size_t k = 0; k < n; ++k) {
        if (structure[k].empty()) roots.push_back(static_cast<int>(k));
        else children[static_cast<std::size_t>(structure[k].front())].push_back(static_cast<int>(k));
    }
    int next = 0;
    std::vector<std::pair<int, std::size_t>> stack;
    for (const int root : roots) {
        stack.emplace_back(root, 0);
        while (!stack.empty()) {
            auto& [k, child] = stack.back();
            const std::vector<int>& below = children[static_cast<std::size_t>(k)];
            if (child < below.size()) {
                const int down = below[child++];
                stack.emplace_back(down, 0);
            } else {
                label[static_cast<std::size_t>(k)] = next++;
                stack.pop_back();
            }
        }
    }
    return label;
}

std::vector<int> minimum_degree(const Lists& neighbours)
{
    const int n = static_cast<int>(neighbours.size());
    std::vector<Eigen::Triplet<double>> entries;
    for (int g = 0; g < n; ++g) {
        entries.emplace_back(g, g, 1.0);
        for (const int other : neighbours[static_cast<std::size_t>(g)]) entries.emplace_back(other, g, 1.0);
    }
    Sparse pattern(n, n);
    pattern.setFromTriplets(entries.begin(), entries.end());
    Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int> permutation;
    Eigen::AMDOrdering<int>{}(pattern, permutation);
    return {permutation.indices().data(), permutation.indices().data() + n}; // place -> group
}

std::vector<int> inverse(const std::vector<int>& order)
{
    std::vector<int> place(order.size());
    for (std::size_t k = 0; k < order.size(); ++k) place[static_cast<std::size_t>(order[k])] = static_cast<int>(k);
    return place;
}

/// Joins a column to the run before it when that run ends in its child and few zeros are added.
void join_supernodes(const Lists& structure, Symbolic& s)
{
    const std::size_t n = structure.size();
    for (std::size_t k = 0; k < n; ++k) {
        const bool chained = k > 0 && !structure[k - 1].empty() && structure[k - 1].front() == static_cast<int>(k);
        const std::size_t run = chained ? k - static_cast<std::size_t>(s.first.back()) : 0;
        const std::size_t tall = chained ? structure[static_cast<std::size_t>(s.first.back())].size() : 0;
        const std::size_t padding = chained ? structure[k].size() + run - tall : 0; // extra rows in the run's first column
        if (!chained || padding > 4 + tall / 8) s.first.push_back(static_cast<int>(k));
    }
    s.first.push_back(static_cast<int>(n));
    std::vector<int> owner(n);
    for (std::size_t b = 0; b + 1 < s.first.size(); ++b)
        for (int k = s.first[b]; k < s.first[b + 1]; ++k) owner[static_cast<std::size_t>(k)] = static_cast<int>(b);
    for (std::size_t b = 0; b + 1 < s.first.size(); ++b) {
        s.below.push_back(structure[static_cast<std::size_t>(s.first[b + 1] - 1)]);
        s.parent.push_back(s.below.back().empty() ? -1 : owner[static_cast<std::size_t>(s.below.back().front())]);
    }
}

} // namespace

Groups group_dofs(const Sparse& K, const std::vector<char>& supported)
{
    const int n = static_cast<int>(K.cols());
    Groups groups;
    Lists patterns;
    std::vector<std::uint64_t> hash; // per group
    std::vector<int> group_of(static_cast<std::size_t>(n), -1), rows;
    /// Who has the same pattern stands in it: only the column's own rows are asked.
    const auto same_pattern = [&](int d, std::uint64_t h) {
        for (const int r : rows) {
            const int g = r < d ? group_of[static_cast<std::size_t>(r)] : -1;
            if (g >= 0 && hash[static_cast<std::size_t>(g)] == h && patterns[static_cast<std::size_t>(g)] == rows) return g;
        }
        return -1;
    };
    for (int d = 0; d < n; ++d) {
        if (supported[static_cast<std::size_t>(d)]) continue;
        if (d > 0 && group_of[static_cast<std::size_t>(d) - 1] >= 0 && as_the_one_before(K, d)) {
            const int g = group_of[static_cast<std::size_t>(d)] = group_of[static_cast<std::size_t>(d) - 1];
            groups.dofs[static_cast<std::size_t>(g)].push_back(d);
            continue;
        }
        free_rows(K, d, supported, rows);
        const std::uint64_t h = hash_of(rows);
        int g = same_pattern(d, h);
        if (g < 0) {
            g = static_cast<int>(patterns.size());
            patterns.push_back(rows);
            hash.push_back(h);
            groups.dofs.emplace_back();
        }
        groups.dofs[static_cast<std::size_t>(g)].push_back(d);
        group_of[static_cast<std::size_t>(d)] = g;
    }
    for (std::size_t g = 0; g < patterns.size(); ++g) {
        std::vector<int> list;
        for (const int r : patterns[g])
            if (const int other = group_of[static_cast<std::size_t>(r)]; list.empty() || list.back() != other) list.push_back(other);
        std::sort(list.begin(), list.end());
        list.erase(std::unique(list.begin(), list.end()), list.end());
        list.erase(std::find(list.begin(), list.end(), static_cast<int>(g)));
        groups.neighbours.push_back(std::move(list));
    }
    return groups;
}

Symbolic analyse(const Groups& groups)
{
    Symbolic s;
    const std::vector<int> degree_order = minimum_degree(groups.neighbours);
    Lists structure = structures(groups.neighbours, degree_order, inverse(degree_order));
    const std::vector<int> label = postorder(structure);
    const std::size_t n = structure.size();
    s.order.resize(n);
    Lists relabelled(n);
    for (std::size_t k = 0; k < n; ++k) {
        const auto to = static_cast<std::size_t>(label[k]);
        s.order[to] = degree_order[k];
        for (int& p : structure[k]) p = label[static_cast<std::size_t>(p)];
        std::sort(structure[k].begin(), structure[k].end());
        relabelled[to] = std::move(structure[k]);
    }
    join_supernodes(relabelled, s);
    return s;
}

} // namespace thinskin::fem
