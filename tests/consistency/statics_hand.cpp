#include "statics/cards.h"
#include "statics/hand.h"
#include "support/demo_layout.h"
#include "support/near.h"

#include <cmath>
#include <limits>
#include <numeric>
#include <set>
#include <utility>

using namespace thinskin;
using tests::check_near_abs;
using tests::check_near_rel;
using tests::state;

namespace {

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

/// The demo reflected about the middle of its panel.
tests::Demo mirrored()
{
    tests::Demo d = tests::demo();
    layout::Layout& l = d.layout;
    const double w = l.width;
    l.brackets = {tests::demo_bracket("left", w - 150, -1), tests::demo_bracket("right", w - 554, 1)};
    l.brackets[0].fasteners[0].name = "L1";
    l.brackets[0].fasteners[1].name = "L2";
    l.brackets[1].fasteners[0].name = "R1";
    l.brackets[1].fasteners[1].name = "R2";
    l.item->centre[0] = w - l.item->centre[0];
    return d;
}

double sum(const std::vector<double>& v) { return std::accumulate(v.begin(), v.end(), 0.0); }

} // namespace

TEST_SUITE_BEGIN("hand check");

TEST_CASE("lever rule: force and moment balance in all four ways of turning")
{
    struct Row { double pull, moment; statics::Pivot pivot; };
    const Row table[] = {{100, 120000, statics::Pivot::foot}, {-300, 60000, statics::Pivot::foot}, {100, -20000, statics::Pivot::top},
                         {-100, -90000, statics::Pivot::top}, {100, 58000, statics::Pivot::off_the_wall}, {-100, -58000, statics::Pivot::pressed_flat}};
    for (const Row& r : table) {
        CAPTURE(r.pull);
        CAPTURE(r.moment);
        const std::vector<double> at{420, 580, 740};
        const auto t = statics::lever_rule({.at = at, .foot = 400, .top = 760, .pull = r.pull, .moment = r.moment});
        CHECK(t.pivot == r.pivot);
        double about = -t.push * t.push_at;
        for (std::size_t i = 0; i < at.size(); ++i) {
            about += t.tension[i] * at[i];
            CHECK(t.tension[i] >= 0);
        }
        CHECK(t.push >= 0);
        check_near_abs(sum(t.tension) - t.push, r.pull, 1e-9);
        check_near_abs(about, r.moment, 1e-6);
    }
}

TEST_CASE("lever rule: no jump between the pivot on an edge and lifting off")
{
    const std::vector<double> at{420, 740};
    double previous = -1;
    for (double height = 400.5; height < 760; height += 0.25) { // the pull wanders up the leg
        const auto t = statics::lever_rule({.at = at, .foot = 400, .top = 760, .pull = 100, .moment = 100 * height});
        if (previous >= 0) CHECK(std::abs(t.tension[1] - previous) < 0.25 * 100 / 300);
        previous = t.tension[1];
    }
}

TEST_CASE("lever rule hands a NaN on instead of a zero tension")
{
    for (const double bad : {not_a_number}) {
        CHECK(std::isnan(statics::lever_rule({.at = {20, 340}, .foot = 0, .top = 360, .pull = 0, .moment = bad}).tension[0]));
        CHECK(std::isnan(statics::lever_rule({.at = {20, 340}, .foot = 0, .top = 360, .pull = bad, .moment = 1000}).tension[0]));
    }
}

TEST_CASE("bolt group: forces add up to the force and the moment")
{
    const statics::BoltGroup g{.at = {{0, 0}, {10, 300}, {80, 150}}, .force = {70, -600}, .moment = 40000};
    const auto F = statics::polar_bolt_group(g);
    const statics::Plane c = statics::centroid(g.at);
    double x = 0, y = 0, m = 0;
    for (std::size_t i = 0; i < F.size(); ++i) {
        x += F[i].x;
        y += F[i].y;
        m += (g.at[i].x - c.x) * F[i].y - (g.at[i].y - c.y) * F[i].x;
    }
    check_near_rel(x, 70, 1e-12);
    check_near_rel(y, -600, 1e-12);
    check_near_rel(m, 40000, 1e-12);
}

TEST_CASE("simple beam: reactions balance, and a load beyond a support lifts the other end")
{
    const auto b = statics::simple_beam({.first = 0, .second = 600, .loads = {{120, 500}, {520, 450}, {700, 100}}});
    check_near_rel(b.first + b.second, 1050, 1e-12);
    check_near_rel(b.second * 600, 120 * 500 + 520 * 450 + 700 * 100.0, 1e-12);
    const auto over = statics::simple_beam({.first = 0, .second = 600, .loads = {{700, 100}}});
    CHECK(over.first < 0);
    check_near_rel(over.max_moment, 10000, 1e-12); // over the support
}

TEST_CASE("hand figures: bracket shares add up to all the weight that hangs, in every direction")
{
    const tests::Demo d = tests::demo();
    const results::LoadCase lc = state("all at once", {0.35, -3, 0.5});
    const auto f = statics::hand_figures(d.layout, lc, 0);
    for (std::size_t k = 0; k < 3; ++k) {
        const double all = d.layout.hung_mass() * base::gravity_m_s2 * lc.acceleration_g[k];
        check_near_rel(f.brackets[0].force_N[k] + f.brackets[1].force_N[k], all, 1e-12);
    }
    CHECK(f.brackets[0].overturning_N == -f.brackets[1].overturning_N);
}

TEST_CASE("hand figures: an item off the middle loads the nearer bracket by the lever")
{
    tests::Demo d = tests::demo();
    d.layout.item->centre[0] = 125 + 0.25 * 454; // a quarter of the way between the webs
    const auto f = statics::hand_figures(d.layout, state("parked", {0, -1, 0}), 0);
    const double own = d.layout.brackets[0].mass() * base::gravity_m_s2, item = 36 * base::gravity_m_s2;
    check_near_rel(-f.brackets[0].force_N[1], own + 0.75 * item, 1e-12);
    check_near_rel(-f.brackets[1].force_N[1], own + 0.25 * item, 1e-12);
}

