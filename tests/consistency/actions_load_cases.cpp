#include "actions/axes.h"
#include "actions/cards.h"
#include "actions/load_cases.h"
#include "actions/slam.h"
#include "formulary_samples.h"
#include "support/demo_layout.h"
#include "support/near.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

using namespace thinskin;
using tests::check_near_abs;
using tests::check_near_rel;

namespace {

const results::LoadCase* find(const actions::LoadCases& all, const std::string& name)
{
    const auto at = std::find_if(all.cases.begin(), all.cases.end(), [&](const results::LoadCase& c) { return c.name == name; });
    return at == all.cases.end() ? nullptr : &*at;
}

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

} // namespace

TEST_SUITE_BEGIN("actions");

TEST_CASE("axis map: forward, left and up of the vehicle on the four faces")
{
    using model::Faces;
    struct Row { Faces faces; results::Vec3 forward, left, up; };
    // Seen from outside; x right, y up, z towards the viewer. Braking (masses forward) presses on a rear panel: -z.
    const Row table[] = {{Faces::rear, {0, 0, -1}, {-1, 0, 0}, {0, 1, 0}},
                         {Faces::front, {0, 0, 1}, {1, 0, 0}, {0, 1, 0}},
                         {Faces::left, {-1, 0, 0}, {0, 0, 1}, {0, 1, 0}},
                         {Faces::right, {1, 0, 0}, {0, 0, -1}, {0, 1, 0}}};
    for (const Row& r : table) {
        CAPTURE(static_cast<int>(r.faces));
        CHECK(actions::to_panel(r.faces, {1, 0, 0}) == r.forward);
        CHECK(actions::to_panel(r.faces, {0, 1, 0}) == r.left);
        CHECK(actions::to_panel(r.faces, {0, 0, 1}) == r.up);
    }
}

TEST_CASE("axis map: vehicle axes stay right-handed, so no face is a mirror image")
{
    for (const auto faces : {model::Faces::rear, model::Faces::front, model::Faces::left, model::Faces::right}) {
        const auto f = actions::to_panel(faces, {1, 0, 0}), l = actions::to_panel(faces, {0, 1, 0}), u = actions::to_panel(faces, {0, 0, 1});
        const results::Vec3 f_x_l{f[1] * l[2] - f[2] * l[1], f[2] * l[0] - f[0] * l[2], f[0] * l[1] - f[1] * l[0]};
        CHECK(f_x_l == u);
    }
}

TEST_CASE("panel words name the signs, a zero has no word")
{
    CHECK(actions::panel_words({-0.35, -3, 0.5}) == "down, out, left");
    CHECK(actions::panel_words({0.35, 1, -0.5}) == "up, in, right");
    CHECK(actions::panel_words({0, -1, 0}) == "down");
}

TEST_CASE("load cases of the demo: every state once, each with a source and a derivation")
{
    const tests::Demo d = tests::demo();
    const auto all = actions::load_cases(d.layout);
    CHECK(all.not_run.empty());
    CHECK(all.cases.size() == 7 + 4 + 2);
    std::set<std::string> names;
    for (const results::LoadCase& c : all.cases) {
        CAPTURE(c.name);
        CHECK(names.insert(c.name).second);
        CHECK_FALSE(c.source.empty());
        CHECK_FALSE(c.derivation.empty());
        CHECK_FALSE(c.applied_only);
    }
    CHECK(find(all, "braking")->acceleration_g == results::Vec3{0, -1, -1});
    CHECK(find(all, "accelerating")->acceleration_g == results::Vec3{0, -1, 1});
    CHECK(find(all, "cornering left")->acceleration_g == results::Vec3{0.7, -1, 0}); // masses to the vehicle's right = panel x of a rear panel
    CHECK(find(all, "cornering right")->acceleration_g == results::Vec3{-0.7, -1, 0});
    CHECK(find(all, "rebound")->acceleration_g == results::Vec3{0, 1, 0});
    CHECK(find(all, "combined: down, out, left")->acceleration_g == results::Vec3{-0.35, -3, 0.5});
}

