// Natural frequencies of plates, plates with a mass, beams and a portal. Plates: lambda^2 = omega a^2 sqrt(rho t / D), nu = 0.3, a the shorter side.
// Sources: hinged rectangle pi^2 (m^2 + n^2 a^2 / b^2), exact formula; clamped rectangles by a spectral Ritz method, plates with a point mass by modal series with
// the residual flexibility, cantilever roots and portal by the exact dynamic stiffness: all computed from the formula outside this project, six digits or more.
// Leissa's survey value for the clamped square, 35.992 (from memory), is a beam-function bound from above; 35.985 is the better number.
#include "fem/modes.h"
#include "support/near.h"

#include <Spectra/MatOp/SparseSymMatProd.h>
#include <Spectra/MatOp/SymShiftInvert.h>
#include <Spectra/SymGEigsShiftSolver.h>

#include <algorithm>
#include <cstdio>

using namespace thinskin;
using tests::check_near_rel;

TEST_SUITE_BEGIN("published: frequencies");

namespace {

constexpr double pi = 3.14159265358979323846, density = 7.85e-9, a = 1000;

struct VibratingPlate {
    fem::Skin skin;
    fem::MassMatrix mass;
    double D = 0, per_area = density;

    VibratingPlate(double ratio, fem::Hold hold, int n)
    {
        fem::SkinModel m;
        m.width = a, m.height = ratio * a, m.spacing = a / n;
        m.sheet = {210000, 0.3, 1};
        for (fem::EdgeHold& e : m.edges) e.kind = hold;
        skin = fem::make_skin(m);
        mass = fem::skin_mass(skin, density);
        D = m.sheet.E / (12 * (1 - 0.3 * 0.3));
    }
    [[nodiscard]] double lambda_squared(double hertz) const { return 2 * pi * hertz * a * a * std::sqrt(per_area / D); }
    [[nodiscard]] std::vector<double> lowest(int count) const
    {
        const fem::Modes m = fem::modes({{&skin.body}, {}}, {}, {mass}, count);
        REQUIRE(m.status == fem::ModesStatus::solved);
        std::vector<double> out;
        for (const fem::Mode& mode : m.modes) out.push_back(lambda_squared(mode.frequency_Hz));
        return out;
    }
    /// A small rigid body tied to the middle in all directions but turning, mass mu times the plate's.
    [[nodiscard]] fem::Modes with_mass(double mu) const
    {
        const double x = a / 2, y = skin.model.height / 2, plate = per_area * a * skin.model.height;
        const fem::Body item = fem::make_rigid("mass");
        fem::Assembly all{{&skin.body, &item}, {}};
        for (int d = 0; d < 3; ++d) {
            fem::Joint j;
            j.name = "tie";
            j.a = {1, fem::rigid_port({x, y, 0}, fem::Vec3::Unit(d))};
            j.b = {0, fem::skin_port(skin, {x, y, 0, 0}, static_cast<fem::SkinDirection>(d))};
            all.joints.push_back(j);
        }
        const fem::MassMatrix lump = fem::rigid_mass(mu * plate, {x, y, 0}, mu * plate * Eigen::Matrix3d::Identity());
        return fem::modes(all, {1, 1, 1}, {mass, lump}, 4);
    }
};

} // namespace

TEST_CASE("Hinged rectangle: four lowest frequencies against the exact formula")
{
    for (const double ratio : {1.0, 1.2, 1.5, 2.0, 9.0 / 7}) {
        CAPTURE(ratio);
        std::vector<double> exact;
        for (int m = 1; m <= 4; ++m)
            for (int n = 1; n <= 4; ++n) exact.push_back(pi * pi * (m * m + n * n / (ratio * ratio)));
        std::sort(exact.begin(), exact.end());
        const std::vector<double> got = VibratingPlate(ratio, fem::Hold::hinged, 20).lowest(4);
        for (std::size_t k = 0; k < 4; ++k) check_near_rel(got[k], exact[k], 1e-4); // fourth order in the spacing, 20 across
    }
}

TEST_CASE("Clamped rectangle: four lowest frequencies for five aspect ratios")
{
    struct Row { double ratio; std::array<double, 4> lambda; };
    for (const Row& r : {Row{1, {35.985191, 73.393846, 73.393846, 108.216502}}, Row{1.2, {30.753160, 55.606209, 69.207396, 92.110880}},
                         Row{1.5, {27.004933, 41.703763, 66.124320, 66.521879}}, Row{2, {24.577711, 31.825975, 44.769656, 63.330752}},
                         Row{9.0 / 7, {29.344272, 50.532025, 68.064866, 85.145844}}}) {
        CAPTURE(r.ratio);
        const std::vector<double> got = VibratingPlate(r.ratio, fem::Hold::held, 20).lowest(4);
        for (std::size_t k = 0; k < 4; ++k) check_near_rel(got[k], r.lambda[k], 1e-4);
    }
}

