#pragma once
#include "results/proposal.h"
#include "search/search.h"

namespace thinskin::search {

struct ProposeOptions {
    Options search;
    bool robust = true;                  ///< the front again with each assumption at its bad end
    bool single_loss = true;             ///< the front again with one thing lost at a time
    std::size_t looked_at = 8;           ///< of the front, for the two above
};

struct Proposed {
    results::Proposal answer;
    std::vector<model::Case> cases;      ///< the case with each scheme of the front in it, as tidied() writes it, in its order; the closest one where nothing holds
};

/// The answer to "which angle, how many fasteners". Progress and stop as in search.h: `options.search.progress` is called on this thread;
/// a stop leaves what was found until then, with `answer.stopped`, and what was not run absent.
[[nodiscard]] Proposed propose(const model::Case& c, const ProposeOptions& options, std::stop_token stop = {});

} // namespace thinskin::search
