#include "actions/item_states.h"

#include "actions/vehicle.h"
#include "base/quantity.h"

#include <fmt/core.h>

namespace thinskin::actions {

namespace {

using results::LoadCase;
using results::Vec3;

LoadCase made(std::string name, double down, const Vec3& force, const Vec3& at, std::string source, std::string derivation)
{
    LoadCase c;
    c.name = std::move(name);
    c.acceleration_g = {0, -down, 0};
    c.source = std::move(source);
    c.derivation = std::move(derivation);
    c.theory = "linear";
    c.on_item = LoadCase::ItemForce{force, at};
    return c;
}

void add_loads(LoadCases& out, const layout::Item& item)
{
    for (const layout::ItemLoad& load : item.loads)
        for (double sign : load.both_ways ? std::vector<double>{1, -1} : std::vector<double>{1}) {
            const Vec3 f{sign * load.force[0] + 0.0, sign * load.force[1] + 0.0, sign * load.force[2] + 0.0};
            out.cases.push_back(made(sign > 0 ? load.name : load.name + ", turned round", 1, f, load.at, "case file, item.loads",
                                     fmt::format("[{:g}, {:g}, {:g}] N on the item at [{:g}, {:g}, {:g}] mm, with 1 g weight, standing still", f[0], f[1], f[2], load.at[0], load.at[1], load.at[2])));
        }
}

void add_person(LoadCases& out, const layout::Layout& l)
{
    if (!l.item->person) return;
    const layout::Person& p = *l.item->person;
    const bool door = l.kind != model::PanelKind::wall;
    if (!p.allowed) {
        out.cautions.push_back(fmt::format("nobody may stand on {} or climb it: say so on it", l.item->name));
        return;
    }
    const double N = p.kg * base::gravity_m_s2;
    out.cases.push_back(made(name_person, 1, {0, 0.0 - N, 0}, p.at, "case file, item.person; one foot at the outermost place (common practice, no source)",
                             fmt::format("{:g} kg on one foot at [{:g}, {:g}, {:g}] mm: {:.0f} N down, with 1 g weight, the vehicle parked{}; no jump, no pull on it (AC-3)", p.kg, p.at[0], p.at[1], p.at[2], N,
                                         door ? ", the door shut and latched" : "")));
    out.cautions.push_back(fmt::format("one person of {:g} kg at most, with what is carried, on {} and only while the vehicle stands{}: say so on it", p.kg, l.item->name,
                                       door ? " with the door shut and latched; on the open door it is not covered" : ""));
}

/// One push of the air: force per pressure and area, from which the case is made.
struct Push { std::string name; Vec3 way; double C, A_mm2; std::string words; };

std::vector<Push> pushes(const layout::Layout& l)
{
    const auto& [w, h, deep] = l.item->box_size;
    const double face = w * h, end = deep * h;
    const auto rearward = to_panel(l.faces, {-1, 0, 0});
    switch (l.faces) {
    case model::Faces::rear: return {{name_air, {0, 0, 1}, wake_suction, face, "suction in the wake of the vehicle"}};
    case model::Faces::front: return {{name_air, {0, 0, -1}, box_coefficient, face, "pressed on the panel"}};
    case model::Faces::left:
    case model::Faces::right:
        return {{name_air, rearward, box_coefficient, end, "drag rearward"},
                {std::string(name_air) + ", crosswind off the panel", {0, 0, 1}, box_coefficient, face, "crosswind or a passing vehicle, off the panel"},
                {std::string(name_air) + ", crosswind onto the panel", {0, 0, -1}, box_coefficient, face, "crosswind or a passing vehicle, onto the panel"}};
    }
    return {};
}

void add_air(LoadCases& out, const layout::Layout& l, const RoadFactors& road)
{
    const layout::Item& item = *l.item;
    if (!item.air_speed) return;
    const auto refuse = [&out](std::string why, std::string key) { out.not_run.push_back({name_air, std::move(why), std::move(key)}); };
    if (!item.has_box) return refuse("the item's outline is not given", "item.box");
    if (!road.problem.reason.empty()) return refuse("no road state was run to drive in: " + road.problem.reason, road.problem.lift_with);
    const Vec3 middle{item.box_from[0] + item.box_size[0] / 2, item.box_from[1] + item.box_size[1] / 2, item.box_from[2] + item.box_size[2] / 2};
    std::vector<LoadCase> cases;
    for (const Push& p : pushes(l)) {
        const base::Resistance N = air_force({.C = p.C, .A_mm2 = p.A_mm2, .v_mm_s = *item.air_speed});
        if (!N.covered) return refuse(N.reason, "item.air_speed");
        const Vec3 f{p.way[0] * N.nominal + 0.0, p.way[1] * N.nominal + 0.0, p.way[2] * N.nominal + 0.0};
        cases.push_back(made(p.name, road.down, f, middle, "case file, item.air_speed; coefficient of the air: from memory, a flat plate's read",
                             fmt::format("air at {:.4g} km/h on the box, {}: {:.2f} m2 with C = {:g}, {:.0f} N in its middle (AC-16), with the road's {:.3g} g down", *item.air_speed * 3.6e-3, p.words, p.A_mm2 / 1e6, p.C,
                                         N.nominal, road.down)));
        cases.back().driven = true;
    }
    out.cases.insert(out.cases.end(), cases.begin(), cases.end());
    out.assumptions.push_back({"air on the item at speed", l.faces == model::Faces::rear ? "suction coefficient 0.3 on its face: it stands in the wake, no part of it beside or above the body" : "force coefficient 1.3 on its box", "from memory", "not run"});
}

} // namespace

void add_item_states(LoadCases& out, const layout::Layout& l, const RoadFactors& road)
{
    if (!l.item) return;
    add_loads(out, *l.item);
    add_person(out, l);
    add_air(out, l, road);
}

std::vector<std::string> states_not_asked(const layout::Layout& l)
{
    std::vector<std::string> out;
    if (!l.item) return out;
    if (!l.item->person) out.push_back("a person who steps on the item: not run, nothing says that somebody may (item.person)");
    if (!l.item->air_speed) out.push_back("air on the item at speed: not run, no speed is given (item.air_speed)");
    return out;
}

} // namespace thinskin::actions
