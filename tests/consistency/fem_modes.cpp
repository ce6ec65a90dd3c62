// Vibration: identities that must hold whatever the figures are.
#include "consistency/fem_models.h"
#include "fem/modes.h"
#include "support/near.h"

#include <algorithm>
#include <cmath>
#include <limits>

using namespace thinskin;
using tests::check_near_abs;
using tests::check_near_rel;

TEST_SUITE_BEGIN("consistency: vibration");

namespace {

constexpr double pi = 3.14159265358979323846, density = 7.85e-9;

std::vector<fem::MassMatrix> masses(const tests::Job& job, double item = 0.03)
{
    return {fem::skin_mass(job.skin, density), fem::frame_mass(job.left, density), fem::frame_mass(job.right, density),
            fem::rigid_mass(item, {340, 420, 220}, item * fem::Vec3(9000, 5000, 6000).asDiagonal().toDenseMatrix())};
}

std::vector<char> all(const tests::Job& job, char value) { return std::vector<char>(job.assembly.joints.size(), value); }

double worst_residual(const fem::Modes& m)
{
    double worst = 0;
    for (const fem::Mode& mode : m.modes) worst = std::max(worst, mode.residual);
    return worst;
}

} // namespace

TEST_CASE("Masses weigh what they are: total, first and second moments of sheet, bar and rigid body")
{
    const tests::Job job;
    const fem::Matrix& R = job.skin.body.rigid_modes;
    const fem::Matrix sheet = R.transpose() * (fem::skin_mass(job.skin, density, {1e-6, 2e-6}).M * R);
    const double m = density * 0.8 * 700 * 900, ribs = 1e-6 * 900 + 2e-6 * 700;
    for (int k = 0; k < 3; ++k) check_near_rel(sheet(k, k), m + ribs, 1e-12);
    check_near_rel(sheet(2, 3), m * 450 + 1e-6 * 900 * 450 + 2e-6 * 700 * 450, 1e-12);           // e_x x r along z: y
    check_near_rel(sheet(5, 5), m * (700.0 * 700 + 900.0 * 900) / 3 + 1e-6 * 900 * (200 * 200 + 900 * 900 / 3.0)
                                    + 2e-6 * (700 * 480.0 * 480 + (800.0 * 800 * 800 - 100.0 * 100 * 100) / 3), 1e-12);
    const fem::Frame f = fem::make_frame(tests::bracket("b", 0, 0));
    const fem::Matrix bar = f.body.rigid_modes.transpose() * (fem::frame_mass(f, density).M * f.body.rigid_modes);
    const double per_length = density * 144;
    check_near_rel(bar(0, 0), per_length * (300 + 140), 1e-12);
    check_near_rel(bar(1, 1), per_length * (300 + 140), 1e-12);
    check_near_rel(bar(2, 3), per_length * (300 * 150 + 140 * 150), 1e-12);
    const Eigen::Matrix3d inertia = fem::Vec3(1, 2, 3).asDiagonal();
    const fem::Matrix rigid = fem::rigid_mass(2, {1, 2, 3}, inertia).M;
    check_near_rel(rigid(3, 3), 1 + 2 * (4 + 9), 1e-12);
    check_near_rel(rigid(3, 4), -2 * 1 * 2, 1e-12);
}

TEST_CASE("Shapes are orthonormal in the mass, satisfy their equations, and the shares sum to one")
{
    const tests::Job job;
    const auto m = masses(job);
    const fem::Modes r = fem::modes(job.assembly, all(job, 1), m, 5);
    REQUIRE(r.status == fem::ModesStatus::solved);
    REQUIRE(r.modes.size() == 5);
    CHECK(r.free_motions == 0);
    CHECK(worst_residual(r) < 1e-6);
    for (std::size_t i = 0; i < 5; ++i) {
        if (i > 0) CHECK(r.modes[i].frequency_Hz >= r.modes[i - 1].frequency_Hz);
        double shares = 0;
        for (const fem::BodyShare& s : r.modes[i].shares) shares += s.share;
        check_near_rel(shares, 1, 1e-9);
        for (std::size_t k = 0; k <= i; ++k) {
            double product = 0;
            for (std::size_t b = 0; b < m.size(); ++b) product += r.modes[i].shape[b].dot(m[b].M * r.modes[k].shape[b]);
            check_near_abs(product, i == k ? 1 : 0, 1e-7);
        }
    }
}

