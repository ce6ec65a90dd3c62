#pragma once
#include "actions/clause.h"

#include <optional>
#include <vector>

/// A mount (one mass, one spring, one damper) whose base is shaken by a pulse.
namespace thinskin::actions {

/// Base accelerations of peak A and duration D:
///   half_sine    a = A sin(pi t/D)              speed change 2 A D/pi
///   sawtooth     a = A t/D, terminal peak       speed change A D/2
///   versed_sine  a = A (1 - cos(2 pi t/D))/2    speed change A D/2
enum class Pulse { half_sine, sawtooth, versed_sine };
inline constexpr double half_sine = 0, sawtooth = 1, versed_sine = 2; ///< the same as a symbol's choices

/// Largest answer of the mount, over the base's peak A, during the pulse and after it.                        [theory AC-4]
///   z'' + 2 zeta w z' + w^2 z = -a(t),  w = 2 pi f,  z the mount's stroke,  x = f D (same second for both)
///   absolute  |w^2 z + 2 zeta w z'|  what an accelerometer on the mass feels, and what spring and damper hand on together
///   pseudo    |w^2 z|                what the spring alone hands on; both are the same without damping
/// x > 0, <= 50; zeta 0 .. 0.5. Nothing outside of it or for a NaN. The state is propagated exactly (matrix exponential of the
/// mount with the pulse's own differential equation), 200 steps a period and a parabola through each peak: 1e-7 of A.
/// Elementary dynamics. Slow pulses (large x) tend to 1 but for the sawtooth's ripple, fast ones to w (speed change)/A.
struct ShockPeaks { double absolute = 0, pseudo = 0; };
[[nodiscard]] std::optional<ShockPeaks> shock_peaks(Pulse pulse, double x, double zeta);

/// The same for a measured base acceleration, samples `dt` apart with straight lines between, zero before and after; in its unit.
/// Nothing for fewer than two samples, a NaN, dt f > 0.05 (the record is too coarse for that mount) or zeta outside 0 .. 0.5.
struct Record { std::vector<double> a; double dt_s; };
[[nodiscard]] std::optional<ShockPeaks> shock_peaks(const Record& record, double f_Hz, double zeta);

/// AC-4, in g: A times the largest answer of a mount of natural frequency f and damping zeta; kind 0 absolute, 1 pseudo.
/// It replaces the road's factor and is not multiplied by another: a test pulse is not a road.
struct ShockResponse { double pulse, kind, A_g, D_s, f_Hz, zeta; };
inline constexpr double absolute_acceleration = 0, pseudo_acceleration = 1;
[[nodiscard]] base::Resistance shock_response(const ShockResponse& in);
template <> const Clause<ShockResponse>& clause<ShockResponse>();

/// AC-5, in mm/s: speed that the pulse gives to a loose mass; area under the pulse.
struct SpeedChange { double pulse, A_g, D_s; };
[[nodiscard]] base::Resistance speed_change(const SpeedChange& in);
template <> const Clause<SpeedChange>& clause<SpeedChange>();

} // namespace thinskin::actions
