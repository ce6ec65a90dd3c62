// Linear buckling of the skin under its own membrane forces (theory FE-16).
#include "fem/buckling_lanczos.h"
#include "fem/hermite.h"
#include "fem/sheet_slopes.h"
#include "fem/skin_elements.h"

#include <algorithm>
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
    Skin skin;                               ///< its factor: what is pressed in the plane
    std::shared_ptr<const Factor> bending;   ///< what buckles: without ribs the plane's unknowns have no part in it and are left out
    std::map<std::array<int, 2>, GeometricSet> geometric;
    std::map<std::array<unsigned, 3>, Matrix> force_field; ///< by the keys of SkinElements::membrane: from an element's in-plane unknowns to its force field
};

namespace {

/// Membrane forces of one element as 1, xi, eta, xi eta: through the four Gauss points, where the element is most exact.
/// Rows: the three forces of each of the four functions in turn; columns: the element's in-plane unknowns.
Matrix force_field_matrix(const SheetSection& sheet, double lx, double ly, const MembraneElement& e)
{
    const double g = 1 / std::sqrt(3.0);
    Matrix field = Matrix::Zero(12, e.recover.cols());
    for (int k = 0; k < 4; ++k) {
        const double xi = k % 2 == 0 ? -g : g, eta = k / 2 == 0 ? -g : g;
        const Matrix N = membrane_stiffness(sheet) * membrane_strain(lx, ly, xi, eta) * e.recover;
        const double weight[4] = {0.25, 0.75 * xi, 0.75 * eta, 2.25 * xi * eta};
        for (int f = 0; f < 4; ++f) field.middleRows(3 * f, 3) += weight[f] * N;
    }
    return field;
}

/// The force field of element (i, j): column k belongs to function k.
Eigen::Matrix<double, 3, 4> force_field(const BucklingModel& m, const Eigen::Ref<const Vector>& u, int i, int j)
{
    const SkinLayout l{m.skin.grid};
    const SkinElements& e = *m.skin.elements;
    const ElementBubbles bubbles = element_bubbles(l, e, i, j);
    const Few<12> dofs = membrane_dofs(l, bubbles, i, j);
    Eigen::Matrix<double, Eigen::Dynamic, 1, 0, 12, 1> q(static_cast<Eigen::Index>(dofs.size()));
    for (std::size_t k = 0; k < dofs.size(); ++k) q(static_cast<Eigen::Index>(k)) = u(dofs[k]);
    const auto cx = static_cast<unsigned>(e.x_class[static_cast<std::size_t>(i)]), cy = static_cast<unsigned>(e.y_class[static_cast<std::size_t>(j)]);
    const Eigen::Matrix<double, 12, 1> field = m.force_field.at({cx, cy, bubbles.edges}) * q;
    return Eigen::Map<const Eigen::Matrix<double, 3, 4>>(field.data());
}

template <class Field>
std::vector<PressedElement> geometric_elements(const BucklingModel& m, const Field& field)
{
    const SkinLayout l{m.skin.grid};
    const SkinElements& e = *m.skin.elements;
    std::vector<PressedElement> out;
    out.reserve(e.missing.size());
    for (int j = 0; j + 1 < l.ny(); ++j)
        for (int i = 0; i + 1 < l.nx(); ++i) {
            if (e.missing[l.element(i, j)]) continue;
            const GeometricSet& set = m.geometric.at({e.x_class[static_cast<std::size_t>(i)], e.y_class[static_cast<std::size_t>(j)]});
            const Eigen::Matrix<double, 3, 4> N = field(i, j);
            PressedElement& element = out.emplace_back();
            element.K = N(0, 0) * set[0][0];
            for (std::size_t c = 0; c < 3; ++c)
                for (std::size_t f = c == 0 ? 1 : 0; f < 4; ++f) element.K += N(static_cast<Eigen::Index>(c), static_cast<Eigen::Index>(f)) * set[c][f];
            for (int k = 0; k < 16; ++k)
                element.place[static_cast<std::size_t>(k)] =
                    m.bending->position[static_cast<std::size_t>(l.dof(i + k / 4 % 2, j + k / 8, k % 4))];
        }
    return out;
}

std::vector<double> factors_from(const BucklingModel& model, const std::vector<std::vector<PressedElement>>& geometric)
{
    std::vector<double> out = largest_eigenvalues(*model.bending, geometric);
    for (double& mu : out) mu = mu == 0 ? std::numeric_limits<double>::infinity() : 1 / mu;
    return out;
}

bool has_figures(const std::vector<InPlaneForce>& forces)
{
    return std::all_of(forces.begin(), forces.end(), [](const InPlaneForce& f) { return std::isfinite(f.x) && std::isfinite(f.y); });
}

Vector in_plane_load(const BucklingModel& model, const std::vector<InPlaneForce>& forces)
{
    Vector load = Vector::Zero(model.skin.body.dofs);
    for (const InPlaneForce& f : forces) {
        add(load, skin_port(model.skin, f.where, SkinDirection::x), f.x);
        add(load, skin_port(model.skin, f.where, SkinDirection::y), f.y);
    }
    return load;
}

/// Supports of one half of the unknowns, the other half held: k of every node from `first` to `last`.
std::vector<char> held_too(const Skin& skin, int first, int last)
{
    std::vector<char> supported = skin.body.supported;
    for (int d = 0; d < SkinLayout{skin.grid}.grid_dofs(); ++d)
        if (d % 6 >= first && d % 6 <= last) supported[static_cast<std::size_t>(d)] = 1;
    return supported;
}

/// A flat sheet without ribs bends and stretches apart from each other: a factor for each.
void factor(BucklingModel& m)
{
    Body& body = m.skin.body;
    if (!m.skin.model.ribs.empty()) {
        m.bending = body.factor = skin_factor(m.skin, body.supported);
        return;
    }
    m.bending = skin_factor(m.skin, held_too(m.skin, 4, 5));
    body.supported = held_too(m.skin, 0, 3);
    body.factor = skin_factor(m.skin, body.supported);
}

} // namespace

