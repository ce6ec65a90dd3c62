#include "consistency/fem_models.h"
#include "support/near.h"

#include <algorithm>
#include <cstring>

using namespace thinskin;
using fem::SolveStatus;
using fem::Vec3;
using tests::check_near_abs;
using tests::check_near_rel;
using tests::factors;
using tests::Job;

TEST_SUITE_BEGIN("consistency: joints");

namespace {

bool same_bytes(const fem::Matrix& a, const fem::Matrix& b)
{
    return a.size() == b.size() && std::memcmp(a.data(), b.data(), static_cast<std::size_t>(a.size()) * sizeof(double)) == 0;
}

fem::JointState on_ground(const fem::Assembly& a, const fem::Vector& load)
{
    fem::ColumnCache cache;
    const auto c = fem::condense(a, -1, cache);
    return fem::solve_joints(a, c, fem::free_motion(a, c, {{{load}}}), fem::Vector::Ones(1), {});
}

fem::Joint ground(fem::Row row, fem::Law law = fem::Law::tie, double compliance = 0, double gap = 0)
{
    fem::Joint j = tests::joint("ground", {0, std::move(row)}, {}, law, compliance);
    j.gap = gap;
    return j;
}

} // namespace

TEST_CASE("The same bytes with a warm cache, a cold one, and one warmed by other columns first")
{
    const Job job;
    fem::ColumnCache warm, other;
    const auto first = fem::condense(job.assembly, 0, warm), second = fem::condense(job.assembly, 0, warm);
    fem::Assembly reversed = job.assembly;
    std::reverse(reversed.joints.begin(), reversed.joints.end());
    const auto backwards = fem::condense(reversed, 0, other);
    const auto third = fem::condense(job.assembly, 0, other);
    CHECK(same_bytes(first.F, second.F));
    CHECK(same_bytes(first.F, third.F));
    CHECK(same_bytes(first.F_skin, third.F_skin));
    CHECK(backwards.F.rows() == first.F.rows());
    CHECK(same_bytes(first.F, fem::Matrix(first.F.transpose())));
}

TEST_CASE("Factors kept from one load case to the next give the same bytes as new ones")
{
    const Job job;
    fem::ColumnCache cache;
    const auto c = fem::condense(job.assembly, 0, cache);
    const auto free = fem::free_motion(job.assembly, c, job.loads);
    for (const double skin : {1.0, 0.0, 3.0}) {
        fem::JointFactors kept;
        for (const auto& f : {factors(1, 0, 0, 0), factors(0, -3.5, 0.2, 0), factors(0.3, -1, 2, 1), factors(1, 0, 0, 0), factors(-1, 2, -3, 0)}) {
            const auto with = fem::solve_joints(job.assembly, c, free, f, {}, skin, &kept), without = fem::solve_joints(job.assembly, c, free, f, {}, skin);
            CHECK(with.status == without.status);
            CHECK(with.active == without.active);
            CHECK(same_bytes(with.lambda, without.lambda));
            CHECK(same_bytes(with.alpha, without.alpha));
        }
    }
}

TEST_CASE("Every body balances: what joints and loads put on it, the supports give back; residuals from K u")
{
    const Job job;
    for (const auto& f : {factors(1, 0, 0, 0), factors(0, -3.5, 0.2, 0), factors(0.3, -1, 2, 1)}) {
        const auto s = tests::solve(job, f);
        REQUIRE(s.state.status == SolveStatus::solved);
        CHECK(s.state.residual < 1e-12);
        for (int b = 0; b < 4; ++b) {
            CAPTURE(b);
            const auto r = fem::recover(job.assembly, b, job.loads, f, s.free, s.state);
            CHECK(r.residual < 1e-7);
            CHECK((r.applied + r.reaction).norm() < 1e-6);        // N and N mm; the item's forces are hundreds of N at hundreds of mm
        }
        // the elongations recovered from the bodies obey every joint's law
        std::vector<fem::Vector> u;
        for (int b = 0; b < 4; ++b) u.push_back(fem::recover(job.assembly, b, job.loads, f, s.free, s.state).u);
        for (std::size_t k = 0; k < job.assembly.joints.size(); ++k) {
            const fem::Joint& j = job.assembly.joints[k];
            const double e = fem::apply(j.a.row, u[static_cast<std::size_t>(j.a.body)]) - fem::apply(j.b.row, u[static_cast<std::size_t>(j.b.body)]);
            const double force = s.state.lambda(static_cast<Eigen::Index>(k));
            if (j.law == fem::Law::tie || s.state.active[k]) check_near_abs(e, j.compliance * force, 1e-7);
            if (j.law == fem::Law::contact) CHECK((force <= 1e-7 && e > -1e-2));
            if (j.law == fem::Law::contact && !s.state.active[k]) CHECK((force == 0 && e > -1e-7));
        }
    }
}