TEST_CASE("Item on the panel: the static deflection under its weight bounds the lowest frequency, and the item is what moves")
{
    const tests::Job job;
    const fem::Modes r = fem::modes(job.assembly, all(job, 1), masses(job), 1);
    REQUIRE(r.status == fem::ModesStatus::solved);
    // Rayleigh: any shape gives an upper bound; take the deflection under the item pulled along z with every contact closed.
    tests::Job closed;
    for (fem::Joint& j : closed.assembly.joints) j.law = fem::Law::tie;
    const tests::JobSolution s = tests::solve(closed, tests::factors(0, 0, 1, 0));
    REQUIRE(s.state.status == fem::SolveStatus::solved);
    const auto m = masses(closed);
    double kinetic = 0, work = 0;
    for (int b = 0; b < 4; ++b) {
        const fem::Recovered u = fem::recover(closed.assembly, b, closed.loads, tests::factors(0, 0, 1, 0), s.free, s.state);
        kinetic += u.u.dot(m[static_cast<std::size_t>(b)].M * u.u);
        if (b == 3) work = u.u.dot(closed.loads[2].on_body[3]);
    }
    const double bound = std::sqrt(work / kinetic) / (2 * pi);
    CHECK(r.modes[0].frequency_Hz <= bound);
    CHECK(r.modes[0].frequency_Hz > 0.3 * bound);
    CHECK(r.modes[0].what.find("item") == 0);
}

TEST_CASE("A sheet made without a factor has the modes of one made with it, cold and kept, and is not asked for a displacement")
{
    const tests::Job job;
    const fem::Skin bare = fem::skin_without_factor(job.skin.model);
    fem::Assembly assembly = job.assembly;
    REQUIRE(assembly.bodies[0] == &job.skin.body);
    assembly.bodies[0] = &bare.body;
    fem::ModesCache cache;
    const fem::Modes want = fem::modes(job.assembly, all(job, 1), masses(job), 4);
    for (const bool again : {false, true}) {
        CAPTURE(again);
        const fem::Modes got = fem::modes(assembly, all(job, 1), masses(job), 4, &cache);
        REQUIRE(got.status == fem::ModesStatus::solved);
        for (std::size_t k = 0; k < 4; ++k) check_near_rel(got.modes[k].frequency_Hz, want.modes[k].frequency_Hz, 1e-9);
    }
    CHECK_THROWS_AS((void)fem::solve(bare.body, fem::Vector::Ones(bare.body.dofs)), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::solve_columns(bare.body, fem::Matrix::Ones(bare.body.dofs, 2)), std::invalid_argument);
}

TEST_CASE("Open contacts soften, more mass slows, four times the mass of everything halves the frequency")
{
    const tests::Job job;
    const auto first = [&](char closed, double item) { return fem::modes(job.assembly, all(job, closed), masses(job, item), 1).modes.at(0).frequency_Hz; };
    CHECK(first(0, 0.03) < first(1, 0.03));
    CHECK(first(1, 0.06) < first(1, 0.03));
    auto m = masses(job);
    for (fem::MassMatrix& x : m) x.M *= 4;
    check_near_rel(fem::modes(job.assembly, all(job, 1), m, 1).modes.at(0).frequency_Hz, first(1, 0.03) / 2, 1e-8);
}

TEST_CASE("Free bodies: six motions without frequency, then the free-free bar's 4.7300 and 7.8532")
{
    fem::FrameModel model;
    model.name = "bar";
    for (int k = 0; k <= 12; ++k) model.nodes.push_back({k * 100.0, 0, 0});
    for (int k = 0; k < 12; ++k) {
        fem::FrameMember b;
        b.a = k, b.b = k + 1;
        b.section = {210000, 80769, 120, 90, 16000, 0, 360, 0, 0};
        model.members.push_back(b);
    }
    const fem::Frame f = fem::make_frame(model);
    const fem::Modes r = fem::modes({{&f.body}, {}}, {}, {fem::frame_mass(f, density)}, 8);
    REQUIRE(r.status == fem::ModesStatus::solved);
    CHECK(r.free_motions == 6);
    for (std::size_t k = 0; k < 6; ++k) CHECK(r.modes[k].frequency_Hz == 0);
    const auto hertz = [&](double z) { return z * z / (2 * pi) * std::sqrt(210000.0 * 90 / (density * 120)) / (1200.0 * 1200); };
    check_near_rel(r.modes[6].frequency_Hz, hertz(4.7300407), 1e-4);
    check_near_rel(r.modes[7].frequency_Hz, hertz(7.8532046), 5e-4);
    const fem::Body item = fem::make_rigid("item");
    const fem::Modes loose = fem::modes({{&item}, {}}, {}, {fem::rigid_mass(0.01, {10, 20, 30}, Eigen::Matrix3d::Identity())}, 8);
    CHECK(loose.status == fem::ModesStatus::solved);
    CHECK(loose.free_motions == 6);
    CHECK(loose.modes.size() == 6);
}