std::shared_ptr<const BucklingModel> make_buckling(const SkinModel& model, double spacing)
{
    SkinModel coarse = model;
    coarse.spacing = spacing;
    auto m = std::make_shared<BucklingModel>();
    m->skin = skin_without_factor(coarse);
    factor(*m);
    const SkinElements& e = *m->skin.elements;
    for (const auto& [key, matrix] : e.bending)
        m->geometric[key] = geometric_set(e.x_length[static_cast<std::size_t>(key[0])], e.y_length[static_cast<std::size_t>(key[1])]);
    for (const auto& [key, element] : e.membrane)
        m->force_field[key] = force_field_matrix(model.sheet, e.x_length[key[0]], e.y_length[key[1]], element);
    return m;
}

std::vector<double> buckling_factors(const BucklingModel& model, const std::vector<std::vector<InPlaneForce>>& states)
{
    std::vector<double> out(states.size(), std::nan(""));
    std::vector<std::size_t> run;
    for (std::size_t k = 0; k < states.size(); ++k)
        if (has_figures(states[k])) run.push_back(k);
    if (run.empty()) return out;
    Matrix loads(model.skin.body.dofs, static_cast<Eigen::Index>(run.size()));
    for (std::size_t i = 0; i < run.size(); ++i) loads.col(static_cast<Eigen::Index>(i)) = in_plane_load(model, states[run[i]]);
    const Matrix u = solve_columns(model.skin.body, loads);
    std::vector<std::vector<PressedElement>> geometric;
    for (Eigen::Index i = 0; i < u.cols(); ++i) geometric.push_back(geometric_elements(model, [&](int ix, int iy) { return force_field(model, u.col(i), ix, iy); }));
    const std::vector<double> factors = factors_from(model, geometric);
    for (std::size_t i = 0; i < run.size(); ++i) out[run[i]] = factors[i];
    return out;
}

double buckling_factor(const BucklingModel& model, const std::vector<InPlaneForce>& forces) { return buckling_factors(model, {forces}).front(); }

double buckling_factor_uniform(const BucklingModel& model, double N_x, double N_y, double N_xy)
{
    Eigen::Matrix<double, 3, 4> N = Eigen::Matrix<double, 3, 4>::Zero();
    N.col(0) << N_x, N_y, N_xy;
    return factors_from(model, {geometric_elements(model, [&](int, int) { return N; })}).front();
}

} // namespace thinskin::fem
