#include "panels/palette.h"
#include "panels/sheet.h"
#include "panels/widgets.h"

#include <cmath>

namespace thinskin::gui {

namespace {

constexpr float half_px = 4, reach_px = 7;

} // namespace

/// What moves out of the panel is taken hold of in the side view, all else in both.
void Sheet::place_grips(const SheetContents& c)
{
    grips_.clear();
    for (const Handle& h : c.grips) {
        if (h.moves[0] || (h.moves[1] && !h.moves[2])) grips_.push_back({h.id, h.label, false, elevation_.of({h.at[0], h.at[1]})});
        if (h.moves[2]) grips_.push_back({h.id, h.label, true, side_.of({h.at[2], h.at[1]})});
    }
}

void Sheet::draw_grips(const std::string& pointed) const
{
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const float k = look().scale, r = half_px * k;
    for (const GripMark& g : grips_) {
        const ImVec2 a{g.at.x - r, g.at.y - r}, b{g.at.x + r, g.at.y + r};
        d.AddRectFilled(a, b, g.id == pressed_grip_ || g.label == pointed ? palette::caution : palette::paper);
        d.AddRect(a, b, palette::judgement, 0, 0, 1.6f * k);
    }
}

const Sheet::GripMark* Sheet::grip_at(ImVec2 p) const
{
    for (const GripMark& g : grips_)
        if (std::hypot(p.x - g.at.x, p.y - g.at.y) <= reach_px * look().scale) return &g;
    return nullptr;
}

ImVec2 Sheet::grip_called(const std::string& label) const
{
    for (const GripMark& g : grips_)
        if (g.label == label) return g.at;
    return {-1, -1};
}

} // namespace thinskin::gui
