#pragma once
#include <cmath>

namespace thinskin::base {

/// Whether x stands in for the largest so far: it is larger, or it is no figure; one that is none stays to the end, whatever comes after it.
[[nodiscard]] inline bool takes_over(double x, double so_far) { return !std::isnan(so_far) && !(x <= so_far); }

inline void keep_largest(double& so_far, double x)
{
    if (takes_over(x, so_far)) so_far = x;
}

/// std::max() may drop what is no figure.
[[nodiscard]] inline double larger(double a, double b) { return takes_over(b, a) ? b : a; }

} // namespace thinskin::base
