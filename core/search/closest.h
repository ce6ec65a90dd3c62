#pragma once
#include "results/proposal.h"
#include "search/search.h"

namespace thinskin::search {

/// Where nothing holds: the scheme with the largest least margin. Those with the largest upper bounds are solved until none that is left
/// can be better, at most `most_solved`, and no more once the best of those is `hopeless`: which of them is closest then decides nothing. None: nothing of the space can be built, or nothing was solved.
inline constexpr std::size_t most_solved = 32;
inline constexpr double hopeless = -0.7; ///< margin: used more than three times over (judgement)
[[nodiscard]] std::optional<std::size_t> closest(Searched& s, double wanted, const Options& options, std::stop_token stop);

/// What makes a scheme hold that does not, cheapest first (the order is judgement): the margin wanted, softer stops of the door, a doubler
/// on the frame, both, the next better road, a lighter item, all but the road. Each is analyse() on an edited case.
[[nodiscard]] std::vector<results::Relaxation> relaxations(const model::Case& scheme, const results::Outcome& o, double wanted, const Options& options, std::stop_token stop);

/// Whether the case sets limits of its own: mass, holes, hardware.
[[nodiscard]] bool sets_limits(const model::Propose& wishes);
/// What the limits would have to be: the same search without those on mass and holes, then with what is not on hand, then with what must not
/// be used; the first of these that finds something gives its scheme with the fewest holes and the lightest one.
[[nodiscard]] std::vector<results::Relaxation> limits_lifted(const model::Case& c, const Options& options, std::stop_token stop);

} // namespace thinskin::search