TEST_CASE("Plate with a mass at its centre: lowest frequency of bending for four mass ratios, hinged and clamped")
{
    struct Row { double ratio; fem::Hold hold; std::array<double, 4> lambda; };
    const std::array<double, 4> mu{0.5, 1, 2, 10};
    for (const Row& r : {Row{1, fem::Hold::hinged, {11.069581, 8.473750, 6.261507, 2.907507}}, Row{1.5, fem::Hold::hinged, {7.924405, 6.047178, 4.458889, 2.066151}},
                         Row{9.0 / 7, fem::Hold::hinged, {8.854286, 6.770023, 4.998536, 2.319212}}, Row{1, fem::Hold::held, {16.954986, 12.624618, 9.174535, 4.196959}},
                         Row{9.0 / 7, fem::Hold::held, {13.728784, 10.205700, 7.409362, 3.386481}}}) {
        CAPTURE(r.ratio);
        const VibratingPlate p(r.ratio, r.hold, 30);
        for (std::size_t k = 0; k < 4; ++k) {
            CAPTURE(mu[k]);
            const fem::Modes m = p.with_mass(mu[k]);
            REQUIRE(m.status == fem::ModesStatus::solved);
            CHECK(m.free_motions == 3);                          // nothing ties the mass's rotations
            const fem::Mode& mode = m.modes.at(3);
            check_near_rel(p.lambda_squared(mode.frequency_Hz), r.lambda[k], 1e-3); // a point on the plate is second order
        }
    }
}

namespace {

fem::FrameModel bar(const std::vector<fem::Vec3>& corners, int divisions, double width, double depth)
{
    fem::FrameModel f;
    f.name = "bar";
    f.nodes = {corners[0]};
    for (std::size_t c = 0; c + 1 < corners.size(); ++c)
        for (int k = 1; k <= divisions; ++k) {
            f.nodes.push_back(corners[c] + (corners[c + 1] - corners[c]) * k / divisions);
            fem::FrameMember m;
            m.a = static_cast<int>(f.nodes.size()) - 2, m.b = m.a + 1;
            const double A = width * depth, weak = width * depth * depth * depth / 12, strong = depth * width * width * width / 12;
            m.section = {210000, 80769, A, strong, weak, 0, 4 * weak, 0, 0}; // local y in the plane of bending: I_z is the weak one
            m.local_y = fem::Vec3::UnitZ().cross(corners[c + 1] - corners[c]);
            f.members.push_back(m);
        }
    for (int d = 0; d < 6; ++d) f.supports.emplace_back(0, d);
    return f;
}

/// Frequencies of the modes in the plane x-y, ascending, Hz.
std::vector<double> in_plane(const fem::Modes& modes)
{
    constexpr double size = 1000; // of the bars: makes rotations comparable
    std::vector<double> out;
    for (const fem::Mode& m : modes.modes) {
        double in = 0, across = 0;
        const fem::Vector& u = m.shape[0];
        for (Eigen::Index d = 0; d < u.size(); d += 6) {
            in += u(d) * u(d) + u(d + 1) * u(d + 1) + size * size * u(d + 5) * u(d + 5);
            across += u(d + 2) * u(d + 2) + size * size * (u(d + 3) * u(d + 3) + u(d + 4) * u(d + 4));
        }
        if (in > across) out.push_back(m.frequency_Hz);
    }
    return out;
}

} // namespace

TEST_CASE("Cantilever with a tip mass: roots of 1 + cos z cosh z + mu z (cos z sinh z - sin z cosh z) = 0")
{
    struct Row { double mu, z1, z2; };
    const double L = 1000, EI = 210000 * 40.0 * 27 / 12, per_length = density * 120;
    for (const Row r : {Row{0, 1.8751041, 4.6940911}, Row{0.5, 1.4199644, 4.1111334}, Row{1, 1.2479174, 4.0311394}, Row{2, 1.0761957, 3.9825733}, Row{10, 0.7357819, 3.9384658}}) {
        CAPTURE(r.mu);
        const fem::Frame f = fem::make_frame(bar({{0, 0, 0}, {L, 0, 0}}, 10, 40, 3));
        const fem::MassMatrix m = fem::frame_mass(f, density, {{10, {L, 0, 0}, r.mu * per_length * L}});
        const std::vector<double> hertz = in_plane(fem::modes({{&f.body}, {}}, {}, {m}, 6));
        const auto root = [&](double f_Hz) { return std::sqrt(2 * pi * f_Hz * L * L * std::sqrt(per_length / EI)); };
        check_near_rel(root(hertz.at(0)), r.z1, 1e-6);
        check_near_rel(root(hertz.at(1)), r.z2, 1e-4);
    }
}

