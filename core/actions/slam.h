#pragma once
#include <optional>

namespace thinskin::actions {

/// Peak acceleration in g of a mass on a turning door that is stopped by a half-sine pulse.             [theory AC-1]
///   v_n = v_edge y / y_edge          speed of the mass, at the distance y from the pin line
///   A   = pi v_n (1 + e) / (2 D g)   the half-sine of duration D that takes the speed v_n (1 + e) away
/// The part square to the panel; a mass e off the pin line also gets A e/y across the panel.
///   v_edge  speed of the free edge       mm/s   > 0, <= 5000
///   y       distance of the mass         mm     >= 0
///   y_edge  distance of the free edge    mm     > 0
///   D       duration of the stop         s      0.001 .. 0.5
///   e       rebound, 0 = none            -      0 .. 1
/// Nothing when an input is outside its range or not a number. Impulse and momentum of a half-sine: elementary mechanics;
/// the shape and the duration of a door's stop: common practice, no source. Not covered: flexible doors, the mounted mass's
/// own response to the pulse (up to 1.65 times at 5 % damping, near natural frequency times D = 0.8).
struct HalfSineStop { double v_edge_mm_s, y_mm, y_edge_mm, D_s, e; };
[[nodiscard]] std::optional<double> half_sine_stop_g(const HalfSineStop& in);

} // namespace thinskin::actions
