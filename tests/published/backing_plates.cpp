#include "fem/joints.h"
#include "fem/skin.h"
#include "support/near.h"

#include <algorithm>
#include <cmath>
#include <numbers>

// Loose plates (theory ID-14) against closed forms, and a rigid one in contact with a hinged skin against Navier's series.
using namespace thinskin;
using fem::SkinDirection;

namespace {

fem::SkinModel sheet(double width, double height, double t, double nu, double spacing)
{
    fem::SkinModel m;
    m.name = "plate";
    m.width = width;
    m.height = height;
    m.spacing = spacing;
    m.sheet = {210000, nu, t};
    return m;
}

void push(const fem::Plate& p, fem::Vector& f, double x, double y, double half_y, double force)
{
    fem::add(f, fem::plate_port(p, {x, y, 0, half_y}, SkinDirection::z), force);
}

} // namespace

TEST_SUITE_BEGIN("published: backing plates");

// Source: computed from the formula. Corner forces P twist a plate evenly: M_xy = P/2, w = P x y/(2 D (1 - nu)) (Timoshenko and
// Woinowsky-Krieger, Theory of Plates and Shells, pure twist and corner reactions; from memory). Exact: x y lies in the element.
TEST_CASE("a loose plate twisted by its corner forces")
{
    constexpr double a = 180, b = 120, t = 2, nu = 0.3, P = 10, E = 210000, x0 = 300, y0 = 500;
    const fem::Plate p = fem::make_plate(sheet(a, b, t, nu, 20), x0, y0);
    fem::Vector f = fem::Vector::Zero(p.sheet.body.dofs);
    push(p, f, x0, y0, 0, P);
    push(p, f, x0 + a, y0 + b, 0, P);
    push(p, f, x0 + a, y0, 0, -P);
    push(p, f, x0, y0 + b, 0, -P);
    const fem::Vector u = fem::solve(p.sheet.body, f);
    const double D = E * t * t * t / (12 * (1 - nu * nu));
    tests::check_near_rel(fem::apply(fem::plate_port(p, {x0 + a, y0 + b, 0, 0}, SkinDirection::z), u), P * a * b / (2 * D * (1 - nu)), 1e-9); // rounding
    tests::check_near_rel(std::abs(fem::skin_point(p.sheet, u, 70, 50).M_xy), P / 2, 1e-9);
}

// Source: computed from the formula, w = P L^3/(48 E I) of a beam in three-point bending; nu = 0 makes the plate a beam, and a cubic
// with its kink of shear on a grid line lies in the element.
TEST_CASE("a loose strip in three-point bending")
{
    constexpr double L = 240, b = 40, t = 3, P = 100, E = 210000;
    const fem::Plate p = fem::make_plate(sheet(L, b, t, 0, 20), 0, 0);
    fem::Vector f = fem::Vector::Zero(p.sheet.body.dofs);
    for (double x : {0.0, L}) push(p, f, x, b / 2, b / 2, -P / 2);
    push(p, f, L / 2, b / 2, b / 2, P);
    const fem::Vector u = fem::solve(p.sheet.body, f);
    const auto w = [&](double x) { return fem::apply(fem::plate_port(p, {x, b / 2, 0, b / 2}, SkinDirection::z), u); };
    tests::check_near_rel(w(L / 2) - (w(0) + w(L)) / 2, P * L * L * L / (48 * E * (b * t * t * t / 12)), 1e-8); // rounding
}

