#pragma once
#include "base/card.h"
#include "base/status.h"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

/// The values handed between the steps and to the writers. Units are in the names; axes are panel axes
/// (x right, y up, z out of the panel, seen from outside).
namespace thinskin::results {

using Vec3 = std::array<double, 3>;

/// One acceleration state: force on the masses per unit mass, in g, weight included (parked = -1 in y).
struct LoadCase {
    std::string name;        ///< "parked", "pothole", "combined +x +z", "slam outward"
    Vec3 acceleration_g{};
    std::string source;      ///< where the figure comes from
    std::string derivation;  ///< how it was worked out, one sentence; may be empty
    std::string theory;      ///< "linear"
    bool applied_only = false; ///< the load case of a bare panel: panel forces and pressures, no accelerations
    bool door_closed = true;
    bool driven = false;       ///< a state of the drive with a force on the item: its air
    /// A force on the item beside its weight (item.loads, item.person, item.air_speed).
    struct ItemForce { Vec3 force_N{}, at_mm{}; };
    std::optional<ItemForce> on_item = std::nullopt;
    /// A turning door: acceleration spin (z - pin_z, 0, -(x - pin_x)) at every place instead of one vector; the y component of
    /// acceleration_g stays, its x and z are those at the item.
    bool turns = false;
    double spin_rad_s2 = 0, pin_x_mm = 0, pin_z_mm = 0;
};

/// A state of the open door, the vehicle standing. Says what acts, in the door's own axes; statics finds how the door takes it.
struct DoorState {
    std::string name, source, derivation;
    int sense = 0;                         ///< which way it turns the door: +1 farther open, -1 shut, 0 not at all (level, no wind)
    double slope_rad = 0;                  ///< the ground leans by that much, in the direction that turns the door most in `sense`
    double air_N = 0;                      ///< push of the wind square to the leaf, size
    std::array<double, 2> air_at_mm{};
};
struct OpenDoor {
    /// What was not run: why, and the key that would run it.
    struct NotRun { std::string what, reason, lift_with; };
    std::vector<double> angles_rad;        ///< ascending; every state holds at each of them
    std::vector<DoorState> states;
    std::vector<NotRun> not_run;
};

/// The force of one ply on a fastener, in the plane of the panel.
struct PlyForce { std::string part; double x_N = 0, y_N = 0, bearing_N = 0; };

/// One fastener in one load case. Tension positive = pulls the bracket off the skin.
struct FastenerForce {
    std::string name, part, load_case;     ///< part: the bracket it belongs to
    double tension_N = 0;                  ///< what the bolt carries, prying included
    double shear_x_N = 0, shear_y_N = 0;   ///< of the bracket on the stack, elastic share
    double prying_N = 0;                   ///< tension above the bracket's own pull at this bolt
    double row_shear_N = 0;                ///< all of the bracket's shear on this row
    double hand_tension_N = 0, hand_shear_N = 0;
    std::string shear_rule;                ///< "elastic share", "one row carries all"
    std::string difference;                ///< decomposition in newtons where hand and solver differ by more than 1.5
    double skin_share_N = 0;               ///< part of the pull that goes into skin bending
    double spread_tension_N = 0;           ///< largest tension over the skin-stiffness runs (times 0, 1, 3)
    double rim_pull_N = 0;                 ///< what a backing plate hands to the skin round this fastener, largest over the skin-stiffness runs
    double own_pull_N = 0;                 ///< the bracket's pull on what is behind this fastener: tension less the contact beside it
    bool rare = false;                     ///< in a load case of its own (item.loads): not a road state, not counted as repeated
    bool stands = true;                    ///< false: needs the large-deflection solution, see why_not
    std::string why_not;
    std::vector<PlyForce> plies;
};

struct MemberForce {
    std::string name, load_case;
    double at_mm = 0;                      ///< along the member
    double axial_N = 0, shear_N = 0;
    double moment_y_Nm = 0, moment_z_Nm = 0; ///< about the member's local axes: y in the panel plane across the member, z along panel z
    double torsion_Nm = 0;
    double stress_MPa = 0;                 ///< largest normal stress, unsymmetric bending
    double spread_moment_Nm = 0;           ///< largest resultant moment over the skin-stiffness runs
    bool stands = true;
    std::string why_not;
};

struct EndForce {
    std::string name, end, load_case;      ///< end: left, right, bottom, top
    Vec3 force_N{};                        ///< of the member on the frame
    Vec3 moment_Nm{};
    double hand_N = 0;                     ///< statics of a simple beam on its two ends, out of plane
    std::string difference;
    double spread_N = 0;                   ///< largest out-of-plane force over the skin-stiffness runs
    std::vector<FastenerForce> fasteners;
    bool stands = true;
    std::string why_not;
};

struct MountForce { std::string name, load_case; Vec3 force_N{}; Vec3 moment_Nm{}; bool stands = true; std::string why_not; };                  ///< of the item on the arm
struct JointForce { std::string name, part, load_case; Vec3 force_N{}; Vec3 moment_Nm{}; bool stands = true; std::string why_not; };          ///< arm-leg, brace-leg, brace-arm
struct Contact { std::string part, load_case; double resultant_N = 0; std::array<double, 2> at_mm{}; };
/// Skin beside the rim of a backing plate: stress across the rim on its worse face, and its largest change from the parked state.
struct RimStress { std::string plate, load_case; double stress_MPa = 0, swing_MPa = 0; std::array<double, 2> at_mm{}; bool rare = false, stands = true; std::string why_not; };
/// Largest von Mises stress of the skin between one and two grid spacings from a corner of an opening; NaN: none could be read.
struct CornerStress { std::string opening, load_case; double stress_MPa = 0; std::array<double, 2> at_mm{}; bool stands = true; std::string why_not; };
struct PathStep { std::string from, to; double force_N = 0; };
struct GaugeMove { std::string name, load_case; Vec3 displacement_mm{}; std::string relative_to; };
/// Force on the door at a hinge, a latch, a stop, a rest or a check strap, in the door's own axes (panel axes that turn with it).
/// on_body_N is the force on the body there, in vehicle axes (forward, left, up), the door opened by open_deg; words say it.
struct HingeForce { std::string name, state, load_case; Vec3 force_N{}; double open_deg = 0; Vec3 on_body_N{}; std::string words = {}; };
struct SupportForce { std::string name, state, load_case; Vec3 force_N{}; double open_deg = 0; Vec3 on_body_N{}; std::string words = {}; };

/// The skin in one load case.
struct SkinState {
    std::string load_case;
    double max_deflection_mm = 0;
    double max_von_mises_MPa = 0;          ///< both faces, outside washer footprints
    std::array<double, 2> stress_at_mm{};  ///< where it is
    double stress_at_most_MPa = 0;         ///< with what the panel's grid may hide beside footprints (ID-16); settled: the same as max_von_mises_MPa
    bool stress_settled = false;           ///< on a fine grid beside the footprints; else as the panel's grid shows it
    double max_slope_stress_MPa = 0;       ///< 0.5 E |grad w|^2, criterion (i)
    double buckling_factor = 0;            ///< criterion (iii); 0 = not run, infinity = no in-plane compression
    double hem_shear_flow_N_mm = 0;        ///< largest along the edges
    std::string hem_where;
    bool stands = false;                   ///< the figures of this load case stand
    std::string why_not;
    std::string theory = "linear";         ///< or "large deflection"
    double linear_deflection_mm = 0;       ///< of the linear theory, beside that of the theory used
    int newton_steps = 0;
};

/// The movement of the skin's middle plane out of the panel in one load case, on a grid of points; + = outward.
struct SkinField {
    std::string load_case;
    std::vector<double> x_mm, y_mm;        ///< ascending
    std::vector<double> w_mm;              ///< row after row along x: w_mm[iy * x_mm.size() + ix]; NaN inside an opening
};

/// One row of the margin table.
struct Check {
    std::string id;        ///< unique within the case: "bearing/L1/skin"
    std::string formula;   ///< card id; empty = comparison without a clause
    std::string title;     ///< "bearing of the skin at L1"
    std::string group;     ///< fixing, reinforcement, bracket, panel, door
    std::string part, load_case;
    double demand = 0, capacity = 0;
    std::string unit;
    base::Status status = base::Status::not_covered;
    std::string rule, source, edition, label, range;
    std::map<std::string, double> inputs;
    std::string note;      ///< for not covered: the reason, then the one input that would lift it
    std::string lift_with; ///< "door.hinges.evidence"
    bool required = true;
    std::string help;      ///< what would help, or what would lift it; empty: nothing to say. Not in the result file
    /// Where the case says what `help` speaks about, in its order: "reinforcement.angles[lower rail].section", names in brackets; a list
    /// by itself ("reinforcement.angles") asks for one more of it. Keys that the case has not given yet are among them. Not in the result file.
    std::vector<std::string> help_at = {};
    /// Not covered only because linear theory does not stand: what it gives all the same, for a picture that follows a drag and says
    /// so. Never a margin, never written to a result file.
    struct Linear {
        std::string load_case, unit;
        double demand = 0, capacity = 0;
        [[nodiscard]] double utilisation() const { return demand / capacity; }
        [[nodiscard]] double margin() const { return capacity / demand - 1.0; }
    };
    std::optional<Linear> by_linear = std::nullopt;

