// Openings: against plates that are really cut, against a quarter of the same plate, and in the parts that use them.
#include "consistency/fem_models.h"
#include "fem/large.h"
#include "fem/modes.h"
#include "support/near.h"

#include <cmath>
#include <limits>

using namespace thinskin;
using tests::check_near_abs;
using tests::check_near_rel;

TEST_SUITE_BEGIN("consistency: openings");

namespace {

fem::SkinModel with_opening(const fem::Opening& o, double spacing = 50)
{
    fem::SkinModel m = tests::panel(fem::Hold::held, spacing);
    m.openings = {o};
    return m;
}

fem::Vector under(const fem::Skin& skin, const fem::Footprint& where, fem::SkinDirection d, double force)
{
    fem::Vector load = fem::Vector::Zero(skin.body.dofs);
    fem::add(load, fem::skin_port(skin, where, d), force);
    return fem::solve(skin.body, load);
}

} // namespace

TEST_CASE("An opening across one side leaves the plate that is left, with a free edge: bending, membrane, pressure, frequencies")
{
    const fem::Skin cut = fem::make_skin(with_opening({"end", 500, -10, 800, 1000}));
    fem::SkinModel shorter = tests::panel(fem::Hold::held, 50);
    shorter.width = 500;
    shorter.edges[1].kind = fem::Hold::free;
    const fem::Skin plain = fem::make_skin(shorter);
    for (const fem::SkinDirection d : {fem::SkinDirection::z, fem::SkinDirection::x, fem::SkinDirection::y}) {
        const fem::Vector u = under(cut, {320, 410, 10, 20}, d, 10), v = under(plain, {320, 410, 10, 20}, d, 10);
        for (const auto& [x, y] : {std::pair{320.0, 410.0}, std::pair{500.0, 430.0}, std::pair{133.0, 777.0}}) {
            const fem::SkinPoint p = fem::skin_point(cut, u, x, y), q = fem::skin_point(plain, v, x, y);
            check_near_rel(p.u + p.v + p.w, q.u + q.v + q.w, 1e-9);
            check_near_rel(p.M_x + p.N_y + p.N_xy, q.M_x + q.N_y + q.N_xy, 1e-8);
        }
    }
    const fem::Vector u = fem::solve(cut.body, fem::skin_pressure(cut, 1e-4)), v = fem::solve(plain.body, fem::skin_pressure(plain, 1e-4));
    check_near_rel(fem::skin_point(cut, u, 500, 450).w, fem::skin_point(plain, v, 500, 450).w, 1e-9);
    const auto lowest = [](const fem::Skin& s) { return fem::modes({{&s.body}, {}}, {}, {fem::skin_mass(s, 7.85e-9)}, 2).modes.at(1).frequency_Hz; };
    check_near_rel(lowest(cut), lowest(plain), 1e-7);
}

TEST_CASE("A window in the middle: a quarter of the panel with slopes held on the lines of symmetry bends alike")
{
    const fem::Skin whole = fem::make_skin(with_opening({"window", 250, 350, 450, 550}));
    // By itself the solver knows no symmetry lines; four equal loads on the whole give the quarter, whose lines are then checked.
    fem::Vector load = fem::Vector::Zero(whole.body.dofs);
    for (const double x : {150.0, 550.0})
        for (const double y : {250.0, 650.0}) fem::add(load, fem::skin_port(whole, {x, y, 15, 15}, fem::SkinDirection::z), 5);
    const fem::Vector u = fem::solve(whole.body, load);
    for (const auto& [x, y] : {std::pair{100.0, 300.0}, std::pair{250.0, 400.0}, std::pair{240.0, 340.0}}) {
        const double w = fem::skin_point(whole, u, x, y).w;
        check_near_rel(fem::skin_point(whole, u, 700 - x, y).w, w, 1e-9);
        check_near_rel(fem::skin_point(whole, u, x, 900 - y).w, w, 1e-9);
    }
    check_near_abs(fem::skin_point(whole, u, 350, 200).w_x, 0, 1e-12);
    check_near_abs(fem::skin_point(whole, u, 200, 450).w_y, 0, 1e-12);
    fem::SkinModel quarter = with_opening({"window", 250, 350, 500, 600});
    quarter.width = 350, quarter.height = 450;
    quarter.edges[1] = quarter.edges[3] = {fem::Hold::free, 0};
    fem::Skin part = fem::make_skin(quarter);
    // symmetry: slope across and twist are zero on the lines x = 350, y = 450; no displacement across them in the plane
    const int nx = static_cast<int>(part.grid.x.size()), ny = static_cast<int>(part.grid.y.size());
    for (int j = 0; j < ny; ++j)
        for (int i = 0; i < nx; ++i) {
            const auto d = static_cast<std::size_t>(6 * (i + nx * j));
            if (i == nx - 1) part.body.supported[d + 1] = part.body.supported[d + 3] = part.body.supported[d + 4] = 1;
            if (j == ny - 1) part.body.supported[d + 2] = part.body.supported[d + 3] = part.body.supported[d + 5] = 1;
        }
    part.body.factor = fem::factorise(part.body.K, part.body.supported);
    const fem::Vector v = under(part, {150, 250, 15, 15}, fem::SkinDirection::z, 5);
    for (const auto& [x, y] : {std::pair{150.0, 250.0}, std::pair{250.0, 350.0}, std::pair{350.0, 200.0}, std::pair{100.0, 450.0}}) {
        check_near_rel(fem::skin_point(part, v, x, y).w, fem::skin_point(whole, u, x, y).w, 1e-9);
        check_near_abs(fem::skin_point(part, v, x, y).M_y, fem::skin_point(whole, u, x, y).M_y, 1e-9);
    }
}

