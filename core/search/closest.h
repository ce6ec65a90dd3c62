#pragma once
#include "results/proposal.h"
#include "search/search.h"

namespace thinskin::search {

/// Where nothing holds: the scheme with the largest least margin. Those with the largest upper bounds are solved until none that is left
/// can be better, at most `most_solved`. None: nothing of the space can be built, or nothing was solved.
inline constexpr std::size_t most_solved = 32;
[[nodiscard]] std::optional<std::size_t> closest(Searched& s, double wanted, unsigned threads, std::stop_token stop);

/// What makes a scheme hold that does not, cheapest first (the order is judgement): the margin wanted, a softer stop of the door, a doubler
/// on the frame, both, the next better road, a lighter item. Each is analyse() on an edited case.
[[nodiscard]] std::vector<results::Relaxation> relaxations(const model::Case& scheme, const results::Outcome& o, double wanted, unsigned threads, std::stop_token stop);

/// Schemes beyond the case's own limits on mass and holes that would hold: what the limit would have to be. At most a few are solved.
[[nodiscard]] std::vector<results::Relaxation> limits_lifted(const Searched& s, const model::Propose& wishes, unsigned threads, std::stop_token stop);

} // namespace thinskin::search
