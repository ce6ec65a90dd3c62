#include "panels/paint.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace thinskin::gui {
namespace {

using drawing::PartKind;
using drawing::Point;

float distance(ImVec2 p, ImVec2 a, ImVec2 b)
{
    const ImVec2 d{b.x - a.x, b.y - a.y};
    const float whole = d.x * d.x + d.y * d.y;
    const float t = whole > 0 ? std::clamp(((p.x - a.x) * d.x + (p.y - a.y) * d.y) / whole, 0.0f, 1.0f) : 0;
    return std::hypot(p.x - a.x - t * d.x, p.y - a.y - t * d.y);
}

bool inside(Point p, const std::vector<Point>& outline)
{
    bool in = false;
    for (std::size_t i = 0, k = outline.size() - 1; i < outline.size(); k = i++) {
        const Point &a = outline[i], &b = outline[k];
        if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) in = !in;
    }
    return in;
}

/// Lower comes first: what is small must not be hidden by what is large.
int rank(PartKind k)
{
    switch (k) {
    case PartKind::fastener: case PartKind::gauge: return 0;
    case PartKind::end_fixing: case PartKind::mass_centre: return 1;
    case PartKind::hinge: case PartKind::latch: case PartKind::rest: return 2;
    case PartKind::bracket: return 3;
    case PartKind::angle: case PartKind::strap: case PartKind::rib: case PartKind::plate: case PartKind::board: return 4;
    case PartKind::item: return 5;
    case PartKind::frame: return 6;
    case PartKind::skin: return 7;
    default: return 99;
    }
}

class Nearest {
public:
    Nearest(ImVec2 pointer, float reach) : pointer_(pointer), reach_(reach) {}
    void offer(const drawing::Part& part, float d)
    {
        const int r = rank(part.kind);
        if (r == 99 || d > reach_ || (best && (r > rank_ || (r == rank_ && d >= d_)))) return;
        best = part;
        rank_ = r;
        d_ = d;
    }
    void stretch(const drawing::Part& part, ImVec2 a, ImVec2 b) { offer(part, distance(pointer_, a, b)); }
    std::optional<drawing::Part> best;

private:
    ImVec2 pointer_;
    float reach_;
    int rank_ = 99;
    float d_ = std::numeric_limits<float>::infinity();
};

} // namespace

std::optional<drawing::Part> part_at(const drawing::View& v, const Place& place, ImVec2 pointer, float reach)
{
    Nearest n(pointer, reach);
    for (const drawing::Line& l : v.lines) n.stretch(l.part, place.of(l.a), place.of(l.b));
    for (const drawing::Circle& c : v.circles) {
        const ImVec2 m = place.of(c.centre);
        const float r = static_cast<float>(c.radius) * place.px_per_mm, d = std::hypot(pointer.x - m.x, pointer.y - m.y);
        n.offer(c.part, c.part.kind == PartKind::fastener || c.part.kind == PartKind::end_fixing ? std::max(0.0f, d - r) : std::abs(d - r));
    }
    for (const drawing::Polyline& p : v.polylines) {
        for (std::size_t i = 0; i + (p.closed ? 0 : 1) < p.points.size(); ++i) n.stretch(p.part, place.of(p.points[i]), place.of(p.points[(i + 1) % p.points.size()]));
        const bool solid = p.part.kind == PartKind::item || p.part.kind == PartKind::bracket || p.part.kind == PartKind::angle || p.part.kind == PartKind::mass_centre || p.part.kind == PartKind::gauge;
        if (p.closed && solid && inside(place.back(pointer), p.points)) n.offer(p.part, 0.9f * reach);
    }
    return n.best;
}

} // namespace thinskin::gui
