#pragma once
#include <string>
#include <vector>

namespace thinskin::gui {

/// Everything that can be done from the menu, each with its key. One list: menu, keyboard and the page of keys are made from it.
enum class Command {
    new_case, open, save, save_as, record, quit,
    undo, redo, snap,
    worst_case, next_case, previous_case, next_margin, previous_margin,
    accept, step_before, compare, contours, forces, dimensions, fit, zoom_in, zoom_out,
    larger, smaller, units, proposals, spread, cancel, again, errors, keys
};

struct CommandRow { Command command; const char* menu; const char* words; const char* key; };

[[nodiscard]] const std::vector<CommandRow>& commands();

/// A key that went down, or was held until it repeats; `code` is GLFW's. Several may come in one frame: while a slow frame is drawn
/// somebody presses Ctrl+Z twice, and both count.
struct KeyPress { int code = 0; bool ctrl = false, shift = false, alt = false, repeated = false; };
void note_key(const KeyPress& k);

/// The commands whose keys were pressed since the last call, in their order. Keys without Ctrl count only while nothing is typed; undo
/// and redo belong to the field that is typed into once something was typed.
[[nodiscard]] std::vector<const CommandRow*> pressed_commands(bool typed_something);

} // namespace thinskin::gui
