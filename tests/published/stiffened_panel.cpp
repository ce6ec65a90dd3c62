// A whole stiffened panel against a general-purpose finite-element library. Reference: figures recorded on 2026-11-25 with GetFEM 5.4.2,
// tests/verification/stiffened_panel.csv with the program that made them beside it; where the library is installed, the test
// library_stiffened_panel computes them anew. The same plate and beam theory, other elements (composite C1, nine-node membrane), other
// code. The study prints the table of docs/verification/ribs.md:
//   test_published --test-case="Study: stiffened panel*" --success=false
#include "fem/skin.h"
#include "support/csv.h"
#include "support/near.h"
#include "verification/stiffened_panel.h"

#include <cmath>
#include <cstdio>

using namespace thinskin;
using tests::check_near_rel;
using verification::Panel;

TEST_SUITE_BEGIN("published: plates");

namespace {

constexpr Panel panel;

fem::Skin skin(double spacing)
{
    fem::SkinModel m;
    m.width = panel.width, m.height = panel.height, m.spacing = spacing;
    m.sheet = {panel.E, panel.nu, panel.thickness};
    fem::RibModel rib;
    rib.name = "angle";
    rib.from = {0, panel.rib_y}, rib.to = {panel.width, panel.rib_y};
    rib.E = panel.E, rib.G = panel.G, rib.A = panel.A, rib.I_normal = panel.I, rib.J = panel.J, rib.offset_z = panel.centroid_z;
    m.ribs = {rib};
    return fem::make_skin(m);
}

fem::Vector under(const fem::Skin& s, const std::string& load)
{
    fem::Vector f = fem::Vector::Zero(s.body.dofs);
    if (load == "force on the rib") fem::add(f, fem::skin_port(s, {panel.force_x, panel.on_rib, 0, 0}, fem::SkinDirection::z), 1);
    else if (load == "force beside the rib") fem::add(f, fem::skin_port(s, {panel.force_x, panel.beside_y, 0, 0}, fem::SkinDirection::z), 1);
    else f = fem::skin_pressure(s, panel.pressure);
    return fem::solve(s.body, f);
}

std::vector<tests::CsvRow> finest()
{
    std::vector<tests::CsvRow> rows;
    for (const tests::CsvRow& r : tests::read_csv("../verification/stiffened_panel"))
        if (r.number("across") == 64) rows.push_back(r);
    REQUIRE(rows.size() == 15);
    return rows;
}

/// What 30 mm of spacing leaves, with its reason; each goes down with the spacing (the study).
double tolerance(const std::string& load, double y)
{
    if (load == "force beside the rib" && y == panel.beside_y) return 0.004; // point force between grid lines, docs/verification/plates.md
    return 0.0025; // the rib's own bending, second order
}

} // namespace

TEST_CASE("Stiffened panel against a general finite-element library: deflections and the stretch of the rib's line, three loads, five places")
{
    const fem::Skin s = skin(30);
    for (const tests::CsvRow& r : finest()) {
        const std::string load = r.text("load");
        const double x = r.number("x"), y = r.number("y");
        INFO(load, " at ", x, ", ", y);
        const fem::SkinPoint p = fem::skin_point(s, under(s, load), x, y);
        check_near_rel(p.w, r.number("w"), tolerance(load, y));
        // 1 %: second order in the spacing; zero in the middle by symmetry
        if (y == panel.rib_y && x != panel.force_x) check_near_rel(p.u, r.number("u"), 0.01);
    }
}

TEST_CASE("The recorded figures of the stiffened panel have settled: 32 and 64 elements across differ by less than 0.06 %")
{
    const auto rows = tests::read_csv("../verification/stiffened_panel");
    int compared = 0;
    for (const tests::CsvRow& fine : rows)
        for (const tests::CsvRow& r : rows)
            if (fine.number("across") == 64 && r.number("across") == 32 && fine.text("load") == r.text("load") && fine.text("x") == r.text("x") && fine.text("y") == r.text("y")) {
                check_near_rel(r.number("w"), fine.number("w"), 6e-4);
                ++compared;
            }
    CHECK(compared == 15);
}

TEST_CASE("Study: stiffened panel, difference in per cent to the library's finest grid at 60, 40, 30, 20, 15, 10 mm spacing")
{
    constexpr double spacings[] = {60, 40, 30, 20, 15, 10};
    std::vector<fem::Skin> skins;
    for (const double h : spacings) skins.push_back(skin(h));
    for (const tests::CsvRow& r : finest()) {
        const double x = r.number("x"), y = r.number("y");
        std::printf("| %s, w at (%g, %g) | %.6g |", r.text("load").c_str(), x, y, r.number("w"));
        double last = 1;
        for (const fem::Skin& s : skins) {
            last = fem::skin_point(s, under(s, r.text("load")), x, y).w / r.number("w") - 1;
            std::printf(" %+.3f |", 100 * last);
        }
        std::printf("\n");
        CHECK(std::abs(last) < tolerance(r.text("load"), y) / 2); // a third of the spacing
    }
}

namespace {

/// Cantilever strip 400 mm long with the stiffener of plates_ribs.cpp (20 x 2 bar) along its middle, nu = 0: tip deflection over the composite beam's.
double strip(double width, double t, double spacing)
{
    constexpr double A = 40, I = 2 * 8000 / 12.0, z = 10.4;
    fem::SkinModel m;
    m.width = 400, m.height = width, m.spacing = spacing;
    m.sheet = {panel.E, 0, t};
    for (fem::EdgeHold& e : m.edges) e.kind = fem::Hold::free;
    m.edges[0].kind = fem::Hold::held;
    fem::RibModel rib;
    rib.from = {0, width / 2}, rib.to = {400, width / 2};
    rib.E = panel.E, rib.G = panel.G, rib.A = A, rib.I_normal = I, rib.J = 100, rib.offset_z = z;
    m.ribs = {rib};
    const fem::Skin s = fem::make_skin(m);
    const fem::Row port = fem::skin_port(s, {400, width / 2, 0, 0}, fem::SkinDirection::z);
    fem::Vector load = fem::Vector::Zero(s.body.dofs);
    fem::add(load, port, 1);
    const double Ap = width * t, zbar = A * z / (A + Ap), composite = width * t * t * t / 12 + I + Ap * zbar * zbar + A * (z - zbar) * (z - zbar);
    return fem::apply(port, fem::solve(s.body, load)) * 3 * panel.E * composite / std::pow(400.0, 3);
}

} // namespace

TEST_CASE("Study: stiffened panel's rib alone, strip against the composite beam in per cent at 200, 100, 50, 25, 12.5 mm spacing")
{
    for (const double width : {20.0, 100.0}) {
        std::printf("| strip %g mm wide |", width);
        double last = 0;
        for (const double h : {200.0, 100.0, 50.0, 25.0, 12.5}) {
            last = strip(width, width > 50 ? 0.8 : 4, h) - 1;
            std::printf(" %+.3f |", 100 * last);
        }
        std::printf("\n");
        CHECK(std::abs(last) < 0.01); // the beam formula takes the sheet's stress as even across; plates_ribs.cpp
    }
}

TEST_SUITE_END();
