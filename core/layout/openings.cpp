#include "layout/resolver.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

/// Windows and access holes (ID-17): where they may be, and that nothing stands on them.
namespace thinskin::layout {

double Opening::distance(Point p) const
{
    const double dx = std::max(low.x - p.x, p.x - high.x), dy = std::max(low.y - p.y, p.y - high.y);
    return dx > 0 && dy > 0 ? std::hypot(dx, dy) : std::max(dx, dy);
}

bool Opening::overlaps(Point a, Point b) const
{
    constexpr double touch = 1e-6;
    const auto common = [](double a0, double a1, double b0, double b1) { return std::min(a0, a1) < b1 - touch && std::max(a0, a1) > b0 + touch; };
    return common(a.x, b.x, low.x, high.x) && common(a.y, b.y, low.y, high.y);
}

namespace {

std::string place(const Opening& o)
{
    return fmt::format("{} (x {:.0f} to {:.0f}, y {:.0f} to {:.0f} mm)", o.name, o.low.x, o.high.x, o.low.y, o.high.y);
}

/// The section all round a stiffened opening, one rib a side.
void add_edge(Resolver& r, const model::OpeningEdge& e, const Opening& o, const std::string& path)
{
    Rib rib;
    rib.section = r.section(e.section, e.at, path + ".edge.section");
    rib.material = r.material(e.material, e.at, path + ".edge.material");
    rib.seen = model::Seen::seen;
    const Point a = o.low, b{o.high.x, o.low.y}, c = o.high, d{o.low.x, o.high.y};
    struct Side { const char* name; Point from, to; };
    for (const Side& s : {Side{"left", a, d}, Side{"right", b, c}, Side{"bottom", a, b}, Side{"top", d, c}}) {
        rib.name = o.name + " " + s.name;
        rib.from = s.from;
        rib.to = s.to;
        r.out.ribs.push_back(rib);
    }
}

void check_place(Resolver& r, const Opening& o, const std::string& path)
{
    if (!(o.low.x > 0 && o.low.y > 0 && o.high.x < r.out.width && o.high.y < r.out.height))
        r.error(o.where, path + ".box", fmt::format("{} reaches to or over the edge of the panel of {:.0f} x {:.0f} mm", place(o), r.out.width, r.out.height), "an opening at the edge leaves an edge that is free there: panel.edges");
    const double most = std::min(o.high.x - o.low.x, o.high.y - o.low.y) / 2;
    if (o.corner_radius && *o.corner_radius > most) r.error(o.where, path + ".corner_radius", fmt::format("a radius of {:.0f} mm is more than half of the shorter side of {}", *o.corner_radius, place(o)), fmt::format("{:.0f} mm or less", most));
    for (const Opening& other : r.out.openings)
        if (other.overlaps(o.low, o.high)) r.error(o.where, path + ".box", fmt::format("{} and {} overlap", place(o), place(other)));
    for (const Rib& rib : r.out.ribs)
        if (o.overlaps({rib.from.x - 1e-3, rib.from.y - 1e-3}, {rib.to.x + 1e-3, rib.to.y + 1e-3}))
            r.error(o.where, path + ".box", fmt::format("{} runs through {}", rib.name, place(o)), "end the rib at the opening, or name it twice, on both sides");
}

/// The shortest way out of the opening for a rectangle that lies over it.
std::string way_out(const Opening& o, Point a, Point b)
{
    struct Way { double by; const char* where; };
    const Way ways[] = {{std::max(a.x, b.x) - o.low.x, "to the left"}, {o.high.x - std::min(a.x, b.x), "to the right"}, {std::max(a.y, b.y) - o.low.y, "down"}, {o.high.y - std::min(a.y, b.y), "up"}};
    const Way least = *std::min_element(std::begin(ways), std::end(ways), [](const Way& u, const Way& v) { return u.by < v.by; });
    return fmt::format("{:.0f} mm or more {} it is clear of the opening", std::ceil(least.by), least.where);
}

/// Half of what lies on the skin round a hole.
double bears_on_skin(const Stack& s)
{
    double wide = std::max({s.hardware.hole, s.hardware.across_flats, s.hardware.tip_diameter});
    if (s.hardware.head_washer) wide = std::max(wide, s.hardware.head_washer->diameter);
    if (s.hardware.nut_washer) wide = std::max(wide, s.hardware.nut_washer->diameter);
    return wide / 2;
}

void check_stack(Resolver& r, const Opening& o, const Stack& s)
{
    const double distance = o.distance(s.at);
    if (distance < 0) r.error(s.where, s.name, fmt::format("{} at [{:.0f}, {:.0f}] mm is in {}: there is no sheet", s.name, s.at.x, s.at.y, place(o)), way_out(o, {s.at.x - bears_on_skin(s), s.at.y - bears_on_skin(s)}, {s.at.x + bears_on_skin(s), s.at.y + bears_on_skin(s)}));
    else if (distance < bears_on_skin(s))
        r.error(s.where, s.name, fmt::format("hole, head or washer of {} (radius {:.1f} mm) reaches over the edge of {}, {:.1f} mm away", s.name, bears_on_skin(s), place(o), distance), fmt::format("at least {:.1f} mm from the opening's edge, before any edge distance", bears_on_skin(s)));
}

void check_bar(Resolver& r, const Opening& o, const AngleBar& bar, const base::Location& at, const std::string& path)
{
    if (o.overlaps(bar.heel(0), bar.toe(bar.length()))) r.error(at, path, fmt::format("{} lies over {}: a leg needs sheet under it all along", bar.name, place(o)), way_out(o, bar.heel(0), bar.toe(bar.length())) + ", or end it before the opening");
}

void check_sheet(Resolver& r, const Opening& o, const std::string& name, Point low, Point high, const base::Location& at, const std::string& path)
{
    if (o.overlaps(low, high)) r.error(at, path, fmt::format("{} (x {:.0f} to {:.0f}, y {:.0f} to {:.0f} mm) lies over {}: it needs skin under it all over", name, low.x, high.x, low.y, high.y, place(o)), way_out(o, low, high) + ", or end it before the opening");
}

/// Sheets behind the skin. Boards are left out of the sums, yet one across a window is a slip of the pen all the same.
void check_sheets(Resolver& r, const Opening& o)
{
    for (const Plate& p : r.out.plates) {
        check_sheet(r, o, p.name, p.low, p.high, p.where, "reinforcement.backing_plates." + p.name + ".box");
        for (const PlateFastener& f : p.fasteners) check_stack(r, o, f.stack);
    }
    for (const model::Board& b : r.source.reinforcement.boards) {
        const Point low{b.box.from.x.value, b.box.from.y.value};
        check_sheet(r, o, b.name, low, {low.x + b.box.size.x.value, low.y + b.box.size.y.value}, b.at, "reinforcement.boards." + b.name + ".box");
        for (const model::Fastener& f : b.fasteners)
            if (o.distance({f.at.x.value, f.at.y.value}) < 0) r.error(f.where, "reinforcement.boards." + b.name + ".fasteners", fmt::format("the fastener at [{:.0f}, {:.0f}] mm is in {}: there is no sheet", f.at.x.value, f.at.y.value, place(o)));
    }
}

/// Fasteners at the ends of angles and straps, where these are on the frame.
void check_ends(Resolver& r, const Opening& o)
{
    for (const Angle& a : r.out.angles)
        for (const MemberEnd& e : a.ends)
            for (const Stack& s : e.fasteners) check_stack(r, o, s);
    for (const Strap& strap : r.out.straps)
        for (const StrapEnd& e : strap.ends)
            if (e.to == model::MemberEnd::To::frame)
                for (const Stack& s : e.fasteners) check_stack(r, o, s);
}

void check_points_in(Resolver& r, const Opening& o)
{
    const auto complain = [&](const base::Location& at, const std::string& path) { r.error(at, path, fmt::format("it acts or is read in {}: there is no sheet", place(o))); };
    for (std::size_t i = 0; i < r.source.forces.size(); ++i) {
        const model::PanelForce& f = r.source.forces[i];
        const double hx = f.spread_over ? f.spread_over->x.value / 2 : 1, hy = f.spread_over ? f.spread_over->y.value / 2 : 1;
        if (o.overlaps({f.at.x.value - hx, f.at.y.value - hy}, {f.at.x.value + hx, f.at.y.value + hy})) complain(f.where, fmt::format("forces[{}].at", i));
    }
    for (std::size_t i = 0; i < r.source.masses.size(); ++i)
        if (const auto& m = r.source.masses[i]; o.overlaps({m.at.x.value - 5, m.at.y.value - 5}, {m.at.x.value + 5, m.at.y.value + 5})) complain(m.where, fmt::format("masses[{}].at", i));
    for (std::size_t i = 0; i < r.source.gauges.size(); ++i)
        if (const auto& g = r.source.gauges[i]; o.distance({g.at.x.value, g.at.y.value}) < 0) complain(g.where, fmt::format("gauges[{}].at", i));
}

} // namespace

void resolve_openings(Resolver& r)
{
    const auto& all = r.source.panel.openings;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const model::Opening& m = all[i];
        const std::string path = fmt::format("panel.openings[{}]", i);
        Opening o;
        o.name = m.name;
        o.low = {m.box.from.x.value, m.box.from.y.value};
        o.high = {o.low.x + m.box.size.x.value, o.low.y + m.box.size.y.value};
        o.stiffened = m.edge.has_value();
        if (m.corner_radius) o.corner_radius = m.corner_radius->value;
        o.where = m.at;
        check_place(r, o, path);
        r.out.openings.push_back(o);
    }
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].edge) add_edge(r, *all[i].edge, r.out.openings[i], fmt::format("panel.openings[{}]", i));
}

void check_openings(Resolver& r)
{
    for (const Opening& o : r.out.openings) {
        for (const Stack* s : r.out.outer_stacks()) check_stack(r, o, *s);
        for (const Bracket& b : r.out.brackets) check_bar(r, o, b.leg, b.where, "brackets." + b.name + ".leg");
        for (const Angle& a : r.out.angles) check_bar(r, o, a.bar, a.where, "reinforcement.angles." + a.bar.name);
        if (r.out.item)
            for (const Foot& f : r.out.item->feet)
                if (o.overlaps({f.stack.at.x - f.half_x, f.stack.at.y - f.half_y}, {f.stack.at.x + f.half_x, f.stack.at.y + f.half_y}))
                    r.error(f.stack.where, f.stack.name, fmt::format("the foot at {} stands over the edge of {}", f.stack.name, place(o)), way_out(o, {f.stack.at.x - f.half_x, f.stack.at.y - f.half_y}, {f.stack.at.x + f.half_x, f.stack.at.y + f.half_y}));
        check_sheets(r, o);
        check_ends(r, o);
        check_points_in(r, o);
    }
}

} // namespace thinskin::layout
