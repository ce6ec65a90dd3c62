#pragma once
#include "fem/factor.h"
#include "fem/pressed_sheet.h"

namespace thinskin::fem {

/// The largest eigenvalue mu of -K_g x = mu K x for each of several force fields, K given by its factor (theory FE-16): Lanczos iteration on
/// G^-1 (-K_g) G^-T with full reorthogonalisation. They run side by side so that the factor is read once for all; each gives the same whatever
/// stands beside it but for rounding. 0: nothing is pressed; NaN: not converged, or a figure that is none.
[[nodiscard]] std::vector<double> largest_eigenvalues(const Factor& f, const PressedSheet& sheet, const std::vector<ForceField>& fields);

} // namespace thinskin::fem
