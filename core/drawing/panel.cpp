#include "drawing/canvas.h"
#include "drawing/kinds.h"

#include <algorithm>
#include <cmath>

namespace thinskin::drawing {

namespace {

constexpr std::array<const char*, 4> sides{"left", "right", "bottom", "top"};

/// The line along which a frame member ends towards the middle, square ends; in the order of model::Side.
void frame_line(const layout::Layout& l, Canvas& e, std::size_t side)
{
    const double w = l.frames[side].width;
    const Part part{PartKind::frame, sides[side]};
    const auto inset = [&](std::size_t other) { return l.frames[other].given ? l.frames[other].width : 0.0; };
    if (side < 2) {
        const double x = side == 0 ? w : l.width - w;
        e.line(part, Style::hidden, {x, inset(2)}, {x, l.height - inset(3)});
    } else {
        const double y = side == 2 ? w : l.height - w;
        e.line(part, Style::hidden, {inset(0), y}, {l.width - inset(1), y});
    }
}

/// A centre line with a little beyond its ends.
void axis(Canvas& c, const Part& part, Point a, Point b, double beyond)
{
    const double length = std::hypot(b.x - a.x, b.y - a.y);
    if (!(length > 0)) return;
    const Point d{(b.x - a.x) / length * beyond, (b.y - a.y) / length * beyond};
    c.line(part, Style::centre, {a.x - d.x, a.y - d.y}, {b.x + d.x, b.y + d.y});
}

void draw_rib(const layout::Rib& r, Canvas& e, Canvas& s, double skin)
{
    const Part part{PartKind::rib, r.name};
    const double length = std::hypot(r.to.x - r.from.x, r.to.y - r.from.y), half = r.section.width / 2;
    if (!(length > 0)) return;
    const Point n{-(r.to.y - r.from.y) / length * half, (r.to.x - r.from.x) / length * half};
    e.outline(part, Style::hidden, {{r.from.x + n.x, r.from.y + n.y}, {r.to.x + n.x, r.to.y + n.y}, {r.to.x - n.x, r.to.y - n.y}, {r.from.x - n.x, r.from.y - n.y}});
    const double y0 = std::min(r.from.y, r.to.y) - std::abs(n.y), y1 = std::max(r.from.y, r.to.y) + std::abs(n.y);
    s.rectangle(part, Style::hidden, {-skin - r.section.h, y0}, {-skin, y1});
}

/// Outline with thin diagonals, as openings are drawn; in the side view the two ends of the cut.
void draw_opening(const layout::Opening& o, Canvas& e, Canvas& s, double skin)
{
    const Part part{PartKind::skin, o.name};
    e.rectangle(part, Style::visible, o.low, o.high);
    e.line(part, Style::thin, o.low, o.high);
    e.line(part, Style::thin, {o.low.x, o.high.y}, {o.high.x, o.low.y});
    for (const double y : {o.low.y, o.high.y}) s.line(part, Style::hidden, {-skin, y}, {0, y});
}

/// What holds or stops the open door: its place on the leaf, as far off the hinge line as its line of force, and the lever to that line.
void draw_stay(const layout::Layout& l, const char* name, double lever, double height, Canvas& e, Canvas& s, double h)
{
    const Part part{PartKind::check_strap, name};
    const layout::Door& d = *l.door;
    const double x = d.pin_x + (d.hinges_right ? -lever : lever), half = 0.4 * h;
    e.rectangle(part, Style::hidden, {x - half, height - half}, {x + half, height + half});
    e.line(part, Style::thin, {d.pin_x, height}, {x, height});
    s.rectangle(part, Style::hidden, {-l.skin.nominal - 2 * h, height - half}, {-l.skin.nominal, height + half});
}

/// The pieces of a circle that lie on the panel.
void clipped_circle(const layout::Layout& l, Canvas& e, const Part& part, Point c, double radius)
{
    constexpr int steps = 72;
    std::vector<Point> piece;
    const auto end_piece = [&] {
        if (piece.size() > 1) e.path(part, Style::phantom, piece);
        piece.clear();
    };
    for (int i = 0; i <= steps; ++i) {
        const double a = 2 * pi * i / steps;
        const Point p{c.x + radius * std::cos(a), c.y + radius * std::sin(a)};
        if (p.x >= 0 && p.x <= l.width && p.y >= 0 && p.y <= l.height) piece.push_back(p);
        else end_piece();
    }
    end_piece();
}

} // namespace

void draw_panel(const layout::Layout& l, Canvas& e, Canvas& s, double h)
{
    const Part skin{PartKind::skin, "skin"};
    e.rectangle(skin, Style::visible, {0, 0}, {l.width, l.height});
    s.rectangle(skin, Style::visible, {-l.skin.nominal, 0}, {0, l.height});
    double depth = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        if (!l.frames[i].given || !(l.frames[i].width > 0)) continue;
        frame_line(l, e, i);
        if (i == 0) depth = l.frames[i].depth;
    }
    // Seen from the left edge, the left frame member hides what is behind the skin.
    if (depth > 0) s.rectangle({PartKind::frame, "left"}, Style::thin, {-l.skin.nominal - depth, 0}, {-l.skin.nominal, l.height});
    for (const layout::Opening& o : l.openings) draw_opening(o, e, s, l.skin.nominal);
    for (const layout::Rib& r : l.ribs) draw_rib(r, e, s, l.skin.nominal);
    axis(s, skin, {0, 0}, {0, l.height}, h);
}

