#pragma once
#include "model/case.h"
#include "pipeline/analyse.h"

namespace thinskin::studies {

/// How far the grid of the skin is off: the case once more on the neighbouring grid, and Richardson's difference.
///     fine and normal: against the next coarser grid, error = |f - f_c| / ((h_c / h)^2 - 1)
///     quick: against the normal one, error = |f - f_n| (h / h_n)^2 / ((h / h_n)^2 - 1)
/// Second order is used throughout: what point forces and stresses have; a smooth deflection converges with the fourth.
/// Deflection and stress: the largest difference of any load case over the largest figure of all load cases. Governing demand: the
/// same check on the other grid. Fills Outcome::grid. Costs one more analysis (normal: about a third on top).
void add_grid_error(const model::Case& c, results::Outcome& outcome, std::stop_token stop = {});

} // namespace thinskin::studies
