#pragma once
#include "actions/response.h"

/// From the roughness of a road to the acceleration of a vehicle's body and of a thing mounted on it.
namespace thinskin::actions {

/// One corner of a vehicle: body on spring and damper, wheel on the tyre's spring (tyre damping left out).
struct QuarterCar { double m_s_kg, m_u_kg, k_s_N_mm, k_t_N_mm, c_Ns_mm; };

/// Rear corner of a light van. Common practice, no source: inside the ranges m_s 300 .. 900, m_u 50 .. 110 kg, k_s 25 .. 90,
/// k_t 200 .. 350 N/mm, c 1.5 .. 5 N s/mm. The empty van shakes its body about 1.8 times as much: it governs the bracket.
inline constexpr QuarterCar rear_corner_laden{700, 75, 45, 260, 3.2}, rear_corner_unladen{350, 75, 45, 260, 3.2};

/// Road roughness by class, Gd(n0) at n0 = 0.1 cycles/m in 1e-6 m3, the class centre: A 16, B 64, C 256, D 1024, E 4096.
/// ISO 8608 as quoted by two public code texts: published (read), second-hand. 0 for another letter.
[[nodiscard]] double roughness_of_class(char letter);

/// A road (Gd in 1e-6 m3, waviness 2) at a speed.
struct Road { double Gd, v_mm_s; };

/// Density of the body's vertical acceleration in g2/Hz:                                                       [theory AC-15]
///   |s (c s + k_s) k_t / D(s)|^2 G_v/g^2,  s = j 2 pi f,  G_v of AC-12
///   D = (m_s s^2 + c s + k_s)(m_u s^2 + c s + k_s + k_t) - (c s + k_s)^2
[[nodiscard]] double body_density(const QuarterCar& car, const Road& road, double f_Hz);

/// A mount on that body over 0.5 .. 80 Hz; as random_response(), Miles left out. Refused outside of the band.
/// Body and door panels are taken as stiff: their own modes (20 .. 40 Hz) are not in it and add to it.
[[nodiscard]] RandomResponse mount_on_car(const QuarterCar& car, const Road& road, double f_n_Hz, double zeta);

/// AC-12, (m/s)2/Hz: density of the road's vertical speed under the wheel, white: (2 pi)^2 Gd n0^2 v.
struct RoadSpeed { double Gd, v_mm_s; };
[[nodiscard]] base::Resistance road_speed_density(const RoadSpeed& in);
template <> const Clause<RoadSpeed>& clause<RoadSpeed>();

/// AC-13, g: rms of the body's acceleration over all frequencies, closed: (G_v/4 (k_t c + (m_s + m_u) k_s^2/c))^0.5/(m_s g).
struct BodyRms { double Gd, v_mm_s, m_s_kg, m_u_kg, k_s_N_mm, k_t_N_mm, c_Ns_mm; };
[[nodiscard]] base::Resistance body_rms(const BodyRms& in);
template <> const Clause<BodyRms>& clause<BodyRms>();

/// AC-14, "-": rms at d behind the rear axle over the rms at the axle, (1 + d/L)^2 + (q d/L)^2 under the root; q = front/rear.
struct Overhang { double d_mm, L_mm, q; };
[[nodiscard]] base::Resistance overhang(const Overhang& in);
template <> const Clause<Overhang>& clause<Overhang>();

/// AC-15, g: rms of a mount on the body. Overhang (AC-14) multiplies it.
struct MountOnCar { double Gd, v_mm_s, m_s_kg, m_u_kg, k_s_N_mm, k_t_N_mm, c_Ns_mm, f_n_Hz, zeta; };
[[nodiscard]] base::Resistance mount_rms(const MountOnCar& in);
template <> const Clause<MountOnCar>& clause<MountOnCar>();

} // namespace thinskin::actions
