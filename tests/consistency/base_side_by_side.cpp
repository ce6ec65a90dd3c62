#include "base/side_by_side.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <numeric>
#include <optional>
#include <stdexcept>

// One answer whoever works on it.
using namespace thinskin;

TEST_SUITE_BEGIN("consistency: side by side");

TEST_CASE("Side by side: in order, the same with every core taken as with all of them idle; what is thrown comes out")
{
    std::vector<int> wanted(50);
    std::iota(wanted.begin(), wanted.end(), 0);
    const auto itself = [](std::size_t i) { return static_cast<int>(i); };
    CHECK(base::side_by_side(50, itself) == wanted);
    CHECK(base::side_by_side(0, itself).empty());
    std::vector<std::optional<base::AtWork>> all(std::thread::hardware_concurrency() + 3);
    for (auto& one : all) one.emplace();
    CHECK(base::AtWork::idle_cores() == 0);
    CHECK(base::side_by_side(50, itself) == wanted);
    all.clear();
    CHECK(base::AtWork::idle_cores() + 1 == std::max(1U, std::thread::hardware_concurrency()));
    const auto throws = [](std::size_t i) { return i == 7 ? throw std::runtime_error("seven") : static_cast<int>(i); };
    CHECK_THROWS_WITH_AS((void)base::side_by_side(50, throws), "seven", std::runtime_error);
}

TEST_SUITE_END();