TEST_CASE("The contact set does not depend on the load's level, and forces scale with it")
{
    const Job job;
    const auto one = tests::solve(job, factors(0.4, -3.5, 0.6, 0)), seven = tests::solve(job, 7 * factors(0.4, -3.5, 0.6, 0));
    REQUIRE(one.state.status == SolveStatus::solved);
    CHECK(one.state.active == seven.state.active);
    CHECK(std::count(one.state.active.begin(), one.state.active.end(), 0) > 0);   // some contacts are open: the test says something
    CHECK((7 * one.state.lambda - seven.state.lambda).norm() < 1e-8 * seven.state.lambda.norm());
}

TEST_CASE("The start of the contact search does not change the answer; from the answer it takes one pass")
{
    const Job job;
    const auto f = factors(0.4, -3.5, 0.6, 0);
    const auto closed = tests::solve(job, f);
    const auto open = tests::solve(job, f, std::vector<char>(job.assembly.joints.size(), 0));
    const auto again = tests::solve(job, f, closed.state.active);
    REQUIRE(open.state.status == SolveStatus::solved);
    CHECK(open.state.active == closed.state.active);
    CHECK((open.state.lambda - closed.state.lambda).norm() < 1e-9 * closed.state.lambda.norm());
    CHECK(again.state.passes == 1);
}

TEST_CASE("Contact ten times stiffer moves the screw forces by less than 1 %")
{
    const Job soft(Job::with_ribs(), 1e-5), hard(Job::with_ribs(), 1e-6);
    const auto f = factors(0, -3.5, 0, 0);
    const auto a = tests::solve(soft, f), b = tests::solve(hard, f);
    double largest = 0, moved = 0;
    for (std::size_t k = 0; k < soft.assembly.joints.size(); ++k) {
        if (soft.assembly.joints[k].name != "screw") continue;
        const auto i = static_cast<Eigen::Index>(k);
        largest = std::max(largest, std::abs(a.state.lambda(i)));
        moved = std::max(moved, std::abs(a.state.lambda(i) - b.state.lambda(i)));
    }
    CHECK(moved < 0.01 * largest);
}

TEST_CASE("A beam cut in two and joined again is the whole beam, whichever part is free")
{
    fem::FrameModel whole;
    whole.name = "beam";
    for (int k = 0; k <= 4; ++k) whole.nodes.emplace_back(0, 100 * k, 0);
    for (int k = 0; k < 4; ++k) whole.members.push_back(tests::member(k, k + 1));
    fem::FrameModel low = whole, high = whole;
    for (int d = 0; d < 6; ++d) whole.supports.emplace_back(0, d), low.supports.emplace_back(0, d);
    low.nodes.resize(3), low.members.resize(2);
    high.nodes.erase(high.nodes.begin(), high.nodes.begin() + 2), high.members.resize(2);
    const fem::Frame w = fem::make_frame(whole), l = fem::make_frame(low), h = fem::make_frame(high);
    fem::Vector on_w = fem::Vector::Zero(30), on_h = fem::Vector::Zero(18);
    on_w.tail(6) << 3, 40, -5, 200, 100, -300;
    on_h.tail(6) = on_w.tail(6);
    fem::Assembly a;
    a.bodies = {&l.body, &h.body};
    for (int d = 0; d < 6; ++d) a.joints.push_back(tests::joint("cut", {0, {{12 + d, 1.0}}}, {1, {{d, 1.0}}}, fem::Law::tie, 0));
    fem::ColumnCache cache;
    const auto c = fem::condense(a, -1, cache);
    const std::vector<fem::UnitLoad> loads{{{{}, on_h}}};
    const auto f = fem::free_motion(a, c, loads);
    const auto s = fem::solve_joints(a, c, f, fem::Vector::Ones(1), {});
    REQUIRE(s.status == SolveStatus::solved);
    const fem::Vector u = fem::solve(w.body, on_w), v = fem::recover(a, 1, loads, fem::Vector::Ones(1), f, s).u;
    CHECK((u.tail(18) - v).norm() < 1e-9 * u.norm());
}

