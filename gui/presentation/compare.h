#pragma once
#include <string>
#include <vector>

/// What changed since an earlier state.
namespace thinskin::gui {

/// Change of a margin as shown: "+0.12"; empty when one of them has no figure or nothing changed. Worked out from the shown
/// (rounded) margins, so that what is on the screen adds up.
[[nodiscard]] std::string delta_text(double before, double after);

/// What the changes that are shown are changes since. steps: names of the edits in between, in their order, a drag's many times.
[[nodiscard]] std::string compared_words(bool with_accepted, bool linear, const std::vector<std::string>& steps);

} // namespace thinskin::gui
