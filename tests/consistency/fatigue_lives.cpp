// Life under repeated stress: integration by other means, Miner linear, what is missing never passes.
#include "checks/fatigue.h"
#include "strength/fatigue.h"
#include "support/near.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <random>

namespace {

using namespace thinskin;
using tests::check_near_rel;

constexpr double km = 1e6;

results::Shaking road()
{
    results::Shaking s;
    s.why_not = s.lift_with = "";
    s.answers = {{15, 0.5, 14}};
    s.speed_mm_s = 60 * km / 3600;
    s.distance_per_year_mm = 15000 * km;
    s.wanted_mm = 150000 * km;
    return s;
}

results::Life detail(double per_g, double category = 36)
{
    results::Life l;
    l.category = category;
    l.per_g_MPa = per_g;
    return l;
}

results::Life worked_out(double per_g, const results::Shaking& s, double category = 36)
{
    results::Life l = detail(per_g, category);
    checks::work_out(l, s);
    return l;
}

/// The S-N line written anew, from its printed constants.
double cycles_to_failure(double C, double S)
{
    const double S_D = std::cbrt(0.4) * C;
    if (S >= S_D) return 2e6 * std::pow(C / S, 3);
    return S >= std::pow(0.05, 0.2) * S_D ? 5e6 * std::pow(S_D / S, 5) : std::numeric_limits<double>::infinity();
}

TEST_SUITE_BEGIN("life under repeated stress");

TEST_CASE("damage over the distance: the same as summing the cycles of a road drawn at random, peak by peak")
{
    const results::Life l = worked_out(20, road());
    std::mt19937_64 draw(7);
    std::uniform_real_distribution<double> u(0, 1);
    const double sigma = 20 * 0.5 * 1.35;
    double sum = 0;
    constexpr int n = 2000000;
    for (int i = 0; i < n; ++i) {
        const double peak = sigma * std::sqrt(-2 * std::log(1 - u(draw))); // Rayleigh
        sum += 1 / cycles_to_failure(36, 2 * peak);
    }
    const double cycles = 14 * 150000.0 * 1000 / (60 / 3.6);
    check_near_rel(l.damage, cycles * sum / n, 5e-3); // scatter of two million draws is about 0.1 %
}

TEST_CASE("kilometres and years: the damage of that distance is the limit, whatever distance was asked for")
{
    const results::Shaking s = road();
    const results::Life l = worked_out(20, s);
    REQUIRE(l.km);
    results::Shaking to_limit = s;
    to_limit.wanted_mm = *l.km * km;
    check_near_rel(worked_out(20, to_limit).damage, 0.3, 1e-12);
    check_near_rel(*l.years, *l.km / 15000, 1e-12);
    check_near_rel(*worked_out(20, to_limit).km, *l.km, 1e-12);
}

TEST_CASE("Miner is linear: in the distance, in the time the item runs, and in the sum of both")
{
    results::Shaking s = road();
    const double once = worked_out(20, s).damage;
    s.wanted_mm *= 2;
    check_near_rel(worked_out(20, s).damage, 2 * once, 1e-12);
    s = road();
    s.running_Hz = {48};
    s.running_g = 0.6;
    s.running_s_a_year = 800 * 3600;
    const results::Life both = worked_out(20, s);
    CHECK(both.damage_running > 0);
    check_near_rel(both.damage, once + both.damage_running, 1e-12);
    // 48 Hz, 800 h, ten years: 1.3824e9 cycles of 2 x 20 x 0.6 x 1.35 = 32.4 MPa, above the knee of 26.5
    check_near_rel(both.damage_running, 48.0 * 800 * 3600 * 10 / (2e6 * std::pow(36 / 32.4, 3)), 1e-12);
    s.running_s_a_year *= 3;
    check_near_rel(worked_out(20, s).damage_running, 3 * both.damage_running, 1e-12);
    s.running_g = 0.2; // 10.8 MPa, under the cut-off of 14.6
    CHECK(worked_out(20, s).damage_running == 0);
}

TEST_CASE("of all mounts the one that tires most counts, not the one that shakes most")
{
    results::Shaking s = road();
    const double soft = worked_out(20, s).damage;
    s.answers.push_back({40, 0.49, 40});
    const results::Life l = worked_out(20, s);
    CHECK(l.damage > 2 * soft);
    CHECK(l.at_Hz == 40);
}

TEST_CASE("more stress or a lower category lasts less; no stress gives no distance; no number stays none")
{
    CHECK(*worked_out(21, road()).km < *worked_out(20, road()).km);
    CHECK(*worked_out(20, road()).km < *worked_out(20, road(), 50).km);
    const results::Life none = worked_out(0, road());
    CHECK(none.damage == 0);
    CHECK_FALSE(none.km.has_value());
    CHECK(std::isnan(worked_out(std::nan(""), road()).damage));
    CHECK(std::isnan(worked_out(1e6, road()).damage)); // outside of the rule: no figure instead of a clamped one
}

TEST_CASE("stress per g is never less than what any swing about 1 g does, for contacts that answer in proportion")
{
    const checks::Heave a{-1, -3.2, 1.2};
    const double down = 7, up = 19; // slopes of the two senses; the size of a force
    const auto force = [&](double g) { return g < 0 ? -g * down : g * up; };
    const double u = checks::per_g({force(a.parked), force(a.pothole), force(a.rebound)}, a);
    for (double swing = 0.05; swing < 6; swing += 0.05) CHECK(std::abs(force(-1 - swing) - force(-1 + swing)) <= 2 * u * swing * (1 + 1e-12));
    check_near_rel(checks::per_g({5, 5 * 3.2, -5 * 1.2}, a), 5, 1e-12); // plain linear
    CHECK(std::isnan(checks::per_g({std::nan(""), 1, 1}, a)));
    CHECK(std::isnan(checks::per_g({1, 1, std::nan("")}, a)));
}

results::Outcome with_rows(const results::Fatigue& f, const results::Shaking& s)
{
    layout::Layout l;
    l.item = layout::Item{};
    l.item->name = "unit";
    checks::Demands d;
    d.layout = &l;
    d.shaking = &s;
    d.fatigue = &f;
    results::Outcome o;
    o.checks = checks::fatigue(d);
    o.groups = checks::groups(o.checks);
    return o;
}

TEST_CASE("rows: the worst of a kind stands for it; only a failing one is required; a road without spectrum is not covered and changes nothing")
{
    results::Fatigue f;
    f.asked = f.run = true;
    f.limit = 0.3;
    f.gamma = 1.35;
    f.lives = {worked_out(2, road()), worked_out(4, road())};
    f.lives[0].kind = f.lives[1].kind = "bolt threads";
    f.lives[1].detail = "L2";
    const results::Outcome good = with_rows(f, road());
    REQUIRE(good.checks.size() == 1);
    CHECK(good.checks[0].title.find("L2") != std::string::npos);
    CHECK(good.checks[0].status == base::Status::judgement);
    CHECK_FALSE(good.groups.at(0).required);

    f.lives[1] = worked_out(60, road());
    f.lives[1].kind = "bolt threads";
    const results::Outcome bad = with_rows(f, road());
    CHECK(bad.checks[0].status == base::Status::fail);
    CHECK(checks::verdict(bad.groups) == base::Verdict::fail);
    CHECK(checks::governing(bad.checks).has_value());

    f.lives[0].why_not = "large deflection: test";
    CHECK(with_rows(f, road()).checks[0].status == base::Status::fail); // what fails is not hidden by what is not known
    f.lives[1] = worked_out(2, road());
    f.lives[1].kind = "bolt threads";
    CHECK(with_rows(f, road()).checks[0].status == base::Status::not_covered);

    results::Fatigue none;
    none.asked = true;
    none.why_not = "no spectrum";
    none.lift_with = "road.basis: random_vibration";
    const results::Outcome quiet = with_rows(none, road());
    REQUIRE(quiet.checks.size() == 1);
    CHECK(quiet.checks[0].status == base::Status::not_covered);
    CHECK_FALSE(quiet.checks[0].required);
    CHECK_FALSE(quiet.groups.at(0).required);
}

TEST_SUITE_END();

} // namespace
