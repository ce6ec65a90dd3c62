#include "catalogue/sections.h"
#include "support/near.h"

#include <cmath>

// Section properties against printed tables and worked values from outside the project.
// Labels: "published (read)" = the printed number was read; "computed" = worked out from the formula by someone else;
// "from memory" = recalled. half(x) is half a unit of the last printed digit; the sliver above it is for values that
// fall on the edge of rounding.
TEST_SUITE_BEGIN("sections");

using namespace thinskin::catalogue;
using thinskin::tests::check_near_abs;
using thinskin::tests::check_near_rel;

namespace {

double half(double unit) { return 0.51 * unit; }

Section section(const char* text)
{
    const ReadSection r = read_section(text);
    REQUIRE_MESSAGE(r.ok, r.expected);
    return r.section;
}

} // namespace

// EN 10056 table of hot-rolled unequal angles, published (read): cm. Its y axis is parallel to the short leg, so
// I_y is our I_x when the long leg stands.
TEST_CASE("EN 10056 unequal angles: with fillets every printed digit is met")
{
    struct Row { double h, b, t, r1, A, y, x, I_x, I_y, I_u, I_v, unit_I_u, unit_I_x, W_x, W_y, tan_a; };
    constexpr Row table[] = {
        {30, 20, 3, 4, 1.43, 0.99, 0.50, 1.25, 0.44, 1.43, 0.26, 0.01, 0.01, 0.62, 0.29, 0.43},
        {40, 25, 4, 4, 2.46, 1.36, 0.62, 3.89, 1.16, 4.35, 0.70, 0.01, 0.01, 1.47, 0.62, 0.38},
        {50, 30, 5, 5, 3.78, 1.73, 0.74, 9.36, 2.51, 10.3, 1.54, 0.1, 0.01, 2.86, 1.11, 0.35},
        {60, 40, 5, 6, 4.79, 1.96, 0.97, 17.2, 6.11, 19.7, 3.54, 0.1, 0.1, 4.25, 2.02, 0.43},
        {60, 40, 6, 6, 5.68, 2.00, 1.01, 20.1, 7.12, 23.1, 4.16, 0.1, 0.1, 5.03, 2.38, 0.43},
    };
    for (const Row& r : table) {
        CAPTURE(r.h);
        CAPTURE(r.t);
        const Section s = rolled_angle({.b = r.b, .h = r.h, .t = r.t}, {.r1 = r.r1, .r2 = r.r1 / 2});
        check_near_abs(s.A / 1e2, r.A, half(0.01));
        check_near_abs(s.y_c / 1e1, r.y, half(0.01));
        check_near_abs(s.x_c / 1e1, r.x, half(0.01));
        check_near_abs(s.I_x / 1e4, r.I_x, half(r.unit_I_x));
        check_near_abs(s.I_y / 1e4, r.I_y, half(0.01));
        check_near_abs(s.I_u / 1e4, r.I_u, half(r.unit_I_u));
        check_near_abs(s.I_v / 1e4, r.I_v, half(0.01));
        check_near_abs(s.S_x_toe / 1e3, r.W_x, half(0.01));
        check_near_abs(s.S_y_toe / 1e3, r.W_y, half(0.01));
        check_near_abs(std::tan(s.theta), r.tan_a, half(0.01));
    }
}

// Equal angles with fillets: four digits computed by a separate routine from the same formulas (computed); their
// rounding agrees with EN 10056 (from memory).
TEST_CASE("EN 10056 equal angles: with fillets, computed values and those from memory")
{
    struct Row { double a, t, r1, A, c, I_x, I_u, I_v, W, i_v; };
    constexpr Row table[] = {
        {25, 3, 3.5, 1.423, 0.7227, 0.8025, 1.271, 0.3337, 0.4516, 0.4842},
        {30, 3, 5, 1.737, 0.8353, 1.405, 2.224, 0.5855, 0.6490, 0.5806},
        {40, 4, 6, 3.079, 1.120, 4.473, 7.088, 1.858, 1.553, 0.7769},
        {50, 5, 7, 4.803, 1.404, 10.96, 17.38, 4.547, 3.049, 0.9730},
        {60, 6, 8, 6.909, 1.688, 22.79, 36.14, 9.441, 5.285, 1.169},
    };
    constexpr double four_digits = 5.1e-4; // half a unit in the fourth digit, at worst
    for (const Row& r : table) {
        CAPTURE(r.a);
        const Section s = rolled_angle({.b = r.a, .h = r.a, .t = r.t}, {.r1 = r.r1, .r2 = r.r1 / 2});
        check_near_rel(s.A / 1e2, r.A, four_digits);
        check_near_rel(s.x_c / 1e1, r.c, four_digits);
        check_near_rel(s.I_x / 1e4, r.I_x, four_digits);
        check_near_rel(s.I_u / 1e4, r.I_u, four_digits);
        check_near_rel(s.I_v / 1e4, r.I_v, four_digits);
        check_near_rel(s.S_x_toe / 1e3, r.W, four_digits);
        check_near_rel(s.r_min / 1e1, r.i_v, four_digits);
    }
}

