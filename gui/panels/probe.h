#pragma once
#include <imgui.h>

#include <string>
#include <vector>

/// What stands where on the screen, collected while a frame is drawn: tests look for cut and overlapping texts in it, simulated
/// input finds its targets by name. Off costs one comparison a text.
namespace thinskin::gui::probe {

struct Placed {
    std::string text;
    ImVec2 min, max;        ///< of the letters
    ImVec2 clip_min, clip_max;
    std::string window;     ///< root window it belongs to
    bool scrolls = false;   ///< its window can be scrolled up and down: cut at the window's upper and lower edge is no fault
    bool moves = false;     ///< on a drawing that was moved or zoomed by hand: cut at any edge is no fault
    bool target = false;    ///< something that can be clicked; no text of its own
};

void start_frame(bool collect);
[[nodiscard]] const std::vector<Placed>& all();

/// Texts from here on are on a drawing that was moved by hand, or not.
void on_moved_drawing(bool yes);
void text(const std::string& words, ImVec2 min, ImVec2 max);
void target(const std::string& name, ImVec2 min, ImVec2 max);

/// Texts of the frame that are cut or lie over each other, one line a problem; popups lie over what is below them on purpose.
[[nodiscard]] std::vector<std::string> problems();

/// Middle of the first target with this name, else of the first text that begins with it; x < 0: not on the screen.
[[nodiscard]] ImVec2 find(const std::string& name);

/// A target of this name that its scrolled column hides: where to turn the wheel and which way (up > 0); turn 0: there is none.
struct Hidden { ImVec2 at; float turn = 0; };
[[nodiscard]] Hidden find_hidden(const std::string& name);

} // namespace thinskin::gui::probe
