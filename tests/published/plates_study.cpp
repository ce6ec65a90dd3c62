// The table of docs/verification/plates.md: error against the number of elements across the shorter side. Printed by
//   test_published --test-case="Study: *" --success=false
// The reference values are those of plates.cpp, with their sources there.
#include "published/plates_models.h"
#include "support/near.h"

#include <cstdio>

using namespace thinskin;
using tests::Plate;

TEST_SUITE_BEGIN("published: plates");

namespace {

struct Quantity { const char* name; double want; double (*value)(const Plate& uniform_plate); };

double pressed_w(const Plate& p) { return p.at(fem::solve(p.skin.body, fem::skin_pressure(p.skin, 1e-6)), 500, 500).w * p.D / 1e6; }
double pressed_M(const Plate& p) { return p.at(fem::solve(p.skin.body, fem::skin_pressure(p.skin, 1e-6)), 500, 500).M_x; }
double pressed_edge(const Plate& p) { return p.at(fem::solve(p.skin.body, fem::skin_pressure(p.skin, 1e-6)), 0, 500).M_x; }
double point_w(const Plate& p) { return p.at(p.under({{500, 500, 1, 0}}), 500, 500).w * p.D / 1e6; }
double off_lines_w(const Plate& p) { return p.at(p.under({{250, 400, 1, 0}}), 250, 400).w * p.D / 1e6; }
double patch_w(const Plate& p) { return p.at(p.under({{500, 500, 1, 100}}), 500, 500).w * p.D / 1e6; }
double patch_M(const Plate& p) { return p.at(p.under({{500, 500, 1, 100}}), 500, 500).M_x; }

void study(fem::Hold hold, const std::vector<Quantity>& quantities)
{
    constexpr int sizes[] = {4, 8, 12, 16, 24, 32, 48};
    for (const Quantity& q : quantities) {
        std::printf("| %s |", q.name);
        double first = 0, last = 0;
        for (const int n : sizes) {
            const double error = q.value(Plate(1, hold, n)) / q.want - 1;
            std::printf(" %+.3f |", 100 * error);
            if (n == 4) first = std::abs(error);
            last = std::abs(error);
        }
        std::printf("\n");
        CHECK(last < 0.01);       // finest grid within 1 %
        CHECK(last < first);
    }
}

} // namespace

TEST_CASE("Study: error in per cent of the square plate at 4, 8, 12, 16, 24, 32, 48 elements across")
{
    study(fem::Hold::hinged, {{"hinged, pressure, w centre", 0.00406235266, pressed_w}, {"hinged, pressure, M centre", 0.0478863796, pressed_M},
                              {"hinged, central force, w under it", 0.01160083977, point_w}, {"hinged, force at (0.25, 0.4), w under it", 0.00753364765, off_lines_w},
                              {"hinged, patch 0.1 a, w", 0.01137060, patch_w}, {"hinged, patch 0.1 a, M", 0.284115, patch_M}});
    study(fem::Hold::held, {{"held, pressure, w centre", 0.001265319, pressed_w}, {"held, pressure, M centre", 0.0229051, pressed_M},
                            {"held, pressure, M edge", -0.05133376, pressed_edge}, {"held, central force, w under it", 0.005612025, point_w},
                            {"held, force at (0.25, 0.4), w under it", 0.00313792, off_lines_w}, {"held, patch 0.1 a, w", 0.00541621, patch_w},
                            {"held, patch 0.1 a, M", 0.230700, patch_M}});
}

TEST_SUITE_END();
