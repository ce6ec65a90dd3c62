#include "actions/load_cases.h"
#include "actions/open_door.h"
#include "statics/door.h"
#include "support/demo_layout.h"
#include "support/near.h"

#include <algorithm>
#include <cmath>
#include <limits>

using namespace thinskin;
using base::Status;
using tests::check_near_abs;
using tests::check_near_rel;
using tests::state;
using Kind = model::HingeEvidence::Kind;

namespace {

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
constexpr double g = base::gravity_m_s2;

std::vector<results::LoadCase> cases(const tests::Demo& d) { return actions::load_cases(d.layout).cases; }

const results::Check* find(const statics::DoorFigures& f, const std::string& id)
{
    const auto at = std::find_if(f.checks.begin(), f.checks.end(), [&](const results::Check& c) { return c.id == id; });
    return at == f.checks.end() ? nullptr : &*at;
}

tests::Demo with(Kind kind)
{
    tests::Demo d = tests::demo();
    d.layout.door->evidence = kind;
    return d;
}

/// Demo reflected about the middle of its panel, hinges on the left.
tests::Demo left_hung()
{
    tests::Demo d = tests::demo();
    layout::Layout& l = d.layout;
    const double w = l.width;
    l.brackets = {tests::demo_bracket("left", w - 150, -1), tests::demo_bracket("right", w - 554, 1)};
    l.item->centre[0] = w - l.item->centre[0];
    l.door->hinges_right = false;
    l.door->pin_x = w - l.door->pin_x;
    l.door->centre[0] = w - l.door->centre[0];
    l.door->latches = {{w, 580}};
    l.door->evidence_at[0] = w - l.door->evidence_at[0];
    return d;
}

bool any_required(const statics::DoorFigures& f, Status s)
{
    return std::any_of(f.checks.begin(), f.checks.end(), [&](const results::Check& c) { return c.required && c.status == s; });
}

} // namespace

TEST_SUITE_BEGIN("door");

TEST_CASE("hinge and latch forces balance the masses to 1e-12 in every state of a door that does not turn fast")
{
    const tests::Demo d = tests::demo();
    const layout::Door& door = *d.layout.door;
    for (const results::LoadCase& lc : cases(d)) {
        if (lc.name.rfind("slam", 0) == 0) continue;
        CAPTURE(lc.name);
        const auto s = statics::hinge_statics(d.layout, lc, 0.05);
        REQUIRE(s.covered);
        results::Vec3 F{}, M{};
        double size = 0, turning = 0;
        const auto add = [&](const results::Vec3& f, const results::Vec3& at) {
            const results::Vec3 m{at[1] * f[2] - at[2] * f[1], at[2] * f[0] - at[0] * f[2], at[0] * f[1] - at[1] * f[0]};
            for (std::size_t k = 0; k < 3; ++k) {
                F[k] += f[k];
                M[k] += m[k];
                size += std::abs(f[k]);
                turning += std::abs(m[k]);
            }
        };
        for (const statics::DoorMass& m : statics::door_masses(d.layout, 0.05))
            add({m.kg * g * lc.acceleration_g[0], m.kg * g * lc.acceleration_g[1], m.kg * g * lc.acceleration_g[2]}, m.at);
        add(s.top_N, {door.pin_x, 1290, door.pin_z});
        add(s.bottom_N, {door.pin_x, 210, door.pin_z});
        add({0, 0, s.latch_N}, {door.latches[0].x, door.latches[0].y, 0});
        for (std::size_t k = 0; k < 3; ++k) {
            check_near_abs(F[k] / size, 0, 1e-12);
            check_near_abs(M[k] / turning, 0, 1e-12);
        }
    }
}

TEST_CASE("slam: the stop takes the turning inertia of the whole door away")
{
    const tests::Demo d = tests::demo();
    const auto all = cases(d);
    const auto lc = *std::find_if(all.begin(), all.end(), [](const auto& c) { return c.name == actions::name_slam_inward; });
    const auto s = statics::hinge_statics(d.layout, lc, 0);
    REQUIRE(s.covered);
    // Stop force times its distance = I times the angular acceleration; I from the masses, leaf even over its width.
    double I = 27 * 740.0 * 740.0 / 12;
    for (const statics::DoorMass& m : statics::door_masses(d.layout, 0)) I += m.kg * (std::pow(m.at[0] - 752, 2) + std::pow(m.at[2] + 30, 2));
    const double turn = -lc.acceleration_g[2] * g / 400; // per mm of distance
    check_near_rel(s.latch_N, I * turn / 752, 1e-12);
    CHECK(s.latch_N > 0);
}

