#pragma once
#include "strength/clause.h"

/// Distances of screws, rivets and inserts. The values are requirements in mm (factor 1), not capacities; bolts: bearing.h.
namespace thinskin::strength {

/// ED-2, in mm: screw to edge, from its centre, 1.5 d.  Source: AISI S100-16 J4.2.
struct ScrewEdgeDistance { double d_mm; };
[[nodiscard]] base::Resistance screw_edge_distance(const ScrewEdgeDistance& in);
[[nodiscard]] const base::Card& screw_edge_distance_card();
template <> const Clause<ScrewEdgeDistance>& clause<ScrewEdgeDistance>();

/// SP-2, in mm: screw to screw, 3 d.  Source: AISI S100-16 J4.1.
struct ScrewSpacing { double d_mm; };
[[nodiscard]] base::Resistance screw_spacing(const ScrewSpacing& in);
[[nodiscard]] const base::Card& screw_spacing_card();
template <> const Clause<ScrewSpacing>& clause<ScrewSpacing>();

/// ED-3, in mm: blind rivet to edge, 2 d (judgement).  Source: manuals of the sheet metal trade, for rivets with an upset shank.
struct RivetEdgeDistance { double d_mm; };
[[nodiscard]] base::Resistance rivet_edge_distance(const RivetEdgeDistance& in);
[[nodiscard]] const base::Card& rivet_edge_distance_card();
template <> const Clause<RivetEdgeDistance>& clause<RivetEdgeDistance>();

/// SP-3, in mm: blind rivet to blind rivet, 3 d (judgement, from another rule set).
struct RivetSpacing { double d_mm; };
[[nodiscard]] base::Resistance rivet_spacing(const RivetSpacing& in);
[[nodiscard]] const base::Card& rivet_spacing_card();
template <> const Clause<RivetSpacing>& clause<RivetSpacing>();

/// ED-4, in mm: threaded insert to edge, 2 hole diameters (judgement).
struct InsertEdgeDistance { double d_hole_mm; };
[[nodiscard]] base::Resistance insert_edge_distance(const InsertEdgeDistance& in);
[[nodiscard]] const base::Card& insert_edge_distance_card();
template <> const Clause<InsertEdgeDistance>& clause<InsertEdgeDistance>();

/// SP-4, in mm: threaded insert to threaded insert, 3 hole diameters (judgement).
struct InsertSpacing { double d_hole_mm; };
[[nodiscard]] base::Resistance insert_spacing(const InsertSpacing& in);
[[nodiscard]] const base::Card& insert_spacing_card();
template <> const Clause<InsertSpacing>& clause<InsertSpacing>();

} // namespace thinskin::strength
