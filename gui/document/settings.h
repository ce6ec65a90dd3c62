#pragma once
#include "document/units.h"

#include <map>
#include <string>
#include <vector>

namespace thinskin::gui {

/// Folders after the XDG base directory specification: $XDG_CONFIG_HOME or ~/.config, $XDG_STATE_HOME or ~/.local/state, each
/// with "/thinskin". A variable that is not an absolute path is ignored, as the specification has it. Empty: no home either.
[[nodiscard]] std::string config_folder();
[[nodiscard]] std::string state_folder();
[[nodiscard]] std::string autosave_folder();

/// What the user chose; in the config folder.
struct Settings {
    UnitSystem units = UnitSystem::metric;
    double font_scale = 1.0;             ///< 0.75 .. 3
    bool snap = true;
    int autosave_seconds = 5;            ///< 1 .. 600
};

/// What the program remembers by itself; in the state folder.
struct State {
    std::vector<std::string> recent;     ///< absolute paths, newest first, at most 12
    int window_x = -1, window_y = -1, window_width = 1280, window_height = 800; ///< x = -1: not yet placed
    bool window_maximised = false;
    std::map<std::string, std::string> layout; ///< panels: free names and values, kept as they are
};

/// Files that are missing, unreadable or wrong in a line give defaults for what is missing; nothing is thrown.
[[nodiscard]] Settings load_settings(const std::string& folder = config_folder());
[[nodiscard]] State load_state(const std::string& folder = state_folder());
bool save_settings(const Settings& s, const std::string& folder = config_folder());
bool save_state(const State& s, const std::string& folder = state_folder());

void remember_file(State& s, const std::string& path);   ///< to the front, absolute, once
void forget_file(State& s, const std::string& path);

} // namespace thinskin::gui
