#include "actions/load_cases.h"
#include "catalogue/sections.h"
#include "layout/layout.h"
#include "search/bounds.h"
#include "search/choices.h"
#include "strength/bearing.h"
#include "support/cases.h"
#include "support/near.h"

// What discards a scheme unsolved must lie on the safe side of every solution.
using namespace thinskin;
using namespace thinskin::search;

namespace {

struct Bounded { std::optional<double> bolts, door; };

Bounded bounded(const model::Case& c)
{
    const layout::Result r = layout::resolve(c);
    REQUIRE(r.layout);
    const auto cases = actions::load_cases(*r.layout).cases;
    return {bolts_bound(*r.layout, whole_demands(*r.layout, cases), strongest_bolt(*r.layout)), door_margin(*r.layout, cases)};
}

} // namespace

TEST_SUITE_BEGIN("propose: bounds");

TEST_CASE("no shipped case on brackets has a larger margin than its closed bounds")
{
    int bracketed = 0;
    for (const std::string name : {"condenser_door", "condenser_door_made_good", "tank_under_window", "ladder_rack_no_straps"}) {
        CAPTURE(name);
        const model::Case c = tests::read_case(tests::edited_text(name));
        const results::Outcome& o = tests::check_case(name, {}, pipeline::Depth::forces);
        REQUIRE(o.governing);
        const Bounded b = bounded(c);
        bracketed += b.bolts ? 1 : 0;
        if (b.bolts) CHECK(o.governing->margin() <= *b.bolts);
        if (b.door) CHECK(o.governing->margin() <= *b.door);
    }
    CHECK(bracketed == 4);
}

TEST_CASE("the bound by shear is what the bearing clause gives for the whole force on one bolt of each bracket")
{
    const model::Case c = tests::read_case(tests::edited_text("condenser_door"));
    const layout::Result r = layout::resolve(c);
    REQUIRE(r.layout);
    const double one = strength::bolt_bearing_deformation({8, 0.76, r.layout->skin.material.strength(0.76).fu}).capacity;
    CHECK(strongest_bolt(*r.layout).shear == doctest::Approx(one));
    const std::vector<WholeDemand> demands{{.shear_N = 3 * one}};
    tests::check_near_rel(*bolts_bound(*r.layout, demands, {1e9, one}) + 1, 2 / (3 * bound_slack), 1e-12); // two brackets, one bolt a row
}

TEST_CASE("a bound says nothing where a strap or a fitted bolt could take the force another way")
{
    CHECK_FALSE(bounded(tests::read_case(tests::edited_text("ladder_rack"))).bolts.has_value());
    CHECK_FALSE(bounded(tests::read_case(tests::edited_text("condenser_door", {{"fit: clearance", "fit: fitted"}}))).bolts.has_value());
}

TEST_CASE("halving what one bolt bears never raises the bound, and the bound falls with the load")
{
    const model::Case c = tests::read_case(tests::edited_text("condenser_door"));
    const layout::Result r = layout::resolve(c);
    REQUIRE(r.layout);
    double before = INFINITY;
    for (double capacity : {4000.0, 2000.0, 1000.0, 500.0}) {
        const std::vector<WholeDemand> demands{{.shear_N = 900, .pull_N = 200, .about_foot_Nmm = 2e5}};
        const double bound = *bolts_bound(*r.layout, demands, {capacity, capacity});
        CHECK(bound < before);
        before = bound;
    }
}

TEST_CASE("bolt lines clear root fillet and toe with the washers they leave room for")
{
    for (const char* section : {"angle 40x40x4", "angle 50x50x5", "angle 60x40x5"})
        for (double room : {18.0, 24.0}) {
            CAPTURE(section);
            const double g = gauge_for(section, room, 0);
            const auto read = catalogue::read_section(section);
            REQUIRE(read.ok);
            CHECK(g - room / 2 > read.section.t);
            CHECK(g + room / 2 <= read.section.b);
            CHECK(g == std::floor(g));
        }
    CHECK(std::isnan(gauge_for("angel 40x40x4", 18, 0)));
}

TEST_SUITE_END();