    [[nodiscard]] bool has_numbers() const { return status != base::Status::not_covered; }
    [[nodiscard]] double utilisation() const { return demand / capacity; }
    [[nodiscard]] double margin() const { return capacity / demand - 1.0; } ///< infinity when demand is 0
};

struct Group {
    std::string name;
    bool required = true;
    base::Verdict status = base::Verdict::not_covered;
    std::optional<double> least_margin;
    std::string part, check;
    std::string lift_with;
    int judgements = 0, not_covered = 0, failed = 0, passed = 0;
};

struct Assumption {
    std::string what, value, from;
    std::string effect_on_governing_margin = "not run";
};

struct BodyBalance { std::string body, load_case; double force_error = 0, moment_error = 0; }; ///< relative

struct Balance {
    double worst_relative_error = 0;
    std::vector<BodyBalance> bodies;       ///< worst load case per body, and "whole"
};

struct Weight { double item_kg = 0, brackets_kg = 0, reinforcement_kg = 0, door_kg = 0, total_kg = 0; };

/// Sag of the free edge from the measured give of the hinges: with everything on the door, and of the bare leaf (ST-14, AC-20).
struct DoorSag { double give_mm_N = 0, edge_mm = 0, bare_mm = 0; };
struct DoorRatios { double moment = 0, hinge_couple = 0, inertia = 0, slam_force = 0; bool known = false; };

/// Relative errors of the figures by the grid, from a second grid; absent: no such figure on one of the two.
struct GridError { double other_spacing_mm = 0; std::optional<double> deflection, peak_stress, governing_demand; };
struct Grid { int nodes = 0, unknowns = 0, joints = 0; double spacing_mm = 0; std::string error_estimate = "not run"; GridError error{}; };

struct StackLine { std::string fastener, line; };  ///< "head | leg 4.0 | skin 0.76 | angle 4.0 | nut"

struct Timing { double layout_ms = 0, bodies_ms = 0, condense_ms = 0, load_cases_ms = 0, large_ms = 0, vibration_ms = 0, checks_ms = 0, solver_ms = 0; }; ///< solver: all of it; large: of that the large-deflection solution

/// Up to which wind one of item.loads holds, from the speed its force was worked out for.
struct WindLimit {
    std::string load_case;
    double given_mm_s = 0;
    std::optional<double> limit_mm_s;      ///< none: see why_not
    std::string check, part;               ///< used up there
    bool estimate = false;                 ///< large deflection: not on the safe side by itself
    std::string why_not;
};

/// What the job adds to the vehicle, standing level: item with its tolerance, brackets, reinforcement.
struct Added {
    double kg = 0;
    std::optional<double> rear_axle_kg, front_axle_kg; ///< AC-23 with road.wheelbase and road.overhang; the front axle is relieved: negative
    std::string why_no_axle;
};

/// What one mount on this road answers: rms and upward crossings a second (Rice).
struct Answer { double f_Hz = 0, rms_g = 0, rate_Hz = 0; };

/// What shakes the job again and again. Only the way by random vibration knows it.
struct Shaking {
    std::string why_not = "no road was run", lift_with = "road"; ///< empty: the figures below hold
    std::vector<Answer> answers;           ///< of all frequencies the mount may have, overhang included
    double speed_mm_s = 0, distance_per_year_mm = 0, wanted_mm = 0;
    std::string wanted_words;              ///< where wanted_mm comes from
    std::vector<double> running_Hz;        ///< of the item itself; empty with `running_missing`: the key of a figure that is not given
    double running_g = 0, running_s_a_year = 0;
    std::string running_missing;
};

/// One detail under repeated stress.
struct Life {
    std::string kind, detail, part;        ///< "bolt threads", "L1", "left"
    double category = 0;                   ///< MPa range at 2 million cycles
    std::string category_label;
    double per_g_MPa = 0, sigma_MPa = 0;   ///< nominal stress per g of vertical acceleration; its rms in the answer that decides
    double at_Hz = 0;                      ///< of that answer
    double damage = 0, damage_running = 0; ///< Miner's sum over the wanted distance; the item's own running in it
    double three_band = 0;                 ///< the road's part by three bands, for comparison
    std::optional<double> km, years;       ///< to the limit of the sum; none: no damage worth a figure
    std::string why_not, lift_with;        ///< not covered
};

/// Of two details the one that speaks for both: one that fails, else one that is not covered, else the larger damage.
[[nodiscard]] inline bool worse(const Life& a, const Life& b, double limit)
{
    const auto rank = [limit](const Life& l) { return !l.why_not.empty() ? 1 : l.damage <= limit ? 0 : 2; };
    return rank(a) != rank(b) ? rank(a) > rank(b) : a.damage > b.damage;
}

struct Fatigue {
    bool asked = false, run = false;       ///< asked: something hangs; run: the road has a spectrum
    std::string why_not, lift_with;
    double limit = 0, gamma = 0;           ///< of Miner's sum; factor on the stress
    std::string scope;
    std::vector<Life> lives;
};

/// The item falling into its tether (AC-22), straight down, caught at its design mass.
struct Tether {
    bool given = false;
    std::string why_not, lift_with;        ///< set: there is no force
    double mass_kg = 0, down_g = 0;        ///< design mass; the road's factor down that weighs it while it falls
    double fall_mm = 0, stiffness_N_mm = 0; ///< fall: slack, and what of the stretch is taken as given without a force
    double soft_mm = 0;                    ///< that part of the stretch
    double standing_N = 0, shaken_N = 0;   ///< largest pull: vehicle standing, vehicle in the worst road state down
    double stretch_mm = 0;                 ///< of the tether under shaken_N
};

/// One natural frequency of the whole (ID-13).
struct NaturalMode {
    double frequency_Hz = 0;
    std::string what;                      ///< what moves: "condenser unit swings in and out"
    std::string flexes;                    ///< where it gives: "upper rail 39 %, bracket left 22 %"; shares of the strain energy
    double hung_share = 0;                 ///< part of the moving energy in the item and its brackets, 0 to 1
};

/// Small vibrations about the state in which the job hangs. Not run at Depth::margins.
struct Vibration {
    bool run = false;
    std::string why_not;                   ///< reason when it was asked for and has no result
    std::vector<NaturalMode> modes;        ///< ascending, edges of the skin on a rigid frame
    std::vector<NaturalMode> with_frame;   ///< lowest of a door on hinges and latches with the frame as given; empty: not in the model
    std::string frame_missing;             ///< key of a door's frame that would put it into the model; empty: none, or no door
    std::string bound;                     ///< what the figures are good for, in words
    /// Lowest of the hung parts with every contact and strap closed, and with all of them open (bolts stay tight): the two ends between which a shaken job
    /// chatters. Absent: not asked for (pipeline::add_contact_bounds), or no hung part moves in the lowest modes.
    std::optional<double> all_closed_Hz, all_open_Hz;
    bool large_deflection = false;         ///< the hanging state needs large deflection: under load the skin is stiffer than in these figures
    bool large_in_others = false;          ///< other load cases do
};

/// Modes of the hung parts: those that hold at least this share of the moving energy (judgement).
inline constexpr double least_hung_share = 0.10;
[[nodiscard]] inline bool is_hung(const NaturalMode& m) { return m.hung_share >= least_hung_share; }

/// The job with one thing lost (studies/single_loss.h).
struct Loss {
    std::string what, kind;                ///< "fastener L2 of left"; kind: fastener, mount, strap, skin
    base::Verdict verdict = base::Verdict::not_solved;
    std::optional<double> least_margin;    ///< none: nothing is left to check, or not solved
    std::string check, part, load_case;    ///< of the least margin
    /// The least margin among the checks that the loss makes worse by more than 0.01, which need not be the governing one.
    struct Hit { std::string check, part, load_case; std::optional<double> before; double after = 0; }; ///< before: none for a check that is new
    std::optional<Hit> hit;
    std::string note;                      ///< why there is no figure, or what is not covered
};

struct SingleLoss {
    std::string headline;                  ///< what the loss that matters most does, one sentence
    base::Verdict verdict = base::Verdict::not_solved; ///< the worst of the case as it is and of every loss
    double rust_mm = 0;
    std::vector<Loss> losses;
    std::size_t worst = 0;                 ///< index of the loss that matters most
};

/// Everything that `check` prints and `--json` writes.
/// Something the case says that a pass hangs on (checks/rests.h). least: title of the row with the least margin there; empty: no figure.
struct RestsOn { std::string what, key, least; std::optional<double> margin; base::Verdict verdict = base::Verdict::not_solved; };

struct Outcome {
    std::string case_file, sha256, title, rules;
    base::Verdict verdict = base::Verdict::not_solved;
    std::optional<Check> governing;
    std::string headline;                  ///< first line, in words a fitter understands
    std::string aside;                     ///< last sentence of a pass's headline, where something that is not counted is not met; else empty
    std::string advice;                    ///< second line: what would help
    std::vector<std::string> advice_at;    ///< as Check::help_at, of the advice; not in the result file
    std::vector<RestsOn> rests_on;
    std::vector<Group> groups;
    std::vector<LoadCase> load_cases;
    double dynamic_factor = 0;
    std::string dynamic_basis, dynamic_derivation;
    std::vector<Check> checks;             ///< sorted: least margin first, then judgement, then not covered
    std::vector<FastenerForce> fasteners;
    std::vector<MemberForce> members;
    std::vector<EndForce> member_ends;
    std::vector<MountForce> mounts;
    std::vector<JointForce> joints;
    std::vector<Contact> contacts;
    std::vector<RimStress> plate_rims;
    std::vector<CornerStress> opening_corners;
    std::vector<PathStep> load_path;
    std::string load_path_case;
    std::vector<GaugeMove> gauges;
    std::vector<HingeForce> hinges;
    std::vector<SupportForce> latches, stops;
    DoorRatios door_ratios;
    OpenDoor open_door;
    std::optional<DoorSag> door_sag;       ///< absent: hinges' give was not measured
    std::vector<SkinState> skin;
    std::vector<SkinField> skin_fields;    ///< for drawings; never in the JSON; absent for a load case that was not solved
    std::string skin_theory;
    Weight weight;
    Vibration vibration;
    Tether tether;
    Added added;
    Shaking shaking;
    Fatigue fatigue;
    std::vector<WindLimit> wind_limits;
    Balance balance;
    Grid grid;
    std::vector<StackLine> stacks;
    std::vector<Assumption> assumptions;
    std::vector<std::string> cautions, not_covered, exclusions, not_solved;
    std::optional<SingleLoss> single_loss; ///< absent: not run
    Timing timing;                         ///< printed by --detail only, never in the JSON (same bytes every run)
};

} // namespace thinskin::results
