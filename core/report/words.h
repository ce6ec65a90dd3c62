#pragma once
#include "base/card.h"
#include "results/results.h"

#include <map>
#include <string>
#include <vector>

/// Words and figures that the text, the record and the desktop program have in common.
namespace thinskin::report {

/// The row has a margin to print: covered, and the case is solved.
[[nodiscard]] bool has_figures(const results::Outcome& o, const results::Check& c);

/// Figures of a row as printed: margin rounded down, used rounded up, "-" where there is none.
struct RowFigures { std::string demand, capacity, used, margin; };
[[nodiscard]] RowFigures row_figures(const results::Outcome& o, const results::Check& c);

/// The first (worst) row of each part and title among those with figures.
[[nodiscard]] std::vector<const results::Check*> worst_rows(const results::Outcome& o);

/// "AISI S100-16 J3.3.2, 2016 [published (read)]".
[[nodiscard]] std::string source_text(const results::Check& c);

/// "2 failed; 24 on judgement; lifted by door.hinges.evidence".
[[nodiscard]] std::string group_remark(const results::Group& g);
/// Why a row that is not required does not decide anything; empty for one that is.
[[nodiscard]] std::string not_counted_words(const results::Check& c);

/// "This pass stands on: a slam at 1.5 m/s that stops in 40 ms, ...; 5 figures that nobody measured, listed under assumptions." Empty where
/// nothing passes.
[[nodiscard]] std::string stands_on_words(const results::Outcome& o);

/// A value as it stands beside its symbol: up to six significant digits, with the symbol's unit where the card has one.
[[nodiscard]] std::string symbol_value(const base::Card* card, const std::string& symbol, double value);

/// Accelerations of a load case: "(0.00, -3.00, 1.50) g".
[[nodiscard]] std::string acceleration_text(const results::LoadCase& c);

/// What is written beside a part on the drawing: "-0.20 fail", "+0.12", "+4.88 n.c." (some check of it is not covered), "n.c.".
/// Nothing for a case that is not solved.
[[nodiscard]] std::map<std::string, std::string> part_notes(const results::Outcome& o);

} // namespace thinskin::report
