#pragma once
#include <string>
#include <vector>

/// What `check --spread` answers: the case over the ranges of its assumptions.
namespace thinskin::results {

struct SpreadInput {
    std::string what;                ///< "thickness of the skin"
    std::string range;               ///< "-10 % .. +10 %"
    double rank_correlation = 0;     ///< of the least margin with this input, Spearman; + = more of it, more margin
};

struct Quantile { double share = 0, margin = 0; };

struct Spread {
    int samples = 0;                 ///< run
    int pass = 0, fail = 0, not_covered = 0, not_solved = 0;
    double nominal_margin = 0;
    std::vector<Quantile> quantiles; ///< of the least margin of those with a figure, ascending
    std::vector<SpreadInput> inputs; ///< the one that matters most first
    std::string headline;
};

} // namespace thinskin::results
