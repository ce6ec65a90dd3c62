// What is no figure must not be lost among those that are: a demand that came of it would pass.
#include "base/largest.h"
#include "consistency/fem_models.h"

#include <doctest/doctest.h>

#include <limits>

using namespace thinskin;

TEST_SUITE_BEGIN("consistency: largest of many");

TEST_CASE("Whatever place it has among the figures, one that is none stays")
{
    const double none = std::nan(""), endless = std::numeric_limits<double>::infinity();
    for (const std::vector<double>& all : {std::vector{none, 1.0, 2.0}, std::vector{1.0, none, 2.0}, std::vector{1.0, 2.0, none}, std::vector{none, endless}, std::vector{endless, none, 0.0}}) {
        double largest = 0;
        for (const double x : all) base::keep_largest(largest, x);
        CHECK(std::isnan(largest));
    }
    double largest = 0;
    for (const double x : {0.0, 3.0, -7.0, 3.0, 2.0}) base::keep_largest(largest, x);
    CHECK(largest == 3);
    CHECK(base::larger(1, 2) == 2);
    CHECK(base::larger(2, 1) == 2);
    CHECK(std::isnan(base::larger(none, 2)));
    CHECK(std::isnan(base::larger(2, none)));
}

TEST_CASE("The residual of a body and the stress of both faces keep it too")
{
    const fem::Skin skin = fem::make_skin(tests::panel(fem::Hold::held));
    fem::SkinPoint p;
    p.M_x = std::nan("");
    CHECK(std::isnan(fem::von_mises(skin.model.sheet, p)));
    p.M_x = std::numeric_limits<double>::infinity(), p.N_x = -p.M_x, p.N_y = 1; // inf - inf on the first face, infinity on the other
    CHECK(std::isnan(fem::von_mises(skin.model.sheet, p)));
    fem::SkinPointOf<fem::SkinStates::Figures> all;
    all.M_x(3) = p.M_x, all.N_x(3) = p.N_x, all.N_y(3) = p.N_y;
    const fem::SkinStates::Figures stress = fem::von_mises(skin.model.sheet, all);
    CHECK(std::isnan(stress(3)));
    CHECK(stress(2) == 0);

    fem::Assembly a;
    a.bodies = {&skin.body};
    fem::UnitLoad load{{fem::skin_pressure(skin, 1e-4)}};
    load.on_body[0](200) = std::nan(""); // in bending; what is stretched has figures, and comes after it
    fem::ColumnCache cache;
    const fem::Condensed condensed = fem::condense(a, 0, cache);
    fem::JointState still;
    still.status = fem::SolveStatus::solved;
    still.lambda.resize(0), still.alpha.resize(0);
    const fem::Recovered r = fem::recover(a, 0, {load}, fem::Vector::Ones(1), fem::free_motion(a, condensed, {load}), still);
    CHECK(std::isnan(r.residual));
}

TEST_SUITE_END();