TEST_CASE("Item on six springs: the closed forms, and the words say what moves")
{
    const fem::Body item = fem::make_rigid("item");
    const double m = 0.02, k = 50;
    const fem::Vec3 c{100, 200, 300};
    const Eigen::Matrix3d inertia = fem::Vec3(40, 50, 60).asDiagonal();
    fem::Assembly a{{&item}, {}};
    const auto spring = [&](const fem::Vec3& at, const fem::Vec3& direction, double stiffness) {
        fem::Joint j;
        j.name = "spring";
        j.a = {0, fem::rigid_port(at, direction)};
        j.compliance = 1 / stiffness;
        a.joints.push_back(j);
    };
    for (int d = 0; d < 3; ++d) spring(c, fem::Vec3::Unit(d), k * (d + 1));
    for (int d = 0; d < 3; ++d) {            // a couple: turns about d only
        const fem::Vec3 arm = fem::Vec3::Unit((d + 1) % 3) * 10, along = fem::Vec3::Unit((d + 2) % 3);
        spring(c + arm, along, 3 * k), spring(c - arm, along, 3 * k);
    }
    const fem::Modes r = fem::modes(a, std::vector<char>(a.joints.size(), 0), {fem::rigid_mass(m, c, inertia)}, 6); // ties count as closed
    REQUIRE(r.status == fem::ModesStatus::solved);
    std::vector<std::pair<double, std::string>> want;
    static const char* const axes[3] = {"x", "y", "z"};
    for (std::size_t d = 0; d < 3; ++d) {
        want.emplace_back(std::sqrt((k * static_cast<double>(d + 1) + 6 * k) / m), std::string("item moves along ") + axes[d]);
        want.emplace_back(std::sqrt(6 * k * 100 / inertia(static_cast<Eigen::Index>(d), static_cast<Eigen::Index>(d))), std::string("item turns about ") + axes[d]);
    }
    std::sort(want.begin(), want.end());
    for (std::size_t i = 0; i < 6; ++i) {
        check_near_rel(r.modes[i].frequency_Hz, want[i].first / (2 * pi), 1e-8);
        CHECK(r.modes[i].what == want[i].second + " (100 % of the moving energy)");
    }
}

TEST_CASE("A joint told twice without compliance changes nothing; a joint without compliance is the limit of a stiff one")
{
    tests::Job job(tests::panel(fem::Hold::held));
    const auto m = masses(job);
    for (fem::Joint& j : job.assembly.joints)
        if (j.law == fem::Law::tie) j.compliance = 1e-9;
    const double stiff = fem::modes(job.assembly, all(job, 0), m, 1).modes.at(0).frequency_Hz;
    for (fem::Joint& j : job.assembly.joints)
        if (j.law == fem::Law::tie) j.compliance = 0;
    const double once = fem::modes(job.assembly, all(job, 0), m, 1).modes.at(0).frequency_Hz;
    check_near_rel(once, stiff, 1e-5);
    job.assembly.joints.push_back(job.assembly.joints[0]);
    check_near_rel(fem::modes(job.assembly, all(job, 0), m, 1).modes.at(0).frequency_Hz, once, 1e-6);
}

TEST_CASE("Repeated frequencies are all found: the square plate's second and third, and its fifth and sixth")
{
    fem::SkinModel m = tests::panel(fem::Hold::hinged, 70);
    m.width = m.height = 840;
    const fem::Skin s = fem::make_skin(m);
    const fem::Modes r = fem::modes({{&s.body}, {}}, {}, {fem::skin_mass(s, density)}, 6);
    REQUIRE(r.modes.size() == 6);
    check_near_rel(r.modes[2].frequency_Hz, r.modes[1].frequency_Hz, 1e-8);
    check_near_rel(r.modes[5].frequency_Hz, r.modes[4].frequency_Hz, 1e-8);
    CHECK(r.modes[3].frequency_Hz > 1.5 * r.modes[2].frequency_Hz);
}

TEST_CASE("What cannot be answered is said in words; wrong sizes and figures are refused")
{
    const tests::Job job;
    auto m = masses(job);
    m[3] = {};
    const fem::Modes no_item = fem::modes(job.assembly, all(job, 1), m, 1);
    CHECK(no_item.status == fem::ModesStatus::no_mass);
    CHECK(no_item.where == "item is free and has no mass");
    CHECK(no_item.modes.empty());
    CHECK(fem::modes({{&job.skin.body}, {}}, {}, {{}}, 1).status == fem::ModesStatus::no_mass);
    CHECK_THROWS_AS((void)fem::modes(job.assembly, all(job, 1), masses(job), 0), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::modes(job.assembly, {}, masses(job), 1), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::modes(job.assembly, all(job, 1), {}, 1), std::invalid_argument);
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS((void)fem::skin_mass(job.skin, nan), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::rigid_mass(nan, {0, 0, 0}, Eigen::Matrix3d::Identity()), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::rigid_mass(1, {0, 0, 0}, Eigen::Matrix3d::Zero()), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::frame_mass(job.left, -1), std::invalid_argument);
}

TEST_SUITE_END();
