#pragma once
#include "layout/layout.h"
#include "results/results.h"

#include <optional>
#include <string>
#include <vector>

/// The door as a rigid body on its hinges, and on its latch or, open, its check strap.
/// y_j = |pin_x - x_j| distance from the hinge line, e_j = z_j - pin_z outboard of it, h spacing of the outermost hinges.
namespace thinskin::statics {

/// A mass on the door. Tolerance is already in it.
struct DoorMass {
    enum class Kind { door, item, bracket, reinforcement } kind = Kind::door;
    std::string name;
    double kg = 0;
    results::Vec3 at{};
};
/// Bare door, item, legs, arms, braces and angles, each at its own centre.
[[nodiscard]] std::vector<DoorMass> door_masses(const layout::Layout& l, double mass_tolerance);

/// Forces on the door in panel axes, N. Six equations, six unknowns; equilibrium holds to rounding.        [ST-1 .. ST-3]
struct HingeStatics {
    bool covered = false;
    std::string reason, lift_with;  ///< when not covered
    std::string load_case;
    results::Vec3 top_N{}, bottom_N{}; ///< outermost hinges; y holds the vertical equally shared over all hinges
    double T_N = 0;                 ///< in-plane couple of the vertical force, sum(-F_y y)/h
    double N_N = 0;                 ///< out-of-plane couple of the vertical force, sum(-F_y e)/h
    double V_N = 0;                 ///< whole vertical force of the hinges on the door, up positive
    double in_plane_N = 0, out_of_plane_N = 0; ///< worst hinge, all forces of the load case, several latches: each alone
    double latch_N = 0;             ///< outward on the door: positive = pressed on stop and seal, negative = the latch holds it
    std::string latch;              ///< "latch 1"; the one taken alone
    bool latch_needed = false;      ///< forces turn the door about its pin line
    bool open = false;              ///< the check strap (flung open: the end stop, where there is one) stands in the latch's place: latch_N is its force, worst figures hold for any direction of its line
    bool turns = false;             ///< the load case turns the door: slam, flung open
    bool event = false;             ///< slam, or a state of the open door: no road state
    bool pushed = false;            ///< a force acts beside the weight (LoadCase::on_item): the wind on an open door
    double torque_Nmm = 0;          ///< of what acts about the hinge line, + = opens the door
    double strap_at_top_N = 0, strap_at_bottom_N = 0; ///< what of the strap's force comes back at the hinges
};
/// A load case that turns (LoadCase::turns) has the field of a turning door: each mass by its distance, leaf and item about their own
/// centres, too. An open door is held by its check strap, square to the leaf at `lever`; what turns it is not covered without.
/// `rest_N`: upward force of a rest under the closed door, at its place and in the plane of the pin line.
[[nodiscard]] HingeStatics hinge_statics(const layout::Layout& l, const results::LoadCase& lc, double mass_tolerance, double rest_N = 0);

/// Whole over bare: moment sum(m y), hinge couple (T^2 + N^2)^0.5, inertia about the hinge line, slam force at equal edge
/// speed with linear stops (square root of the inertia ratio).                                                     [ST-10]
[[nodiscard]] results::DoorRatios door_ratios(const layout::Layout& l, double mass_tolerance);

/// Pro-rata regulation index of the worst hinge, F_Rk = F_system/n.                                                 [ST-9]
///   index = |F_n|/F_n,Rk + |F_t|/F_t,Rk + |F_y|/F_y,Rk
/// UN Regulation 11 (03 series) 6.1.5.1 and 6.1.5.3: longitudinal 11 000 N, transverse 9 000 N, vertical 9 000 N on back doors
/// only, one-time loads to separation. Rear door: longitudinal is out of plane; side door: in plane, and no vertical figure.
/// 49 CFR 571.206 (evidence: us_regulation), back door: along the hinge plates, whose direction is not asked, so 9 000 N both ways,
/// and no vertical figure for a side-hinged one: never covered.
struct HingeIndex {
    bool covered = false;           ///< false: no vertical figure (side door) or no hinge figures
    std::string reason;
    double without_vertical = 0, one_hinge = 0, shared = 0;
    double V_N = 0;                 ///< whole vertical force on the hinges
    double kind = 0;                ///< the least it can be: vertical shared where there is a figure for it; open: the higher load, the strap square to the leaf
};
[[nodiscard]] HingeIndex hinge_index(const layout::Layout& l, const HingeStatics& s);

/// Everything about the door for the result.
struct DoorFigures {
    std::vector<HingeStatics> statics;           ///< one per load case, then one per state of the open door
    std::vector<results::HingeForce> hinges;     ///< "top hinge", "bottom hinge", "vertical on one hinge", ...
    std::vector<results::SupportForce> latches, stops;
    results::DoorRatios ratios;
    std::optional<results::DoorSag> sag;         ///< absent: the give was not measured
    std::vector<results::Check> checks;          ///< group "door", ids "hinges/..." , "latch/...", "pillar/..."
    std::vector<std::string> not_covered;        ///< states that were not run, in words
};

/// The door under all its load cases, with the evidence rules for hinges. Empty for a wall.
///   none         the index is shown, not covered; fail only beyond the regulation's one-time load (index > 1 with V shared)
///   maker_limit  mass, mass y, mass e of everything added, at 1 g with tolerance, against the maker's: pass or fail. A limit on mass
///                knows no force: what slam and open door put on the hinges is printed beside it, a fail beyond the regulation's one-time load
///   proof_hang   parked when its V, T and N reach the parked ones; driving and open when they reach each demand of those
///   regulation   2 x index with V shared and 1.33 x index with V on one hinge, the worse; at most 1 is judgement, above 1 not shown
///   us_regulation  not covered: no vertical load was tried; a fail as under none
/// Rows the tool cannot judge (pillar, mounting sheet, door torsion, latch) carry their force, are not covered and not required.
/// `open`: the states of the open door (actions/open_door.h). Their forces on the body are given at each of its angles.
[[nodiscard]] DoorFigures door_figures(const layout::Layout& l, const std::vector<results::LoadCase>& cases, const results::OpenDoor& open, double mass_tolerance);
[[nodiscard]] DoorFigures door_figures(const layout::Layout& l, const std::vector<results::LoadCase>& cases, const results::OpenDoor& open); ///< the layout's tolerance
[[nodiscard]] DoorFigures door_figures(const layout::Layout& l, const std::vector<results::LoadCase>& cases, double mass_tolerance); ///< closed door only
[[nodiscard]] DoorFigures door_figures(const layout::Layout& l, const std::vector<results::LoadCase>& cases); ///< the layout's tolerance

} // namespace thinskin::statics
