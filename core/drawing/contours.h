#pragma once
#include "drawing/primitives.h"
#include "results/results.h"

#include <vector>

namespace thinskin::drawing {

/// Part of the skin that moved by between `level` and `level` + step: a convex polygon in the elevation's mm.
struct Patch { int band = 0; std::vector<Point> points; };   ///< band k: from k * step to (k + 1) * step

/// Where the movement is exactly `band` * step.
struct ContourLine { int band = 0; Point a, b; };

struct Peak { Point at; double w_mm = 0; };

/// The deflected skin as bands of equal movement out of the panel (+ outward), 0 always being a limit between two bands.
/// step: 1, 2 or 5 times a power of ten of the unit, so that there are at most `most` bands between the smallest and the largest movement.
struct Contours {
    double step_mm = 0;                  ///< 0: nothing moved, no bands
    int first = 0, last = 0;             ///< bands that occur
    std::vector<Patch> patches;
    std::vector<ContourLine> lines;
    Peak outward, inward;                ///< largest and smallest movement
};

/// Between the field's points the movement is taken as linear over triangles. Cells with a NaN (openings) stay empty.
/// Errors: a field whose sizes do not fit together, or without any movement, gives no bands.
[[nodiscard]] Contours contours(const results::SkinField& field, int most = 10, double unit_mm = 1);

} // namespace thinskin::drawing
