// Newton's method for the skin among linear bodies (theory FE-21). Every step replaces the skin by its tangent, a linear body, and
// hands it to the same joints solver; ports are linear in the displacements, so the joints' laws hold exactly after every step.
#include "fem/large_newton.h"

#include "base/largest.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace thinskin::fem {
namespace {

/// How far the state may lie from that of an exact tangent, in parts of itself, for the pivots of the one to speak for the other: the
/// membrane forces differ by twice as much, less than the buckling load is known to.
constexpr double near_enough = 1e-2;

std::string number(double v, const char* format)
{
    char text[32];
    std::snprintf(text, sizeof text, format, v);
    return text;
}

const Vector* load_on(const UnitLoad& load, int body)
{
    const auto b = static_cast<std::size_t>(body);
    return b < load.on_body.size() && load.on_body[b].size() > 0 ? &load.on_body[b] : nullptr;
}

/// One load that is the load case on every body but the skin.
UnitLoad combined(const Assembly& assembly, int skin, const std::vector<UnitLoad>& loads, const Vector& factors)
{
    UnitLoad out;
    for (std::size_t b = 0; b < assembly.bodies.size(); ++b) {
        Vector sum;
        for (std::size_t l = 0; l < loads.size() && static_cast<int>(b) != skin; ++l)
            if (const Vector* load = load_on(loads[l], static_cast<int>(b))) {
                if (sum.size() == 0) sum = Vector::Zero(load->size());
                sum += factors(static_cast<Eigen::Index>(l)) * *load;
            }
        out.on_body.push_back(std::move(sum));
    }
    return out;
}

} // namespace

LargeNewton::LargeNewton(const Assembly& assembly, int skin_body, const LargeModel& model, const std::vector<UnitLoad>& loads, const Vector& factors,
                         ColumnCache& cache, const NewtonRule& rule, LargeFactor& factor, std::stop_token stop)
    : assembly_(assembly), skin_(skin_body), model_(model), rule_(rule), stop_(std::move(stop)),
      others_(condense_without(assembly, skin_body, skin_body, cache)), factor_(factor)
{
    const int dofs = model.skin->body.dofs;
    const Free free = free_motion(assembly, others_, {combined(assembly, skin_body, loads, factors)});
    loads_.elongation = free.elongation.col(0);
    loads_.rigid = free.rigid_load.col(0);
    loads_.skin = Vector::Zero(dofs);
    for (std::size_t l = 0; l < loads.size(); ++l)
        if (const Vector* load = load_on(loads[l], skin_body)) loads_.skin += factors(static_cast<Eigen::Index>(l)) * *load;
    const double h = model.skin->model.spacing;
    weight_ = Vector::Ones(dofs);
    for (int d = 0; d < SkinLayout{model.skin->grid}.grid_dofs(); ++d)
        if (const int k = d % 6; k > 0 && k < 4) weight_(d) = k == 3 ? 1 / (h * h) : 1 / h;
}

Vector LargeNewton::joint_forces(const JointState& joints) const
{
    Vector f = Vector::Zero(weight_.size());
    for (std::size_t k = 0; k < assembly_.joints.size(); ++k)
        for (const Side& s : sides(assembly_.joints[k]))
            if (s.body == skin_) add(f, *s.row, -s.sign * joints.lambda(static_cast<Eigen::Index>(k)));
    return f;
}

/// tangent_ holds the internal force at `at`.
Vector LargeNewton::out_of_balance(double share, const LargeState& at) const
{
    return share * loads_.skin + joint_forces(at.joints) - tangent_.force;
}

LargeState LargeNewton::step(double share, const LargeState& from)
{
    const Free free{share * loads_.elongation, share * loads_.rigid, Matrix::Zero(loads_.elongation.size(), 1), {}};
    return factor_.step(assembly_, skin_, others_, free, from, out_of_balance(share, from));
}

double LargeNewton::residual(double share, const LargeState& at) const
{
    const double scale = std::max((share * loads_.skin).cwiseProduct(weight_).lpNorm<Eigen::Infinity>(), joint_forces(at.joints).cwiseProduct(weight_).lpNorm<Eigen::Infinity>());
    const Vector out = out_of_balance(share, at);
    double worst = 0;
    for (Eigen::Index d = 0; d < out.size(); ++d)
        if (!model_.skin->body.supported[static_cast<std::size_t>(d)]) base::keep_largest(worst, std::abs(out(d)) * weight_(d));
    return worst == 0 ? 0 : worst / scale;
}

