#include "app/program.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <imgui.h>

/// Parts moved on the drawing: dragged, and nudged with the arrow keys.
namespace thinskin::gui {
namespace {

/// What to say to somebody who pulls a thing where it does not go.
std::string does_not_move(const Handle& h, const Vec3& by, double step)
{
    static const std::array<const char*, 3> ways{"left and right", "up and down", "in and out"};
    const auto most = static_cast<std::size_t>(std::max_element(by.begin(), by.end(), [](double a, double b) { return std::abs(a) < std::abs(b); }) - by.begin());
    if (h.moves[most] || std::abs(by[most]) < 2 * step) return "";
    std::string may;
    for (std::size_t a = 0; a < 3; ++a)
        if (h.moves[a]) may += (may.empty() ? "" : " and ") + std::string(ways[a]);
    return may.empty() ? "" : h.label + " moves " + may + " only";
}

} // namespace

void Program::drag_on_sheet(const SheetDrag& d)
{
    const auto c = s_.document.current();
    if (!c) return;
    if (d.began) {
        const std::vector<Handle> all = handles(*c);
        const Handle* grip = d.grip.empty() ? nullptr : find(all, d.grip);
        handle_ = grip ? std::optional(*grip) : handle_of(all, d.part);
        if (!handle_) {
            s_.say("This part is moved by its figures on the left");
            return;
        }
        handle_from_ = handle_->at;
        if (!handle_->follows.empty()) s_.say(handle_->label + ": " + handle_->follows);
    }
    if (!handle_) return;
    dragging_ = !d.ended;
    Vec3 to = handle_from_;
    to[d.side ? 2U : 0U] += d.to.x - d.from.x;
    to[1] += d.to.y - d.from.y;
    const Moved m = move_to(*c, *handle_, to, s_.snap());
    if (m.ok()) apply(s_, m.edit);
    else if (!m.why.empty()) s_.say(m.why, true);
    if (const std::string why = does_not_move(*handle_, {to[0] - handle_from_[0], to[1] - handle_from_[1], to[2] - handle_from_[2]}, snap_step(s_.snap())); !why.empty()) s_.say(why);
    if (d.ended) {
        s_.document.end_drag();
        handle_.reset();
    }
}

/// Arrow keys move the chosen part by the snap distance.
void Program::nudge()
{
    const ImGuiIO& io = ImGui::GetIO();
    if (!s_.part || io.WantTextInput || io.KeyCtrl || dialogs_.any() || dragging_) return;
    const auto pressed = [](ImGuiKey key) { return ImGui::IsKeyPressed(ImGui::GetKeyIndex(key)) ? 1 : 0; };
    const int dx = pressed(ImGuiKey_RightArrow) - pressed(ImGuiKey_LeftArrow), dy = pressed(ImGuiKey_UpArrow) - pressed(ImGuiKey_DownArrow);
    const auto c = s_.document.current();
    if ((dx == 0 && dy == 0) || !c) return;
    const auto h = handle_of(handles(*c), *s_.part);
    if (!h) return;
    const Moved m = gui::nudge(*c, *h, dx, dy, 0, s_.snap(), io.KeyShift);
    if (m.ok()) apply(s_, m.edit);
    else s_.say(m.why, true);
    s_.document.end_drag();
}

} // namespace thinskin::gui
