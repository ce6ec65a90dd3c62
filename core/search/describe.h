#pragma once
#include "layout/layout.h"
#include "results/proposal.h"
#include "search/candidate.h"

namespace thinskin::search {

/// A scheme in words and figures, from its layout and what it was found to bear.
[[nodiscard]] results::ProposedScheme described(const Candidate& k, const layout::Layout& l, const results::Outcome& o, const model::Propose& wishes);

/// For each scheme what the next one with more margin costs.
void add_next_steps(std::vector<results::ProposedScheme>& front);

[[nodiscard]] std::string margin_words(double margin);

} // namespace thinskin::search
