// The local grid round a washer: exact where it must be, independent of the grid that drives it.
#include "consistency/fem_models.h"
#include "fem/large.h"
#include "support/near.h"

#include <algorithm>
#include <cmath>

using namespace thinskin;
using tests::check_near_rel;

TEST_SUITE_BEGIN("consistency: local grid");

namespace {

constexpr double half = 9; // of the washers

struct Panel {
    std::shared_ptr<const fem::LargeModel> model;
    fem::LargeField field;
    std::vector<fem::LocalForce> forces;
};

/// A pull on one washer, half of it back on another, along y as well; a rib and a window when wanted.
Panel panel(double spacing, bool furnished = false)
{
    fem::SkinModel m = tests::panel(fem::Hold::held, spacing);
    if (furnished) {
        m.ribs = {tests::rib(300, 0, 300, 900), tests::rib(180, 620, 240, 620)};
        m.openings = {{"window", 100, 560, 160, 650}};
    }
    Panel p;
    const auto skin = std::make_shared<const fem::Skin>(fem::make_skin(m));
    p.model = fem::make_large(skin);
    p.forces = {{{253, 517, half, half}, fem::SkinDirection::z, 30}, {{253, 517, half, half}, fem::SkinDirection::y, -60},
                {{253, 367, half, half}, fem::SkinDirection::z, -15}};
    fem::Vector load = fem::Vector::Zero(skin->body.dofs);
    for (const fem::LocalForce& f : p.forces) fem::add(load, fem::skin_port(*skin, f.where, f.direction), f.force);
    fem::JointState none;
    none.status = fem::SolveStatus::solved;
    none.lambda.resize(0), none.alpha.resize(0);
    fem::ColumnCache cache;
    const fem::Large s = fem::solve_large({{&skin->body}, {}}, 0, *p.model, {{{load}}}, fem::Vector::Ones(1), none, cache);
    REQUIRE(s.status == fem::SolveStatus::solved);
    p.field = fem::large_field(*p.model, s.skin_u);
    return p;
}

fem::LargeLocal local(const Panel& p, double spacing)
{
    const fem::LargeLocal l = fem::large_local(*p.model, p.field, {253 - 60, 517 - 60, 253 + 60, 517 + 60, spacing}, {p.forces[0], p.forces[1]});
    REQUIRE(l.status == fem::SolveStatus::solved);
    return l;
}

double worse_face(const fem::LargeLocal& l, double x, double y)
{
    const fem::FaceStress s = fem::face_stress({210000, 0.3, 0.8}, fem::local_point(l, x, y));
    return std::max(s.top, s.bottom);
}

} // namespace

TEST_CASE("Local grids that are kept give the same bits, round another place of the same size too, and no more are kept than said")
{
    const Panel p = panel(50, true);
    fem::LocalGrids kept;
    for (int again = 0; again < 2; ++again)
        for (const double y : {517.0, 617.0, 517.0}) {
            const fem::LocalArea a{253 - 60, y - 60, 253 + 60, y + 60, 10};
            const std::vector<fem::LocalForce> inside = y < 600 ? std::vector{p.forces[0], p.forces[1]} : std::vector<fem::LocalForce>{};
            const fem::LargeLocal warm = fem::large_local(*p.model, p.field, a, inside, 0, &kept), cold = fem::large_local(*p.model, p.field, a, inside);
            REQUIRE(warm.status == cold.status);
            if (warm.status == fem::SolveStatus::solved) CHECK(warm.field.u == cold.field.u);
        }
    for (double size = 70; size < 140; size += 10) (void)fem::large_local(*p.model, p.field, {400, 700, 400 + size, 700 + size, 10}, {}, 0, &kept);
    CHECK(kept.last.size() == fem::LocalGrids::most);
}

TEST_CASE("A local grid over the whole panel with the panel's spacing gives the panel's own solution, ribs and window included")
{
    const Panel p = panel(50, true);
    const fem::LargeLocal l = fem::large_local(*p.model, p.field, {0, 0, 700, 900, 50}, p.forces);
    REQUIRE(l.status == fem::SolveStatus::solved);
    for (const auto& at : {std::pair{253.0, 517.0}, std::pair{300.0, 700.0}, std::pair{160.0, 600.0}, std::pair{222.0, 611.0}}) {
        const fem::SkinPoint a = fem::local_point(l, at.first, at.second), b = fem::skin_point_large(*p.model, p.field, at.first, at.second);
        check_near_rel(a.w, b.w, 1e-5);
        check_near_rel(a.N_y, b.N_y, 1e-3);
        check_near_rel(a.M_x, b.M_x, 1e-3);
    }
}

TEST_CASE("Halving the panel's grid moves the stress in and beside the washer's footprint by less than two per cent")
{
    const fem::LargeLocal coarse = local(panel(30), half / 2), fine = local(panel(15), half / 2);
    for (const auto& at : {std::pair{253.0, 517.0}, std::pair{253.0 + half, 517.0}, std::pair{253.0 + 2 * half, 517.0}, std::pair{253.0, 517.0 - 1.5 * half}, std::pair{253.0, 517.0 + 3 * half}})
        check_near_rel(worse_face(coarse, at.first, at.second), worse_face(fine, at.first, at.second), 0.02);
}

TEST_CASE("Halving the local grid moves the stress by less than two per cent from the footprint's edge outwards")
{
    const Panel p = panel(30, true);
    const fem::LargeLocal coarse = local(p, half / 2), fine = local(p, half / 4);
    for (const auto& at : {std::pair{253.0 + 1.5 * half, 517.0}, std::pair{253.0 + 2 * half, 517.0}, std::pair{253.0 - 2 * half, 517.0 - 2 * half}, std::pair{253.0, 517.0 + 3 * half}})
        check_near_rel(worse_face(coarse, at.first, at.second), worse_face(fine, at.first, at.second), 0.02);
}

TEST_CASE("Areas without size and footprints over the boundary are refused")
{
    const Panel p = panel(50);
    CHECK_THROWS_AS((void)fem::large_local(*p.model, p.field, {100, 100, 100, 200, 5}, {}), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::large_local(*p.model, p.field, {100, 100, 200, 200, std::nan("")}, {}), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::large_local(*p.model, p.field, {193, 457, 255, 577, 5}, {p.forces[0]}), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::local_point(fem::LargeLocal{}, 10, 10), std::invalid_argument);
}

TEST_SUITE_END();
