#include "handles/grips.h"

#include <fmt/format.h>

namespace thinskin::gui {
namespace {

Vec3 place(const model::Point2& p) { return {p.x.value, p.y.value, 0}; }
Vec3 place(const model::Point3& p) { return {p.x.value, p.y.value, p.z.value}; }

/// The item as a whole: its outline, centre of mass, feet and the places of its forces go together.
void item(const model::Item& i, Grips& out)
{
    std::vector<Binding> b = of_point("item.centre_of_mass", i.centre_of_mass);
    Vec3 middle = place(i.centre_of_mass);
    if (i.box) {
        join(b, of_point("item.box.from", i.box->from));
        const Vec3 size = place(i.box->size);
        middle = place(i.box->from);
        for (std::size_t k = 0; k < 3; ++k) middle[k] += size[k] / 2;
    }
    for (std::size_t k = 0; k < i.fixings.size(); ++k) join(b, of_point(fmt::format("item.fixings[{}].at", k), i.fixings[k].at));
    for (std::size_t k = 0; k < i.loads.size(); ++k) join(b, of_point(fmt::format("item.loads[{}].at", k), i.loads[k].at));
    if (i.person) join(b, of_point("item.person.at", i.person->at));
    add(out, HandleKind::item, "item", i.name, i.name, middle, std::move(b));
    add(out, HandleKind::item_centre, "item.centre_of_mass", i.name, "centre of mass of " + i.name, place(i.centre_of_mass), of_point("item.centre_of_mass", i.centre_of_mass));
    for (std::size_t k = 0; k < i.fixings.size(); ++k) {
        const std::string key = fmt::format("item.fixings[{}]", k), name = i.fixings[k].name.empty() ? fmt::format("foot {}", k + 1) : i.fixings[k].name;
        add(out, HandleKind::foot, key, name, "foot " + name, place(i.fixings[k].at), of_point(key + ".at", i.fixings[k].at));
    }
}

void door(const model::Door& d, Grips& out)
{
    for (std::size_t k = 0; k < d.latches.size(); ++k) {
        const std::string key = fmt::format("door.latches[{}]", k);
        add(out, HandleKind::latch, key, "", "latch", place(d.latches[k].at), of_point(key + ".at", d.latches[k].at));
    }
    if (d.rest) add(out, HandleKind::rest, "door.rest", "", "rest", place(*d.rest), of_point("door.rest.at", *d.rest));
    if (!d.hinges) return;
    for (std::size_t k = 0; k < d.hinges->heights.size(); ++k) {
        const std::string key = fmt::format("door.hinges.heights[{}]", k);
        Grip& g = add(out, HandleKind::hinge, key, "", fmt::format("hinge {}", k + 1), {d.hinges->pin_x.value, d.hinges->heights[k].value, d.hinges->pin_z.value},
                      {bind(0, "door.hinges.pin.x", d.hinges->pin_x), bind(1, key, d.hinges->heights[k]), bind(2, "door.hinges.pin.z", d.hinges->pin_z)});
        g.handle.follows = "across and in depth: all hinges are on one line";
    }
}

} // namespace

void other_grips(const model::Case& c, Grips& out)
{
    if (c.item) item(*c.item, out);
    if (c.door) door(*c.door, out);
    const auto point = [&out](HandleKind kind, const std::string& key, const std::string& at_key, const std::string& name, const std::string& label, const model::Point2& at) {
        add(out, kind, key, name, label, place(at), of_point(key + at_key, at));
    };
    for (std::size_t k = 0; k < c.no_drill.size(); ++k) point(HandleKind::no_drill, fmt::format("no_drill[{}]", k), ".circle.at", c.no_drill[k].why, "no-drill zone: " + c.no_drill[k].why, c.no_drill[k].at);
    for (std::size_t k = 0; k < c.forces.size(); ++k) point(HandleKind::force, fmt::format("forces[{}]", k), ".at", "force", fmt::format("force {}", k + 1), c.forces[k].at);
    for (std::size_t k = 0; k < c.masses.size(); ++k) point(HandleKind::mass, fmt::format("masses[{}]", k), ".at", "small mass", fmt::format("mass {}", k + 1), c.masses[k].at);
    for (std::size_t k = 0; k < c.gauges.size(); ++k) point(HandleKind::gauge, fmt::format("gauges[{}]", k), ".at", c.gauges[k].name, "gauge " + c.gauges[k].name, c.gauges[k].at);
}

} // namespace thinskin::gui
