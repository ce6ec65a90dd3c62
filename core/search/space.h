#pragma once
#include "search/choices.h"

namespace thinskin::search {

/// Every scheme that catalogue, case and the block `propose` allow, in a fixed order; whether it fits its place is for layout to say.
/// What leaves bolts in bare skin (nothing, plates, one angle, floating angles) is looked at in fewer sections and positions: each of
/// them needs the large-deflection solution.
struct Space {
    std::vector<Choices> schemes;
    std::vector<std::string> cautions;   ///< words of the block that name nothing here
    std::string why_empty;               ///< set when there is no scheme
};
[[nodiscard]] Space space_of(const model::Case& c);

/// A case as `propose` reads it when it has no such block.
[[nodiscard]] model::Propose default_wishes();
[[nodiscard]] model::Propose wishes_of(const model::Case& c);

/// Screws, rivets and inserts that the case has as fastener kinds; `not_use` and `stock_only` name them by their own name or as
/// "screws", "rivets", "inserts". Inserts sit in the skin: with nothing behind it only.
[[nodiscard]] std::vector<Bolt> own_fasteners(const model::Case& c, const model::Propose& p);

/// Whether straps from the arms up to the frame can be drawn: every bracket has an arm, and the frame above has a sheet to fix them to.
[[nodiscard]] bool straps_possible(const model::Case& c);

/// Whether the word stands in the list `stock` or `not_use`; spaces at the ends and case of letters do not count.
[[nodiscard]] bool listed(const std::vector<std::string>& list, const std::string& word);

} // namespace thinskin::search
