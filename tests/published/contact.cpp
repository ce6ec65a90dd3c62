// Contact and straps against closed forms.
#include "fem/frame.h"
#include "fem/joints.h"
#include "support/near.h"

#include <algorithm>

using namespace thinskin;
using fem::Vec3;
using tests::check_near_abs;
using tests::check_near_rel;

TEST_SUITE_BEGIN("published: contact");

namespace {

fem::Joint to_ground(const char* name, fem::Row row, fem::Law law, double compliance)
{
    fem::Joint j;
    j.name = name;
    j.a = {0, std::move(row)};
    j.law = law;
    j.compliance = compliance;
    return j;
}

fem::JointState solve(const fem::Assembly& a, const fem::Vector& load)
{
    fem::ColumnCache cache;
    const fem::Condensed c = fem::condense(a, -1, cache);
    const fem::Free f = fem::free_motion(a, c, {{{load}}});
    return fem::solve_joints(a, c, f, fem::Vector::Ones(1), {});
}

} // namespace

TEST_CASE("Rigid foot on a bed that only pushes, with a strap that only pulls: lift-off line, rotation, strap force, pressure")
{
    // Foot 100 high and 40 wide, bed 50 N/mm3, strap 20000 N/mm at 80 mm from the pressed edge, N at mid-height, M presses y = 0.
    // Closed form N = th [c b (y0 z - z^2/2) - k (d - y0)], N h/2 - M = th [c b (y0 z^2/2 - z^3/3) - k d (d - y0)], z = min(y0, h).
    constexpr double h = 100, b = 40, c = 50, k = 20000, d = 80;
    constexpr int n = 1000;
    const fem::Body foot = fem::make_rigid("foot");
    fem::Assembly a;
    a.bodies = {&foot};
    for (int i = 0; i < n; ++i)
        a.joints.push_back(to_ground("bed", fem::rigid_port({0, h * (i + 0.5) / n, 0}, Vec3::UnitZ()), fem::Law::contact, n / (c * b * h)));
    a.joints.push_back(to_ground("strap", fem::rigid_port({0, d, 0}, Vec3::UnitZ()), fem::Law::strap, 1 / k));
    for (const int dof : {0, 1, 4, 5}) a.joints.push_back(to_ground("guide", {{dof, 1.0}}, fem::Law::tie, dof < 2 ? 1e-6 : 1e-9));
    struct Row { double N, M, y0, turn, strap, pressure; };
    for (const Row r : {Row{0, 30000, 31.23106, 4.419807e-4, 431.0986, 0.690180}, Row{500, 30000, 47.54263, 3.103364e-4, 201.4541, 0.737710},
                        Row{500, 5000, 133.3333, 3.0e-5, 0, 0.2}, Row{-200, 30000, 26.02133, 4.969390e-4, 536.4821, 0.646550}}) {
        CAPTURE(r.N);
        CAPTURE(r.M);
        fem::Vector load = fem::Vector::Zero(6);
        fem::add(load, fem::rigid_port({0, h / 2, 0}, Vec3::UnitZ()), -r.N);
        load(3) += r.M;                                        // presses y = 0 into the bed and lifts the far edge
        const auto s = solve(a, load);
        REQUIRE(s.status == fem::SolveStatus::solved);
        // 0.2 %: springs 0.1 mm apart instead of a continuous bed
        check_near_rel(s.alpha(3), r.turn, 0.002);
        check_near_rel(-s.alpha(2) / s.alpha(3), r.y0, 0.002);
        check_near_rel(-s.alpha(2) * c, r.pressure, 0.002);
        if (r.strap > 0) check_near_rel(s.lambda(n), r.strap, 0.002);
        else check_near_abs(s.lambda(n), 0, 0);
    }
}

namespace {

/// Free beam along x with a node every `step`, on a bed k per length that only pushes; guides against the motions nobody loads.
struct BeamOnBed {
    fem::Frame beam;
    fem::Assembly a;
    int half;

    BeamOnBed(double length, double step, double EI, double k) : half(static_cast<int>(length / 2 / step + 0.5))
    {
        fem::FrameModel m;
        m.name = "beam";
        for (int i = -half; i <= half; ++i) m.nodes.emplace_back(i * step, 0, 0);
        for (int i = 0; i < 2 * half; ++i) {
            fem::FrameMember b;
            b.a = i, b.b = i + 1, b.section = {1000, 400, 100, EI / 1000, EI / 1000, 0, 100, 0, 0};
            m.members.push_back(b);
        }
        beam = fem::make_frame(m);
        a.bodies = {&beam.body};
        for (int i = 0; i <= 2 * half; ++i)
            a.joints.push_back(to_ground("bed", {{6 * i + 2, 1.0}}, fem::Law::contact, 1 / (k * step * (i == 0 || i == 2 * half ? 0.5 : 1))));
        for (const int d : {0, 1, 3, 5}) a.joints.push_back(to_ground("guide", {{6 * half + d, 1.0}}, fem::Law::tie, 1e-6));
    }
    BeamOnBed(const BeamOnBed&) = delete;
    BeamOnBed& operator=(const BeamOnBed&) = delete;
};

} // namespace

