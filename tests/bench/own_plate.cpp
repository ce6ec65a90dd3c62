#include "bench/plate_problem.h"
#include "fem/factor.h"
#include "fem/skin.h"
#include "fem/skin_elements.h"

namespace thinskin::bench {
namespace {

constexpr double nu = 0.3;

fem::Skin unit_plate(int n, Own what)
{
    fem::SkinModel m;
    m.width = m.height = 1;
    m.spacing = 1.0 / n * (1 + 1e-12);
    m.sheet = {12 * (1 - nu * nu) * 1e9, nu, 1e-3}; // D = 1
    if (what == Own::whole) return fem::make_skin(m);
    fem::Skin skin = fem::skin_without_factor(m);
    const int in_grid = fem::SkinLayout{skin.grid}.grid_dofs();
    for (int d = 0; d < skin.body.dofs; ++d)
        if (d >= in_grid || d % 6 >= 4) skin.body.supported[static_cast<std::size_t>(d)] = 1;
    skin.body.factor = fem::skin_factor(skin, skin.body.supported);
    return skin;
}

fem::Vector loads(const fem::Skin& skin, const PlateProblem& problem)
{
    fem::Vector f = fem::Vector::Zero(skin.body.dofs);
    for (const Pad& p : problem.pads) fem::add(f, fem::skin_port(skin, {p.x, p.y, p.side / 2, p.side / 2}, fem::SkinDirection::z), p.force);
    return f;
}

} // namespace

PlateRun own_plate(const PlateProblem& problem, int n, Own what)
{
    const fem::Skin skin = unit_plate(n, what);
    const fem::Vector f = loads(skin, problem);
    return {f.dot(fem::solve(skin.body, f)), skin.body.factor->size()};
}

} // namespace thinskin::bench
