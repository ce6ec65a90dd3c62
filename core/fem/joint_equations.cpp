// One set of active joints without its loads, factored once however many load cases it serves (theory FE-11).
#include "fem/joint_system.h"

#include <cmath>

namespace thinskin::fem {

struct JointFactors::Impl {
    static constexpr std::size_t most = 32;
    struct One { std::vector<int> active; std::shared_ptr<const JointEquations> equations; };
    std::vector<One> all;
};

JointFactors::JointFactors() : impl_(std::make_unique<Impl>()) {}
JointFactors::~JointFactors() = default;
JointFactors::JointFactors(JointFactors&&) noexcept = default;
JointFactors& JointFactors::operator=(JointFactors&&) noexcept = default;

namespace {

// A pivot of F + C below this part of its own diagonal: joints that say the same thing, or bodies without flexibility.
constexpr double smallest_pivot = 1e-12;

bool good_pivots(const Eigen::LLT<Matrix>& llt, const Matrix& A)
{
    if (llt.info() != Eigen::Success) return false;
    const Matrix& L = llt.matrixLLT();
    for (Eigen::Index k = 0; k < A.rows(); ++k)
        if (!(L(k, k) * L(k, k) > smallest_pivot * A(k, k))) return false;
    return true;
}

void pick(const JointProblem& p, const std::vector<int>& active, JointEquations& q)
{
    const auto n = static_cast<Eigen::Index>(active.size());
    q.A.resize(n, n);
    q.R.resize(n, p.R.cols());
    for (Eigen::Index j = 0; j < n; ++j) {
        const int at = active[static_cast<std::size_t>(j)];
        for (Eigen::Index i = 0; i < n; ++i) q.A(i, j) = p.F(active[static_cast<std::size_t>(i)], at);
        q.A(j, j) += p.compliance(at);
        q.R.row(j) = p.R.row(at).cwiseProduct(p.scale.transpose());
    }
}

/// Cholesky of A, then of S (theory FE-11). False: one of them is not safely positive definite.
bool factor(JointEquations& q)
{
    q.chol.compute(q.A);
    if (!good_pivots(q.chol, q.A)) return false;
    if (q.R.cols() == 0) return true; // no free body
    q.X = q.chol.matrixL().solve(q.R);
    Matrix S = q.X.transpose() * q.X;
    if (!(S.diagonal().array() > 0).all()) return false;
    q.d = S.diagonal().cwiseSqrt().cwiseInverse();
    S = q.d.asDiagonal() * S * q.d.asDiagonal();
    q.rigid.compute(S);
    return good_pivots(q.rigid, S);
}

} // namespace

std::shared_ptr<const JointEquations> joint_equations(const JointProblem& p, const std::vector<int>& active, JointFactors* kept)
{
    if (kept)
        for (const auto& one : kept->impl().all)
            if (one.active == active) return one.equations;
    auto q = std::make_shared<JointEquations>();
    pick(p, active, *q);
    q->definite = factor(*q);
    if (kept && kept->impl().all.size() < JointFactors::Impl::most) kept->impl().all.push_back({active, q});
    return q;
}

} // namespace thinskin::fem
