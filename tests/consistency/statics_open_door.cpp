// The open door: every state balances, the slope's worst direction is the worst, what is missing is never a pass.
#include "actions/axes.h"
#include "actions/load_cases.h"
#include "actions/open_door.h"
#include "statics/door_rules.h"
#include "statics/open_door.h"
#include "support/demo_layout.h"
#include "support/near.h"

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace thinskin;
using base::Status;
using results::Vec3;
using tests::check_near_abs;
using tests::check_near_rel;

namespace {

constexpr double pi = std::numbers::pi;
constexpr double g = base::gravity_m_s2;

/// The demo with everything that the open door can be asked for.
tests::Demo asked()
{
    tests::Demo d = tests::demo();
    layout::Door& door = *d.layout.door;
    door.strap = layout::Door::Strap{90, 750, 200e3, 8000, 20000};
    door.opening_angle = pi;
    door.angles = {0, pi / 3, pi / 2, pi};
    door.slope = 0.12;
    door.wind = 14000;
    door.open_edge_speed = 900;
    door.open_stop = 0.05;
    return d;
}

statics::DoorFigures figures(const tests::Demo& d) { return statics::door_figures(d.layout, actions::load_cases(d.layout).cases, actions::open_door(d.layout)); }

const results::Check* find(const statics::DoorFigures& f, const std::string& id)
{
    const auto at = std::find_if(f.checks.begin(), f.checks.end(), [&](const results::Check& c) { return c.id == id; });
    return at == f.checks.end() ? nullptr : &*at;
}

Status status(const tests::Demo& d, const std::string& id)
{
    const results::Check* c = nullptr;
    const auto f = figures(d);
    c = find(f, id);
    REQUIRE(c);
    return c->status;
}

/// Forces and their moments about the origin, with the size of each to measure errors by.
struct Sum {
    Vec3 F{}, M{};
    double force = 0, moment = 0;
    void add(const Vec3& f, const Vec3& at)
    {
        const Vec3 m{at[1] * f[2] - at[2] * f[1], at[2] * f[0] - at[0] * f[2], at[0] * f[1] - at[1] * f[0]};
        for (std::size_t k = 0; k < 3; ++k) {
            F[k] += f[k];
            M[k] += m[k];
            force += std::abs(f[k]);
            moment += std::abs(m[k]);
        }
    }
    [[nodiscard]] double error() const
    {
        double worst = 0;
        for (std::size_t k = 0; k < 3; ++k) worst = std::max({worst, std::abs(F[k]) / force, std::abs(M[k]) / moment});
        return worst;
    }
};

} // namespace

TEST_SUITE_BEGIN("open door");

TEST_CASE("every state of the open door balances to 1e-12: masses, wind, hinges, strap")
{
    const tests::Demo d = asked();
    const layout::Door& door = *d.layout.door;
    const results::OpenDoor open = actions::open_door(d.layout);
    REQUIRE(open.states.size() == 7); // at rest; slope, wind, both, each both ways
    for (const results::DoorState& state : open.states) {
        CAPTURE(state.name);
        const results::LoadCase lc = statics::load_of(d.layout, state, 0.05);
        const auto s = statics::hinge_statics(d.layout, lc, 0.05);
        REQUIRE(s.covered);
        Sum sum;
        for (const statics::DoorMass& m : statics::door_masses(d.layout, 0.05)) sum.add({m.kg * g * lc.acceleration_g[0], m.kg * g * lc.acceleration_g[1], m.kg * g * lc.acceleration_g[2]}, m.at);
        sum.add({0, 0, state.sense * state.air_N}, {state.air_at_mm[0], state.air_at_mm[1], 0});
        sum.add(s.top_N, {door.pin_x, 1290, door.pin_z});
        sum.add(s.bottom_N, {door.pin_x, 210, door.pin_z});
        sum.add({0, 0, s.latch_N}, {door.pin_x - 90, 750, 0});
        check_near_abs(sum.error(), 0, 1e-12);
        check_near_rel(std::hypot(lc.acceleration_g[0], lc.acceleration_g[1], lc.acceleration_g[2]), 1, 1e-12); // a slope leans 1 g, adds none
    }
}