namespace {

struct Point { double x, y; };
constexpr double skin_a = 400, skin_b = 300, skin_t = 0.8, plate_a = 120, plate_b = 100, pull = 10;

std::vector<Point> lattice()
{
    std::vector<Point> out;
    for (int i = 0; i <= 4; ++i)
        for (int j = 0; j <= 4; ++j) out.push_back({skin_a / 2 + plate_a * (i - 2) / 4, skin_b / 2 + plate_b * (j - 2) / 4});
    return out;
}

/// Navier: deflection at q of a hinged plate under a unit force at p,
///   w = 4/(pi^4 D a b) sum sum sin sin sin sin / (m^2/a^2 + n^2/b^2)^2
double navier(Point p, Point q)
{
    constexpr double pi = std::numbers::pi;
    const double D = 210000 * std::pow(skin_t, 3) / (12 * (1 - 0.09));
    double sum = 0;
    for (int m = 1; m <= 60; ++m)
        for (int n = 1; n <= 60; ++n)
            sum += std::sin(m * pi * p.x / skin_a) * std::sin(n * pi * p.y / skin_b) * std::sin(m * pi * q.x / skin_a) * std::sin(n * pi * q.y / skin_b) / std::pow(m * m / (skin_a * skin_a) + n * n / (skin_b * skin_b), 2);
    return 4 * sum / (std::pow(pi, 4) * D * skin_a * skin_b);
}

/// A rigid flat punch on points: G f = w0 where it touches, f > 0, sum f = pull; points that would pull are let go one by one.
struct Punch { double w0 = 0; std::vector<double> f; };
Punch rigid_punch(const std::vector<Point>& at)
{
    std::vector<Eigen::Index> on;
    const auto count = static_cast<Eigen::Index>(at.size());
    Eigen::MatrixXd G(count, count);
    for (Eigen::Index i = 0; i < count; ++i) {
        on.push_back(i);
        for (Eigen::Index j = 0; j <= i; ++j) G(i, j) = G(j, i) = navier(at[static_cast<std::size_t>(i)], at[static_cast<std::size_t>(j)]);
    }
    Punch out;
    while (true) {
        const auto n = static_cast<Eigen::Index>(on.size());
        Eigen::MatrixXd A = Eigen::MatrixXd::Zero(n + 1, n + 1);
        Eigen::VectorXd b = Eigen::VectorXd::Zero(n + 1);
        for (Eigen::Index i = 0; i < n; ++i) {
            for (Eigen::Index j = 0; j < n; ++j) A(i, j) = G(on[static_cast<std::size_t>(i)], on[static_cast<std::size_t>(j)]);
            A(i, n) = -1;
            A(n, i) = 1;
        }
        b(n) = pull;
        const Eigen::VectorXd x = A.fullPivLu().solve(b);
        Eigen::Index worst = 0;
        if (x.head(n).minCoeff(&worst) >= 0) {
            out.w0 = x(n);
            out.f.assign(at.size(), 0);
            for (Eigen::Index i = 0; i < n; ++i) out.f[static_cast<std::size_t>(on[static_cast<std::size_t>(i)])] = x(i);
            return out;
        }
        on.erase(on.begin() + worst);
    }
}

} // namespace

// Source: computed from the formula, Navier's series of a hinged plate (Theory of Plates and Shells, chapter on simply supported
// rectangular plates), the contact problem solved on its own with it. 0.5 %: grid of 20 mm and 60 x 60 terms.
TEST_CASE("a rigid plate pulled at its middle lies on a hinged skin with its rim only")
{
    fem::SkinModel m = sheet(skin_a, skin_b, skin_t, 0.3, 20);
    m.name = "skin";
    for (fem::EdgeHold& e : m.edges) e = {fem::Hold::hinged, 0};
    const fem::Skin skin = fem::make_skin(m);
    fem::SkinModel rigid = sheet(plate_a, plate_b, 40, 0.3, 20);
    const fem::Plate plate = fem::make_plate(rigid, skin_a / 2 - plate_a / 2, skin_b / 2 - plate_b / 2);
    const std::vector<Point> at = lattice();
    fem::Assembly a{{&skin.body, &plate.sheet.body}, {}};
    for (const Point& p : at)
        a.joints.push_back({"contact", {0, fem::skin_port(skin, {p.x, p.y, 0, 0}, SkinDirection::z)}, {1, fem::plate_port(plate, {p.x, p.y, 0, 0}, SkinDirection::z)}, fem::Law::contact, 0, 0, true});
    const Point left{skin_a / 2 - 50, skin_b / 2}, right{skin_a / 2 + 50, skin_b / 2}; // holds the plate in its plane
    const auto hold = [&](Point p, SkinDirection d) {
        a.joints.push_back({"hold", {0, fem::skin_port(skin, {p.x, p.y, 0, 0}, d)}, {1, fem::plate_port(plate, {p.x, p.y, 0, 0}, d)}, fem::Law::tie, 1e-6, 0, false});
    };
    hold(left, SkinDirection::x);
    hold(left, SkinDirection::y);
    hold(right, SkinDirection::y);
    fem::UnitLoad load{{fem::Vector(), fem::Vector::Zero(plate.sheet.body.dofs)}};
    fem::add(load.on_body[1], fem::plate_port(plate, {skin_a / 2, skin_b / 2, 5, 5}, SkinDirection::z), 1);
    fem::ColumnCache cache;
    const fem::Condensed c = fem::condense(a, 0, cache);
    const fem::Free free = fem::free_motion(a, c, {load});
    const fem::Vector factors = fem::Vector::Constant(1, pull);
    const fem::JointState state = fem::solve_joints(a, c, free, factors, std::vector<char>(a.joints.size(), 1));
    REQUIRE(state.status == fem::SolveStatus::solved);

    const Punch want = rigid_punch(at);
    const fem::Recovered r = fem::recover(a, 0, {load}, factors, free, state);
    tests::check_near_rel(fem::skin_point(skin, r.u, at[0].x, at[0].y).w, want.w0, 0.005);
    for (std::size_t i = 0; i < at.size(); ++i) tests::check_near_abs(-state.lambda(static_cast<Eigen::Index>(i)), want.f[i], 0.02 * pull);
    CHECK(-state.lambda(12) == 0); // the middle leaves the skin
    const fem::Recovered of_plate = fem::recover(a, 1, {load}, factors, free, state);
    CHECK((of_plate.applied.head<3>().norm()) <= 1e-8 * pull);
    CHECK((of_plate.applied.tail<3>().norm()) <= 1e-8 * pull * skin_a);
}
