#pragma once
#include "search/choices.h"

namespace thinskin::search {

/// The case with a scheme in the place of its own bracket fasteners and reinforcement. `written` is layout::written_out() of it.
/// Rows: the lowest and the highest fasteners of each bracket (or of the item's feet) stay, moved by `down` and `up`; angles lie behind them
/// from edge to edge, 10 mm short of each, or 60 mm past the outermost bolts where they float. Ribs, openings, item and door stay.
[[nodiscard]] model::Case applied(const model::Case& written, const Choices& k);

/// A length as the case file writes it.
[[nodiscard]] model::Quantity mm(double value);

} // namespace thinskin::search
