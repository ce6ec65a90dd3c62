// Tables of docs/verification/frames.md and contact.md: error against the division. References as in beams.cpp and contact.cpp, with their
// sources there. Printed by
//   test_published --test-case="Study of *" --success=false
#include "fem/frame.h"
#include "fem/joints.h"
#include "support/near.h"

#include <array>
#include <cmath>
#include <cstdio>

using namespace thinskin;
using fem::Vec3;

namespace {

fem::FrameModel straight(double from, double to, int n, const std::vector<fem::BeamSection>& sections)
{
    fem::FrameModel m;
    for (int k = 0; k <= n; ++k) m.nodes.emplace_back(from + (to - from) * k / n, 0, 0);
    for (int k = 0; k < n; ++k)
        for (const fem::BeamSection& s : sections) {
            fem::FrameMember b;
            b.a = k, b.b = k + 1, b.section = s;
            m.members.push_back(b);
        }
    return m;
}

double tip(int n, const std::vector<fem::BeamSection>& sections)
{
    fem::FrameModel m = straight(0, 400, n, sections);
    for (int d = 0; d < 6; ++d) m.supports.emplace_back(0, d);
    const fem::Frame f = fem::make_frame(m);
    fem::Vector load = fem::Vector::Zero(f.body.dofs);
    load(6 * n + 2) = 5;
    return fem::solve(f.body, load)(6 * n + 2);
}

fem::Joint to_ground(fem::Row row, fem::Law law, double compliance)
{
    fem::Joint j;
    j.a = {0, std::move(row)};
    j.law = law;
    j.compliance = compliance;
    return j;
}

struct Solved { fem::JointState state; fem::Recovered body; };

Solved solved(const fem::Assembly& a, const fem::Vector& load)
{
    fem::ColumnCache cache;
    const fem::Condensed c = fem::condense(a, -1, cache);
    const std::vector<fem::UnitLoad> loads{{{load}}};
    const fem::Free f = fem::free_motion(a, c, loads);
    Solved s{fem::solve_joints(a, c, f, fem::Vector::Ones(1), {}), {}};
    REQUIRE(s.state.status == fem::SolveStatus::solved);
    s.body = fem::recover(a, 0, loads, fem::Vector::Ones(1), f, s.state);
    return s;
}

/// Rigid foot 100 x 40 on n contact springs, strap at 80, M = 30 000 N mm: turn, lift-off line, strap force.
std::array<double, 3> foot(int n)
{
    const fem::Body body = fem::make_rigid("foot");
    fem::Assembly a;
    a.bodies = {&body};
    for (int i = 0; i < n; ++i) a.joints.push_back(to_ground(fem::rigid_port({0, 100 * (i + 0.5) / n, 0}, Vec3::UnitZ()), fem::Law::contact, n / (50.0 * 40 * 100)));
    a.joints.push_back(to_ground(fem::rigid_port({0, 80, 0}, Vec3::UnitZ()), fem::Law::strap, 1.0 / 20000));
    for (const int dof : {0, 1, 4, 5}) a.joints.push_back(to_ground({{dof, 1.0}}, fem::Law::tie, dof < 2 ? 1e-6 : 1e-9));
    fem::Vector load = fem::Vector::Zero(6);
    load(3) = 30000;
    const fem::JointState s = solved(a, load).state;
    return {s.alpha(3), -s.alpha(2) / s.alpha(3), s.lambda(n)};
}

/// Free beam of 240 mm, E I = 1e6, on a bed of 1 N/mm2 that only pushes, 100 N in the middle: deflection and moment there.
std::array<double, 2> bed(int half)
{
    const double step = 120.0 / half;
    const fem::Frame beam = fem::make_frame(straight(-120, 120, 2 * half, {{1000, 400, 100, 1000, 1000, 0, 100, 0, 0}}));
    fem::Assembly a;
    a.bodies = {&beam.body};
    for (int i = 0; i <= 2 * half; ++i) a.joints.push_back(to_ground({{6 * i + 2, 1.0}}, fem::Law::contact, 1 / (step * (i == 0 || i == 2 * half ? 0.5 : 1))));
    for (const int d : {0, 1, 3, 5}) a.joints.push_back(to_ground({{6 * half + d, 1.0}}, fem::Law::tie, 1e-6));
    fem::Vector load = fem::Vector::Zero(beam.body.dofs);
    load(6 * half + 2) = -100;
    const Solved s = solved(a, load);
    return {-s.body.u(6 * half + 2), std::abs(fem::member_forces(beam, half, s.body.u)(4))};
}

/// One row of a table; errors in per cent. The last must be within `allowed`, and the first larger than it.
void row(const char* name, double want, const std::vector<double>& got, double allowed)
{
    std::printf("| %s |", name);
    for (const double g : got) std::printf(" %+.3f |", 100 * (g / want - 1));
    std::printf("\n");
    CHECK(std::abs(got.back() / want - 1) <= allowed);
    CHECK(std::abs(got.front() / want - 1) > std::abs(got.back() / want - 1));
}

} // namespace

TEST_SUITE_BEGIN("published: beams");

TEST_CASE("Study of members stacked on the same nodes: error in per cent at 1, 2, 4, 8, 16, 32 pieces, exact composite 0.120311 mm")
{
    const fem::BeamSection skin{210000, 80769, 80, 100 * 0.512 / 12, 80 * 1e4 / 12, 0, 17, 0, 0}, bar{210000, 80769, 40, 2 * 8000 / 12.0, 13.3, 0, 53, 0, 10.4};
    std::vector<double> got;
    for (const int n : {1, 2, 4, 8, 16, 32}) got.push_back(tip(n, {skin, bar}));
    row("stacked members, tip deflection", 0.120311, got, 6e-4); // 54 % / 32^2
}

TEST_SUITE_END();

TEST_SUITE_BEGIN("published: contact");

TEST_CASE("Study of a rigid foot on a bed of 10, 20, 50, 100, 200, 1000 contact springs: error in per cent")
{
    std::vector<double> turn, line, strap;
    for (const int n : {10, 20, 50, 100, 200, 1000}) {
        const auto f = foot(n);
        turn.push_back(f[0]), line.push_back(f[1]), strap.push_back(f[2]);
    }
    row("foot, rotation", 4.419807e-4, turn, 0.002); // 0.2 %: a spring more or less at the lift-off line
    row("foot, lift-off line", 31.23106, line, 0.002);
    row("foot, strap force", 431.0986, strap, 0.002);
}

TEST_CASE("Study of a beam on a bed of 12, 16, 24, 40, 60, 120 contact springs each side: error in per cent")
{
    std::vector<double> w, M;
    for (const int half : {12, 16, 24, 40, 60, 120}) {
        const auto b = bed(half);
        w.push_back(b[0]), M.push_back(b[1]);
    }
    row("beam on a bed, deflection under the force", 1.219028, w, 0.001);
    row("beam on a bed, moment under the force", 1219.028, M, 0.002);
}

TEST_SUITE_END();
