#include "drawing/canvas.h"
#include "drawing/kinds.h"

#include <algorithm>

// Symbols after the habit of ISO 5845-1: a cross at every hole; what stands round its centre tells the kind.
//   bolt     circle of the shank          screw     filled disc
//   rivet    circle with a disc in it     insert    two circles
//   washer   circle of its diameter, dashed when it lies behind
namespace thinskin::drawing {

namespace {

void symbol(Canvas& e, const Part& part, Point at, const std::string& type, double r, double arms)
{
    e.cross(part, Style::thin, at, arms);
    if (type == "screw" || type == "wood_screw") {
        e.disc(part, at, r);
        return;
    }
    e.circle(part, Style::visible, at, r);
    if (type == "rivet") e.disc(part, at, r / 2);
    if (type == "insert") e.circle(part, Style::visible, at, 1.6 * r);
}

void washers(Canvas& e, const Part& part, const layout::Stack& s, bool head_outside)
{
    const auto& front = head_outside ? s.hardware.head_washer : s.hardware.nut_washer;
    const auto& back = head_outside ? s.hardware.nut_washer : s.hardware.head_washer;
    if (front) e.circle(part, Style::visible, s.at, front->diameter / 2);
    if (back && !(front && front->diameter == back->diameter)) e.circle(part, Style::hidden, s.at, back->diameter / 2);
}

double widest(const layout::Stack& s)
{
    double w = 1.6 * s.hardware.d;
    for (const auto& washer : {s.hardware.head_washer, s.hardware.nut_washer})
        if (washer) w = std::max(w, washer->diameter);
    return w;
}

/// True size where it can be told apart, else as small as it can.
double shank(const layout::Stack& s, double h) { return std::max(s.hardware.d / 2, 0.2 * h); }
double arms(const layout::Stack& s, double h) { return std::max(0.7 * widest(s), 2 * shank(s, h)); }

bool head_outside(const layout::Layout& l, const layout::Stack& s)
{
    if (l.source)
        for (const auto& k : l.source->fastener_kinds)
            if (k.name == s.hardware.kind) return k.head == model::Face::outside;
    return true;
}

/// Axis, head and nut from the side; `out` and `in` are the faces they sit on.
void from_the_side(Canvas& s, const Part& part, const layout::Stack& k, double out, double in)
{
    const double half = std::max(k.hardware.across_flats, 1.5 * k.hardware.d) / 2, thick = 0.7 * k.hardware.d, y = k.at.y;
    if (out > 0) s.rectangle(part, Style::thin, {out, y - half}, {out + thick, y + half});
    s.rectangle(part, Style::hidden, {in, y - half}, {in - thick, y + half});
    s.line(part, Style::centre, {out + 2 * thick, y}, {in - 2 * thick, y});
}

void draw_stack(const layout::Layout& l, const layout::Stack& k, const Part& part, Canvas& e, Canvas& s, double h)
{
    washers(e, part, k, head_outside(l, k));
    symbol(e, part, k.at, type_of(k.hardware.type), shank(k, h), arms(k, h));
    double out = 0, in = part.kind == PartKind::fastener ? 0 : -l.skin.nominal;
    for (const layout::Ply& p : k.plies) {
        if (p.role == layout::Ply::Role::leg || p.role == layout::Ply::Role::foot) out += p.thickness;
        else in -= p.thickness;
    }
    from_the_side(s, part, k, out, in);
}

} // namespace

void draw_fasteners(const layout::Layout& l, Canvas& e, Canvas& s, double h)
{
    for (const layout::Stack* k : l.outer_stacks()) draw_stack(l, *k, {PartKind::fastener, k->name}, e, s, h);
    for (const layout::MemberEnd* end : l.member_ends())
        for (const layout::Stack& k : end->fasteners) draw_stack(l, k, {PartKind::end_fixing, k.name}, e, s, h);
    for (const layout::Strap& t : l.straps)
        for (const layout::StrapEnd& end : t.ends)
            for (const layout::Stack& k : end.fasteners) // on an arm a bolt may lie across the view: only its place is marked
                symbol(e, {PartKind::end_fixing, k.name}, k.at, type_of(k.hardware.type), shank(k, h), arms(k, h));
    if (!l.source) return;
    const auto place = [&](const model::Point2& at, const std::string& use, const std::string& name) {
        symbol(e, {PartKind::fastener, name}, {at.x.value, at.y.value}, type_of(l, use), 0.2 * h, 0.5 * h);
    };
    for (const auto& p : l.source->reinforcement.backing_plates)
        for (const auto& f : p.fasteners) place(f.at, f.use, f.name);
    for (const auto& b : l.source->reinforcement.boards)
        for (const auto& f : b.fasteners) place(f.at, f.use, f.name);
}

} // namespace thinskin::drawing
