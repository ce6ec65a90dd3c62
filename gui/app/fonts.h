#pragma once

struct ImFont;

namespace thinskin::gui {

/// The typefaces of the window in the sizes it uses. B612 for everything but the lettering on the sheet, which is osifont
/// (ISO 3098); DejaVu Sans fills in what they lack. All three are put into the program when it is built.
struct Fonts {
    ImFont* plain = nullptr;
    ImFont* bold = nullptr;
    ImFont* small = nullptr;    ///< notes, units, keys
    ImFont* large = nullptr;    ///< the verdict
    ImFont* lettering = nullptr;
};

/// Builds the atlas for a display scale (1 = 96 dots an inch). Replaces whatever was there; the backend has to make its texture anew.
[[nodiscard]] Fonts load_fonts(float scale);

/// Size of the letters on the sheet in pixels at scale 1.
inline constexpr float lettering_px = 15;
/// What core/drawing is told: it reckons with figures 0.64 of the height wide, and osifont is that narrow at 15 : 12.
inline constexpr float lettering_height_px = 12;

} // namespace thinskin::gui
