#include "drawing/contours.h"
#include "support/cases.h"
#include "support/near.h"

#include <algorithm>
#include <cmath>
#include <limits>

/// Contours of the deflected skin: identities of areas and lines, and the field behind them against the figures it belongs to.
namespace thinskin::tests {
namespace {

results::SkinField plane(double slope_x, double slope_y)
{
    results::SkinField f{"test", {0, 10, 25, 40}, {0, 5, 20}, {}};
    for (const double y : f.y_mm)
        for (const double x : f.x_mm) f.w_mm.push_back(slope_x * x + slope_y * y - 1);
    return f;
}

double area(const std::vector<drawing::Point>& p)
{
    double twice = 0;
    for (std::size_t i = 0; i < p.size(); ++i) {
        const drawing::Point &a = p[i], &b = p[(i + 1) % p.size()];
        twice += a.x * b.y - b.x * a.y;
    }
    return std::abs(twice) / 2;
}

} // namespace

TEST_SUITE("contours")
{
    TEST_CASE("the bands of a plane cover the whole field once, each where the plane has its values")
    {
        const drawing::Contours c = drawing::contours(plane(0.1, 0.03));
        REQUIRE(c.step_mm > 0);
        double sum = 0;
        for (const drawing::Patch& p : c.patches) {
            sum += area(p.points);
            for (const drawing::Point& q : p.points) {
                const double w = 0.1 * q.x + 0.03 * q.y - 1;
                CHECK(w >= p.band * c.step_mm - 1e-9);
                CHECK(w <= (p.band + 1) * c.step_mm + 1e-9);
            }
        }
        CHECK(std::abs(sum - 40 * 20) < 1e-9 * 800);
        for (const drawing::ContourLine& l : c.lines) CHECK(std::abs(0.1 * l.a.x + 0.03 * l.a.y - 1 - l.band * c.step_mm) < 1e-9);
        CHECK(c.outward.w_mm == doctest::Approx(3.6).epsilon(1e-12));
        CHECK(c.inward.w_mm == doctest::Approx(-1).epsilon(1e-12));
        CHECK(c.last - c.first + 1 <= 10);
    }

    TEST_CASE("no movement, no bands; an opening stays empty; sizes that do not fit give nothing")
    {
        results::SkinField flat = plane(0, 0);
        for (double& w : flat.w_mm) w = 0;
        CHECK(drawing::contours(flat).patches.empty());
        results::SkinField holed = plane(0.1, 0);
        holed.w_mm[5] = std::numeric_limits<double>::quiet_NaN();
        double sum = 0;
        for (const drawing::Patch& p : drawing::contours(holed).patches) sum += area(p.points);
        CHECK(std::abs(sum - 15 * 20) < 1e-9 * 300); // the four cells round that point are out
        holed.w_mm.pop_back();
        CHECK(drawing::contours(holed).patches.empty());
    }

    TEST_CASE("the demo's field has the deflections that the skin's table prints, nothing at its edges, one for each load case")
    {
        const results::Outcome o = check_case("condenser_door");
        REQUIRE(o.skin_fields.size() == o.load_cases.size());
        for (const results::SkinField& f : o.skin_fields) {
            const auto state = std::find_if(o.skin.begin(), o.skin.end(), [&f](const results::SkinState& s) { return s.load_case == f.load_case; });
            REQUIRE(state != o.skin.end());
            double largest = 0;
            for (std::size_t i = 0; i < f.w_mm.size(); ++i) {
                largest = std::max(largest, std::abs(f.w_mm[i]));
                const std::size_t ix = i % f.x_mm.size(), iy = i / f.x_mm.size();
                if (ix == 0 || iy == 0 || ix + 1 == f.x_mm.size() || iy + 1 == f.y_mm.size()) CHECK(std::abs(f.w_mm[i]) < 1e-9);
            }
            // The table leaves out what is under the washers, the field has it, and it is read at other points.
            CHECK(largest > 0.8 * state->max_deflection_mm);
            CHECK(largest < 1.3 * state->max_deflection_mm);
        }
    }
}

} // namespace thinskin::tests
