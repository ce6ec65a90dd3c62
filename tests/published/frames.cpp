// Two-arm wall bracket with 45-degree braces, one arm: top joint A (0, 0), arm along x, brace from B (0, -H) to C (H, 0), pins at A and
// B and at both ends of the brace. Reference: statics by two methods and a plane frame, computed outside this project.
#include "fem/frame.h"
#include "support/near.h"

using namespace thinskin;
using tests::check_near_rel;

TEST_SUITE_BEGIN("published: frames");

namespace {

constexpr double L = 260, arm = 300, H = 200, W = 147.15, Wa = 4.2509, Wb = 3.1365, E = 210000;
constexpr int n = 60, B = n + 1;                                // arm in steps of 5 mm
constexpr int at_C = static_cast<int>(H * n / arm), at_load = static_cast<int>(L * n / arm);

fem::Frame bracket()
{
    fem::FrameModel m;
    m.name = "bracket";
    for (int k = 0; k <= n; ++k) m.nodes.emplace_back(arm * k / n, 0, 0);
    m.nodes.emplace_back(0, -H, 0);
    const fem::BeamSection rhs{E, E / 2.6, 184, 11000, 21565.33, 0, 20000, 0, 0}, shs{E, E / 2.6, 144, 7872, 7872, 0, 12000, 0, 0};
    for (int k = 0; k < n; ++k) {
        fem::FrameMember b;
        b.a = k, b.b = k + 1, b.section = rhs;
        m.members.push_back(b);
    }
    fem::FrameMember brace;
    brace.a = B, brace.b = at_C, brace.section = shs, brace.pin_a = brace.pin_b = true;
    m.members.push_back(brace);
    for (int d = 0; d < 5; ++d) m.supports.emplace_back(0, d); // free to turn about z
    for (int d = 0; d < 6; ++d) m.supports.emplace_back(B, d);
    return fem::make_frame(m);
}

/// The arm's weight spread over its length, the brace's weight half to each end, the payload at L.
fem::Vector weights(const fem::Frame& f)
{
    std::vector<fem::NodeMass> masses;
    const auto put = [&](int node, double weight) { masses.push_back({node, f.model.nodes[static_cast<std::size_t>(node)], weight}); };
    for (int k = 0; k <= n; ++k) put(k, Wa / n * (k == 0 || k == n ? 0.5 : 1));
    put(at_C, Wb / 2);
    put(B, Wb / 2);
    put(at_load, W);
    return fem::mass_load(f, masses, {0, -1, 0});
}

} // namespace

TEST_CASE("Braced bracket: reactions, brace force and arm moment")
{
    const fem::Frame f = bracket();
    const fem::Vector load = weights(f), u = fem::solve(f.body, load), reaction = f.body.K * u - load;
    // 1e-5: seven printed digits of the reference, its own weights rounded to five
    check_near_rel(reaction(0), -196.0514, 1e-5);              // pulls the wall at A
    check_near_rel(reaction(1), -43.0823, 1e-4);               // A is lifted: the brace does more than the load
    check_near_rel(reaction(6 * B), 196.0514, 1e-5);
    check_near_rel(reaction(6 * B + 1), 197.6197, 1e-5);
    check_near_rel(reaction(1) + reaction(6 * B + 1), W + Wa + Wb, 1e-9);
    const auto brace = fem::member_forces(f, n, u);
    check_near_rel(brace(0), 277.2586 - Wb / 2 / std::sqrt(2.0), 0.01); // its own weight acts at its ends here: 0.4 % between its ends
    const auto after_C = fem::member_forces(f, at_C, u);
    // - (W (L - H) + w_a (arm - H)^2 / 2), counted on the part beyond the brace: the pieces' weights sit at the nodes
    check_near_rel(std::abs(after_C(5)), 8899.848, 1e-4);
}

TEST_CASE("Braced bracket: deflection at the brace, under the load and at the tip")
{
    const fem::Frame f = bracket();
    const fem::Vector u = fem::solve(f.body, weights(f));
    // 1 %: the reference counts the axial give of arm and brace with their weights spread; printed to four digits
    check_near_rel(u(6 * at_C + 1), -0.004682, 0.01);
    check_near_rel(u(6 * at_load + 1), -0.016243, 0.01);
    check_near_rel(u(6 * n + 1), -0.024738, 0.01);
}

TEST_SUITE_END();
