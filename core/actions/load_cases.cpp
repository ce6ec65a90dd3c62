#include "actions/load_cases.h"

#include "actions/item_states.h"
#include "actions/road_factors.h"
#include "actions/slam.h"

#include <array>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::actions {

namespace {

using results::LoadCase;
using results::Vec3;

LoadCase made(std::string name, const Vec3& g, std::string source, std::string derivation)
{
    LoadCase c;
    c.name = std::move(name);
    c.acceleration_g = g;
    c.source = std::move(source);
    c.derivation = std::move(derivation);
    c.theory = "linear";
    return c;
}

LoadCase parked()
{
    return made(name_parked, {0, -1, 0}, "weight", "standing still on level ground: 1 g down");
}

/// The vehicle's own states, one factor at a time.
void add_single(std::vector<LoadCase>& out, const layout::Layout& l, const RoadFactors& r)
{
    const auto vehicle = [&](const char* name, double forward, double left, const std::string& why) {
        out.push_back(made(name, to_panel(l.faces, {forward, left, -1}), r.source, why));
    };
    const bool row = r.basis == "quasi-static";
    out.push_back(made(name_pothole, {0, -r.down, 0}, r.source, fmt::format("{:.4g} g down in total, {:.4g} g of it on top of the weight{}", r.down, r.down - 1, row ? "" : " (" + r.basis + ")")));
    out.push_back(made("rebound", {0, r.up, 0}, r.source, fmt::format("{:.4g} g up, net of the weight{}", r.up, row ? "" : " (" + r.basis + ")")));
    vehicle("braking", r.fore_aft, 0, fmt::format("masses pushed {:.4g} g forward in the vehicle, with 1 g weight{}", r.fore_aft, r.beside_securing));
    vehicle("accelerating", -r.fore_aft, 0, fmt::format("masses pushed {:.4g} g rearward in the vehicle, with 1 g weight", r.fore_aft));
    vehicle("cornering left", 0, -r.lateral, fmt::format("turning left pushes masses {:.4g} g to the vehicle's right, with 1 g weight", r.lateral));
    vehicle("cornering right", 0, r.lateral, fmt::format("turning right pushes masses {:.4g} g to the vehicle's left, with 1 g weight", r.lateral));
}

std::vector<double> both_signs(double value)
{
    if (value == 0) return {0};
    return {value, -value};
}

void add_combined(std::vector<LoadCase>& out, const layout::Layout& l, const RoadFactors& r)
{
    const std::string why = fmt::format("{:.4g} g down with half of {:g} g sideways and half of {:g} g fore and aft, this one of all signs (AC-2)", r.down,
                                        r.mixed_lateral, r.mixed_fore_aft);
    for (const double fore_aft : both_signs(0.5 * r.mixed_fore_aft))
        for (const double lateral : both_signs(0.5 * r.mixed_lateral)) {
            const Vec3 g = to_panel(l.faces, {fore_aft, lateral, -r.down});
            out.push_back(made("combined: " + panel_words(g), g, r.source, why));
        }
}

/// The door's turning at the item (at the free edge when there is no item), or why it cannot be had.
struct Slam { // of a door thrown shut or flung open
    double g = 0;        ///< square to the panel, size
    double across_g = 0; ///< along panel x when the masses are thrown inward; an item off the pin line swings across, too
    double y = 0, e = 0, y_edge = 0;
    std::string reason, lift_with;
};

Slam no_slam(const char* reason, const char* lift_with)
{
    Slam s;
    s.reason = reason;
    s.lift_with = lift_with;
    return s;
}

/// A stop from the free edge's speed in the given time.
Slam stopped(const layout::Layout& l, double edge_speed, double stop, const char* key)
{
    if (!l.door->has_hinges) return no_slam("the hinge line is not given", "door.hinges");
    const layout::Door& d = *l.door;
    Slam s;
    const auto from_pin = [&d](double x) { return d.hinges_right ? d.pin_x - x : x - d.pin_x; };
    s.y_edge = from_pin(d.hinges_right ? 0.0 : l.width);
    s.y = l.item ? from_pin(l.item->centre[0]) : s.y_edge;
    s.e = l.item ? l.item->centre[2] - d.pin_z : 0.0;
    const std::optional<double> a = half_sine_stop_g({.v_edge_mm_s = edge_speed, .y_mm = s.y, .y_edge_mm = s.y_edge, .D_s = stop, .e = 0});
    if (!a) return no_slam("edge speed, stop or distance from the pin line is outside the rule's range (up to 5 m/s, 1 .. 500 ms)", key);
    if (!(s.y > 0 && std::isfinite(s.e))) return no_slam("the item hangs on the hinge line", "item.centre_of_mass");
    s.g = *a;
    s.across_g = (d.hinges_right ? -1 : 1) * s.g * s.e / s.y;
    return s;
}

Slam slam_of(const layout::Layout& l)
{
    if (l.kind != model::PanelKind::door) return no_slam("only a door hinged at its side is covered", "panel.kind");
    if (!l.door || !l.door->has_slam) return no_slam("closing speed and stop of the door are not given", "door.slam");
    return stopped(l, l.door->slam_edge_speed, l.door->slam_stop, "door.slam");
}

/// Share of the closing speed with which a door springs back into its latch; engineering judgement.
constexpr double slam_rebound = 0.3;

std::string slam_sentence(double edge_speed, double stop, const Slam& s)
{
    return fmt::format("{:g} m/s at the free edge ({:.0f} mm from the pin line) stopped by a half-sine of {:g} ms without rebound: {:.1f} g at {:.0f} mm, "
                       "and {:.1f} g across the panel because it hangs {:.0f} mm off the pin, with 1 g weight; brackets and item have the acceleration of their own places and the item turns with the door; the mounted item's own response to the pulse is not in it (AC-1)",
                       edge_speed / 1000, s.y_edge, stop * 1000, s.g, s.y, std::abs(s.across_g), s.e);
}

/// The field that the whole door turns with: each mass has the acceleration of its own place, and turns itself.
/// a = spin (z - pin_z, 0, -(x - pin_x)); thrown inward a_z < 0 at the item.
void turn_about_pin(LoadCase& c, const layout::Door& d, const Slam& s, double times)
{
    const double side = d.hinges_right ? -1 : 1; // of x - pin_x
    c.turns = true;
    c.spin_rad_s2 = times * side * s.g * base::gravity_m_s2 * 1000 / s.y;
    c.pin_x_mm = d.pin_x;
    c.pin_z_mm = d.pin_z;
}

void add_slam(LoadCases& out, const layout::Layout& l)
{
    if (l.kind == model::PanelKind::wall) return;
    const Slam s = slam_of(l);
    if (!s.reason.empty()) {
        for (const char* name : {name_slam_inward, name_slam_outward}) out.not_run.push_back({name, s.reason, s.lift_with});
        return;
    }
    const std::string source = "case file, door.slam; half-sine stop (common practice, no source)";
    const std::string how = slam_sentence(l.door->slam_edge_speed, l.door->slam_stop, s);
    LoadCase shut = made(name_slam_inward, {s.across_g, -1, -s.g}, source, "door thrown shut, masses carry on inward: " + how);
    turn_about_pin(shut, *l.door, s, 1);
    out.cases.push_back(std::move(shut));
    // What springs back is caught by the latch: the same stop takes the rebound's speed out the other way.
    LoadCase back = made(name_slam_outward, {0.0 - slam_rebound * s.across_g, -1, slam_rebound * s.g}, source,
                             fmt::format("door springs back from its seal with {:g} of its speed (judgement) and the latch catches it in the same time, masses carry on outward: {:.1f} g "
                                         "at the item, {:.1f} g across, with 1 g weight (AC-1)",
                                         slam_rebound, slam_rebound * s.g, slam_rebound * std::abs(s.across_g)));
    turn_about_pin(back, *l.door, s, -slam_rebound);
    out.cases.push_back(std::move(back));
}

/// Flung open, by hand or by the wind, into the stop of its check strap. Run where the case says how fast.
void add_slam_open(LoadCases& out, const layout::Layout& l)
{
    if (l.kind != model::PanelKind::door || !l.door || !(l.door->open_edge_speed || l.door->open_stop)) return;
    const layout::Door& d = *l.door;
    const Slam s = d.open_edge_speed && d.open_stop ? stopped(l, *d.open_edge_speed, *d.open_stop, "door.open") : no_slam("edge speed and stop belong together", "door.open");
    if (!s.reason.empty()) {
        out.not_run.push_back({name_slam_open, s.reason, s.lift_with});
        return;
    }
    LoadCase c = made(name_slam_open, {0.0 - s.across_g, -1, s.g}, "case file, door.open; half-sine stop (common practice, no source)",
                      "door flung open into its stop, masses carry on outward: " + slam_sentence(*d.open_edge_speed, *d.open_stop, s));
    c.door_closed = false;
    turn_about_pin(c, d, s, -1);
    out.cases.push_back(std::move(c));
}

bool loaded(const model::Case& c)
{
    for (const model::PanelForce& f : c.forces)
        for (const model::Quantity& q : f.force)
            if (q.value != 0) return true;
    for (const model::PanelPressure& p : c.pressures)
        if (p.value.value != 0) return true;
    return !c.masses.empty();
}

LoadCase applied()
{
    LoadCase c = made(name_applied, {0, -1, 0}, "case file, forces, pressures and masses", "panel forces and pressures, masses with 1 g of weight; the skin's own weight left out");
    c.applied_only = true;
    return c;
}

} // namespace

