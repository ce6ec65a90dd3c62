#pragma once
#include "strength/clause.h"

/// Wood screws into solid wood or board, up to No. 14. The reference values of the standard already contain their margin:
/// the factor is 1, and dividing by another 3 would be wrong. D nominal, Dr root diameter; G oven-dry specific gravity.
/// C_D load duration (0.9 .. 1.6, never 2.0 for a fastener), C_M 1 dry or 0.7 wet, C_t temperature.
namespace thinskin::strength {

/// WS-1, in N: withdrawal from side grain: 2850 psi G^2 D pt C_D C_M C_t; pt THREAD length in the wood.
/// Source: NDS 2018 12.2.2.
struct WoodScrewWithdrawal { double D_mm, G, pt_mm, C_D, C_M, C_t; };
[[nodiscard]] base::Resistance wood_screw_withdrawal(const WoodScrewWithdrawal& in);
[[nodiscard]] const base::Card& wood_screw_withdrawal_card();
template <> const Clause<WoodScrewWithdrawal>& clause<WoodScrewWithdrawal>();

/// WS-2, in N: the head pulled through a board under it: 690 psi pi DH G^2 tns C_D C_M C_t, tns counted to 2.5 DH.
/// Source: NDS 2018 12.2.5.
struct WoodHeadPullThrough { double DH_mm, G, tns_mm, C_D, C_M, C_t; };
[[nodiscard]] base::Resistance wood_head_pull_through(const WoodHeadPullThrough& in);
[[nodiscard]] const base::Card& wood_head_pull_through_card();
template <> const Clause<WoodHeadPullThrough>& clause<WoodHeadPullThrough>();

/// WS-3, in N: lateral, single shear, steel side plate of thickness ts: least of the six modes / KD, times p/(10 D) for p < 10 D.
///   p total penetration with the tip, at least 6 D, else not covered;  lm = p - D;  Fes = 2.2 Fus/1.6;  Fem = 16600 psi G^1.84;
///   Fyb 100, 90, 80, 70 ksi by D;  KD of Dr.  Source: NDS 2018 12.3.
struct WoodScrewLateral { double D_mm, Dr_mm, G, p_mm, ts_mm, Fus_MPa, C_D, C_M, C_t; };
[[nodiscard]] base::Resistance wood_screw_lateral(const WoodScrewLateral& in);
[[nodiscard]] const base::Card& wood_screw_lateral_card();
template <> const Clause<WoodScrewLateral>& clause<WoodScrewLateral>();

/// The six yield modes of NDS 12.3.1 before Rd, in any coherent units; D the root diameter of a threaded screw. No range check.
struct YieldLimits { double D, lm, ls, Fem, Fes, Fyb; };
struct YieldModes { double Im, Is, II, IIIm, IIIs, IV; };
[[nodiscard]] YieldModes yield_modes(const YieldLimits& in);
[[nodiscard]] double least(const YieldModes& m);
/// KD of the root diameter; Fe of wood in MPa for D below 1/4 in; Fyb in MPa of the nominal diameter. No range check.
[[nodiscard]] double reduction_term(double Dr_mm);
[[nodiscard]] double dowel_bearing_MPa(double G);
[[nodiscard]] double bending_yield_MPa(double D_mm);

/// WS-4, in N: force at an angle a to the wood's surface: W Z/(W cos^2 a + Z sin^2 a), W and Z the adjusted withdrawal and
/// lateral values.  Source: NDS 2018 12.4.1.
struct WoodScrewCombined { double W_N, Z_N, a_rad; };
[[nodiscard]] base::Resistance wood_screw_combined(const WoodScrewCombined& in);
[[nodiscard]] const base::Card& wood_screw_combined_card();
template <> const Clause<WoodScrewCombined>& clause<WoodScrewCombined>();

} // namespace thinskin::strength
