#include "drawing/canvas.h"
#include "drawing/kinds.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thinskin::drawing {

namespace {

/// Quartered circle: the trade's mark of a centre of mass.
void mass_symbol(Canvas& c, const Part& part, Point at, double r)
{
    c.circle(part, Style::visible, at, r);
    for (const double from : {0.0, pi}) {
        std::vector<Point> sector{at};
        for (int i = 0; i <= 6; ++i) sector.push_back({at.x + r * std::cos(from + i * pi / 12), at.y + r * std::sin(from + i * pi / 12)});
        c.filled(part, Style::visible, sector);
    }
}

void gauge_symbol(Canvas& c, const Part& part, Point at, double r)
{
    c.outline(part, Style::visible, {{at.x - r, at.y}, {at.x, at.y + r}, {at.x + r, at.y}, {at.x, at.y - r}});
    c.disc(part, at, r / 4);
}

/// Force towards the viewer: circle with a dot; away from him: circle with a cross.
void through_the_paper(Canvas& c, const Part& part, Point at, double r, bool towards)
{
    c.circle(part, Style::visible, at, r);
    if (towards) c.disc(part, at, r / 3);
    else {
        const double d = r * 0.7071;
        c.line(part, Style::visible, {at.x - d, at.y - d}, {at.x + d, at.y + d});
        c.line(part, Style::visible, {at.x - d, at.y + d}, {at.x + d, at.y - d});
    }
}

/// An arrow of fixed length that starts or ends at the point.
void towards(Canvas& c, const Part& part, Point at, Point direction, double length, double head, bool ends_there)
{
    const double size = std::hypot(direction.x, direction.y);
    if (!(size > 0)) return;
    const Point away{direction.x / size * length, direction.y / size * length};
    if (ends_there) c.arrow(part, {at.x - away.x, at.y - away.y}, at, head);
    else c.arrow(part, at, {at.x + away.x, at.y + away.y}, head);
}

double foot_thickness(const layout::Foot& f)
{
    for (const layout::Ply& p : f.stack.plies)
        if (p.role == layout::Ply::Role::foot) return p.thickness;
    return 0;
}

void panel_force(const model::PanelForce& f, Canvas& e, Canvas& s, double h)
{
    const Point at{f.at.x.value, f.at.y.value};
    const Part part{PartKind::load, "force"};
    const double x = f.force[0].value, y = f.force[1].value, z = f.force[2].value;
    if (f.spread_over) {
        const double w = f.spread_over->x.value / 2, d = f.spread_over->y.value / 2;
        e.rectangle(part, Style::thin, {at.x - w, at.y - d}, {at.x + w, at.y + d});
    }
    towards(e, part, at, {x, y}, 4 * h, h, false);
    if (z != 0) through_the_paper(e, part, at, 0.6 * h, z > 0);
    towards(s, part, {0, at.y}, {z, y}, 4 * h, h, z < 0);
}

} // namespace

void Canvas::arrow(const Part& p, Point from, Point to, double head)
{
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    if (!(length > 0)) return;
    const Point d{(to.x - from.x) / length, (to.y - from.y) / length};
    const Point back{to.x - head * d.x, to.y - head * d.y};
    line(p, Style::visible, from, back);
    filled(p, Style::visible, {to, {back.x - head / 3 * d.y, back.y + head / 3 * d.x}, {back.x + head / 3 * d.y, back.y - head / 3 * d.x}});
}

void draw_item(const layout::Layout& l, Canvas& e, Canvas& s, double h)
{
    if (l.item) {
        const layout::Item& i = *l.item;
        const Part part{PartKind::item, i.name}, centre{PartKind::mass_centre, i.name};
        if (i.has_box) {
            e.filled(part, Style::phantom, Canvas::corners({i.box_from[0], i.box_from[1]}, {i.box_from[0] + i.box_size[0], i.box_from[1] + i.box_size[1]}));
            s.filled(part, Style::phantom, Canvas::corners({i.box_from[2], i.box_from[1]}, {i.box_from[2] + i.box_size[2], i.box_from[1] + i.box_size[1]}));
        }
        for (const layout::Foot& f : i.feet) {
            const Point at = f.stack.at;
            const double t = foot_thickness(f);
            e.rectangle(part, Style::visible, {at.x - f.half_x, at.y - f.half_y}, {at.x + f.half_x, at.y + f.half_y});
            s.rectangle(part, Style::visible, {0, at.y - f.half_y}, {t, at.y + f.half_y});
        }
        mass_symbol(e, centre, {i.centre[0], i.centre[1]}, 0.7 * h);
        mass_symbol(s, centre, {i.centre[2], i.centre[1]}, 0.7 * h);
    }
    if (!l.source) return;
    for (const auto& m : l.source->masses) mass_symbol(e, {PartKind::mass_centre, "small mass"}, {m.at.x.value, m.at.y.value}, 0.5 * h);
    for (const auto& g : l.source->gauges) {
        gauge_symbol(e, {PartKind::gauge, g.name}, {g.at.x.value, g.at.y.value}, 0.5 * h);
        gauge_symbol(s, {PartKind::gauge, g.name}, {0, g.at.y.value}, 0.5 * h);
    }
}