LoadCases load_cases(const layout::Layout& l, std::optional<double> solver_Hz)
{
    LoadCases out;
    if (l.source && model::is_bare_panel(*l.source)) {
        if (loaded(*l.source)) out.cases.push_back(applied());
        else out.not_run.push_back({name_applied, "nothing loads the panel: every force, pressure and mass is zero", "forces"});
        return out;
    }
    out.cases.push_back(parked());
    const RoadFactors road = road_factors(l, solver_Hz);
    if (!road.problem.reason.empty()) {
        out.not_run.push_back(road.problem);
    } else {
        add_single(out.cases, l, road);
        add_combined(out.cases, l, road);
        out.assumptions = road.assumptions;
        out.cautions = road.cautions;
    }
    out.shaking = road.shaking;
    add_slam(out, l);
    add_slam_open(out, l);
    add_item_states(out, l, road);
    return out;
}

bool wants_solver_frequency(const layout::Layout& l)
{
    const model::Case& c = *l.source;
    return c.road && c.road->basis != model::Basis::quasi_static && c.item && !c.item->natural_frequency;
}

DynamicFactor dynamic_factor(const layout::Layout& l, std::optional<double> solver_Hz)
{
    if (l.source && model::is_bare_panel(*l.source)) return {0, "none", "forces and pressures are taken as given"};
    const RoadFactors road = road_factors(l, solver_Hz);
    return {road.down, road.basis, road.derivation};
}

} // namespace thinskin::actions
