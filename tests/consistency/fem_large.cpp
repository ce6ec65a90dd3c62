// The skin at moderate rotations: what its element gets exactly, that the tangent is the derivative, and the whole assembly with contact.
#include "consistency/fem_models.h"
#include "fem/large_model.h"
#include "support/near.h"

#include <cmath>

using namespace thinskin;
using tests::check_near_abs;
using tests::check_near_rel;

TEST_SUITE_BEGIN("consistency: large deflection");

namespace {

std::shared_ptr<const fem::LargeModel> large(const fem::SkinModel& m) { return fem::make_large(std::make_shared<const fem::Skin>(fem::make_skin(m))); }
/// The job's skin stays its own.
std::shared_ptr<const fem::LargeModel> large(const tests::Job& job) { return fem::make_large({std::shared_ptr<const void>(), &job.skin}); }

/// Nodal values of w, its slopes and twist, u, v from functions of (x, y).
template <class F>
fem::Vector nodal(const fem::Skin& s, const F& six)
{
    fem::Vector u = fem::Vector::Zero(s.body.dofs);
    for (std::size_t j = 0; j < s.grid.y.size(); ++j)
        for (std::size_t i = 0; i < s.grid.x.size(); ++i)
            u.segment<6>(static_cast<Eigen::Index>(6 * (i + s.grid.x.size() * j))) = six(s.grid.x[i], s.grid.y[j]);
    return u;
}
using Six = Eigen::Matrix<double, 6, 1>;

fem::JointState no_joints()
{
    fem::JointState s;
    s.status = fem::SolveStatus::solved;
    s.lambda.resize(0), s.alpha.resize(0);
    return s;
}

fem::Large alone(const fem::LargeModel& m, const fem::Vector& load, const fem::NewtonRule& rule = {}, const fem::Vector* start = nullptr, std::stop_token stop = {})
{
    fem::ColumnCache cache;
    return fem::solve_large({{&fem::skin_of(m).body}, {}}, 0, m, {{{load}}}, fem::Vector::Ones(1), no_joints(), cache, rule, stop, start);
}

fem::Large on_job(const tests::Job& job, const fem::Vector& f)
{
    const tests::JobSolution linear = tests::solve(job, f);
    REQUIRE(linear.state.status == fem::SolveStatus::solved);
    fem::ColumnCache cache;
    return fem::solve_large(job.assembly, 0, *large(job), job.loads, f, linear.state, cache);
}

double highest(const fem::Vector& u, const fem::Skin& s)
{
    double w = 0;
    for (std::size_t n = 0; n < s.grid.x.size() * s.grid.y.size(); ++n) w = std::max(w, std::abs(u(static_cast<Eigen::Index>(6 * n))));
    return w;
}

} // namespace

TEST_CASE("Rotation patch: a sheet turned by 0.3 rad about x and y at once, as far as the theory knows turning, carries nothing")
{
    for (const auto& [a, b] : {std::pair{0.3, 0.0}, std::pair{0.0, -0.3}, std::pair{0.3, 0.2}}) {
        const auto m = large(tests::panel(fem::Hold::held, 70));
        const fem::Vector u = nodal(fem::skin_of(*m), [a = a, b = b](double x, double y) {
            return (Six() << a * x + b * y, a, b, 0, -a * a / 2 * x - a * b * y, -b * b / 2 * y).finished(); // u_x + a^2/2 = 0 and so on
        });
        fem::Vector force(u.size());
        fem::internal_force(*m, u, force);
        const double membrane = 210000 * 0.8 * 0.3 * 0.3 / 2 * 70; // what an error of the strain would pull with
        CHECK(force.lpNorm<Eigen::Infinity>() < 1e-9 * membrane);
        CHECK(fem::large_field(*m, u).N.lpNorm<Eigen::Infinity>() < 1e-9 * membrane / 70);
    }
}