// "Machine Elements in Mechanical Design", 4th ed., Table A16-1, published (read): inch, and lb/ft.
// The older tables hold sharp-corner values.
TEST_CASE("Machine Elements in Mechanical Design, Table A16-1: sharp corners give the printed digits")
{
    struct Row { const char* name; double A, unit_A, I, unit_I, S, y, r_z, mass, unit_mass; };
    constexpr Row table[] = {
        {"angle 2x2x1/8 in", 0.484, 0.001, 0.190, 0.001, 0.131, 0.546, 0.398, 1.65, 0.01},
        {"angle 2x2x1/4 in", 0.938, 0.001, 0.348, 0.001, 0.247, 0.592, 0.391, 3.19, 0.01},
        {"angle 3x3x1/4 in", 1.44, 0.01, 1.24, 0.01, 0.577, 0.842, 0.592, 4.9, 0.1},
    };
    constexpr double in = 25.4, lb_per_ft = 0.45359237 / 0.3048;
    for (const Row& r : table) {
        CAPTURE(r.name);
        const Section s = section(r.name);
        check_near_abs(s.A / (in * in), r.A, half(r.unit_A));
        check_near_abs(s.I_x / std::pow(in, 4), r.I, half(r.unit_I));
        check_near_abs(s.S_x_toe / std::pow(in, 3), r.S, half(0.001));
        check_near_abs(s.y_c / in, r.y, half(0.001));
        check_near_abs(s.r_min / in, r.r_z, half(0.001));
        check_near_abs(s.mass_per_metre(7850) / lb_per_ft, r.mass, half(r.unit_mass) + 0.002 * r.mass); // 0.2 %: 3.4 lb/ft per in2
    }
}

// Small inch angles, computed from the formula by a separate routine; I and S may be one unit off in the fourth decimal
// because they were rounded twice there (0.04395 stands as 0.0440).
TEST_CASE("small inch angles: computed sharp-corner values")
{
    struct Row { const char* name; double A, I, S, y, r_z; };
    constexpr Row table[] = {
        {"angle 1x1x1/8 in", 0.234, 0.0217, 0.0309, 0.296, 0.196},
        {"angle 1-1/4x1-1/4x1/8 in", 0.297, 0.0440, 0.0493, 0.359, 0.246},
        {"angle 1-1/2x1-1/2x1/8 in", 0.359, 0.0778, 0.0721, 0.421, 0.296},
    };
    constexpr double in = 25.4;
    for (const Row& r : table) {
        CAPTURE(r.name);
        const Section s = section(r.name);
        check_near_abs(s.A / (in * in), r.A, half(0.001));
        check_near_abs(s.I_x / std::pow(in, 4), r.I, 0.0001);
        check_near_abs(s.S_x_toe / std::pow(in, 3), r.S, 0.0001);
        check_near_abs(s.y_c / in, r.y, half(0.001));
        check_near_abs(s.r_min / in, r.r_z, half(0.001));
    }
}

// Computed from the formula by a separate routine, four digits.
TEST_CASE("sharp-corner angles: computed values")
{
    struct Row { const char* name; double A, I_x, I_v, S, J; };
    constexpr Row table[] = {
        {"angle 25x25x3", 141.0, 8204, 3376, 464.8, 423.0},
        {"angle 30x30x3", 171.0, 14580, 5947, 681.5, 513.0},
        {"angle 40x40x4", 304.0, 46080, 18800, 1615, 1621},
        {"angle 50x50x5", 475.0, 112500, 45890, 3155, 3958},
    };
    for (const Row& r : table) {
        CAPTURE(r.name);
        const Section s = section(r.name);
        check_near_rel(s.A, r.A, 5e-4);
        check_near_rel(s.I_x, r.I_x, 5e-4);
        check_near_rel(s.I_v, r.I_v, 5e-4);
        check_near_rel(s.S_x_toe, r.S, 5e-4);
        check_near_rel(s.J, r.J, 5e-4);
    }
    const Section u = section("angle 30x50x5"); // 30 on the panel, 50 standing
    check_near_rel(u.A, 375.0, 1e-12);
    check_near_rel(u.x_c, 7.500, 5e-4);
    check_near_rel(u.y_c, 17.50, 5e-4);
    check_near_rel(u.I_x, 94530, 5e-4);
    check_near_rel(u.I_y, 25780, 5e-4);
    check_near_rel(u.I_xy, -28120, 5e-4);
    check_near_rel(u.I_u, 104600, 5e-4);
    check_near_rel(u.I_v, 15740, 5e-4);
}

