#include "drawing/canvas.h"

#include <algorithm>
#include <cmath>

namespace thinskin::drawing {

namespace {

struct Places { std::vector<Ordinate> x, y, hinges; };

void place(Places& p, Point at, const Part& part, const std::string& words = "")
{
    p.x.push_back({at.x, at, "", part});
    p.y.push_back({at.y, at, words, part});
}

Places places(const layout::Layout& l)
{
    Places p;
    for (const layout::Stack* s : l.outer_stacks()) place(p, s->at, {PartKind::fastener, s->name});
    for (const layout::MemberEnd* end : l.member_ends())
        for (const layout::Stack& s : end->fasteners) place(p, s.at, {PartKind::end_fixing, s.name});
    for (const layout::Strap& t : l.straps)
        for (const layout::StrapEnd& end : t.ends)
            for (const layout::Stack& s : end.fasteners) place(p, s.at, {PartKind::end_fixing, s.name});
    if (l.door)
        for (Point q : l.door->latches) (q.x > l.width / 2 ? p.hinges : p.y).push_back({q.y, q, "latch", {PartKind::latch, "latch"}});
    if (l.door && l.door->rest) p.x.push_back({l.door->rest->x, *l.door->rest, "rest", {PartKind::rest, "rest"}});
    if (l.door && l.door->has_hinges)
        for (double y : l.door->hinge_heights) (l.door->hinges_right ? p.hinges : p.y).push_back({y, {l.door->pin_x, y}, "", {PartKind::hinge, "hinge"}});
    if (!l.source) return p;
    const auto given = [&p](const model::Point2& at, const Part& part) { place(p, {at.x.value, at.y.value}, part); };
    for (const auto& g : l.source->gauges) given(g.at, {PartKind::gauge, g.name});
    for (const auto& f : l.source->forces) given(f.at, {PartKind::load, "force"});
    return p;
}

/// The next free line below or beside what is drawn already.
double below(const View& v, double h) { return v.extent().y0 - 2 * h; }
double left_of(const View& v, double h) { return v.extent().x0 - 1.2 * h; }
double right_of(const View& v, double h) { return v.extent().x1 + 2 * h; }

/// Spans of straight members, equal ones once: level under the panel, upright beside it.
void spans(const layout::Layout& l, View& e, double h, const Figures& figures)
{
    std::vector<std::pair<double, double>> level, upright;
    const auto once = [](std::vector<std::pair<double, double>>& all, double a, double b) {
        const std::pair<double, double> span{std::min(a, b), std::max(a, b)};
        if (std::find(all.begin(), all.end(), span) != all.end()) return false;
        all.push_back(span);
        return true;
    };
    for (const layout::Angle& a : l.angles) {
        const Part part{PartKind::angle, a.bar.name};
        const bool lies = std::abs(a.bar.along.x) >= std::abs(a.bar.along.y);
        const Point p = a.bar.from, q = a.bar.to;
        if (lies ? !once(level, p.x, q.x) : !once(upright, p.y, q.y)) continue;
        const double length = lies ? std::abs(q.x - p.x) : std::abs(q.y - p.y);
        // Extension lines start outside of the figures that stand between the member and its dimension.
        const Box b = e.extent();
        const Point first = lies ? Point{p.x, b.y0} : Point{b.x0, p.y}, second = lies ? Point{q.x, b.y0} : Point{b.x0, q.y};
        e.dimensions.push_back({first, second, lies, lies ? below(e, h) : left_of(e, h), figures.length(length), h, part});
    }
}

void side_places(const layout::Layout& l, Places& p)
{
    const Part datum{PartKind::dimension, "datum"};
    p.x.push_back({0, {0, 0}, "", datum});
    for (const layout::Bracket& b : l.brackets) {
        const Part part{PartKind::bracket, b.name};
        for (double y : {b.leg.from.y, b.leg.to.y}) p.y.push_back({y, {b.leg.section.h, y}, "", part});
        p.y.push_back({b.arm_top_y, {b.arm_length, b.arm_top_y}, "", part});
        p.x.push_back({b.arm_length, {b.arm_length, b.arm_top_y - b.arm_section.h}, "", part});
        if (b.has_brace) p.x.push_back({b.brace_to_z, {b.brace_to_z, b.arm_top_y - b.arm_section.h}, "", part});
        if (b.has_brace) p.y.push_back({b.brace_from_y, {0, b.brace_from_y}, "", part});
    }
    if (!l.item) return;
    const layout::Item& i = *l.item;
    const Part part{PartKind::item, i.name};
    p.x.push_back({i.centre[2], {i.centre[2], i.centre[1]}, "", part});
    p.y.push_back({i.centre[1], {i.centre[2], i.centre[1]}, "", part});
    if (!i.has_box) return;
    const double far = i.box_from[2] + i.box_size[2], top = i.box_from[1] + i.box_size[1];
    for (double z : {i.box_from[2], far}) p.x.push_back({z, {z, i.box_from[1]}, "", part});
    for (double y : {i.box_from[1], top}) p.y.push_back({y, {far, y}, "", part});
}

} // namespace

void overall_dimensions(const layout::Layout& l, View& e, double h, const Figures& figures)
{
    const Part skin{PartKind::skin, "skin"};
    e.dimensions.push_back({{0, l.height}, {l.width, l.height}, true, e.extent().y1 + 1.2 * h, figures.length(l.width), h, skin});
    e.dimensions.push_back({{0, 0}, {0, l.height}, false, left_of(e, h), figures.length(l.height), h, skin});
}

void dimension(const layout::Layout& l, View& e, View& s, double h, const Figures& figures)
{
    const Places p = places(l);
    e.circles.push_back({{0, 0}, 0.35 * h, false, Style::thin, {PartKind::dimension, "datum"}}); // origin of the running dimensions
    place_ordinates(e, p.x, true, -2.5 * h, -1, h, figures);
    place_ordinates(e, p.y, false, -2.5 * h, -1, h, figures);
    if (!p.hinges.empty()) place_ordinates(e, p.hinges, false, l.width + 3 * h, 1, h, figures);
    spans(l, e, h, figures);
    overall_dimensions(l, e, h, figures);

    Places q;
    side_places(l, q);
    if (q.x.size() < 2) return;
    place_ordinates(s, q.x, true, std::min(0.0, s.extent().y0) - 2.5 * h, -1, h, figures);
    place_ordinates(s, q.y, false, s.extent().x1 + 2.5 * h, 1, h, figures);
    if (!l.item || !l.item->has_box) return;
    const layout::Item& i = *l.item;
    const double far = i.box_from[2] + i.box_size[2], y = i.box_from[1];
    s.dimensions.push_back({{far, y}, {far, y + i.box_size[1]}, false, right_of(s, h), figures.length(i.box_size[1]), h, {PartKind::item, i.name}});
}

} // namespace thinskin::drawing
