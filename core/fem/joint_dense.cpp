#include "fem/joint_system.h"

#include <cmath>

namespace thinskin::fem {
namespace {

// A pivot of F + C below this part of its own diagonal: joints that say the same thing, or bodies without flexibility.
constexpr double smallest_pivot = 1e-12;
// Geometry only: directions of the scaled R below this are not resisted at all.
constexpr double smallest_direction = 1e-8;
constexpr double smallest_rcond = 1e-14;
constexpr double good_residual = 1e-10;

struct System { Matrix A, R; Vector e, f; }; ///< A lambda - R alpha = e, R^T lambda = f; columns of R and f scaled

System pick(const JointProblem& p, const std::vector<int>& active)
{
    const auto n = static_cast<Eigen::Index>(active.size());
    System s{Matrix(n, n), Matrix(n, p.R.cols()), Vector(n), p.rigid_load.cwiseProduct(p.scale)};
    for (Eigen::Index j = 0; j < n; ++j) {
        const int q = active[static_cast<std::size_t>(j)];
        for (Eigen::Index i = 0; i < n; ++i) s.A(i, j) = p.F(active[static_cast<std::size_t>(i)], q);
        s.A(j, j) += p.compliance(q);
        s.e(j) = p.elongation(q) + p.shift(q);
        s.R.row(j) = p.R.row(q).cwiseProduct(p.scale.transpose());
    }
    return s;
}

/// Largest error of the equations over the largest sum of the absolute terms in them.
double relative_residual(const System& s, const DenseSolution& x)
{
    const auto ratio = [](const Vector& error, const Vector& terms) {
        if (error.size() == 0) return 0.0;
        const double largest = terms.maxCoeff(), worst = error.cwiseAbs().maxCoeff();
        return worst == 0 ? 0.0 : worst / largest;
    };
    const Vector r1 = s.e - s.A * x.lambda + s.R * x.alpha, r2 = s.f - s.R.transpose() * x.lambda;
    const Vector t1 = s.e.cwiseAbs() + s.A.cwiseAbs() * x.lambda.cwiseAbs() + s.R.cwiseAbs() * x.alpha.cwiseAbs();
    const Vector t2 = s.f.cwiseAbs() + s.R.cwiseAbs().transpose() * x.lambda.cwiseAbs();
    const double a = ratio(r1, t1), b = ratio(r2, t2);
    return a >= b ? a : b >= a ? b : std::nan("");
}

/// Solves twice, the second time for what the first left over.
template <class Solver>
void solve_refined(const System& s, const Solver& solver, DenseSolution& x)
{
    x.lambda.setZero(s.e.size());
    x.alpha.setZero(s.f.size());
    for (int pass = 0; pass < 2; ++pass) {
        Vector dl, da;
        solver(s.e - s.A * x.lambda + s.R * x.alpha, s.f - s.R.transpose() * x.lambda, dl, da);
        x.lambda += dl;
        x.alpha += da;
    }
    x.residual = relative_residual(s, x);
}

bool good_pivots(const Eigen::LLT<Matrix>& llt, const Matrix& A)
{
    if (llt.info() != Eigen::Success) return false;
    const Matrix& L = llt.matrixLLT();
    for (Eigen::Index k = 0; k < A.rows(); ++k)
        if (!(L(k, k) * L(k, k) > smallest_pivot * A(k, k))) return false;
    return true;
}

/// Cholesky of A, then of S = R^T A^-1 R (theory FE-11). False: one of them is not safely positive definite.
bool solve_definite(const System& s, DenseSolution& x)
{
    const Eigen::LLT<Matrix> A(s.A);
    if (!good_pivots(A, s.A)) return false;
    if (s.R.cols() == 0) { // no free body
        solve_refined(s, [&](const Vector& e, const Vector& f, Vector& lambda, Vector& alpha) { lambda = A.solve(e), alpha = f; }, x);
        return x.residual <= good_residual;
    }
    const Matrix X = A.matrixL().solve(s.R);
    Matrix S = X.transpose() * X;
    if (!(S.diagonal().array() > 0).all()) return false;
    const Vector d = S.diagonal().cwiseSqrt().cwiseInverse();
    S = d.asDiagonal() * S * d.asDiagonal();
    const Eigen::LLT<Matrix> rigid(S);
    if (!good_pivots(rigid, S)) return false;
    solve_refined(s, [&](const Vector& e, const Vector& f, Vector& lambda, Vector& alpha) {
        const Vector t = A.matrixL().solve(e);
        alpha = d.cwiseProduct(rigid.solve(d.cwiseProduct(f - X.transpose() * t)));
        lambda = A.matrixU().solve(t + X * alpha);
    }, x);
    return x.residual <= good_residual;
}

/// The saddle system as it stands, for joints between rigid bodies without compliance (A singular, the whole still sound).
bool solve_saddle(const System& s, DenseSolution& x)
{
    const Eigen::Index n = s.A.rows(), m = s.R.cols();
    const double largest = n > 0 ? s.A.diagonal().maxCoeff() : 0;
    Vector d(n + m);
    for (Eigen::Index k = 0; k < n; ++k) d(k) = 1 / std::sqrt(s.A(k, k) > 0 ? s.A(k, k) : largest > 0 ? largest : 1);
    Matrix M = Matrix::Zero(n + m, n + m);
    M.topLeftCorner(n, n) = d.head(n).asDiagonal() * s.A * d.head(n).asDiagonal();
    const Matrix R = d.head(n).asDiagonal() * s.R;
    for (Eigen::Index k = 0; k < m; ++k) d(n + k) = 1 / R.col(k).norm();
    M.topRightCorner(n, m) = -R * d.tail(m).asDiagonal();
    M.bottomLeftCorner(m, n) = -M.topRightCorner(n, m).transpose();
    if (!M.allFinite()) return false;
    const Eigen::PartialPivLU<Matrix> lu(M);
    // The estimate of the condition misses a pivot that is exactly zero (an infinity in it compares as nothing).
    const auto pivots = lu.matrixLU().diagonal().cwiseAbs();
    if (!(pivots.minCoeff() > smallest_rcond * pivots.maxCoeff()) || !(lu.rcond() > smallest_rcond)) return false;
    solve_refined(s, [&](const Vector& e, const Vector& f, Vector& lambda, Vector& alpha) {
        Vector rhs(n + m);
        rhs << e, f;
        const Vector y = d.cwiseProduct(lu.solve(d.cwiseProduct(rhs)));
        lambda = y.head(n);
        alpha = y.tail(m);
    }, x);
    return x.residual <= good_residual;
}

} // namespace

Matrix free_motions(const JointProblem& p, const std::vector<int>& active)
{
    const Eigen::Index m = p.R.cols(), n = static_cast<Eigen::Index>(active.size());
    if (m == 0) return Matrix(0, 0);
    if (n == 0) return Matrix::Identity(m, m);
    Matrix Rt(m, n);
    for (Eigen::Index k = 0; k < n; ++k) Rt.col(k) = p.R.row(active[static_cast<std::size_t>(k)]).transpose().cwiseProduct(p.scale);
    Eigen::ColPivHouseholderQR<Matrix> qr(Rt);
    qr.setThreshold(smallest_direction);
    const Matrix Q = qr.householderQ();
    return Q.rightCols(m - qr.rank());
}

DenseSolution solve_dense(const JointProblem& p, const std::vector<int>& active)
{
    DenseSolution x;
    if (active.empty()) { // nothing to solve: sound without free bodies, otherwise they hang in the air
        x.status = p.R.cols() == 0 ? DenseStatus::solved : DenseStatus::rank_deficient;
        return x;
    }
    const System s = pick(p, active);
    if (solve_definite(s, x)) x.status = DenseStatus::solved;
    else if (free_motions(p, active).cols() > 0) x.status = DenseStatus::rank_deficient;
    else if (solve_saddle(s, x)) x.status = DenseStatus::solved;
    if (x.status == DenseStatus::solved) x.alpha = x.alpha.cwiseProduct(p.scale).eval();
    return x;
}

} // namespace thinskin::fem
