#pragma once
#include "app/fonts.h"
#include "panels/palette.h"

#include <string>
#include <vector>

/// Everything with letters goes through here, so that the probe knows every text of the screen.
namespace thinskin::gui {

/// What all panels share: faces and the size of a pixel. Set once a frame by the program.
struct Look { Fonts fonts; float scale = 1; };
[[nodiscard]] Look& look();

namespace widgets {

[[nodiscard]] ImVec2 size_of(const std::string& words, ImFont* font);

/// Letters at a place of the current window, upper left corner; no layout.
void letters(ImVec2 at, const std::string& words, ImU32 colour, ImFont* font);
/// As letters(), ending at x = right.
void letters_right(float right, float y, const std::string& words, ImU32 colour, ImFont* font);
/// What fits into the width; where it does not fit the end is left out as "..." and the whole is shown on pointing at it.
void letters_within(ImVec2 at, float width, const std::string& words, ImU32 colour, ImFont* font);

/// One line of text that takes part in the layout.
void text(const std::string& words, ImU32 colour, ImFont* font);
/// Text as lines that fit, broken at blanks only.
[[nodiscard]] std::vector<std::string> lines_of(const std::string& words, float width, ImFont* font);
/// Text broken at blanks within the room that is left.
void wrapped(const std::string& words, ImU32 colour, ImFont* font);

/// A push button; true when it was pushed. tip: shown when the pointer rests on it.
[[nodiscard]] bool button(const std::string& words, const std::string& tip = "", bool enabled = true);
/// Underlined words that lead somewhere; on the same line as the last one while there is room. Its target is "go to WORDS".
[[nodiscard]] bool link(const std::string& words, bool first, const std::string& tip = "");
/// A button that stays down while `on`.
[[nodiscard]] bool toggle(const std::string& words, bool on, const std::string& tip = "");
[[nodiscard]] bool checkbox(const std::string& words, bool& on);
/// A choice among words; true when another one was taken.
[[nodiscard]] bool choice(const std::string& id, const std::vector<std::string>& words, int& chosen, float width);
/// A row of a menu.
[[nodiscard]] bool menu_item(const std::string& words, const std::string& key, bool enabled = true, bool ticked = false);
void tip(const std::string& words);

/// The mark of a status, drawn into a square of `size` at a place: tick, double tilde, cross, question mark in a dashed ring.
void mark(ImVec2 at, float size, base::Status s, ImU32 colour);
void mark(ImVec2 at, float size, base::Verdict v, ImU32 colour);

/// A thin line across the room that is left.
void rule();
void space(float px);

} // namespace widgets
} // namespace thinskin::gui
