// Edges that are neither hinged nor clamped: sprung ones, and the free edge of an opening, on whole panels. Square and 1.5 : 1 plates, two
// opposite edges hinged. The digits are the exact single series (Levy), summed and the characteristic equations solved outside this
// project, nine digits; its limits meet the tables of Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells (hinged 0.00406, two
// edges clamped 0.00192, one edge free 0.01286 and 0.112, from memory) to within the tables' own terms (0.1 %), and the frequencies with a
// free edge Leissa's table for that plate (11.6845, 27.756, 41.197, 59.066, from memory). An opening inside: a general finite-element
// library's recorded figures, tests/verification/plate_opening.csv. Table against the grid: docs/verification/edges.md, printed by
//   test_published --test-case="Study: edges*" --success=false
#include "fem/modes.h"
#include "support/csv.h"
#include "support/near.h"
#include "verification/plate_opening.h"

#include <cmath>
#include <cstdio>

using namespace thinskin;
using tests::check_near_rel;
using verification::Windowed;

TEST_SUITE_BEGIN("published: plates");

namespace {

constexpr double a = 1000, pi = 3.14159265358979323846, density = 7.85e-9;

struct Edged {
    fem::Skin skin;
    double D = 0;

    /// Hinged left and right; bottom and top sprung with k a / D = stiffness (0: hinged).
    static Edged sprung(double ratio, double stiffness, double spacing)
    {
        Edged p;
        fem::SkinModel m = sheet(ratio * a, spacing);
        p.D = rigidity(m);
        for (const std::size_t edge : {2UL, 3UL})
            if (stiffness > 0) m.edges[edge] = {fem::Hold::sprung, stiffness * p.D / a};
        p.skin = fem::make_skin(m);
        return p;
    }
    /// Hinged all round and cut by an opening from side to side at y = ratio a: what is left below it has a free upper edge.
    static Edged cut(double ratio, double spacing)
    {
        fem::SkinModel m = sheet(ratio * a + 400, spacing);
        m.openings = {{"cut", -1, ratio * a, a + 1, ratio * a + 200}};
        Edged p;
        p.D = rigidity(m);
        p.skin = fem::make_skin(m);
        return p;
    }
    [[nodiscard]] fem::SkinPoint pressed(double x, double y) const
    {
        return fem::skin_point(skin, fem::solve(skin.body, fem::skin_pressure(skin, q)), x, y);
    }
    [[nodiscard]] double w(double x, double y) const { return pressed(x, y).w * D / (q * std::pow(a, 4)); }
    [[nodiscard]] double M_x(double x, double y) const { return pressed(x, y).M_x / (q * a * a); }
    [[nodiscard]] double M_y(double x, double y) const { return pressed(x, y).M_y / (q * a * a); }
    [[nodiscard]] std::vector<double> lambda_squared(int count) const
    {
        const fem::Modes m = fem::modes({{&skin.body}, {}}, {}, {fem::skin_mass(skin, density)}, count);
        REQUIRE(m.status == fem::ModesStatus::solved);
        std::vector<double> out;
        for (const fem::Mode& mode : m.modes) out.push_back(2 * pi * mode.frequency_Hz * a * a * std::sqrt(density / D));
        return out;
    }

private:
    static constexpr double q = 1e-4;
    static fem::SkinModel sheet(double height, double spacing)
    {
        fem::SkinModel m;
        m.width = a, m.height = height, m.spacing = spacing;
        m.sheet = {210000, 0.3, 1};
        for (fem::EdgeHold& e : m.edges) e.kind = fem::Hold::hinged;
        return m;
    }
    static double rigidity(const fem::SkinModel& m) { return m.sheet.E / (12 * (1 - m.sheet.nu * m.sheet.nu)); }
};

/// w of the windowed panel at the place and under the load of a recorded row.
double windowed(const tests::CsvRow& r, double spacing)
{
    constexpr Windowed panel;
    fem::SkinModel m;
    m.width = m.height = panel.side, m.spacing = spacing;
    m.sheet = {panel.E, panel.nu, panel.thickness};
    m.openings = {{"window", panel.low, panel.low, panel.high, panel.high}};
    const fem::Skin skin = fem::make_skin(m);
    fem::Vector load = fem::Vector::Zero(skin.body.dofs);
    if (r.text("load") == "pressure") load = fem::skin_pressure(skin, panel.pressure);
    else fem::add(load, fem::skin_port(skin, {panel.force_x, panel.force_y, 0, 0}, fem::SkinDirection::z), 1);
    return fem::skin_point(skin, fem::solve(skin.body, load), r.number("x"), r.number("y")).w;
}

std::vector<tests::CsvRow> finest()
{
    std::vector<tests::CsvRow> rows;
    for (const tests::CsvRow& r : tests::read_csv("../verification/plate_opening"))
        if (r.number("across") == 160) rows.push_back(r);
    REQUIRE(rows.size() == 10);
    return rows;
}

} // namespace

