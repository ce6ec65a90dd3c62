// What a case may say of a door beside its hinges and its strap: a rest that gives, what a latch bears, a stop of its own.
#include "actions/load_cases.h"
#include "actions/open_door.h"
#include "statics/door_rules.h"
#include "statics/open_door.h"
#include "support/demo_layout.h"
#include "support/near.h"
#include "support/worked_door.h"

#include <algorithm>
#include <cmath>

using namespace thinskin;
using base::Status;
using tests::check_near_rel;

namespace {

const std::vector<results::LoadCase> standing{tests::state("parked", {0, -1, 0})};

/// The worked door on a rest at its free edge, with a measured give of the hinges: 0.2 mm/kN.
tests::Demo rested()
{
    tests::Demo d = tests::worked_door();
    layout::Door& door = *d.layout.door;
    door.rest = layout::Point{50, 0};
    door.sag_test = layout::Door::SagTest{20, {0, 750}, 0.036473};
    door.rest_gap = 0.01;
    door.rest_stiffness = 5000;
    return d;
}

double force(const statics::DoorFigures& f, const std::string& stop)
{
    for (const results::SupportForce& s : f.stops)
        if (s.name == stop) return s.force_N[1];
    return NAN;
}

statics::DoorFigures figures(const tests::Demo& d) { return statics::door_figures(d.layout, standing, actions::open_door(d.layout), 0); }

const results::Check& row(const statics::DoorFigures& f, const std::string& id)
{
    const auto at = std::find_if(f.checks.begin(), f.checks.end(), [&](const results::Check& c) { return c.id == id; });
    REQUIRE(at != f.checks.end());
    return *at;
}

bool has(const statics::DoorFigures& f, const std::string& id)
{
    return std::any_of(f.checks.begin(), f.checks.end(), [&](const results::Check& c) { return c.id == id; });
}

/// The demo's figures under the load cases of the road and of its slam, its latch told.
statics::DoorFigures with_latch(std::optional<double> strength, double times = 1, std::size_t latches = 1)
{
    tests::Demo d = tests::demo();
    d.layout.door->latch_strength = strength;
    if (latches == 2) d.layout.door->latches.push_back({0, 1200});
    std::vector<results::LoadCase> cases = actions::load_cases(d.layout).cases;
    for (results::LoadCase& c : cases) c.acceleration_g[2] *= times, c.spin_rad_s2 *= times;
    return statics::door_figures(d.layout, cases);
}

} // namespace

TEST_SUITE_BEGIN("door: rest, latch, end stop");

TEST_CASE("rest: both bounds are shown, the estimate lies between them, and the hinges are relieved by as much as the rest gets")
{
    const tests::Demo d = rested();
    const auto f = figures(d);
    const double most = force(f, "rest, at most"), some = force(f, "rest, by its give");
    CHECK(some > 0);
    CHECK(some < most);
    struct Rested { const char* state; double N; };
    for (const Rested& r : {Rested{"closed", 0}, Rested{"closed, all on the rest", most}, Rested{"closed, rest by its give", some}}) {
        CAPTURE(r.state);
        double up = r.N, turning = r.N * 700; // about the pin line at the lower hinge, in the plane of the door
        int hinges = 0;
        for (const results::HingeForce& h : f.hinges) {
            if (h.state != r.state || (h.name != "top hinge" && h.name != "bottom hinge")) continue;
            ++hinges;
            up += h.force_N[1];
            if (h.name == "top hinge") turning += h.force_N[0] * 1100;
        }
        CHECK(hinges == 2);
        check_near_rel(up, 66 * base::gravity_m_s2, 1e-12);
        check_near_rel(turning, (38 * 400 + 28 * 360) * base::gravity_m_s2, 1e-12);
    }
}

TEST_CASE("rest: a wider gap or a softer rest gets less, a stiff one that was there from the start nearly the rigid bound, none more than it")
{
    const auto gets = [](double gap, double k, double c = 0.2e-3) { return statics::giving_rest({.c = c, .y_s = 700, .h = 1100, .T = 225.37, .T_b = 89.86, .gap = gap, .k = k}); };
    CHECK(gets(0.02, 5000) < gets(0.01, 5000));
    CHECK(gets(0.01, 4000) < gets(0.01, 5000));
    CHECK(gets(1, 5000) == 0);
    CHECK(std::isnan(gets(NAN, 5000)));
    const double bound = 225.37 * 1100 / 700;
    check_near_rel(statics::giving_rest({.c = 0.01, .y_s = 700, .h = 1100, .T = 225.37, .T_b = 0, .gap = 0, .k = 1e9}), bound, 1e-6);
    for (const double k : {10.0, 1e3, 1e6})
        for (const double c : {1e-5, 1e-3, 0.1}) CHECK(gets(0, k, c) <= bound * (1 + 1e-12));
}

