#pragma once
#include "base/card.h"

#include <string>
#include <string_view>
#include <vector>

namespace thinskin::formulary {

/// Every formula card of the program, in the order it is listed. Folders are joined in formulary.cpp, nowhere else.
[[nodiscard]] const std::vector<const base::Card*>& all_cards();

/// The card with this id (capitals or not); nullptr = there is none.
[[nodiscard]] const base::Card* find(std::string_view id);

/// Plain text of a card for the command line: formula, symbols with units and ranges, source, edition, label, what it is not for.
[[nodiscard]] std::string describe(const base::Card& card);

/// What `thinskin formula ID symbol=value ...` works out.
struct Evaluation {
    bool ok = false;                 ///< the pairs were understood; the resistance may still be not covered
    std::string error;               ///< set when not ok: which pair, what was expected
    std::vector<double> values;      ///< in the order of card.symbols, inner units
    base::Resistance resistance;
};

/// Pairs such as "d=8", "t=0.8 mm", "Fu=39 ksi", "Lb=36in". A plain number is in the symbol's inner unit. Every symbol is needed
/// once; unknown, doubled or missing symbols, nan, inf and units of another kind are errors.
[[nodiscard]] Evaluation evaluate(const base::Card& card, const std::vector<std::string>& pairs);

} // namespace thinskin::formulary
