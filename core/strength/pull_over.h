#pragma once
#include "strength/clause.h"

/// What a head or washer can pull through. Thicknesses are core (base metal). Steel only.
namespace thinskin::strength {

/// PO-1, in N: Pnov = 1.5 t1 d'w Fu1, Omega 3.00.
///   washer = 1: solid steel washer, separate:  d'w = min(dh + 2 tw + t1, dw, 19.1 mm)
///   washer = 0: head alone (dw, tw not used, give 0): d'w = min(dh, 19.1 mm)
///   t1 0.5 .. 4.76 mm: the clause text has no thickness limits; these are ours (judgement)
///   head or washer at least 7.94 mm; tw at least 1.27 mm, and 1.6 mm where dw > 15.9 mm, else not covered
///   (then ask for the head alone).
/// Source: AISI S100-16 J4.4.2, written for screws of 2.03 .. 6.35 mm. Under a larger bolt the CALLER marks it judgement.
struct PullOver { double t1_mm, Fu1_MPa, dh_mm, washer, dw_mm, tw_mm; };
[[nodiscard]] base::Resistance pull_over(const PullOver& in);
[[nodiscard]] const base::Card& pull_over_card();
template <> const Clause<PullOver>& clause<PullOver>();
/// d'w of PO-1 in mm; no range check (NaN in, NaN out).
[[nodiscard]] double effective_pull_over_diameter(const PullOver& in);

/// PU-1, in N: Rn = 0.6 pi dm t Fu, factor 2.0 (judgement under this rule set).  t >= 3 mm only.
///   dm  mean of across-flats and across-points of head or nut (not the washer, not the hole)
/// Source: form of EN 1993-1-8 Table 3.4, punching.
struct Punching { double t_mm, Fu_MPa, dm_mm; };
[[nodiscard]] base::Resistance punching(const Punching& in);
[[nodiscard]] const base::Card& punching_card();
template <> const Clause<Punching>& clause<Punching>();

} // namespace thinskin::strength
