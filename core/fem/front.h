#pragma once
#include "fem/types.h"

/// Internal to core/fem: the dense work of one supernode.
namespace thinskin::fem {

inline constexpr int few_columns = 4;   ///< worked on at once
using Front = Eigen::Map<Matrix>;        ///< square, column after column; the lower triangle counts, above it stands anything

/// Rows below the square L of columns first..last-1: X <- X L^-T.
void solve_below(Front& front, Eigen::Index first, Eigen::Index last);
/// Lower triangle of columns last..end-1: C -= A A^T, A the columns first..last-1 from row `last` on.
void take_panel(Front& front, Eigen::Index first, Eigen::Index last, Eigen::Index end);

} // namespace thinskin::fem