void draw_door(const layout::Layout& l, Canvas& e, Canvas& s, double h)
{
    if (!l.door) return;
    const layout::Door& d = *l.door;
    const double half = 0.9 * h, wide = 0.5 * h;
    if (d.has_hinges) {
        axis(e, {PartKind::hinge, "hinge line"}, {d.pin_x, 0}, {d.pin_x, l.height}, 1.5 * h);
        axis(s, {PartKind::hinge, "hinge line"}, {d.pin_z, 0}, {d.pin_z, l.height}, 1.5 * h);
    }
    for (double y : d.hinge_heights) {
        const Part part{PartKind::hinge, "hinge at " + millimetres(y)};
        e.rectangle(part, Style::visible, {d.pin_x - wide, y - half}, {d.pin_x + wide, y + half});
        e.cross(part, Style::thin, {d.pin_x, y}, wide);
        s.circle(part, Style::thin, {d.pin_z, y}, wide);
        s.cross(part, Style::thin, {d.pin_z, y}, 1.5 * wide);
    }
    for (const Point p : d.latches) {
        const double away = p.x < l.width / 2 ? -h : h;
        e.filled({PartKind::latch, "latch"}, Style::visible, {{p.x, p.y + half}, {p.x + away, p.y}, {p.x, p.y - half}});
        s.filled({PartKind::latch, "latch"}, Style::visible, {{-l.skin.nominal, p.y + wide}, {-l.skin.nominal - h, p.y}, {-l.skin.nominal, p.y - wide}});
    }
    if (d.strap) draw_stay(l, "check strap", d.strap->lever, d.strap->height, e, s, h);
    if (d.end_stop) draw_stay(l, "end stop", d.end_stop->lever, d.end_stop->height, e, s, h);
    if (d.rest) e.filled({PartKind::rest, "rest"}, Style::visible, {*d.rest, {d.rest->x + h, d.rest->y - 1.2 * h}, {d.rest->x - h, d.rest->y - 1.2 * h}});
    if (d.rest) s.filled({PartKind::rest, "rest"}, Style::visible, {{-l.skin.nominal, d.rest->y}, {h, d.rest->y - 1.2 * h}, {-h, d.rest->y - 1.2 * h}});
}

void draw_zones(const layout::Layout& l, Canvas& e)
{
    if (l.source)
        for (const auto& z : l.source->no_drill) clipped_circle(l, e, {PartKind::zone, z.why}, {z.at.x.value, z.at.y.value}, z.radius.value);
    if (!l.door) return;
    for (double y : l.door->hinge_heights) clipped_circle(l, e, {PartKind::zone, "hinge"}, {l.door->pin_x, y}, edge_zone_radius);
    for (Point p : l.door->latches) clipped_circle(l, e, {PartKind::zone, "latch"}, p, edge_zone_radius);
}

} // namespace thinskin::drawing