TEST_CASE("flung open: the strap's stop takes the turning inertia of the whole door away, as ST-13 says, and the door balances")
{
    tests::Demo d = asked();
    d.layout.item->has_box = true;
    d.layout.item->box_size = {690, 540, 290};
    const auto all = actions::load_cases(d.layout).cases;
    const auto lc = *std::find_if(all.begin(), all.end(), [](const auto& c) { return c.name == actions::name_slam_open; });
    CHECK_FALSE(lc.door_closed);
    CHECK(lc.turns);
    CHECK(lc.acceleration_g[2] > 0); // what was opening carries on opening
    const auto s = statics::hinge_statics(d.layout, lc, 0.05);
    REQUIRE(s.covered);
    double I = 27 * 740.0 * 740.0 / 12 + 36 * 1.05 * (690.0 * 690.0 + 290.0 * 290.0) / 12;
    Sum sum;
    for (const statics::DoorMass& m : statics::door_masses(d.layout, 0.05)) {
        const double rx = m.at[0] - 752, rz = m.at[2] + 30;
        I += m.kg * (rx * rx + rz * rz);
        sum.add({m.kg * lc.spin_rad_s2 * rz / 1000, -m.kg * g, -m.kg * lc.spin_rad_s2 * rx / 1000}, m.at);
    }
    check_near_rel(std::abs(s.latch_N), statics::open_stop({.I_kg_mm2 = I, .v_edge_mm_s = 900, .y_edge = 752, .D_s = 0.05, .r = 90}), 1e-12);
    CHECK(s.latch_N < 0); // holds it from opening farther
    sum.add(s.top_N, {752, 1290, -30});
    sum.add(s.bottom_N, {752, 210, -30});
    sum.add({0, 0, s.latch_N}, {752 - 90, 750, 0});
    // Forces balance; about the upright axis what is left is the couple of the bodies' own turning, which is no force.
    for (const double f : sum.F) check_near_abs(f / sum.force, 0, 1e-12);
    check_near_abs(sum.M[0] / sum.moment, 0, 1e-12);
    check_near_abs(sum.M[2] / sum.moment, 0, 1e-12);
    const double own = 27 * 740.0 * 740.0 / 12 + 36 * 1.05 * (690.0 * 690.0 + 290.0 * 290.0) / 12;
    check_near_rel(-sum.M[1], own * lc.spin_rad_s2 / 1000, 1e-9);
}

TEST_CASE("no direction of a slope turns the door more than the one that is run, and the sum of the masses' own torques is more")
{
    const tests::Demo d = asked();
    const double alpha = std::atan(0.12);
    const auto masses = statics::door_masses(d.layout, 0.05);
    const auto open = actions::open_door(d.layout);
    const double run = statics::hinge_statics(d.layout, statics::load_of(d.layout, open.states[1], 0.05), 0.05).torque_Nmm;
    double most = 0, in_line = 0;
    for (int k = 0; k < 3600; ++k) {
        const double phi = k * pi / 1800;
        double torque = 0;
        for (const auto& m : masses) torque += m.kg * g * std::sin(alpha) * ((752 - m.at[0]) * std::sin(phi) - (m.at[2] + 30) * std::cos(phi));
        CHECK(torque <= run * (1 + 1e-12));
        most = std::max(most, torque);
    }
    check_near_rel(most, run, 1e-5);
    for (const auto& m : masses) in_line += m.kg * g * std::sin(alpha) * std::hypot(752 - m.at[0], m.at[2] + 30);
    CHECK(in_line > run);
}

TEST_CASE("closed, the force on the body is the opposite of that on the door, on every side of the vehicle")
{
    tests::Demo d = tests::demo();
    for (const auto faces : {model::Faces::rear, model::Faces::front, model::Faces::left, model::Faces::right}) {
        d.layout.faces = faces;
        const Vec3 body = statics::on_body(d.layout, {3, -5, 7}, 0), panel = actions::to_panel(faces, body);
        check_near_abs(panel[0], -3, 1e-12);
        check_near_abs(panel[1], 5, 1e-12);
        check_near_abs(panel[2], -7, 1e-12);
    }
}

