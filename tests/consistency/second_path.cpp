// The item's tether: what is asked of it, what makes it not covered.
#include "actions/load_cases.h"
#include "actions/second_path.h"
#include "checks/checks.h"
#include "support/demo_layout.h"
#include "support/near.h"

#include <cmath>
#include <doctest/doctest.h>
#include <functional>
#include <limits>

namespace {

using namespace thinskin;

model::Quantity is(double value, const std::string& text = "given")
{
    model::Quantity q;
    q.value = value;
    q.text = text;
    return q;
}

model::Tether strap()
{
    model::Tether t;
    t.tied_to = "frame";
    t.slack = is(40);
    t.length = is(500);
    t.stretch = is(0.12);
    t.strength = is(20000);
    t.anchor_strength = is(25000);
    return t;
}

struct Asked { results::Tether force; std::vector<results::Check> rows; };

Asked asked(const std::function<void(model::Tether&)>& change)
{
    tests::Demo d = tests::demo();
    model::Tether t = strap();
    change(t);
    d.source->item->tether = t;
    Asked a;
    a.force = actions::tether(d.layout, actions::load_cases(d.layout).cases);
    checks::Demands demands;
    demands.layout = &d.layout;
    demands.tether = &a.force;
    a.rows = checks::tether(demands);
    return a;
}

TEST_SUITE_BEGIN("second load path");

TEST_CASE("a tether with all its figures is judged: the fall, worked out step by step in time, ends at the pull that is asked")
{
    const Asked a = asked([](model::Tether&) {});
    REQUIRE(a.rows.size() == 2);
    // A mass that falls 40 mm and half of the 60 mm that the tether is longer at its break, and then runs into a spring that reaches the
    // breaking strength over the other half: small steps in time, nothing of the closed formula.
    const double k = 20000 / (0.5 * 0.12 * 500), m = a.force.mass_kg * a.force.down_g, g = 9806.65;
    double x = -70, v = 0, most = 0;
    for (const double dt = 2e-6; v >= 0 && x < 1000;) {
        const double pull = x > 0 ? k * x : 0;
        most = std::max(most, pull);
        v += (g - 1000 * pull / m) * dt;
        x += v * dt;
    }
    tests::check_near_rel(a.force.shaken_N, most, 1e-3); // steps of 2 us
    tests::check_near_rel(a.rows[0].demand, most, 1e-3);
    CHECK(a.rows[0].capacity == 10000);
    CHECK(a.rows[1].capacity == 12500);
    for (const results::Check& c : a.rows) CHECK(c.status == (c.demand <= c.capacity ? base::Status::judgement : base::Status::fail));
}

TEST_CASE("each figure that is missing turns the tether to not covered, and the row says which")
{
    const auto lacks = [](const std::function<void(model::Tether&)>& change, std::size_t row, const std::string& key) {
        const Asked a = asked(change);
        CAPTURE(key);
        CHECK(a.rows[row].status == base::Status::not_covered);
        CHECK(a.rows[row].lift_with.find(key) == 0);
    };
    for (std::size_t row : {0U, 1U}) {
        lacks([](model::Tether& t) { t.slack.reset(); }, row, "item.tether.slack");
        lacks([](model::Tether& t) { t.stretch.reset(); }, row, "item.tether.length");
        lacks([](model::Tether& t) { t.length.reset(), t.stretch.reset(); }, row, "item.tether.stiffness");
        lacks([](model::Tether& t) { t.tied_to.clear(); }, row, "item.tether.tied_to");
        lacks([](model::Tether& t) { t.tied_to = "skin"; }, row, "item.tether.tied_to");
        lacks([](model::Tether& t) { t.tied_to = "bracket"; }, row, "item.tether.tied_to");
        lacks([](model::Tether& t) { t.slack = is(std::numeric_limits<double>::quiet_NaN()); }, row, "item.tether");
    }
    lacks([](model::Tether& t) { t.strength.reset(), t.stretch.reset(), t.length.reset(), t.stiffness = is(300); }, 0, "item.tether.strength");
    lacks([](model::Tether& t) { t.anchor_strength.reset(); }, 1, "item.tether.anchor_strength");
    CHECK(asked([](model::Tether& t) { t.anchor_strength.reset(); }).rows[0].has_numbers());
    CHECK(asked([](model::Tether& t) { t.strength = is(std::numeric_limits<double>::quiet_NaN()), t.stiffness = is(300), t.stretch.reset(); }).rows[0].status == base::Status::not_covered);
}

TEST_CASE("more slack or a stiffer tether pulls more, a weak one fails")
{
    const auto pull = [](double slack, double stiffness) { return asked([&](model::Tether& t) { t.slack = is(slack), t.stretch.reset(), t.stiffness = is(stiffness); }).force.shaken_N; };
    CHECK(pull(41, 300) > pull(40, 300));
    CHECK(pull(40, 301) > pull(40, 300));
    const double none = pull(0, 300);
    const Asked a = asked([](model::Tether&) {});
    tests::check_near_rel(none, 2 * a.force.mass_kg * a.force.down_g * 9.80665, 1e-12); // suddenly put on: twice the weight
    CHECK(asked([](model::Tether& t) { t.strength = is(2000), t.stretch.reset(), t.stiffness = is(300); }).rows[0].status == base::Status::fail);
}

TEST_CASE("a rope that stiffens late pulls no more than is asked, as long as it is at its break no stiffer than twice its secant; its secant alone would ask too little")
{
    const Asked a = asked([](model::Tether&) {});
    const double F_b = 20000, x_b = 60, W = a.force.mass_kg * a.force.down_g * 9.80665;
    // F = F_b (x/x_b)^n, caught where its own energy, F x/(n + 1), has taken up W (slack + x): found by steps of a micrometre.
    const auto pull = [&](double n) {
        for (double x = 0;; x += 1e-3)
            if (F_b * std::pow(x / x_b, n) * x / (n + 1) >= W * (40 + x)) return F_b * std::pow(x / x_b, n);
    };
    for (const double n : {1.0, 1.3, 1.7, 2.0}) {
        CAPTURE(n);
        CHECK(pull(n) <= a.force.shaken_N);
    }
    const Asked secant = asked([&](model::Tether& t) { t.stretch.reset(), t.stiffness = is(F_b / x_b); });
    tests::check_near_rel(secant.force.shaken_N, pull(1), 1e-3); // the step
    CHECK(secant.force.shaken_N < a.force.shaken_N);
}

TEST_CASE("without a tether there is no row, and without a road no force")
{
    tests::Demo d = tests::demo();
    CHECK_FALSE(actions::tether(d.layout, {}).given);
    d.source->item->tether = strap();
    const results::Tether t = actions::tether(d.layout, {});
    CHECK(t.given);
    CHECK(t.lift_with == "road");
}

TEST_SUITE_END();

} // namespace
