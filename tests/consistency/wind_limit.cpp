// The wind that may not be exceeded: never more than what a row stands, whatever way it bends with the load.
#include "pipeline/wind_limit.h"
#include "support/near.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>

namespace {

using namespace thinskin;
using pipeline::share_of_load;

TEST_SUITE_BEGIN("wind limit");

TEST_CASE("share of a load: at or below the true one for forces that add as vectors, at every angle")
{
    for (double weight = 0.05; weight < 1; weight += 0.1)
        for (double wind = 0.05; wind < 4; wind += 0.15)
            for (double angle = 0; angle <= 3.1; angle += 0.3) {
                const auto used = [&](double s) { return std::hypot(weight + s * wind * std::cos(angle), s * wind * std::sin(angle)); };
                const double s = share_of_load(used(0), used(1));
                REQUIRE(std::isfinite(s));
                CAPTURE(weight);
                CAPTURE(wind);
                CAPTURE(angle);
                CHECK(used(s) <= 1 + 1e-12);
            }
}

TEST_CASE("share of a load: plain sums are met, and what is no number stays none")
{
    tests::check_near_rel(share_of_load(0.4, 1.6), 0.5, 1e-12); // 0.4 + s 1.2 = 1
    CHECK(share_of_load(0.4, 1.0) == 1);
    CHECK(share_of_load(1.2, 1.6) == 0);
    CHECK(share_of_load(0.4, 0.7) > 1);
    CHECK(share_of_load(0.4, 0.7) <= 2); // the plain sum would stand twice the load
    CHECK(std::isinf(share_of_load(0.4, 0.4)));
    CHECK(std::isnan(share_of_load(std::nan(""), 0.4)));
    CHECK(std::isnan(share_of_load(0.4, std::nan(""))));
    CHECK(share_of_load(std::numeric_limits<double>::infinity(), 2) == 0); // no figure in 1 g alone
}

TEST_SUITE_END();

} // namespace
