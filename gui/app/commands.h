#pragma once
#include <string>
#include <vector>

namespace thinskin::gui {

/// Everything that can be done from the menu, each with its key. One list: menu, keyboard and the page of keys are made from it.
enum class Command {
    new_case, open, save, save_as, record, quit,
    undo, redo, snap,
    worst_case, next_case, previous_case, next_margin, previous_margin,
    accept, compare, contours, forces, dimensions, fit, zoom_in, zoom_out,
    larger, smaller, units, cancel, errors, keys
};

struct CommandRow { Command command; const char* menu; const char* words; const char* key; };

[[nodiscard]] const std::vector<CommandRow>& commands();

/// The command whose key was pressed in this frame, if any. Keys without Ctrl count only while nothing is typed.
[[nodiscard]] const CommandRow* pressed_command();

} // namespace thinskin::gui