TEST_CASE("A joint between two ports of one body counts both")
{
    // A tie with compliance between two nodes of one held beam against the beam with a spring in its place, solved densely.
    fem::FrameModel m = tests::bracket("b", 0, 0);
    for (int d = 0; d < 6; ++d) m.supports.emplace_back(0, d);
    const fem::Frame f = fem::make_frame(m);
    fem::Assembly a;
    a.bodies = {&f.body};
    a.joints = {tests::joint("self", {0, {{12, 1.0}}}, {0, {{18, 1.0}}}, fem::Law::tie, 0.001)};
    fem::Vector load = fem::Vector::Zero(24);
    load(12) = 50;
    const auto s = on_ground(a, load);
    fem::Matrix K = f.body.K;
    K(12, 12) += 1000, K(18, 18) += 1000, K(12, 18) -= 1000, K(18, 12) -= 1000;
    const fem::Vector u = K.bottomRightCorner(18, 18).ldlt().solve(load.tail(18));
    check_near_rel(s.lambda(0), 1000 * (u(6) - u(12)), 1e-8);
}

TEST_CASE("Gap and slack: nothing until the distance is used up, then the rest over the flexibility")
{
    fem::FrameModel m;
    m.nodes = {Vec3::Zero(), Vec3{300, 0, 0}};
    m.members = {tests::member(0, 1)};
    for (int d = 0; d < 6; ++d) m.supports.emplace_back(0, d);
    const fem::Frame f = fem::make_frame(m);
    fem::Vector load = fem::Vector::Zero(12);
    load(8) = -1;
    const double flexibility = -fem::solve(f.body, load)(8);
    fem::Assembly a;
    a.bodies = {&f.body};
    for (const fem::Law law : {fem::Law::contact, fem::Law::strap}) {
        const double sign = law == fem::Law::contact ? -1 : 1;    // contact stops going down, the strap going up
        a.joints = {ground({{8, 1.0}}, law, 0.002, 0.5)};
        load(8) = sign * 0.4 / flexibility;
        check_near_abs(on_ground(a, load).lambda(0), 0, 0);
        load(8) = sign * 0.8 / flexibility;
        check_near_rel(on_ground(a, load).lambda(0), sign * 0.3 / (flexibility + 0.002), 1e-9);
    }
}

TEST_CASE("Mechanisms are named: body, direction or axis with a point on it")
{
    const fem::Body box = fem::make_rigid("bracket left");
    fem::Assembly a;
    a.bodies = {&box};
    const fem::Vector load = fem::Vector::Ones(6);
    CHECK(on_ground(a, load).where == "bracket left is not held: free to move along and turn about x, y and z");
    // hinged along a line parallel to x through (150, 740, 0)
    for (const double x : {100.0, 200.0})
        for (int d = 0; d < 3; ++d)
            if (d > 0 || x < 150) a.joints.push_back(ground(fem::rigid_port({x, 740, 0}, Vec3::Unit(d)), fem::Law::tie, 1e-5));
    auto s = on_ground(a, load);
    CHECK(s.status == SolveStatus::mechanism);
    CHECK(s.where == "bracket left is free to turn about x through (0, 740, 0)");
    a.joints.push_back(ground(fem::rigid_port({150, 640, 0}, Vec3::UnitZ()), fem::Law::tie, 1e-5));
    CHECK(on_ground(a, load).status == SolveStatus::solved);
    a.joints.erase(a.joints.begin());                              // the only one along x
    s = on_ground(a, load);
    CHECK(s.status == SolveStatus::mechanism);
    CHECK(s.where == "bracket left is free to move along x");
}

