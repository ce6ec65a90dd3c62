#pragma once
#include "strength/clause.h"

/// Screens: a pass means "not ruled out", never "proved".
namespace thinskin::strength {

/// RL-1, in N: greatest one-sigma force amplitude of a thin-sheet joint, 0.10 of its static nominal Rn (judgement).
/// Rn is the nominal of the governing sheet clause, before its Omega; the value is the capacity (factor 1).
struct RepeatedLoad { double Rn_N; };
[[nodiscard]] base::Resistance repeated_load(const RepeatedLoad& in);
[[nodiscard]] const base::Card& repeated_load_card();
template <> const Clause<RepeatedLoad>& clause<RepeatedLoad>();

inline constexpr double rear_door = 0, side_door = 1;

/// Regulation loads of a hinge set divided by the number of hinges. One-time ULTIMATE loads, in a fixture.
/// normal: out of the door's plane; in_plane: across, in the door's plane; vertical: along the pins.
struct HingeFigures { double normal_N, in_plane_N, vertical_N; bool vertical_known; };
/// Rear door: normal 11 000/n, in plane 9 000/n, vertical 9 000/n.
/// Side door: normal 9 000/n, in plane 11 000/n, vertical unknown (the regulation has none).
[[nodiscard]] HingeFigures hinge_figures(double n_hinges, double door);

/// HI-1, "-": index U = |Fn|/Fn,Rk + |Ft|/Ft,Rk + |Fz|/Fz,Rk of one hinge; the VALUE IS THE INDEX, not a capacity (factor 1).
/// Fn out of the door's plane, Ft in the plane across the pins, Fz along the pins, on the one hinge, in N.
/// Side door with Fz not zero: not covered. Source: UN R11 (03 series) 6.1.5.1 and 6.1.5.3; the linear sum is judgement.
struct HingeIndex { double n_hinges, door, Fn_N, Ft_N, Fz_N; };
[[nodiscard]] base::Resistance hinge_index(const HingeIndex& in);
[[nodiscard]] const base::Card& hinge_index_card();
template <> const Clause<HingeIndex>& clause<HingeIndex>();

} // namespace thinskin::strength
