#pragma once
#include "actions/clause.h"

/// Air, open door, second load path, axle: closed rules of the vehicle side.
namespace thinskin::actions {

/// Density of air at 15 degrees C and sea level, kg/m3.
inline constexpr double air_density = 1.225;

/// AC-16, N: force of the air, F = C A rho v^2/2. v: own speed and headwind added, or the wind. C as the place asks for:
///   box beside a wall in the stream 1.1 .. 1.3; flat thing square to the wind 1.2, both senses; base suction on what hangs in
///   the wake of a rear door 0.1 .. 0.3, outward. All from memory.
struct AirForce { double C, A_mm2, v_mm_s; };
[[nodiscard]] base::Resistance air_force(const AirForce& in);
template <> const Clause<AirForce>& clause<AirForce>();

/// AC-17, mm/s: speed of the wind at which the force F is reached, (2 F/(rho C A))^0.5.
struct WindLimit { double F_N, C, A_mm2; };
[[nodiscard]] base::Resistance wind_limit(const WindLimit& in);
template <> const Clause<WindLimit>& clause<WindLimit>();

/// AC-18, N: check strap of a door held open in the wind, C A (rho v^2/2) y/r. Gusts that throw the door into its stop: AC-1.
struct CheckStrap { double C, A_mm2, v_mm_s, y_mm, r_mm; };
[[nodiscard]] base::Resistance check_strap(const CheckStrap& in);
template <> const Clause<CheckStrap>& clause<CheckStrap>();

/// AC-19, N mm: what the weight of a mass does to a door on a slope, m g r sin(alpha) sin(psi), r = (y^2 + e^2)^0.5; size.
/// psi: from the downhill direction to the radius of the mass; the worst door angle has psi = 90 degrees.
struct SlopeTorque { double m_kg, y_mm, e_mm, alpha_rad, psi_rad; };
[[nodiscard]] base::Resistance slope_torque(const SlopeTorque& in);
template <> const Clause<SlopeTorque>& clause<SlopeTorque>();

/// AC-20, mm: drop of the free edge from the give of hinges and the sheet around them, 2 c y_edge m g y/h^2. c has to be measured:
/// hang a known mass on the edge and read the drop.
struct EdgeSag { double c_mm_N, m_kg, y_mm, y_edge_mm, h_mm; };
[[nodiscard]] base::Resistance edge_sag(const EdgeSag& in);
template <> const Clause<EdgeSag>& clause<EdgeSag>();

/// AC-21, N: a rest that a sagging door meets after a gap: max(0, (s - gap)/(c_d + c_s)); s free sag at the rest. Between no rest
/// and the rigid bound m g y/y_s. Gone as soon as the door opens.
struct ElasticRest { double s_mm, gap_mm, c_d_mm_N, c_s_mm_N; };
[[nodiscard]] base::Resistance elastic_rest(const ElasticRest& in);
template <> const Clause<ElasticRest>& clause<ElasticRest>();

/// AC-22, N: tether that catches a mass after its slack: energy m g (s + x) = k x^2/2, so F = m g (1 + (1 + 2 k s/(m g))^0.5).
/// s = 0 is a load put on suddenly: 2 m g. Falling free; what the vehicle does meanwhile comes on top.
struct TetherCatch { double m_kg, s_mm, k_N_mm; };
[[nodiscard]] base::Resistance tether_catch(const TetherCatch& in);
template <> const Clause<TetherCatch>& clause<TetherCatch>();

/// AC-23, kg: what a mass d behind the rear axle adds to that axle, m (1 + d/L); the front axle loses m d/L.
struct RearAxle { double m_kg, d_mm, L_mm; };
[[nodiscard]] base::Resistance rear_axle(const RearAxle& in);
template <> const Clause<RearAxle>& clause<RearAxle>();

} // namespace thinskin::actions
