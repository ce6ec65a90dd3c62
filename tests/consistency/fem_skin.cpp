#include "consistency/fem_models.h"
#include "support/near.h"

#include <algorithm>
#include <functional>
#include <limits>

using namespace thinskin;
using tests::check_near_abs;
using tests::check_near_rel;

TEST_SUITE_BEGIN("consistency: skin");

namespace {

/// A grid of uneven rectangles: weightless ribs only place grid lines.
fem::SkinModel uneven()
{
    fem::SkinModel m = tests::panel(fem::Hold::held, 150);
    m.ribs = {tests::rib(90, 0, 90, 900, 0), tests::rib(0, 333, 700, 333, 0), tests::rib(410, 120, 410, 700, 0)};
    return m;
}

struct Field { std::function<double(double, double)> w, w_x, w_y, w_xy, u, v; };

fem::Vector nodal(const fem::Skin& s, const Field& f)
{
    fem::Vector q = fem::Vector::Zero(s.body.dofs);
    const std::function<double(double, double)>* const parts[6] = {&f.w, &f.w_x, &f.w_y, &f.w_xy, &f.u, &f.v};
    Eigen::Index d = 0;
    for (const double y : s.grid.y)
        for (const double x : s.grid.x)
            for (const auto* part : parts) q(d++) = (*part)(x, y);
    return q;
}

/// Largest |K q| inside over largest |K q| anywhere.
double inner_residual(const fem::Skin& s, const fem::Vector& q)
{
    const fem::Vector r = s.body.K * q;
    double inside = 0;
    for (int d = 0; d < s.body.dofs; ++d)
        if (!s.body.supported[static_cast<std::size_t>(d)]) inside = std::max(inside, std::abs(r(d)));
    return inside / r.cwiseAbs().maxCoeff();
}

const auto zero = [](double, double) { return 0.0; };

} // namespace

TEST_CASE("Bending patch test: a quadratic deflection needs no force inside and gives one moment everywhere")
{
    const fem::Skin s = fem::make_skin(uneven());
    const double c = 1e-5;
    const fem::Vector q = nodal(s, {[=](double x, double y) { return c * (x * x + x * y + y * y) / 2; }, [=](double x, double y) { return c * (x + y / 2); },
                                    [=](double x, double y) { return c * (y + x / 2); }, [=](double, double) { return c / 2; }, zero, zero});
    CHECK(inner_residual(s, q) < 1e-9);
    const double D = 210000 * 0.512 / (12 * 0.91);
    for (const auto& [x, y] : {std::pair{33.0, 40.0}, std::pair{410.0, 333.0}, std::pair{699.0, 870.0}}) {
        const auto p = fem::skin_point(s, q, x, y);
        check_near_rel(p.M_x, -D * c * 1.3, 1e-7);
        check_near_rel(p.M_y, -D * c * 1.3, 1e-7);
        check_near_rel(p.M_xy, -D * 0.7 * c / 2, 1e-7);
    }
    check_near_rel(q.dot(s.body.K * q), D * c * c * (1 + 1 + 0.6 + 2 * 0.7 * 0.25) * 700 * 900, 1e-8); // twice the strain energy
}

TEST_CASE("Membrane patch test: a linear displacement needs no force inside, beside ribs too, and gives one membrane force")
{
    const fem::Skin s = fem::make_skin(uneven());
    const double c = 1e-5;
    const fem::Vector q = nodal(s, {zero, zero, zero, zero, [=](double x, double y) { return c * (x + y / 2); }, [=](double x, double y) { return c * (y + x / 2); }});
    CHECK(inner_residual(s, q) < 1e-12);
    const auto p = fem::skin_point(s, q, 300, 520);
    check_near_rel(p.N_x, 210000 * 0.8 / (1 - 0.3) * c, 1e-9);
    check_near_rel(p.N_xy, 210000 * 0.8 / 2.6 * c, 1e-9);
}

TEST_CASE("A rigid motion gives no force and no stress, ribs included")
{
    fem::SkinModel m = uneven();
    m.mid_z = 3;
    for (fem::RibModel& r : m.ribs) r = tests::rib(r.from[0], r.from[1], r.to[0], r.to[1]);
    const fem::Skin s = fem::make_skin(m);
    const fem::Matrix force = s.body.K * s.body.rigid_modes;
    CHECK(force.cwiseAbs().maxCoeff() < 1e-9 * s.body.K.coeffs().cwiseAbs().maxCoeff() * 900);
    fem::Vector motion(6);
    motion << 1, -2, 3, 0.01, -0.02, 0.03;
    const auto p = fem::skin_point(s, s.body.rigid_modes * motion, 250, 600);
    check_near_abs(fem::von_mises(m.sheet, p), 0, 1e-6);
    check_near_rel(p.w, 3 + 0.01 * 600 + 0.02 * 250, 1e-12);      // t_z + omega_x y - omega_y x
    check_near_rel(p.u, 1 - 0.02 * 3 - 0.03 * 600, 1e-12);        // t_x + omega_y z - omega_z y
}

