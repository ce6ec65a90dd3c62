// Linear buckling of the skin under its own membrane forces (theory FE-16).
#include "fem/buckling_lanczos.h"
#include "fem/skin_elements.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace thinskin::fem {

class BucklingModel {
public:
    BucklingModel() = default;
    BucklingModel(const BucklingModel&) = delete; // it points into itself
    BucklingModel& operator=(const BucklingModel&) = delete;

    Skin skin;                               ///< its factor: what is pressed in the plane
    std::shared_ptr<const Factor> bending;   ///< what buckles: without ribs the plane's unknowns have no part in it and are left out
    std::map<std::array<int, 2>, SheetShape> shapes; ///< by the keys of SkinElements::bending
    std::map<std::array<unsigned, 3>, Matrix> force_field; ///< by the keys of SkinElements::membrane: from an element's in-plane unknowns to its force field
    PressedSheet sheet;
    struct Source { const Matrix* field = nullptr; Few<12> dofs; };
    std::vector<Source> sources;             ///< of each element's forces, in the order of `sheet`
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

/// Elements that are there, with what each needs, found once.
void list_elements(BucklingModel& m)
{
    const SkinLayout l{m.skin.grid};
    const SkinElements& e = *m.skin.elements;
    for (int j = 0; j + 1 < l.ny(); ++j)
        for (int i = 0; i + 1 < l.nx(); ++i) {
            if (e.missing[l.element(i, j)]) continue;
            const int cx = e.x_class[static_cast<std::size_t>(i)], cy = e.y_class[static_cast<std::size_t>(j)];
            const ElementBubbles bubbles = element_bubbles(l, e, i, j);
            m.sources.push_back({&m.force_field.at({static_cast<unsigned>(cx), static_cast<unsigned>(cy), bubbles.edges}), membrane_dofs(l, bubbles, i, j)});
            PressedElement& element = m.sheet.emplace_back();
            element.shape = &m.shapes.at({cx, cy});
            for (int k = 0; k < 16; ++k)
                element.place[static_cast<std::size_t>(k)] = m.bending->position[static_cast<std::size_t>(l.dof(i + k / 4 % 2, j + k / 8, k % 4))];
        }
}

ForceField force_field(const BucklingModel& m, const Eigen::Ref<const Vector>& u)
{
    ForceField field(12, static_cast<Eigen::Index>(m.sources.size()));
    for (std::size_t e = 0; e < m.sources.size(); ++e) {
        const BucklingModel::Source& from = m.sources[e];
        Eigen::Matrix<double, Eigen::Dynamic, 1, 0, 12, 1> q(static_cast<Eigen::Index>(from.dofs.size()));
        for (std::size_t k = 0; k < from.dofs.size(); ++k) q(static_cast<Eigen::Index>(k)) = u(from.dofs[k]);
        field.col(static_cast<Eigen::Index>(e)).noalias() = *from.field * q;
    }
    return field;
}

std::vector<double> factors_from(const BucklingModel& model, const std::vector<ForceField>& fields)
{
    std::vector<double> out = largest_eigenvalues(*model.bending, model.sheet, fields);
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
        m->shapes[key] = sheet_shape(e.x_length[static_cast<std::size_t>(key[0])], e.y_length[static_cast<std::size_t>(key[1])]);
    for (const auto& [key, element] : e.membrane)
        m->force_field[key] = force_field_matrix(model.sheet, e.x_length[key[0]], e.y_length[key[1]], element);
    list_elements(*m);
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
    std::vector<ForceField> fields;
    for (Eigen::Index i = 0; i < u.cols(); ++i) fields.push_back(force_field(model, u.col(i)));
    const std::vector<double> factors = factors_from(model, fields);
    for (std::size_t i = 0; i < run.size(); ++i) out[run[i]] = factors[i];
    return out;
}

double buckling_factor(const BucklingModel& model, const std::vector<InPlaneForce>& forces) { return buckling_factors(model, {forces}).front(); }

double buckling_factor_uniform(const BucklingModel& model, double N_x, double N_y, double N_xy)
{
    ForceField field = ForceField::Zero(12, static_cast<Eigen::Index>(model.sources.size()));
    field.topRows<3>().colwise() = Eigen::Vector3d(N_x, N_y, N_xy);
    return factors_from(model, {field}).front();
}

} // namespace thinskin::fem
