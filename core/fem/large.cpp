// The large-deflection solution of one load case: full load at once, load steps when that fails (theory FE-22, FE-23).
#include "fem/large_newton.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace thinskin::fem {
namespace {

void check(const Assembly& assembly, int skin_body, const LargeModel& model, const std::vector<UnitLoad>& loads, const Vector& factors,
           const JointState& linear, const NewtonRule& rule, const Vector* start_u)
{
    const auto require = [](bool good, const char* what) { if (!good) throw std::invalid_argument(std::string("solve_large: ") + what); };
    require(skin_body >= 0 && skin_body < static_cast<int>(assembly.bodies.size()), "no such body");
    const Body& body = *assembly.bodies[static_cast<std::size_t>(skin_body)];
    require(body.dofs == model.skin->body.dofs && body.held, "the body is not the model's skin");
    require(factors.size() == static_cast<Eigen::Index>(loads.size()) && factors.allFinite(), "one finite factor per unit load");
    require(linear.status == SolveStatus::solved && linear.lambda.size() == static_cast<Eigen::Index>(assembly.joints.size()),
            "the linear state is not a solved state of these joints");
    require(rule.most_steps >= 1 && rule.most_load_steps >= 1 && rule.force_tolerance > 0 && rule.keep_below >= 0 && rule.keep_below < 1, "the Newton rule makes no sense");
    for (const UnitLoad& load : loads)
        for (const Vector& on_body : load.on_body) require(on_body.allFinite(), "a load is not a number");
    require(start_u == nullptr || start_u->size() == body.dofs, "the start has the wrong length");
}

/// Once full load at once has failed: from the unloaded state, step by step, shorter where it is difficult.
void load_steps(LargeNewton& newton, const JointState& linear, const NewtonRule& rule, Large& out)
{
    double done = 0, before = 0, length = 0.25;
    LargeState last, earlier;
    for (int tries = 2; tries <= rule.most_load_steps; ++tries) {
        const double share = std::min(1.0, done + length);
        LargeState start{done > 0 ? last.u : newton.start(share, linear).u, done > 0 ? last.joints : linear};
        if (before > 0) start.u += (share - done) / (done - before) * (last.u - earlier.u);
        newton.run(share, std::move(start), out);
        if (out.status == SolveStatus::stopped || out.status == SolveStatus::mechanism || out.status == SolveStatus::buckled) return;
        if (out.status != SolveStatus::solved) {
            length *= 0.5;
            continue;
        }
        ++out.load_steps;
        if (share >= 1) return;
        earlier = std::move(last);
        before = done;
        last = {out.skin_u, out.joints};
        done = share;
        length *= 1.5;
    }
    if (out.status == SolveStatus::solved) out.status = SolveStatus::not_converged, out.where = "load step: more load steps than allowed";
}

/// Forces and moments of a load on the skin's dofs about the origin, in-plane forces at their deflected height (theory FE-23).
struct Resultant { Eigen::Matrix<double, 6, 1> sum = Eigen::Matrix<double, 6, 1>::Zero(), absolute = sum; };

Resultant resultant(const Skin& skin, const Vector& u, const Vector& f)
{
    const SkinLayout l{skin.grid};
    Resultant r;
    const auto count = [&](int row, double value) { r.sum(row) += value, r.absolute(row) += std::abs(value); };
    for (int j = 0; j < l.ny(); ++j)
        for (int i = 0; i < l.nx(); ++i) {
            const double x = skin.grid.x[static_cast<std::size_t>(i)], y = skin.grid.y[static_cast<std::size_t>(j)];
            const int d = l.dof(i, j, 0);
            const double z = skin.model.mid_z + u(d);
            count(0, f(d + 4)), count(1, f(d + 5)), count(2, f(d));
            count(3, y * f(d) + f(d + 2)), count(3, -z * f(d + 5));
            count(4, -x * f(d) - f(d + 1)), count(4, z * f(d + 4));
            count(5, x * f(d + 5)), count(5, -y * f(d + 4));
        }
    return r; // bubbles move nothing as a rigid body
}

void balance(const LargeNewton& newton, const LargeModel& model, Large& out)
{
    const Skin& skin = *model.skin;
    Vector force(skin.body.dofs);
    internal_force(model, out.skin_u, force);
    const Vector joints = newton.joint_forces(out.joints), out_of = force - newton.skin_load() - joints;
    out.skin_support = Vector::Zero(skin.body.dofs);
    for (int d = 0; d < skin.body.dofs; ++d)
        if (skin.body.supported[static_cast<std::size_t>(d)]) out.skin_support(d) = out_of(d);
    const Resultant load = resultant(skin, out.skin_u, newton.skin_load() + joints), support = resultant(skin, out.skin_u, out.skin_support);
    out.applied = load.sum;
    out.reaction = support.sum;
    const Eigen::Matrix<double, 6, 1> error = (load.sum + support.sum).cwiseAbs(), size = load.absolute + support.absolute;
    const auto ratio = [&](int first) {
        const double worst = error.segment<3>(first).maxCoeff(), largest = size.segment<3>(first).maxCoeff();
        return worst == 0 ? 0.0 : worst / largest;
    };
    out.force_error = ratio(0);
    out.moment_error = ratio(3);
}

} // namespace

Large solve_large(const Assembly& assembly, int skin_body, const LargeModel& model, const std::vector<UnitLoad>& loads, const Vector& load_factors,
                  const JointState& linear_start, ColumnCache& cache, const NewtonRule& rule, std::stop_token stop, const Vector* start_u, LargeMemory* memory)
{
    check(assembly, skin_body, model, loads, load_factors, linear_start, rule, start_u);
    LargeMemory own;
    LargeNewton newton(assembly, skin_body, model, loads, load_factors, cache, rule, (memory != nullptr ? *memory : own).impl().factor, std::move(stop));
    Large out;
    LargeStart start;
    if (start_u != nullptr) start.u = *start_u;
    else start = newton.start(1, linear_start);
    out.start_scale = start.beta;
    out.load_steps = 1;
    newton.run(1, {std::move(start.u), linear_start}, out);
    const bool again = out.status == SolveStatus::not_converged || out.status == SolveStatus::no_contact_state || out.status == SolveStatus::buckled
        || out.status == SolveStatus::ill_conditioned;
    if (again && rule.most_load_steps > 1) {
        out.load_steps = 0;
        load_steps(newton, linear_start, rule, out);
    }
    if (out.status == SolveStatus::solved) balance(newton, model, out);
    else out.skin_u.resize(0), out.joints = {};
    return out;
}

} // namespace thinskin::fem
