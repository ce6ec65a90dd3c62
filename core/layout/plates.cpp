#include "layout/resolver.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

/// Backing plates behind the skin: their place, their own fasteners, what they cannot share a place with.
namespace thinskin::layout {

namespace {

bool cross(double a0, double a1, double b0, double b1) { return a0 < b1 - 1e-9 && b0 < a1 - 1e-9; }

struct Box { Point low, high; };

Box box_of(std::initializer_list<Point> corners)
{
    Box b{*corners.begin(), *corners.begin()};
    for (const Point& p : corners) {
        b.low = {std::min(b.low.x, p.x), std::min(b.low.y, p.y)};
        b.high = {std::max(b.high.x, p.x), std::max(b.high.y, p.y)};
    }
    return b;
}

void refuse_shared_place(Resolver& r, const Plate& p, const Box& other, const std::string& name)
{
    if (cross(p.low.x, p.high.x, other.low.x, other.high.x) && cross(p.low.y, p.high.y, other.low.y, other.high.y))
        r.error(p.where, "reinforcement.backing_plates." + p.name, fmt::format("{} and {} lie in one place behind the skin", p.name, name), "move one of them, or end it before the other");
}

void check_place(Resolver& r, const Plate& p)
{
    if (p.low.x < 0 || p.low.y < 0 || p.high.x > r.out.width || p.high.y > r.out.height)
        r.error(p.where, "reinforcement.backing_plates." + p.name + ".box", fmt::format("{} reaches over the edge of the panel of {:.0f} x {:.0f} mm", p.name, r.out.width, r.out.height));
    for (const Angle& a : r.out.angles) {
        if (!a.inside) continue;
        const double length = a.bar.length();
        refuse_shared_place(r, p, box_of({a.bar.heel(0), a.bar.heel(length), a.bar.toe(0), a.bar.toe(length)}), a.bar.name);
    }
    for (const Rib& rib : r.out.ribs) {
        const double half = rib.section.kind == catalogue::Section::Kind::hat ? rib.section.b / 2 + rib.section.foot : rib.section.b / 2;
        const bool level = rib.from.y == rib.to.y;
        const Point d{level ? 0 : half, level ? half : 0};
        refuse_shared_place(r, p, box_of({{rib.from.x - d.x, rib.from.y - d.y}, {rib.to.x + d.x, rib.to.y + d.y}, {rib.from.x + d.x, rib.from.y + d.y}}), rib.name);
    }
    for (const Plate& other : r.out.plates) refuse_shared_place(r, p, {other.low, other.high}, other.name);
}

void take_fasteners(Resolver& r, Plate& p, const model::BackingPlate& m, const std::string& path)
{
    for (std::size_t i = 0; i < m.fasteners.size(); ++i) {
        model::Fastener f = m.fasteners[i];
        if (f.name.empty()) f.name = fmt::format("{} {}", p.name, i + 1);
        const std::string at = fmt::format("{}.fasteners[{}]", path, i);
        if (!p.holds({f.at.x.value, f.at.y.value})) r.error(f.where, at + ".at", fmt::format("{} is not on {}", f.name, p.name));
        else p.fasteners.push_back(plate_stack(r, p, f, at));
    }
}

/// Judgement: a side of less than 0.3 of the panel's lesser one, and three times as thick as the skin or more.
void caution_small_and_stiff(Resolver& r, const Plate& p)
{
    constexpr double small = 0.3, stiff = 3;
    const double side = std::max(p.high.x - p.low.x, p.high.y - p.low.y), panel = std::min(r.out.width, r.out.height);
    if (p.tied() || !(side < small * panel) || !(p.thickness >= stiff * r.out.skin.core)) return;
    r.caution(fmt::format("{} is small and stiff and ends in the skin: the skin bends sharply at its rim and cracks there in the long run. A larger, thinner one carried on to the frame spares it; round its corners and take off the burr", p.name));
}

void resolve_plate(Resolver& r, const model::BackingPlate& m, const std::string& path)
{
    if (m.face == model::Face::outside) {
        r.not_covered("reinforcement", m.name, "a plate on the outer face of the skin is not covered: it is left out", fmt::format("reinforcement.backing_plates.{}.face: inside", m.name));
        return;
    }
    Plate p;
    p.name = m.name;
    p.where = m.at;
    p.material = r.material(m.material, m.at, path + ".material");
    p.thickness = m.thickness.value;
    p.low = {m.box.from.x.value, m.box.from.y.value};
    p.high = {p.low.x + m.box.size.x.value, p.low.y + m.box.size.y.value};
    if (!(p.high.x > p.low.x && p.high.y > p.low.y)) {
        r.error(m.at, path + ".box", "expected a width and a height of more than 0 mm");
        return;
    }
    check_place(r, p);
    take_fasteners(r, p, m, path);
    caution_small_and_stiff(r, p);
    r.out.reinforcement_mass += p.mass();
    r.out.plates.push_back(std::move(p));
}

} // namespace

double Plate::mass() const { return (high.x - low.x) * (high.y - low.y) * thickness * material.density * 1e-9; }

bool Plate::tied() const
{
    return std::any_of(fasteners.begin(), fasteners.end(), [](const PlateFastener& f) { return !f.side.empty(); });
}

std::vector<const Stack*> Layout::stacks_of(const Plate& p) const
{
    std::vector<const Stack*> out;
    for (const Stack* s : outer_stacks())
        if (p.holds(s->at)) out.push_back(s);
    for (const PlateFastener& f : p.fasteners) out.push_back(&f.stack);
    return out;
}

void resolve_plates(Resolver& r)
{
    for (std::size_t i = 0; i < r.source.reinforcement.backing_plates.size(); ++i)
        resolve_plate(r, r.source.reinforcement.backing_plates[i], fmt::format("reinforcement.backing_plates[{}]", i));
}

} // namespace thinskin::layout
