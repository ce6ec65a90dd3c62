#pragma once
#include "fem/hermite.h"

#include <Eigen/Dense>

namespace thinskin::fem {

/// Slopes of the sixteen bicubic functions of an element at a point, 1/mm, in the element's order of unknowns.
struct SheetSlopes { Eigen::Matrix<double, 16, 1> dx, dy; };

/// x, y: the cubic functions along the element's two sides at that point.
[[nodiscard]] inline SheetSlopes sheet_slopes(const Hermite& x, const Hermite& y)
{
    SheetSlopes s;
    for (std::size_t e = 0; e < 16; ++e) {
        const std::size_t a = 2 * (e / 4 % 2) + e % 2, b = 2 * (e / 8) + e % 4 / 2;
        s.dx(static_cast<Eigen::Index>(e)) = x.slope[a] * y.value[b];
        s.dy(static_cast<Eigen::Index>(e)) = x.value[a] * y.slope[b];
    }
    return s;
}

} // namespace thinskin::fem
