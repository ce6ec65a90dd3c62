// Pulses, spectra, quarter car and fatigue agree with themselves: limits, scaling, cutting in pieces, refusals.
#include "actions/pulses.h"
#include "actions/quarter_car.h"
#include "strength/fatigue.h"
#include "support/near.h"

#include <cmath>
#include <limits>
#include <numbers>

using namespace thinskin;
using namespace thinskin::actions;
using tests::check_near_abs;
using tests::check_near_rel;

namespace {

constexpr Pulse all_pulses[] = {Pulse::half_sine, Pulse::sawtooth, Pulse::versed_sine};
constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();
const Psd table{{{5, 0.002}, {20, 0.02}, {80, 0.02}, {200, 0.0005}}};

} // namespace

TEST_SUITE_BEGIN("consistency: shock, vibration, fatigue");

TEST_CASE("fast pulses tend to the impulse w dv, slow ones to the base's own peak")
{
    for (const Pulse pulse : all_pulses) {
        CAPTURE(static_cast<int>(pulse));
        const double per_x = pulse == Pulse::half_sine ? 4 : std::numbers::pi; // w dv/A over f D
        check_near_rel(shock_peaks(pulse, 1e-3, 0)->absolute, per_x * 1e-3, 1e-4);
        for (const double zeta : {0.05, 0.2}) {
            check_near_abs(shock_peaks(pulse, 50, zeta)->absolute, 1, 0.011);
            check_near_abs(shock_peaks(pulse, 50, zeta)->pseudo, 1, 0.011);
        }
    }
}

TEST_CASE("without damping absolute and pseudo-acceleration are one; with it the absolute one is not the smaller")
{
    for (const Pulse pulse : all_pulses)
        for (const double x : {0.2, 0.8, 2.3}) {
            check_near_rel(shock_peaks(pulse, x, 0)->pseudo, shock_peaks(pulse, x, 0)->absolute, 1e-12);
            CHECK(shock_peaks(pulse, x, 0.1)->absolute >= shock_peaks(pulse, x, 0.1)->pseudo);
        }
}

TEST_CASE("more damping lowers the answer at the most sensitive duration")
{
    for (const Pulse pulse : {Pulse::half_sine, Pulse::versed_sine}) {
        double last = infinite;
        for (const double zeta : {0.0, 0.02, 0.05, 0.1, 0.3}) {
            const double now = shock_peaks(pulse, 0.8, zeta)->absolute;
            CHECK(now < last);
            last = now;
        }
    }
}

TEST_CASE("a pulse as samples gives what the pulse gives, in its own unit")
{
    constexpr int n = 400;
    constexpr double D = 0.011, f = 40, A = 12;
    Record record{{}, D / n};
    for (int i = 0; i <= n; ++i) record.a.push_back(A * std::sin(std::numbers::pi * i / n));
    for (const double zeta : {0.0, 0.05}) {
        const auto got = shock_peaks(record, f, zeta);
        REQUIRE(got.has_value());
        check_near_rel(got->absolute, A * shock_peaks(Pulse::half_sine, f * D, zeta)->absolute, 1e-5); // chords of the arc
        check_near_rel(got->pseudo, A * shock_peaks(Pulse::half_sine, f * D, zeta)->pseudo, 1e-5);
    }
}

TEST_CASE("pulses and records that cannot be used are refused, NaN among them")
{
    for (const double bad : {not_a_number, infinite, 0.0, -1.0, 51.0}) CHECK_FALSE(shock_peaks(Pulse::half_sine, bad, 0.05).has_value());
    for (const double bad : {not_a_number, -0.01, 0.6}) CHECK_FALSE(shock_peaks(Pulse::half_sine, 1, bad).has_value());
    CHECK_FALSE(shock_peaks(Record{{0}, 0.001}, 10, 0.05).has_value());
    CHECK_FALSE(shock_peaks(Record{{0, not_a_number}, 0.001}, 10, 0.05).has_value());
    CHECK_FALSE(shock_peaks(Record{{0, 1, 0}, 0.01}, 10, 0.05).has_value()); // ten samples a period are too coarse
    CHECK_FALSE(shock_peaks(Record{{0, 1, 0}, not_a_number}, 10, 0.05).has_value());
    CHECK_FALSE(shock_response({.pulse = half_sine, .kind = 0, .A_g = 10, .D_s = 1, .f_Hz = 60, .zeta = 0.05}).covered);
}

