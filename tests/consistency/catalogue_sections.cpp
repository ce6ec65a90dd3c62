#include "catalogue/sections.h"
#include "support/near.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

TEST_SUITE_BEGIN("catalogue sections");

using namespace thinskin::catalogue;
using thinskin::tests::check_near_abs;
using thinskin::tests::check_near_rel;

namespace {

using Outline = std::vector<std::array<double, 2>>;

Section section(const std::string& text)
{
    const ReadSection r = read_section(text);
    REQUIRE_MESSAGE(r.ok, r.expected);
    return r.section;
}

std::vector<Section> one_of_each()
{
    std::vector<Section> all;
    for (const char* text : {"angle 40x40x4", "angle 60x40x5", "angle 40x60x5", "angle 25x25x3", "flat 30x3", "flat 30x3 lying", "flat 20x2",
                             "box 60x25x0.7", "box 30x30x2", "hat 40x25x1.0", "hat 30x20x12x0.9", "channel 40x20x2", "channel 50x25x1.5", "angle 1-1/2x1-1/2x1/8 in"})
        all.push_back(section(text));
    return all;
}

/// Area, first and second moments of a polygon about the origin by Green's theorem: an independent route.
struct Moments { double A = 0, Ax = 0, Ay = 0, I_x = 0, I_y = 0, I_xy = 0; };

Moments moments(const Outline& p)
{
    Moments m;
    for (std::size_t i = 0; i < p.size(); ++i) {
        const auto& [x0, y0] = p[i];
        const auto& [x1, y1] = p[(i + 1) % p.size()];
        const double c = x0 * y1 - x1 * y0;
        m.A += c / 2;
        m.Ax += c * (x0 + x1) / 6;
        m.Ay += c * (y0 + y1) / 6;
        m.I_x += c * (y0 * y0 + y0 * y1 + y1 * y1) / 12;
        m.I_y += c * (x0 * x0 + x0 * x1 + x1 * x1) / 12;
        m.I_xy += c * (x0 * y1 + 2 * x0 * y0 + 2 * x1 * y1 + x1 * y0) / 24;
    }
    return m;
}

void check_against(const Section& s, const Moments& m, double rel)
{
    const double x = m.Ax / m.A, y = m.Ay / m.A;
    check_near_rel(s.A, m.A, rel);
    check_near_rel(s.x_c, x, rel);
    check_near_rel(s.y_c, y, rel);
    check_near_rel(s.I_x, m.I_x - m.A * y * y, rel);
    check_near_rel(s.I_y, m.I_y - m.A * x * x, rel);
    check_near_abs(s.I_xy, m.I_xy - m.A * x * y, rel * s.I_u);
}

void add_arc(Outline& p, double x, double y, double r, double from, double to)
{
    constexpr int n = 4000;
    for (int i = 0; i <= n; ++i) {
        const double a = from + (to - from) * i / n;
        p.push_back({x + r * std::cos(a), y + r * std::sin(a)});
    }
}

} // namespace

TEST_CASE("angle, hat, channel and box agree with the moments of their outline")
{
    const double b = 60, h = 40, t = 5;
    check_against(make_angle({.b = b, .h = h, .t = t}), moments({{0, 0}, {b, 0}, {b, t}, {t, t}, {t, h}, {0, h}}), 1e-12);
    check_against(make_flat({.b = 30, .h = 3, .t = 3}), moments({{0, 0}, {30, 0}, {30, 3}, {0, 3}}), 1e-12);
    // A box as one line round the outside and back round the inside.
    check_against(make_box({.b = b, .h = 25, .t = 2}),
                  moments({{0, 0}, {b, 0}, {b, 25}, {0, 25}, {0, 0}, {2, 2}, {2, 23}, {58, 23}, {58, 2}, {2, 2}}), 1e-12);
    check_against(make_hat({.b = 40, .h = 25, .t = 1}, 0), moments({{0, 0}, {1, 0}, {1, 24}, {39, 24}, {39, 0}, {40, 0}, {40, 25}, {0, 25}}), 1e-12);
    check_against(make_hat({.b = 40, .h = 25, .t = 1}, 12),
                  moments({{0, 0}, {13, 0}, {13, 24}, {51, 24}, {51, 0}, {64, 0}, {64, 1}, {52, 1}, {52, 25}, {12, 25}, {12, 1}, {0, 1}}), 1e-12);
    check_against(make_channel({.b = 40, .h = 20, .t = 2}), moments({{0, 0}, {40, 0}, {40, 20}, {38, 20}, {38, 2}, {2, 2}, {2, 20}, {0, 20}}), 1e-12);
}

