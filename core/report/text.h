#pragma once
#include "results/results.h"

#include <string>

namespace thinskin::report {

struct TextOptions {
    bool detail = false;  ///< everything: all rows, forces of every load case, formula and inputs of each check, hand sums
    bool strict = false;  ///< only says so; pipeline::apply_strict has already changed the outcome
    bool colour = false;  ///< terminal colours on the verdict words
    int width = 100;      ///< prose is wrapped here; tables may be wider
};

/// The outcome as text. First line: verdict and what governs; second: what would help; then the caution, a line a group,
/// the table by margin and the rest; the caution again as the last line. No option removes the caution, the standing
/// exclusions or the list of things to see to on the vehicle. Same outcome and options, same bytes (with `detail` the
/// solver time is printed too).
/// Margins are rounded down and utilisations up, so that no printed figure is better than the computed one.
/// With verdict `not solved` no margin is printed.
[[nodiscard]] std::string check_text(const results::Outcome& outcome, const TextOptions& options = {});

} // namespace thinskin::report
