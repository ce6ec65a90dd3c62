#include "layout/resolver.h"

#include <algorithm>
#include <fmt/core.h>

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

} // namespace

void resolve_item(Resolver& r)
{
    if (!r.source.item) return;
    const model::Item& i = *r.source.item;
    Item out;
    out.name = i.name;
    out.mass = i.mass.value;
    out.tolerance = i.mass_tolerance.value;
    out.centre = point(i.centre_of_mass);
    if (i.box) {
        out.has_box = true;
        out.box_from = point(i.box->from);
        out.box_size = point(i.box->size);
    }
    r.out.item = out;
    if (!i.fixings.empty())
        r.not_covered("fixing", out.name, "an item fixed by its own feet (item.fixings) is not covered yet", "brackets");
}

void resolve_door(Resolver& r)
{
    if (!r.source.door) return;
    const model::Door& d = *r.source.door;
    Door out;
    out.mass = d.mass.value;
    out.centre = point(d.centre_of_mass);
    if (d.hinges) take_hinges(*d.hinges, out);
    for (const model::Latch& l : d.latches) out.latches.push_back(point(l.at));
    if (d.rest) out.rest = point(*d.rest);
    if (d.slam) {
        out.has_slam = true;
        out.slam_edge_speed = d.slam->edge_speed.value;
        out.slam_stop = d.slam->stop.value;
    }
    r.out.door = out;
}

} // namespace thinskin::layout
