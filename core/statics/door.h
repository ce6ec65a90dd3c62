#pragma once
#include "layout/layout.h"
#include "results/results.h"

#include <optional>
#include <string>
#include <vector>

/// The door as a rigid body on its hinges and latch, closed.
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
    std::string reason;             ///< when not covered
    std::string load_case;
    results::Vec3 top_N{}, bottom_N{}; ///< outermost hinges; y holds the vertical equally shared over all hinges
    double T_N = 0;                 ///< in-plane couple of the vertical force, sum(-F_y y)/h
    double N_N = 0;                 ///< out-of-plane couple of the vertical force, sum(-F_y e)/h
    double V_N = 0;                 ///< whole vertical force of the hinges on the door, up positive
    double in_plane_N = 0, out_of_plane_N = 0; ///< worst hinge, all forces of the load case, several latches: each alone
    double latch_N = 0;             ///< outward on the door: positive = pressed on stop and seal, negative = the latch holds it
    std::string latch;              ///< "latch 1"; the one taken alone
    bool latch_needed = false;      ///< forces turn the door about its pin line
};
/// Load cases whose name begins with "slam" use the field of a turning door (each mass by its distance, the leaf's own
/// inertia too) scaled so that the load case's z acceleration holds at the item. An open door (slam outward) is not covered.
[[nodiscard]] HingeStatics hinge_statics(const layout::Layout& l, const results::LoadCase& lc, double mass_tolerance);

/// Whole over bare: moment sum(m y), hinge couple (T^2 + N^2)^0.5, inertia about the hinge line, slam force at equal edge
/// speed with linear stops (square root of the inertia ratio).                                                     [ST-10]
[[nodiscard]] results::DoorRatios door_ratios(const layout::Layout& l, double mass_tolerance);

/// Pro-rata regulation index of the worst hinge, F_Rk = F_system/n.                                                 [ST-9]
///   index = |F_n|/F_n,Rk + |F_t|/F_t,Rk + |F_y|/F_y,Rk
/// UN Regulation 11 (03 series) 6.1.5.1 and 6.1.5.3: longitudinal 11 000 N, transverse 9 000 N, vertical 9 000 N on back doors
/// only, one-time loads to separation. Rear door: longitudinal is out of plane; side door: in plane, and no vertical figure.
struct HingeIndex {
    bool covered = false;           ///< false: no vertical figure (side door) or no hinge figures
    std::string reason;
    double without_vertical = 0, one_hinge = 0, shared = 0;
};
[[nodiscard]] HingeIndex hinge_index(const layout::Layout& l, const HingeStatics& s);

/// Everything about the door for the result.
struct DoorFigures {
    std::vector<HingeStatics> statics;           ///< one per load case
    std::vector<results::HingeForce> hinges;     ///< "top hinge", "bottom hinge", "vertical on one hinge", ...
    std::vector<results::SupportForce> latches, stops;
    results::DoorRatios ratios;
    std::vector<results::Check> checks;          ///< group "door", ids "hinges/..." , "latch/...", "pillar/..."
    std::vector<std::string> not_covered;        ///< states that were not run, in words
};

/// The door under all its load cases, with the evidence rules for hinges. Empty for a wall.
///   none         the index is shown, not covered; fail only beyond the regulation's one-time load (index > 1 with V shared)
///   maker_limit  mass, mass y, mass e of everything added, at 1 g with tolerance, against the maker's: pass or fail
///   proof_hang   parked when its V, T and N reach the parked ones; driving when they reach each driving demand
///   regulation   2 x index with V shared and 1.33 x index with V on one hinge, the worse; at most 1 is judgement, above 1 not shown
/// Rows the tool cannot judge (pillar, mounting sheet, door torsion, latch) carry their force, are not covered and not required.
[[nodiscard]] DoorFigures door_figures(const layout::Layout& l, const std::vector<results::LoadCase>& cases, double mass_tolerance);
[[nodiscard]] DoorFigures door_figures(const layout::Layout& l, const std::vector<results::LoadCase>& cases); ///< the layout's tolerance

} // namespace thinskin::statics
