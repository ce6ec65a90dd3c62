#pragma once
#include "strength/clause.h"

/// How far a washer or a backing plate reaches, and what a countersink leaves. Judgement, derived on the theory page.
namespace thinskin::strength {

/// CS-1, in mm: thickness that bears under a countersunk head, t - h/2, h the depth of the countersink. Factor 1: a thickness to
/// put into the bearing clauses. A sheet thinner than the head (t < h): not covered.
/// Source: EN 1993-1-8 Table 3.4, note 2; under this rule set judgement.
struct CountersunkThickness { double t_mm, h_mm; };
[[nodiscard]] base::Resistance countersunk_thickness(const CountersunkThickness& in);
[[nodiscard]] const base::Card& countersunk_thickness_card();
template <> const Clause<CountersunkThickness>& clause<CountersunkThickness>();

/// CS-2, in N: countersunk head pulled through its part: Rn = 1.5 dhole (t - h/2) Fu, Omega 3.00; t >= h. Judgement.
struct CountersunkPullThrough { double t_mm, h_mm, dhole_mm, Fu_MPa; };
template <> const Clause<CountersunkPullThrough>& clause<CountersunkPullThrough>();

/// WR-1, in mm: how far a washer may stand out beyond the head and still count: c = fyw tw^2/(4 (0.6 t Fu)). Factor 1: a length.
struct WasherReach { double tw_mm, fyw_MPa, t_mm, Fu_MPa; };
[[nodiscard]] base::Resistance washer_reach(const WasherReach& in);
[[nodiscard]] const base::Card& washer_reach_card();
template <> const Clause<WasherReach>& clause<WasherReach>();

/// PL-1, in N: square backing plate of side a bent by its bolt, yield line at the head's face:
///   F = 4 a^2 tb^2 fyb/((a - s)(3 a - s)), factor 1.67; s the head or nut across flats.  a >= 1.5 s, else not covered.
struct PlateBending { double a_mm, tb_mm, s_mm, fyb_MPa; };
[[nodiscard]] base::Resistance plate_bending(const PlateBending& in);
[[nodiscard]] const base::Card& plate_bending_card();
template <> const Clause<PlateBending>& clause<PlateBending>();

/// PL-2, in mm: diameter of the rim that a backing plate pulls on the skin with: min(a, s + 2 c), c of WR-1 for the plate;
/// a where the plate passes PL-1 for the force at hand (bends = 1). Factor 1: a diameter, not a capacity.
struct PlateRim { double a_mm, tb_mm, s_mm, fyb_MPa, t_mm, Fu_MPa, bends; };
[[nodiscard]] base::Resistance plate_rim(const PlateRim& in);
[[nodiscard]] const base::Card& plate_rim_card();
template <> const Clause<PlateRim>& clause<PlateRim>();

} // namespace thinskin::strength
