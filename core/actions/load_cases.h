#pragma once
#include "actions/axes.h"

#include <optional>
#include <string>
#include <vector>

namespace thinskin::actions {

/// A load case that was not run: why, and the one key that would lift it. Never a pass.
struct NotRun { std::string load_case, reason, lift_with; };

struct LoadCases {
    std::vector<results::LoadCase> cases;
    std::vector<NotRun> not_run;
    std::vector<results::Assumption> assumptions; ///< of the way to the dynamic factor
    std::vector<std::string> cautions;
    results::Shaking shaking;                     ///< what repeats, for the life of the job
};

/// Names other folders look for; the rest are for reading.
inline constexpr const char* name_parked = "parked";
inline constexpr const char* name_pothole = "pothole";
inline constexpr const char* name_slam_inward = "slam inward";
inline constexpr const char* name_slam_outward = "slam outward";
inline constexpr const char* name_slam_open = "slam open";
inline constexpr const char* name_person = "person";
inline constexpr const char* name_air = "air at speed";
inline constexpr const char* name_applied = "applied";

/// Load cases of the case's road, by its basis (actions/road_factors.h), in g on the masses, in panel axes, weight included:
///   parked 1 down; pothole `down`; rebound `up` upward (net); braking `fore_aft` forward, accelerating `fore_aft` rearward,
///   cornering left (masses pushed to the vehicle's right) and right, each with 1 down;
///   combined: `down` with half of `lateral` and half of `fore_aft`, all signs                                [AC-2]
///   slam inward and outward of a hinged door, at the item's x, with 1 down; an item that hangs e off the pin line swings
///   across the panel, too: a_x = a_z e/y; outward is the rebound into the latch, 0.3 of the inward one      [AC-1]
///   slam open, where door.open gives an edge speed and a stop: flung open into its stop, masses carry on outward       [AC-1]
///   each of item.loads, the person of item.person and the air of item.air_speed (actions/item_states.h)
/// A bare panel (no item, no brackets, no road) has the one case `applied`. The factors are total and already dynamic: nothing
/// multiplies them. `solver_Hz`: lowest natural frequency of the hung item by the solver, for the two bases that need one; a measured
/// one in the case goes before it. Not run, with a reason: a basis without its figures, a road or surface that is not there, a door
/// without slam data or without hinges, a figure that is not a number.
/// Source: the catalogue's road row (common practice, no source); each case carries its source and one sentence of derivation.
[[nodiscard]] LoadCases load_cases(const layout::Layout& l, std::optional<double> solver_Hz = std::nullopt);

/// The road's basis needs a natural frequency and nobody measured one: the solver's lowest is wanted for `solver_Hz`.
[[nodiscard]] bool wants_solver_frequency(const layout::Layout& l);

/// What the record prints about the dynamic factor: one way, never multiplied by another.
struct DynamicFactor { double value = 0; std::string basis, derivation; };
[[nodiscard]] DynamicFactor dynamic_factor(const layout::Layout& l, std::optional<double> solver_Hz = std::nullopt);

} // namespace thinskin::actions
