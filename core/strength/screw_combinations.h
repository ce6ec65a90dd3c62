#pragma once
#include "strength/clause.h"

/// Shear and tension of one screw together. The capacity of these clauses is a NUMBER OF TIMES: how many times the given pair of
/// service forces is allowed, so the demand is 1 and the utilisation 1/capacity grows in proportion to the forces. Without any
/// force there is nothing to combine: not covered, leave the row out. The single checks (SC-1 .. SC-5) stay checks of their own.
namespace thinskin::strength {

/// SC-6, "-": shear with pull-over: Q/Pns + 0.71 T/Pnov <= 1.10/Omega, Omega 2.35; Pns = 2.7 t1 d Fu1, Pnov of SC-3.
/// Box: t1 0.724 .. 1.13 mm, t2/t1 >= 2.5, No. 12 and 14 (d 5.48 .. 6.35 mm), washer <= 19.1 mm, Fu1 <= 483 MPa.
/// Source: AISI S100-16 J4.5.1 (limits read; 0.71, 1.10, 2.35 from memory).
struct ScrewShearWithPullOver { double Q_N, T_N, d_mm, t1_mm, t2_mm, Fu1_MPa, dh_mm, washer, dw_mm, tw_mm, eccentric; };
[[nodiscard]] base::Resistance screw_shear_with_pull_over(const ScrewShearWithPullOver& in);
[[nodiscard]] const base::Card& screw_shear_with_pull_over_card();
template <> const Clause<ScrewShearWithPullOver>& clause<ScrewShearWithPullOver>();

/// SC-7, "-": shear with pull-out: Q/Pns + T/Pnot <= 1.15/Omega, Omega 2.55; Pns = 4.2 (t2^3 d)^0.5 Fu2, Pnot of SC-2.
/// Box: t2 0.754 .. 1.84 mm, No. 8 to 14 (d 4.16 .. 6.35 mm), Fu2 <= 834 MPa, Fu2/Fy2 1.0 .. 1.62.
/// Source: AISI S100-16 J4.5.2 (from memory).
struct ScrewShearWithPullOut { double Q_N, T_N, d_mm, t2_mm, tc_mm, Fu2_MPa, Fy2_MPa, thin_sheet; };
[[nodiscard]] base::Resistance screw_shear_with_pull_out(const ScrewShearWithPullOut& in);
[[nodiscard]] const base::Card& screw_shear_with_pull_out_card();
template <> const Clause<ScrewShearWithPullOut>& clause<ScrewShearWithPullOut>();

/// SC-8, "-": in the screw itself: V/Pnvs + T/Pnts <= 1.3/Omega, Omega 3.00; both strengths the maker's or tested.
/// Source: AISI S100-16 J4.5.3 (from memory).
struct ScrewShearWithTension { double V_N, T_N, Pnvs_N, Pnts_N; };
[[nodiscard]] base::Resistance screw_shear_with_tension(const ScrewShearWithTension& in);
[[nodiscard]] const base::Card& screw_shear_with_tension_card();
template <> const Clause<ScrewShearWithTension>& clause<ScrewShearWithTension>();

/// SC-9, "-": outside the boxes, and for rivets and inserts: Q/Qa + T/Ta <= 1; Qa, Ta the ALLOWABLE forces of the single
/// checks, factor 1 (judgement).
struct StraightLine { double Q_N, T_N, Qa_N, Ta_N; };
[[nodiscard]] base::Resistance straight_line(const StraightLine& in);
[[nodiscard]] const base::Card& straight_line_card();
template <> const Clause<StraightLine>& clause<StraightLine>();

} // namespace thinskin::strength
