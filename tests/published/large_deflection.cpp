// Rectangular plates at deflections of several thicknesses, edges that do not move in the plane, nu = 0.3.
// Sources: Q = q a^4 / (E t^4) or P a^2 / (E t^4) for a given w / t by a spectral Ritz method in u, v, w (7 and 9 modes a direction agree; patch: 12 and 17 modes,
// 3 to 4 digits): computed from the formula outside this project. Published finite-element values of 1980 for the clamped square (from memory) agree with them to 0.3 %;
// the table of 1942 (from memory) is 2.5 % high at its end and is not used. Strip in cylindrical bending: Timoshenko & Woinowsky-Krieger, chapter 1, the
// closed form (from memory), evaluated here.
#include "fem/large.h"
#include "support/near.h"

#include <cstdio>

using namespace thinskin;
using tests::check_near_rel;

TEST_SUITE_BEGIN("published: large deflection");

namespace {

fem::JointState no_joints()
{
    fem::JointState s;
    s.status = fem::SolveStatus::solved;
    s.lambda.resize(0);
    s.alpha.resize(0);
    return s;
}

struct DeflectedPlate {
    static constexpr double a = 1000, E = 210000;
    std::shared_ptr<const fem::Skin> skin;
    std::shared_ptr<const fem::LargeModel> model;

    DeflectedPlate(double ratio, fem::Hold hold, int n)
    {
        fem::SkinModel m;
        m.width = a, m.height = ratio * a, m.spacing = a / n;
        m.sheet = {E, 0.3, 1};
        for (fem::EdgeHold& e : m.edges) e.kind = hold;
        skin = std::make_shared<const fem::Skin>(fem::make_skin(m));
        model = fem::make_large(skin);
    }
    [[nodiscard]] fem::Large under(const fem::Vector& load) const
    {
        fem::ColumnCache cache;
        return fem::solve_large({{&skin->body}, {}}, 0, *model, {{{load}}}, fem::Vector::Ones(1), no_joints(), cache);
    }
    [[nodiscard]] fem::Vector pressure(double Q) const { return fem::skin_pressure(*skin, Q * E / (a * a * a * a)); }
    [[nodiscard]] fem::Vector patch(double P) const
    {
        fem::Vector load = fem::Vector::Zero(skin->body.dofs);
        fem::add(load, fem::skin_port(*skin, {a / 2, skin->model.height / 2, 0.05 * a, 0.05 * a}, fem::SkinDirection::z), P * E / (a * a));
        return load;
    }
    [[nodiscard]] double centre(const fem::Large& s) const { return fem::skin_point(*skin, s.skin_u, a / 2, skin->model.height / 2).w; }
};

struct Row { double w, load; };

void check_rows(const DeflectedPlate& plate, bool patch, double tolerance, const std::vector<Row>& rows)
{
    for (const Row& r : rows) {
        CAPTURE(r.w);
        const fem::Large s = plate.under(patch ? plate.patch(r.load) : plate.pressure(r.load));
        REQUIRE(s.status == fem::SolveStatus::solved);
        check_near_rel(plate.centre(s), r.w, tolerance);
        CHECK(s.residual <= 1e-8);
        CHECK(s.force_error <= 1e-8);
        CHECK(s.moment_error <= 1e-8);       // symmetric: here the lever arms' grid error cancels too
        CHECK(s.steps <= 7);
    }
}

} // namespace

// 24 across is the normal grid (30 mm on a 740 mm panel).
constexpr double uniform_tolerance = 5e-4;   // grid 0.02 %, digits of the reference 1e-4
constexpr double patch_tolerance = 2e-3;     // the reference has 3 to 4 digits

TEST_CASE("Clamped plate under pressure, edges held in the plane: w / t from 0.1 to 3, square and 9 : 7")
{
    check_rows(DeflectedPlate(1, fem::Hold::held, 24), false, uniform_tolerance,
               {{0.10, 7.2755}, {0.25, 18.6901}, {0.50, 40.9861}, {0.75, 70.6152}, {1.0, 111.5250}, {1.5, 244.264}, {2.0, 474.957}, {3.0, 1371.7}});
    check_rows(DeflectedPlate(9.0 / 7, fem::Hold::held, 24), false, uniform_tolerance,
               {{0.10, 4.8797}, {0.25, 12.5451}, {0.50, 27.5830}, {0.75, 47.7163}, {1.0, 75.7360}, {1.5, 167.555}, {2.0, 328.13}, {3.0, 952.7}});
}

