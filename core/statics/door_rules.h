#pragma once
#include <array>

/// Closed rules of the open door, N, mm, kg, s, rad. Elementary statics and dynamics of a rigid leaf; a NaN in gives a NaN out.
namespace thinskin::statics {

/// N mm: what the weight of the whole door does about its hinge line on a slope, in the worst direction.               [ST-11]
///   M = g sin(alpha) ((sum m y)^2 + (sum m e)^2)^0.5
/// The radii of several masses do not point the same way, so that this is less than the sum of m g r sin(alpha) of each (AC-19).
struct LeaningDoor { double kg_y, kg_e, alpha; };
[[nodiscard]] double leaning_torque(const LeaningDoor& d);
/// Direction of that slope's pull in the door's own axes, y towards the free edge, e outward, for torque that opens: unit vector (y, e).
[[nodiscard]] std::array<double, 2> leaning_direction(const LeaningDoor& d);

/// A force F_t along the leaf away from the hinge line and F_n out of its face, the door opened by theta: its parts along the closed
/// door's leaf (first) and out of the closed door (second).                                                            [ST-12]
///   F_t cos(theta) - F_n sin(theta),  F_t sin(theta) + F_n cos(theta)
struct TurnedForce { double F_t, F_n, theta; };
[[nodiscard]] std::array<double, 2> turned_force(const TurnedForce& f);

/// N: force of the stop of a door flung open, at the distance r from the hinge line.                                  [ST-13]
///   S = pi I v_edge/(2 D y_edge r), half-sine of duration D without rebound
struct OpenStop { double I_kg_mm2, v_edge_mm_s, y_edge, D_s, r; };
[[nodiscard]] double open_stop(const OpenStop& s);

/// mm/N: give of one hinge with its sheet, sideways, from the drop s under a mass m hung at y, read at the same place. [ST-14]
///   c = s h^2/(2 m g y^2)
struct HingeGive { double s, h, m, y; };
[[nodiscard]] double hinge_give(const HingeGive& g);

/// N: what a rest under the closed door gets, from the give of the hinges and of the rest; T couple of everything (factor and weight in
/// it), T_b of the bare door as it hangs, under which the gap was measured.                                             [ST-15]
///   V = max(0, 2 c y_s (T - T_b)/h - gap)/(2 c y_s^2/h^2 + 1/k)
/// Two springs in line that meet after a gap (AC-21 with the sag of AC-20); never more than the rigid bound T h/y_s.
struct GivingRest { double c, y_s, h, T, T_b, gap, k; };
[[nodiscard]] double giving_rest(const GivingRest& r);

} // namespace thinskin::statics