TEST_CASE("Several states read at once: at nodes, between them, beside a rib and an opening each figure is to the bit that of its state alone")
{
    fem::SkinModel m = uneven();
    for (fem::RibModel& r : m.ribs) r = tests::rib(r.from[0], r.from[1], r.to[0], r.to[1]);
    m.openings = {{"hole", 460, 620, 560, 720}};
    const fem::Skin s = fem::make_skin(m);
    std::vector<fem::Vector> u;
    for (int k = 0; k < 8; ++k) u.push_back(fem::Vector::NullaryExpr(s.body.dofs, [k](Eigen::Index i) { return std::sin(static_cast<double>(i) * (k + 1)); }));
    u[5](7) = std::nan("");
    for (const std::size_t count : {1UL, 3UL, 8UL}) {
        std::vector<const fem::Vector*> some;
        for (std::size_t k = 0; k < count; ++k) some.push_back(&u[k]);
        const fem::SkinStates states(s, some);
        const auto same = [](double a, double b) { return a == b || (std::isnan(a) && std::isnan(b)); };
        for (const auto& place : {std::pair{0.0, 0.0}, std::pair{s.grid.x[3], s.grid.y[5]}, std::pair{s.grid.x[1], 333.0}, std::pair{411.0, 517.0}, std::pair{m.width, m.height}}) {
            const double x = place.first, y = place.second;
            const auto all = states.at(x, y);
            const fem::SkinStates::Figures stress = fem::von_mises(m.sheet, all);
            for (std::size_t k = 0; k < count; ++k) {
                const auto i = static_cast<Eigen::Index>(k);
                const fem::SkinPoint one = fem::skin_point(s, u[k], x, y);
                CAPTURE(x);
                CAPTURE(k);
                CHECK((same(all.u(i), one.u) && same(all.v(i), one.v) && same(all.w(i), one.w) && same(all.w_x(i), one.w_x) && same(all.w_y(i), one.w_y)));
                CHECK((same(all.M_x(i), one.M_x) && same(all.M_y(i), one.M_y) && same(all.M_xy(i), one.M_xy)));
                CHECK((same(all.N_x(i), one.N_x) && same(all.N_y(i), one.N_y) && same(all.N_xy(i), one.N_xy)));
                CHECK(same(stress(i), fem::von_mises(m.sheet, one)));
            }
        }
        const std::vector<fem::SkinDeflection> pictures = states.deflection(1);
        REQUIRE(pictures.size() == count);
        for (std::size_t k = 0; k < count; ++k) {
            const fem::SkinDeflection one = fem::skin_deflection(s, u[k], 1);
            CHECK(pictures[k].x == one.x);
            CHECK(std::equal(one.w.begin(), one.w.end(), pictures[k].w.begin(), pictures[k].w.end(), same));
        }
    }
    CHECK(std::isnan(fem::von_mises(m.sheet, fem::SkinStates(s, {&u[5]}).at(s.grid.x[1], s.grid.y[0]))(0)));
    CHECK_THROWS_AS((void)fem::SkinStates(s, std::vector<const fem::Vector*>(9, &u[0])), std::invalid_argument);
    const fem::Vector wrong = fem::Vector::Zero(3);
    CHECK_THROWS_AS((void)fem::SkinStates(s, {&wrong}), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::SkinStates(s, {&u[0]}).at(-1, 5), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::SkinStates(s, {&u[0]}).deflection(-1), std::invalid_argument);
}

TEST_CASE("K is symmetric and the flexibility between two ports is the same both ways")
{
    const fem::Skin s = fem::make_skin(tests::Job::with_ribs());
    CHECK(fem::Sparse(s.body.K - fem::Sparse(s.body.K.transpose())).coeffs().cwiseAbs().maxCoeff() <= 1e-12 * s.body.K.coeffs().cwiseAbs().maxCoeff());
    const auto a = fem::skin_port(s, {210, 300, 10, 10}, fem::SkinDirection::z), b = fem::skin_port(s, {430, 610, 5, 5}, fem::SkinDirection::y);
    fem::Vector on_a = fem::Vector::Zero(s.body.dofs), on_b = on_a;
    fem::add(on_a, a, 1), fem::add(on_b, b, 1);
    check_near_rel(fem::apply(b, fem::solve(s.body, on_a)), fem::apply(a, fem::solve(s.body, on_b)), 1e-9);
}

