#pragma once
#include "fem/frame.h"
#include "fem/joints.h"
#include "fem/large.h"
#include "fem/modes.h"
#include "fem/skin.h"
#include "layout/layout.h"
#include "results/results.h"

#include <map>
#include <memory>

/// From the layout to bodies and joints. The engineering judgement of the model lives in this folder:
///   ID-1 the skin is held along its edges by a rigid frame; its own mass is left out (the door carried it before)
///   ID-2 leg, arm, brace and angles are beams through their shear centres with rigid cross sections; the lying leg's
///        bending between heel and bolt is a compliance in the bolt's axial joint
///   ID-3 a bolt pulls leg and last ply together; what lies between is in contact only; the skin under it moves with
///        the angle (or hangs on the bolt's washer when nothing is behind)
///   ID-4 shear goes from the leg to each ply through the holes' bearing compliance and, unless fitted, their play
///   ID-5 leg and angle touch at the corners of their overlap, the skin between being a shim; elsewhere the leg
///        touches the skin along its heel and toe lines
///   ID-6 an angle's end held by the frame: three translations at the centroid of its fasteners, along the member only
///        once the holes' play is used up (an eccentric angle would else press its ends apart like an arch); heel and
///        toe of the lying leg bear on the frame, compression only
///        a foot of the item touches at its corners, and at the corners of its overlap with an angle
///   ID-7 the item is rigid on its mounts; a brace is pinned at both ends
///   ID-8 a frame member that tied ends pull on runs over corners, hinges and latches of its side; what pushes inward
///        is taken by the seal and the body behind it
///   ID-14 a backing plate is a loose plate of its own: its bolts clamp the skin to it, elsewhere it only pushes
///   ID-10 an item on feet: rigid, its feet touch the panel at their corners; ID-11 a strap pulls only, once its slack is used up
namespace thinskin::idealise {

/// What tests perturb; the defaults are what the tool uses.
struct Options {
    double grid_spacing = 30;            ///< mm
    double contact_compliance = 1e-6;    ///< mm/N
    double leg_station_spacing = 60;     ///< mm between contact points along a leg
    double angle_station_spacing = 90;   ///< mm between contact points along an angle
    bool door_frame = false;             ///< the skin's edges on the door's own frame members instead of a rigid frame (ID-13); for vibration
    double local_grid = 2.5;             ///< mm, beside footprints (ID-16): a quarter of the smallest of them
    double plate_contact_spacing = 30;   ///< mm between contact points of a plate, its rim included
};

struct BracketBody {
    int body = -1;
    fem::Frame frame;
    std::vector<double> leg_y;           ///< stations; node i is at leg_y[i]
    std::vector<double> arm_z;           ///< stations beyond the leg
    int arm_root = 0;                    ///< node of the leg where the arm starts
    int first_arm_node = 0;              ///< node of arm_z[0]
    int leg_members = 0, arm_members = 0;///< members are leg, then arm, then brace
    [[nodiscard]] int leg_node(double y) const;
    [[nodiscard]] int arm_node(double z) const;
};

struct AngleBody {
    int body = -1;
    fem::Frame frame;
    std::vector<double> stations;        ///< along the bar; node i
    [[nodiscard]] int node(double s) const;
};

struct PlateBody { int body = -1; fem::Plate plate; };

/// Indices into the joint list; -1 = there is none. The part behind the skin is an angle or a plate; leg_behind: to that part. bracket = -1: the outer part is the item, `fastener` one of its feet.
struct BoltJoints {
    int bracket = 0, fastener = 0, angle = -1, plate = -1;
    int axial = -1, skin_tie = -1;
    int leg_skin_x = -1, leg_skin_y = -1, leg_behind_x = -1, leg_behind_y = -1;
};
struct ContactJoint {
    enum class Kind { leg_angle, leg_skin, angle_skin, leg_plate, plate_skin, plate_frame } kind = Kind::leg_skin;
    int bracket = -1, angle = -1, joint = -1;
    layout::Point at;
    int foot = -1;                       ///< a foot of the item instead of a bracket's leg
    int plate = -1;
    std::string side;                    ///< plate_frame: of the frame
};
/// Along the member the end's holes leave play: a pull and a push joint, each with its gap (fitted: no gap).
/// The lying leg bears on the frame at its heel and toe, which is where prying at the end comes from.
struct EndJoints { int angle = 0, end = 0, along_pull = -1, along_push = -1, across = -1, z = -1, heel = -1, toe = -1, torsion = -1, rotation = -1; };
struct MountJoints { int bracket = 0, mount = 0, x = -1, y = -1, z = -1; };

/// A plate's own fastener, to the skin or to the frame.
struct PlateJoints { int plate = 0, fastener = 0, x = -1, y = -1, z = -1; };

struct StrapJoint { int strap = 0, joint = -1; };

/// Loads of one word in `when:`; the first three unit loads are 1 g along x, y and z.
struct WhenLoad { std::string when; };

struct Structure {
    const layout::Layout* layout = nullptr;
    Options options;
    std::shared_ptr<const fem::Skin> skin;
    int skin_body = 0;
    std::vector<BracketBody> brackets;
    std::vector<AngleBody> angles;
    std::vector<PlateBody> plates;
    std::optional<fem::Body> item;
    int item_body = -1;
    fem::Assembly assembly;
    std::vector<BoltJoints> bolts;
    std::vector<ContactJoint> contacts;
    std::vector<EndJoints> ends;
    std::vector<MountJoints> mounts;
    std::vector<StrapJoint> straps;
    std::vector<PlateJoints> plate_fasteners;
    std::vector<fem::UnitLoad> loads;
    std::vector<WhenLoad> when;          ///< unit load 3 + i
    int item_force = -1;                 ///< first of six unit loads on the item: 1 N along, 1 N mm about x, y, z through the origin
    int spin = -1;                       ///< unit load of a door turning about its pin line with 1 rad/s2
    double mid_z = 0;                    ///< where shear and contact act: the skin's mid-plane
};

/// Spacing of the skin's grid, mm (`analysis.grid`).
[[nodiscard]] double grid_spacing(model::GridSize size);

/// Keeps the skin's factor between calls.
struct SkinCache {
    std::string key;
    std::shared_ptr<const fem::Skin> skin;
    std::shared_ptr<const fem::BucklingModel> buckling;
    std::shared_ptr<const fem::LargeModel> large;        ///< made when first asked for
    fem::LocalGrids local;
    fem::ModesCache modes;
};

/// Builds bodies, joints and unit loads. The structure points into itself: not copied, kept behind a unique_ptr.
[[nodiscard]] std::unique_ptr<Structure> build(const layout::Layout& l, const Options& options, SkinCache& cache);

// Parts of build(), one file each.
void build_skin(Structure& s, SkinCache& cache);
/// The skin's edges on the door's frame members, which hang on hinges and latches (ID-13).
void put_on_door_frame(const layout::Layout& l, fem::SkinModel& m);
/// Mass per length of each frame member, t/mm: its section and its share of what the bare door weighs beside frame and skin.
[[nodiscard]] std::vector<double> door_frame_masses(const layout::Layout& l);
/// The key that would make the door's frame known on all sides; empty: it is, or there is no door.
[[nodiscard]] std::string missing_frame(const layout::Layout& l);
void build_brackets(Structure& s);
void build_angles(Structure& s);
void build_plates(Structure& s);
void build_joints(Structure& s);
void build_straps(Structure& s);
void build_plate_joints(Structure& s);
void build_loads(Structure& s);

/// Contact points between a leg and what is behind it (ID-5, ID-14). angle and plate = -1: the skin alone.
struct ContactPoint { layout::Point at; int angle = -1, plate = -1; };
[[nodiscard]] std::vector<ContactPoint> leg_contacts(const layout::Layout& l, const layout::Bracket& b, double spacing);
/// The same for a foot of the item.
[[nodiscard]] std::vector<ContactPoint> foot_contacts(const layout::Layout& l, const layout::Foot& f);
/// Contact points of an angle with the skin away from bolts.
[[nodiscard]] std::vector<layout::Point> angle_contacts(const layout::Layout& l, const layout::Angle& a, double spacing);

/// Contact points of a plate: a lattice over it with its rim; left out under the washers of its fasteners and off the panel.
[[nodiscard]] std::vector<layout::Point> plate_contacts(const layout::Layout& l, const layout::Plate& p, double spacing);

/// Stiffnesses and ports that joints share; direction 0, 1, 2 = x, y, z.
inline constexpr double tie_compliance = 1e-6; ///< mm/N: far stiffer than any part, keeps the dense system regular
[[nodiscard]] double half_side(double diameter);                                  ///< of the square with the area of a disc
[[nodiscard]] double bearing_compliance(const layout::Ply& a, const layout::Ply& b);
[[nodiscard]] double slip_compliance(const layout::Hardware& h);
[[nodiscard]] double outer_diameter(const layout::Stack& f, bool nut);             ///< what bears at the nut or at the head
[[nodiscard]] fem::PortRef skin_port(const Structure& s, layout::Point p, double half, int direction);
/// What the end of an angle or a plate is fixed to: the ground, or the frame member of its side where that is in the model.
[[nodiscard]] fem::PortRef frame_port(const Structure& s, const std::string& side, layout::Point p, const fem::Vec3& direction);
[[nodiscard]] fem::PortRef plate_port(const Structure& s, int plate, layout::Point p, double half, int direction);

/// Section of a bar whose lying leg points along `lying` and standing leg along `standing`, member axis along `axis`.
[[nodiscard]] fem::BeamSection beam_section(const catalogue::Section& s, const catalogue::Material& m, const fem::Vec3& lying, const fem::Vec3& standing, const fem::Vec3& axis);

/// Fastener, outer part (bracket or item) and its ply's name of a bolt.
[[nodiscard]] const layout::Stack& stack_of(const Structure& s, const BoltJoints& j);
[[nodiscard]] const std::string& outer_part(const Structure& s, const BoltJoints& j);
/// Angle or plate that the bolt pulls on; empty: the skin alone.
[[nodiscard]] const std::string& part_behind(const Structure& s, const BoltJoints& j);
[[nodiscard]] const layout::Ply& outer_ply(const layout::Stack& f);

/// The load factors of a load case on the unit loads.
[[nodiscard]] fem::Vector load_factors(const Structure& s, const results::LoadCase& lc);

} // namespace thinskin::idealise
