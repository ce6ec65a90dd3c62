#pragma once
#include "strength/clause.h"

#include <string>

/// Single rolled angles with equal legs.
namespace thinskin::strength {

inline constexpr double toe_in_compression = 1, toe_in_tension = -1;
inline constexpr double unrestrained = 0, restrained_at_maximum = 1, restrained_continuously = 2;

/// AB-1, in N mm: bending about an axis parallel to a leg, Omega 1.67. Least of
///   yielding  1.5 My,  My = 0.80 Fy Sx (Fy Sx where restrained)
///   lateral-torsional buckling: My/Mcr <= 1: (1.92 - 1.17 (My/Mcr)^0.5) My <= 1.5 My; above: (0.92 - 0.17 Mcr/My) Mcr
///     Mcr = (0.58 E b^4 t Cb/Lb^2) [(1 + 0.88 (Lb t/b^2)^2)^0.5 -+ 1], - toe in compression, + toe in tension;
///     times 1.25 where restrained at the point of maximum moment; left out where restrained continuously
///   leg local buckling (toe in compression): b/t > 0.54 (E/Fy)^0.5
/// toe and restraint take the constants above. Source: AISC 360-16 F10 (constants read in worked examples of 2022).
/// Jump: 0.9 % down at the slender-leg limit b/t = 0.91 (E/Fy)^0.5, the clause's own.
struct AngleBending { double b_mm, t_mm, Sx_mm3, Fy_MPa, E_MPa, Lb_mm, Cb, toe, restraint; };
[[nodiscard]] base::Resistance angle_bending(const AngleBending& in);
[[nodiscard]] const base::Card& angle_bending_card();
template <> const Clause<AngleBending>& clause<AngleBending>();

/// The same with the parts of the answer; modes that do not apply are infinite.
struct AngleBendingDetail {
    base::Resistance resistance;
    double My_Nmm = 0, Mcr_Nmm = 0;                           ///< Mcr infinite when restrained continuously
    double yielding_Nmm = 0, lateral_Nmm = 0, leg_Nmm = 0;    ///< nominal, without Omega
    std::string governs;                                      ///< "yielding", "lateral-torsional buckling", "leg local buckling"
};
[[nodiscard]] AngleBendingDetail angle_bending_detail(const AngleBending& in);

/// AT-1, in N mm: Saint-Venant torque of an open section: T = 0.6 Fy J/t, factor 1.67 (judgement). Warping not counted.
struct OpenSectionTorsion { double J_mm4, t_mm, Fy_MPa; };
[[nodiscard]] base::Resistance open_section_torsion(const OpenSectionTorsion& in);
[[nodiscard]] const base::Card& open_section_torsion_card();
template <> const Clause<OpenSectionTorsion>& clause<OpenSectionTorsion>();

/// LL-1, in N: lying leg as a strip held at the heel and pulled at the bolt: F = Fy w t^2/(4 a), factor 1.67 (judgement)
///   w = min(washer + 2 a, available);  a = lever from the standing leg's inner face to the bolt's line.
struct LyingLeg { double t_mm, Fy_MPa, a_mm, washer_mm, available_mm; };
[[nodiscard]] base::Resistance lying_leg(const LyingLeg& in);
[[nodiscard]] const base::Card& lying_leg_card();
template <> const Clause<LyingLeg>& clause<LyingLeg>();

} // namespace thinskin::strength
