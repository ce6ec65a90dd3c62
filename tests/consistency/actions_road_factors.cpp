// Three ways to the dynamic factor: one at a time, larger with what makes it larger, never from a missing figure.
#include "actions/road_factors.h"
#include "support/demo_layout.h"
#include "support/near.h"

#include <algorithm>
#include <cmath>
#include <limits>

using namespace thinskin;
using actions::RoadFactors;
using actions::road_factors;
using tests::check_near_rel;

namespace {

constexpr double km_h = 1e6 / 3600;

model::Quantity of(double value) { return {value, ""}; }

tests::Demo pulsed(const char* pulse, double f_Hz)
{
    tests::Demo d = tests::demo();
    d.source->road->basis = model::Basis::base_pulse;
    d.source->road->pulse = pulse;
    d.source->item->natural_frequency = of(f_Hz);
    return d;
}

tests::Demo shaken(const char* roughness, double f_Hz)
{
    tests::Demo d = tests::demo();
    model::Road& r = *d.source->road;
    r.basis = model::Basis::random_vibration;
    r.roughness = roughness;
    r.speed = of(60 * km_h);
    r.distance_per_year = of(15000e6);
    r.wheelbase = of(3300);
    r.overhang = of(1000);
    d.source->item->natural_frequency = of(f_Hz);
    return d;
}

double down(const tests::Demo& d) { return road_factors(d.layout, {}).down; }

} // namespace

TEST_SUITE_BEGIN("actions");

TEST_CASE("a quasi-static basis does not ask for a frequency and does not change with one")
{
    const tests::Demo d = tests::demo();
    CHECK(road_factors(d.layout, {}).down == road_factors(d.layout, 12.0).down);
    CHECK(road_factors(d.layout, {}).assumptions.empty());
}

TEST_CASE("rules for securing cargo stand beside the row: the program's rows ask for no less, and a row of the case's own that does is told so")
{
    tests::Demo d = tests::demo();
    for (const char* row : {"sealed", "unsealed", "track"}) {
        d.source->road->surface = row;
        CHECK_FALSE(road_factors(d.layout, {}).beside_securing.empty());
        CHECK(road_factors(d.layout, {}).cautions.empty());
    }
    model::OwnRoad own;
    own.name = "gentle";
    own.down = of(2.5);
    own.up = own.fore_aft = of(0.5);
    own.lateral = of(0.3);
    d.source->own.roads.push_back(own);
    d.source->road->surface = "gentle";
    const RoadFactors f = road_factors(d.layout, {});
    CHECK(f.beside_securing.empty());
    REQUIRE(f.cautions.size() == 1);
    CHECK(f.cautions[0].find("1 g along") != std::string::npos);
    CHECK(f.cautions[0].find("0.7 g across") != std::string::npos);
    CHECK(f.fore_aft == 0.5); // said, not changed: the figures are the case's
}

TEST_CASE("base pulse: both senses of each axis, weight with the vertical, road row in the combined states")
{
    const tests::Demo d = pulsed("half-sine 15 g", 30);
    const RoadFactors f = road_factors(d.layout, {});
    REQUIRE(f.problem.reason.empty());
    CHECK(f.down - f.up == doctest::Approx(2).epsilon(1e-12));
    CHECK(f.lateral == f.down - 1);
    CHECK(f.fore_aft == f.down - 1);
    CHECK(f.mixed_lateral == 0.7);
    const auto all = actions::load_cases(d.layout);
    CHECK(std::count_if(all.cases.begin(), all.cases.end(), [](const results::LoadCase& c) { return c.name.starts_with("combined"); }) == 4);
    CHECK_FALSE(all.assumptions.empty()); // damping
    CHECK_FALSE(all.cautions.empty());
    CHECK(actions::dynamic_factor(d.layout).value == f.down);
}

TEST_CASE("base pulse: a stiffer mount answers less beyond the worst duration, and a solver's bound counts by half")
{
    CHECK(down(pulsed("half-sine 15 g", 400)) < down(pulsed("half-sine 15 g", 100)));
    tests::Demo d = pulsed("half-sine 15 g", 1);
    d.source->item->natural_frequency.reset();
    check_near_rel(road_factors(d.layout, 200.0).down, down(pulsed("half-sine 15 g", 100 / 0.85)), 1e-9);
    CHECK_FALSE(road_factors(pulsed("half-sine 15 g", 1e5).layout, {}).problem.reason.empty()); // f D beyond the rule
}

TEST_CASE("random vibration: rougher, faster, farther behind, more kilometres, less damping give more; a laden van less")
{
    const tests::Demo d = shaken("C", 20);
    const double at_first = down(d);
    REQUIRE(at_first > 1);
    CHECK(down(shaken("D", 20)) - 1 == doctest::Approx(2 * (at_first - 1)).epsilon(1e-9)); // a class doubles
    const auto changed = [&](const auto& change) {
        tests::Demo other = shaken("C", 20);
        change(*other.source->road);
        return down(other);
    };
    CHECK(changed([](model::Road& r) { r.speed = of(90 * km_h); }) > at_first);
    CHECK(changed([](model::Road& r) { r.overhang = of(1400); }) > at_first);
    CHECK(changed([](model::Road& r) { r.distance_per_year = of(60000e6); }) > at_first);
    CHECK(changed([](model::Road& r) { r.damping = of(0.02); }) > at_first);
    CHECK(changed([](model::Road& r) { r.load = model::VehicleLoad::laden; }) < at_first);
    CHECK(down(shaken("C", 9)) > at_first); // towards wheel hop
}

