#pragma once
#include "fem/factor.h"
#include "fem/skin_elements.h"

namespace thinskin::fem {

/// One element's geometric matrix and the places of its unknowns in the factor (-1: supported).
struct PressedElement { std::array<int, 16> place{}; Matrix16 K; };

/// The largest eigenvalue mu of -K_g x = mu K x for each of several K_g, K given by its factor (theory FE-16): Lanczos iteration on
/// G^-1 (-K_g) G^-T with full reorthogonalisation. They run side by side so that the factor is read once for all; each gives the same whatever
/// stands beside it but for rounding. 0: nothing is pressed; NaN: not converged, or a figure that is none.
[[nodiscard]] std::vector<double> largest_eigenvalues(const Factor& f, const std::vector<std::vector<PressedElement>>& geometric);

} // namespace thinskin::fem