namespace {

/// Force of the item on its arms in the load case; the arrow hangs on the centre of mass.
void item_force(const layout::Layout& l, const results::Outcome& o, const std::string& load_case, Canvas& s, double h, const Figures& figures, std::vector<Label>& labels)
{
    results::Vec3 sum{};
    for (const results::MountForce& m : o.mounts)
        if (m.load_case == load_case)
            for (std::size_t i = 0; i < 3; ++i) sum[i] += m.force_N[i];
    const double size = std::hypot(sum[1], sum[2]);
    if (!(size >= 0.5) || !l.item) return;
    const Part part{PartKind::load, "item"};
    const Point at{l.item->centre[2], l.item->centre[1]}, d{sum[2] / size, sum[1] / size};
    s.arrow(part, {at.x + 0.9 * h * d.x, at.y + 0.9 * h * d.y}, {at.x + 6 * h * d.x, at.y + 6 * h * d.y}, h);
    labels.push_back({{at.x + 3 * h * d.x, at.y + 3 * h * d.y}, figures.force(size), part, h, 0, false});
}

struct Row { double y = 0, pull_N = 0; bool stands = true; };

/// What brackets and feet pull on what is behind, summed over each row of bolts.
std::vector<Row> rows(const layout::Layout& l, const results::Outcome& o, const std::string& load_case)
{
    std::vector<Row> all;
    for (const layout::Stack* k : l.outer_stacks())
        for (const results::FastenerForce& f : o.fasteners) {
            if (f.part != k->owner || f.name != k->name || f.load_case != load_case) continue;
            const double y = k->at.y;
            auto row = std::find_if(all.begin(), all.end(), [y](const Row& r) { return std::abs(r.y - y) < 0.5; });
            if (row == all.end()) row = all.insert(all.end(), Row{y});
            row->pull_N += f.own_pull_N;
            row->stands = row->stands && f.stands;
        }
    return all;
}

void row_force(const Row& r, double text_y, double behind, Canvas& s, double h, const Figures& figures)
{
    const Part part{PartKind::load, "row"};
    const double x = behind - 0.8 * h;
    const std::string words = !r.stands || !std::isfinite(r.pull_N) ? "not covered" : figures.force(std::abs(r.pull_N));
    s.view().texts.push_back({{x - 4.4 * h, text_y}, words, h, Anchor::end, false, part});
    if (!r.stands) return;
    const Point left{x - 4 * h, r.y}, right{x, r.y};
    if (r.pull_N >= 0) s.arrow(part, left, right, h);
    else s.arrow(part, right, left, h);
}

} // namespace

std::vector<Label> draw_loads(const layout::Layout& l, const results::Outcome* o, const std::string& load_case, Canvas& e, Canvas& s, double h, const Figures& figures)
{
    std::vector<Label> labels;
    if (l.source)
        for (const auto& f : l.source->forces) panel_force(f, e, s, h);
    const std::string which = load_case.empty() && o ? o->load_path_case : load_case;
    if (!o || which.empty() || o->verdict == base::Verdict::not_solved) return labels;
    item_force(l, *o, which, s, h, figures, labels);
    double behind = -l.skin.nominal;
    for (const layout::Frame& f : l.frames)
        if (f.given) behind = std::min(behind, -l.skin.nominal - f.depth);
    for (const layout::Angle& a : l.angles)
        if (a.inside) behind = std::min(behind, -l.skin.nominal - a.bar.section.h);
    std::vector<Row> all = rows(l, *o, which);
    std::sort(all.begin(), all.end(), [](const Row& a, const Row& b) { return a.y < b.y; });
    std::vector<double> wanted;
    for (const Row& r : all) wanted.push_back(r.y);
    const std::vector<double> places = spread_out(wanted, 1.25 * h);
    for (std::size_t i = 0; i < all.size(); ++i) row_force(all[i], places[i], behind, s, h, figures);
    return labels;
}

} // namespace thinskin::drawing
