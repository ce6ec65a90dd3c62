// The grid that the program uses (`analysis.grid: normal`) on panels of the size of a door: within 1 % of the published set.
// Coefficients as in plates.cpp: computed from the formula outside this project, agreeing with Timoshenko & Woinowsky-Krieger, Theory of
// Plates and Shells, tables 8, 23, 35, 37 (from memory) to their printed digits.
#include "fem/skin.h"
#include "idealise/structure.h"
#include "support/near.h"

using namespace thinskin;

TEST_SUITE_BEGIN("published: the normal grid");

TEST_CASE("Square and 2 : 1 panels, hinged and clamped, pressure and a central force: deflection within 1 % on the normal grid")
{
    struct Row { double width, height; fem::Hold hold; bool force; double w; };
    for (const Row& r : {Row{740, 740, fem::Hold::hinged, false, 0.00406235266}, Row{740, 1480, fem::Hold::hinged, false, 0.0101286631},
                         Row{740, 740, fem::Hold::held, false, 0.001265319}, Row{740, 1480, fem::Hold::held, false, 0.002532956},
                         Row{740, 740, fem::Hold::hinged, true, 0.01160083977}, Row{740, 1480, fem::Hold::hinged, true, 0.01652394919},
                         Row{740, 740, fem::Hold::held, true, 0.005612025}, Row{740, 1480, fem::Hold::held, true, 0.007230556}}) {
        CAPTURE(r.height);
        CAPTURE(r.force);
        fem::SkinModel m;
        m.width = r.width;
        m.height = r.height;
        m.spacing = idealise::grid_spacing(model::GridSize::normal);
        m.sheet = {210000, 0.3, 0.8};
        for (fem::EdgeHold& e : m.edges) e.kind = r.hold;
        const fem::Skin skin = fem::make_skin(m);
        fem::Vector load = fem::Vector::Zero(skin.body.dofs);
        const double a = r.width, D = 210000 * 0.8 * 0.8 * 0.8 / (12 * 0.91), q = 1e-4;
        if (r.force) fem::add(load, fem::skin_port(skin, {r.width / 2, r.height / 2, 0, 0}, fem::SkinDirection::z), 1);
        else load = fem::skin_pressure(skin, q);
        const double w = fem::skin_point(skin, fem::solve(skin.body, load), r.width / 2, r.height / 2).w;
        tests::check_near_rel(w * D / (r.force ? a * a : q * a * a * a * a), r.w, 0.01);
    }
}

TEST_SUITE_END();