TEST_CASE("a rolled angle agrees with the moments of its rounded outline")
{
    using std::numbers::pi;
    const double b = 40, h = 60, t = 6, r1 = 6, r2 = 3;
    Outline p{{0, 0}, {b, 0}};
    add_arc(p, b - r2, t - r2, r2, 0, pi / 2);
    add_arc(p, t + r1, t + r1, r1, 3 * pi / 2, pi);
    add_arc(p, t - r2, h - r2, r2, 0, pi / 2);
    p.push_back({0, h});
    check_against(rolled_angle({.b = b, .h = h, .t = t}, {.r1 = r1, .r2 = r2}), moments(p), 1e-6); // 4000 chords an arc
}

TEST_CASE("a rolled angle with vanishing fillets is the sharp angle; real ones: A up, I down by a few percent")
{
    const Section sharp = make_angle({.b = 40, .h = 40, .t = 4});
    const Section none = rolled_angle({.b = 40, .h = 40, .t = 4}, {.r1 = 0, .r2 = 0});
    CHECK(none.A == sharp.A);
    check_near_rel(none.I_v, sharp.I_v, 1e-14);
    const Section real = rolled_angle({.b = 40, .h = 40, .t = 4}, {.r1 = 6, .r2 = 3});
    CHECK(real.A / sharp.A > 1.00);
    CHECK(real.A / sharp.A < 1.02);
    CHECK(real.I_x / sharp.I_x > 0.96);
    CHECK(real.I_x / sharp.I_x < 0.98);
}

TEST_CASE("principal moments: sum, product, and the product of inertia vanishes in the turned axes")
{
    for (const Section& s : one_of_each()) {
        CAPTURE(s.designation);
        check_near_rel(s.I_u + s.I_v, s.I_x + s.I_y, 1e-14);
        check_near_rel(s.I_u * s.I_v, s.I_x * s.I_y - s.I_xy * s.I_xy, 1e-12);
        CHECK(s.I_v > 0);
        const double c = std::cos(s.theta), n = std::sin(s.theta);
        check_near_rel(s.I_x * c * c + s.I_y * n * n - 2 * s.I_xy * n * c, s.I_u, 1e-12);
        check_near_abs((s.I_x - s.I_y) * n * c + s.I_xy * (c * c - n * n), 0, 1e-12 * s.I_u);
        check_near_rel(s.r_min * s.r_min * s.A, s.I_v, 1e-13);
        CHECK(s.theta > -std::numbers::pi / 2 - 1e-12);
        CHECK(s.theta <= std::numbers::pi / 2 + 1e-12);
    }
}

TEST_CASE("section moduli are the moments over the distances to the outermost corners")
{
    for (const Section& s : one_of_each()) {
        CAPTURE(s.designation);
        double x_least = 1e9, x_most = -1e9, y_least = 1e9, y_most = -1e9;
        for (const auto& c : s.corners) {
            x_least = std::min(x_least, c[0]);
            x_most = std::max(x_most, c[0]);
            y_least = std::min(y_least, c[1]);
            y_most = std::max(y_most, c[1]);
        }
        CHECK(x_least == 0);
        CHECK(y_least == 0);
        check_near_rel(s.S_x_toe * (y_most - s.y_c), s.I_x, 1e-13);
        check_near_rel(s.S_x_heel * s.y_c, s.I_x, 1e-13);
        check_near_rel(s.S_y_toe * (x_most - s.x_c), s.I_y, 1e-13);
        check_near_rel(s.S_y_heel * s.x_c, s.I_y, 1e-13);
        CHECK(x_most == s.width);
        CHECK(y_most == s.h);
    }
}

TEST_CASE("an angle with its legs exchanged is its mirror image")
{
    const Section s = section("angle 60x40x5"), m = section("angle 40x60x5");
    check_near_rel(s.A, m.A, 1e-14);
    check_near_rel(s.x_c, m.y_c, 1e-14);
    check_near_rel(s.y_c, m.x_c, 1e-14);
    check_near_rel(s.I_x, m.I_y, 1e-14);
    check_near_rel(s.I_y, m.I_x, 1e-14);
    check_near_rel(s.I_xy, m.I_xy, 1e-14);
    check_near_rel(s.I_u, m.I_u, 1e-14);
    check_near_rel(s.I_v, m.I_v, 1e-12);
    check_near_rel(s.S_x_toe, m.S_y_toe, 1e-14);
    check_near_abs(s.theta + m.theta, std::numbers::pi / 2, 1e-12);
    CHECK(s.J == m.J);
    CHECK(s.I_xy < 0);
}