TEST_CASE("a table cut at any frequency has the same area and the same answer")
{
    Psd cut = table;
    cut.points.insert(cut.points.begin() + 1, {11, value_at(table, 11)});
    cut.points.insert(cut.points.end() - 1, {130, value_at(table, 130)});
    check_near_rel(mean_square(cut), mean_square(table), 1e-12);
    check_near_rel(random_response(cut, 25, 0.05).rms_g, random_response(table, 25, 0.05).rms_g, 1e-8);
}

TEST_CASE("a table in m2/s3 is the same table; its answer scales with the root of the density")
{
    Psd metric = table, doubled = table;
    for (PsdPoint& p : metric.points) p.P *= 96.1703842225; // 9.80665 squared
    for (PsdPoint& p : doubled.points) p.P *= 2;
    check_near_rel(random_response(in_g2_Hz(metric, PsdUnit::m2_s3), 25, 0.05).rms_g, random_response(table, 25, 0.05).rms_g, 1e-12);
    check_near_rel(random_response(doubled, 25, 0.05).rms_g, std::sqrt(2) * random_response(table, 25, 0.05).rms_g, 1e-12);
}

TEST_CASE("a mount far above the input moves with its base, and its crossing rate lies inside the table")
{
    const Psd low{{{1, 0.01}, {10, 0.01}, {1000, 1e-12}}};
    const RandomResponse stiff = random_response(low, 800, 0.05);
    check_near_rel(stiff.rms_g, std::sqrt(mean_square(low)), 1e-3);
    const RandomResponse r = random_response(table, 25, 0.05);
    CHECK(r.rate_Hz > 20);
    CHECK(r.rate_Hz < 40);
}

TEST_CASE("nothing is extrapolated: outside of its table, with a bad table or a NaN the answer is a reason")
{
    for (const double f : {4.9, 201.0, not_a_number, 0.0, -3.0, infinite}) {
        CAPTURE(f);
        const RandomResponse r = random_response(table, f, 0.05);
        CHECK_FALSE(r.reason.empty());
        CHECK(r.rms_g == 0);
        CHECK(r.miles_g == 0); // Miles is refused with it
    }
    for (const double zeta : {not_a_number, 0.0, 0.5}) CHECK_FALSE(random_response(table, 25, zeta).reason.empty());
    CHECK_FALSE(random_response({}, 25, 0.05).reason.empty());
    CHECK_FALSE(random_response({{{5, 0.1}}}, 25, 0.05).reason.empty());
    CHECK_FALSE(random_response({{{5, 0.1}, {5, 0.2}, {50, 0.1}}}, 25, 0.05).reason.empty());
    CHECK_FALSE(random_response({{{5, 0.1}, {50, not_a_number}}}, 25, 0.05).reason.empty());
    CHECK_FALSE(random_response({{{5, 0.1}, {50, 0}}}, 25, 0.05).reason.empty());
    CHECK_FALSE(segment_rms({20, 0.1, 10, 0.1}).covered);
    CHECK_FALSE(peak_factor({.rate_Hz = 1, .T_s = 5}).covered);
}

TEST_CASE("Miles is doubted where its assumptions fail, and only there")
{
    const Psd flat{{{1, 0.01}, {2000, 0.01}}};
    CHECK(random_response(flat, 50, 0.05).miles_warning.empty());
    CHECK_FALSE(random_response(flat, 50, 0.2).miles_warning.empty());
    CHECK_FALSE(random_response(flat, 1.5, 0.05).miles_warning.empty());
    CHECK_FALSE(random_response(table, 120, 0.05).miles_warning.empty());
}