TEST_CASE("Cantilever with a tip mass of rotary inertia 0.05 rho A L^3: z = 1.2210884, 2.8580290")
{
    const double L = 1000, EI = 210000 * 40.0 * 27 / 12, per_length = density * 120, M = per_length * L;
    const fem::Frame f = fem::make_frame(bar({{0, 0, 0}, {L, 0, 0}}, 20, 40, 3));
    const double r = std::sqrt(0.05) * L; // two halves of the mass at +- r across the bar: inertia M r^2 about z
    const fem::MassMatrix m = fem::frame_mass(f, density, {{20, {L, r, 0}, M / 2}, {20, {L, -r, 0}, M / 2}});
    const std::vector<double> hertz = in_plane(fem::modes({{&f.body}, {}}, {}, {m}, 8));
    const auto root = [&](double f_Hz) { return std::sqrt(2 * pi * f_Hz * L * L * std::sqrt(per_length / EI)); };
    check_near_rel(root(hertz.at(0)), 1.2210884, 1e-6);
    check_near_rel(root(hertz.at(1)), 2.8580290, 1e-6);
}

TEST_CASE("Portal of three bars, feet fixed: 2.2845, 9.0166, 14.7063 and the mode with motionless joints, 15.9498 Hz")
{
    fem::FrameModel model = bar({{0, 0, 0}, {0, 1000, 0}, {1000, 1000, 0}, {1000, 0, 0}}, 16, 40, 3);
    for (int d = 0; d < 6; ++d) model.supports.emplace_back(48, d);
    const fem::Frame f = fem::make_frame(model);
    const std::vector<double> hertz = in_plane(fem::modes({{&f.body}, {}}, {}, {fem::frame_mass(f, density)}, 8));
    REQUIRE(hertz.size() >= 4);
    check_near_rel(hertz[0], 2.284519, 1e-5);
    check_near_rel(hertz[1], 9.016580, 1e-5);
    check_near_rel(hertz[2], 14.706336, 1e-5);
    check_near_rel(hertz[3], 15.949804, 5e-5); // 16 consistent elements a bar are known to give 15.949372
}

// The table of docs/verification/frequencies.md. Printed by  test_published --test-case="Frequencies table*" --success=false
TEST_CASE("Frequencies table: error in per cent of the square plate's lambda^2 at 4, 8, 12, 16, 24, 32 elements across")
{
    struct Row { const char* name; fem::Hold hold; int mode; double mu, want; };
    for (const Row& r : {Row{"hinged, mode 1", fem::Hold::hinged, 0, 0, 19.739209}, Row{"hinged, modes 2 and 3", fem::Hold::hinged, 2, 0, 49.348022},
                         Row{"held, mode 1", fem::Hold::held, 0, 0, 35.985191}, Row{"held, modes 2 and 3", fem::Hold::held, 2, 0, 73.393846},
                         Row{"held, mode 4", fem::Hold::held, 3, 0, 108.216502}, Row{"hinged, central mass 1", fem::Hold::hinged, 0, 1, 8.473750},
                         Row{"held, central mass 1", fem::Hold::held, 0, 1, 12.624618}, Row{"held, central mass 10", fem::Hold::held, 0, 10, 4.196959}}) {
        std::printf("| %s |", r.name);
        double error = 0;
        for (const int n : {4, 8, 12, 16, 24, 32}) {
            const VibratingPlate p(1, r.hold, n);
            const double got = r.mu > 0 ? p.lambda_squared(p.with_mass(r.mu).modes.at(3).frequency_Hz) : p.lowest(r.mode + 1).back();
            error = got / r.want - 1;
            std::printf(" %+.3f |", 100 * error);
        }
        std::printf("\n");
        CHECK(std::abs(error) < 1e-3);
    }
}

