#pragma once
#include "fem/skin.h"

/// Rectangular plates in the units of the handbook tables: a = 1000 mm the shorter side (along x), b along y, nu = 0.3.
namespace thinskin::tests {

struct Plate {
    fem::Skin skin;
    double a = 1000, b = 0, D = 0;

    Plate(double ratio, fem::Hold hold, int n) : Plate(ratio, hold, n, 1000.0 / n) {}
    [[nodiscard]] fem::Row port(double x, double y, double side = 0) const
    {
        return fem::skin_port(skin, {x, y, side / 2, side / 2}, fem::SkinDirection::z);
    }
    /// Displacements under forces P at places (x, y), each spread on a square.
    struct Pad { double x, y, P, side; };
    [[nodiscard]] fem::Vector under(const std::vector<Pad>& pads) const
    {
        fem::Vector load = fem::Vector::Zero(skin.body.dofs);
        for (const Pad& p : pads) fem::add(load, port(p.x, p.y, p.side), p.P);
        return fem::solve(skin.body, load);
    }
    [[nodiscard]] fem::SkinPoint at(const fem::Vector& u, double x, double y) const { return fem::skin_point(skin, u, x, y); }

private:
    Plate(double ratio, fem::Hold hold, int, double spacing)
    {
        fem::SkinModel m;
        m.width = a;
        b = m.height = ratio * a;
        m.spacing = spacing;
        m.sheet = {210000, 0.3, 1};
        for (fem::EdgeHold& e : m.edges) e.kind = hold;
        D = m.sheet.E / (12 * (1 - 0.3 * 0.3));
        skin = fem::make_skin(m);
    }
};

} // namespace thinskin::tests
