#pragma once
#include "catalogue/sections.h"

#include <vector>

/// Inside the catalogue: section properties as sums over simple areas.
namespace thinskin::catalogue {

/// An area with its centroid and its second moments about its own centroid; negative = cut away.
struct Patch { double A, x, y, I_x, I_y, I_xy; };

/// Lower left corner, extent along x and y.
[[nodiscard]] Patch rectangle(double x, double y, double width, double height);

/// What a fillet of radius r adds in a corner at (x, y), or a rounding takes away: square less quarter circle.
/// away = +1: it lies at greater x and y than the corner; -1: at smaller x and y.
[[nodiscard]] Patch fillet(double x, double y, double r, double away);

[[nodiscard]] Patch without(Patch p);

/// Sets A, centroid, second moments, principal axes, section moduli, radius of gyration. Needs h and width.
void set_areas(Section& s, const std::vector<Patch>& patches);

} // namespace thinskin::catalogue
