#include "app/commands.h"

#include <GLFW/glfw3.h>
#include <imgui.h>

#include <cctype>
#include <map>
#include <utility>

namespace thinskin::gui {
namespace {

/// The library's 1.86 has no key names of its own: codes are GLFW's.
int code_of(const std::string& name)
{
    static const std::map<std::string, int> named{{"F1", GLFW_KEY_F1}, {"F2", GLFW_KEY_F2}, {"F5", GLFW_KEY_F5}, {"Home", GLFW_KEY_HOME}, {"Page down", GLFW_KEY_PAGE_DOWN}, {"Page up", GLFW_KEY_PAGE_UP},
                                                  {"+", GLFW_KEY_EQUAL}, {"-", GLFW_KEY_MINUS}, {"Escape", GLFW_KEY_ESCAPE}, {".", GLFW_KEY_PERIOD}, {",", GLFW_KEY_COMMA}};
    const auto it = named.find(name);
    if (it != named.end()) return it->second;
    return name.size() == 1 ? std::toupper(static_cast<unsigned char>(name[0])) : -1;
}

std::vector<KeyPress>& waiting()
{
    static std::vector<KeyPress> all;
    return all;
}

bool is_key(const KeyPress& k, const std::string& key, bool typed_something)
{
    const bool ctrl = key.rfind("Ctrl+", 0) == 0, shift = key.find("Shift+") != std::string::npos;
    if (k.ctrl != ctrl || (ctrl && k.shift != shift) || k.alt) return false;
    const std::string name = key == "+" || key == "Ctrl++" ? "+" : key.substr(key.rfind('+') == std::string::npos ? 0 : key.rfind('+') + 1);
    if (code_of(name) != k.code) return false;
    if (k.repeated && key != "." && key != "," && name != "Page down" && name != "Page up" && key != "Ctrl+Z" && key != "Ctrl+Y") return false;
    // Letters belong to the field that is typed into, and so do its own undo and redo.
    const bool function_key = name.size() > 1, of_field = (!ctrl && !function_key) || (typed_something && (key == "Ctrl+Z" || key == "Ctrl+Y"));
    return !(ImGui::GetIO().WantTextInput && of_field);
}

} // namespace

const std::vector<CommandRow>& commands()
{
    static const std::vector<CommandRow> all{
        {Command::new_case, "File", "New from a starter case...", "Ctrl+N"},
        {Command::open, "File", "Open...", "Ctrl+O"},
        {Command::save, "File", "Save", "Ctrl+S"},
        {Command::save_as, "File", "Save as...", "Ctrl+Shift+S"},
        {Command::record, "File", "Write the job record...", "Ctrl+R"},
        {Command::quit, "File", "Quit", "Ctrl+Q"},
        {Command::undo, "Edit", "Undo", "Ctrl+Z"},
        {Command::redo, "Edit", "Redo", "Ctrl+Y"},
        {Command::snap, "Edit", "Snap to 5 mm or 1/4 in", "G"},
        {Command::errors, "Edit", "Text and errors of the file", "F2"},
        {Command::fit, "View", "Whole drawing", "Home"},
        {Command::zoom_in, "View", "Closer", "+"},
        {Command::zoom_out, "View", "Further away", "-"},
        {Command::contours, "View", "Movement of the skin", "M"},
        {Command::forces, "View", "Forces", "F"},
        {Command::dimensions, "View", "All dimensions", "D"},
        {Command::units, "View", "US units", "U"},
        {Command::larger, "View", "Larger letters", "Ctrl++"},
        {Command::smaller, "View", "Smaller letters", "Ctrl+-"},
        {Command::next_case, "Check", "Next load case", "."},
        {Command::previous_case, "Check", "Previous load case", ","},
        {Command::worst_case, "Check", "Load case of the chosen margin", "L"},
        {Command::next_margin, "Check", "Next margin", "Page down"},
        {Command::previous_margin, "Check", "Previous margin", "Page up"},
        {Command::proposals, "Check", "Proposals: what would hold", "P"},
        {Command::spread, "Check", "Spread over what nobody measured", "S"},
        {Command::accept, "Check", "Accept this state to compare with", "Ctrl+E"},
        {Command::step_before, "Check", "Compare with the step before again", "Ctrl+Shift+E"},
        {Command::compare, "Check", "Show what changed", "C"},
        {Command::cancel, "Check", "Stop the calculation", "Escape"},
        {Command::again, "Check", "Work it out again", "F5"},
        {Command::keys, "Help", "Keys", "F1"},
    };
    return all;
}

void note_key(const KeyPress& k) { waiting().push_back(k); }

std::vector<const CommandRow*> pressed_commands(bool typed_something)
{
    std::vector<const CommandRow*> out;
    for (const KeyPress& k : std::exchange(waiting(), {}))
        for (const CommandRow& c : commands())
            if (is_key(k, c.key, typed_something)) {
                out.push_back(&c);
                break;
            }
    return out;
}

} // namespace thinskin::gui
