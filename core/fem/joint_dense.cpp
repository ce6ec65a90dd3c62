#include "fem/joint_system.h"

#include <cmath>

namespace thinskin::fem {
namespace {

// Geometry only: directions of the scaled R below this are not resisted at all.
constexpr double smallest_direction = 1e-8;
constexpr double smallest_rcond = 1e-14;
constexpr double good_residual = 1e-10;

struct System { const JointEquations* q; Vector e, f; }; ///< A lambda - R alpha = e, R^T lambda = f; f scaled as R's columns

System with_loads(const JointProblem& p, const std::vector<int>& active, const JointEquations& q)
{
    System s{&q, Vector(static_cast<Eigen::Index>(active.size())), p.rigid_load.cwiseProduct(p.scale)};
    for (std::size_t j = 0; j < active.size(); ++j) s.e(static_cast<Eigen::Index>(j)) = p.elongation(active[j]) + p.shift(active[j]);
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
    const Vector r1 = s.e - s.q->A * x.lambda + s.q->R * x.alpha, r2 = s.f - s.q->R.transpose() * x.lambda;
    const Vector t1 = s.e.cwiseAbs() + s.q->A.cwiseAbs() * x.lambda.cwiseAbs() + s.q->R.cwiseAbs() * x.alpha.cwiseAbs();
    const Vector t2 = s.f.cwiseAbs() + s.q->R.cwiseAbs().transpose() * x.lambda.cwiseAbs();
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
        solver(s.e - s.q->A * x.lambda + s.q->R * x.alpha, s.f - s.q->R.transpose() * x.lambda, dl, da);
        x.lambda += dl;
        x.alpha += da;
    }
    x.residual = relative_residual(s, x);
}

bool solve_definite(const System& s, DenseSolution& x)
{
    const JointEquations& q = *s.q;
    if (!q.definite) return false;
    solve_refined(s, [&q](const Vector& e, const Vector& f, Vector& lambda, Vector& alpha) {
        if (q.R.cols() == 0) {
            lambda = q.chol.solve(e), alpha = f;
            return;
        }
        const Vector t = q.chol.matrixL().solve(e);
        alpha = q.d.cwiseProduct(q.rigid.solve(q.d.cwiseProduct(f - q.X.transpose() * t)));
        lambda = q.chol.matrixU().solve(t + q.X * alpha);
    }, x);
    return x.residual <= good_residual;
}

/// The saddle system as it stands, for joints between rigid bodies without compliance (A singular, the whole still sound).
bool solve_saddle(const System& s, DenseSolution& x)
{
    const Matrix &A = s.q->A, &R_in = s.q->R;
    const Eigen::Index n = A.rows(), m = R_in.cols();
    const double largest = n > 0 ? A.diagonal().maxCoeff() : 0;
    Vector d(n + m);
    for (Eigen::Index k = 0; k < n; ++k) d(k) = 1 / std::sqrt(A(k, k) > 0 ? A(k, k) : largest > 0 ? largest : 1);
    Matrix M = Matrix::Zero(n + m, n + m);
    M.topLeftCorner(n, n) = d.head(n).asDiagonal() * A * d.head(n).asDiagonal();
    const Matrix R = d.head(n).asDiagonal() * R_in;
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

DenseSolution solve_dense(const JointProblem& p, const std::vector<int>& active, JointFactors* kept)
{
    DenseSolution x;
    if (active.empty()) { // nothing to solve: sound without free bodies, otherwise they hang in the air
        x.status = p.R.cols() == 0 ? DenseStatus::solved : DenseStatus::rank_deficient;
        return x;
    }
    const std::shared_ptr<const JointEquations> q = joint_equations(p, active, kept);
    const System s = with_loads(p, active, *q);
    if (solve_definite(s, x)) x.status = DenseStatus::solved;
    else if (free_motions(p, active).cols() > 0) x.status = DenseStatus::rank_deficient;
    else if (solve_saddle(s, x)) x.status = DenseStatus::solved;
    if (x.status == DenseStatus::solved) x.alpha = x.alpha.cwiseProduct(p.scale).eval();
    return x;
}

} // namespace thinskin::fem
