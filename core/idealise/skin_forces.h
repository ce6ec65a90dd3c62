#pragma once
#include "idealise/response.h"

namespace thinskin::idealise {

/// What acts on the skin in one state: what parts put on it (nothing is read under those), and with the case's own forces and masses.
struct OnSkin { std::vector<fem::LocalForce> parts, all; };
[[nodiscard]] OnSkin forces_on_skin(const Structure& s, const Run& run);
/// The pressure of the case itself in that state, MPa.
[[nodiscard]] double pressure_on_skin(const Structure& s, const Run& run);
/// Where a panel force acts; not spread: a point.
[[nodiscard]] fem::Footprint footprint(const model::PanelForce& f);

/// Stress that a grid of spacing h cannot show, beside a force whose footprint is smaller than h. Elastic theory of a force on a large sheet,
/// between the footprint's radius r (of the circle of its area) and h:
///   across the sheet  3 |F| (1 + nu) / (2 pi t^2) ln(h / r)     the logarithmic part of the bending stress under a force
///   in its plane      |F| (3 + nu) / (4 pi t) (1/r - 1/h)       the radial stress of a force in the plane of a sheet
/// Forces closer to one another than h are added, at the distance between them; the largest place counts.
///   units   N, mm, MPa
///   errors  infinite under a force on a point
///   source  closed forms of plate theory (docs/theory/idealise.md, ID-16)
[[nodiscard]] double hidden_stress(const Structure& s, const Run& run);

} // namespace thinskin::idealise