TEST_CASE("Membrane patch: a constant strain on top of a constant slope gives its constant forces, in balance inside")
{
    const auto m = large(tests::panel(fem::Hold::held, 70));
    const fem::Skin& s = fem::skin_of(*m);
    const double a = 0.1, ex = 1e-3, ey = -4e-4, g = 7e-4;
    const fem::Vector u = nodal(s, [&](double x, double y) { return (Six() << a * x, a, 0, 0, (ex - a * a / 2) * x + g * y, ey * y).finished(); });
    const Eigen::Vector3d N = 210000 * 0.8 / (1 - 0.09) * Eigen::Vector3d(ex + 0.3 * ey, ey + 0.3 * ex, 0.35 * g);
    fem::Vector force(u.size());
    fem::internal_force(*m, u, force);
    for (int d = 0; d < s.body.dofs; ++d)
        if (!s.body.supported[static_cast<std::size_t>(d)]) check_near_abs(force(d), 0, 1e-8 * N.norm() * 70);
    const fem::SkinPoint p = fem::skin_point_large(*m, fem::large_field(*m, u), 333, 123);
    check_near_rel(p.N_x, N(0), 1e-9);
    check_near_rel(p.N_y, N(1), 1e-9);
    check_near_rel(p.N_xy, N(2), 1e-9);
}

TEST_CASE("The tangent is the derivative of the internal force, and symmetric; ribs, windows and sprung edges included")
{
    fem::SkinModel model = tests::panel(fem::Hold::sprung, 150);
    for (fem::EdgeHold& e : model.edges) e.rotational_stiffness = 500;
    model.ribs = {tests::rib(200, 0, 200, 900), tests::rib(0, 250, 600, 250)};
    model.openings = {{"window", 320, 400, 500, 620}};
    const auto m = large(model);
    const fem::Skin& s = fem::skin_of(*m);
    std::srand(7);
    fem::Vector u = 2 * fem::Vector::Random(s.body.dofs), d = fem::Vector::Random(s.body.dofs);
    for (Eigen::Index k = 0; k < u.size(); ++k)
        if (k < static_cast<Eigen::Index>(6 * s.grid.x.size() * s.grid.y.size()) && k % 6 > 0) u(k) *= 0.01, d(k) *= 0.01;
    fem::Tangent t;
    fem::tangent(*m, u, 1, t);
    fem::Vector plus(u.size()), minus(u.size()), here(u.size());
    const double h = 1e-3;
    fem::internal_force(*m, u + h * d, plus);
    fem::internal_force(*m, u - h * d, minus);
    fem::internal_force(*m, u, here);
    CHECK((here - t.force).norm() <= 1e-12 * here.norm());
    const fem::Vector want = t.K * d, got = (plus - minus) / (2 * h);
    CHECK((want - got).norm() <= 1e-5 * want.norm()); // cubic in u: the difference quotient is off by h^2
    CHECK((fem::Sparse(t.K.transpose()) - t.K).norm() <= 1e-12 * t.K.norm());
}

TEST_CASE("Small loads: the linear solution; the difference goes down with the load")
{
    const tests::Job job;
    const auto difference = [&](double level) {
        const fem::Vector f = tests::factors(0, -level, level, 0);
        const fem::Large s = on_job(job, f);
        REQUIRE(s.status == fem::SolveStatus::solved);
        const tests::JobSolution linear = tests::solve(job, f);
        const fem::Recovered r = fem::recover(job.assembly, 0, job.loads, f, linear.free, linear.state);
        return std::array<double, 2>{(s.skin_u - r.u).norm() / r.u.norm(), (s.joints.lambda - linear.state.lambda).norm() / linear.state.lambda.norm()};
    };
    const auto small = difference(1e-3), smaller = difference(1e-4);
    for (std::size_t k = 0; k < 2; ++k) {
        CHECK(small[k] < 1e-3);
        CHECK(smaller[k] < 0.15 * small[k]); // the pull in the plane goes with the square of the load, the forces with the load
    }
}

