#include "drawing/bars.h"
#include "drawing/canvas.h"

#include <algorithm>
#include <cmath>

namespace thinskin::drawing {

namespace {

Point moved(Point p, Point d, double by) { return {p.x + by * d.x, p.y + by * d.y}; }

/// Cross section of a level bar: lying leg on the skin, standing leg at the heel.
std::vector<Point> cross_section(const layout::AngleBar& b)
{
    const double up = b.lying.y >= 0 ? 1 : -1, y = b.heel(0).y, z = b.face_z, out = b.standing, t = b.section.t;
    return {{z, y}, {z + out * b.section.h, y}, {z + out * b.section.h, y + up * t}, {z + out * t, y + up * t}, {z + out * t, y + up * b.section.b}, {z, y + up * b.section.b}};
}

void plate(Canvas& e, Canvas& s, const Part& part, const model::Box2& box, double thickness, model::Face face, double skin)
{
    const bool inside = face == model::Face::inside;
    const Style style = inside ? Style::hidden : Style::visible;
    const double x = box.from.x.value, y = box.from.y.value, w = box.size.x.value, h = box.size.y.value;
    e.rectangle(part, style, {x, y}, {x + w, y + h});
    if (inside) s.rectangle(part, style, {-skin - thickness, y}, {-skin, y + h});
    else s.rectangle(part, style, {0, y}, {thickness, y + h});
}

/// A band of the strap's width about its line in the elevation; from the side it is seen on its edge or nearly so: a line.
void strap(Canvas& e, Canvas& s, const layout::Strap& t)
{
    const Part part{PartKind::strap, t.name};
    const Style style = t.from[2] < 0 && t.to[2] < 0 ? Style::hidden : Style::visible;
    const double dx = t.to[0] - t.from[0], dy = t.to[1] - t.from[1], length = std::hypot(dx, dy), half = std::max(t.section.b, t.section.h) / 2;
    if (length > 0) {
        const Point n{-dy / length * half, dx / length * half};
        e.outline(part, style, {{t.from[0] + n.x, t.from[1] + n.y}, {t.to[0] + n.x, t.to[1] + n.y}, {t.to[0] - n.x, t.to[1] - n.y}, {t.from[0] - n.x, t.from[1] - n.y}});
    }
    s.line(part, style, {t.from[2], t.from[1]}, {t.to[2], t.to[1]});
}

} // namespace

void bar_in_elevation(Canvas& e, const Part& part, const layout::AngleBar& b, Style style)
{
    const double length = b.length();
    e.outline(part, style, {b.heel(0), b.heel(length), b.toe(length), b.toe(0)});
    e.line(part, style, moved(b.heel(0), b.lying, b.section.t), moved(b.heel(length), b.lying, b.section.t));
}

void bar_from_the_side(Canvas& s, const Part& part, const layout::AngleBar& b, Style style, Style inner)
{
    if (std::abs(b.along.y) < 0.02) {
        s.outline(part, style, cross_section(b));
        return;
    }
    const double length = b.length();
    const auto [low, high] = std::minmax({b.heel(0).y, b.heel(length).y, b.toe(0).y, b.toe(length).y});
    const double far = b.face_z + b.standing * b.section.h, leg = b.face_z + b.standing * b.section.t;
    s.rectangle(part, style, {b.face_z, low}, {far, high});
    s.line(part, inner, {leg, low}, {leg, high});
}

void draw_reinforcement(const layout::Layout& l, Canvas& e, Canvas& s)
{
    for (const layout::Angle& a : l.angles) {
        const Part part{PartKind::angle, a.bar.name};
        const Style style = a.inside ? Style::hidden : Style::visible;
        bar_in_elevation(e, part, a.bar, style);
        bar_from_the_side(s, part, a.bar, style, style);
    }
    for (const layout::Strap& t : l.straps) strap(e, s, t);
    if (!l.source) return;
    const double skin = l.skin.nominal;
    for (const auto& p : l.source->reinforcement.backing_plates) plate(e, s, {PartKind::plate, p.name}, p.box, p.thickness.value, p.face, skin);
    for (const auto& b : l.source->reinforcement.boards) plate(e, s, {PartKind::board, b.name}, b.box, b.thickness.value, b.face, skin);
}

} // namespace thinskin::drawing