namespace {

/// Two bodies and their springs as one stiffness and one mass, supported dofs left out.
struct Whole { Eigen::SparseMatrix<double> K, M; };

Whole whole(const fem::Assembly& all, const std::vector<fem::MassMatrix>& masses)
{
    std::vector<int> begin, place;
    for (const fem::Body* b : all.bodies) {
        begin.push_back(static_cast<int>(place.size()));
        for (int d = 0; d < b->dofs; ++d) place.push_back(b->held && b->supported[static_cast<std::size_t>(d)] ? -1 : 0);
    }
    int n = 0;
    for (int& p : place)
        if (p == 0) p = n++;
    std::vector<Eigen::Triplet<double>> K, M;
    const auto put = [&place](std::vector<Eigen::Triplet<double>>& to, int i, int j, double x) {
        if (place[static_cast<std::size_t>(i)] >= 0 && place[static_cast<std::size_t>(j)] >= 0) to.emplace_back(place[static_cast<std::size_t>(i)], place[static_cast<std::size_t>(j)], x);
    };
    const auto put_all = [&](std::vector<Eigen::Triplet<double>>& to, const fem::Sparse& from, int at) {
        for (int c = 0; c < from.outerSize(); ++c)
            for (fem::Sparse::InnerIterator it(from, c); it; ++it) put(to, at + static_cast<int>(it.row()), at + static_cast<int>(it.col()), it.value());
    };
    for (std::size_t b = 0; b < all.bodies.size(); ++b) {
        put_all(K, all.bodies[b]->K, begin[b]);
        put_all(M, masses[b].M, begin[b]);
    }
    for (const fem::Joint& j : all.joints) { // its stretch is e . u, its energy e e^T / compliance
        std::vector<std::pair<int, double>> e;
        for (const auto& [d, x] : j.a.row) e.emplace_back(begin[static_cast<std::size_t>(j.a.body)] + d, x);
        for (const auto& [d, x] : j.b.row) e.emplace_back(begin[static_cast<std::size_t>(j.b.body)] + d, -x);
        for (const auto& [d, x] : e)
            for (const auto& [f, y] : e) put(K, d, f, x * y / j.compliance);
    }
    Whole w{Eigen::SparseMatrix<double>(n, n), Eigen::SparseMatrix<double>(n, n)};
    w.K.setFromTriplets(K.begin(), K.end());
    w.M.setFromTriplets(M.begin(), M.end());
    return w;
}

/// Source: the shift-and-invert eigenvalue solver of a general-purpose library.
std::vector<double> by_library(const Whole& w, int count)
{
    using Inverse = Spectra::SymShiftInvert<double, Eigen::Sparse, Eigen::Sparse>;
    using Product = Spectra::SparseSymMatProd<double>;
    Inverse inverse(w.K, w.M);
    Product mass(w.M);
    Spectra::SymGEigsShiftSolver<Inverse, Product, Spectra::GEigsMode::ShiftInvert> solver(inverse, mass, count, 4 * count, -1e4);
    solver.init();
    solver.compute(Spectra::SortRule::LargestMagn, 300, 1e-12);
    REQUIRE(solver.info() == Spectra::CompInfo::Successful);
    const Eigen::VectorXd squares = solver.eigenvalues();
    std::vector<double> hertz;
    for (const double x : squares) hertz.push_back(std::sqrt(std::max(x, 0.0)) / (2 * pi));
    std::sort(hertz.begin(), hertz.end());
    return hertz;
}

} // namespace

TEST_CASE("A plate with a body on four springs: the twenty lowest, and the first with the body in it, as a general library's eigenvalue solver has them")
{
    const VibratingPlate p(1.2, fem::Hold::held, 10);
    const fem::Body item = fem::make_rigid("body");
    fem::Assembly all{{&p.skin.body, &item}, {}};
    for (const double x : {300.0, 720.0})
        for (const double y : {400.0, 830.0})
            for (int d = 0; d < 3; ++d) {
                fem::Joint j;
                j.name = "spring";
                j.compliance = d == 2 ? 2e-3 : 5e-3;
                j.a = {1, fem::rigid_port({x, y, 0}, fem::Vec3::Unit(d))};
                j.b = {0, fem::skin_port(p.skin, {x, y, 20, 20}, static_cast<fem::SkinDirection>(d))};
                all.joints.push_back(j);
            }
    const std::vector<fem::MassMatrix> masses{p.mass, fem::rigid_mass(0.02, {520, 640, 90}, Eigen::Vector3d(400, 700, 900).asDiagonal())};
    const std::vector<double> library = by_library(whole(all, masses), 20);
    const fem::Modes own = fem::modes(all, std::vector<char>(12, 1), masses, 20);
    REQUIRE(own.status == fem::ModesStatus::solved);
    REQUIRE(own.modes.size() == library.size());
    for (std::size_t k = 0; k < library.size(); ++k) check_near_rel(own.modes[k].frequency_Hz, library[k], 1e-6);

    const auto body_moves = [](const fem::Mode& m) { return m.shares[1].share > 0.1; };
    fem::ModesCache cache;
    std::vector<double> hertz;
    for (int again = 0; again < 2; ++again) { // cold, and with the plate's factor kept
        const fem::Modes few = fem::modes_until(all, std::vector<char>(12, 1), masses, 20, body_moves, &cache);
        const auto first = std::find_if(few.modes.begin(), few.modes.end(), body_moves), of_all = std::find_if(own.modes.begin(), own.modes.end(), body_moves);
        REQUIRE(first != few.modes.end());
        CHECK(few.modes.size() < own.modes.size());
        check_near_rel(first->frequency_Hz, of_all->frequency_Hz, 1e-7);
        hertz.push_back(first->frequency_Hz);
    }
    CHECK(hertz[0] == hertz[1]);
}

TEST_SUITE_END();
