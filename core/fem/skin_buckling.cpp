// Linear buckling of the skin under its own membrane forces (theory FE-16).
#include "fem/factor.h"
#include "fem/hermite.h"
#include "fem/sheet_slopes.h"
#include "fem/skin_elements.h"

#include <cmath>
#include <limits>
#include <stdexcept>

namespace thinskin::fem {
namespace {

/// Geometric matrices of one element size: [component x, y, xy][factor 1, xi, eta, xi eta] of the membrane force.
using GeometricSet = std::array<std::array<Matrix16, 4>, 3>;

GeometricSet geometric_set(double lx, double ly)
{
    GeometricSet set;
    for (auto& row : set)
        for (Matrix16& k : row) k.setZero();
    for (const GaussPoint& gx : gauss_4)
        for (const GaussPoint& gy : gauss_4) {
            const auto [dx, dy] = sheet_slopes(hermite(lx, gx.s), hermite(ly, gy.s));
            const double xi = 2 * gx.s - 1, eta = 2 * gy.s - 1, dA = gx.weight * gy.weight * lx * ly;
            const double field[4] = {1, xi, eta, xi * eta};
            for (std::size_t f = 0; f < 4; ++f) {
                set[0][f] += dA * field[f] * dx * dx.transpose();
                set[1][f] += dA * field[f] * dy * dy.transpose();
                set[2][f] += dA * field[f] * (dx * dy.transpose() + dy * dx.transpose());
            }
        }
    return set;
}

} // namespace

class BucklingModel {
public:
    Skin skin;
    std::map<std::array<int, 2>, GeometricSet> geometric;
};

namespace {

constexpr int most_steps = 150;          // of the Lanczos iteration
constexpr double accuracy = 3e-4;        // residual of the pair; the factor's own error goes with its square, far below 1e-5
constexpr double no_compression = 1e-9;  // largest over smallest eigenvalue below which nothing is pressed

/// One element's geometric matrix and the places of its unknowns in the factor (-1: supported).
struct Element { std::array<int, 16> place{}; Matrix16 K; };

/// Membrane forces of one element as 1, xi, eta, xi eta: through the four Gauss points, where the element is most exact.
Eigen::Matrix<double, 3, 4> force_field(const Skin& skin, const Vector& u, int i, int j)
{
    const double g = 1 / std::sqrt(3.0);
    const double x0 = skin.grid.x[static_cast<std::size_t>(i)], x1 = skin.grid.x[static_cast<std::size_t>(i) + 1];
    const double y0 = skin.grid.y[static_cast<std::size_t>(j)], y1 = skin.grid.y[static_cast<std::size_t>(j) + 1];
    Eigen::Matrix<double, 3, 4> field = Eigen::Matrix<double, 3, 4>::Zero();
    for (int k = 0; k < 4; ++k) {
        const double xi = k % 2 == 0 ? -g : g, eta = k / 2 == 0 ? -g : g;
        const SkinPoint p = skin_point(skin, u, x0 + (x1 - x0) * (1 + xi) / 2, y0 + (y1 - y0) * (1 + eta) / 2);
        field += Eigen::Vector3d(p.N_x, p.N_y, p.N_xy) * Eigen::RowVector4d(1, 3 * xi, 3 * eta, 9 * xi * eta) / 4;
    }
    return field;
}

template <class Field>
std::vector<Element> geometric_elements(const BucklingModel& m, const Field& field)
{
    const SkinLayout l{m.skin.grid};
    const SkinElements& e = *m.skin.elements;
    std::vector<Element> out;
    for (int j = 0; j + 1 < l.ny(); ++j)
        for (int i = 0; i + 1 < l.nx(); ++i) {
            if (e.missing[l.element(i, j)]) continue;
            const GeometricSet& set = m.geometric.at({e.x_class[static_cast<std::size_t>(i)], e.y_class[static_cast<std::size_t>(j)]});
            const Eigen::Matrix<double, 3, 4> N = field(i, j);
            Element element;
            element.K.setZero();
            for (std::size_t c = 0; c < 3; ++c)
                for (std::size_t f = 0; f < 4; ++f) element.K += N(static_cast<Eigen::Index>(c), static_cast<Eigen::Index>(f)) * set[c][f];
            for (int k = 0; k < 16; ++k)
                element.place[static_cast<std::size_t>(k)] =
                    m.skin.body.factor->position[static_cast<std::size_t>(l.dof(i + k / 4 % 2, j + k / 8, k % 4))];
            out.push_back(element);
        }
    return out;
}

/// y = G^-1 (-K_g) G^-T x with K = G G^T: symmetric, its largest eigenvalue is one over the factor.
Vector operate(const Factor& f, const std::vector<Element>& elements, Vector x)
{
    f.backward(x);
    Vector y = Vector::Zero(x.size());
    for (const Element& e : elements) {
        Eigen::Matrix<double, 16, 1> q;
        for (std::size_t k = 0; k < 16; ++k) q(static_cast<Eigen::Index>(k)) = e.place[k] < 0 ? 0 : x(e.place[k]);
        q = (-(e.K * q)).eval();
        for (std::size_t k = 0; k < 16; ++k)
            if (e.place[k] >= 0) y(e.place[k]) += q(static_cast<Eigen::Index>(k));
    }
    f.forward(y);
    return y;
}

/// A start with a part in every mode, the same on every run.
Vector start_vector(const Factor& f, const std::vector<Element>& elements)
{
    Vector x(f.size());
    std::uint32_t seed = 12345;
    for (double& v : x) {
        seed = seed * 1664525U + 1013904223U;
        v = static_cast<double>(seed >> 8) / 16777216.0 - 0.5;
    }
    return operate(f, elements, std::move(x)); // one step takes out what has no part in buckling
}

/// Lanczos with full reorthogonalisation; the largest eigenvalue mu of the operator, 0 when none is positive, NaN: not converged.
double largest_eigenvalue(const Factor& f, const std::vector<Element>& elements)
{
    Vector q = start_vector(f, elements);
    double beta = q.norm();
    if (!(beta > 0)) return beta == 0 ? 0 : std::nan("");
    Matrix basis(f.size(), most_steps + 1);
    basis.col(0) = q / beta;
    std::vector<double> diagonal, side;
    const int most = std::min(most_steps, f.size());
    for (int k = 0; k < most; ++k) {
        q = operate(f, elements, basis.col(k));
        const auto known = basis.leftCols(k + 1);
        diagonal.push_back(basis.col(k).dot(q));
        for (int pass = 0; pass < 2; ++pass) q -= known * (known.transpose() * q).eval();
        beta = q.norm();
        if (!std::isfinite(beta)) return beta - beta;
        const bool last = k + 1 == most || beta <= 1e-14 * std::abs(diagonal.front());
        if (k % 4 == 3 || last) {
            Eigen::SelfAdjointEigenSolver<Matrix> ritz;
            ritz.computeFromTridiagonal(Eigen::Map<const Vector>(diagonal.data(), k + 1), Eigen::Map<const Vector>(side.data(), k));
            const double mu = ritz.eigenvalues()(k), lowest = ritz.eigenvalues()(0);
            const double residual = beta * std::abs(ritz.eigenvectors()(k, k));
            if (mu > 0 && residual <= accuracy * mu) return mu;
            if (mu <= no_compression * std::abs(lowest) && (last || residual <= no_compression * std::abs(lowest))) return 0;
            if (last) return beta <= 1e-14 * std::abs(diagonal.front()) && mu > 0 ? mu : std::nan("");
        }
        basis.col(k + 1) = q / beta;
        side.push_back(beta);
    }
    return std::nan("");
}

double factor_from(const BucklingModel& model, const std::vector<Element>& elements)
{
    const double mu = largest_eigenvalue(*model.skin.body.factor, elements);
    return mu == 0 ? std::numeric_limits<double>::infinity() : 1 / mu;
}

} // namespace

std::shared_ptr<const BucklingModel> make_buckling(const SkinModel& model, double spacing)
{
    SkinModel coarse = model;
    coarse.spacing = spacing;
    auto m = std::make_shared<BucklingModel>();
    m->skin = make_skin(coarse);
    const SkinElements& e = *m->skin.elements;
    for (const auto& [key, matrix] : e.bending)
        m->geometric[key] = geometric_set(e.x_length[static_cast<std::size_t>(key[0])], e.y_length[static_cast<std::size_t>(key[1])]);
    return m;
}

double buckling_factor(const BucklingModel& model, const std::vector<InPlaneForce>& forces)
{
    Vector load = Vector::Zero(model.skin.body.dofs);
    for (const InPlaneForce& f : forces) {
        if (!std::isfinite(f.x) || !std::isfinite(f.y)) return std::nan("");
        add(load, skin_port(model.skin, f.where, SkinDirection::x), f.x);
        add(load, skin_port(model.skin, f.where, SkinDirection::y), f.y);
    }
    const Vector u = solve(model.skin.body, load);
    return factor_from(model, geometric_elements(model, [&](int i, int j) { return force_field(model.skin, u, i, j); }));
}

double buckling_factor_uniform(const BucklingModel& model, double N_x, double N_y, double N_xy)
{
    Eigen::Matrix<double, 3, 4> N = Eigen::Matrix<double, 3, 4>::Zero();
    N.col(0) << N_x, N_y, N_xy;
    return factor_from(model, geometric_elements(model, [&](int, int) { return N; }));
}

} // namespace thinskin::fem