TEST_CASE("a door hung on the left has the mirrored forces")
{
    const tests::Demo right = tests::demo(), left = left_hung();
    for (const results::Vec3& a : {results::Vec3{0, -1, 0}, results::Vec3{0.7, -1, 0}, results::Vec3{0.35, -3, 0.5}}) {
        const auto r = statics::hinge_statics(right.layout, state("a", a), 0.05);
        const auto l = statics::hinge_statics(left.layout, state("a", {-a[0], a[1], a[2]}), 0.05);
        check_near_rel(l.top_N[0], -r.top_N[0], 1e-12);
        check_near_rel(l.top_N[2], r.top_N[2], 1e-12);
        check_near_abs(l.latch_N, r.latch_N, 1e-9);
        check_near_rel(l.T_N, r.T_N, 1e-12);
        check_near_rel(statics::hinge_index(left.layout, l).one_hinge, statics::hinge_index(right.layout, r).one_hinge, 1e-12);
    }
    CHECK(find(statics::door_figures(left.layout, cases(left)), "hinges/moment")->margin() ==
          doctest::Approx(find(statics::door_figures(right.layout, cases(right)), "hinges/moment")->margin()).epsilon(1e-12));
}

TEST_CASE("a middle hinge shares the vertical but not the couples")
{
    tests::Demo d = tests::demo();
    const auto two = statics::hinge_statics(d.layout, state("a", {0, -3, 0}), 0);
    d.layout.door->hinge_heights = {210, 800, 1290};
    const auto three = statics::hinge_statics(d.layout, state("a", {0, -3, 0}), 0);
    CHECK(three.T_N == two.T_N);
    CHECK(three.top_N[2] == two.top_N[2]);
    check_near_rel(three.top_N[1], two.top_N[1] * 2 / 3, 1e-12);
}

TEST_CASE("forces that turn the door need a latch; weight does not")
{
    tests::Demo d = tests::demo();
    d.layout.door->latches.clear();
    CHECK(statics::hinge_statics(d.layout, state("parked", {0, -1, 0}), 0).covered);
    const auto s = statics::hinge_statics(d.layout, state("accelerating", {0, -1, 1}), 0);
    CHECK_FALSE(s.covered);
    CHECK_FALSE(s.reason.empty());
}

TEST_CASE("several latches: the hinges take the worst of each latch alone, and sharing is not judged")
{
    tests::Demo d = tests::demo();
    const auto lc = state("accelerating", {0, -1, 1});
    double worst = 0;
    for (const double y : {100.0, 1400.0}) {
        d.layout.door->latches = {{0, y}};
        worst = std::max(worst, statics::hinge_statics(d.layout, lc, 0).out_of_plane_N);
    }
    d.layout.door->latches = {{0, 100}, {0, 1400}};
    CHECK(statics::hinge_statics(d.layout, lc, 0).out_of_plane_N == worst);
    const auto f = statics::door_figures(d.layout, {lc});
    CHECK(find(f, "latch/pull")->note.find("share in an unknown way") != std::string::npos);
}

TEST_CASE("an open door that something turns is not covered without its check strap")
{
    const tests::Demo d = tests::demo();
    results::LoadCase lc = state("flung", {0, -1, 5});
    lc.door_closed = false;
    const auto s = statics::hinge_statics(d.layout, lc, 0);
    CHECK_FALSE(s.covered);
    CHECK(s.lift_with == "door.check_strap");
    lc.acceleration_g = {0, -1, 0};
    CHECK(statics::hinge_statics(d.layout, lc, 0).covered); // weight alone does not turn it
}

TEST_CASE("no evidence: the index is shown, not covered, with the key that lifts it")
{
    const tests::Demo d = with(Kind::none);
    const auto f = statics::door_figures(d.layout, cases(d));
    const results::Check* c = find(f, "hinges/index");
    REQUIRE(c);
    CHECK(c->status == Status::not_covered);
    CHECK(c->required);
    CHECK(c->demand > 0);
    CHECK(c->lift_with == "door.hinges.evidence");
    CHECK_FALSE(any_required(f, Status::pass));
}

TEST_CASE("no evidence: beyond the regulation's one-time load the hinges fail")
{
    tests::Demo d = with(Kind::none);
    d.layout.item->mass = 300;
    CHECK(find(statics::door_figures(d.layout, cases(d)), "hinges/index")->status == Status::fail);
}

TEST_CASE("regulation evidence: at most judgement, above 1 not shown, beyond the one-time load a fail")
{
    tests::Demo d = with(Kind::regulation);
    CHECK(find(statics::door_figures(d.layout, cases(d)), "hinges/index")->status == Status::not_covered);
    d.layout.item->mass = 5;
    const auto light = statics::door_figures(d.layout, cases(d));
    CHECK(find(light, "hinges/index")->status == Status::judgement);
    CHECK(find(light, "hinges/index")->demand <= 1);
    d.layout.item->mass = 300;
    CHECK(find(statics::door_figures(d.layout, cases(d)), "hinges/index")->status == Status::fail);
}

