#pragma once
#include "search/search.h"

namespace thinskin::search {

/// Geometry, limits and closed bounds of all candidates: what is left is `waiting` with its upper bound.
void prepare(const model::Case& c, const Options& options, Searched& s, std::stop_token stop);

} // namespace thinskin::search
