#include "base/largest.h"
#include "fem/joint_system.h"
#include "fem/several.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

namespace thinskin::fem {
namespace {

const Vector& load_on(const UnitLoad& load, std::size_t body)
{
    static const Vector none;
    return body < load.on_body.size() ? load.on_body[body] : none;
}

} // namespace

Free free_motion(const Assembly& assembly, const Condensed& condensed, const std::vector<UnitLoad>& loads)
{
    const auto n = static_cast<Eigen::Index>(assembly.joints.size()), count = static_cast<Eigen::Index>(loads.size());
    Free free{Matrix::Zero(n, count), Matrix::Zero(condensed.R.cols(), count), Matrix::Zero(n, count), {}};
    for (std::size_t l = 0; l < loads.size(); ++l) {
        const auto column = static_cast<Eigen::Index>(l);
        std::vector<Vector> motion;
        for (std::size_t b = 0; b < assembly.bodies.size(); ++b) {
            const Body& body = *assembly.bodies[b];
            const Vector& load = load_on(loads[l], b);
            if (load.size() != 0 && load.size() != body.dofs) throw std::invalid_argument("unit load on " + body.name + " has the wrong length");
            motion.push_back(solve(body, load));
        }
        for (Eigen::Index k = 0; k < n; ++k)
            for (const Side& s : sides(assembly.joints[static_cast<std::size_t>(k)])) {
                if (s.body < 0) continue;
                const double moved = s.sign * fem::apply(*s.row, motion[static_cast<std::size_t>(s.body)]);
                free.elongation(k, column) += moved;
                if (s.body == condensed.skin_body && assembly.joints[static_cast<std::size_t>(k)].skin_normal) free.elongation_skin(k, column) += moved;
            }
        for (std::size_t g = 0; g < condensed.rigid_body.size(); ++g) {
            const auto b = static_cast<std::size_t>(condensed.rigid_body[g]);
            const Vector& load = load_on(loads[l], b);
            if (load.size() > 0) free.rigid_load.block<6, 1>(6 * static_cast<Eigen::Index>(g), column) = assembly.bodies[b]->rigid_modes.transpose() * load;
        }
        free.motion.push_back(std::move(motion));
    }
    return free;
}

namespace {

using Six = Eigen::Matrix<double, 6, 1>;

/// Loads and joint forces on one body, and their resultant.
struct BodyLoad { Vector joints, all; Six resultant = Six::Zero(); double largest = 0; };

BodyLoad body_load(const Assembly& assembly, int body, const std::vector<UnitLoad>& loads, const Vector& factors, const Vector& lambda)
{
    const Body& b = *assembly.bodies[static_cast<std::size_t>(body)];
    BodyLoad f;
    f.joints = Vector::Zero(b.dofs);
    for (std::size_t k = 0; k < assembly.joints.size(); ++k)
        for (const Side& s : sides(assembly.joints[k]))
            if (const double force = -s.sign * lambda(static_cast<Eigen::Index>(k)); s.body == body && force != 0) {
                add(f.joints, *s.row, force);
                f.resultant += rigid_row(b, *s.row).transpose() * force;
            }
    f.all = f.joints;
    f.largest = f.joints.lpNorm<Eigen::Infinity>();
    Vector of_loads;
    for (std::size_t l = 0; l < loads.size(); ++l)
        if (const Vector& load = load_on(loads[l], static_cast<std::size_t>(body)); load.size() > 0) {
            if (of_loads.size() == 0) of_loads.setZero(b.dofs);
            of_loads += factors(static_cast<Eigen::Index>(l)) * load;
        }
    if (of_loads.size() == 0) return f;
    f.all += of_loads;
    f.resultant += b.rigid_modes.transpose() * of_loads;
    f.largest = base::larger(f.largest, of_loads.lpNorm<Eigen::Infinity>());
    return f;
}

Six rigid_part(const Assembly& assembly, int body, const JointState& state)
{
    Eigen::Index group = 0;
    for (int b = 0; b < body; ++b)
        if (!assembly.bodies[static_cast<std::size_t>(b)]->held) ++group;
    return state.alpha.segment<6>(6 * group);
}

/// Largest entry at dofs that are not held.
double largest_free(const Body& b, const Vector& out)
{
    double worst = 0;
    for (int d = 0; d < b.dofs; ++d)
        if (!(b.held && b.supported[static_cast<std::size_t>(d)])) base::keep_largest(worst, std::abs(out(d)));
    return worst;
}

constexpr double drowned = 1e-9; ///< of the largest force: a short stiff piece far from where the body is held for the time being rounds away more

/// K u - f, added up with more digits than u has.
Vector with_more_digits(const Body& b, const Vector& u, const Vector& f)
{
    std::vector<long double> sum(f.data(), f.data() + f.size());
    for (long double& x : sum) x = -x;
    for (int c = 0; c < b.K.outerSize(); ++c)
        for (Sparse::InnerIterator it(b.K, c); it; ++it) sum[static_cast<std::size_t>(it.row())] += static_cast<long double>(it.value()) * static_cast<long double>(u(c));
    Vector out(f.size());
    for (Eigen::Index d = 0; d < out.size(); ++d) out(d) = static_cast<double>(sum[static_cast<std::size_t>(d)]);
    return out;
}

/// K u - f of a free body, u first without its share of a rigid motion and then corrected twice. The correction, smaller than the last digit of
/// u where the piece is stiff, comes in by itself.
Vector out_of_balance_again(const Body& b, const Vector& f, Vector& u)
{
    const Matrix& R = b.rigid_modes;
    u -= R * (R.transpose() * R).ldlt().solve(R.transpose() * u);
    Vector out = with_more_digits(b, u, f);
    for (int pass = 0; pass < 2; ++pass) {
        const Vector correction = solve(b, out);
        u -= correction;
        out -= b.K * correction;
    }
    return out;
}

/// What the supports hold, and its resultant.
void take_support(const Body& b, const Vector& out, Recovered& r)
{
    r.support = Vector::Zero(b.dofs);
    r.reaction.setZero();
    for (int d = 0; d < b.dofs && b.held; ++d)
        if (b.supported[static_cast<std::size_t>(d)]) {
            r.support(d) = out(d);
            r.reaction += b.rigid_modes.row(d).transpose() * out(d);
        }
}

/// The fields that belong to a body's motion u under all that acts on it, but for its rigid motion; Ku: what K takes for u.
Recovered recovered(const Assembly& assembly, int body, const BodyLoad& f, Vector u, const Vector& Ku, const JointState& state)
{
    const Body& b = *assembly.bodies[static_cast<std::size_t>(body)];
    Recovered r;
    r.u = std::move(u);                                                                                // theory FE-14
    Vector out = Ku - f.all;
    double worst = largest_free(b, out);
    if (!b.held && !b.rigid && worst > drowned * f.largest) {
        const Vector before = r.u;
        out = out_of_balance_again(b, f.all, r.u);
        r.u += b.rigid_modes * (b.rigid_modes.transpose() * b.rigid_modes).ldlt().solve(b.rigid_modes.transpose() * (before - r.u)).eval();
        worst = largest_free(b, out);
    }
    if (!b.held) r.u += b.rigid_modes * rigid_part(assembly, body, state);
    take_support(b, out, r);
    r.applied = f.resultant;
    r.residual = worst == 0 ? 0 : worst / f.largest;
    return r;
}

} // namespace

Recovered recover(const Assembly& assembly, int body, const std::vector<UnitLoad>& loads, const Vector& load_factors, const Free& free, const JointState& state)
{
    return recover(assembly, body, loads, std::vector{&load_factors}, free, std::vector{&state}).front();
}

std::vector<Recovered> recover(const Assembly& assembly, int body, const std::vector<UnitLoad>& loads, const std::vector<const Vector*>& load_factors, const Free& free,
                               const std::vector<const JointState*>& states)
{
    const Body& b = *assembly.bodies.at(static_cast<std::size_t>(body));
    std::vector<BodyLoad> f;
    Matrix joints(b.dofs, static_cast<Eigen::Index>(states.size()));
    for (std::size_t k = 0; k < states.size(); ++k) {
        if (states[k]->status != SolveStatus::solved) throw std::invalid_argument("recover: the joints are not solved");
        f.push_back(body_load(assembly, body, loads, *load_factors[k], states[k]->lambda));
        joints.col(static_cast<Eigen::Index>(k)) = f.back().joints;
    }
    Matrix u = states.size() == 1 ? Matrix(solve(b, f.front().joints)) : solve_columns(b, joints);
    for (std::size_t k = 0; k < states.size(); ++k)
        for (std::size_t l = 0; l < loads.size(); ++l)
            if (load_on(loads[l], static_cast<std::size_t>(body)).size() > 0) u.col(static_cast<Eigen::Index>(k)) += (*load_factors[k])(static_cast<Eigen::Index>(l)) * free.motion[l][static_cast<std::size_t>(body)];
    // K takes nothing from a rigid motion; left out here, it does not drown the residual in rounding.
    const Matrix Ku = b.rigid ? Matrix::Zero(u.rows(), u.cols()) : states.size() == 1 ? Matrix(b.K * u) : symmetric_product(b.K, u);
    std::vector<Recovered> out;
    for (std::size_t k = 0; k < states.size(); ++k) {
        const auto c = static_cast<Eigen::Index>(k);
        out.push_back(recovered(assembly, body, f[k], u.col(c), Ku.col(c), *states[k]));
    }
    return out;
}

} // namespace thinskin::fem
