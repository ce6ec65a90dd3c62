// Natural frequencies of whole cases, from the case file to the result. Sources: point mass on a clamped plate by modal series with the residual
// flexibility, cantilever roots of 1 + cos z cosh z + mu z (cos z sinh z - sin z cosh z) = 0, mass on four springs: all computed from the formula
// outside this project (the first two also in frequencies.cpp, against the solver alone).
#include "idealise/vibration.h"
#include "support/cases.h"
#include "support/near.h"

#include <numbers>

using namespace thinskin;
using tests::check_near_rel;

TEST_SUITE_BEGIN("published: frequencies");

namespace {

constexpr double pi = std::numbers::pi;

results::Outcome at_full_depth(const std::string& name, const tests::Edits& edits)
{
    return tests::check_case(name, edits, pipeline::Depth::full);
}

} // namespace

TEST_CASE("A case with a mass in the middle of a clamped panel: lowest frequency for three mass ratios, within 1 %")
{
    // 700 x 900 x 0.8 mm of DC04: 9/7, plate mass 7850 kg/m3 * 0.000504 m3 = 3.9564 kg
    struct Row { double mu; const char* mass; double lambda; };
    for (const Row& r : {Row{0.5, "1.9782 kg", 13.728784}, Row{1, "3.9564 kg", 10.205700}, Row{2, "7.9128 kg", 7.409362}}) {
        CAPTURE(r.mu);
        const auto o = at_full_depth("plain_panel", {{"\nforces:", std::string("\nmasses: [{at: [350 mm, 450 mm], mass: ") + r.mass + "}]\nforces:"}, {"skin: automatic", "skin: linear"}});
        REQUIRE(o.vibration.run);
        const double D = 210000 * 0.512 / (12 * 0.91), a = 700;
        check_near_rel(o.vibration.modes.at(0).frequency_Hz, r.lambda / (2 * pi * a * a) * std::sqrt(D / (7.85e-9 * 0.8)), 0.01); // 5 mm footprint, 30 mm grid
    }
}

TEST_CASE("An item on four soft rubber mounts bounces with sqrt(4 k / m): within 1 %")
{
    // The mounts lie evenly about the centre of mass seen from above, so that the bounce has no other motion in it. 0.5 N/mm each: 0.6 % of what
    // the bracket and rails behind give way.
    const auto o = at_full_depth("condenser_door", {{"kind: rigid", "kind: rubber, stiffness: 0.5 N/mm"}, {"running_frequency: [48 Hz]", "running_frequency: [8 Hz]"}});
    REQUIRE(o.vibration.run);
    double bounce = 0;
    for (const results::NaturalMode& m : o.vibration.modes)
        if (m.what == "condenser unit bounces up and down") bounce = m.frequency_Hz;
    check_near_rel(bounce, std::sqrt(4 * 0.5e3 / (36 * 1.05)) / (2 * pi), 0.01);
}

TEST_CASE("A bracket's arm with a mass on its tip, the leg held: roots for two mass ratios, within 1 %")
{
    const model::Case c = tests::read_case(tests::edited_text("condenser_door", {{"    brace: {from: 430 mm, to_arm: 270 mm, section: angle 25x25x3, material: S235}\n", ""},
                                                                                 {", brace_leg: {weld: 3 mm}, brace_arm: {weld: 3 mm}", ""}}));
    const layout::Result l = layout::resolve(c);
    REQUIRE(l.layout);
    idealise::SkinCache cache;
    const auto s = idealise::build(*l.layout, {}, cache);
    const idealise::BracketBody& b = s->brackets.at(0);
    fem::Assembly alone{{&b.frame.body}, {}};
    for (int node = 0; node < b.first_arm_node; ++node)
        for (const double z : {0.0, 50.0})
            for (int d = 0; d < 3; ++d) {
                fem::Joint j;
                const fem::Vec3 at = b.frame.model.nodes[static_cast<std::size_t>(node)] + fem::Vec3(0, 0, z) + fem::Vec3(d == 1 ? 20 : 0, 0, 0);
                j.a = {0, fem::frame_port(b.frame, node, at, fem::Vec3::Unit(d))};
                alone.joints.push_back(j);
            }
    // The mass sits on the line of shear centres: the arm bends about its weak principal axis and does not twist.
    const int tip = b.first_arm_node + static_cast<int>(b.arm_z.size()) - 1;
    const fem::Vec3 root = b.frame.model.nodes[static_cast<std::size_t>(b.arm_root)], end = b.frame.model.nodes[static_cast<std::size_t>(tip)];
    const double L = (end - root).norm(), EI = 210000 * l.layout->brackets[0].arm_section.I_v, arm = 7.85e-9 * l.layout->brackets[0].arm_section.A * L;
    struct Row { double mu, z; };
    for (const Row& r : {Row{2, 1.0761957}, Row{10, 0.7357819}}) {
        CAPTURE(r.mu);
        fem::MassMatrix m = idealise::body_masses(*s).at(static_cast<std::size_t>(b.body));
        m.M += fem::frame_mass(b.frame, 0, {{tip, end, r.mu * arm}}).M;
        const fem::Modes modes = fem::modes(alone, std::vector<char>(alone.joints.size(), 1), {m}, 2);
        REQUIRE(modes.status == fem::ModesStatus::solved);
        check_near_rel(modes.modes.at(0).frequency_Hz, r.z * r.z / (2 * pi * L * L) * std::sqrt(EI * L / arm), 0.01);
    }
}

TEST_SUITE_END();