TEST_CASE("Two edges sprung against rotation, pressure: deflection, moments at the centre and at the edge, four stiffnesses from nearly hinged to nearly clamped")
{
    struct Row { double stiffness, w, M_x, M_y, edge; };
    for (const Row& r : {Row{1, 0.003726172381, 0.04418903138, 0.04559924427, -0.01134698052}, Row{5, 0.003028966405, 0.03652875982, 0.04085211568, -0.03465725141},
                         Row{20, 0.002371641175, 0.02932829193, 0.03636575038, -0.05602774890}, Row{100, 0.002026527056, 0.02557086516, 0.03399883931, -0.06664730188}}) {
        CAPTURE(r.stiffness);
        const Edged p = Edged::sprung(1, r.stiffness, a / 24);
        check_near_rel(p.w(500, 500), r.w, 2e-4);      // fourth order in the spacing
        check_near_rel(p.M_x(500, 500), r.M_x, 2e-3);  // second order
        check_near_rel(p.M_y(500, 500), r.M_y, 2.5e-3);
        check_near_rel(p.M_y(500, 0), r.edge, 0.015);  // one-sided second derivative at the edge, small for soft springs
    }
    check_near_rel(Edged::sprung(1.5, 5, a / 24).w(500, 750), 0.006623906731, 2e-4);
    check_near_rel(Edged::sprung(1.5, 100, a / 24).w(500, 750), 0.005459941843, 2e-4);
}

TEST_CASE("Two edges sprung against rotation: four lowest frequencies, from nearly hinged to nearly clamped")
{
    struct Row { double stiffness; std::array<double, 4> lambda; };
    for (const Row& r : {Row{1, {20.63937493, 49.72072327, 50.82952347, 79.89787931}}, Row{5, {22.96496243, 50.81095482, 55.06586635, 82.76117628}},
                         Row{20, {26.02382200, 52.58083095, 61.67543340, 87.78439263}}, Row{100, {28.16504823, 54.10893001, 67.13305934, 92.51529745}}}) {
        CAPTURE(r.stiffness);
        const std::vector<double> got = Edged::sprung(1, r.stiffness, 50).lambda_squared(4);
        for (std::size_t k = 0; k < 4; ++k) check_near_rel(got[k], r.lambda[k], 2e-4);
    }
}

TEST_CASE("The edge of an opening is free: deflection and moment in its middle under pressure, deflection inside, three lengths")
{
    struct Row { double ratio, w, M_x; };
    for (const Row& r : {Row{0.5, 0.007094143128, 0.06015854764}, Row{1, 0.01285241483, 0.1117005476}, Row{2, 0.01506920964, 0.1316078269}}) {
        CAPTURE(r.ratio);
        const Edged p = Edged::cut(r.ratio, a / 24);
        check_near_rel(p.w(500, r.ratio * a), r.w, 5e-4);
        check_near_rel(p.M_x(500, r.ratio * a), r.M_x, 5e-3);
    }
    const Edged square = Edged::cut(1, a / 24);
    check_near_rel(square.w(500, 500), 0.007930904973, 5e-4);
    check_near_rel(square.M_y(500, 500), 0.03898089291, 5e-3);
}

