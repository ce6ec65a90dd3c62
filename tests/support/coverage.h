#pragma once
#include <array>
#include <map>
#include <string>

/// Which formula a published test holds, and how well its wanted values are sourced. Counted while the tests run, by the checks
/// themselves; docs/verification/coverage.md is made of it (tests/published/verification_coverage.cpp).
namespace thinskin::tests {

/// Where a wanted value comes from: read in a text, worked out by hand from the formula outside the program, recalled from a
/// printed table, an ultimate strength found in a laboratory or printed by a maker.
enum class From { read, recomputed, remembered, tested };

struct Coverage {
    std::map<std::string, std::array<int, 4>> counts; ///< formula id -> values by From
    std::string id;                                   ///< the formula that the checks hold now; empty: none
    From from = From::recomputed;
};
inline Coverage& coverage()
{
    static Coverage all;
    return all;
}

/// From here to the next call or the end of the test case, each value that is compared counts for this formula.
inline void holds(const std::string& id, From from)
{
    coverage().id = id;
    coverage().from = from;
}
/// What follows is compared for another reason (two of our own figures, an identity): it does not count.
inline void holds_nothing() { coverage().id.clear(); }

/// Called by each comparison.
inline void count_value()
{
    if (!coverage().id.empty()) ++coverage().counts[coverage().id][static_cast<std::size_t>(coverage().from)];
}

} // namespace thinskin::tests
