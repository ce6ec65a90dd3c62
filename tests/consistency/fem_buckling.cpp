#include "consistency/fem_models.h"
#include "fem/pressed_sheet.h"
#include "fem/sheet_slopes.h"
#include "support/near.h"

#include <numeric>

using namespace thinskin;
using tests::check_near_rel;

TEST_SUITE_BEGIN("consistency: buckling");

namespace {

/// 36 kg hung on four bolts of a large panel, N.
std::vector<fem::InPlaneForce> four_bolts(double weight)
{
    std::vector<fem::InPlaneForce> f;
    for (const double x : {150.0, 554.0})
        for (const double y : {420.0, 740.0}) f.push_back({{x, y, 4.5, 4.5}, 0, -weight / 4});
    return f;
}

fem::SkinModel large(double t, bool fixed)
{
    fem::SkinModel m = tests::panel(fem::Hold::hinged);
    m.width = 740, m.height = 1520, m.sheet.thickness = t, m.in_plane_fixed = fixed;
    return m;
}

} // namespace

TEST_CASE("No force and pure tension do not buckle: infinity; a force that is not a number: not a number")
{
    const auto m = fem::make_buckling(large(0.8, true));
    CHECK(std::isinf(fem::buckling_factor(*m, {})));
    CHECK(std::isinf(fem::buckling_factor_uniform(*m, 1, 2, 0)));
    CHECK(std::isnan(fem::buckling_factor(*m, four_bolts(std::nan("")))));
}

TEST_CASE("States side by side, one to thirteen, unlike each other, give what each gives alone; one that is not a number takes no other with it")
{
    const auto m = fem::make_buckling(large(0.8, true));
    std::vector<std::vector<fem::InPlaneForce>> states;
    for (int k = 0; k < 13; ++k) {
        states.push_back(four_bolts(k % 4 == 1 ? -100.0 * k : 80.0 + 40 * k));
        states.back()[static_cast<std::size_t>(k % 4)].x = 30.0 * k;
    }
    states[4] = {};
    states[9] = four_bolts(std::nan(""));
    std::vector<double> alone;
    for (const auto& s : states) alone.push_back(fem::buckling_factor(*m, s));
    for (const std::size_t count : {1UL, 4UL, 5UL, 8UL, 13UL}) {
        const std::vector<double> all = fem::buckling_factors(*m, {states.begin(), states.begin() + static_cast<std::ptrdiff_t>(count)});
        REQUIRE(all.size() == count);
        for (std::size_t k = 0; k < count; ++k) {
            CAPTURE(k);
            if (k == 9) CHECK(std::isnan(all[k]));
            else if (k == 4) CHECK(std::isinf(all[k]));
            else check_near_rel(all[k], alone[k], 1e-9);
        }
    }
}

TEST_CASE("Twice the force, half the factor; twice the thickness of the same membrane forces, eight times")
{
    const auto m = fem::make_buckling(large(0.6, true)), thick = fem::make_buckling(large(1.2, true));
    const double one = fem::buckling_factor(*m, four_bolts(353));
    check_near_rel(fem::buckling_factor(*m, four_bolts(706)), one / 2, 1e-5);      // the iteration stops at 3e-4 of mu, whose error goes with the square
    check_near_rel(fem::buckling_factor(*thick, four_bolts(353)), one * 8, 1e-5);
}

TEST_CASE("Several states at once have the factors that each has alone, those without figures or without pressure between them")
{
    const auto m = fem::make_buckling(large(0.8, true));
    std::vector<fem::InPlaneForce> aside = four_bolts(200);
    for (fem::InPlaneForce& f : aside) std::swap(f.x, f.y);
    const std::vector<std::vector<fem::InPlaneForce>> states{four_bolts(353), {}, four_bolts(std::nan("")), aside};
    const std::vector<double> together = fem::buckling_factors(*m, states);
    REQUIRE(together.size() == 4);
    check_near_rel(together[0], fem::buckling_factor(*m, states[0]), 1e-9);
    CHECK(std::isinf(together[1]));
    CHECK(std::isnan(together[2]));
    check_near_rel(together[3], fem::buckling_factor(*m, aside), 1e-9);
}

