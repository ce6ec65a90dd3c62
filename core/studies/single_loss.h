#pragma once
#include "model/case.h"
#include "pipeline/analyse.h"

#include <functional>
#include <string>
#include <vector>

namespace thinskin::studies {

/// Skin that corrosion takes before somebody looks: engineering judgement, a wet seam that was not sealed for a few winters.
inline constexpr double default_rust_mm = 0.1;

struct SingleLossOptions {
    double rust_mm = default_rust_mm;    ///< off the skin; 0 or more
    bool strict = false;                 ///< judgement counts as not covered, as in the outcome the losses are set beside
    /// Called before each loss: how many are done, of how many, which comes next.
    std::function<void(int, int, const std::string&)> progress = {};
};

/// One thing gone: the case without it. `alone`: nothing else of its kind is left there, so that what hung on it lets go.
struct LossEdit { std::string what, kind; model::Case edited; std::string alone = {}; };

/// The losses of a case, in its order:
///   fastener    each fastener of each bracket, angle end, rib end, foot, backing plate and board, one at a time
///   mount       each bolt between item and arm
///   strap       each strap slack, which is also what losing a fastener of one of its ends comes to when that end has one only
///   skin        `rust_mm` thinner all over
/// Nothing is left out as a twin of another: a door is not symmetric, its hinges are on one side.
/// An angle end that loses its only fastener is loose (`to: none`), not unknown.
/// Not lost: welds, hinges, latches, members.
[[nodiscard]] std::vector<LossEdit> single_losses(const model::Case& c, double rust_mm);

/// Runs them and fills Outcome::single_loss of `outcome`, which is the case as it is. Each is analyse() on an edited case in the same
/// workspace; nothing is calculated here. Stopped: `outcome` stays as it was.
void add_single_loss(const model::Case& c, pipeline::Workspace& workspace, results::Outcome& outcome, const SingleLossOptions& options = {}, std::stop_token stop = {});

} // namespace thinskin::studies
