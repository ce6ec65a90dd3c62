#pragma once
#include "strength/clause.h"

/// Bolts bearing on their plies, and how far a bolt stays from an edge or from its neighbour.
/// Thicknesses are core (base metal). Steel only. Plies must be in firm contact: across a gap none of these holds.
namespace thinskin::strength {

/// mf of J3.3.1 for standard holes.
inline constexpr double mf_washers_both_sides = 1.00; ///< single shear or outer sheet, washers under head and nut
inline constexpr double mf_bare_or_one_washer = 0.75; ///< single shear or outer sheet, no washer or only one
inline constexpr double mf_inner_sheet = 1.33;        ///< inner sheet of double shear

/// BB-1, in N: Pnb = C mf d t Fu, Omega 2.50.
///   C = 3 for d/t < 10; 4 - 0.1 d/t to 22; 1.8 above.  t 0.61 .. 4.76 mm.
/// Source: AISI S100-16 J3.3.1, standard holes, hole deformation not considered.
/// Not monotone in d: between d/t = 20 and 22 the clause itself loses 1 %.
struct BoltBearing { double d_mm, t_mm, Fu_MPa, mf; };
[[nodiscard]] base::Resistance bolt_bearing(const BoltBearing& in);
[[nodiscard]] const base::Card& bolt_bearing_card();
template <> const Clause<BoltBearing>& clause<BoltBearing>();

/// BB-2, in N: Pnb = (4.64 alpha t + 1.53) d t Fu with alpha = 0.0394/mm, Omega 2.22.  t 0.61 .. 4.76 mm.
/// Source: AISI S100-16 J3.3.2, about 6 mm of hole deformation considered.
struct BoltBearingDeformation { double d_mm, t_mm, Fu_MPa; };
[[nodiscard]] base::Resistance bolt_bearing_deformation(const BoltBearingDeformation& in);
[[nodiscard]] const base::Card& bolt_bearing_deformation_card();
template <> const Clause<BoltBearingDeformation>& clause<BoltBearingDeformation>();

/// BB-3, in N: Rn = 1.2 lc t Fu, at most 2.4 d t Fu, Omega 2.00; lc clear distance hole to edge or next hole, in the
/// direction of the force.  Hot-rolled parts, t >= 3 mm.  Source: AISC 360-16 J3.10 (from memory).
struct HotRolledBearing { double d_mm, t_mm, Fu_MPa, lc_mm; };
[[nodiscard]] base::Resistance hot_rolled_bearing(const HotRolledBearing& in);
[[nodiscard]] const base::Card& hot_rolled_bearing_card();
template <> const Clause<HotRolledBearing>& clause<HotRolledBearing>();

/// TO-1, in N: Pnv = 0.6 Fu (2 n t e_net), Omega 2.22; e_net clear distance from the hole's edge to the sheet's edge,
/// n bolts in line toward that edge.  Source: AISI S100-16 J6.1 (from memory).
struct SheetTearOut { double t_mm, Fu_MPa, e_net_mm, n; };
[[nodiscard]] base::Resistance sheet_tear_out(const SheetTearOut& in);
[[nodiscard]] const base::Card& sheet_tear_out_card();
template <> const Clause<SheetTearOut>& clause<SheetTearOut>();

/// ED-1, in mm: least distance from bolt centre to an edge, 1.5 d. The value is a requirement, not a capacity (factor 1).
struct MinimumEdgeDistance { double d_mm; };
[[nodiscard]] base::Resistance minimum_edge_distance(const MinimumEdgeDistance& in);
[[nodiscard]] const base::Card& minimum_edge_distance_card();
template <> const Clause<MinimumEdgeDistance>& clause<MinimumEdgeDistance>();

/// SP-1, in mm: least distance between bolt centres, 3 d. A requirement like ED-1 (factor 1).
struct MinimumSpacing { double d_mm; };
[[nodiscard]] base::Resistance minimum_spacing(const MinimumSpacing& in);
[[nodiscard]] const base::Card& minimum_spacing_card();
template <> const Clause<MinimumSpacing>& clause<MinimumSpacing>();

} // namespace thinskin::strength
