// Which row stands for a case: what fails first, and of rows that differ by rounding only the one named first.
#include "checks/checks.h"
#include "checks/rows.h"

#include <cmath>
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

TEST_CASE("The worst of one clause over the load cases is the worst of its rows written out, word for word")
{
    const checks::Place place{"bending/rail", "reinforcement", "rail", "bending of the rail", false, "reinforcement.angles", "a note"};
    base::Card card;
    card.id = "XX-1", card.rule = "a rule", card.unit = "N";
    const std::vector<checks::Demand> demands{{"parked", 3, true, ""}, {"pothole", 7, true, ""}, {"braking", 9, false, "it tilts"}, {"slam", std::nan(""), true, ""}, {"rebound", 7, true, ""}, {"cornering", 30, false, "it tilts"}};
    for (const base::Resistance& r : {base::covered(10, 1), base::covered(5, 1), base::not_covered("thinner than the clause knows"), base::covered(0, 1), base::Resistance{true, 1, 1, std::nan(""), ""}})
        for (unsigned chosen = 1; chosen < 1U << demands.size(); ++chosen) {
            std::vector<checks::Demand> some;
            std::vector<results::Check> rows;
            for (std::size_t k = 0; k < demands.size(); ++k)
                if (chosen >> k & 1U) some.push_back(demands[k]), rows.push_back(checks::against(place, demands[k], r, card, {{"t", 0.8}}));
            const results::Check a = checks::worst_against(place, some, r, card, {{"t", 0.8}}), b = checks::worst(rows);
            CAPTURE(chosen);
            CHECK((a.load_case == b.load_case && a.status == b.status && a.note == b.note && a.unit == b.unit && a.inputs == b.inputs));
            CHECK((a.id == b.id && a.group == b.group && a.part == b.part && a.title == b.title && a.lift_with == b.lift_with && a.formula == b.formula && a.rule == b.rule && a.label == b.label));
            CHECK((a.capacity == b.capacity || (std::isnan(a.capacity) && std::isnan(b.capacity))));
            CHECK((a.demand == b.demand || (std::isnan(a.demand) && std::isnan(b.demand))));
            REQUIRE(a.by_linear.has_value() == b.by_linear.has_value());
            if (a.by_linear) CHECK((a.by_linear->demand == b.by_linear->demand && a.by_linear->load_case == b.by_linear->load_case));
        }
    CHECK(checks::worst_against(place, {}, base::covered(10, 1), card, {}).status == base::Status::not_covered);
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
