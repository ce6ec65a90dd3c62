#pragma once
#include "strength/clause.h"

/// The skin beside the rounded corners of an opening.
namespace thinskin::strength {

/// SK-2, in MPa: von Mises stress of the sheet beside a corner against Fy/(1.67 Kt), Kt of a rectangular hole with round corners in a wide
/// sheet pulled across its longer side; b, a: half of its shorter and of its longer side, r: corner radius.
///   range   r/b 0.2 to 1, b/a 0.3 to 1
///   source  curve fit of the handbook chart as a web page prints it (second-hand); that it bounds bending and shear too is judgement
struct OpeningCorner { double Fy_MPa, r_mm, b_mm, a_mm; };
/// Kt of that corner; the ratios must lie in the range.
[[nodiscard]] double opening_corner_factor(double r_b, double b_a);
[[nodiscard]] base::Resistance opening_corner(const OpeningCorner& in);
[[nodiscard]] const base::Card& opening_corner_card();
template <> const Clause<OpeningCorner>& clause<OpeningCorner>();

} // namespace thinskin::strength