TEST_CASE("Weightless beam on a bed that only pushes: contact half-length pi / 2 beta whatever the force, w0 and M0 with coth(pi/2)")
{
    constexpr double EI = 1e6, k = 1, step = 1;
    const BeamOnBed bed(240, step, EI, k);
    std::vector<char> contact;
    for (const double P : {100.0, 200.0}) {
        CAPTURE(P);
        fem::Vector load = fem::Vector::Zero(bed.beam.body.dofs);
        load(6 * bed.half + 2) = -P;
        fem::ColumnCache cache;
        const auto c = fem::condense(bed.a, -1, cache);
        const std::vector<fem::UnitLoad> loads{{{load}}};
        const auto f = fem::free_motion(bed.a, c, loads);
        const auto s = fem::solve_joints(bed.a, c, f, fem::Vector::Ones(1), {});
        REQUIRE(s.status == fem::SolveStatus::solved);
        const auto r = fem::recover(bed.a, 0, loads, fem::Vector::Ones(1), f, s);
        check_near_rel(-r.u(6 * bed.half + 2), 1.219028 * P / 100, 0.001);          // 0.1 %: springs 1 mm apart; bonded would be 1.118
        check_near_rel(std::abs(fem::member_forces(bed.beam, bed.half, r.u)(4)), 1219.028 * P / 100, 0.002);
        const auto pressed = std::count(s.active.begin(), s.active.begin() + 2 * bed.half + 1, 1);
        check_near_abs(static_cast<double>(pressed) / 2 * step, 70.2481, step);     // to one spring
        if (contact.empty()) contact = s.active;
        CHECK(contact == s.active);
    }
}

TEST_CASE("Prying lever: Q / (F/2) = 3 m^2 / (2 n (3 m + n)) with a stiff bolt, 0.269302 with t = 6 and a bolt of 60000 N/mm, none with t = 12")
{
    // Half a T-stub: web guided (x = 0, cannot turn), bolt at m, stop at m + n; m = 30, n = 25, flange 60 wide.
    constexpr double m = 30, n = 25, E = 210000, force = 1000;
    struct Row { double t, bolt, Q; };
    for (const Row r : {Row{6, 1e12, 0.469565}, Row{6, 60000, 0.269302}, Row{12, 60000, 0}}) {
        CAPTURE(r.t);
        CAPTURE(r.bolt);
        const double I = 60 * r.t * r.t * r.t / 12;
        fem::FrameModel model;
        model.name = "flange";
        model.nodes = {Vec3{0, 0, 0}, Vec3{m, 0, 0}, Vec3{m + n, 0, 0}};
        for (int k = 0; k < 2; ++k) {
            fem::FrameMember b;
            b.a = k, b.b = k + 1, b.section = {E, E / 2.6, 60 * r.t, I, r.t * 18000, 0, 4 * I, 0, 0};
            model.members.push_back(b);
        }
        const fem::Frame flange = fem::make_frame(model);
        fem::Assembly a;
        a.bodies = {&flange.body};
        a.joints.push_back(to_ground("bolt", {{6 + 2, 1.0}}, fem::Law::tie, 1 / r.bolt));
        a.joints.push_back(to_ground("stop", {{12 + 2, 1.0}}, fem::Law::contact, 1e-12));
        for (const int d : {0, 1, 3, 4, 5}) a.joints.push_back(to_ground("guide", {{d, 1.0}}, fem::Law::tie, 0));
        fem::Vector load = fem::Vector::Zero(flange.body.dofs);
        load(2) = force;
        const auto s = solve(a, load);
        REQUIRE(s.status == fem::SolveStatus::solved);
        if (r.Q > 0) check_near_rel(-s.lambda(1) / force, r.Q, 1e-5);
        else check_near_abs(s.lambda(1), 0, 0);
        check_near_rel(s.lambda(0), force * (1 + r.Q), 1e-5);   // bolt force = F/2 + Q
    }
}

TEST_SUITE_END();