TEST_CASE("Two brackets on the panel, ribs, contact: quadratic convergence, balance, and the joints' laws in the deflected state")
{
    for (const bool ribs : {true, false})
        for (const bool fixed : {true, false}) {
            CAPTURE(ribs);
            CAPTURE(fixed);
            fem::SkinModel m = ribs ? tests::Job::with_ribs() : tests::panel(fem::Hold::held);
            m.in_plane_fixed = fixed;
            const tests::Job job(m);
            const fem::Vector f = tests::factors(0.2, -0.5, 0.5, 1);
            const fem::Large s = on_job(job, f);
            REQUIRE(s.status == fem::SolveStatus::solved);
            CHECK(s.load_steps == 1);
            CHECK(s.steps <= 8);
            CHECK(s.residual <= 1e-8);
            for (std::size_t k = 0; k + 1 < s.residuals.size(); ++k)
                if (s.residuals[k] < 1e-2) CHECK(s.residuals[k + 1] <= 20 * s.residuals[k] * s.residuals[k] + 1e-11);
            CHECK(s.force_error <= 1e-8);
            CHECK(s.moment_error <= 1e-4); // the grid's error in the lever arms, 60 mm
            const tests::JobSolution linear = tests::solve(job, f);
            CHECK(highest(s.skin_u, job.skin) < 0.9 * highest(fem::recover(job.assembly, 0, job.loads, f, linear.free, linear.state).u, job.skin));
            std::vector<fem::Vector> u{s.skin_u};
            for (int b = 1; b < 4; ++b) {
                const fem::Recovered r = fem::recover(job.assembly, b, job.loads, f, linear.free, s.joints);
                CHECK(r.residual <= 1e-8);
                u.push_back(r.u);
            }
            for (std::size_t k = 0; k < job.assembly.joints.size(); ++k) {
                const fem::Joint& j = job.assembly.joints[k];
                const double lambda = s.joints.lambda(static_cast<Eigen::Index>(k));
                const auto moved = [&](const fem::PortRef& p) { return fem::apply(p.row, u[static_cast<std::size_t>(p.body)]); };
                const double e = moved(j.a) - moved(j.b) - j.compliance * lambda;
                if (s.joints.active[k]) check_near_abs(e, 0, 1e-7);
                else CHECK(e >= -1e-7);
                if (j.law == fem::Law::contact) CHECK(lambda <= 1e-7);
            }
        }
}

TEST_CASE("A factor kept from step to step and from load case to load case gives the same answer with fewer factors")
{
    const tests::Job job(tests::Job::with_ribs());
    const auto model = large(job);
    fem::NewtonRule keep;
    keep.force_tolerance = 1e-10;
    keep.keep_below = 0.2;
    fem::NewtonRule each = keep;
    each.keep_below = 0;
    fem::LargeMemory memory;
    int kept = 0, anew = 0;
    for (const double level : {0.5, 0.6, 0.65}) {
        const fem::Vector f = tests::factors(0.2, -level, level, 1);
        const tests::JobSolution linear = tests::solve(job, f);
        fem::ColumnCache cache;
        const fem::Large a = fem::solve_large(job.assembly, 0, *model, job.loads, f, linear.state, cache, each);
        const fem::Large b = fem::solve_large(job.assembly, 0, *model, job.loads, f, linear.state, cache, keep, {}, nullptr, &memory);
        REQUIRE(a.status == fem::SolveStatus::solved);
        REQUIRE(b.status == fem::SolveStatus::solved);
        CHECK(b.residual <= 1e-10);
        CHECK(b.force_error <= 1e-8);
        CHECK(a.joints.active == b.joints.active);
        CHECK((a.skin_u - b.skin_u).norm() <= 1e-7 * a.skin_u.norm());
        CHECK((a.joints.lambda - b.joints.lambda).norm() <= 1e-7 * a.joints.lambda.norm());
        CHECK(a.factors == a.steps);
        anew += a.factors;
        kept += b.factors;
    }
    CHECK(2 * kept <= anew);
}

TEST_CASE("The solution does not depend on the start, and turns over with the load")
{
    const auto m = large(tests::panel(fem::Hold::held, 50));
    const fem::Vector load = fem::skin_pressure(fem::skin_of(*m), 5e-4);
    const fem::Large s = alone(*m, load), back = alone(*m, -load);
    REQUIRE(s.status == fem::SolveStatus::solved);
    const fem::Vector zero = fem::Vector::Zero(load.size());
    const fem::Large other = alone(*m, load, {60, 1e-8, 40}, &zero);
    REQUIRE(other.status == fem::SolveStatus::solved);
    CHECK(other.steps > s.steps);
    CHECK((other.skin_u - s.skin_u).norm() <= 1e-7 * s.skin_u.norm());
    for (Eigen::Index d = 0; d < load.size(); ++d) CHECK(std::abs(back.skin_u(d) - (d % 6 < 4 ? -1 : 1) * s.skin_u(d)) <= 1e-9 * s.skin_u.lpNorm<Eigen::Infinity>());
    const fem::Large again = alone(*m, load, {}, &s.skin_u);
    CHECK(again.steps == 1);
}

