// Ends of a rib against a beam on two supports (handbook closed forms, recomputed here from M'' = -q, E I w'' = -M):
//   central force P:  w = P L^3 / (48 E I) on hinges, P L^3 / (192 E I) fixed: four times less; end moment P L / 8
//   even load q:      w = 5 q L^4 / (384 E I) on hinges, q L^4 / (384 E I) fixed: five times less; end moment q L^2 / 12
//   springs k at both ends under P: M_e = (P L / 8) / (1 + 2 E I / (k L)), w = P L^3 / (48 E I) - M_e L^2 / (8 E I)
// The sheet is so thin that the rib alone is the beam.
#include "fem/skin.h"
#include "support/near.h"

#include <cmath>

using namespace thinskin;
using tests::check_near_rel;

TEST_SUITE_BEGIN("published: plates");

namespace {

constexpr double length = 400, E = 210000, I = 4000, P = 10;

/// Rib along the middle of a strip 20 mm wide, hinged on the left, `right` on the right, nothing along the long edges.
fem::Skin strip(fem::Hold right, const fem::RibEnd& end, bool turned = false)
{
    fem::SkinModel m;
    m.width = length, m.height = 20, m.spacing = 25;
    m.sheet = {E, 0, 0.02};
    m.edges = {fem::EdgeHold{fem::Hold::hinged, 0}, fem::EdgeHold{right, 0}, fem::EdgeHold{fem::Hold::free, 0}, fem::EdgeHold{fem::Hold::free, 0}};
    fem::RibModel rib;
    rib.from = {turned ? length : 0, 10}, rib.to = {turned ? 0 : length, 10};
    rib.E = E, rib.G = E / 2.6, rib.A = 100, rib.I_normal = I, rib.J = 100;
    rib.ends = {end, end};
    m.ribs = {rib};
    return fem::make_skin(m);
}

fem::Vector central(const fem::Skin& s)
{
    fem::Vector f = fem::Vector::Zero(s.body.dofs);
    fem::add(f, fem::skin_port(s, {length / 2, 10, 0, 0}, fem::SkinDirection::z), P);
    return f;
}

double middle(const fem::Skin& s, const fem::Vector& load) { return fem::skin_point(s, fem::solve(s.body, load), length / 2, 10).w; }

constexpr fem::RibEnd hinged{true, false, 0}, fixed{true, true, 0};
const double on_hinges = P * std::pow(length, 3) / (48 * E * I);

} // namespace

TEST_CASE("Rib on two hinges and between fixed ends under a central force: P L^3 / (48 E I), and a quarter of it")
{
    // 0.1 %: what the 0.02 mm sheet carries. A free edge on the right: there the rib's own end holds
    for (const fem::Hold right : {fem::Hold::hinged, fem::Hold::free}) {
        const fem::Skin free = strip(right, hinged), held = strip(right, fixed);
        check_near_rel(middle(free, central(free)), on_hinges, 1e-3);
        check_near_rel(middle(held, central(held)), on_hinges / 4, 1e-3);
    }
}

TEST_CASE("Rib under an even load: 5 q L^4 / (384 E I) on hinges, a fifth of it between fixed ends")
{
    for (const bool turning_held : {false, true}) {
        const fem::Skin s = strip(fem::Hold::hinged, turning_held ? fixed : hinged);
        const double q = 0.001 * 20, want = (turning_held ? 1 : 5) * q * std::pow(length, 4) / (384 * E * I);
        check_near_rel(middle(s, fem::skin_pressure(s, 0.001)), want, 0.003); // the thin sheet sags beside the rib by itself
    }
}

TEST_CASE("Rib with a rotational spring at each end lies on the closed form between hinged and fixed")
{
    for (const double ratio : {0.1, 1.0, 10.0}) { // k L / (2 E I)
        const double k = ratio * 2 * E * I / length, end_moment = P * length / 8 / (1 + 1 / ratio);
        const fem::Skin s = strip(fem::Hold::hinged, {true, false, k});
        check_near_rel(middle(s, central(s)), on_hinges - end_moment * length * length / (8 * E * I), 1e-3);
    }
}

TEST_CASE("Fixed rib under a central force hands P / 2 and P L / 8 to each end, whichever way round it is written")
{
    for (const bool turned : {false, true}) {
        const fem::Skin s = strip(fem::Hold::hinged, fixed, turned);
        const fem::Vector f = central(s), u = fem::solve(s.body, f), out = s.body.K * u - f;
        for (const std::size_t end : {0u, 1u}) {
            const fem::RibEndPlace p = fem::rib_end_place(s, 0, end);
            check_near_rel(-out(p.w), P / 2, 1e-3);
            check_near_rel(std::abs(out(p.slope)), P * length / 8, 1e-3);
        }
    }
}

TEST_SUITE_END();
