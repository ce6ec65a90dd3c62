#pragma once
#include "base/location.h"
#include "base/quantity.h"
#include "model/own_rows.h"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

/// The case as plain values, units as written, nothing resolved: names are names, copies are still copies.
/// One struct per block of the case file (docs/case_file.md). Lengths are model::Quantity with value in mm.
namespace thinskin::model {

using base::Location;
using base::Quantity;

struct Point2 { Quantity x, y; };
struct Point3 { Quantity x, y, z; };

enum class Rules { allowable_strength, partial_factors };
enum class Basis { quasi_static, base_pulse, random_vibration };
enum class VehicleLoad { unladen, laden };
enum class PanelKind { door, wall, sliding_door, top_hinged_door };
enum class Faces { rear, front, left, right };
enum class InPlane { fixed, movable };
enum class SkinTheory { automatic, linear, large_deflection };
enum class GridSize { normal, quick, fine };
[[nodiscard]] constexpr const char* name(GridSize size) { return size == GridSize::quick ? "quick" : size == GridSize::fine ? "fine" : "normal"; }
[[nodiscard]] inline GridSize grid_size(const std::string& word) { return word == "quick" ? GridSize::quick : word == "fine" ? GridSize::fine : GridSize::normal; }
enum class Seen { seen, tapped, assumed };
enum class Side { left, right, bottom, top };
enum class Way { left, right, up, down };        ///< which way a leg on the skin points from its heel
enum class Face { outside, inside };

struct Job { std::string title, number, vehicle, prepared_by, notes; };

/// A point of a density of acceleration, measured at the place of the item.
struct DensityPoint { Quantity at, value; Location where; };

struct Road {
    std::string surface;
    Basis basis = Basis::quasi_static;
    std::optional<Quantity> distance_per_year, life_distance; ///< life_distance: what the job has to last
    std::string pulse;                       ///< base_pulse: row of the catalogue
    std::string roughness;                   ///< random_vibration: class A .. E, or `density`
    std::vector<DensityPoint> density;
    std::optional<Quantity> speed;
    VehicleLoad load = VehicleLoad::unladen; ///< the empty van shakes more
    std::optional<Quantity> wheelbase, overhang;
    std::optional<Quantity> damping;         ///< of the mounted item; not given: 5 %, an assumption where it is used
    Location at, surface_at, pulse_at;       ///< of the block and of two of its values
};

/// What the vehicle's papers and a weighbridge say; what is not given is not checked.
struct Vehicle { std::optional<Quantity> payload_left, rear_axle_plate, rear_axle_weighed, front_axle_least, front_axle_weighed; std::string source; Location at; };

struct Sheet {
    std::string material;
    Quantity thickness;
    Quantity coating;    ///< default 0.04 mm, an assumption
    Quantity crown;      ///< default 0 mm
    Location at;
};

struct EdgeCondition {
    enum class Kind { held, hinged, free, sprung } kind = Kind::held;
    Quantity rotational_stiffness; ///< sprung only
};

struct Frame {
    Quantity width, depth;
    std::optional<Sheet> inner;    ///< the sheet the end fixings go through
    std::string section;           ///< "box 60x25x0.7"; empty = not given
    Seen seen = Seen::assumed;
    Location at;
};

struct EndFastener { std::string name; Point2 at; std::string use; Location where; };

/// What holds the end of an angle, rib or strap.
struct MemberEnd {
    enum class To { none, frame, bracket, item } to = To::none; ///< bracket, item: ends of straps, the part at the end's place
    std::vector<EndFastener> fasteners;
    std::optional<Quantity> rotational_stiffness; ///< N mm/rad about the panel edge; not given = free
    std::string turning = "free";                 ///< about the panel edge: free, fixed
    std::optional<Quantity> gap;                  ///< clear distance between the member and the part it is fixed to; not given = in contact
    bool same_as_other = false;                   ///< same_as_left / same_as_right ... : mirrored by layout
    Location at;
};

struct Ends { MemberEnd first, second; };  ///< first = left or bottom, second = right or top

struct Rib {
    std::string name;
    Point2 from, to;
    std::string section, material;
    std::optional<Way> lying;
    Seen seen = Seen::assumed;
    Ends ends;
    Location at;
};

struct Cavity { Quantity depth; std::string inner_panel; };

struct Box2 { Point2 from; Point2 size; };
/// A window or access hole; without an edge section its edge is free.
struct OpeningEdge { std::string section, material; Location at; };
struct Opening { std::string name; Box2 box; std::optional<Quantity> corner_radius; std::optional<OpeningEdge> edge; Location at; };

struct Panel {
    PanelKind kind = PanelKind::door;
    Faces faces = Faces::rear;
    Quantity width, height;
    Sheet skin;
    std::array<EdgeCondition, 4> edges; ///< index = int(Side)
    InPlane edges_in_plane = InPlane::fixed;
    std::array<std::optional<Frame>, 4> frame; ///< per edge; one `frame:` block fills all four
    std::optional<Cavity> cavity;
    std::vector<Rib> ribs;
    std::vector<Opening> openings;
    Location at;
};

struct HingeEvidence {
    enum class Kind { none, maker_limit, proof_hang, regulation, us_regulation } kind = Kind::none;
    std::optional<Quantity> mass;
    std::optional<Point3> at;
    std::string state;              ///< proof_hang: closed, open
    std::string note;
    Location where;
};

/// A known mass hung on the leaf and how far the leaf went down there.
struct SagTest { Quantity mass; Point2 at; Quantity sag; };

struct Hinges {
    Side side = Side::right;
    std::vector<Quantity> heights;
    Quantity pin_x, pin_z;
    HingeEvidence evidence;
    std::optional<SagTest> sag_test;
    Location at;
};

struct Latch { Point2 at; std::optional<Quantity> strength = std::nullopt; std::string source = {}; }; ///< strength: maker's or tested pull out of the door, before any factor
/// What the closed door sits on; gap under the bare door as it hangs, stiffness measured by a known load on the rest.
struct Rest : Point2 { std::optional<Quantity> gap = std::nullopt, stiffness = std::nullopt; };
struct Slam { Quantity edge_speed, stop; };
struct CheckStrap { Quantity lever, height; std::optional<Quantity> holds, strength, stop_strength; };
/// A stop of the open door on the body, apart from the check strap: buffer, hinge with a stop of its own.
struct EndStop { Quantity lever, height; std::optional<Quantity> strength; };
/// What the open door has to stand; a part that is not given is not run.
struct OpenDoor { std::vector<Quantity> angles; std::optional<Quantity> slope, wind, edge_speed, stop; };

struct Door {
    Quantity mass;
    Point3 centre_of_mass;
    std::optional<Hinges> hinges;
    std::vector<Latch> latches;
    std::optional<Rest> rest;
    std::optional<Quantity> opening_angle;
    std::optional<Slam> slam;
    std::optional<CheckStrap> check_strap;
    std::optional<EndStop> end_stop;
    std::optional<OpenDoor> open;
    Location at;
};

struct Box3 { Point3 from; Point3 size; };

/// A force on the item that makes a load case of its own, the weight of 1 g with it: wind on what is unfolded, a person's step.
struct ItemLoad { std::string name; std::array<Quantity, 3> force; Point3 at; bool both_ways = false; std::optional<Quantity> wind = std::nullopt; Location where = {}; }; ///< wind: speed the force was worked out for

/// A second way to hold the item if a fixing lets go. What is not given is not covered.
struct Tether {
    std::optional<Quantity> slack;                        ///< how far the item falls before it pulls
    std::optional<Quantity> length, stretch, stiffness;   ///< stretch at its breaking strength over its length, or the stiffness itself
    std::optional<Quantity> strength, anchor_strength;    ///< breaking; of what it is tied to
    std::string tied_to;                                  ///< frame, body, skin, bracket
    std::string source;
    Location where;
};

/// Somebody who stands on one foot on the item, the vehicle parked and its door shut; allowed: parked, never.
struct Person { Point3 at; Quantity mass; std::string allowed; Location where; };

struct ItemFixing { std::string name; Point2 at; std::string use; std::string foot; Location where; };

struct Item {
    std::string name;
    Quantity mass;
    Quantity mass_tolerance;        ///< fraction, default 0.05
    Point3 centre_of_mass;
    std::optional<Box3> box;
    std::vector<Quantity> running_frequency;
    std::optional<Quantity> natural_frequency; ///< lowest, measured on the vehicle
    std::optional<Quantity> running_acceleration, running_time_per_year; ///< how hard and how long it shakes by itself
    std::vector<ItemFixing> fixings;
    std::vector<ItemLoad> loads;
    std::optional<Person> person;
    std::optional<Quantity> snow, water;        ///< that can lie on it, beside `mass`
    std::optional<Quantity> air_speed;          ///< of the air against it on the fastest drive
    std::optional<Tether> tether;
    Location at;
};

struct Leg { Quantity from, to; std::string section, material; Way lying = Way::right; Quantity gauge; Location at; };
struct Arm { Quantity at, length; std::string section, material; Location where; };
struct Brace { Quantity from, to_arm; std::string section, material; Location at; };
struct JointWeld { std::optional<Quantity> weld; std::string bolt; Location at; }; ///< weld leg size, or the name of a fastener kind
struct Joints { std::optional<JointWeld> arm_leg, brace_leg, brace_arm; };
struct Mount { Quantity at; std::string use; std::string kind; std::optional<Quantity> stiffness; Location where; std::string name = {}; }; ///< kind: rigid, rubber; name: not in the file, given by layout::written_out
struct Fastener { std::string name; Point2 at; std::string use; Location where; };

struct Bracket {
    std::string name;
    Quantity x;
    std::string copy_of, mirror_of;             ///< one of them set: all below but x is taken from the other bracket
    std::map<std::string, std::string> rename;  ///< fastener names of the original -> names here
    std::optional<Leg> leg;
    std::optional<Arm> arm;
    std::optional<Brace> brace;
    Joints joints;
    std::vector<Mount> mounts;
    std::vector<Fastener> fasteners;
    Location at;
};

struct Washer { Quantity diameter, thickness; std::string text; }; ///< "24x2 mm"

struct FastenerKind {
    std::string name;
    std::string type;               ///< bolt, screw, rivet, insert (wood_screw: read, not covered)
    std::string size, grade;        ///< "M8", "8.8"; "4.8" or "No. 10"; a rivet's grade is its material
    Face head = Face::outside;
    std::optional<Washer> head_washer, nut_washer;
    std::optional<Quantity> hole, countersink;           ///< countersink: depth of a countersunk head
    bool fitted = false;            ///< fit: clearance | fitted
    bool sleeve = false;            ///< spacer sleeve through a gap
    std::optional<Quantity> head_diameter;               ///< screw, rivet: instead of the catalogue's
    std::optional<Quantity> flange;                      ///< insert: diameter of what bears on the skin
    std::optional<Quantity> shear_strength, tension_strength; ///< of the fastener itself, maker's or tested, before any factor
    std::optional<Quantity> sheet_strength;              ///< insert: maker's or tested pull in this very sheet, before any factor
    std::string strength_source;    ///< whose figures these are
    Location at;
};

struct Angle {
    std::string name, copy_of;
    Point2 from;
    std::optional<Point2> to;       ///< absent only in a copy
    Quantity gauge;
    std::string section, material;
    Face face = Face::inside;
    Way lying = Way::up;
    Seen seen = Seen::seen;
    Ends ends;
    Location at;
};

struct BackingPlate { std::string name; Box2 box; Quantity thickness; std::string material; Face face = Face::inside; std::vector<Fastener> fasteners; Location at; };
struct Strap { std::string name; Point3 from, to; std::string section, material; Quantity slack; Ends ends; Location at; };
struct Board { std::string name; Box2 box; Quantity thickness; std::string wood; Face face = Face::inside; std::vector<Fastener> fasteners; Location at; };

struct Reinforcement {
    std::vector<Angle> angles;
    std::vector<BackingPlate> backing_plates;
    std::vector<Strap> straps;
    std::vector<Board> boards;
};

struct NoDrill { Point2 at; Quantity radius; std::string why; Location where; };

struct PanelForce { Point2 at; std::array<Quantity, 3> force; std::optional<Point2> spread_over; std::string when; Location where; };
struct PanelPressure { std::string over; Quantity value; std::string when; Location where; };
struct PanelMass { Point2 at; Quantity mass; Location where; };
struct Gauge { std::string name; Point2 at; std::string relative_to; Location where; }; ///< relative_to: frame, body

/// A rectangle where no part of a proposed scheme may lie, and no hole.
struct KeepOut { Box2 box; std::string why; Location where; };

/// What `propose` may and may not use; a block of its own, nothing of it takes part in `check`.
struct Propose {
    Quantity margin;                         ///< least margin wanted
    std::optional<Quantity> added_mass;      ///< at most, all hardware together
    std::optional<int> holes;                ///< at most, through the skin
    std::vector<std::string> stock;          ///< on hand: "angle 40x40x4", "M8", "plate 3"
    bool stock_only = false;
    std::vector<std::string> not_use;        ///< the same words, and kinds of fixing: "angles", "floating", ...
    Quantity leg_down, leg_up, sideways;     ///< how far the lower end, the upper end and the whole bracket may move
    bool on_ribs = false;                    ///< every fastener of an outer part goes through a rib
    std::vector<KeepOut> keep_out;
    Location at;
};

/// A default that stands for an unmeasured fact; becomes an assumption in the record.
struct DefaultTaken { std::string key_path, value, why; };

struct Case {
    std::string file;      ///< as given on the command line
    std::string text;      ///< the bytes that were read (for the hash)
    int format = 1;
    Job job;
    Rules rules = Rules::allowable_strength;
    OwnRows own;                    ///< block `catalogue`
    std::optional<Road> road;
    std::optional<Vehicle> vehicle;
    Panel panel;
    std::optional<Door> door;
    std::optional<Item> item;
    std::vector<Bracket> brackets;
    std::vector<FastenerKind> fastener_kinds;
    Reinforcement reinforcement;
    std::vector<NoDrill> no_drill;
    std::vector<PanelForce> forces;
    std::vector<PanelPressure> pressures;
    std::vector<PanelMass> masses;
    std::vector<Gauge> gauges;
    SkinTheory skin = SkinTheory::automatic;
    GridSize grid = GridSize::normal;
    std::optional<Propose> propose;
    std::map<std::string, std::string> measured_from;  ///< key path -> offcut | hole_lip | ultrasonic | scales | drawing | assumed
    std::vector<DefaultTaken> defaults;
};

/// A case with a panel and forces, pressures or masses alone: one load case `applied`.
[[nodiscard]] inline bool is_bare_panel(const Case& c) { return !c.item && c.brackets.empty() && !c.road; }

} // namespace thinskin::model
