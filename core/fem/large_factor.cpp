// One Newton step with a factor that need not be of the present state. With b_k the skin's side of joint k, r the out-of-balance
// force at (u, lambda) and K = G G^T the factored tangent, all joints are met at once from one forward and one backward solve:
//     y = G^-1 r,   e_k = b_k . u + (G^-1 b_k) . y + F lambda   free of joint forces,   solve_joints gives lambda',
//     u' = u + G^-T (y - sum_k G^-1 b_k (lambda'_k - lambda_k))
#include "fem/large_factor.h"

namespace thinskin::fem {

LargeMemory::LargeMemory() : impl_(std::make_unique<Impl>()) {}
LargeMemory::~LargeMemory() = default;

bool LargeFactor::take_exact(const LargeModel& model, const Vector& u, const Tangent& t, std::string& where)
{
    clear();
    try {
        body_.factor = factorise(t.K, model.pattern);
    } catch (const SingularMatrix& e) {
        where = dof_place(model.skin->grid, e.dof);
        return false;
    }
    body_.dofs = static_cast<int>(u.size());
    at_ = u;
    exact_ = true;
    return true;
}

bool LargeFactor::take(const LargeModel& model, const Vector& u, Tangent& t)
{
    std::string where;
    if (take_exact(model, u, t, where)) return true;
    tangent(model, u, 0, t);
    const bool good = take_exact(model, u, t, where);
    exact_ = false;
    return good;
}

void LargeFactor::condense(const Assembly& assembly, int skin)
{
    Assembly here = assembly;
    here.bodies[static_cast<std::size_t>(skin)] = &body_;
    ColumnCache columns;
    touches_ = touches(here, skin, columns);
    const auto n = static_cast<Eigen::Index>(assembly.joints.size());
    skin_ = {Matrix::Zero(n, n), Matrix::Zero(n, n), Vector::Zero(n), {}, {}, skin};
    add_flexibility(touches_, true, skin_);
    condensed_ = true;
}

LargeState LargeFactor::step(const Assembly& assembly, int skin, const Condensed& others, Free free, const LargeState& from, const Vector& out_of_balance)
{
    if (!condensed_) condense(assembly, skin);
    const Factor& f = *body_.factor;
    Vector y(f.size());
    for (int k = 0; k < f.size(); ++k) y(k) = out_of_balance(f.dof[static_cast<std::size_t>(k)]);
    f.forward(y);
    free.elongation.col(0) += skin_.F * from.joints.lambda;
    for (const Touch& t : touches_) free.elongation(t.joint, 0) += t.sign * dot(f, *t.column, y);
    for (std::size_t k = 0; k < assembly.joints.size(); ++k)
        for (const Side& s : sides(assembly.joints[k]))
            if (s.body == skin) free.elongation(static_cast<Eigen::Index>(k), 0) += s.sign * fem::apply(*s.row, from.u);
    Condensed all = others;
    all.F += skin_.F;
    LargeState to;
    to.joints = solve_joints(assembly, all, free, Vector::Ones(1), from.joints.active);
    if (to.joints.status != SolveStatus::solved) return to;
    for (const Touch& t : touches_) add(f, *t.column, -t.sign * (to.joints.lambda(t.joint) - from.joints.lambda(t.joint)), y);
    f.backward(y);
    to.u = from.u;
    for (int k = 0; k < f.size(); ++k) to.u(f.dof[static_cast<std::size_t>(k)]) += y(k);
    return to;
}

} // namespace thinskin::fem