TEST_CASE("hand figures grow in proportion to the accelerations")
{
    const tests::Demo d = tests::demo();
    const auto one = statics::hand_figures(d.layout, state("a", {0.2, -1, 0.3}), 0), two = statics::hand_figures(d.layout, state("b", {0.4, -2, 0.6}), 0);
    for (std::size_t i = 0; i < one.bolts.size(); ++i) {
        check_near_rel(two.bolts[i].tension_N, 2 * one.bolts[i].tension_N, 1e-12);
        check_near_rel(two.bolts[i].shear_one_row_N, 2 * one.bolts[i].shear_one_row_N, 1e-12);
        check_near_rel(two.bolts[i].shear_group_N, 2 * one.bolts[i].shear_group_N, 1e-12);
    }
    for (std::size_t i = 0; i < one.ends.size(); ++i) check_near_rel(two.ends[i].force_N, 2 * one.ends[i].force_N, 1e-12);
}

TEST_CASE("hand figures of the mirrored job are the mirrored figures")
{
    const auto a = statics::hand_figures(tests::demo().layout, state("a", {0.35, -3, 0.5}), 0.05);
    const auto b = statics::hand_figures(mirrored().layout, state("a", {-0.35, -3, 0.5}), 0.05);
    for (const char* name : {"L1", "L2", "R1", "R2"}) {
        CAPTURE(name);
        check_near_rel(statics::bolt(b, name)->tension_N, statics::bolt(a, name)->tension_N, 1e-12);
        check_near_rel(statics::bolt(b, name)->shear_group_N, statics::bolt(a, name)->shear_group_N, 1e-12);
    }
    check_near_rel(statics::end(b, "upper rail", "right")->force_N, statics::end(a, "upper rail", "left")->force_N, 1e-12);
}

TEST_CASE("angle ends take exactly the pull of the bolts through the angle")
{
    const auto f = statics::hand_figures(tests::demo().layout, state("a", {0, -3, 0.5}), 0);
    check_near_rel(statics::end(f, "upper rail", "left")->force_N + statics::end(f, "upper rail", "right")->force_N,
                   statics::bolt(f, "L2")->tension_N + statics::bolt(f, "R2")->tension_N, 1e-12);
}

TEST_CASE("an angle that stops short of the frame has no hand figure but a reason")
{
    tests::Demo d = tests::demo();
    d.layout.angles[1].ends[0].tied = false;
    const auto f = statics::hand_figures(d.layout, state("a", {0, -3, 0}), 0);
    CHECK_FALSE(statics::angle(f, "upper rail")->covered);
    CHECK_FALSE(statics::angle(f, "upper rail")->reason.empty());
    CHECK(statics::end(f, "upper rail", "left") == nullptr);
    CHECK(statics::angle(f, "lower rail")->covered);
}

TEST_CASE("rebound turns the leg about its top: the lower bolt pulls")
{
    const auto f = statics::hand_figures(tests::demo().layout, state("rebound", {0, 1, 0}), 0);
    CHECK(statics::bracket(f, "left")->pivot == statics::Pivot::top);
    CHECK(statics::bolt(f, "L1")->tension_N > statics::bolt(f, "L2")->tension_N);
    CHECK(statics::bracket(f, "left")->push_y_mm == 760);
    CHECK(statics::bracket(f, "left")->brace_N < 0); // the brace pulls
}

TEST_CASE("the layout's mass tolerance counts in the short form")
{
    const tests::Demo d = tests::demo();
    const auto lc = state("a", {0, -3, 0});
    CHECK(statics::hand_figures(d.layout, lc).bolts[1].tension_N == statics::hand_figures(d.layout, lc, 0.05).bolts[1].tension_N);
    CHECK(statics::hand_figures(d.layout, lc).bolts[1].tension_N > statics::hand_figures(d.layout, lc, 0).bolts[1].tension_N);
}

TEST_CASE("a mass that is not a number shows in every figure that it enters")
{
    tests::Demo d = tests::demo();
    d.layout.item->mass = not_a_number;
    const auto f = statics::hand_figures(d.layout, state("a", {0, -3, 0}), 0);
    CHECK(std::isnan(statics::bolt(f, "L2")->tension_N));
    CHECK(std::isnan(statics::bolt(f, "L2")->shear_one_row_N));
    CHECK(std::isnan(statics::end(f, "upper rail", "left")->force_N));
}

TEST_CASE("cards of statics: NaN refused, ids once, figures as in the functions")
{
    std::set<std::string> ids;
    for (const base::Card& c : statics::cards()) {
        CAPTURE(c.id);
        CHECK(ids.insert(c.id).second);
        REQUIRE(static_cast<bool>(c.evaluate));
        std::vector<double> in;
        for (const base::Symbol& s : c.symbols) in.push_back(s.unit != "rad" && base::outside(s, 3).empty() ? 3 : 0.5);
        CHECK(c.evaluate(in).covered);
        for (double& v : in) {
            const double good = std::exchange(v, not_a_number);
            CHECK_FALSE(c.evaluate(in).covered);
            v = good;
        }
        CHECK_FALSE(c.evaluate({}).covered);
    }
    CHECK(ids.size() == 15);
    const auto t = statics::lever_rule({.at = {20, 340}, .foot = 0, .top = 360, .pull = 0, .moment = 116234});
    check_near_rel(statics::cards()[3].evaluate({116234, 340, 20}).nominal, t.tension[1], 1e-12);
}

TEST_SUITE_END();
