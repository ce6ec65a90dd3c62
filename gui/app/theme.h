#pragma once

namespace thinskin::gui {

/// Colours and spacings of the window for a display scale: ink on paper, square corners, thin rules.
void apply_theme(float scale);

} // namespace thinskin::gui
