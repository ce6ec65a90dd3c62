#pragma once
#include "strength/clause.h"

/// Blind rivets and threaded inserts in steel sheet. All of it is judgement: the rule set has no clause for either.
namespace thinskin::strength {

/// RV-1, in N: shear of the rivet itself, least strength of its product standard / 3.00.
struct RivetShear { double Fv_min_N; };
[[nodiscard]] base::Resistance rivet_shear(const RivetShear& in);
[[nodiscard]] const base::Card& rivet_shear_card();
template <> const Clause<RivetShear>& clause<RivetShear>();

/// RV-2, in N: tension of the rivet itself (in thick plates, NOT pull-through of a skin: RV-3), least strength / 3.00.
struct RivetTension { double Ft_min_N; };
[[nodiscard]] base::Resistance rivet_tension(const RivetTension& in);
[[nodiscard]] const base::Card& rivet_tension_card();
template <> const Clause<RivetTension>& clause<RivetTension>();

/// RV-3, in N: pull-through of a rivet's head: PO-1's 1.5 t1 dh Fu1 from 7.94 mm of head on (19.1 mm count at most),
/// 1.0 t1 dh Fu1 under a smaller head; factor 3.00. The step at 7.94 mm is the rule's.
struct RivetPullThrough { double t1_mm, Fu1_MPa, dh_mm; };
[[nodiscard]] base::Resistance rivet_pull_through(const RivetPullThrough& in);
[[nodiscard]] const base::Card& rivet_pull_through_card();
template <> const Clause<RivetPullThrough>& clause<RivetPullThrough>();

/// RV-4, in N: bearing of the sheets: F = alpha Fu d t, at most Fu e1 t/1.2; factor 3.00.
///   t the thinner, t1 the thicker sheet:  t1 = t: alpha = 3.6 (t/d)^0.5 <= 2.1;  t1 >= 2.5 t: 2.1;  between: straight
/// Source: form of EN 1993-1-3 Table 8.1 (from memory); the factor under this rule set is judgement.
struct RivetBearing { double d_mm, t_mm, t1_mm, Fu_MPa, e1_mm; };
[[nodiscard]] base::Resistance rivet_bearing(const RivetBearing& in);
[[nodiscard]] const base::Card& rivet_bearing_card();
template <> const Clause<RivetBearing>& clause<RivetBearing>();

/// IN-1, in N: bound for pulling an insert out of a skin: least of 0.6 pi df t Fu, 1.0 df t Fu, 0.6 pi dhole t Fu; factor 3.00.
///   df diameter of the circle that bears on the skin: flange, or collapsed bulb when pulled away from the flange;
///   not known: the hole's diameter.  A bound for the skin only: the insert itself may be weaker.
struct InsertSkinBound { double df_mm, dhole_mm, t_mm, Fu_MPa; };
[[nodiscard]] base::Resistance insert_skin_bound(const InsertSkinBound& in);
[[nodiscard]] const base::Card& insert_skin_bound_card();
template <> const Clause<InsertSkinBound>& clause<InsertSkinBound>();

/// IN-2, in N: maker's or tested ultimate for this sheet, hole and direction of force / 3.00. No value (0, NaN): not covered.
struct InsertTested { double F_N; };
[[nodiscard]] base::Resistance insert_tested(const InsertTested& in);
[[nodiscard]] const base::Card& insert_tested_card();
template <> const Clause<InsertTested>& clause<InsertTested>();

} // namespace thinskin::strength
