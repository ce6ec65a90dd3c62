#pragma once
#include "actions/psd.h"

#include <functional>

/// Answer of one mass on a spring to a random base acceleration.
namespace thinskin::actions {

/// |H|^2 of absolute acceleration at r = f/f_n: (1 + (2 zeta r)^2)/((1 - r^2)^2 + (2 zeta r)^2).
[[nodiscard]] double transmissibility_squared(double r, double zeta);

/// Mount on a base of random acceleration.                                                                    [theory AC-8]
///   rms^2 = integral of P |H|^2 df over the table
///   rate  = (integral of f^2 P |H|^2 df / rms^2)^0.5   upward zero crossings a second (Rice)
///   miles = (pi/2 f_n Q P(f_n))^0.5, Q = 1/(2 zeta)    shown beside it, never used; what is wrong with it in words  [AC-7]
/// Weight is not in it: one g is added to the peak.
/// Not covered (`reason`): a table that cannot be used, zeta outside 0.005 .. 0.3, f_n outside of the table: the density at the
/// mount's own frequency is not known, and nothing is extrapolated. Gaussian and steady input, linear mount. Integrated by 8-point
/// Gauss in log f, pieces graded towards f_n: 1e-8.
struct RandomResponse { double rms_g = 0, rate_Hz = 0, miles_g = 0; std::string miles_warning, reason; };
[[nodiscard]] RandomResponse random_response(const Psd& table, double f_n_Hz, double zeta);

/// Integrals of a smooth one-sided density over one piece [f1, f2] with the mount's |H|^2: {of P |H|^2, of f^2 P |H|^2}.
/// Callers have checked 0 < f1 < f2, f_n > 0, zeta > 0; else both are NaN.
struct Moments { double m0 = 0, m2 = 0; };
[[nodiscard]] Moments response_moments(const std::function<double(double)>& P, double f1_Hz, double f2_Hz, double f_n_Hz, double zeta);

/// AC-7, g rms: Miles. Right for a flat density alone; 31 % too low in a notch of a published packaging profile.
struct Miles { double f_n_Hz, zeta, P; };
[[nodiscard]] base::Resistance miles(const Miles& in);
template <> const Clause<Miles>& clause<Miles>();

/// AC-8, g rms: the full integral for a table of one segment. f1 <= f <= f2.
struct SegmentResponse { double f_n_Hz, zeta, f1_Hz, P1, f2_Hz, P2; };
[[nodiscard]] base::Resistance segment_response(const SegmentResponse& in);
template <> const Clause<SegmentResponse>& clause<SegmentResponse>();

/// AC-9, "-": expected largest peak of N = rate x T cycles over the rms, (2 ln N)^0.5 + 0.5772/(2 ln N)^0.5. N >= 10.
struct PeakFactor { double rate_Hz, T_s; };
[[nodiscard]] base::Resistance peak_factor(const PeakFactor& in);
template <> const Clause<PeakFactor>& clause<PeakFactor>();

/// AC-10, "-": how often the level k times the rms is passed upward in T: rate T exp(-k^2/2). k = 3 is not a maximum.
struct LevelCrossings { double rate_Hz, T_s, k; };
[[nodiscard]] base::Resistance level_crossings(const LevelCrossings& in);
template <> const Clause<LevelCrossings>& clause<LevelCrossings>();

/// AC-11, g: total downward factor, 1 + k rms. No other dynamic factor on top.
struct RandomFactor { double k, rms_g; };
[[nodiscard]] base::Resistance random_factor(const RandomFactor& in);
template <> const Clause<RandomFactor>& clause<RandomFactor>();

} // namespace thinskin::actions
