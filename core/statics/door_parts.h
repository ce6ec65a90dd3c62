#pragma once
#include "statics/door.h"

/// What the door's files share; not for other folders.
namespace thinskin::statics {

/// Distance from the hinge line towards the free edge, mm; negative beyond the pin.
[[nodiscard]] double y_of(const layout::Door& d, const results::Vec3& at);
/// Distance outboard of the pin, mm.
[[nodiscard]] double e_of(const layout::Door& d, const results::Vec3& at);
/// Distance of the free edge from the pin line, mm.
[[nodiscard]] double edge_distance(const layout::Layout& l);
/// Spacing of the outermost hinges; 0 with fewer than two.
[[nodiscard]] double hinge_spacing(const layout::Door& d);
/// Why the hinges cannot be worked out at all; empty when they can.
[[nodiscard]] std::string no_hinges(const layout::Layout& l);
/// The key that would lift it.
[[nodiscard]] std::string no_hinges_key(const layout::Layout& l);

/// A mass about its own upright axis, kg mm2: the leaf even over its width, the item a cuboid of its box (a point without), others a point.
[[nodiscard]] double own_inertia(const layout::Layout& l, const DoorMass& m);

/// V, T, N of masses at rest, N.
struct Couples { double V = 0, T = 0, N = 0; };
[[nodiscard]] Couples at_rest(const layout::Door& d, const std::vector<DoorMass>& masses);

/// Moments of masses, kg mm; with or without the bare door.
struct FirstMoments { double kg = 0, kg_y = 0, kg_e = 0; };
[[nodiscard]] FirstMoments moments(const layout::Door& d, const std::vector<DoorMass>& masses);
[[nodiscard]] FirstMoments added(const layout::Door& d, const std::vector<DoorMass>& masses);

/// Rows of the evidence rule that the case names, over closed and open door.
[[nodiscard]] std::vector<results::Check> evidence_rows(const layout::Layout& l, const std::vector<HingeStatics>& statics, double mass_tolerance);
/// Rows that carry a force and are not covered, not required.
[[nodiscard]] std::vector<results::Check> force_only_rows(const layout::Layout& l, const std::vector<HingeStatics>& statics);
/// A row of group door with what all of them share.
[[nodiscard]] results::Check door_row(const std::string& id, const std::string& title);
/// The row without a verdict, with the reason and the key that lifts it.
[[nodiscard]] results::Check not_covered(results::Check c, const std::string& note, const std::string& lift_with);

} // namespace thinskin::statics
