#pragma once
#include "results/proposal.h"
#include "search/propose.h"

namespace thinskin::search {

/// What is worked out of the schemes of the front besides their margins; each is analyse() on an edited case.
struct Front {
    std::vector<results::ProposedScheme>& schemes;
    const std::vector<model::Case>& cases;
    std::vector<results::Outcome>& outcomes;
    double wanted = 0; ///< margin
};

/// What the rows about natural frequencies say; none: they were not worked out.
[[nodiscard]] std::optional<results::ProposedScheme::Shaking> shaking_of(const results::Outcome& o);
/// The whole analysis of each, and with it what shakes it.
void add_frequencies(const Front& f, const ProposeOptions& options, std::stop_token stop);
/// Assumptions at their bad ends, one at a time, then all at once, then the hinges as if nobody knew them.
void add_bad_ends(const Front& f, const ProposeOptions& options, std::stop_token stop);
/// One thing lost at a time, and the order of the schemes by what they survive.
void add_losses(const Front& f, const ProposeOptions& options, std::stop_token stop);

} // namespace thinskin::search