TEST_CASE("what repeats: all mounts that count, the one of the factor among them; the other two ways have no spectrum")
{
    const tests::Demo d = shaken("C", 20);
    const results::Shaking s = actions::load_cases(d.layout).shaking;
    REQUIRE(s.why_not.empty());
    REQUIRE(s.answers.size() > 10);
    double most = 0;
    for (const results::Answer& a : s.answers) {
        CHECK(a.f_Hz >= 0.85 * 20 * (1 - 1e-12));
        most = std::max(most, a.rms_g);
    }
    const double a = down(d) - 1; // k rms
    CHECK(a / most > 4);
    CHECK(a / most < 6.5);
    check_near_rel(s.wanted_mm, 10 * s.distance_per_year_mm, 1e-12);
    for (const results::Shaking& none : {actions::load_cases(pulsed("half-sine 15 g", 20).layout).shaking, actions::load_cases(tests::demo().layout).shaking}) {
        CHECK_FALSE(none.why_not.empty());
        CHECK(none.lift_with == "road.basis: random_vibration");
    }
}

TEST_CASE("random vibration: without overhang and damping both are assumptions, and a smooth road is cautioned about")
{
    tests::Demo d = shaken("A", 40);
    d.source->road->overhang.reset();
    const RoadFactors f = road_factors(d.layout, {});
    CHECK(f.assumptions.size() == 4); // quarter car, overhang, damping, kilometres to last
    CHECK(std::any_of(f.cautions.begin(), f.cautions.end(), [](const std::string& c) { return c.find("less than the 3 g of the road row") != std::string::npos; }));
    CHECK(f.lateral == 0.7);
}

TEST_CASE("random vibration by a density: the worst mount at or above the frequency counts, so a notch does not help")
{
    tests::Demo d = shaken("", 20);
    for (const auto& [f, P] : {std::pair{2.0, 0.02}, {15.0, 0.02}, {18.0, 0.0005}, {22.0, 0.0005}, {26.0, 0.02}, {60.0, 0.02}, {200.0, 0.0005}}) d.source->road->density.push_back({of(f), of(P), {}});
    const double in_notch = down(d);
    d.source->item->natural_frequency = of(40 / 0.85);
    CHECK(in_notch >= down(d));
    CHECK(road_factors(d.layout, {}).derivation.find("Miles beside it, not used") != std::string::npos);
    d.source->item->natural_frequency = of(2);
    CHECK(road_factors(d.layout, {}).problem.lift_with == "road.density"); // 1.7 Hz lies below the table
    d.source->road->density[3].at = of(5);
    d.source->item->natural_frequency = of(20);
    CHECK_FALSE(road_factors(d.layout, {}).problem.reason.empty()); // frequencies do not grow
}

TEST_CASE("what is missing or is not a number leaves the driving cases out, with the key that lifts it")
{
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    const auto lift = [](const auto& change) {
        tests::Demo d = shaken("C", 20);
        change(*d.source);
        const RoadFactors f = road_factors(d.layout, {});
        CHECK_FALSE(f.problem.reason.empty());
        CHECK(f.down == 0);
        CHECK(actions::load_cases(d.layout).cases.front().name == actions::name_parked);
        return f.problem.lift_with;
    };
    CHECK(lift([](model::Case& c) { c.road->roughness.clear(); }) == "road.roughness");
    CHECK(lift([](model::Case& c) { c.road->speed.reset(); }) == "road.speed");
    CHECK(lift([](model::Case& c) { c.road->distance_per_year.reset(); }) == "road.distance_per_year");
    CHECK(lift([](model::Case& c) { c.item->natural_frequency.reset(); }) == "item.natural_frequency");
    CHECK(lift([](model::Case& c) { c.item->natural_frequency = of(0.5); }) == "item.natural_frequency"); // below the model's band
    for (const double bad : {nan, -1.0, std::numeric_limits<double>::infinity()}) {
        CAPTURE(bad);
        CHECK_FALSE(lift([&](model::Case& c) { c.item->natural_frequency = of(bad); }).empty());
        CHECK_FALSE(lift([&](model::Case& c) { c.road->speed = of(bad); }).empty());
        CHECK_FALSE(lift([&](model::Case& c) { c.road->overhang = of(bad); }).empty());
        CHECK_FALSE(lift([&](model::Case& c) { c.road->damping = of(bad); }).empty());
        CHECK_FALSE(lift([&](model::Case& c) { c.road->distance_per_year = of(bad); }).empty());
    }
}

TEST_SUITE_END();
