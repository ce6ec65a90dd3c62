#include "catalogue/patches.h"

#include <cmath>
#include <numbers>

namespace thinskin::catalogue {
namespace {

void set_centroid(Section& s, const std::vector<Patch>& patches)
{
    double A = 0, Ax = 0, Ay = 0;
    for (const Patch& p : patches) {
        A += p.A;
        Ax += p.A * p.x;
        Ay += p.A * p.y;
    }
    s.A = A;
    s.x_c = Ax / A;
    s.y_c = Ay / A;
}

void set_second_moments(Section& s, const std::vector<Patch>& patches)
{
    s.I_x = s.I_y = s.I_xy = 0;
    for (const Patch& p : patches) {
        const double x = p.x - s.x_c, y = p.y - s.y_c;
        s.I_x += p.I_x + p.A * y * y;
        s.I_y += p.I_y + p.A * x * x;
        s.I_xy += p.I_xy + p.A * x * y;
    }
}

void set_principal(Section& s)
{
    const double mean = (s.I_x + s.I_y) / 2, half = (s.I_x - s.I_y) / 2;
    const double radius = std::hypot(half, s.I_xy);
    s.I_u = mean + radius;
    s.I_v = mean - radius;
    s.theta = std::atan2(0.0 - s.I_xy, half) / 2; // 0.0 - : a zero product must not become -0 and turn the axis
}

} // namespace

Patch rectangle(double x, double y, double width, double height)
{
    const double A = width * height;
    return {A, x + width / 2, y + height / 2, A * height * height / 12, A * width * width / 12, 0};
}

Patch fillet(double x, double y, double r, double away)
{
    using std::numbers::pi;
    const double A = (1 - pi / 4) * r * r;
    const double g = (10 - 3 * pi) / (12 - 3 * pi) * r;             // centroid from the corner, both ways
    const double I_corner = (1 - 5 * pi / 16) * r * r * r * r;      // about a side of the square
    const double P_corner = (19.0 / 24 - pi / 4) * r * r * r * r;   // product about both sides
    return {A, x + away * g, y + away * g, I_corner - A * g * g, I_corner - A * g * g, P_corner - A * g * g};
}

Patch without(Patch p) { return {-p.A, p.x, p.y, -p.I_x, -p.I_y, -p.I_xy}; }

void set_areas(Section& s, const std::vector<Patch>& patches)
{
    set_centroid(s, patches);
    set_second_moments(s, patches);
    set_principal(s);
    s.S_x_toe = s.I_x / (s.h - s.y_c);
    s.S_x_heel = s.I_x / s.y_c;
    s.S_y_toe = s.I_y / (s.width - s.x_c);
    s.S_y_heel = s.I_y / s.x_c;
    s.r_min = std::sqrt(s.I_v / s.A);
}

} // namespace thinskin::catalogue