// Exact values of a separate calculation (computed), six digits; heel at the origin, lengths in mm.
TEST_CASE("thin angles: computed exact values, and the free angle in unsymmetric bending")
{
    const Section s = section("angle 25x25x2");
    check_near_rel(s.A, 96, 1e-12);
    check_near_rel(s.x_c, 6.9896, 1e-5);
    check_near_rel(s.I_x, 5787.99, 1e-6);
    check_near_rel(s.I_xy, -3444.01, 2e-6);
    check_near_rel(s.I_u, 9232.00, 1e-6);
    check_near_rel(s.I_v, 2343.98, 2e-6);
    check_near_rel(s.J, 128, 1e-12);
    const Section low = section("angle 30x20x2"); // 20 high
    check_near_rel(low.x_c, 9.75, 1e-12);
    check_near_rel(low.y_c, 4.75, 1e-12);
    check_near_rel(low.I_x, 3242.00, 1e-6);
    check_near_rel(low.I_y, 8922.00, 1e-6);
    check_near_rel(low.I_xy, -3150.00, 1e-6);
    // Cantilever 500 mm, 10 N along a leg, E 210 000: 0.53070 mm free, 0.34280 mm held sideways, 0.31578 mm sideways.
    const double c = 10 * std::pow(500.0, 3) / (3 * 210000), D = s.I_x * s.I_y - s.I_xy * s.I_xy;
    check_near_rel(c * s.I_y / D, 0.53070, 2e-5);
    check_near_rel(c / s.I_x, 0.34280, 2e-5);
    check_near_rel(-c * s.I_xy / D, 0.31578, 2e-5);
}

// A bracket worked by hand elsewhere (computed): rectangular tube 30 x 20 x 2, square tube 20 x 2.
TEST_CASE("box: computed tube values")
{
    const Section rhs = section("box 20x30x2");
    check_near_rel(rhs.A, 184, 1e-12);
    check_near_rel(rhs.I_x, 21565.33, 1e-6);
    check_near_rel(section("box 20x20x2").A, 144, 1e-12);
}

// Thin closed tube, Bredt: a square tube of mid-line side a has J = a^3 t (textbook formula, from memory). The wall's own
// torsion adds 4 t^2/(3 a^2).
TEST_CASE("Bredt: torsion of a thin square tube is a^3 t")
{
    check_near_rel(section("box 50.1x50.1x0.1").J, std::pow(50.0, 3) * 0.1, 1e-5);
    check_near_rel(section("box 50x50x1").J, std::pow(49.0, 3), 6e-4);
}

// Timoshenko & Goodier: a solid square of side 2 c has J = 0.1406 (2 c)^4 (from memory).
TEST_CASE("a box whose walls nearly fill it twists like a solid bar")
{
    check_near_rel(section("box 20x20x9.999").J, 0.1406 * std::pow(20.0, 4), 0.04); // the header promises 4 %
}

// Timoshenko & Goodier, Theory of Elasticity, torsion of rectangular bars, J = k1 b t^3 (from memory, three to four digits).
TEST_CASE("Timoshenko & Goodier: torsion constant of rectangular bars")
{
    struct Row { double ratio, k1; };
    constexpr Row table[] = {{1, 0.1406}, {1.5, 0.196}, {2, 0.229}, {3, 0.263}, {5, 0.291}, {10, 0.312}};
    for (const Row& r : table) {
        CAPTURE(r.ratio);
        const Section s = make_flat({.b = 2 * r.ratio, .h = 2, .t = 2});
        check_near_rel(s.J / (2 * r.ratio * 8), r.k1, 0.003); // half a printed unit, and 0.1 % of the polynomial
    }
}

// Shear centre of a thin channel, 3 b^2/(6 b + a) outside its web (textbook formula, from memory): the hat without feet.
TEST_CASE("shear centre of a thin channel")
{
    const Section s = section("hat 40x25x1");
    const double a = 39, b = 24.5;
    check_near_rel(s.y_s - (25 - 0.5), 3 * b * b / (6 * b + a), 1e-12);
}

// Beer and Johnston, Mechanics of Materials, worked example of a channel's shear centre; from memory: mid-lines 6 in of web and
// 4 in of flange, wall 0.15 in, e = b/(2 + h/(3 b)) = 1.6 in from the web's mid-line, on the side away from the flanges.
TEST_CASE("channel: shear centre of the worked example, 1.6 in")
{
    const Section s = section("channel 6.15x4.075x0.15 in");
    check_near_rel((s.t / 2 - s.y_s) / 25.4, 1.6, 1e-9);
    check_near_rel(s.x_s, s.width / 2, 1e-12);
}

TEST_SUITE_END();