TEST_CASE("combined states (AC-2) hold every pair of signs on every face and every surface")
{
    tests::Demo d = tests::demo();
    for (const char* surface : {"sealed", "unsealed", "track"})
        for (const auto faces : {model::Faces::rear, model::Faces::front, model::Faces::left, model::Faces::right}) {
            d.source->road->surface = surface;
            d.layout.faces = faces;
            std::set<std::pair<int, int>> signs;
            for (const results::LoadCase& c : actions::load_cases(d.layout).cases)
                if (c.name.rfind("combined", 0) == 0) signs.insert({c.acceleration_g[0] > 0 ? 1 : -1, c.acceleration_g[2] > 0 ? 1 : -1});
            CHECK(signs.size() == 4);
        }
}

TEST_CASE("a side panel feels cornering square to it and braking along it")
{
    tests::Demo d = tests::demo();
    d.layout.faces = model::Faces::left;
    const auto all = actions::load_cases(d.layout);
    CHECK(find(all, "cornering right")->acceleration_g == results::Vec3{0, -1, 0.7});
    CHECK(find(all, "braking")->acceleration_g == results::Vec3{-1, -1, 0});
}

TEST_CASE("slam: the outward sense is the rebound into the latch, a share of the inward one; the weight stays")
{
    const tests::Demo d = tests::demo();
    const auto all = actions::load_cases(d.layout);
    const auto in = find(all, actions::name_slam_inward)->acceleration_g, out = find(all, actions::name_slam_outward)->acceleration_g;
    CHECK(in[2] < 0);
    tests::check_near_rel(out[2], -0.3 * in[2], 1e-12);
    tests::check_near_rel(out[0], -0.3 * in[0], 1e-12);
    CHECK(in[1] == -1);
    CHECK(out[1] == -1);
    CHECK(find(all, actions::name_slam_inward)->door_closed);
    CHECK(find(all, actions::name_slam_outward)->door_closed);
}

TEST_CASE("slam: the acceleration is square to the line from the pin to the item, as a turning door makes it")
{
    for (const bool right : {true, false}) {
        tests::Demo d = tests::demo();
        d.layout.door->hinges_right = right;
        if (!right) d.layout.door->pin_x = -12;
        const auto a = find(actions::load_cases(d.layout), actions::name_slam_inward)->acceleration_g;
        const double rx = d.layout.item->centre[0] - d.layout.door->pin_x, rz = d.layout.item->centre[2] - d.layout.door->pin_z;
        check_near_abs(a[0] * rx + a[2] * rz, 0, 1e-9);
        CHECK(std::abs(a[0]) > 1); // 235 mm off the pin: it cannot be left out
    }
}

TEST_CASE("slam grows with speed and distance and falls with the stop's duration")
{
    const actions::HalfSineStop base{.v_edge_mm_s = 1200, .y_mm = 400, .y_edge_mm = 752, .D_s = 0.02, .e = 0};
    const double A = *actions::half_sine_stop_g(base);
    auto faster = base, farther = base, longer = base;
    faster.v_edge_mm_s *= 2;
    farther.y_mm *= 1.5;
    longer.D_s *= 4;
    check_near_rel(*actions::half_sine_stop_g(faster), 2 * A, 1e-12);
    check_near_rel(*actions::half_sine_stop_g(farther), 1.5 * A, 1e-12);
    check_near_rel(*actions::half_sine_stop_g(longer), A / 4, 1e-12);
}

TEST_CASE("slam refuses what it cannot work with, NaN among it")
{
    const actions::HalfSineStop good{.v_edge_mm_s = 1200, .y_mm = 400, .y_edge_mm = 752, .D_s = 0.02, .e = 0};
    REQUIRE(actions::half_sine_stop_g(good).has_value());
    for (const double bad : {not_a_number, -1.0, std::numeric_limits<double>::infinity()}) {
        CAPTURE(bad);
        for (double actions::HalfSineStop::* member : {&actions::HalfSineStop::v_edge_mm_s, &actions::HalfSineStop::y_mm, &actions::HalfSineStop::y_edge_mm,
                                                       &actions::HalfSineStop::D_s, &actions::HalfSineStop::e}) {
            actions::HalfSineStop in = good;
            in.*member = bad;
            CHECK_FALSE(actions::half_sine_stop_g(in).has_value());
        }
    }
    CHECK_FALSE(actions::half_sine_stop_g({.v_edge_mm_s = 0, .y_mm = 400, .y_edge_mm = 752, .D_s = 0.02, .e = 0}).has_value());
}