TEST_CASE("Same bytes on every run")
{
    const tests::Job job;
    const fem::Large a = on_job(job, tests::factors(0, -0.5, 0.5, 0)), b = on_job(job, tests::factors(0, -0.5, 0.5, 0));
    CHECK((a.skin_u.array() == b.skin_u.array()).all());
    CHECK((a.joints.lambda.array() == b.joints.lambda.array()).all());
}

TEST_CASE("Edges that move in the plane let the sheet go further than fixed ones, both less far than the linear theory")
{
    fem::SkinModel model = tests::panel(fem::Hold::held, 50);
    const auto fixed = large(model);
    model.in_plane_fixed = false;
    const auto movable = large(model);
    const double q = 1e-3;
    const auto w = [&](const fem::LargeModel& m) { return fem::skin_point(fem::skin_of(m), alone(m, fem::skin_pressure(fem::skin_of(m), q)).skin_u, 350, 450).w; };
    const fem::Skin& s = fem::skin_of(*fixed);
    const double linear = fem::skin_point(s, fem::solve(s.body, fem::skin_pressure(s, q)), 350, 450).w;
    CHECK(w(*fixed) < 0.9 * w(*movable));
    CHECK(w(*movable) < 0.8 * linear);
}

namespace {

/// A hinged square under an in-plane force in its upper half, as a share of the buckling load; `side`: a small force across.
fem::Large pressed(double share, double side, const fem::NewtonRule& rule = {})
{
    fem::SkinModel model = tests::panel(fem::Hold::hinged, 50);
    const auto m = large(model);
    const fem::InPlaneForce force{{350, 650, 75, 75}, 0, -1};
    const double critical = fem::buckling_factor(*fem::make_buckling(model, 50), {force});
    fem::Vector load = fem::Vector::Zero(fem::skin_of(*m).body.dofs);
    fem::add(load, fem::skin_port(fem::skin_of(*m), force.where, fem::SkinDirection::y), -share * critical);
    fem::add(load, fem::skin_port(fem::skin_of(*m), {350, 450, 50, 50}, fem::SkinDirection::z), side);
    return alone(*m, load, rule);
}

} // namespace

TEST_CASE("Pressed in its plane beyond the buckling load the flat sheet is called buckled, below it is not; leant on, it finds its bulge")
{
    CHECK(pressed(0.98, 0).status == fem::SolveStatus::solved);
    for (const double share : {1.02, 1.5, 3.0}) {
        const fem::Large s = pressed(share, 0);
        CHECK(s.status == fem::SolveStatus::buckled);
        CHECK(s.where.find("the skin has buckled") != std::string::npos);
        CHECK(s.skin_u.size() == 0);
        CHECK(s.joints.lambda.size() == 0);
        CHECK(pressed(share, 0.3).status == fem::SolveStatus::solved);
    }
}

TEST_CASE("Without convergence: no figures, but the step and the reason; a stop is a stop")
{
    const auto m = large(tests::panel(fem::Hold::hinged, 50));
    const fem::Vector load = fem::skin_pressure(fem::skin_of(*m), 0.05);
    const fem::Large s = alone(*m, load, {2, 1e-8, 1});
    CHECK(s.status == fem::SolveStatus::not_converged);
    CHECK(s.where.find("Newton step 3: out-of-balance force still") == 0);
    CHECK(s.skin_u.size() == 0);
    const fem::Large stepped = alone(*m, load, {4, 1e-8, 40}); // too few steps for full load at once
    CHECK(stepped.status == fem::SolveStatus::solved);
    CHECK(stepped.load_steps > 1);
    std::stop_source source;
    source.request_stop();
    CHECK(alone(*m, load, {}, nullptr, source.get_token()).status == fem::SolveStatus::stopped);
    CHECK_THROWS_AS((void)alone(*m, load, {0, 1e-8, 1}), std::invalid_argument);
    CHECK_THROWS_AS((void)alone(*m, fem::Vector::Constant(load.size(), std::nan("")), {}), std::invalid_argument);
    const tests::Job job;
    fem::JointState unsolved;
    fem::ColumnCache cache;
    CHECK_THROWS_AS((void)fem::solve_large(job.assembly, 0, *large(job), job.loads, tests::factors(0, 1, 0, 0), unsolved, cache), std::invalid_argument);
}

