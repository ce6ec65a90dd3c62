// Thin rectangular plates against the classical coefficients. The digits are computed from the formula outside this project (single
// series; boundary-fitted biharmonic functions), nine digits unless said otherwise; they agree with Timoshenko & Woinowsky-Krieger,
// Theory of Plates and Shells, tables 8, 23, 35, 37 (from memory) to their printed digits, and the hinged rows with Roark's Formulas for Stress
// and Strain, table 11.4, cases 1a and 1b (published, read) to 0.1-0.4 %.
#include "published/plates_models.h"
#include "support/near.h"

#include <algorithm>

using namespace thinskin;
using tests::check_near_rel;
using tests::Plate;

TEST_SUITE_BEGIN("published: plates");

// 24 elements across: deflections of this element converge with the fourth power of the spacing, moments with the second.
constexpr double w_tolerance = 2e-4, point_tolerance = 1e-3, M_tolerance = 2e-3;

TEST_CASE("Hinged plate under uniform pressure: centre deflection and moments for four aspect ratios")
{
    struct Row { double ratio, w, M_short, M_long; };
    for (const Row r : {Row{1.0, 0.00406235266, 0.0478863796, 0.0478863796}, Row{1.2, 0.00565053001, 0.0626818193, 0.0500809451},
                        Row{1.5, 0.00772402162, 0.0811600927, 0.0498427075}, Row{2.0, 0.0101286631, 0.101683085, 0.0463502965}}) {
        CAPTURE(r.ratio);
        const Plate p(r.ratio, fem::Hold::hinged, 24);
        const double q = 1e-4, a2 = p.a * p.a;
        const auto c = p.at(fem::solve(p.skin.body, fem::skin_pressure(p.skin, q)), p.a / 2, p.b / 2);
        check_near_rel(c.w * p.D / (q * a2 * a2), r.w, w_tolerance);
        check_near_rel(c.M_x / (q * a2), r.M_short, M_tolerance); // + z load: tension at the + z face
        check_near_rel(c.M_y / (q * a2), r.M_long, M_tolerance);
    }
}

TEST_CASE("Hinged plate under a central point load: deflection for four aspect ratios")
{
    struct Row { double ratio, w; };
    for (const Row r : {Row{1.0, 0.01160083977}, Row{1.2, 0.01355598685}, Row{1.5, 0.01533282663}, Row{2.0, 0.01652394919}}) {
        CAPTURE(r.ratio);
        const Plate p(r.ratio, fem::Hold::hinged, 24);
        const auto u = p.under({{p.a / 2, p.b / 2, 1, 0}});
        check_near_rel(p.at(u, p.a / 2, p.b / 2).w * p.D / (p.a * p.a), r.w, point_tolerance);
    }
}

TEST_CASE("Clamped plate under uniform pressure: deflection, centre and edge moments for four aspect ratios")
{
    struct Row { double ratio, w, M_short, M_long, edge_long, edge_short; };
    for (const Row r : {Row{1.0, 0.001265319, 0.0229051, 0.0229051, -0.05133376, -0.05133376},
                        Row{1.2, 0.001724871, 0.0299716, 0.0228404, -0.06389788, -0.05540760},
                        Row{1.5, 0.002196522, 0.0367714, 0.0202680, -0.07565858, -0.05702416},
                        Row{2.0, 0.002532956, 0.0411550, 0.0158080, -0.08286606, -0.05698665}}) {
        CAPTURE(r.ratio);
        const Plate p(r.ratio, fem::Hold::held, 40);
        const double q = 1e-4, a2 = p.a * p.a;
        const auto u = fem::solve(p.skin.body, fem::skin_pressure(p.skin, q));
        const auto c = p.at(u, p.a / 2, p.b / 2);
        check_near_rel(c.w * p.D / (q * a2 * a2), r.w, w_tolerance);
        check_near_rel(c.M_x / (q * a2), r.M_short, M_tolerance);
        check_near_rel(c.M_y / (q * a2), r.M_long, M_tolerance);
        // 0.5 %: a boundary moment is a one-sided second derivative, 0.3 % at 40 elements across
        check_near_rel(p.at(u, 0, p.b / 2).M_x / (q * a2), r.edge_long, 0.005);
        check_near_rel(p.at(u, p.a / 2, 0).M_y / (q * a2), r.edge_short, 0.005);
    }
}

TEST_CASE("Clamped plate under a central point load: deflection and edge moments for four aspect ratios")
{
    struct Row { double ratio, w, edge_long, edge_short; };
    for (const Row r : {Row{1.0, 0.005612025, -0.12577054, -0.12577054}, Row{1.2, 0.006475554, -0.14918131, -0.09370854},
                        Row{1.5, 0.007042858, -0.16338873, -0.05280997}, Row{2.0, 0.007230556, -0.16751450, -0.01537954}}) {
        CAPTURE(r.ratio);
        const Plate p(r.ratio, fem::Hold::held, 40);
        const auto u = p.under({{p.a / 2, p.b / 2, 1, 0}});
        check_near_rel(p.at(u, p.a / 2, p.b / 2).w * p.D / (p.a * p.a), r.w, point_tolerance);
        check_near_rel(p.at(u, 0, p.b / 2).M_x, r.edge_long, 0.005);  // as above
        check_near_rel(p.at(u, p.a / 2, 0).M_y, r.edge_short, 0.01);  // far from the load and small: 1 %
    }
}