TEST_CASE("Shear of either sign buckles at the same factor, and the same call gives the same bits")
{
    const auto m = fem::make_buckling(large(0.8, true));
    const double plus = fem::buckling_factor_uniform(*m, 0, 0, 1);
    check_near_rel(fem::buckling_factor_uniform(*m, 0, 0, -1), plus, 1e-4);
    CHECK(fem::buckling_factor_uniform(*m, 0, 0, 1) == plus);
}

TEST_CASE("The coarse grid is within 2 % of a grid of half the spacing for a weight on four bolts")
{
    for (const bool fixed : {true, false}) {
        CAPTURE(fixed);
        const double coarse = fem::buckling_factor(*fem::make_buckling(large(0.8, fixed), 60), four_bolts(353));
        const double fine = fem::buckling_factor(*fem::make_buckling(large(0.8, fixed), 30), four_bolts(353));
        check_near_rel(coarse, fine, 0.02); // the membrane force round a bolt grows with refinement; measured 0.8 % and 1.9 %
    }
}

TEST_CASE("Ribs raise the factor")
{
    fem::SkinModel m = large(0.8, true);
    const double bare = fem::buckling_factor(*fem::make_buckling(m), four_bolts(353));
    m.ribs = {tests::rib(150, 0, 150, 1520), tests::rib(554, 0, 554, 1520)};
    CHECK(fem::buckling_factor(*fem::make_buckling(m), four_bolts(353)) > 1.2 * bare);
}

TEST_CASE("What presses a sheet is what its written matrix gives, element by element, any number of fields at once")
{
    // K_g of one element 30 x 20, written out by Simpson's rule: another way than the code's
    const double lx = 30, ly = 20;
    const fem::SheetShape shape = fem::sheet_shape(lx, ly);
    fem::PressedSheet sheet(1);
    sheet[0].shape = &shape;
    std::iota(sheet[0].place.begin(), sheet[0].place.end(), 0);
    sheet[0].place[5] = -1; // held
    fem::ForceField field(12, 1);
    for (int k = 0; k < 12; ++k) field(k, 0) = 1 + 0.3 * k - 0.07 * k * k;
    fem::Matrix written = fem::Matrix::Zero(16, 16);
    constexpr int n = 200; // even
    for (int i = 0; i <= n; ++i)
        for (int j = 0; j <= n; ++j) {
            const auto weight = [](int k) { return (k == 0 || k == n ? 1.0 : k % 2 == 1 ? 4.0 : 2.0) / (3.0 * n); };
            const double s = static_cast<double>(i) / n, t = static_cast<double>(j) / n, xi = 2 * s - 1, eta = 2 * t - 1;
            const fem::SheetSlopes d = fem::sheet_slopes(fem::hermite(lx, s), fem::hermite(ly, t));
            const Eigen::Vector3d N = field.col(0).segment<3>(0) + xi * field.col(0).segment<3>(3) + eta * field.col(0).segment<3>(6) + xi * eta * field.col(0).segment<3>(9);
            written += weight(i) * weight(j) * lx * ly * (N(0) * d.dx * d.dx.transpose() + N(1) * d.dy * d.dy.transpose() + N(2) * (d.dx * d.dy.transpose() + d.dy * d.dx.transpose()));
        }
    for (const int count : {1, 4, 6, 9}) {
        fem::Matrix x(16, count);
        std::vector<fem::ForceField> fields;
        for (int c = 0; c < count; ++c) {
            for (int k = 0; k < 16; ++k) x(k, c) = std::sin(1.0 + 3 * k + c);
            fields.push_back((c + 1) * field);
        }
        std::vector<const fem::ForceField*> of;
        for (const fem::ForceField& f : fields) of.push_back(&f);
        fem::Matrix got(16, count);
        fem::by_eights(count, [&]<int Width>(fem::Several<Width> columns, Eigen::Index first, Eigen::Index many) {
            columns.to(got, first, many, fem::press(sheet, fem::beside_each_other<Width>(of, first, many), columns.from(x, first, many)));
        });
        fem::Matrix held = x;
        held.row(5).setZero();
        for (int c = 0; c < count; ++c) {
            fem::Vector want = -(c + 1) * written * held.col(c);
            want(5) = 0;
            CHECK((got.col(c) - want).norm() < 1e-6 * want.norm()); // Simpson's error, of the fourth power
        }
    }
}

TEST_SUITE_END();
