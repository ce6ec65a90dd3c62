#include "catalogue/patches.h"
#include "catalogue/sections.h"

#include <algorithm>

// Notation
//   A1, A2 ...     rectangles that make up the section, sharp corners
//   a, c, d        hat: mid-line lengths of crown, side wall and foot
//   e              hat: shear centre above the mid-line of the crown
// Accuracy: areas and moments exact for sharp corners; J and the shear centre for thin walls.
namespace thinskin::catalogue {
namespace {

double cube(double x) { return x * x * x; }

/// Torsion constant of a rectangle, wide side first; error at most 0.5 % for a square.
double rectangle_J(double wide, double thick)
{
    const double r = thick / wide;
    return wide * cube(thick) / 3 * (1 - 0.63 * r + 0.052 * r * r * r * r * r);
}

/// Shear centre of a thin hat or channel above the mid-line of its crown: moment of the shear flow about the crown.
double hat_shear_centre(double a, double c, double d)
{
    const double I_y = cube(a) / 12 + c * a * a / 2 + 2 * (cube(d) / 12 + d * (a + d) * (a + d) / 4); // per unit of t
    const double Q_foot = a * d / 2 + d * d / 2;                       // first moment of one foot
    const double F_side = Q_foot * c + a * c * c / 4;                  // force in one side wall, times I_y / (V t)
    const double F_foot = (a / 2 + d) * d * d / 2 - cube(d) / 6;
    return (a * F_side - 2 * c * F_foot) / I_y;
}

std::vector<std::array<double, 2>> box_corners(double b, double h) { return {{0, 0}, {b, 0}, {b, h}, {0, h}}; }

} // namespace

Section make_angle(const Legs& legs)
{
    const double b = legs.b, h = legs.h, t = legs.t;
    Section s;
    s.kind = Section::Kind::angle;
    s.b = s.width = b;
    s.h = h;
    s.t = t;
    set_areas(s, {rectangle(0, 0, b, t), rectangle(0, t, t, h - t)});
    s.J = (b + h - t) * cube(t) / 3;
    s.x_s = s.y_s = t / 2;
    s.corners = {{0, 0}, {b, 0}, {b, t}, {t, h}, {0, h}};
    return s;
}

Section make_flat(const Legs& extent)
{
    Section s;
    s.kind = Section::Kind::flat;
    s.b = s.width = extent.b;
    s.h = extent.h;
    s.t = std::min(s.b, s.h);
    set_areas(s, {rectangle(0, 0, s.b, s.h)});
    s.J = rectangle_J(std::max(s.b, s.h), s.t);
    s.x_s = s.x_c;
    s.y_s = s.y_c;
    s.corners = box_corners(s.b, s.h);
    return s;
}

Section make_box(const Legs& outside)
{
    const double b = outside.b, h = outside.h, t = outside.t;
    Section s;
    s.kind = Section::Kind::box;
    s.b = s.width = b;
    s.h = h;
    s.t = t;
    set_areas(s, {rectangle(0, 0, b, h), without(rectangle(t, t, b - 2 * t, h - 2 * t))});
    const double cell = (b - t) * (h - t), round = 2 * (b + h - 2 * t); // inside the mid-line, and along it
    s.J = 4 * cell * cell * t / round + round * cube(t) / 3;           // closed cell after Bredt, and the wall's own
    s.x_s = s.x_c;
    s.y_s = s.y_c;
    s.corners = box_corners(b, h);
    return s;
}

Section make_channel(const Legs& web)
{
    const double b = web.b, h = web.h, t = web.t, w = b - t, f = h - t / 2;
    Section s;
    s.kind = Section::Kind::channel;
    s.b = s.width = b;
    s.h = h;
    s.t = t;
    set_areas(s, {rectangle(0, 0, b, t), rectangle(0, t, t, h - t), rectangle(b - t, t, t, h - t)});
    s.J = (w + 2 * f) * cube(t) / 3;
    s.x_s = b / 2;
    s.y_s = t / 2 - 3 * f * f / (w + 6 * f);
    s.corners = box_corners(b, h);
    return s;
}

Section make_hat(const Legs& crown, double foot)
{
    const double b = crown.b, h = crown.h, t = crown.t;
    const double base = foot > 0 ? t : 0;         // thickness of the foot under the side wall
    Section s;
    s.kind = Section::Kind::hat;
    s.b = b;
    s.h = h;
    s.t = t;
    s.foot = foot;
    s.width = b + 2 * foot;
    std::vector<Patch> patches{rectangle(foot, h - t, b, t), rectangle(foot, base, t, h - t - base),
                               rectangle(foot + b - t, base, t, h - t - base)};
    if (foot > 0) {
        patches.push_back(rectangle(0, 0, foot + t, t));
        patches.push_back(rectangle(foot + b - t, 0, foot + t, t));
    }
    set_areas(s, patches);
    const double a = b - t, c = h - t / 2 - base / 2, d = foot > 0 ? foot + t / 2 : 0;
    s.J = (a + 2 * c + 2 * d) * cube(t) / 3;
    s.x_s = s.width / 2;
    s.y_s = h - t / 2 + hat_shear_centre(a, c, d);
    s.corners = {{0, 0}, {s.width, 0}, {s.width, base}, {foot + b, h}, {foot, h}, {0, base}};
    s.note = foot > 0 ? "open section: a skin under the feet closes it" : "feet not counted; open section: a skin closes it";
    return s;
}

Section rolled_angle(const Legs& legs, const Fillets& fillets)
{
    const double b = legs.b, h = legs.h, t = legs.t;
    Section s = make_angle(legs);
    set_areas(s, {rectangle(0, 0, b, t), rectangle(0, t, t, h - t), fillet(t, t, fillets.r1, +1),
                  without(fillet(b, t, fillets.r2, -1)), without(fillet(t, h, fillets.r2, -1))});
    return s;
}

} // namespace thinskin::catalogue