TEST_CASE("A bracket that only pushes the skin hangs in the air: a mechanism, with its name")
{
    tests::Job job;
    for (fem::Joint& j : job.assembly.joints) j.law = fem::Law::tie;
    const tests::JobSolution linear = tests::solve(job, tests::factors(0, 0, 1, 0));
    REQUIRE(linear.state.status == fem::SolveStatus::solved);
    for (fem::Joint& j : job.assembly.joints)
        if (j.name != "item") j.law = fem::Law::contact, j.gap = 1;
    fem::ColumnCache cache;
    const fem::Large s = fem::solve_large(job.assembly, 0, *large(job), job.loads, tests::factors(0, 0, 1, 0), linear.state, cache);
    CHECK(s.status == fem::SolveStatus::mechanism);
    CHECK(s.where.find("bracket") != std::string::npos);
}

TEST_CASE("Membrane forces against a made-up displacement field: second order, at the middle and at the edge")
{
    constexpr double pi = 3.14159265358979323846, A = 3, B = 0.02, W = 700, H = 900;
    const auto error = [&](double spacing, double x, double y) {
        const auto m = large(tests::panel(fem::Hold::held, spacing));
        const fem::Vector u = nodal(fem::skin_of(*m), [&](double p, double q) {
            const double sx = std::sin(pi * p / W), cx = std::cos(pi * p / W), sy = std::sin(pi * q / H), cy = std::cos(pi * q / H);
            return (Six() << A * sx * sy, A * pi / W * cx * sy, A * pi / H * sx * cy, A * pi * pi / (W * H) * cx * cy, B * sx * cy, B * cx * sy).finished();
        });
        const double sx = std::sin(pi * x / W), cx = std::cos(pi * x / W), sy = std::sin(pi * y / H), cy = std::cos(pi * y / H);
        const double wx = A * pi / W * cx * sy, wy = A * pi / H * sx * cy;
        const Eigen::Vector3d strain(B * pi / W * cx * cy + wx * wx / 2, B * pi / H * cx * cy + wy * wy / 2, -B * pi / H * sx * sy - B * pi / W * sx * sy + wx * wy);
        const Eigen::Vector3d N = fem::membrane_stiffness(fem::skin_of(*m).model.sheet) * strain;
        const fem::SkinPoint p = fem::skin_point_large(*m, fem::large_field(*m, u), x, y);
        return (Eigen::Vector3d(p.N_x, p.N_y, p.N_xy) - N).norm() / N.norm();
    };
    for (const auto& at : {std::pair{350.0, 300.0}, std::pair{140.0, 225.0}, std::pair{0.0, 450.0}, std::pair{700.0, 900.0}}) {
        CAPTURE(at.first);
        CAPTURE(at.second);
        CHECK(std::log2(error(50, at.first, at.second) / error(25, at.first, at.second)) > 1.7);
        CHECK(error(25, at.first, at.second) < 0.02);
    }
}

TEST_CASE("Faces: membrane and bending apart and together")
{
    fem::SkinPoint p;
    p.N_x = 8, p.M_x = 0.64;
    const fem::FaceStress s = fem::face_stress({210000, 0.3, 0.8}, p);
    check_near_rel(s.membrane, 10, 1e-12);
    check_near_rel(s.bending, 6, 1e-12);
    check_near_rel(s.top, 16, 1e-12);
    check_near_rel(s.bottom, 4, 1e-12);
    check_near_rel(fem::von_mises({210000, 0.3, 0.8}, p), 16, 1e-12);
}

TEST_CASE("Edge flow and reactions: the pull on an edge is what its supports hold")
{
    const auto m = large(tests::panel(fem::Hold::held, 25));
    const fem::Large s = alone(*m, fem::skin_pressure(fem::skin_of(*m), 5e-4));
    REQUIRE(s.status == fem::SolveStatus::solved);
    double flow = 0, support = 0;
    for (const fem::EdgeFlow& f : fem::edge_flow_large(*m, fem::large_field(*m, s.skin_u), 0, 90)) flow += f.normal * 900 / 90;
    const fem::Skin& skin = fem::skin_of(*m);
    for (std::size_t j = 0; j < skin.grid.y.size(); ++j) support += s.skin_support(static_cast<Eigen::Index>(6 * skin.grid.x.size() * j + 4));
    check_near_rel(flow, -support, 0.01); // the flow is extrapolated to the edge
    CHECK(flow > 0);
}

TEST_SUITE_END();
