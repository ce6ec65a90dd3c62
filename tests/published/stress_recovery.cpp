// Stress post-processing against a manufactured solution: w, u, v are given functions, their exact values (and slopes, twist) stand at the nodes, and
// moments, membrane forces and face stresses read between the nodes are compared with the derivatives worked out by hand. Source: definitions of
// curvature and von Karman strain, plane-stress law (any text on plates); computed from the formula. The study prints docs/verification/stress.md:
//   test_published --test-case="Study: stress recovery*" --success=false
#include "fem/large.h"
#include "support/near.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <memory>
#include <numbers>

using namespace thinskin;

TEST_SUITE_BEGIN("published: stress recovery");

namespace {

constexpr double a = 700, b = 900, t = 0.8, E = 210000, nu = 0.3, pi = std::numbers::pi;

/// amplitude sin(p x + c) sin(q y + d) with its derivatives.
struct Wave {
    double amplitude, p, q, c, d;
    [[nodiscard]] double operator()(double x, double y, int dx, int dy) const
    {
        return amplitude * std::pow(p, dx) * std::sin(p * x + c + dx * pi / 2) * std::pow(q, dy) * std::sin(q * y + d + dy * pi / 2);
    }
};
constexpr Wave w{3, 2 * pi / a, pi / b, 0.3, 0.2}, u{0.05, pi / a, 2 * pi / b, 0.5, 0.1}, v{0.04, 2 * pi / a, pi / b, 0.9, 0.4};

struct Exact { double M_x, M_y, M_xy, N_x, N_y, N_xy; };

Exact exact(double x, double y, bool large)
{
    const double D = E * t * t * t / (12 * (1 - nu * nu)), S = E * t / (1 - nu * nu), half = large ? 0.5 : 0;
    const double w_x = w(x, y, 1, 0), w_y = w(x, y, 0, 1);
    const double e_x = u(x, y, 1, 0) + half * w_x * w_x, e_y = v(x, y, 0, 1) + half * w_y * w_y, g = u(x, y, 0, 1) + v(x, y, 1, 0) + 2 * half * w_x * w_y;
    return {-D * (w(x, y, 2, 0) + nu * w(x, y, 0, 2)), -D * (w(x, y, 0, 2) + nu * w(x, y, 2, 0)), -D * (1 - nu) * w(x, y, 1, 1),
            S * (e_x + nu * e_y), S * (e_y + nu * e_x), S * (1 - nu) / 2 * g};
}

/// Moment, membrane force, worse face's von Mises stress: largest error over the largest exact value.
using Errors = std::array<double, 3>;

double mises(double x, double y, double xy) { return std::sqrt(x * x - x * y + y * y + 3 * xy * xy); }

Errors errors(int across, bool large)
{
    fem::SkinModel m;
    m.width = a, m.height = b, m.spacing = a / across;
    m.sheet = {E, nu, t};
    const auto skin = std::make_shared<const fem::Skin>(fem::make_skin(m));
    fem::Vector dofs = fem::Vector::Zero(skin->body.dofs);
    const std::size_t nx = skin->grid.x.size();
    for (std::size_t j = 0; j < skin->grid.y.size(); ++j)
        for (std::size_t i = 0; i < nx; ++i) {
            const double x = skin->grid.x[i], y = skin->grid.y[j];
            dofs.segment<6>(static_cast<Eigen::Index>(6 * (i + nx * j))) << w(x, y, 0, 0), w(x, y, 1, 0), w(x, y, 0, 1), w(x, y, 1, 1), u(x, y, 0, 0), v(x, y, 0, 0);
        }
    const auto model = fem::make_large(skin);
    const fem::LargeField field = fem::large_field(*model, dofs);
    Errors worst{}, size{};
    for (double fx = 0.03; fx < 1; fx += 0.047)
        for (double fy = 0.03; fy < 1; fy += 0.053) {
            const double x = a * fx, y = b * fy;
            const fem::SkinPoint got = large ? fem::skin_point_large(*model, field, x, y) : fem::skin_point(*skin, dofs, x, y);
            const Exact e = exact(x, y, large);
            double faces = 0;
            for (const double side : {1.0, -1.0}) faces = std::max(faces, mises(e.N_x / t + side * 6 * e.M_x / (t * t), e.N_y / t + side * 6 * e.M_y / (t * t), e.N_xy / t + side * 6 * e.M_xy / (t * t)));
            const fem::FaceStress s = fem::face_stress(m.sheet, got);
            const Errors off{std::hypot(got.M_x - e.M_x, got.M_y - e.M_y, got.M_xy - e.M_xy), std::hypot(got.N_x - e.N_x, got.N_y - e.N_y, got.N_xy - e.N_xy), std::abs(std::max(s.top, s.bottom) - faces)};
            const Errors is{std::hypot(e.M_x, e.M_y, e.M_xy), std::hypot(e.N_x, e.N_y, e.N_xy), faces};
            for (std::size_t k = 0; k < 3; ++k) worst[k] = std::max(worst[k], off[k]), size[k] = std::max(size[k], is[k]);
        }
    for (std::size_t k = 0; k < 3; ++k) worst[k] /= size[k];
    return worst;
}

constexpr const char* names[] = {"moments", "membrane forces", "worse face's stress"};

} // namespace

TEST_CASE("Stress of a manufactured large deflection: second order in moments, membrane forces and face stresses")
{
    const Errors coarse = errors(12, true), fine = errors(24, true);
    for (std::size_t k = 0; k < 3; ++k) {
        const std::string name = names[k];
        CAPTURE(name);
        CAPTURE(fine[k]);
        CHECK(std::log2(coarse[k] / fine[k]) > 1.8);
        CHECK(fine[k] < std::pow(w.p * a / 24, 2)); // second order: (2 pi spacing / wave length)^2, at the normal grid of 30 mm
    }
}

TEST_CASE("Stress of a manufactured small deflection: moments of second order, membrane forces read inside the elements of first")
{
    const Errors coarse = errors(12, false), fine = errors(24, false);
    CHECK(std::log2(coarse[0] / fine[0]) > 1.8);
    CHECK(std::log2(coarse[1] / fine[1]) > 0.9);
}

TEST_CASE("Study: stress recovery, largest error in per cent at 6, 12, 24, 48 elements across")
{
    for (const bool large : {true, false})
        for (std::size_t k = 0; k < 3; ++k) {
            std::printf("| %s, %s |", large ? "large deflection" : "linear", names[k]);
            double last = 1, before = 1;
            for (const int n : {6, 12, 24, 48}) {
                before = last;
                last = errors(n, large)[k];
                std::printf(" %.3f |", 100 * last);
            }
            std::printf(" %.2f |\n", std::log2(before / last));
            CHECK(last < before);
        }
}

TEST_SUITE_END();
