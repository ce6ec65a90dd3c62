#pragma once
#include "pipeline/analyse.h"
#include "results/proposal.h"
#include "search/candidate.h"
#include "search/evaluate.h"
#include "search/progress.h"
#include "search/space.h"

#include <map>
#include <memory>

namespace thinskin::search {

struct Options {
    std::size_t schemes = 0;             ///< at most so many of the space, evenly spaced; 0: all
    bool exhaustive = false;             ///< every scheme that can be built is solved: for tests of the rest
    unsigned threads = 0;                ///< 0: as many as there are cores, at most four
    /// Called on the thread that called search() or propose(), and on no other, at most some ten times a second. It may ask the stop
    /// token's source to stop; it must not throw.
    Tell progress = {};
};

struct Searched {
    model::Case written;                 ///< the case without copies, which schemes are applied to
    std::vector<Candidate> candidates;   ///< the space in its order
    std::vector<std::size_t> front;      ///< indices, fewest holes, then mass, then cost, then margin
    std::map<std::size_t, std::shared_ptr<const results::Outcome>> outcomes; ///< of the front
    results::ProposalCounts counts;
    std::vector<std::string> cautions;
    std::string why_empty;
    bool stopped = false;
};

/// The front over holes, mass, cost class and least margin of all schemes that hold, exactly as if every one had been solved:
/// a scheme is left unsolved only when an upper bound of its margin is below the margin wanted, or when a scheme that holds beats it at
/// that upper bound. Stopped through `stop`, from any thread: returns within one analysis (about a second at most), `stopped` is set, and
/// the front is that of the schemes solved until then. Same answer on any number of threads: what is solved next is decided between rounds of a fixed size.
[[nodiscard]] Searched search(const model::Case& c, const Options& options, std::stop_token stop = {});

[[nodiscard]] unsigned threads_of(const Options& options);

} // namespace thinskin::search