TEST_CASE("Point load off the centre at (0.25 a, 0.4 b): deflection under it and at the centre, hinged and clamped")
{
    struct Row { double ratio, hinged_load, hinged_centre, held_load, held_centre; };
    for (const Row r : {Row{1.0, 0.00753364765, 0.00670815, 0.00313792, 0.00221918}, Row{1.2, 0.00856442284, 0.00794384, 0.00344192, 0.00260140},
                        Row{1.5, 0.00953002688, 0.00896644, 0.00365977, 0.00277069}, Row{2.0, 0.0102450391, 0.00935228, 0.00375967, 0.00260170}}) {
        CAPTURE(r.ratio);
        for (const bool held : {false, true}) {
            CAPTURE(held);
            const Plate p(r.ratio, held ? fem::Hold::held : fem::Hold::hinged, 30); // the load is off the grid lines: 0.25 a = 7.5 elements
            const auto u = p.under({{0.25 * p.a, 0.4 * p.b, 1, 0}});
            const double unit = p.D / (p.a * p.a);
            // 0.2 %: the point load's own dimple is a little stiffer inside an element than at a node
            check_near_rel(p.at(u, 0.25 * p.a, 0.4 * p.b).w * unit, held ? r.held_load : r.hinged_load, 0.002);
            check_near_rel(p.at(u, p.a / 2, p.b / 2).w * unit, held ? r.held_centre : r.hinged_centre, point_tolerance);
        }
    }
}

TEST_CASE("Load on a central square patch: deflection and centre moment, hinged and clamped square plate")
{
    // Roark case 1c gives 6 M / W = 1.28 for a 0.2 a patch on the hinged plate (published, read); computed 1.2745.
    struct Row { double c, hinged_w, hinged_M, held_w, held_M; };
    for (const Row r : {Row{0.05, 0.01153178, 0.355821, 0.00555158, 0.302174}, Row{0.10, 0.01137060, 0.284115, 0.00541621, 0.230700},
                        Row{0.20, 0.01086406, 0.212411, 0.00501286, 0.159926}}) {
        CAPTURE(r.c);
        for (const bool held : {false, true}) {
            CAPTURE(held);
            const Plate p(1, held ? fem::Hold::held : fem::Hold::hinged, 80); // four elements across the smallest patch
            const auto c = p.at(p.under({{p.a / 2, p.b / 2, 1, r.c * p.a}}), p.a / 2, p.b / 2);
            check_near_rel(c.w * p.D / (p.a * p.a), held ? r.held_w : r.hinged_w, w_tolerance);
            // 1 %: the moment under a patch converges with the second power; 0.8 % at four elements across it, 0.2 % at eight
            check_near_rel(c.M_x, held ? r.held_M : r.hinged_M, 0.01);
        }
    }
}

TEST_CASE("Couple of a foot (+F above, -F below the centre): deflection at the pad, largest deflection, clamped edge moment")
{
    struct Row { double ratio, d, hinged_pads, hinged_max, held_point, held_max, held_edge; };
    for (const Row r : {Row{1.0, 0.1, 0.0007316, 0.0012380, 0.0006692, 0.0009497, -0.0449}, Row{1.0, 0.2, 0.0019520, 0.0023694, 0.0016117, 0.0017723, -0.0892},
                        Row{1.0, 0.3, 0.0030626, 0.0032912, 0.0023126, 0.0023544, -0.1323}, Row{9.0 / 7, 0.1, 0.0008071, 0.0015169, 0.0007417, 0.0011577, -0.0313},
                        Row{9.0 / 7, 0.2, 0.0022531, 0.0029521, 0.0018961, 0.0022167, -0.0627}, Row{9.0 / 7, 0.3, 0.0037352, 0.0042267, 0.0029313, 0.0030875, -0.0940}}) {
        CAPTURE(r.ratio);
        CAPTURE(r.d);
        const auto largest = [&](const Plate& p, const fem::Vector& u) {
            double w = 0;
            for (int k = 0; k <= 500; ++k) w = std::max(w, p.at(u, p.a / 2, p.b * k / 500).w);
            return w;
        };
        const auto couple = [&](const Plate& p, double side) {
            return p.under({{p.a / 2, p.b / 2 + r.d * p.a / 2, 1, side}, {p.a / 2, p.b / 2 - r.d * p.a / 2, -1, side}});
        };
        const Plate hinged(r.ratio, fem::Hold::hinged, 40), held(r.ratio, fem::Hold::held, 40);
        const double unit = hinged.D / (hinged.a * hinged.a);
        const auto u = couple(hinged, 0.05 * hinged.a), v = couple(held, 0);
        const double top = hinged.b / 2 + r.d * hinged.a / 2;
        check_near_rel(fem::apply(hinged.port(hinged.a / 2, top), u) * unit, r.hinged_pads, 0.003);  // four printed digits, grid 0.1 %
        check_near_rel(largest(hinged, couple(hinged, 0)) * unit, r.hinged_max, 0.003);
        check_near_rel(fem::apply(held.port(held.a / 2, top), v) * unit, r.held_point, 0.01); // two point loads d apart: 1 % at d = 4 elements
        check_near_rel(largest(held, v) * unit, r.held_max, 0.003);
        check_near_rel(held.at(v, held.a / 2, held.b).M_y, r.held_edge, 0.01); // the reference has three digits only
    }
}

TEST_SUITE_END();