TEST_CASE("a full turn brings a force back, half a turn turns it round, and its size never changes")
{
    const tests::Demo d = tests::demo();
    const Vec3 f{120, -300, 45}, at_0 = statics::on_body(d.layout, f, 0);
    for (const double theta : {0.3, pi / 2, pi, 5.0}) {
        const Vec3 now = statics::on_body(d.layout, f, theta), round = statics::on_body(d.layout, f, theta + 2 * pi), half = statics::on_body(d.layout, f, theta + pi);
        check_near_rel(std::hypot(now[0], now[1]), std::hypot(at_0[0], at_0[1]), 1e-12);
        for (std::size_t k = 0; k < 2; ++k) {
            check_near_abs(round[k], now[k], 1e-9);
            check_near_abs(half[k], -now[k], 1e-9);
        }
        CHECK(now[2] == at_0[2]);
    }
}

TEST_CASE("words: a rear door on its right hinges, opened by 90 degrees, pulls the pillar rearward at the top")
{
    const tests::Demo d = tests::demo();
    CHECK(statics::body_words(d.layout, {-200, 300, 0}, pi / 2) == "pushed 200 N forward, 300 N down"); // on the door towards the edge: the hinge pushes it
    CHECK(statics::body_words(d.layout, {200, 300, 0}, pi / 2) == "pulled 200 N rearward, 300 N down");
    CHECK(statics::body_words(d.layout, {0, 0, 0}, 1) == "nothing");
}

TEST_CASE("strap rows: judgement within half of what it bears, fail beyond, not covered where a figure is missing; required all the same")
{
    tests::Demo d = asked();
    for (const char* id : {"check strap/hold", "check strap/pull", "check strap/stop"}) {
        CAPTURE(id);
        const auto f = figures(d);
        const auto* c = find(f, id);
        REQUIRE(c);
        CHECK(c->status == Status::judgement);
        CHECK(c->required);
        CHECK(c->group == "door");
        CHECK(c->label == "engineering judgement");
    }
    const auto pull = *find(figures(d), "check strap/pull");
    CHECK(pull.capacity == 4000);
    d.layout.door->strap->strength = 2 * pull.demand * (1 - 1e-9);
    CHECK(status(d, "check strap/pull") == Status::fail);
    d.layout.door->strap->strength.reset();
    CHECK(status(d, "check strap/pull") == Status::not_covered);
    d.layout.door->strap->holds = 1000;
    CHECK(status(d, "check strap/hold") == Status::fail);
    d.layout.door->strap->holds.reset();
    CHECK(status(d, "check strap/hold") == Status::not_covered);
    d.layout.door->strap->stop_strength = 10;
    CHECK(status(d, "check strap/stop") == Status::fail);
    d.layout.door->strap->stop_strength = std::nan("");
    CHECK(status(d, "check strap/stop") == Status::not_covered);
    d.layout.door->strap.reset();
    for (const char* id : {"check strap/hold", "check strap/pull", "check strap/stop"}) CHECK(status(d, id) == Status::not_covered);
    const auto f = figures(d);
    CHECK(find(f, "check strap/pull")->lift_with == "door.check_strap");
    CHECK(find(f, "check strap/hold")->demand > 0); // the torque needs no strap
}

TEST_CASE("the wind up to which the door stays is the one whose torque the catch just holds")
{
    tests::Demo d = asked();
    const std::string note = find(figures(d), "check strap/hold")->note;
    const std::size_t at = note.find("wind of ");
    REQUIRE(at != std::string::npos);
    d.layout.door->wind = 1000 * (std::stod(note.substr(at + 8)) - 0.06); // printed to 0.1 m/s
    CHECK(status(d, "check strap/hold") == Status::judgement);
    *d.layout.door->wind += 120;
    CHECK(status(d, "check strap/hold") == Status::fail);
}

TEST_CASE("a part of door.open that is not given is named as not run, and has no row")
{
    tests::Demo d = asked();
    const auto said = [](const statics::DoorFigures& f, const std::string& start) { return std::any_of(f.not_covered.begin(), f.not_covered.end(), [&](const std::string& s) { return s.rfind(start, 0) == 0; }); };
    CHECK_FALSE(said(figures(d), "door open on a slope"));
    d.layout.door->slope.reset();
    CHECK(said(figures(d), "door open on a slope"));
    CHECK(find(figures(d), "check strap/hold")); // of the wind
    d.layout.door->wind.reset();
    CHECK(said(figures(d), "wind on the open door"));
    CHECK_FALSE(find(figures(d), "check strap/hold"));
    d.layout.door->open_edge_speed.reset();
    d.layout.door->open_stop.reset();
    CHECK(said(figures(d), "door flung open"));
    CHECK_FALSE(find(figures(d), "check strap/stop"));
    d.layout.kind = model::PanelKind::top_hinged_door;
    CHECK(actions::open_door(d.layout).states.empty());
}

