#pragma once
#include "results/proposal.h"
#include "search/search.h"

namespace thinskin::search {

struct ProposeOptions {
    Options search;
    bool robust = true;                  ///< the front again with each assumption at its bad end
    bool single_loss = false;            ///< the front again with one thing lost at a time
    std::size_t looked_at = 8;           ///< of the front, for the two above
};

struct Proposed {
    results::Proposal answer;
    std::vector<model::Case> cases;      ///< the case with each scheme of the front in it, in its order; the closest one where nothing holds
};

/// The answer to "which angle, how many fasteners".
[[nodiscard]] Proposed propose(const model::Case& c, const ProposeOptions& options, std::stop_token stop = {});

} // namespace thinskin::search