TEST_CASE("Hinged plate under pressure, edges held in the plane: w / t from 0.1 to 3, square and 9 : 7")
{
    check_rows(DeflectedPlate(1, fem::Hold::hinged, 24), false, uniform_tolerance,
               {{0.10, 2.2861}, {0.25, 6.1367}, {0.50, 15.3469}, {0.75, 31.0046}, {1.0, 56.9355}, {1.5, 156.686}, {2.0, 349.569}, {3.0, 1148.9}});
    check_rows(DeflectedPlate(9.0 / 7, fem::Hold::hinged, 24), false, uniform_tolerance,
               {{0.10, 1.4777}, {0.25, 3.9802}, {0.50, 10.0552}, {0.75, 20.5619}, {1.0, 38.1931}, {1.5, 106.850}, {2.0, 240.333}, {3.0, 793.8}});
}

TEST_CASE("Square plate under a load on a central patch of a tenth of the side: w / t from 0.25 to 3")
{
    check_rows(DeflectedPlate(1, fem::Hold::held, 24), true, patch_tolerance, {{0.25, 4.345}, {0.5, 9.397}, {1, 24.27}, {2, 88.8}, {3, 225}});
    check_rows(DeflectedPlate(1, fem::Hold::hinged, 24), true, patch_tolerance, {{0.25, 2.143}, {0.5, 5.040}, {1, 15.56}, {2, 68.6}, {3, 187}});
}

namespace {

/// Strip of length L between immovable clamps: E I w'''' - S w'' = q with S L / (E A) = int 1/2 w'^2. Per unit width or as a whole.
///   w' = q / S (y - L/2 sinh(k y) / sinh(k L/2)), y from the middle, k = sqrt(S / (E I))
struct Strip {
    double EI, EA, L, q;
    /// w at the middle and int 1/2 w'^2 for a pull S.
    [[nodiscard]] std::array<double, 2> under(double S) const
    {
        const double k = std::sqrt(S / EI);
        double w = 0, stretch = 0;
        constexpr int n = 2000;              // Simpson from the end to the middle
        for (int i = 0; i <= n; ++i) {
            const double y = L / 2 * (1 - static_cast<double>(i) / n), weight = (i == 0 || i == n ? 1 : i % 2 == 1 ? 4 : 2) * L / (6.0 * n);
            const double slope = q / S * (y - L / 2 * std::sinh(k * y) / std::sinh(k * L / 2));
            w += weight * slope;
            stretch += weight * slope * slope;   // twice one half: both halves of the span
        }
        return {w, stretch};
    }
    [[nodiscard]] double middle() const
    {
        double lo = 1e-6 * EA, hi = 0.05 * EA;
        for (int i = 0; i < 200; ++i) {
            const double S = std::sqrt(lo * hi);
            (S * L / EA < under(S)[1] ? lo : hi) = S;
        }
        return under(lo)[0];
    }
};

} // namespace

TEST_CASE("Strip of sheet between immovable clamps in cylindrical bending: deflection of 0.8 to 7 thicknesses")
{
    for (const double q : {2e-4, 2e-3, 2e-2}) {
        CAPTURE(q);
        fem::SkinModel m;
        m.width = 40, m.height = 600, m.spacing = 20;
        m.sheet = {210000, 0, 0.8};          // nu = 0: no anticlastic curvature at the free sides
        m.edges[0].kind = m.edges[1].kind = fem::Hold::free;
        const auto skin = std::make_shared<const fem::Skin>(fem::make_skin(m));
        fem::ColumnCache cache;
        const auto model = fem::make_large(skin);
        const fem::Large s = fem::solve_large({{&skin->body}, {}}, 0, *model, {{{fem::skin_pressure(*skin, q)}}}, fem::Vector::Ones(1), no_joints(), cache);
        REQUIRE(s.status == fem::SolveStatus::solved);
        const Strip strip{210000 * 0.512 / 12, 210000 * 0.8, 600, q};
        check_near_rel(fem::skin_point(*skin, s.skin_u, 20, 300).w, strip.middle(), 1e-3);
    }
}

