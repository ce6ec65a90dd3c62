#pragma once
#include "pipeline/analyse.h"
#include "results/proposal.h"
#include "search/candidate.h"
#include "search/evaluate.h"
#include "search/space.h"

#include <functional>

namespace thinskin::search {

/// How far the search is; seconds_left < 0: not known yet.
struct Progress { std::string stage; std::size_t done = 0, of = 0; double seconds_left = -1; };

struct Options {
    std::size_t schemes = 0;             ///< at most so many of the space, evenly spaced; 0: all
    bool exhaustive = false;             ///< every scheme that can be built is solved: for tests of the rest
    unsigned threads = 0;                ///< 0: as many as there are cores, at most four
    std::function<void(const Progress&)> progress = {}; ///< on the calling thread
};

struct Searched {
    model::Case written;                 ///< the case without copies, which schemes are applied to
    std::vector<Candidate> candidates;   ///< the space in its order
    std::vector<std::size_t> front;      ///< indices, fewest holes, then mass, then cost, then margin
    results::ProposalCounts counts;
    std::vector<std::string> cautions;
    std::string why_empty;
    bool stopped = false;
};

/// The front over holes, mass, cost class and least margin of all schemes that hold, exactly as if every one had been solved:
/// a scheme is left unsolved only when an upper bound of its margin is below the margin wanted, or when a scheme that holds beats it at
/// that upper bound. Same answer on any number of threads: what is solved next is decided between rounds of a fixed size.
[[nodiscard]] Searched search(const model::Case& c, const Options& options, std::stop_token stop = {});

[[nodiscard]] unsigned threads_of(const Options& options);

} // namespace thinskin::search
