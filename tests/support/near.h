#pragma once
#include "support/coverage.h"

#include <cmath>
#include <doctest/doctest.h>

namespace thinskin::tests {

/// Relative comparison with a tolerance that the caller states and justifies.
inline void check_near_rel(double got, double want, double rel)
{
    INFO("got ", got, ", want ", want, ", relative error ", (got - want) / want, ", allowed ", rel);
    count_value();
    CHECK(std::abs(got - want) <= rel * std::abs(want));
}

/// Absolute comparison, for wanted values of zero.
inline void check_near_abs(double got, double want, double tolerance)
{
    INFO("got ", got, ", want ", want, ", difference ", got - want, ", allowed ", tolerance);
    count_value();
    CHECK(std::abs(got - want) <= tolerance);
}

} // namespace thinskin::tests
