#pragma once
#include "model/case.h"
#include "results/results.h"

#include <string>
#include <vector>

/// What changed since the accepted state: inputs, and what that did to the margins.
namespace thinskin::gui {

struct InputChange { std::string path, before, after; };          ///< "" = not there
[[nodiscard]] std::vector<InputChange> input_changes(const model::Case& before, const model::Case& after);

/// Change of a margin as shown: "+0.12"; empty when one of them has no figure or nothing changed. Worked out from the shown
/// (rounded) margins, so that what is on the screen adds up.
[[nodiscard]] std::string delta_text(double before, double after);

struct Comparison { std::string verdict_before, verdict_after, governing_before, governing_after, margin_before, margin_after, delta; int better = 0; };
[[nodiscard]] Comparison compare(const results::Outcome& before, const results::Outcome& after);

} // namespace thinskin::gui
