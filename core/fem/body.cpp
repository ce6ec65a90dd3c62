#include "fem/body.h"

#include "fem/factor.h"

#include <stdexcept>

namespace thinskin::fem {

const Factor& factor_of(const Body& body)
{
    if (!body.factor) throw std::invalid_argument(body.name + " was made without a factor");
    return *body.factor;
}

Vector solve(const Body& body, const Vector& load)
{
    Vector u = Vector::Zero(body.dofs);
    if (body.rigid || load.size() == 0) return u;
    if (load.size() != body.dofs) throw std::invalid_argument("solve: load of " + body.name + " has the wrong length");
    const Factor& f = factor_of(body);
    Vector x(f.size());
    for (int k = 0; k < f.size(); ++k) x(k) = load(f.dof[static_cast<std::size_t>(k)]);
    f.forward(x);
    f.backward(x);
    for (int k = 0; k < f.size(); ++k) u(f.dof[static_cast<std::size_t>(k)]) = x(k);
    return u;
}

Matrix solve_columns(const Body& body, const Matrix& loads)
{
    Matrix u = Matrix::Zero(body.dofs, loads.cols());
    if (body.rigid || loads.cols() == 0) return u;
    if (loads.rows() != body.dofs) throw std::invalid_argument("solve_columns: loads of " + body.name + " have the wrong length");
    const Factor& f = factor_of(body);
    by_eights(loads.cols(), [&]<int Width>(Several<Width> columns, Eigen::Index first, Eigen::Index count) {
        auto x = columns.from(loads, first, count, f.dof);
        f.forward(x);
        f.backward(x);
        columns.to(u, first, count, x, f.dof);
    });
    return u;
}

void add(Vector& load, const Row& row, double value)
{
    for (const auto& [dof, coefficient] : row) load(dof) += coefficient * value;
}

double apply(const Row& row, const Vector& u)
{
    double sum = 0;
    for (const auto& [dof, coefficient] : row) sum += coefficient * u(dof);
    return sum;
}

} // namespace thinskin::fem
