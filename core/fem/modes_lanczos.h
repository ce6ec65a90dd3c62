#pragma once
#include "fem/modes_system.h"

/// Internal to core/fem: Lanczos iteration on the shifted inverse, in the inner product of the mass (theory FE-24).
namespace thinskin::fem {

/// Modes found so far; nu = 1 / (omega^2 + s), vectors with x^T M x = 1.
struct Found { std::vector<double> nu; std::vector<Vector> x; };

/// The `count` largest nu beside those of `found`, which take no part; fewer where no more have mass. A repeated nu comes once: the
/// caller asks again until nothing new comes. `tolerance`: residual over nu. One solution and one product with the mass a step, every
/// vector kept orthogonal to all before, no restart. False: not there after ten steps for each and 100 more.
[[nodiscard]] bool search(const ModesSystem& system, int count, std::uint32_t seed, double tolerance, Found& found);

} // namespace thinskin::fem
