#include "bench/plate_problem.h"
#include "fem/factor.h"
#include "fem/skin.h"

namespace thinskin::bench {
namespace {

constexpr double nu = 0.3;

fem::Skin unit_plate(int n)
{
    fem::SkinModel m;
    m.width = m.height = 1;
    m.spacing = 1.0 / n * (1 + 1e-12);
    m.sheet = {12 * (1 - nu * nu) * 1e9, nu, 1e-3}; // D = 1
    return fem::make_skin(m);
}

fem::Vector loads(const fem::Skin& skin, const PlateProblem& problem)
{
    fem::Vector f = fem::Vector::Zero(skin.body.dofs);
    for (const Pad& p : problem.pads) fem::add(f, fem::skin_port(skin, {p.x, p.y, p.side / 2, p.side / 2}, fem::SkinDirection::z), p.force);
    return f;
}

} // namespace

PlateRun own_plate(const PlateProblem& problem, int n)
{
    const fem::Skin skin = unit_plate(n);
    const fem::Vector f = loads(skin, problem);
    return {f.dot(fem::solve(skin.body, f)), skin.body.factor->size()};
}

} // namespace thinskin::bench
