#pragma once
#include "base/location.h"
#include "catalogue/own_rows.h"
#include "catalogue/sections.h"
#include "model/case.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

/// The case with names resolved, copies and mirrors expanded, stacks built and every part at its true place.
/// Plain doubles: mm, N, MPa, kg, rad. Panel axes: x right, y up, z out; skin's outer face at z = 0, inner face at -thickness.
namespace thinskin::layout {

struct Point { double x = 0, y = 0; };
using Vec3 = std::array<double, 3>;

/// A sheet with its base metal: nominal thickness less coating.
struct Sheet { std::string name; catalogue::Material material; double nominal = 0, core = 0; };

struct WasherSize { double diameter = 0, thickness = 0; };

/// A fastener with what belongs to it, resolved. Screw and rivet: across_flats and mean_diameter are the head's diameter, hole
/// the fastener's own diameter. Insert: d, stress_area, fub, fyb and across_flats are those of the bolt in it, hole the insert's.
struct Hardware {
    enum class Type { bolt, screw, rivet, insert };
    Type type = Type::bolt;
    std::string kind, size, grade;
    double d = 0, stress_area = 0, across_flats = 0, mean_diameter = 0, hole = 0;
    double tip_diameter = 0;             ///< what bears on the far side: nut, thread of a screw, blind side of a rivet, insert's flange
    double countersink = 0;              ///< depth of a countersunk head, mm; 0: the head lies on the part
    double play = 0;                     ///< how far the part at the head slips before the fastener bears, mm
    double fub = 0, fyb = 0;             ///< MPa; 0: grade not given
    double own_shear = 0, own_tension = 0; ///< strength of the fastener itself, N; 0: not given
    double sheet_strength = 0;           ///< insert: maker's or tested pull in this sheet, N; 0: not given
    bool flange_given = false;           ///< insert: tip_diameter is the flange's, not the hole's
    std::optional<WasherSize> head_washer, nut_washer;
    bool fitted = false, sleeve = false;
    std::string not_covered, lift_with;  ///< set when the kind has no clause (wood screw) or lacks an input, with the key that lifts it
};

/// One sheet of a stack. Order in a stack: from the head to the nut.
struct Ply {
    std::string part;                    ///< "leg left", "skin", "upper rail", "frame left inner"
    enum class Role { leg, foot, skin, rib, angle, frame_inner, plate } role = Role::skin;
    catalogue::Material material;
    double thickness = 0;                ///< core
    double edge_distance = 0;            ///< from the hole's centre to the nearest edge of the ply, mm; infinity when far
    std::string edge;                    ///< which edge that is
};

/// A fastener from head to nut.
struct Stack {
    std::string name;                    ///< "L1"; end fixings: "upper rail left 1"
    std::string owner;                   ///< bracket or angle it belongs to
    Point at;
    Hardware hardware;
    std::vector<Ply> plies;
    double gap = 0;                      ///< largest clear distance between neighbouring plies, mm
    std::string line;                    ///< "head | leg 4.0 | skin 0.76 | angle 4.0 | nut"; a screw ends in its tip
    base::Location where;
};

/// An angle section at its place. The lying leg is on the skin, the standing leg points away from the skin.
struct AngleBar {
    std::string name;
    catalogue::Section section;
    catalogue::Material material;
    Point from, to;                      ///< ends of the bolt line
    Point along;                         ///< unit vector from -> to
    Point lying;                         ///< unit vector from the heel to the toe of the lying leg, across `along`
    double gauge = 0;                    ///< heel (outer face of the standing leg) to bolt line
    double face_z = 0;                   ///< z of the lying leg's face that touches the skin
    double standing = 1;                 ///< +1: standing leg points to +z (outside), -1: to -z (inside)
    [[nodiscard]] double length() const;
    [[nodiscard]] Point on_bolt_line(double s) const;      ///< s along, from `from`
    [[nodiscard]] Point heel(double s) const;              ///< outer face of the standing leg
    [[nodiscard]] Point toe(double s) const;               ///< end of the lying leg
    [[nodiscard]] double mass() const;
};

struct MemberEnd {
    std::string side;                    ///< left, right, bottom, top
    bool tied = false;                   ///< to: frame
    Point port;                          ///< centroid of the end's fasteners
    std::vector<Stack> fasteners;
    std::optional<double> rotational_stiffness; ///< N mm/rad about the panel edge
    bool turning_fixed = false;          ///< does not turn about the panel edge
    double gap = 0;                      ///< clear distance to the frame's sheet, mm
    bool torsion_held = false;           ///< two end fasteners that are not on one line along the member
    std::string frame_section;           ///< text as given; empty = not given
};

struct Angle {
    AngleBar bar;
    bool inside = true;
    model::Seen seen = model::Seen::seen;
    std::array<MemberEnd, 2> ends;       ///< at from, at to
    base::Location where;
};

struct Mount { std::string name; Vec3 at{}; double along = 0; bool rigid = true; double stiffness = 0; std::string use; std::optional<Hardware> hardware; };

struct WeldOrBolt { bool given = false; double weld_leg = 0; std::string bolt; };

struct Bracket {
    std::string name;
    double x = 0;                        ///< bolt line
    AngleBar leg;                        ///< from low to high
    double web_x = 0;                    ///< web line: outer face of the standing leg
    catalogue::Section arm_section;
    catalogue::Material arm_material;
    double arm_top_y = 0, arm_length = 0;
    bool has_brace = false;
    catalogue::Section brace_section;
    catalogue::Material brace_material;
    double brace_from_y = 0, brace_to_z = 0;
    WeldOrBolt arm_leg, brace_leg, brace_arm;
    std::vector<Mount> mounts;
    std::vector<Stack> fasteners;
    double leg_mass = 0, arm_mass = 0, brace_mass = 0;
    base::Location where;
    [[nodiscard]] double mass() const { return leg_mass + arm_mass + brace_mass; }
};

/// A foot of the item, straight on the panel: a plate about its fastener, one piece with the item.
struct Foot { Stack stack; double half_x = 0, half_y = 0; };

/// A force on the item that makes a load case of its own, 1 g of weight with it.
struct ItemLoad { std::string name; Vec3 force{}, at{}; bool both_ways = false; };
/// Somebody who stands on it on one foot, the vehicle parked.
struct Person { double kg = 0; Vec3 at{}; bool allowed = true; };

struct Item {
    std::string name;
    double mass = 0, tolerance = 0;      ///< with snow and water; tolerance as a fraction; load cases use mass * (1 + tolerance)
    double snow = 0, water = 0;          ///< kg, in `mass`
    Vec3 centre{};
    bool has_box = false;
    Vec3 box_from{}, box_size{};
    std::vector<Foot> feet;
    std::vector<ItemLoad> loads;
    std::optional<Person> person;
    std::optional<double> air_speed;     ///< mm/s
    [[nodiscard]] double design_mass() const { return mass * (1 + tolerance); }
};

struct Frame { bool given = false; double width = 0, depth = 0; std::optional<Sheet> inner; std::string section_text; std::optional<catalogue::Section> section; model::Seen seen = model::Seen::assumed; };

struct Door {
    double mass = 0;
    Vec3 centre{};
    bool has_hinges = false;
    bool hinges_right = true;
    std::vector<double> hinge_heights;   ///< ascending
    double pin_x = 0, pin_z = 0;
    model::HingeEvidence::Kind evidence = model::HingeEvidence::Kind::none;
    double evidence_mass = 0;
    Vec3 evidence_at{};
    bool evidence_has_numbers = false, evidence_has_z = false;
    std::string evidence_state, evidence_note;
    std::vector<Point> latches;
    std::optional<double> latch_strength; ///< N, the least of all latches; not given for one: none
    std::string latch_source;
    std::optional<Point> rest;
    std::optional<double> rest_gap, rest_stiffness; ///< mm under the bare door as it hangs, N/mm
    bool has_slam = false;
    double slam_edge_speed = 0, slam_stop = 0;  ///< mm/s, s
    struct Strap { double lever = 0, height = 0; std::optional<double> holds, strength, stop_strength; }; ///< N mm, N
    std::optional<Strap> strap;          ///< check strap: holds and stops the open door
    struct EndStop { double lever = 0, height = 0; std::optional<double> strength; }; ///< N
    std::optional<EndStop> end_stop;     ///< stops the open door in the strap's stead
    double opening_angle = 0;            ///< rad; 0 = not given
    std::vector<double> angles;          ///< rad, ascending; of the open door
    std::optional<double> slope, wind, open_edge_speed, open_stop; ///< rise over run, mm/s, mm/s, s
    struct SagTest { double mass = 0; Point at; double sag = 0; };
    std::optional<SagTest> sag_test;
};

struct Rib { std::string name; Point from, to; catalogue::Section section; catalogue::Material material; bool standing = true; model::Seen seen = model::Seen::assumed; std::array<MemberEnd, 2> ends; }; ///< from left to right or from bottom to top

/// One end of a strap.
struct StrapEnd {
    model::MemberEnd::To to = model::MemberEnd::To::none;
    Vec3 at{};
    std::string key, side;               ///< as in the case: left, right, bottom, top; side: of the frame where it is on one, else key
    int bracket = -1;                    ///< to a bracket: index
    bool on_arm = false;                 ///< to a bracket: its arm, else its leg
    std::vector<Stack> fasteners;
    base::Location where;
};

/// Tension only, once its slack is used up.
struct Strap {
    std::string name;
    Vec3 from{}, to{};
    catalogue::Section section;
    catalogue::Material material;
    double slack = 0;
    std::array<StrapEnd, 2> ends;        ///< at from, at to
    base::Location where;
    [[nodiscard]] double length() const;
    [[nodiscard]] double mass() const;
    [[nodiscard]] bool acts() const;     ///< both ends hang on something, and not both on the frame
};

/// A fastener of a plate's own. On the band of a frame member it holds the plate to the frame: plies plate and the frame's inner
/// sheet; elsewhere it goes through skin and plate.
struct PlateFastener { Stack stack; std::string side; };  ///< side of the frame; empty: through the skin

/// A flat backing plate on the inner face of the skin.
struct Plate {
    std::string name;
    catalogue::Material material;
    double thickness = 0;
    Point low, high;                     ///< lower left, upper right corner
    std::vector<PlateFastener> fasteners;
    base::Location where;
    [[nodiscard]] bool holds(Point p) const { return p.x > low.x && p.x < high.x && p.y > low.y && p.y < high.y; }
    [[nodiscard]] bool tied() const;     ///< by a fastener at least to the frame
    [[nodiscard]] double mass() const;
};

/// A rectangle without sheet; the sections round a stiffened one are ribs of their own.
struct Opening {
    std::string name;
    Point low, high;
    std::optional<double> corner_radius;
    bool stiffened = false;
    base::Location where;
    /// From a point to the outline; negative inside.
    [[nodiscard]] double distance(Point p) const;
    /// True when the rectangle from a to b and the opening have area in common.
    [[nodiscard]] bool overlaps(Point a, Point b) const;
};

struct Layout {
    const model::Case* source = nullptr;
    double width = 0, height = 0;
    model::Faces faces = model::Faces::rear;
    model::PanelKind kind = model::PanelKind::door;
    Sheet skin;
    std::array<model::EdgeCondition, 4> edges;
    bool in_plane_fixed = true;
    std::array<Frame, 4> frames;         ///< index = int(model::Side)
    double cavity = 0;
    std::vector<Rib> ribs;
    std::vector<Opening> openings;
    std::vector<Angle> angles;
    std::vector<Bracket> brackets;
    std::vector<Strap> straps;
    std::vector<Plate> plates;
    std::optional<Item> item;
    std::optional<Door> door;
    double reinforcement_mass = 0;
    std::vector<std::string> cautions;
    std::vector<std::string> own_rows;   ///< rows of the case's own that were used: "screw 5 mm: maker's sheet (from memory)"
    /// Parts that the case names and this version cannot judge: group and reason. They turn their group to not covered.
    struct NotCovered { std::string group, part, reason, lift_with; };
    std::vector<NotCovered> not_covered;
    [[nodiscard]] double hung_mass() const;                ///< item (nominal) and brackets
    /// Fasteners that go through a plate: of outer parts, then its own.
    [[nodiscard]] std::vector<const Stack*> stacks_of(const Plate& p) const;
    /// Fasteners that hold an outer part on the panel: of all brackets, then of the item's feet.
    [[nodiscard]] std::vector<const Stack*> outer_stacks() const;
    [[nodiscard]] std::vector<const MemberEnd*> member_ends() const; ///< of angles and ribs
    [[nodiscard]] bool nothing_hung() const { return brackets.empty() && !(item && !item->feet.empty()); }
};

struct Result { std::optional<Layout> layout; std::vector<base::Diagnostic> diagnostics; };

/// Resolves a case. Errors: unknown names (with the nearest one), sections that cannot be read, geometry that cannot be
/// (fastener on a heel, washer off its leg, fastener beyond its member, hole in a no-drill zone, arm in the item's box, ...).
[[nodiscard]] Result resolve(const model::Case& c);

/// The same job without copies, mirrors and fasteners that have no name: every bracket, angle and end written out, every fastener
/// and mount called what resolve() calls it. A study takes one of them away without touching its twin. Same margins as `c`.
/// What `c` has wrong stays wrong in it.
[[nodiscard]] model::Case written_out(const model::Case& c);

} // namespace thinskin::layout
