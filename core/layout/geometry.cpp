#include "layout/resolver.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

/// Geometry that cannot be: errors with the numbers. What may be, but deserves a look, is a caution.
namespace thinskin::layout {

namespace {

constexpr double hinge_zone = 150; ///< mm round hinges and latches; common practice, no source

/// Radius of what bears on a part: the head's side when the part is the first ply, the nut's when it is the last.
double bears(const Stack& s, const std::string& part)
{
    const bool first = s.plies.front().part == part, last = s.plies.back().part == part;
    if (!first && !last) return s.hardware.hole / 2;
    const auto& washer = first ? s.hardware.head_washer : s.hardware.nut_washer;
    return (washer ? washer->diameter : s.hardware.across_flats) / 2;
}

/// Head, nut or washer must be wider than the hole.
void check_hole(Resolver& r, const Stack& s)
{
    for (bool nut : {false, true}) {
        const auto& washer = nut ? s.hardware.nut_washer : s.hardware.head_washer;
        const double wide = washer ? washer->diameter : s.hardware.across_flats;
        if (s.hardware.not_covered.empty() && s.hardware.hole >= wide)
            r.error(s.where, s.name, fmt::format("the hole of {:g} mm lets the {} of {:g} mm through", s.hardware.hole, nut ? "nut or its washer" : "head or its washer", wide));
    }
}

void check_on_bar(Resolver& r, const Stack& s, const AngleBar& bar)
{
    const Local at = local(bar, s.at);
    const double washer = bears(s, bar.name);
    if (at.along < 0 || at.along > bar.length())
        r.error(s.where, s.name, fmt::format("{} is {:.0f} mm beyond the end of {}", s.name, at.along < 0 ? -at.along : at.along - bar.length(), bar.name), "move the hole or lengthen the part");
    else if (at.from_heel < bar.section.t || at.from_heel > bar.section.b)
        r.error(s.where, s.name, fmt::format("{} is not on the lying leg of {}: {:.1f} mm from its heel, the leg reaches from {:.1f} to {:.1f} mm", s.name, bar.name, at.from_heel, bar.section.t, bar.section.b));
    else if (at.from_heel - washer < bar.section.t)
        r.error(s.where, s.name, fmt::format("washer or head of {} (radius {:.1f} mm) runs into the heel of {}: only {:.1f} mm are free", s.name, washer, bar.name, at.from_heel - bar.section.t));
    else if (at.from_heel + washer > bar.section.b + 1e-9)
        r.error(s.where, s.name, fmt::format("washer of {} (radius {:.1f} mm) hangs over the toe of {}: only {:.1f} mm are there", s.name, washer, bar.name, bar.section.b - at.from_heel));
}

void check_in_panel(Resolver& r, const Stack& s)
{
    if (s.at.x <= 0 || s.at.y <= 0 || s.at.x >= r.out.width || s.at.y >= r.out.height)
        r.error(s.where, s.name, fmt::format("{} at [{:.0f}, {:.0f}] mm is off the panel of {:.0f} x {:.0f} mm", s.name, s.at.x, s.at.y, r.out.width, r.out.height));
}

void check_zone(Resolver& r, const Stack& s, Point centre, double radius, const std::string& why)
{
    const double distance = std::hypot(s.at.x - centre.x, s.at.y - centre.y);
    if (distance < radius)
        r.error(s.where, s.name, fmt::format("{} is {:.0f} mm from {}; no drilling within {:.0f} mm", s.name, distance, why, radius), "move the hole, or have the maker of the vehicle agree and leave the zone out");
}

void check_zones(Resolver& r, const Stack& s)
{
    for (const model::NoDrill& z : r.source.no_drill) check_zone(r, s, {z.at.x.value, z.at.y.value}, z.radius.value, z.why.empty() ? "a no-drill point" : z.why);
    if (!r.out.door) return;
    for (double y : r.out.door->hinge_heights) check_zone(r, s, {r.out.door->pin_x, y}, hinge_zone, "a hinge");
    for (Point p : r.out.door->latches) check_zone(r, s, p, hinge_zone, "a latch");
}

void check_spacing(Resolver& r, const std::vector<const Stack*>& all)
{
    for (std::size_t i = 0; i < all.size(); ++i)
        for (std::size_t j = i + 1; j < all.size(); ++j) {
            const double distance = std::hypot(all[i]->at.x - all[j]->at.x, all[i]->at.y - all[j]->at.y);
            const auto widest = [](const Stack& s) { return std::max({s.hardware.across_flats, s.hardware.head_washer ? s.hardware.head_washer->diameter : 0.0, s.hardware.nut_washer ? s.hardware.nut_washer->diameter : 0.0}) / 2; };
            if (distance >= (all[i]->hardware.hole + all[j]->hardware.hole) / 2 && distance < widest(*all[i]) + widest(*all[j]))
                r.error(all[j]->where, all[j]->name, fmt::format("the washers or heads of {} and {} overlap: {:.1f} mm apart", all[i]->name, all[j]->name, distance), "smaller washers, or holes farther apart");
            if (distance < (all[i]->hardware.hole + all[j]->hardware.hole) / 2)
                r.error(all[j]->where, all[j]->name, fmt::format("the holes of {} and {} run into each other ({:.1f} mm apart)", all[i]->name, all[j]->name, distance));
        }
}

bool inside(double v, double from, double size) { return v > from + 1e-9 && v < from + size - 1e-9; }
bool overlap(double a0, double a1, double b0, double b1) { return a0 < b1 - 1e-9 && b0 < a1 - 1e-9; }

void check_box(Resolver& r, const Bracket& b)
{
    const Item& i = *r.out.item;
    const double x0 = std::min(b.web_x, b.leg.toe(0).x), x1 = std::max(b.web_x, b.leg.toe(0).x);
    if (!overlap(x0, x1, i.box_from[0], i.box_from[0] + i.box_size[0])) return;
    const double box_top = i.box_from[1] + i.box_size[1], box_far = i.box_from[2] + i.box_size[2];
    if (overlap(b.arm_top_y - b.arm_section.h, b.arm_top_y, i.box_from[1], box_top) && overlap(0, b.arm_length, i.box_from[2], box_far))
        r.error(b.where, "brackets." + b.name + ".arm", fmt::format("the arm (top at {:.0f} mm) lies inside the item's box, which starts at {:.0f} mm", b.arm_top_y, i.box_from[1]));
    if (overlap(b.leg.from.y, b.leg.to.y, i.box_from[1], box_top) && overlap(0, b.leg.section.h, i.box_from[2], box_far))
        r.error(b.where, "brackets." + b.name + ".leg", fmt::format("the leg stands {:.0f} mm off the skin and the item's box starts at {:.0f} mm", b.leg.section.h, i.box_from[2]));
    if (!b.has_brace) return;
    for (double f = 0.02; f < 1; f += 0.02)
        if (inside(b.brace_from_y + f * (b.arm_top_y - b.arm_section.h - b.brace_from_y), i.box_from[1], i.box_size[1]) && inside(f * b.brace_to_z, i.box_from[2], i.box_size[2])) {
            r.error(b.where, "brackets." + b.name + ".brace", "the brace runs through the item's box");
            return;
        }
}

void check_item(Resolver& r)
{
    const Item& i = *r.out.item;
    if (!i.has_box) return;
    for (int k = 0; k < 3; ++k)
        if (!(i.centre[static_cast<std::size_t>(k)] >= i.box_from[static_cast<std::size_t>(k)] && i.centre[static_cast<std::size_t>(k)] <= i.box_from[static_cast<std::size_t>(k)] + i.box_size[static_cast<std::size_t>(k)]))
            r.error(r.source.item->at, "item.centre_of_mass", fmt::format("the centre of mass lies outside the item's box along {}", "xyz"[k]));
    if (i.box_from[2] < 0) r.error(r.source.item->at, "item.box", "the item's box starts inside the panel; expected z of at least 0 mm");
    if (i.box_from[0] < 0 || i.box_from[0] + i.box_size[0] > r.out.width || i.box_from[1] < 0 || i.box_from[1] + i.box_size[1] > r.out.height)
        r.caution(fmt::format("the item reaches beyond the panel's edge: it stands from x {:.0f} to {:.0f} mm on a panel {:.0f} mm wide", i.box_from[0], i.box_from[0] + i.box_size[0], r.out.width));
    for (const Bracket& b : r.out.brackets) check_box(r, b);
}

void check_swing(Resolver& r)
{
    if (!r.out.door || !r.out.door->has_hinges || !r.out.item || !r.out.item->has_box || !r.source.door->opening_angle) return;
    const Item& i = *r.out.item;
    const Door& d = *r.out.door;
    const double near_x = d.hinges_right ? i.box_from[0] + i.box_size[0] : i.box_from[0];
    const double clear = std::abs(d.pin_x - near_x), depth = i.box_from[2] + i.box_size[2];
    if (clear < 0 || (d.hinges_right ? near_x > d.pin_x : near_x < d.pin_x))
        r.error(r.source.item->at, "item.box", "the item reaches past the hinge line and strikes the body when the door opens");
    else if (r.source.door->opening_angle->value > 1.6)
        r.caution(fmt::format("opened fully the item ({:.0f} mm deep) comes to stand beside the vehicle, {:.0f} mm from the hinge line: look for the side wall there", depth, clear));
}

/// Points of forces, masses and gauges lie on the panel, a spread force wholly so.
void check_points(Resolver& r)
{
    const auto on = [&r](double x, double y, double hx, double hy) { return x - hx >= 0 && y - hy >= 0 && x + hx <= r.out.width && y + hy <= r.out.height; };
    const auto complain = [&r](const base::Location& at, const std::string& path, double x, double y) {
        r.error(at, path, fmt::format("[{:g}, {:g}] mm is off the panel of {:g} x {:g} mm, or what is spread there reaches over its edge", x, y, r.out.width, r.out.height));
    };
    for (std::size_t i = 0; i < r.source.forces.size(); ++i) {
        const model::PanelForce& f = r.source.forces[i];
        const double hx = f.spread_over ? f.spread_over->x.value / 2 : 0, hy = f.spread_over ? f.spread_over->y.value / 2 : 0;
        if (!on(f.at.x.value, f.at.y.value, hx, hy)) complain(f.where, fmt::format("forces[{}].at", i), f.at.x.value, f.at.y.value);
    }
    for (std::size_t i = 0; i < r.source.masses.size(); ++i)
        if (const auto& m = r.source.masses[i]; !on(m.at.x.value, m.at.y.value, 5, 5)) complain(m.where, fmt::format("masses[{}].at", i), m.at.x.value, m.at.y.value);
    for (std::size_t i = 0; i < r.source.gauges.size(); ++i)
        if (const auto& g = r.source.gauges[i]; !on(g.at.x.value, g.at.y.value, 0, 0)) complain(g.where, fmt::format("gauges[{}].at", i), g.at.x.value, g.at.y.value);
}

/// An end fixing lies within the width of the frame it is fixed to.
void check_on_frame(Resolver& r, const MemberEnd& e)
{
    const Frame& f = r.out.frames[static_cast<std::size_t>(e.side == "left" ? 0 : e.side == "right" ? 1 : e.side == "bottom" ? 2 : 3)];
    if (!f.given) return;
    for (const Stack& s : e.fasteners) {
        const double from_edge = e.side == "left" ? s.at.x : e.side == "right" ? r.out.width - s.at.x : e.side == "bottom" ? s.at.y : r.out.height - s.at.y;
        if (from_edge + s.hardware.hole / 2 >= f.width)
            r.error(s.where, s.name, fmt::format("{} is {:.0f} mm from the {} edge, off the frame, which is {:.0f} mm wide", s.name, from_edge, e.side, f.width));
    }
}

void check_door_figures(Resolver& r)
{
    if (!r.out.door) return;
    const Door& d = *r.out.door;
    if (d.evidence_has_numbers && (d.evidence_at[0] < 0 || d.evidence_at[0] > r.out.width || d.evidence_at[1] < 0 || d.evidence_at[1] > r.out.height || std::abs(d.evidence_at[2]) > 1000))
        r.error(r.source.door->at, "door.hinges.evidence.at", "the place of the maker's or the proof mass is not on this door", "expected a point on the leaf, at most 1 m off it");
    if (d.strap && (d.strap->lever >= r.out.width || d.strap->height < 0 || d.strap->height > r.out.height))
        r.error(r.source.door->at, "door.check_strap", fmt::format("a strap {:.0f} mm off the hinge line at height {:.0f} mm is not on this leaf", d.strap->lever, d.strap->height));
    if (d.sag_test && (d.sag_test->at.x < 0 || d.sag_test->at.x > r.out.width || !((d.hinges_right ? d.pin_x - d.sag_test->at.x : d.sag_test->at.x - d.pin_x) > 0)))
        r.error(r.source.door->at, "door.hinges.sag_test.at", "the test mass does not hang on the leaf");
    if (d.has_slam && (d.slam_edge_speed < 500 || d.slam_stop > 0.1))
        r.caution(fmt::format("a slam of {:g} m/s stopped in {:g} ms is gentle; doors of work vans are thrown shut at 1 m/s and more", d.slam_edge_speed / 1000, d.slam_stop * 1000));
}

void check_plates(Resolver& r)
{
    for (const Plate& p : r.out.plates) {
        const std::vector<const Stack*> through = r.out.stacks_of(p);
        if (through.empty()) r.error(p.where, "reinforcement.backing_plates." + p.name, "no fastener goes through it: nothing holds it to the skin");
        for (const Stack* s : through) {
            const double radius = bears(*s, p.name), free = std::min({s->at.x - p.low.x, p.high.x - s->at.x, s->at.y - p.low.y, p.high.y - s->at.y});
            if (radius > free + 1e-9) r.error(s->where, s->name, fmt::format("washer, nut or head of {} (radius {:.1f} mm) hangs over the edge of {}: only {:.1f} mm are there", s->name, radius, p.name, free));
        }
        if (r.out.cavity > 0 && p.thickness > r.out.cavity) r.error(p.where, "reinforcement.backing_plates." + p.name, fmt::format("{:.0f} mm thick, and the cavity behind the skin is {:.0f} mm deep", p.thickness, r.out.cavity));
    }
}

void check_cavity(Resolver& r)
{
    for (const Angle& a : r.out.angles)
        if (r.out.cavity > 0 && a.bar.section.h > r.out.cavity)
            r.error(a.where, "reinforcement.angles." + a.bar.name, fmt::format("the standing leg is {:.0f} mm but the cavity behind the skin is {:.0f} mm deep", a.bar.section.h, r.out.cavity));
}

} // namespace

void check_geometry(Resolver& r)
{
    std::vector<const Stack*> all;
    for (const Bracket& b : r.out.brackets)
        for (const Stack& s : b.fasteners) {
            all.push_back(&s);
            check_on_bar(r, s, b.leg);
            for (const Angle& a : r.out.angles)
                if (on_lying_leg(a.bar, s.at)) check_on_bar(r, s, a.bar);
        }
    if (r.out.item)
        for (const Foot& f : r.out.item->feet) {
            all.push_back(&f.stack);
            for (const Angle& a : r.out.angles)
                if (on_lying_leg(a.bar, f.stack.at)) check_on_bar(r, f.stack, a.bar);
        }
    for (const Angle& a : r.out.angles)
        for (const MemberEnd& e : a.ends)
            for (const Stack& s : e.fasteners) check_on_bar(r, s, a.bar);
    for (const MemberEnd* e : r.out.member_ends()) {
        for (const Stack& s : e->fasteners) all.push_back(&s);
        check_on_frame(r, *e);
    }
    for (const Plate& p : r.out.plates)
        for (const PlateFastener& f : p.fasteners) all.push_back(&f.stack);
    for (const Stack* s : all) {
        check_hole(r, *s);
        check_in_panel(r, *s);
        check_zones(r, *s);
    }
    check_spacing(r, all);
    if (r.out.item) check_item(r);
    check_points(r);
    check_openings(r);
    check_door_figures(r);
    check_swing(r);
    check_cavity(r);
    check_plates(r);
}

} // namespace thinskin::layout
