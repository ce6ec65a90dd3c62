#pragma once
#include "strength/clause.h"

/// The bolt itself. Stresses of BT-1, BV-1, BI-1 are on the GROSS area pi d^2/4 (the thread is in the shares of Fu).
/// Metric property-class bolts under this rule set are judgement.
namespace thinskin::strength {

/// BT-1, in N: Rn = 0.75 Fu Ab, 0.675 Fu Ab below 12 mm, Omega 2.00.
/// Source: threaded parts of AISC 360-16 J3.6 and AISI S100-16 J3.4 (both read in copies made by others).
struct BoltTension { double d_mm, Fu_MPa; };
[[nodiscard]] base::Resistance bolt_tension(const BoltTension& in);
[[nodiscard]] const base::Card& bolt_tension_card();
template <> const Clause<BoltTension>& clause<BoltTension>();

/// BV-1, in N: Rn = 0.45 Fu Ab, 0.40 Fu Ab below 12 mm, per shear plane, threads in the plane, Omega 2.00.  Source: as BT-1 (0.40 Fu for all until 2005).
struct BoltShear { double d_mm, Fu_MPa; };
[[nodiscard]] base::Resistance bolt_shear(const BoltShear& in);
[[nodiscard]] const base::Card& bolt_shear_card();
template <> const Clause<BoltShear>& clause<BoltShear>();

/// BI-1, in N: tension capacity left beside a shear V (service load, one plane), Omega 2.00:
///   F'nt = 1.3 Fnt - Omega (Fnt/Fnv) (V/Ab), between 0 and Fnt;  Fnt and Fnv of BT-1 and BV-1.
/// Zero from V = 1.3 times BV-1's capacity on: BV-1 is a check of its own. Source: AISC 360-16 J3.7, AISI S100-16 J3.4.
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
