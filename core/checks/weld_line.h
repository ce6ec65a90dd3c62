#pragma once
#include "results/results.h"

#include <cmath>

namespace thinskin::checks {

/// Two fillets of `length` beside the smaller leg, treated as lines: shear F/(2L), bending M/(L^2/3), N/mm. All components of force
/// and moment are taken as resultants, on the safe side.
[[nodiscard]] inline double weld_line_demand(const results::JointForce& j, double length)
{
    const auto norm = [](const results::Vec3& v) { return std::hypot(v[0], v[1], v[2]); };
    return norm(j.force_N) / (2 * length) + norm(j.moment_Nm) * 1000 / (length * length / 3);
}

} // namespace thinskin::checks
