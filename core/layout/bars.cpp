#include "layout/resolver.h"

#include <cmath>

namespace thinskin::layout {

double AngleBar::length() const { return std::hypot(to.x - from.x, to.y - from.y); }

Point AngleBar::on_bolt_line(double s) const { return {from.x + s * along.x, from.y + s * along.y}; }

Point AngleBar::heel(double s) const
{
    const Point p = on_bolt_line(s);
    return {p.x - gauge * lying.x, p.y - gauge * lying.y};
}

Point AngleBar::toe(double s) const
{
    const Point p = on_bolt_line(s);
    const double beyond = section.b - gauge;
    return {p.x + beyond * lying.x, p.y + beyond * lying.y};
}

double AngleBar::mass() const { return section.mass_per_metre(material.density) * length() / 1000.0; }

double Layout::hung_mass() const
{
    double sum = item ? item->mass : 0;
    for (const Bracket& b : brackets) sum += b.mass();
    return sum;
}

std::vector<const Stack*> Layout::outer_stacks() const
{
    std::vector<const Stack*> out;
    for (const Bracket& b : brackets)
        for (const Stack& s : b.fasteners) out.push_back(&s);
    if (item)
        for (const Foot& f : item->feet) out.push_back(&f.stack);
    return out;
}

std::vector<const MemberEnd*> Layout::member_ends() const
{
    std::vector<const MemberEnd*> out;
    for (const Angle& a : angles)
        for (const MemberEnd& e : a.ends) out.push_back(&e);
    for (const Rib& r : ribs)
        for (const MemberEnd& e : r.ends) out.push_back(&e);
    return out;
}

Point unit(model::Way way)
{
    switch (way) {
    case model::Way::left: return {-1, 0};
    case model::Way::right: return {1, 0};
    case model::Way::up: return {0, 1};
    case model::Way::down: return {0, -1};
    }
    return {0, 0};
}

AngleBar angle_bar(const catalogue::Section& s, const catalogue::Material& m, Point from, Point to, model::Way towards, double gauge)
{
    AngleBar bar;
    bar.section = s;
    bar.material = m;
    bar.from = from;
    bar.to = to;
    bar.gauge = gauge;
    const double length = bar.length();
    if (length > 0) bar.along = {(to.x - from.x) / length, (to.y - from.y) / length};
    // The lying leg is square to the bar; `towards` only chooses the side.
    const Point wanted = unit(towards);
    const Point normal{-bar.along.y, bar.along.x};
    const double side = normal.x * wanted.x + normal.y * wanted.y;
    bar.lying = side >= 0 ? normal : Point{-normal.x, -normal.y};
    return bar;
}

Local local(const AngleBar& bar, Point p)
{
    const double dx = p.x - bar.from.x, dy = p.y - bar.from.y;
    return {dx * bar.along.x + dy * bar.along.y, dx * bar.lying.x + dy * bar.lying.y + bar.gauge};
}

bool on_lying_leg(const AngleBar& bar, Point p)
{
    const Local l = local(bar, p);
    return l.along >= 0 && l.along <= bar.length() && l.from_heel >= 0 && l.from_heel <= bar.section.b;
}

} // namespace thinskin::layout
