// Road roughness through a quarter car. Classes: ISO 8608 as quoted by public code texts, published (read) second-hand. Vehicle
// parameters: common practice, no source. Accelerations: computed from the formula elsewhere, checked by integration.
#include "actions/quarter_car.h"
#include "support/coverage.h"
#include "support/near.h"

#include <cmath>

using namespace thinskin;
using actions::QuarterCar;
using tests::check_near_abs;
using tests::check_near_rel;
using tests::From;
using tests::holds;

namespace {

constexpr double km_h = 1e6 / 3600; // in mm/s
constexpr double g = 9.80665;

double rms_m_s2(const QuarterCar& q, char road, double v_km_h)
{
    return g * actions::body_rms({actions::roughness_of_class(road), v_km_h * km_h, q.m_s_kg, q.m_u_kg, q.k_s_N_mm, q.k_t_N_mm, q.c_Ns_mm}).nominal;
}

} // namespace

TEST_SUITE_BEGIN("published: road and vehicle");

TEST_CASE("ISO 8608 classes (AC-12): centres, and the vertical speed of a class C road at 60 km/h")
{
    CHECK(actions::roughness_of_class('A') == 16);
    CHECK(actions::roughness_of_class('B') == 64);
    CHECK(actions::roughness_of_class('C') == 256);
    CHECK(actions::roughness_of_class('D') == 1024);
    CHECK(actions::roughness_of_class('E') == 4096);
    CHECK(actions::roughness_of_class('X') == 0);
    // Upper limits of the classes, 1e-6 m3 (ISO 8608:1995 as quoted by two public research texts: read, second-hand): a centre is the
    // geometric mean of its two.
    constexpr double limits[] = {32, 128, 512, 2048, 8192};
    for (std::size_t i = 1; i < 5; ++i) check_near_rel(actions::roughness_of_class(static_cast<char>('A' + i)), std::sqrt(limits[i - 1] * limits[i]), 1e-12);
    holds("AC-12", From::recomputed);
    check_near_rel(actions::road_speed_density({.Gd = 256, .v_mm_s = 60 * km_h}).nominal, 1.68441e-3, 3e-6); // computed from the formula
    // A public program's constant for class A, read: sqrt(2 pi^2 n0^2 Gd) = 1.777 mm per root metre, the strength of the white noise that makes
    // the road; one-sided in time that is sqrt(G_v/(2 v)). Four printed digits.
    holds("AC-12", From::read);
    check_near_rel(1000 * std::sqrt(actions::road_speed_density({.Gd = 16, .v_mm_s = 25000}).nominal / (2 * 25)), 1.777, 3e-4);
}

TEST_CASE("Quarter car (AC-13): body acceleration, m/s2, by class, speed and load")
{
    holds("AC-13", From::recomputed);
    struct Row { char road; double v, laden, unladen; };
    constexpr Row table[] = {{'A', 120, 0.38, 0.69}, {'B', 20, 0.31, 0.56}, {'C', 60, 1.07, 1.95}, {'C', 100, 1.38, 2.51}, {'D', 40, 1.74, 3.18}, {'E', 80, 4.92, 8.99}};
    for (const Row& r : table) {
        CAPTURE(r.road);
        CAPTURE(r.v);
        check_near_abs(rms_m_s2(actions::rear_corner_laden, r.road, r.v), r.laden, 0.005);
        check_near_abs(rms_m_s2(actions::rear_corner_unladen, r.road, r.v), r.unladen, 0.005);
    }
    check_near_rel(rms_m_s2(actions::rear_corner_laden, 'C', 60), 1.06606, 3e-6);
    check_near_rel(rms_m_s2({250, 35, 16, 160, 0.98}, 'C', 72), 1.36737, 3e-6);
}

TEST_CASE("Quarter car (AC-13): the closed form is the integral of the density, summed plainly from 0.001 Hz to 3000 Hz")
{
    const actions::Road road{256, 60 * km_h};
    double sum = 0;
    constexpr int n = 40000;
    const double from = std::log(0.001), step = (std::log(3000.0) - from) / n;
    for (int i = 0; i < n; ++i) {
        const double f = std::exp(from + (i + 0.5) * step);
        sum += actions::body_density(actions::rear_corner_laden, road, f) * f * step;
    }
    check_near_rel(g * std::sqrt(sum), rms_m_s2(actions::rear_corner_laden, 'C', 60), 1e-3); // what lies above 3000 Hz: falls with 1/f
}

TEST_CASE("Overhang behind the rear axle (AC-14)")
{
    holds("AC-14", From::recomputed);
    // computed from the formula: wheelbase 3.3 m, then 3.43 m of a real cargo van (data file, published (read))
    check_near_abs(actions::overhang({.d_mm = 1000, .L_mm = 3300, .q = 1}).nominal, 1.338, 0.5e-3);
    check_near_abs(actions::overhang({.d_mm = 1200, .L_mm = 3300, .q = 1}).nominal, 1.411, 0.5e-3);
    check_near_abs(actions::overhang({.d_mm = 1000, .L_mm = 3430, .q = 1}).nominal, 1.324, 0.5e-3);
    check_near_abs(actions::overhang({.d_mm = 1000, .L_mm = 3300, .q = 0}).nominal, 1.303, 0.5e-3); // rear axle alone: 1 + d/L
    // the lever of an article on loading motorhomes, read: 150 kg one metre behind a wheelbase of three are 200 kg on the rear axle (AC-23); what
    // the axle moves by, the place behind it moves by the same lever
    check_near_rel(actions::overhang({.d_mm = 1000, .L_mm = 3000, .q = 0}).nominal, 200.0 / 150, 1e-12);
}

TEST_CASE("Mount on the body (AC-15), 5 % damping, 60 km/h, g")
{
    holds("AC-15", From::recomputed);
    constexpr double f[] = {5, 8, 10, 12, 15, 20, 30};
    constexpr double laden_C[] = {0.222, 0.302, 0.314, 0.272, 0.206, 0.154, 0.124}, unladen_D[] = {0.938, 1.233, 1.240, 1.056, 0.795, 0.586, 0.463};
    for (int i = 0; i < 7; ++i) {
        CAPTURE(f[i]);
        check_near_abs(actions::mount_on_car(actions::rear_corner_laden, {256, 60 * km_h}, f[i], 0.05).rms_g, laden_C[i], 0.5e-3);
        check_near_abs(actions::mount_on_car(actions::rear_corner_unladen, {1024, 60 * km_h}, f[i], 0.05).rms_g, unladen_D[i], 0.6e-3); // printed rows are twice the rounded class C
    }
}

TEST_SUITE_END();