TEST_CASE("Order of convergence: deflection 4 under pressure, 2 under a point load; moment 2")
{
    double w[3], point[3], moment[3];
    for (int k = 0; k < 3; ++k) {
        fem::SkinModel m = tests::panel(fem::Hold::held, 900.0 / (8 << k));
        m.width = 900;
        const fem::Skin s = fem::make_skin(m);
        const auto c = fem::skin_point(s, fem::solve(s.body, fem::skin_pressure(s, 1e-4)), 450, 450);
        w[k] = c.w, moment[k] = c.M_x;
        fem::Vector load = fem::Vector::Zero(s.body.dofs);
        const auto port = fem::skin_port(s, {450, 450, 0, 0}, fem::SkinDirection::z);
        fem::add(load, port, 1);
        point[k] = fem::apply(port, fem::solve(s.body, load));
    }
    const auto order = [](const double* v) { return std::log2((v[1] - v[0]) / (v[2] - v[1])); };
    CHECK(order(w) > 3.0);
    CHECK(order(point) > 1.9);
    CHECK(order(moment) > 1.9);
}

TEST_CASE("A port averages: one for a unit motion, the middle of the clipped rectangle for a slope, parts add up by area")
{
    const fem::Skin s = fem::make_skin(tests::Job::with_ribs());
    for (const fem::Footprint f : {fem::Footprint{333, 481, 0, 0}, {200, 300, 70, 20}, {2, 890, 30, 30}, {690, 450, 40, 0}}) {
        const double x0 = std::max(0.0, f.x - f.half_x), x1 = std::min(700.0, f.x + f.half_x);
        const double y0 = std::max(0.0, f.y - f.half_y), y1 = std::min(900.0, f.y + f.half_y);
        for (int d = 0; d < 3; ++d) {
            const fem::Row row = fem::skin_port(s, f, static_cast<fem::SkinDirection>(d));
            for (int k = 0; k < 3; ++k) check_near_abs(fem::apply(row, s.body.rigid_modes.col(k)), k == d ? 1 : 0, 1e-12);
        }
        const fem::Row z = fem::skin_port(s, f, fem::SkinDirection::z);
        check_near_rel(fem::apply(z, s.body.rigid_modes.col(3)), (y0 + y1) / 2, 1e-12);
        check_near_rel(-fem::apply(z, s.body.rigid_modes.col(4)), (x0 + x1) / 2, 1e-12);
    }
    const auto mean = [&](double x, double y, double hx, double hy) {
        fem::Vector v = fem::Vector::Zero(s.body.dofs);
        fem::add(v, fem::skin_port(s, {x, y, hx, hy}, fem::SkinDirection::z), 1);
        return v;
    };
    CHECK((mean(220, 310, 60, 40) - 0.25 * (mean(190, 290, 30, 20) + mean(250, 290, 30, 20) + mean(190, 330, 30, 20) + mean(250, 330, 30, 20))).norm() < 1e-12);
}

TEST_CASE("A pad off the grid lines: the same deflection within 0.1 % wherever the lines fall")
{
    double w[2];
    for (int k = 0; k < 2; ++k) {
        fem::SkinModel m = tests::panel(fem::Hold::held, 30);
        if (k == 1) m.ribs = {tests::rib(317, 0, 317, 900, 0), tests::rib(0, 431, 700, 431, 0)}; // grid lines through the pad
        const fem::Skin s = fem::make_skin(m);
        const auto port = fem::skin_port(s, {317, 431, 9, 9}, fem::SkinDirection::z);
        fem::Vector load = fem::Vector::Zero(s.body.dofs);
        fem::add(load, port, 1);
        w[k] = fem::apply(port, fem::solve(s.body, load));
    }
    check_near_rel(w[1], w[0], 0.001);
}

TEST_CASE("Reactions carry the whole load: pressure, an in-plane force, and the moments about the origin")
{
    tests::Job job;
    const fem::Vector none = tests::factors(0, 0, 0, 0);
    fem::JointState idle{fem::SolveStatus::solved, {}, fem::Vector::Zero(static_cast<Eigen::Index>(job.assembly.joints.size())), fem::Vector::Zero(18), {}, 0, 0};
    fem::UnitLoad push;
    push.on_body = {fem::skin_pressure(job.skin, 1e-4), {}, {}, {}};
    fem::add(push.on_body[0], fem::skin_port(job.skin, {100, 200, 5, 5}, fem::SkinDirection::x), 30);
    job.loads = {push};
    fem::ColumnCache cache;
    const auto c = fem::condense(job.assembly, 0, cache);
    const auto r = fem::recover(job.assembly, 0, job.loads, fem::Vector::Ones(1), fem::free_motion(job.assembly, c, job.loads), idle);
    check_near_rel(r.applied(2), 63, 1e-9);
    check_near_rel(r.applied(0), 30, 1e-9);
    check_near_rel(r.applied(3), 63 * 450, 1e-9);
    check_near_rel(r.applied(5), -30 * 200, 1e-9);
    CHECK((r.applied + r.reaction).norm() < 1e-8 * r.applied.norm());
    CHECK(r.residual < 1e-8);
}

