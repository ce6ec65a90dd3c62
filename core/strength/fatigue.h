#pragma once
#include "strength/clause.h"

#include <string_view>
#include <vector>

/// Life under repeated stress: S-N lines, damage sums, random stress. Stresses are RANGES (top to bottom), not amplitudes.
namespace thinskin::strength {

/// S-N line of EN 1993-1-9:2005, forms and constants published (read) second-hand. C: category = range at 2 million cycles.
///   direct  N = 2e6 (C/S)^3 down to S_D at 5e6;  5e6 (S_D/S)^5 down to S_L at 1e8;  unlimited below      S_D = 0.7368 C, S_L = 0.4047 C
///   shear   N = 2e6 (C/S)^5 down to S_L at 1e8;  unlimited below                                         S_L = 0.4573 C
enum class SnLine { direct, shear };
struct SnKnees { double S_D_MPa, S_L_MPa; }; ///< shear has no S_D: 0
[[nodiscard]] SnKnees sn_knees(SnLine line, double C_MPa);
/// Cycles to the line at the range S > 0; infinite below the cut-off. NaN in, NaN out.
[[nodiscard]] double sn_cycles(SnLine line, double C_MPa, double S_MPa);

/// Miner: sum of n/N over blocks. Linear in every n. A NaN gives a NaN.
struct Block { double S_MPa, n; };
[[nodiscard]] double miner_sum(SnLine line, double C_MPa, const std::vector<Block>& blocks);

/// Damage of one cycle of a narrow-band Gaussian stress of rms sigma (peaks after Rayleigh), closed form with the two slopes and
/// the cut-off; t = (S/sigma)^2/8, Gamma(a, t) the upper incomplete gamma function:
///   direct (2 sqrt2 sigma)^3/K3 Gamma(5/2, t_D) + (2 sqrt2 sigma)^5/K5 (Gamma(7/2, t_L) - Gamma(7/2, t_D))
///   shear  (2 sqrt2 sigma)^5/K5 Gamma(7/2, t_L)                      K3 = 2e6 C^3, K5 = 5e6 S_D^5 (direct), 2e6 C^5 (shear)
[[nodiscard]] double narrow_band_damage(SnLine line, double C_MPa, double sigma_MPa);
/// The same by three bands: 68.3, 27.1, 4.33 % of the cycles at ranges of 2, 4, 6 sigma. Ignores what is beyond three sigma: with
/// one slope it is on the safe side up to a slope of about 6, not above; near the cut-off it can be far too low.
[[nodiscard]] double three_band_damage(SnLine line, double C_MPa, double sigma_MPa);

/// Upper incomplete gamma function Gamma(twice_a/2, t), exact by recurrence from erfc or exp; twice_a 1, 2, 3, ..; t >= 0.
[[nodiscard]] double upper_gamma(int twice_a, double t);

/// Stands beside every result of this file.
inline constexpr std::string_view fatigue_scope =
    "the S-N lines are those of hot-rolled structural steel; door skins of 0.6 to 0.9 mm, spot welds, bonded hems, rivets and inserts are outside: a category of "
    "36 to 50 only stands in for a test there, which decides";

inline constexpr double direct_stress = 0, shear_stress = 1; ///< values of the symbol `line`

/// FA-1, "-": damage of n cycles of one range, n/N(gamma S). Miner: the sum over all ranges stays below the limit.
struct BlockDamage { double line, C_MPa, gamma, S_MPa, n; };
[[nodiscard]] base::Resistance block_damage(const BlockDamage& in);
template <> const Clause<BlockDamage>& clause<BlockDamage>();

/// FA-2, "-": damage of n cycles of a narrow-band random stress of rms sigma.
struct RandomDamage { double line, C_MPa, gamma, sigma_MPa, n; };
[[nodiscard]] base::Resistance random_damage(const RandomDamage& in);
template <> const Clause<RandomDamage>& clause<RandomDamage>();

/// FA-3, "-": the same by three bands, for comparison.
struct ThreeBandDamage { double line, C_MPa, gamma, sigma_MPa, n; };
[[nodiscard]] base::Resistance three_band(const ThreeBandDamage& in);
template <> const Clause<ThreeBandDamage>& clause<ThreeBandDamage>();

/// FA-4, km: distance until the damage of FA-2 reaches its limit: D (v/nu)/damage of a cycle; nu cycles a second at the speed v.
/// Not covered where the formula gives no damage at all, so that no unlimited life is ever printed as a figure.
struct DistanceToLimit { double line, C_MPa, gamma, sigma_MPa, nu_Hz, v_mm_s, D; };
[[nodiscard]] base::Resistance distance_to_limit(const DistanceToLimit& in);
template <> const Clause<DistanceToLimit>& clause<DistanceToLimit>();

/// FA-5, "-": years, distance to the limit over the distance a year.
struct YearsToLimit { double km, km_per_year; };
[[nodiscard]] base::Resistance years_to_limit(const YearsToLimit& in);
template <> const Clause<YearsToLimit>& clause<YearsToLimit>();

} // namespace thinskin::strength