/// The exact tangent at the solution is positive definite. When the factor is of an exact tangent close by, that one tells.
bool LargeNewton::stable(const Vector& u, std::string& where)
{
    if (factor_.exact() && (u - factor_.at()).norm() <= near_enough * u.norm()) return true;
    tangent(model_, u, 1, tangent_);
    std::string place;
    if (factor_.take_exact(model_, u, tangent_, place)) return true;
    where = "the skin has buckled: its state has no stiffness left around " + place;
    return false;
}

void LargeNewton::run(double share, LargeState state, Large& out)
{
    const std::string at_load = share < 1 ? " at " + number(share, "%.3g") + " of the load" : "";
    out.residuals.clear();
    const auto fail = [&](SolveStatus status, const std::string& why) {
        out.status = status;
        out.where = "Newton step " + std::to_string(out.residuals.size() + 1) + at_load + ": " + why;
    };
    const bool keep = rule_.keep_below > 0;
    bool anew = !keep || factor_.empty() || !factor_.exact(), have_K = false;
    internal_force(model_, state.u, tangent_.force);
    out.residual = residual(share, state);
    for (int n = 0; n < rule_.most_steps; ++n) {
        if (stop_.stop_requested()) return fail(SolveStatus::stopped, "stopped");
        if (anew) {
            if (!have_K) tangent(model_, state.u, 1, tangent_);
            if (!factor_.take(model_, state.u, tangent_)) return fail(SolveStatus::not_converged, "the skin's tangent is singular");
            ++out.factors;
        }
        const double before = out.residual;
        LargeState next = step(share, state);
        if (next.joints.status != SolveStatus::solved) return fail(next.joints.status, next.joints.where);
        have_K = !keep;
        if (have_K) tangent(model_, next.u, 1, tangent_);
        else internal_force(model_, next.u, tangent_.force);
        out.residual = residual(share, next);
        ++out.steps;
        if (!std::isfinite(out.residual) || !next.u.allFinite()) return fail(SolveStatus::not_converged, "the figures grow without end");
        out.residuals.push_back(out.residual);
        anew = !(out.residual <= rule_.keep_below * before);
        state = std::move(next);
        if (out.residual > rule_.force_tolerance) continue;
        out.skin_u = state.u;
        out.joints = state.joints;
        out.status = SolveStatus::solved;
        out.where.clear();
        if (std::string why; !stable(state.u, why)) fail(SolveStatus::buckled, why);
        return;
    }
    fail(SolveStatus::not_converged, "out-of-balance force still " + number(out.residual, "%.1e") + " of the load");
}

LargeStart LargeNewton::start(double share, const JointState& linear) const
{
    const Body& skin = model_.skin->body;
    const int grid_dofs = SkinLayout{model_.skin->grid}.grid_dofs();
    const Vector u_lin = solve(skin, share * (loads_.skin + joint_forces(linear)));
    Vector w = u_lin, in_plane = u_lin;
    for (int d = 0; d < skin.dofs; ++d) (d < grid_dofs && d % 6 < 4 ? in_plane : w)(d) = 0;
    Vector pull = Vector::Zero(skin.dofs);
    double quartic = 0, cross = 0;
    for (const QuadraticPiece& p : model_.pieces) {
        const PieceState bent = piece_state(p, w);
        const PieceVector f = p.element->K_gp.transpose() * bent.g;
        quartic += 0.5 * bent.g.dot(p.element->K_gg * bent.g);
        for (std::size_t k = 0; k < p.dofs.size(); ++k) {
            pull(p.dofs[k]) += f(static_cast<Eigen::Index>(k));
            cross += f(static_cast<Eigen::Index>(k)) * in_plane(p.dofs[k]);
        }
    }
    const Vector second = -solve(skin, pull);
    quartic += 0.5 * pull.dot(second);
    const double a = w.dot(skin.K * w), linear_term = std::max(a + 2 * cross, 0.05 * a), b = 4 * quartic;
    LargeStart s;
    if (a > 0 && b > 0) {                                                                              // theory FE-22
        double lo = 0, hi = a / linear_term;
        for (int k = 0; k < 60; ++k) {
            s.beta = 0.5 * (lo + hi);
            (linear_term * s.beta + b * s.beta * s.beta * s.beta > a ? hi : lo) = s.beta;
        }
    }
    s.u = s.beta * w + in_plane + s.beta * s.beta * second;
    return s;
}

} // namespace thinskin::fem
