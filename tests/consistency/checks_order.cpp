// Which row stands for a case: what fails first, and of rows that differ by rounding only the one named first.
#include "checks/checks.h"
#include "checks/rows.h"

#include <doctest/doctest.h>

using namespace thinskin;

TEST_SUITE_BEGIN("consistency: order of rows");

namespace {

results::Check row(const std::string& part, double demand, double capacity)
{
    results::Check c;
    c.id = c.part = part;
    c.group = "fixing";
    c.demand = demand;
    c.capacity = capacity;
    c.status = demand <= capacity ? base::Status::pass : base::Status::fail;
    return c;
}

std::string first_of(std::vector<results::Check> rows)
{
    checks::sort_rows(rows);
    const auto governing = checks::governing(rows);
    REQUIRE(governing);
    CHECK(governing->part == rows.front().part);
    CHECK(checks::groups(rows).front().part == rows.front().part);
    return governing->part;
}

} // namespace

TEST_CASE("Mirror images keep their order whichever way rounding went, tightly used or hardly")
{
    for (const double use : {0.98, 0.5, 1e-3, 1e-5})
        for (const double rounding : {-3e-11, 0.0, 3e-11}) {
            CAPTURE(use);
            CHECK(first_of({row("left", use, 1), row("right", use * (1 + rounding), 1)}) == "left");
            CHECK(checks::worst({row("left", use, 1), row("right", use * (1 + rounding), 1)}).part == "left");
        }
    CHECK(first_of({row("left", 0.5, 1), row("right", 0.5 + 1e-6, 1)}) == "right");
    CHECK(checks::worst({row("left", 0.5, 1), row("right", 0.5 + 1e-6, 1)}).part == "right");
}

TEST_CASE("What fails by a hair goes before what passes by one")
{
    const results::Check passes = row("passes", 1 - 1e-10, 1), fails = row("fails", 1 + 1e-10, 1);
    CHECK(first_of({passes, fails}) == "fails");
    CHECK(first_of({fails, passes}) == "fails");
    CHECK(checks::worst({passes, fails}).part == "fails");
}

TEST_CASE("No demand and no figures come last")
{
    results::Check none = row("none", 1, 1);
    none.status = base::Status::not_covered;
    std::vector<results::Check> rows{none, row("idle", 0, 5), row("used", 1, 5)};
    checks::sort_rows(rows);
    CHECK(rows[0].part == "used");
    CHECK(rows[1].part == "idle");
    CHECK(rows[2].part == "none");
}

TEST_SUITE_END();
