#pragma once
#include "strength/clause.h"

/// One self-drilling or thread-forming screw in steel sheet. Thicknesses are core (base metal).
/// t1 the sheet under the head, t2 the sheet at the tip, whichever is the thicker.
namespace thinskin::strength {

/// SC-1, in N: tilting of the screw and bearing of the sheets, Omega 3.00.
///   t2/t1 <= 1.0: A = min(4.2 (t2^3 d)^0.5 Fu2, 2.7 t1 d Fu1, 2.7 t2 d Fu2)
///   t2/t1 >= 2.5: B = min(2.7 t1 d Fu1, 2.7 t2 d Fu2);  between: A + (B - A)(t2/t1 - 1)/1.5, A and B with the actual sheets
/// d 2.03 .. 6.35 mm; t 0.45 .. 12.7 mm (ours).  Source: AISI S100-16 J4.3.1.
struct ScrewShear { double d_mm, t1_mm, t2_mm, Fu1_MPa, Fu2_MPa; };
[[nodiscard]] base::Resistance screw_shear(const ScrewShear& in);
[[nodiscard]] const base::Card& screw_shear_card();
template <> const Clause<ScrewShear>& clause<ScrewShear>();

/// A, B and the interpolated nominal of SC-1 in N; no range check: also for comparing with tests outside the range.
struct ScrewShearParts { double case_a_N, case_b_N, nominal_N; };
[[nodiscard]] ScrewShearParts screw_shear_parts(const ScrewShear& in);

inline constexpr double thin_sheet_as_printed = 0, thin_sheet_applied = 1;

/// SC-2, in N: Pnot = k 0.85 tc d Fu2, Omega 3.00; tc the lesser of thread penetration and t2.
///   thin_sheet = 1: k = 0.6 for tc <= 1.2 mm, straight to 1.0 at 2.0 mm (engineering judgement from laboratory ratios)
///   thin_sheet = 0: k = 1, the clause as printed.  Callers pass 1 unless they say why not.
/// Source: AISI S100-16 J4.4.1; k is judgement.
struct ScrewPullOut { double d_mm, tc_mm, Fu2_MPa, thin_sheet; };
[[nodiscard]] base::Resistance screw_pull_out(const ScrewPullOut& in);
[[nodiscard]] const base::Card& screw_pull_out_card();
template <> const Clause<ScrewPullOut>& clause<ScrewPullOut>();

inline constexpr double no_separate_washer = 0, solid_washer = 1, domed_washer = 2;
inline constexpr double concentric_pull = 0, eccentric_pull = 1;

/// SC-3, in N: pull-over of the sheet under the head: PO-1 for a screw, Omega 3.00.
///   washer = 0: head alone, or a head with its washer in one piece: dh is the diameter of that washer
///   washer = 1: separate solid steel washer
///   washer = 2: domed washer, separate or in one piece: as 1
///   eccentric = 1: the sheet pulls at one side of the head only: half
/// Source: AISI S100-16 J4.4.2; half: read with the combined clause.
struct ScrewPullOver { double t1_mm, Fu1_MPa, dh_mm, washer, dw_mm, tw_mm, eccentric; };
[[nodiscard]] base::Resistance screw_pull_over(const ScrewPullOver& in);
[[nodiscard]] const base::Card& screw_pull_over_card();
template <> const Clause<ScrewPullOver>& clause<ScrewPullOver>();

/// SC-4, in N: the screw's own shear strength, the maker's or a tested value / 3.00. No value (0, NaN): not covered.
struct ScrewOwnShear { double Pnvs_N; };
[[nodiscard]] base::Resistance screw_own_shear(const ScrewOwnShear& in);
[[nodiscard]] const base::Card& screw_own_shear_card();
template <> const Clause<ScrewOwnShear>& clause<ScrewOwnShear>();

/// SC-5, in N: the screw's own tension strength, the maker's or a tested value / 3.00. No value (0, NaN): not covered.
struct ScrewOwnTension { double Pnts_N; };
[[nodiscard]] base::Resistance screw_own_tension(const ScrewOwnTension& in);
[[nodiscard]] const base::Card& screw_own_tension_card();
template <> const Clause<ScrewOwnTension>& clause<ScrewOwnTension>();

/// TO-2, in N: Pnv = 0.6 Fu (2 n t e_net), Omega 3.00; e_net clear distance from the screw's rim to the sheet's edge.
/// Source: AISI S100-16 J6.1 with the factor of screws (from memory).
struct ScrewTearOut { double t_mm, Fu_MPa, e_net_mm, n; };
[[nodiscard]] base::Resistance screw_tear_out(const ScrewTearOut& in);
[[nodiscard]] const base::Card& screw_tear_out_card();
template <> const Clause<ScrewTearOut>& clause<ScrewTearOut>();

} // namespace thinskin::strength