TEST_CASE("rest: a figure that was not measured leaves the two bounds and says which; judged are the hinges without it")
{
    struct Lack { std::string key; void (*take)(layout::Door&); };
    const std::vector<Lack> lacks{{"door.hinges.sag_test", [](layout::Door& d) { d.sag_test.reset(); }},
                                                                             {"door.rest.gap", [](layout::Door& d) { d.rest_gap.reset(); }},
                                                                             {"door.rest.stiffness", [](layout::Door& d) { d.rest_stiffness.reset(); }}};
    for (const Lack& lack : lacks) {
        tests::Demo d = rested();
        lack.take(*d.layout.door);
        const auto f = figures(d);
        CAPTURE(lack.key);
        CHECK(std::isnan(force(f, "rest, by its give")));
        CHECK(force(f, "rest, at most") > 0);
        CHECK(std::any_of(f.not_covered.begin(), f.not_covered.end(), [&](const std::string& s) { return s.find("between its two bounds") != std::string::npos && s.find(lack.key) != std::string::npos; }));
    }
    tests::Demo with = rested(), without = rested();
    without.layout.door->rest.reset();
    for (const auto& c : figures(with).checks) CHECK(row(figures(without), c.id).demand == c.demand);
}

TEST_CASE("latch: half of a told strength counts and its row is required then; without one the pull stands beside the regulation's level, never a pass")
{
    const auto told = with_latch(20000), weak = with_latch(100), untold = with_latch({});
    CHECK(row(told, "latch/pull").status == Status::judgement);
    CHECK(row(told, "latch/pull").required);
    CHECK(row(told, "latch/pull").capacity == 10000);
    CHECK(row(weak, "latch/pull").status == Status::fail);
    CHECK(row(with_latch(NAN), "latch/pull").status == Status::not_covered);
    const results::Check& c = row(untold, "latch/pull");
    CHECK(c.status == Status::not_covered);
    CHECK_FALSE(c.required);
    CHECK(c.lift_with == "door.latches[0].strength");
    CHECK(c.note.find("11000 N") != std::string::npos);
    CHECK(c.demand == row(told, "latch/pull").demand);
    const auto beyond = with_latch({}, 60);
    CHECK(row(beyond, "latch/pull").demand > 11000);
    CHECK(row(beyond, "latch/pull").status == Status::fail);
    CHECK(row(beyond, "latch/pull").required);
    CHECK(row(with_latch(20000, 1, 2), "latch/pull").note.find("weakest") != std::string::npos);
}

TEST_CASE("end stop: it takes what is flung into it by its own lever, and no strap is needed for that")
{
    tests::Demo d = tests::demo();
    layout::Door& door = *d.layout.door;
    door.opening_angle = 3.1;
    door.angles = {0, 3.1};
    door.open_edge_speed = 900;
    door.open_stop = 0.05;
    const auto rows = [&d] { return statics::door_figures(d.layout, actions::load_cases(d.layout).cases, actions::open_door(d.layout)); };
    door.strap = layout::Door::Strap{90, 750, {}, {}, 20000};
    const double by_strap = row(rows(), "check strap/stop").demand;
    door.end_stop = layout::Door::EndStop{180, 900, {}};
    CHECK_FALSE(has(rows(), "check strap/stop"));
    CHECK(row(rows(), "end stop/stop").status == Status::not_covered);
    CHECK(row(rows(), "end stop/stop").lift_with == "door.end_stop.strength");
    door.end_stop->strength = 2 * by_strap;
    door.strap.reset();
    const auto f = rows();
    check_near_rel(row(f, "end stop/stop").demand, by_strap / 2, 1e-12);
    CHECK(row(f, "end stop/stop").status == Status::judgement);
    CHECK(std::any_of(f.stops.begin(), f.stops.end(), [](const auto& s) { return s.name == "end stop" && !s.words.empty(); }));
    door.end_stop->strength = 0.9 * by_strap;
    CHECK(row(rows(), "end stop/stop").status == Status::fail);
}

TEST_SUITE_END();
