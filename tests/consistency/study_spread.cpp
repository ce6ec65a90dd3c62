#include "studies/spread.h"

#include "report/json.h"
#include "report/record_parts.h"
#include "report/spread.h"
#include "support/cases.h"
#include "support/near.h"

#include <cmath>
#include <set>

// The spread over assumptions: every part of every range is used once, the same figures every time, and more of what helps helps.
using namespace thinskin;

TEST_SUITE_BEGIN("spread");

TEST_CASE("a Latin hypercube uses each part of each range once, and the same seed gives the same places")
{
    const auto a = studies::latin_hypercube(40, 5, 7), b = studies::latin_hypercube(40, 5, 7), other = studies::latin_hypercube(40, 5, 8);
    CHECK(a == b);
    CHECK(a != other);
    for (std::size_t i = 0; i < 5; ++i) {
        std::set<int> parts;
        for (const auto& u : a) parts.insert(static_cast<int>(std::floor(u[i] * 40)));
        CHECK(parts.size() == 40);
        CHECK(*parts.begin() == 0);
        CHECK(*parts.rbegin() == 39);
    }
}

TEST_CASE("quantiles lie between the values, correlations between -1 and 1, and nothing correlates with what does not vary")
{
    CHECK(studies::quantile({3, 1, 2}, 0) == 1);
    CHECK(studies::quantile({3, 1, 2}, 1) == 3);
    CHECK(studies::quantile({3, 1, 2}, 0.75) == 2.5);
    CHECK(studies::rank_correlation({1, 2, 3}, {10, 20, 90}) == doctest::Approx(1));
    CHECK(studies::rank_correlation({1, 2, 3}, {9, 2, -5}) == doctest::Approx(-1));
    CHECK(studies::rank_correlation({1, 2, 3}, {4, 4, 4}) == 0);
}

TEST_CASE("the plain panel over its ranges: the same figures twice, and a thicker skin has more margin")
{
    model::Case c = tests::read_case(tests::edited_text("plain_panel"));
    c.grid = model::GridSize::quick;
    pipeline::Workspace w, cold;
    const results::Spread a = studies::spread(c, 0, w, {.samples = 16}), b = studies::spread(c, 0, cold, {.samples = 16});
    CHECK(a.samples == 16);
    CHECK(a.pass + a.fail + a.not_covered + a.not_solved == 16);
    CHECK(report::with_spread("{}", a) == report::with_spread("{}", b));
    for (std::size_t i = 1; i < a.quantiles.size(); ++i) CHECK(a.quantiles[i].margin >= a.quantiles[i - 1].margin);
    const auto skin = std::find_if(a.inputs.begin(), a.inputs.end(), [](const results::SpreadInput& i) { return i.what == "thickness of the skin"; });
    REQUIRE(skin != a.inputs.end());
    CHECK(skin->rank_correlation > 0);
    for (std::size_t i = 1; i < a.inputs.size(); ++i) CHECK(std::abs(a.inputs[i].rank_correlation) <= std::abs(a.inputs[i - 1].rank_correlation));
}

TEST_CASE("the record carries the spread as sensitivity figures, or says that it was not run")
{
    results::Spread s;
    s.samples = 20, s.pass = 18, s.fail = 2;
    s.headline = "Spread: 18 of 20 runs pass.";
    s.quantiles = {{0.05, -0.02}, {0.5, 0.31}};
    s.inputs = {{"thickness of the skin", "-10 % .. +10 %", 0.87}};
    const std::string run = report::record_spread(&s), not_run = report::record_spread(nullptr);
    for (const char* part : {"18 of 20 runs pass", "-0.02", "+0.31", "thickness of the skin", "+0.87", "engineering judgement"}) CHECK(run.find(part) != std::string::npos);
    CHECK(not_run.find("Not run") != std::string::npos);
    CHECK(not_run.find("<table") == std::string::npos);
}

TEST_SUITE_END();