TEST_CASE("approved to the regulation without a vertical load: nothing is shown, figures and reason are printed")
{
    tests::Demo d = with(Kind::us_regulation);
    d.layout.item->mass = 5;
    const auto us = statics::door_figures(d.layout, cases(d));
    CHECK(find(us, "hinges/index")->status == Status::not_covered);
    CHECK(find(us, "hinges/index")->source.find("571.206") != std::string::npos);
    CHECK(find(us, "hinges/index")->note.find("vertical hinge capacity unproven") != std::string::npos);
    CHECK_FALSE(any_required(us, Status::judgement));
    d.layout.item->mass = 300;
    CHECK(find(statics::door_figures(d.layout, cases(d)), "hinges/index")->status == Status::fail); // beyond is beyond
}

TEST_CASE("regulation evidence: the worse of 2 times shared and 1.33 times on one hinge")
{
    tests::Demo d = with(Kind::regulation);
    d.layout.item->mass = 5;
    const auto lc = state("pothole", {0, -3, 0});
    const auto index = statics::hinge_index(d.layout, statics::hinge_statics(d.layout, lc, 0.05));
    check_near_rel(find(statics::door_figures(d.layout, {lc}), "hinges/index")->demand, std::max(2 * index.shared, 1.33 * index.one_hinge), 1e-12);
}

TEST_CASE("a side door has no vertical regulation figure: never a pass by regulation, and its axes are swapped")
{
    tests::Demo d = with(Kind::regulation);
    d.layout.item->mass = 5;
    const auto s = statics::hinge_statics(d.layout, state("pothole", {0, -3, 0}), 0);
    for (const auto faces : {model::Faces::left, model::Faces::right, model::Faces::front}) {
        d.layout.faces = faces;
        CHECK_FALSE(statics::hinge_index(d.layout, s).covered);
        CHECK(find(statics::door_figures(d.layout, cases(d)), "hinges/index")->status == Status::not_covered);
    }
    d.layout.faces = model::Faces::left;
    check_near_rel(statics::hinge_index(d.layout, s).without_vertical, s.out_of_plane_N / 4500 + s.in_plane_N / 5500, 1e-12);
}

TEST_CASE("maker's limit: beyond it is a fail, each of the three alone")
{
    tests::Demo d = tests::demo();
    d.layout.door->evidence_mass = 45; // 45.5 kg are added
    auto f = statics::door_figures(d.layout, cases(d));
    CHECK(find(f, "hinges/mass")->status == Status::fail);
    CHECK(find(f, "hinges/outreach")->status == Status::pass);
    d = tests::demo();
    d.layout.door->evidence_at[2] = 120;
    f = statics::door_figures(d.layout, cases(d));
    CHECK(find(f, "hinges/outreach")->status == Status::fail);
    CHECK(find(f, "hinges/mass")->status == Status::pass);
}

TEST_CASE("maker's limit: a missing figure, a NaN or the other side of the pin is not covered")
{
    tests::Demo d = tests::demo();
    d.layout.door->evidence_has_z = false;
    CHECK(find(statics::door_figures(d.layout, cases(d)), "hinges/outreach")->status == Status::not_covered);
    d.layout.door->evidence_has_numbers = false;
    CHECK_FALSE(any_required(statics::door_figures(d.layout, cases(d)), Status::pass));
    d = tests::demo();
    d.layout.item->centre[2] = -250; // inside the van, the limit is outside
    CHECK(find(statics::door_figures(d.layout, cases(d)), "hinges/outreach")->status == Status::not_covered);
    d = tests::demo();
    d.layout.item->mass = not_a_number;
    const auto f = statics::door_figures(d.layout, cases(d));
    CHECK(find(f, "hinges/mass")->status == Status::not_covered);
    CHECK_FALSE(any_required(f, Status::pass));
}

TEST_CASE("proof hang: parked counts when the hang reached it, driving does not")
{
    tests::Demo d = with(Kind::proof_hang);
    d.layout.door->evidence_state = "open";
    const auto f = statics::door_figures(d.layout, cases(d));
    for (const char* part : {"vertical", "in-plane", "out-of-plane"}) {
        CAPTURE(part);
        CHECK(find(f, std::string("hinges/parked/") + part)->status == Status::pass);
        CHECK(find(f, std::string("hinges/driving/") + part)->status == Status::not_covered);
    }
}

