#pragma once
#include "layout/layout.h"
#include "results/results.h"

#include <memory>
#include <string>

/// The demo job (an outdoor unit on two brackets on a rear door, two angles tied to the door's frame) as a resolved layout,
/// written out by hand so that actions and statics are tested without the reader and the resolver.
/// Bracket masses: printed rolled areas 3.08 and 1.42 cm2 (EN 10056-1 sizes 40x40x4 and 25x25x3), 7850 kg/m3.
namespace thinskin::tests {

struct Demo {
    std::unique_ptr<model::Case> source = std::make_unique<model::Case>(); ///< layout keeps a pointer to it
    layout::Layout layout;
};

inline catalogue::Material steel(const std::string& name)
{
    catalogue::Material m;
    m.name = name;
    m.density = 7850;
    return m;
}

inline layout::AngleBar demo_bar(const std::string& name, layout::Point from, layout::Point to, layout::Point lying)
{
    layout::AngleBar b;
    b.name = name;
    b.section = catalogue::make_angle({.b = 40, .h = 40, .t = 4});
    b.material = steel("S235");
    b.from = from;
    b.to = to;
    const double length = b.length();
    b.along = {(to.x - from.x) / length, (to.y - from.y) / length};
    b.lying = lying;
    b.gauge = 25;
    return b;
}

inline layout::Stack demo_bolt(const std::string& name, const std::string& bracket, layout::Point at, const std::string& rail)
{
    layout::Stack s;
    s.name = name;
    s.owner = bracket;
    s.at = at;
    s.plies = {{"leg " + bracket, layout::Ply::Role::leg, steel("S235"), 4, 20, "end"},
               {"skin", layout::Ply::Role::skin, steel("DC04"), 0.76, 150, "left"},
               {rail, layout::Ply::Role::angle, steel("S235"), 4, 15, "toe"}};
    return s;
}

inline layout::Bracket demo_bracket(const std::string& name, double x, double lying)
{
    constexpr double area_40 = 308, area_25 = 142, density = 7.85e-6;
    layout::Bracket b;
    b.name = name;
    b.x = x;
    b.leg = demo_bar("leg " + name, {x, 400}, {x, 760}, {lying, 0});
    b.web_x = x - 25 * lying;
    b.arm_section = catalogue::make_angle({.b = 40, .h = 40, .t = 4});
    b.arm_top_y = 700;
    b.arm_length = 400;
    b.has_brace = true;
    b.brace_section = catalogue::make_angle({.b = 25, .h = 25, .t = 3});
    b.brace_from_y = 430;
    b.brace_to_z = 270;
    b.leg_mass = area_40 * 360 * density;
    b.arm_mass = area_40 * 400 * density;
    b.brace_mass = area_25 * 381.838 * density;
    const std::string letter = lying > 0 ? "L" : "R";
    b.fasteners = {demo_bolt(letter + "1", name, {x, 420}, "lower rail"), demo_bolt(letter + "2", name, {x, 740}, "upper rail")};
    return b;
}

inline layout::Angle demo_rail(const std::string& name, double y)
{
    layout::Angle a;
    a.bar = demo_bar(name, {35, y}, {705, y}, {0, 1});
    a.bar.face_z = -0.8;
    a.bar.standing = -1;
    a.ends[0].side = "left";
    a.ends[0].tied = true;
    a.ends[0].port = {32.5, y}; // two bolts at 45 and 20
    a.ends[1].side = "right";
    a.ends[1].tied = true;
    a.ends[1].port = {707.5, y};
    return a;
}

inline layout::Door demo_door()
{
    layout::Door d;
    d.mass = 27;
    d.centre = {370, 760, -20};
    d.has_hinges = true;
    d.hinges_right = true;
    d.hinge_heights = {210, 1290};
    d.pin_x = 752;
    d.pin_z = -30;
    d.evidence = model::HingeEvidence::Kind::maker_limit;
    d.evidence_mass = 50;
    d.evidence_at = {370, 900, 220};
    d.evidence_has_numbers = d.evidence_has_z = true;
    d.latches = {{0, 580}};
    d.has_slam = true;
    d.slam_edge_speed = 1200;
    d.slam_stop = 0.020;
    return d;
}

inline Demo demo()
{
    Demo d;
    d.source->road = model::Road{};
    d.source->road->surface = "unsealed";
    d.source->item = model::Item{};
    layout::Layout& l = d.layout;
    l.source = d.source.get();
    l.width = 740;
    l.height = 1520;
    l.brackets = {demo_bracket("left", 150, 1), demo_bracket("right", 554, -1)};
    l.angles = {demo_rail("lower rail", 420), demo_rail("upper rail", 740)};
    layout::Item item;
    item.name = "condenser unit";
    item.mass = 36;
    item.tolerance = 0.05;
    item.centre = {352, 965, 205};
    l.item = item;
    l.door = demo_door();
    l.reinforcement_mass = l.angles[0].bar.mass() + l.angles[1].bar.mass();
    return d;
}

/// A load case with the given factors, g on the masses, panel axes.
inline results::LoadCase state(const std::string& name, const results::Vec3& g)
{
    results::LoadCase c;
    c.name = name;
    c.acceleration_g = g;
    return c;
}

} // namespace thinskin::tests