TEST_CASE("The membrane hands an in-plane force to the edges: flows add up to it within 1 %")
{
    const fem::Skin s = fem::make_skin(tests::panel(fem::Hold::held, 30));
    fem::Vector load = fem::Vector::Zero(s.body.dofs);
    fem::add(load, fem::skin_port(s, {350, 450, 20, 20}, fem::SkinDirection::y), 1000);
    const auto u = fem::solve(s.body, load);
    const auto sum = [&](int edge, bool shear) {
        double total = 0;
        for (const auto& f : fem::edge_flow(s, u, edge, 60)) total += (shear ? f.shear : f.normal) * (edge < 2 ? 900 : 700) / 60;
        return total;
    };
    // on the left edge the sheet's outward normal is - x: N_xy there acts on the sheet with the opposite sign
    check_near_rel(sum(2, false) - sum(3, false) + sum(0, true) - sum(1, true), 1000, 0.01);
}

TEST_CASE("A sprung edge goes from hinged to held as its spring grows")
{
    const auto w = [](fem::Hold hold, double k) {
        fem::SkinModel m = tests::panel(hold);
        for (fem::EdgeHold& e : m.edges) e.rotational_stiffness = k;
        const fem::Skin s = fem::make_skin(m);
        return fem::skin_point(s, fem::solve(s.body, fem::skin_pressure(s, 1e-4)), 350, 450).w;
    };
    check_near_rel(w(fem::Hold::sprung, 0), w(fem::Hold::hinged, 0), 1e-9);
    check_near_rel(w(fem::Hold::sprung, 1e9), w(fem::Hold::held, 0), 1e-4);
    const double half = w(fem::Hold::sprung, 100);
    CHECK(half < w(fem::Hold::hinged, 0));
    CHECK(half > w(fem::Hold::held, 0));
}

TEST_CASE("Grid lines pass through ribs and their ends, and no gap is wider than the spacing")
{
    const fem::Skin s = fem::make_skin(tests::Job::with_ribs());
    const auto has = [](const std::vector<double>& lines, double at) { return std::find(lines.begin(), lines.end(), at) != lines.end(); };
    for (const double x : {0.0, 200.0, 480.0, 700.0}) CHECK(has(s.grid.x, x));
    for (const double y : {0.0, 100.0, 800.0, 900.0}) CHECK(has(s.grid.y, y));
    for (const auto* lines : {&s.grid.x, &s.grid.y})
        for (std::size_t k = 0; k + 1 < lines->size(); ++k) CHECK((*lines)[k + 1] - (*lines)[k] <= 60 + 1e-9);
}

TEST_CASE("Refused in words: all edges free, edges that leave a mechanism, figures that are not numbers, ribs out of line")
{
    CHECK_THROWS_WITH_AS((void)fem::make_skin(tests::panel(fem::Hold::free)), doctest::Contains("mechanism"), std::runtime_error);
    fem::SkinModel hinge = tests::panel(fem::Hold::free);
    hinge.edges[0].kind = fem::Hold::hinged;                      // swings about its one hinged edge
    CHECK_THROWS_WITH_AS((void)fem::make_skin(hinge), doctest::Contains("mechanism"), std::runtime_error);
    for (double fem::SkinModel::* member : {&fem::SkinModel::width, &fem::SkinModel::spacing, &fem::SkinModel::mid_z}) {
        fem::SkinModel m = tests::panel(fem::Hold::held);
        m.*member = std::numeric_limits<double>::quiet_NaN();
        CHECK_THROWS_AS((void)fem::make_skin(m), std::invalid_argument);
    }
    fem::SkinModel m = tests::panel(fem::Hold::held);
    m.sheet.nu = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS((void)fem::make_skin(m), std::invalid_argument);
    m = tests::panel(fem::Hold::held);
    m.ribs = {tests::rib(0, 0, 700, 900)};
    CHECK_THROWS_AS((void)fem::make_skin(m), std::invalid_argument);
    m.ribs = {tests::rib(100, 100, 100, 1000)};
    CHECK_THROWS_AS((void)fem::make_skin(m), std::invalid_argument);
    m.ribs = {tests::rib(100, 100, 100, 800)};
    m.ribs[0].ends[0].rotational_stiffness = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS((void)fem::make_skin(m), std::invalid_argument);
    const fem::Skin s = fem::make_skin(tests::panel(fem::Hold::held));
    CHECK_THROWS_AS((void)fem::skin_port(s, {800, 450, 10, 10}, fem::SkinDirection::z), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::skin_port(s, {std::nan(""), 450, 10, 10}, fem::SkinDirection::z), std::invalid_argument);
}

TEST_SUITE_END();