TEST_CASE("an equal angle is symmetric about the line through heel and centroid")
{
    const Section s = section("angle 40x40x4");
    check_near_rel(s.x_c, s.y_c, 1e-14);
    check_near_rel(s.I_v, s.I_x + s.I_xy, 1e-13);
    check_near_abs(s.theta, std::numbers::pi / 4, 1e-12);
    CHECK(s.x_s == 2);
    CHECK(s.y_s == 2);
}

TEST_CASE("a flat stands on its edge unless it is lying")
{
    const Section standing = section("flat 20x2"), lying = section("flat 20x2 lying");
    CHECK(standing.h == 20);
    CHECK(standing.b == 2);
    CHECK(lying.h == 2);
    CHECK(lying.b == 20);
    CHECK(standing.I_x == lying.I_y);
    CHECK(standing.J == lying.J);
    check_near_abs(standing.theta, 0, 1e-15);
    check_near_abs(lying.theta, std::numbers::pi / 2, 1e-15);
}

TEST_CASE("inches and millimetres give the same section")
{
    const Section in = section("angle 1-1/2x1-1/2x1/8 in"), mm = section("angle 38.1x38.1x3.175");
    check_near_rel(in.A, mm.A, 1e-14);
    check_near_rel(in.I_x, mm.I_x, 1e-14);
    check_near_rel(in.I_v, mm.I_v, 1e-12);
    check_near_rel(in.J, mm.J, 1e-14);
    CHECK(in.designation == "angle 1-1/2x1-1/2x1/8 in");
}

TEST_CASE("a section k times as large: area by k^2, moments by k^4, moduli by k^3")
{
    const double k = 2.5;
    const Section s = make_hat({.b = 40, .h = 25, .t = 1}, 12), m = make_hat({.b = 40 * k, .h = 25 * k, .t = k}, 12 * k);
    check_near_rel(m.A, s.A * k * k, 1e-13);
    check_near_rel(m.I_x, s.I_x * std::pow(k, 4), 1e-13);
    check_near_rel(m.J, s.J * std::pow(k, 4), 1e-13);
    check_near_rel(m.S_x_toe, s.S_x_toe * std::pow(k, 3), 1e-13);
    check_near_rel(m.y_s, s.y_s * k, 1e-13);
}

TEST_CASE("a thicker wall never gives less area, stiffness, torsion or mass")
{
    for (const char* kind : {"angle", "box", "hat", "channel"}) {
        CAPTURE(kind);
        Section last;
        for (double t = 0.5; t < 9; t += 0.25) {
            CAPTURE(t);
            const Section s = section(std::string(kind) + " 40x25x" + std::to_string(t));
            CHECK(s.A > last.A);
            CHECK(s.I_x > last.I_x);
            CHECK(s.I_y > last.I_y);
            CHECK(s.I_v > last.I_v);
            CHECK(s.J > last.J);
            CHECK(s.S_x_toe > last.S_x_toe);
            CHECK(s.mass_per_metre(7850) > last.mass_per_metre(7850));
            last = s;
        }
    }
}

TEST_CASE("shear centre of a hat with feet: shear flow summed along the wall gives the same")
{
    const Section s = make_hat({.b = 40, .h = 25, .t = 1}, 12);
    const double crown = 39, side = 24, foot = 12.5; // mid-line lengths
    // From the tip of the right foot inward, up the side, over the crown, down, out: points of the mid-line.
    const Outline path{{crown / 2 + foot, 0}, {crown / 2, 0}, {crown / 2, side}, {-crown / 2, side}, {-crown / 2, 0}, {-crown / 2 - foot, 0}};
    double Q = 0, I = 0, moment = 0, force = 0; // per unit of wall; moment about the middle of the crown
    for (std::size_t k = 0; k + 1 < path.size(); ++k) {
        constexpr int n = 20000;
        const double dx = (path[k + 1][0] - path[k][0]) / n, dy = (path[k + 1][1] - path[k][1]) / n, ds = std::hypot(dx, dy);
        for (int i = 0; i < n; ++i) {
            const double x = path[k][0] + (i + 0.5) * dx, y = path[k][1] + (i + 0.5) * dy - side;
            const double q = Q + x * ds / 2; // at the middle of the step
            moment += q * (x * dy - y * dx);
            force += q * dx;
            Q += x * ds;
            I += x * x * ds;
        }
    }
    check_near_rel(-force, I, 1e-6); // the flow adds up to the shear force
    check_near_rel(s.y_s - 24.5, moment / I, 1e-6);
}

TEST_SUITE_END();