TEST_CASE("Stiffened strip between immovable clamps: the composite section's E I and E A in the same closed form")
{
    for (const double q : {1e-2, 1e-1, 0.5}) {
        CAPTURE(q);
        fem::SkinModel m;
        m.width = 10, m.height = 600, m.spacing = 15;
        m.sheet = {210000, 0, 0.8};
        m.edges[0].kind = m.edges[1].kind = fem::Hold::free;
        fem::RibModel r;                     // flat bar 2 x 5, half on each side of the middle line, centroid 2.9 mm above it
        r.name = "bar";
        r.from = {5, 0}, r.to = {5, 600};
        r.E = 210000, r.G = 80769, r.A = 10, r.I_normal = 2 * 125.0 / 12, r.J = 10, r.offset_z = 2.9;
        m.ribs = {r};
        const auto skin = std::make_shared<const fem::Skin>(fem::make_skin(m));
        fem::ColumnCache cache;
        const auto model = fem::make_large(skin);
        const fem::Large s = fem::solve_large({{&skin->body}, {}}, 0, *model, {{{fem::skin_pressure(*skin, q)}}}, fem::Vector::Ones(1), no_joints(), cache);
        REQUIRE(s.status == fem::SolveStatus::solved);
        const double A_s = 10 * 0.8, A_r = 10, I = 10 * 0.512 / 12 + r.I_normal + A_s * A_r / (A_s + A_r) * 2.9 * 2.9;
        const Strip strip{210000 * I, 210000 * (A_s + A_r), 600, 10 * q};
        CHECK(strip.middle() > 0.3 * q / 1e-2);
        // 1 %: shear lag in the sheet, which the section's rule takes as rigid in its plane
        check_near_rel(fem::skin_point(*skin, s.skin_u, 5, 300).w, strip.middle(), 0.01);
    }
}

// The tables of docs/verification/large_deflection.md. Printed by  test_published --test-case="Large deflection table*" --success=false
TEST_CASE("Large deflection table: error of w in per cent at 6, 8, 12, 16, 24, 32 elements across")
{
    struct Line { const char* name; double ratio; fem::Hold hold; bool patch; double w, load; };
    for (const Line& l : {Line{"clamped, pressure, w / t = 0.5", 1, fem::Hold::held, false, 0.5, 40.9861}, Line{"clamped, pressure, w / t = 1", 1, fem::Hold::held, false, 1, 111.525},
                          Line{"clamped, pressure, w / t = 3", 1, fem::Hold::held, false, 3, 1371.7}, Line{"hinged, pressure, w / t = 0.5", 1, fem::Hold::hinged, false, 0.5, 15.3469},
                          Line{"hinged, pressure, w / t = 1", 1, fem::Hold::hinged, false, 1, 56.9355}, Line{"hinged, pressure, w / t = 3", 1, fem::Hold::hinged, false, 3, 1148.9},
                          Line{"clamped 9 : 7, pressure, w / t = 2", 9.0 / 7, fem::Hold::held, false, 2, 328.13}, Line{"clamped, patch 0.1 a, w / t = 1", 1, fem::Hold::held, true, 1, 24.27},
                          Line{"hinged, patch 0.1 a, w / t = 1", 1, fem::Hold::hinged, true, 1, 15.56}}) {
        std::printf("| %s |", l.name);
        double error = 0;
        for (const int n : {6, 8, 12, 16, 24, 32}) {
            const DeflectedPlate plate(l.ratio, l.hold, n);
            const fem::Large s = plate.under(l.patch ? plate.patch(l.load) : plate.pressure(l.load));
            REQUIRE(s.status == fem::SolveStatus::solved);
            error = plate.centre(s) / l.w - 1;
            std::printf(" %+.3f |", 100 * error);
        }
        std::printf("\n");
        CHECK(std::abs(error) < 0.002);
    }
}

TEST_CASE("Large deflection table: out-of-balance force after each Newton step, clamped square under pressure, 24 across")
{
    const DeflectedPlate plate(1, fem::Hold::held, 24);
    for (const Row& r : {Row{0.5, 40.9861}, Row{1, 111.525}, Row{3, 1371.7}}) {
        const fem::Large s = plate.under(plate.pressure(r.load));
        REQUIRE(s.status == fem::SolveStatus::solved);
        std::printf("| %.1f | %.3f |", r.w, s.start_scale);
        for (const double x : s.residuals) std::printf(" %.1e", x);
        std::printf(" |\n");
        CHECK(s.residuals.back() <= 1e-8);
    }
}

TEST_SUITE_END();
