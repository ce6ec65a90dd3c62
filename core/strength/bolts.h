#pragma once
#include "strength/clause.h"

/// The bolt itself. Stresses of BT-1, BV-1, BI-1 are on the GROSS area pi d^2/4 (the thread is in the 0.75 and 0.45).
/// Metric property-class bolts under this rule set are judgement.
namespace thinskin::strength {

/// BT-1, in N: Rn = 0.75 Fu Ab, Omega 2.00.  Source: AISC 360-16 J3.6, threaded part (read in a copy of table J3.2 of 2010).
struct BoltTension { double d_mm, Fu_MPa; };
[[nodiscard]] base::Resistance bolt_tension(const BoltTension& in);
[[nodiscard]] const base::Card& bolt_tension_card();
template <> const Clause<BoltTension>& clause<BoltTension>();

/// BV-1, in N: Rn = 0.45 Fu Ab per shear plane, threads in the plane, Omega 2.00.  Source: AISC 360-16 J3.6 (read as BT-1; 0.40 Fu until 2005).
struct BoltShear { double d_mm, Fu_MPa; };
[[nodiscard]] base::Resistance bolt_shear(const BoltShear& in);
[[nodiscard]] const base::Card& bolt_shear_card();
template <> const Clause<BoltShear>& clause<BoltShear>();

/// BI-1, in N: tension capacity left beside a shear V (service load, one plane), Omega 2.00:
///   F'nt = 1.3 Fnt - Omega (Fnt/Fnv) (V/Ab), between 0 and Fnt;  Fnt = 0.75 Fu, Fnv = 0.45 Fu.
/// Zero from V = 1.3 times BV-1's capacity on: BV-1 is a check of its own. Source: AISC 360-16 J3.7.
struct BoltTensionWithShear { double d_mm, Fu_MPa, V_N; };
[[nodiscard]] base::Resistance bolt_tension_with_shear(const BoltTensionWithShear& in);
[[nodiscard]] const base::Card& bolt_tension_with_shear_card();
template <> const Clause<BoltTensionWithShear>& clause<BoltTensionWithShear>();

/// BG-1, in N: shear V that a bolt carries across an open gap: V = 2 M/gap, M = fy pi ds^3/32, factor 1.67 (judgement).
///   ds = (4 As/pi)^0.5 from the thread's stress area; both ends of the bolt held against rotation by clamped plies.
struct BoltBendingOverGap { double As_mm2, fy_MPa, gap_mm; };
[[nodiscard]] base::Resistance bolt_bending_over_gap(const BoltBendingOverGap& in);
[[nodiscard]] const base::Card& bolt_bending_over_gap_card();
template <> const Clause<BoltBendingOverGap>& clause<BoltBendingOverGap>();

} // namespace thinskin::strength