TEST_CASE("road: a class rougher doubles, four times the speed doubles, the empty van shakes more, damping at its best is a minimum")
{
    const auto rms = [](const QuarterCar& q, double Gd, double v) { return body_rms({Gd, v, q.m_s_kg, q.m_u_kg, q.k_s_N_mm, q.k_t_N_mm, q.c_Ns_mm}).nominal; };
    const QuarterCar car = rear_corner_laden;
    check_near_rel(rms(car, 1024, 15000), 2 * rms(car, 256, 15000), 1e-12);
    check_near_rel(rms(car, 256, 40000), 2 * rms(car, 256, 10000), 1e-12);
    check_near_rel(rms(rear_corner_unladen, 256, 15000), 1.8 * rms(car, 256, 15000), 0.02);
    QuarterCar best = car;
    best.c_Ns_mm = car.k_s_N_mm * std::sqrt((car.m_s_kg + car.m_u_kg) * 1e-3 / car.k_t_N_mm); // k_s ((m_s + m_u)/k_t)^0.5; kg = 1e-3 N s2/mm
    for (const double times : {0.8, 1.25}) {
        QuarterCar other = best;
        other.c_Ns_mm *= times;
        CHECK(rms(other, 256, 15000) > rms(best, 256, 15000));
    }
    CHECK_FALSE(mount_on_car(car, {256, 15000}, 0.4, 0.05).reason.empty());
    CHECK_FALSE(mount_on_car(car, {256, 15000}, not_a_number, 0.05).reason.empty());
    CHECK_FALSE(mount_on_car(car, {not_a_number, 15000}, 10, 0.05).reason.empty());
    for (const double zeta : {not_a_number, 0.0, -1.0, 0.5}) CHECK_FALSE(mount_on_car(car, {256, 15000}, 10, zeta).reason.empty());
}

TEST_CASE("a stiff mount on the body has the body's acceleration, wheel hop is worse than 30 Hz")
{
    const auto at = [](double f) { return mount_on_car(rear_corner_laden, {256, 60e6 / 3600}, f, 0.05).rms_g; };
    CHECK(at(10) > 2 * at(30));
    const double body = body_rms({256, 60e6 / 3600, 700, 75, 45, 260, 3.2}).nominal;
    CHECK(at(80) > 0.95 * body);
    CHECK(at(80) < 1.1 * body);
}

TEST_CASE("Miner is linear in the cycles and adds over blocks; the line is steady at its knees")
{
    using namespace strength;
    for (const SnLine line : {SnLine::direct, SnLine::shear}) {
        const std::vector<Block> one{{120, 1e4}}, two{{60, 3e5}};
        check_near_rel(miner_sum(line, 71, {{120, 1e4}, {60, 3e5}}), miner_sum(line, 71, one) + miner_sum(line, 71, two), 1e-12);
        check_near_rel(miner_sum(line, 71, {{120, 7e4}}), 7 * miner_sum(line, 71, one), 1e-12);
    }
    const SnKnees k = sn_knees(SnLine::direct, 71);
    check_near_rel(sn_cycles(SnLine::direct, 71, k.S_D_MPa * (1 - 1e-9)), sn_cycles(SnLine::direct, 71, k.S_D_MPa * (1 + 1e-9)), 1e-7);
    check_near_rel(sn_cycles(SnLine::direct, 71, k.S_D_MPa), 5e6, 1e-9);
    check_near_rel(sn_cycles(SnLine::direct, 71, k.S_L_MPa * (1 + 1e-9)), 1e8, 1e-6);
    CHECK(std::isinf(sn_cycles(SnLine::direct, 71, k.S_L_MPa * 0.999)));
    CHECK(std::isnan(miner_sum(SnLine::direct, 71, {{not_a_number, 1}})));
}

TEST_CASE("random damage grows with the stress; no stress gives no distance, not an endless one")
{
    using namespace strength;
    double last = 0;
    for (double sigma = 1; sigma < 100; sigma *= 1.3) {
        const double now = narrow_band_damage(SnLine::direct, 50, sigma);
        CHECK(now > last);
        last = now;
    }
    const DistanceToLimit tiny{.line = direct_stress, .C_MPa = 160, .gamma = 1, .sigma_MPa = 0.5, .nu_Hz = 15, .v_mm_s = 15000, .D = 0.5};
    CHECK_FALSE(distance_to_limit(tiny).covered);
}

TEST_SUITE_END();