TEST_CASE("a door without slam data has no slam case but says so")
{
    tests::Demo d = tests::demo();
    d.layout.door->has_slam = false;
    const auto all = actions::load_cases(d.layout);
    CHECK(find(all, actions::name_slam_inward) == nullptr);
    REQUIRE(all.not_run.size() == 2);
    CHECK(all.not_run[0].lift_with == "door.slam");
    CHECK_FALSE(all.not_run[0].reason.empty());
}

TEST_CASE("a slam figure that is not a number gives no slam case")
{
    tests::Demo d = tests::demo();
    d.layout.door->slam_stop = not_a_number;
    const auto all = actions::load_cases(d.layout);
    CHECK(find(all, actions::name_slam_inward) == nullptr);
    CHECK(all.not_run.size() == 2);
}

TEST_CASE("a wall has no slam and no word about it")
{
    tests::Demo d = tests::demo();
    d.layout.kind = model::PanelKind::wall;
    d.layout.door.reset();
    const auto all = actions::load_cases(d.layout);
    CHECK(find(all, actions::name_slam_inward) == nullptr);
    CHECK(all.not_run.empty());
}

TEST_CASE("shock and random bases, a missing road and an unknown surface leave parked alone and give the reason")
{
    tests::Demo d = tests::demo();
    d.layout.door->has_slam = false;
    const auto expect_parked_only = [&](const std::string& key) {
        const auto all = actions::load_cases(d.layout);
        CAPTURE(key);
        CHECK(all.cases.size() == 1);
        CHECK(all.cases.front().name == actions::name_parked);
        REQUIRE_FALSE(all.not_run.empty());
        CHECK(all.not_run.front().lift_with.find(key) == 0);
        CHECK(actions::dynamic_factor(d.layout).basis == "not run");
    };
    d.source->road->basis = model::Basis::base_pulse;
    expect_parked_only("road.pulse");
    d.source->road->pulse = "half-sine 15 g";
    expect_parked_only("item.natural_frequency");
    d.source->road->basis = model::Basis::random_vibration;
    expect_parked_only("road.roughness");
    d.source->road->roughness = "C";
    expect_parked_only("road.speed");
    d.source->road->basis = model::Basis::quasi_static;
    d.source->road->surface = "gravle";
    expect_parked_only("road.surface");
    d.source->road.reset();
    expect_parked_only("road");
}

TEST_CASE("a bare panel has the one case of its own forces, masses with their weight; nothing on it is no load case")
{
    model::Case c;
    layout::Layout l;
    l.source = &c;
    CHECK(actions::load_cases(l).cases.empty());
    REQUIRE(actions::load_cases(l).not_run.size() == 1);
    c.masses.push_back({});
    const auto all = actions::load_cases(l);
    REQUIRE(all.cases.size() == 1);
    CHECK(all.cases[0].name == actions::name_applied);
    CHECK(all.cases[0].applied_only);
    CHECK(all.cases[0].acceleration_g == results::Vec3{0, -1, 0});
}

TEST_CASE("the dynamic factor is the road's own and is not multiplied")
{
    const tests::Demo d = tests::demo();
    const auto f = actions::dynamic_factor(d.layout);
    CHECK(f.value == 3.0);
    CHECK(f.basis == "quasi-static");
    double largest = 0;
    for (const results::LoadCase& c : actions::load_cases(d.layout).cases)
        if (c.name.rfind("slam", 0) != 0) largest = std::max(largest, std::abs(c.acceleration_g[1]));
    CHECK(largest == f.value);
}

TEST_CASE("cards of actions: evaluated like the functions, NaN refused, ids once")
{
    std::set<std::string> ids;
    std::mt19937 random(3);
    for (const base::Card& c : actions::cards()) {
        CAPTURE(c.id);
        CHECK(ids.insert(c.id).second);
        CHECK_FALSE(c.range.empty());
        REQUIRE(static_cast<bool>(c.evaluate));
        const auto sample = tests::covered_sample(c, random);
        REQUIRE(sample.has_value());
        std::vector<double> in = *sample;
        for (double& v : in) {
            const double was = v;
            v = not_a_number;
            CHECK_FALSE(c.evaluate(in).covered);
            v = was;
        }
        CHECK_FALSE(c.evaluate({}).covered);
    }
    check_near_rel(actions::cards()[0].evaluate({1200, 400, 752, 0.02, 0}).nominal,
                   *actions::half_sine_stop_g({.v_edge_mm_s = 1200, .y_mm = 400, .y_edge_mm = 752, .D_s = 0.02, .e = 0}), 1e-15);
}

TEST_SUITE_END();