TEST_CASE("Panel with a window in its middle against a general finite-element library: deflections under pressure and under a force, five places")
{
    for (const tests::CsvRow& r : finest()) {
        INFO(r.text("load"), " at ", r.number("x"), ", ", r.number("y"));
        check_near_rel(windowed(r, 30), r.number("w"), 0.01); // the corners leave first order
    }
}

TEST_CASE("The recorded figures of the windowed panel have settled: 80 and 160 elements across differ by less than 0.06 %")
{
    const auto rows = tests::read_csv("../verification/plate_opening");
    int compared = 0;
    for (const tests::CsvRow& fine : rows)
        for (const tests::CsvRow& r : rows)
            if (fine.number("across") == 160 && r.number("across") == 80 && fine.text("load") == r.text("load") && fine.text("x") == r.text("x") && fine.text("y") == r.text("y")) {
                check_near_rel(r.number("w"), fine.number("w"), 6e-4);
                ++compared;
            }
    CHECK(compared == 10);
}

TEST_CASE("Study: edges, error in per cent at 4, 8, 12, 16, 24, 32 elements across")
{
    struct Quantity { const char* name; double want; double (*value)(double spacing); };
    for (const Quantity& q : {Quantity{"sprung, k a/D = 5, w centre", 0.003028966405, [](double h) { return Edged::sprung(1, 5, h).w(500, 500); }},
                              Quantity{"sprung, k a/D = 5, M centre", 0.04085211568, [](double h) { return Edged::sprung(1, 5, h).M_y(500, 500); }},
                              Quantity{"sprung, k a/D = 5, M at the edge", -0.03465725141, [](double h) { return Edged::sprung(1, 5, h).M_y(500, 0); }},
                              Quantity{"sprung, k a/D = 100, w centre", 0.002026527056, [](double h) { return Edged::sprung(1, 100, h).w(500, 500); }},
                              Quantity{"sprung, k a/D = 100, M at the edge", -0.06664730188, [](double h) { return Edged::sprung(1, 100, h).M_y(500, 0); }},
                              Quantity{"opening's edge, w in its middle", 0.01285241483, [](double h) { return Edged::cut(1, h).w(500, 1000); }},
                              Quantity{"opening's edge, M in its middle", 0.1117005476, [](double h) { return Edged::cut(1, h).M_x(500, 1000); }},
                              Quantity{"beside an opening, w inside", 0.007930904973, [](double h) { return Edged::cut(1, h).w(500, 500); }}}) {
        std::printf("| %s |", q.name);
        double first = 0, last = 0;
        for (const double n : {4.0, 8.0, 12.0, 16.0, 24.0, 32.0}) {
            last = q.value(a / n) / q.want - 1;
            if (n == 4) first = last;
            std::printf(" %+.3f |", 100 * last);
        }
        std::printf("\n");
        CHECK(std::abs(last) < 0.01);
        CHECK(std::abs(last) < std::abs(first));
    }
}

TEST_CASE("Study: edges, window against the library's finest grid in per cent at 100, 50, 30, 20, 12.5 mm spacing")
{
    for (const tests::CsvRow& r : finest()) {
        std::printf("| window, %s, w at (%g, %g) |", r.text("load").c_str(), r.number("x"), r.number("y"));
        double last = 0;
        for (const double h : {100.0, 50.0, 30.0, 20.0, 12.5}) {
            last = windowed(r, h) / r.number("w") - 1;
            std::printf(" %+.3f |", 100 * last);
        }
        std::printf("\n");
        CHECK(std::abs(last) < 0.003);
    }
}

TEST_SUITE_END();
