#include "layout/resolver.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <numbers>

namespace thinskin::layout {

namespace {

Vec3 point(const model::Point3& p) { return {p.x.value, p.y.value, p.z.value}; }
Point point(const model::Point2& p) { return {p.x.value, p.y.value}; }

void take_hinges(const model::Hinges& h, Door& out)
{
    out.has_hinges = true;
    out.hinges_right = h.side == model::Side::right;
    for (const model::Quantity& y : h.heights) out.hinge_heights.push_back(y.value);
    std::sort(out.hinge_heights.begin(), out.hinge_heights.end());
    out.pin_x = h.pin_x.value;
    out.pin_z = h.pin_z.value;
    out.evidence = h.evidence.kind;
    out.evidence_has_numbers = h.evidence.mass.has_value() && h.evidence.at.has_value();
    if (h.evidence.mass) out.evidence_mass = h.evidence.mass->value;
    if (h.evidence.at) {
        out.evidence_at = point(*h.evidence.at);
        out.evidence_has_z = true;
    }
    out.evidence_state = h.evidence.state;
    out.evidence_note = h.evidence.note;
}

std::optional<double> value(const std::optional<model::Quantity>& q) { return q ? std::optional(q->value) : std::nullopt; }

/// The weakest of them speaks for all; one without a figure leaves the door without.
void take_latches(const model::Door& d, Door& out)
{
    bool all = !d.latches.empty();
    for (const model::Latch& l : d.latches) {
        out.latches.push_back(point(l.at));
        all = all && l.strength;
        if (!l.strength || (out.latch_strength && !(l.strength->value < *out.latch_strength))) continue;
        out.latch_strength = l.strength->value;
        out.latch_source = l.source;
    }
    if (!all) out.latch_strength.reset();
}

/// Angles as asked for, else every quarter turn up to how far it opens, and there.
std::vector<double> angles(const model::Door& d)
{
    std::vector<double> out;
    if (d.open)
        for (const model::Quantity& q : d.open->angles) out.push_back(q.value);
    constexpr double quarter = std::numbers::pi / 2, near = 1e-3;
    const double most = d.opening_angle ? d.opening_angle->value : 0;
    const bool asked = !out.empty();
    for (double a = 0; !asked && a < most - near; a += quarter) out.push_back(a);
    if (most > 0 && std::none_of(out.begin(), out.end(), [most](double a) { return std::abs(a - most) < near; })) out.push_back(most);
    std::sort(out.begin(), out.end());
    return out;
}

void take_open(const model::Door& d, Door& out)
{
    if (d.check_strap) out.strap = Door::Strap{d.check_strap->lever.value, d.check_strap->height.value, value(d.check_strap->holds), value(d.check_strap->strength), value(d.check_strap->stop_strength)};
    if (d.end_stop) out.end_stop = Door::EndStop{d.end_stop->lever.value, d.end_stop->height.value, value(d.end_stop->strength)};
    if (d.opening_angle) out.opening_angle = d.opening_angle->value;
    out.angles = angles(d);
    if (d.hinges && d.hinges->sag_test) out.sag_test = Door::SagTest{d.hinges->sag_test->mass.value, point(d.hinges->sag_test->at), d.hinges->sag_test->sag.value};
    if (!d.open) return;
    out.slope = value(d.open->slope);
    out.wind = value(d.open->wind);
    out.open_edge_speed = value(d.open->edge_speed);
    out.open_stop = value(d.open->stop);
}

/// A force on the item is a load case of its own: its name must not be one of the others'.
void check_load_names(Resolver& r, const model::Item& i)
{
    const char* taken[] = {"applied", "parked", "pothole", "rebound", "braking", "accelerating", "cornering", "slam", "combined", "air at speed", "person"};
    for (std::size_t k = 0; k < i.loads.size(); ++k) {
        const std::string& name = i.loads[k].name;
        for (const char* word : taken)
            if (name.rfind(word, 0) == 0) r.error(i.loads[k].where, fmt::format("item.loads[{}].name", k), fmt::format("a load case called {} is there already; expected another name", word));
        for (std::size_t m = 0; m < k; ++m)
            if (i.loads[m].name == name) r.error(i.loads[k].where, fmt::format("item.loads[{}].name", k), fmt::format("the name \"{}\" stands twice", name));
    }
}

} // namespace

void resolve_item(Resolver& r)
{
    if (!r.source.item) return;
    const model::Item& i = *r.source.item;
    Item out;
    out.name = i.name;
    out.snow = i.snow ? i.snow->value : 0;
    out.water = i.water ? i.water->value : 0;
    out.mass = i.mass.value + out.snow + out.water;
    out.tolerance = i.mass_tolerance.value;
    out.centre = point(i.centre_of_mass);
    if (i.box) {
        out.has_box = true;
        out.box_from = point(i.box->from);
        out.box_size = point(i.box->size);
    }
    check_load_names(r, i);
    for (const model::ItemLoad& load : i.loads) out.loads.push_back({load.name, {load.force[0].value, load.force[1].value, load.force[2].value}, point(load.at), load.both_ways});
    if (i.person) out.person = Person{i.person->mass.value, point(i.person->at), i.person->allowed != "never"};
    out.air_speed = value(i.air_speed);
    r.out.item = out;
}

void resolve_door(Resolver& r)
{
    if (!r.source.door) return;
    const model::Door& d = *r.source.door;
    Door out;
    out.mass = d.mass.value;
    out.centre = point(d.centre_of_mass);
    if (d.hinges) take_hinges(*d.hinges, out);
    take_latches(d, out);
    if (d.rest) {
        out.rest = point(*d.rest);
        out.rest_gap = value(d.rest->gap);
        out.rest_stiffness = value(d.rest->stiffness);
    }
    if (d.slam) {
        out.has_slam = true;
        out.slam_edge_speed = d.slam->edge_speed.value;
        out.slam_stop = d.slam->stop.value;
    }
    take_open(d, out);
    r.out.door = out;
}

} // namespace thinskin::layout