TEST_CASE("Standing on contacts only: solved while the load presses inside them, a mechanism when it tips or lifts")
{
    const fem::Body box = fem::make_rigid("box");
    fem::Assembly a;
    a.bodies = {&box};
    for (const double x : {0.0, 100.0})
        for (const double y : {0.0, 100.0}) a.joints.push_back(ground(fem::rigid_port({x, y, 0}, Vec3::UnitZ()), fem::Law::contact, 1e-5));
    for (const int d : {0, 1, 5}) a.joints.push_back(ground({{d, 1.0}}));
    const auto press = [&](double x, double y, double force, const std::vector<char>& start) {
        fem::Vector load = fem::Vector::Zero(6);
        fem::add(load, fem::rigid_port({x, y, 0}, Vec3::UnitZ()), force);
        fem::ColumnCache cache;
        const auto c = fem::condense(a, -1, cache);
        return fem::solve_joints(a, c, fem::free_motion(a, c, {{{load}}}), fem::Vector::Ones(1), start);
    };
    for (const std::vector<char>& start : {std::vector<char>{}, std::vector<char>(7, 0)}) {
        const auto s = press(20, 30, -10, start);
        REQUIRE(s.status == SolveStatus::solved);
        check_near_rel(-(s.lambda(0) + s.lambda(1) + s.lambda(2) + s.lambda(3)), 10, 1e-12);
        CHECK(press(120, 50, -10, start).status == SolveStatus::mechanism);
        CHECK(press(50, 50, 10, start).status == SolveStatus::mechanism);
    }
}

TEST_CASE("Joints that repeat each other without compliance are not solved; a NaN anywhere is not solved")
{
    const fem::Body box = fem::make_rigid("box");
    fem::Assembly a;
    a.bodies = {&box};
    for (int d = 0; d < 6; ++d) a.joints.push_back(ground({{d, 1.0}}));
    fem::Vector load = fem::Vector::Ones(6);
    CHECK(on_ground(a, load).status == SolveStatus::solved);
    a.joints.push_back(ground({{2, 1.0}}));
    CHECK(on_ground(a, load).status == SolveStatus::ill_conditioned);
    a.joints.pop_back();
    load(1) = std::nan("");
    CHECK(on_ground(a, load).status == SolveStatus::ill_conditioned);
    a.joints[0].compliance = std::nan("");
    CHECK_THROWS_AS((void)on_ground(a, fem::Vector::Ones(6)), std::invalid_argument);
    const Job job;
    CHECK(tests::solve(job, factors(std::nan(""), 0, 0, 0)).state.status == SolveStatus::ill_conditioned);
}

TEST_CASE("Skin bending times 3: joints as with a skin of three times the rigidity and the same membrane, no ribs")
{
    // t^3 E counts for bending, t E for the membrane: thickness times sqrt 3 and E over sqrt 3 triples the one and keeps the other.
    fem::SkinModel thick = tests::panel(fem::Hold::held);
    thick.sheet.thickness *= std::sqrt(3.0), thick.sheet.E /= std::sqrt(3.0);
    const Job job(tests::panel(fem::Hold::held)), stiff(thick);
    const auto f = factors(0.2, -1, 0.5, 2);
    const auto a = tests::solve(job, f, {}, 3), b = tests::solve(stiff, f);
    REQUIRE(a.state.status == SolveStatus::solved);
    CHECK((a.state.lambda - b.state.lambda).norm() < 1e-8 * b.state.lambda.norm());
}

TEST_CASE("Skin bending times 0 drops the skin's normal joints: two brackets on nothing else are a mechanism")
{
    const Job job;
    const auto s = tests::solve(job, factors(0, -1, 0, 0), {}, 0);
    CHECK(s.state.status == SolveStatus::mechanism);
    CHECK(s.state.where.find("free to") != std::string::npos);
}

TEST_SUITE_END();