TEST_CASE("a stop without its speed is a load case that was not run, not one left out")
{
    tests::Demo d = asked();
    d.layout.door->open_edge_speed.reset();
    const auto all = actions::load_cases(d.layout);
    CHECK(std::any_of(all.not_run.begin(), all.not_run.end(), [](const auto& n) { return n.load_case == actions::name_slam_open && n.lift_with == "door.open"; }));
}

TEST_CASE("hinge evidence sees the open door: the regulation's index and the proof hang grow with the wind, a maker's limit says that it compares nothing")
{
    tests::Demo calm = asked(), storm = asked();
    calm.layout.door->open_edge_speed.reset();
    calm.layout.door->open_stop.reset();
    storm.layout.door->open_edge_speed.reset();
    storm.layout.door->open_stop.reset();
    storm.layout.door->wind = 45000;
    for (tests::Demo* d : {&calm, &storm}) d->layout.door->evidence = model::HingeEvidence::Kind::none;
    CHECK(find(figures(storm), "hinges/index")->demand > find(figures(calm), "hinges/index")->demand);
    CHECK(find(figures(storm), "hinges/index")->load_case.find("wind") != std::string::npos);
    for (tests::Demo* d : {&calm, &storm}) {
        d->layout.door->evidence = model::HingeEvidence::Kind::proof_hang;
        d->layout.door->evidence_state = "open";
        d->layout.door->evidence_mass = 250;
    }
    CHECK(find(figures(storm), "hinges/open/out-of-plane")->status == Status::not_covered);
    storm.layout.door->evidence = model::HingeEvidence::Kind::maker_limit;
    const auto f = figures(storm);
    const auto* event = find(f, "hinges/event");
    REQUIRE(event);
    CHECK(event->status == Status::not_covered);
    CHECK_FALSE(event->required);
    CHECK(event->note.find("compared with nothing but") != std::string::npos);
    storm.layout.door->wind = 80000;
    CHECK(find(figures(storm), "hinges/index")->status == Status::fail); // beyond what the regulation lets come apart
}

TEST_CASE("without a check strap the regulation's index of a door that is asked to stand open is not covered")
{
    tests::Demo d = asked();
    d.layout.item->mass = 3;
    d.layout.door->evidence = model::HingeEvidence::Kind::regulation;
    d.layout.door->strap.reset();
    const auto f = figures(d);
    const auto* c = find(f, "hinges/index");
    REQUIRE(c);
    CHECK(c->status == Status::not_covered);
    CHECK(c->lift_with == "door.check_strap");
}

TEST_CASE("wind area: the leaf, and of the item's box only what stands out beside it")
{
    tests::Demo d = tests::demo();
    check_near_rel(actions::wind_area(d.layout).mm2, 740.0 * 1520, 1e-12);
    d.layout.item->has_box = true;
    d.layout.item->box_from = {27, 700, 60};
    d.layout.item->box_size = {690, 540, 290};
    check_near_rel(actions::wind_area(d.layout).mm2, 740.0 * 1520, 1e-12);
    check_near_rel(actions::wind_area(d.layout).x, 370, 1e-12);
    d.layout.item->box_from[0] = -100; // 100 x 540 beyond the free edge, its middle at -50
    const auto a = actions::wind_area(d.layout);
    check_near_rel(a.mm2, 740.0 * 1520 + 100 * 540, 1e-12);
    check_near_rel(a.x, (740.0 * 1520 * 370 + 100 * 540 * -50) / a.mm2, 1e-12);
    check_near_rel(a.y, (740.0 * 1520 * 760 + 100 * 540 * 970) / a.mm2, 1e-12);
}

TEST_CASE("slam is told by the load case turning, not by its name")
{
    const tests::Demo d = tests::demo();
    const auto all = actions::load_cases(d.layout).cases;
    auto lc = *std::find_if(all.begin(), all.end(), [](const auto& c) { return c.name == actions::name_slam_inward; });
    const auto named = statics::hinge_statics(d.layout, lc, 0.05);
    lc.name = "anything";
    CHECK(statics::hinge_statics(d.layout, lc, 0.05).latch_N == named.latch_N);
}

TEST_SUITE_END();
