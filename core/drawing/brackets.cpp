#include "drawing/bars.h"
#include "drawing/canvas.h"

#include <cmath>

namespace thinskin::drawing {

namespace {

/// The arm's end seen from outside: web at the web line, flange on top under the item.
void arm(const layout::Bracket& b, const Part& part, Canvas& e, Canvas& s, Style inner)
{
    const double way = b.leg.lying.x >= 0 ? 1 : -1, t = b.arm_section.t, x = b.web_x, top = b.arm_top_y, foot = top - b.arm_section.h;
    e.outline(part, Style::visible, {{x, top}, {x + way * b.arm_section.b, top}, {x + way * b.arm_section.b, top - t}, {x + way * t, top - t}, {x + way * t, foot}, {x, foot}});
    s.rectangle(part, Style::visible, {0, foot}, {b.arm_length, top});
    s.line(part, inner, {0, top - t}, {b.arm_length, top - t});
}

/// A strip about the line from the leg to the arm's under side, cut level at the arm and upright at the skin.
void brace(const layout::Bracket& b, const Part& part, Canvas& e, Canvas& s)
{
    const double way = b.leg.lying.x >= 0 ? 1 : -1, foot = b.arm_top_y - b.arm_section.h;
    e.rectangle(part, Style::visible, {b.web_x, b.brace_from_y}, {b.web_x + way * b.brace_section.b, foot});
    const double rise = foot - b.brace_from_y, reach = b.brace_to_z, length = std::hypot(rise, reach), half = b.brace_section.h / 2;
    if (!(rise > 0 && reach > 0)) return;
    const double along_arm = half * length / rise, along_leg = half * length / reach;
    s.outline(part, Style::visible, {{0, b.brace_from_y - along_leg}, {reach + along_arm, foot}, {reach - along_arm, foot}, {0, b.brace_from_y + along_leg}});
}

void mounts(const layout::Bracket& b, const Part& part, Canvas& s)
{
    for (const layout::Mount& m : b.mounts) s.line(part, Style::centre, {m.at[2], b.arm_top_y - b.arm_section.h / 2}, {m.at[2], b.arm_top_y + b.arm_section.h / 2});
}

} // namespace

void draw_brackets(const layout::Layout& l, Canvas& e, Canvas& s)
{
    for (const layout::Bracket& b : l.brackets) {
        const Part part{PartKind::bracket, b.name};
        const Style inner = b.leg.lying.x >= 0 ? Style::hidden : Style::thin; // the web stands before the other leg, seen from the left
        bar_in_elevation(e, part, b.leg, Style::visible);
        bar_from_the_side(s, part, b.leg, Style::visible, inner);
        arm(b, part, e, s, inner);
        if (b.has_brace) brace(b, part, e, s);
        mounts(b, part, s);
    }
}

} // namespace thinskin::drawing
