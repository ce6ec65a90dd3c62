// Buckling of plates: N_cr = k pi^2 D / b^2.
#include "published/plates_models.h"
#include "support/near.h"

#include <algorithm>
#include <numbers>

using namespace thinskin;
using tests::check_near_rel;

TEST_SUITE_BEGIN("published: plates");

namespace {

double k_of(double ratio, fem::Hold hold, double N_x, double N_y, double N_xy)
{
    fem::SkinModel m;
    m.width = 600;
    m.height = 600 * ratio;
    m.sheet = {210000, 0.3, 0.8};
    for (fem::EdgeHold& e : m.edges) e.kind = hold;
    const double D = m.sheet.E * 0.8 * 0.8 * 0.8 / (12 * (1 - 0.09)), pi = std::numbers::pi;
    return fem::buckling_factor_uniform(*fem::make_buckling(m, 50), N_x, N_y, N_xy) * 600 * 600 / (pi * pi * D);
}

} // namespace

TEST_CASE("Hinged plate pressed along y: k = (m b/a + a/(m b))^2, smallest over m (computed from the formula)")
{
    for (const double ratio : {0.7, 1.0, 1.5, 2.0, 2.5}) {
        CAPTURE(ratio);
        double k = 1e9;
        for (int m = 1; m < 6; ++m) k = std::min(k, std::pow(m / ratio + ratio / m, 2));
        check_near_rel(k_of(ratio, fem::Hold::hinged, 0, -1, 0), k, 0.001); // about 12 elements across, fourth order
    }
}

TEST_CASE("Square plates: clamped k = 10.07 pressed one way, hinged k = 2 both ways, 9.34 hinged and 14.71 clamped in shear")
{
    // Timoshenko & Gere, Theory of Elastic Stability, chapter 9 (from memory); printed to three or four digits, hence 0.5 %.
    check_near_rel(k_of(1, fem::Hold::held, 0, -1, 0), 10.07, 0.005);
    check_near_rel(k_of(1, fem::Hold::hinged, -1, -1, 0), 2.0, 0.001); // computed from the formula
    check_near_rel(k_of(1, fem::Hold::hinged, 0, 0, 1), 9.34, 0.005);
    check_near_rel(k_of(1, fem::Hold::held, 0, 0, 1), 14.71, 0.005);
}

TEST_CASE("Strip between two hinged edges is a column: N = pi^2 D / L^2 (computed from the formula, nu = 0)")
{
    fem::SkinModel m;
    m.width = 100;
    m.height = 800;
    m.sheet = {210000, 0, 1};
    m.edges[0].kind = m.edges[1].kind = fem::Hold::free;
    m.edges[2].kind = m.edges[3].kind = fem::Hold::hinged;
    const double want = std::pow(std::numbers::pi / 800, 2) * 210000 / 12;
    check_near_rel(fem::buckling_factor_uniform(*fem::make_buckling(m, 50), 0, -1, 0), want, 0.001);
    m.in_plane_fixed = false; // the force runs from the top edge to the bottom edge as a line load
    const auto model = fem::make_buckling(m, 50);
    check_near_rel(fem::buckling_factor(*model, {{{50, 800, 50, 0}, 0, -100}}), want, 0.001); // 1 N/mm over 100 mm
}

TEST_SUITE_END();
