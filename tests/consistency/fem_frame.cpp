#include "consistency/fem_models.h"
#include "support/near.h"

using namespace thinskin;
using fem::Vec3;
using tests::check_near_abs;
using tests::check_near_rel;

TEST_SUITE_BEGIN("consistency: frame");

namespace {

fem::FrameModel skewed()
{
    fem::FrameModel m = tests::bracket("skew", 30, -50);
    m.nodes[3] = {70, 20, 140};
    for (fem::FrameMember& b : m.members) b.section.I_yz = -3000, b.section.c_y = 4, b.section.c_z = -6;
    m.members[2].pin_b = true;
    m.members.push_back(tests::member(3, 2));
    return m;
}

} // namespace

TEST_CASE("A rigid motion of a frame gives no force: skew, unsymmetric, eccentric and pinned members")
{
    const fem::Frame f = fem::make_frame(skewed());
    const fem::Matrix force = f.body.K * f.body.rigid_modes;
    CHECK(force.cwiseAbs().maxCoeff() < 1e-8 * f.body.K.coeffs().cwiseAbs().maxCoeff());
    CHECK_FALSE(f.body.held);
    for (int k = 0; k < 6; ++k) check_near_abs(fem::member_forces(f, 0, f.body.rigid_modes.col(k)).norm(), 0, 1e-3); // of forces about 1e7
}

TEST_CASE("End forces of every member balance, a pinned end carries no bending moment, and nodes balance the load")
{
    fem::FrameModel m = skewed();
    for (int d = 0; d < 6; ++d) m.supports.emplace_back(0, d);
    const fem::Frame f = fem::make_frame(m);
    fem::Vector load = fem::Vector::Zero(f.body.dofs);
    load.segment<3>(18) = Vec3{10, -20, 5};
    const auto u = fem::solve(f.body, load);
    for (int k = 0; k < 4; ++k) {
        const auto q = fem::member_forces(f, k, u);
        for (int d = 0; d < 4; ++d) check_near_abs(q(d) + q(6 + d), 0, 1e-7);                  // N, V_y, V_z, T
        const double L = (m.nodes[static_cast<std::size_t>(m.members[static_cast<std::size_t>(k)].b)] - m.nodes[static_cast<std::size_t>(m.members[static_cast<std::size_t>(k)].a)]).norm();
        check_near_abs(q(4) + q(10) - q(8) * L, 0, 1e-6);                                     // moments about a: M_y - V_z L
        check_near_abs(q(5) + q(11) + q(7) * L, 0, 1e-6);
    }
    const auto pinned = fem::member_forces(f, 2, u);
    check_near_abs(pinned(10), 0, 1e-7);
    check_near_abs(pinned(11), 0, 1e-7);
    const fem::Vector r = f.body.K * u - load;
    const Eigen::Matrix<double, 6, 1> sum = f.body.rigid_modes.transpose() * r, applied = f.body.rigid_modes.transpose() * load;
    CHECK((sum + applied).norm() < 1e-9 * applied.norm());
}

TEST_CASE("A beam turned in space bends as it does along the axes")
{
    const auto tip = [](const Vec3& along, const Vec3& y) {
        fem::FrameModel m;
        m.nodes = {Vec3::Zero(), 300 * along};
        fem::FrameMember b = tests::member(0, 1);
        b.local_y = y;
        b.section.I_yz = 2000;
        m.members = {b};
        for (int d = 0; d < 6; ++d) m.supports.emplace_back(0, d);
        const fem::Frame f = fem::make_frame(m);
        fem::Vector load = fem::Vector::Zero(12);
        load.segment<3>(6) = 7 * y;
        return fem::solve(f.body, load).segment<3>(6).norm();
    };
    const Vec3 x = Vec3{1, 2, 2} / 3, y = Vec3{2, 1, -2} / 3;
    check_near_rel(tip(x, y), tip(Vec3::UnitX(), Vec3::UnitY()), 1e-9);
}

TEST_CASE("Weights on points away from a node give force and moment; a port there moves with the node's turn")
{
    const fem::Frame f = fem::make_frame(tests::bracket("b", 0, 0));
    const auto load = fem::mass_load(f, {{3, {20, 150, 180}, 2.0}}, {0, -9.81, 0});
    const Eigen::Matrix<double, 6, 1> sum = f.body.rigid_modes.transpose() * load;
    check_near_abs(sum(1), -19.62, 1e-12);
    check_near_abs(sum(3), 180 * 19.62, 1e-9);     // y F_z - z F_y
    check_near_abs(sum(5), -20 * 19.62, 1e-9);
    const auto row = fem::frame_port(f, 3, {20, 150, 180}, Vec3::UnitY());
    for (int k = 0; k < 6; ++k) check_near_abs(fem::apply(row, f.body.rigid_modes.col(k)), fem::rigid_port({20, 150, 180}, Vec3::UnitY())[static_cast<std::size_t>(k)].second, 1e-12);
}

TEST_CASE("Mechanisms and bad figures are named: a node that only pinned members reach, a member without length, NaN")
{
    fem::FrameModel m = tests::bracket("b", 0, 0);
    m.members[2].pin_b = true;                      // nothing else at node 3
    CHECK_THROWS_WITH_AS((void)fem::make_frame(m), doctest::Contains("node 3"), std::runtime_error);
    m = tests::bracket("b", 0, 0);
    m.supports = {{0, 0}, {0, 1}, {0, 2}};
    CHECK_THROWS_WITH_AS((void)fem::make_frame(m), doctest::Contains("mechanism"), std::runtime_error);
    m = tests::bracket("b", 0, 0);
    m.nodes[1] = m.nodes[0];
    CHECK_THROWS_AS((void)fem::make_frame(m), std::invalid_argument);
    m = tests::bracket("b", 0, 0);
    m.members[0].section.I_y = std::nan("");
    CHECK_THROWS_AS((void)fem::make_frame(m), std::invalid_argument);
    m = tests::bracket("b", 0, 0);
    m.members[0].local_y = Vec3::UnitY();           // along the member
    CHECK_THROWS_AS((void)fem::make_frame(m), std::invalid_argument);
}

TEST_SUITE_END();
