#pragma once
#include "model/case.h"
#include "pipeline/analyse.h"

#include <string>
#include <vector>

namespace thinskin::studies {

/// One assumption taken to its bad end.
struct BadEnd { std::string what, words; model::Case edited; };
[[nodiscard]] std::vector<BadEnd> bad_ends(const model::Case& c);
/// All of them at once.
[[nodiscard]] model::Case at_bad_ends(const model::Case& c);

/// What each assumption does to the governing margin: the case run again with the assumption at its bad end, one at a time.
///   coating      twice the assumed one                    edges      held -> hinged
///   in plane     fixed -> movable                         mass       one more tolerance on top
///   skin         10 % thinner, unless it was measured       slam       stopped in 30 % less time
/// Fills Assumption::effect_on_governing_margin: "-0.03 (to +0.01)"; an assumption that has no other end keeps "not run".
/// Each is analyse() on an edited case; nothing is calculated here.
void add_effects(const model::Case& c, pipeline::Workspace& workspace, results::Outcome& outcome, std::stop_token stop = {});

} // namespace thinskin::studies