TEST_CASE("An opening softens; at half the spacing the deflection beside it moves by less than one per cent")
{
    const fem::Opening window{"window", 220, 310, 430, 520};
    const auto w = [&](const fem::SkinModel& m) {
        const fem::Skin s = fem::make_skin(m);
        return fem::skin_point(s, under(s, {180, 400, 12, 12}, fem::SkinDirection::z, 5), 180, 400).w;
    };
    const double coarse = w(with_opening(window, 30)), fine = w(with_opening(window, 15));
    CHECK(coarse > w(tests::panel(fem::Hold::held, 30)));
    check_near_rel(coarse, fine, 0.01);
}

TEST_CASE("Large deflection of a panel with a window balances and does not see the missing sheet")
{
    const auto skin = std::make_shared<const fem::Skin>(fem::make_skin(with_opening({"window", 250, 350, 450, 550}, 30)));
    const auto model = fem::make_large(skin);
    fem::Vector load = fem::skin_pressure(*skin, 2e-4);
    CHECK(std::abs((skin->body.rigid_modes.transpose() * load)(2) - 2e-4 * (700 * 900 - 200 * 200)) < 1e-9);
    fem::JointState none;
    none.status = fem::SolveStatus::solved;
    none.lambda.resize(0), none.alpha.resize(0);
    fem::ColumnCache cache;
    const fem::Large s = fem::solve_large({{&skin->body}, {}}, 0, *model, {{{load}}}, fem::Vector::Ones(1), none, cache);
    REQUIRE(s.status == fem::SolveStatus::solved);
    CHECK(s.force_error < 1e-8);
    const fem::LargeField field = fem::large_field(*model, s.skin_u);
    CHECK(std::isfinite(fem::skin_point_large(*model, field, 250, 450).N_y));
    CHECK_THROWS_AS((void)fem::skin_point_large(*model, field, 350, 450), std::invalid_argument);
}

TEST_CASE("Ports, points and ribs inside an opening are refused by name; beside it they are not")
{
    const fem::Skin s = fem::make_skin(with_opening({"window", 250, 350, 450, 550}));
    CHECK(fem::in_opening(s.model, 300, 400));
    CHECK_FALSE(fem::in_opening(s.model, 250, 400));
    CHECK_THROWS_WITH((void)fem::skin_port(s, {240, 400, 12, 12}, fem::SkinDirection::z), "skin 'skin', port: footprint reaches into opening 'window'");
    CHECK_THROWS_AS((void)fem::skin_port(s, {300, 400, 0, 0}, fem::SkinDirection::x), std::invalid_argument);
    CHECK_NOTHROW((void)fem::skin_port(s, {238, 400, 12, 12}, fem::SkinDirection::z));
    const fem::Vector u = fem::Vector::Zero(s.body.dofs);
    CHECK_THROWS_AS((void)fem::skin_point(s, u, 300, 400), std::invalid_argument);
    CHECK_NOTHROW((void)fem::skin_point(s, u, 250, 400));
    fem::SkinModel crossed = s.model;
    crossed.ribs = {tests::rib(0, 400, 700, 400)};
    CHECK_THROWS_WITH((void)fem::make_skin(crossed), "skin 'skin', opening 'window': rib 'rib' runs through it");
    crossed.ribs = {tests::rib(250, 0, 250, 900)};
    CHECK_NOTHROW((void)fem::make_skin(crossed));
}

TEST_CASE("Openings without size, outside, or not a number are refused; a sheet cut free of its edges is a mechanism")
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const fem::Opening& o : {fem::Opening{"o", 100, 100, 100, 200}, fem::Opening{"o", 800, 100, 900, 200}, fem::Opening{"o", nan, 100, 200, 200}})
        CHECK_THROWS_AS((void)fem::make_skin(with_opening(o)), std::invalid_argument);
    fem::SkinModel island = tests::panel(fem::Hold::held, 50);
    island.openings = {{"l", -1, -1, 50, 901}, {"r", 650, -1, 701, 901}, {"b", -1, -1, 701, 50}, {"t", -1, 850, 701, 901}};
    CHECK_THROWS_AS((void)fem::make_skin(island), std::runtime_error);
}

TEST_CASE("Edge flow beside an opening in the edge is zero; buckling is that of the sheet that is left")
{
    fem::SkinModel m = with_opening({"notch", 250, -1, 450, 200});
    const fem::Skin s = fem::make_skin(m);
    const fem::Vector u = under(s, {350, 500, 20, 20}, fem::SkinDirection::y, -100);
    const auto flow = fem::edge_flow(s, u, 2, 14);
    CHECK(flow.at(6).normal == 0);
    CHECK(flow.at(2).normal < 0);
    const auto buckling = [](const fem::SkinModel& model) { return fem::buckling_factor(*fem::make_buckling(model, 50), {{{350, 600, 50, 50}, 0, -100}}); };
    fem::SkinModel shorter = tests::panel(fem::Hold::held, 50);
    shorter.width = 500;
    shorter.edges[1].kind = fem::Hold::free;
    check_near_rel(buckling(with_opening({"end", 500, -10, 800, 1000})), buckling(shorter), 1e-6);
}

TEST_SUITE_END();