TEST_CASE("proof hang: heavy and far enough it counts for driving, each figure on its own")
{
    tests::Demo d = with(Kind::proof_hang);
    d.layout.door->evidence_state = "open";
    d.layout.door->evidence_mass = 250;
    const std::vector<results::LoadCase> road{state("parked", {0, -1, 0}), state("pothole", {0, -3, 0})};
    CHECK_FALSE(any_required(statics::door_figures(d.layout, road), Status::not_covered));
    d.layout.door->evidence_at[2] = -20; // hung close to the pin: nothing is shown out of the door
    const auto f = statics::door_figures(d.layout, road);
    CHECK(find(f, "hinges/driving/out-of-plane")->status == Status::not_covered);
    CHECK(find(f, "hinges/driving/vertical")->status == Status::pass);
}

TEST_CASE("proof hang without place, height off the skin or state of the door shows nothing")
{
    tests::Demo d = with(Kind::proof_hang);
    CHECK_FALSE(any_required(statics::door_figures(d.layout, cases(d)), Status::pass)); // no state
    d.layout.door->evidence_state = "closed";
    d.layout.door->rest = layout::Point{50, 0};
    CHECK_FALSE(any_required(statics::door_figures(d.layout, cases(d)), Status::pass)); // sat on its rest
    d.layout.door->rest.reset();
    d.layout.door->evidence_has_z = false;
    CHECK(find(statics::door_figures(d.layout, cases(d)), "hinges/parked/out-of-plane")->status == Status::not_covered);
    d.layout.door->evidence_has_numbers = false;
    CHECK_FALSE(any_required(statics::door_figures(d.layout, cases(d)), Status::pass));
}

TEST_CASE("removing the latch turns the regulation's rows to not covered, not to a pass")
{
    for (const Kind kind : {Kind::regulation, Kind::proof_hang, Kind::none}) {
        tests::Demo d = with(kind);
        d.layout.item->mass = 5;
        d.layout.door->evidence_state = "open";
        d.layout.door->latches.clear();
        CHECK_FALSE(any_required(statics::door_figures(d.layout, cases(d)), Status::pass));
        CHECK_FALSE(any_required(statics::door_figures(d.layout, cases(d)), Status::judgement));
    }
}

TEST_CASE("what is not judged carries its force and is not required")
{
    const tests::Demo d = tests::demo();
    const auto f = statics::door_figures(d.layout, cases(d));
    for (const char* id : {"pillar/hinge", "hinge sheet/hinge", "door torsion/couple", "latch/pull"}) {
        CAPTURE(id);
        const results::Check* c = find(f, id);
        REQUIRE(c);
        CHECK_FALSE(c->required);
        CHECK(c->status == Status::not_covered);
        CHECK(c->demand > 0);
        CHECK_FALSE(c->note.empty());
    }
    CHECK(statics::door_figures(d.layout, cases(d), actions::open_door(d.layout)).not_covered.size() == 5); // open at an angle, slope, wind, flung open, sag
}

TEST_CASE("doors that are not hinged at their side, or have no hinge figures, are not covered; a wall has no rows")
{
    tests::Demo d = tests::demo();
    const auto lcs = cases(d);
    for (const auto kind : {model::PanelKind::sliding_door, model::PanelKind::top_hinged_door}) {
        d.layout.kind = kind;
        const auto f = statics::door_figures(d.layout, lcs);
        REQUIRE(f.checks.size() == 1);
        CHECK(f.checks[0].status == Status::not_covered);
        CHECK(f.checks[0].required);
    }
    d.layout.kind = model::PanelKind::wall;
    CHECK(statics::door_figures(d.layout, lcs).checks.empty());
    d = tests::demo();
    d.layout.door->hinge_heights = {800};
    CHECK(statics::door_figures(d.layout, lcs).checks.at(0).status == Status::not_covered);
    d.layout.door->has_hinges = false;
    CHECK(statics::door_figures(d.layout, lcs).checks.at(0).lift_with == "door.hinges");
    d.layout.door.reset();
    CHECK(statics::door_figures(d.layout, lcs).checks.at(0).lift_with == "door");
}

TEST_CASE("the angles behind the skin count in the added mass, at their own place")
{
    tests::Demo d = tests::demo();
    const auto with_angles = statics::door_figures(d.layout, cases(d));
    d.layout.angles.clear();
    const auto without = statics::door_figures(d.layout, cases(d));
    const double kg = find(with_angles, "hinges/mass")->demand - find(without, "hinges/mass")->demand;
    check_near_rel(kg, 3.1977, 1e-3); // two sharp-cornered angles of 304 mm2, 670 mm long, 7850 kg/m3
    check_near_rel((find(with_angles, "hinges/moment")->demand - find(without, "hinges/moment")->demand) / kg, 0.382, 1e-9);
}

TEST_SUITE_END();
