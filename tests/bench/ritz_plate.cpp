// Spectral Ritz solution of the plate: the reference of the four pads.
#include "bench/plate_problem.h"
#include "fem/types.h"

#include <Eigen/SparseCholesky>

#include <array>
#include <cmath>

namespace thinskin::bench {
namespace {

/// Legendre polynomials 0 .. count-1 and their first two derivatives at x.
std::array<std::vector<double>, 3> legendre(int count, double x)
{
    std::array<std::vector<double>, 3> P;
    for (auto& p : P) p.assign(static_cast<std::size_t>(count), 0.0);
    P[0][0] = 1;
    P[0][1] = x;
    P[1][1] = 1;
    for (std::size_t k = 1; k + 1 < P[0].size(); ++k) {
        const double c = static_cast<double>(2 * k + 1), kk = static_cast<double>(k);
        P[0][k + 1] = (c * x * P[0][k] - kk * P[0][k - 1]) / (kk + 1);
        P[1][k + 1] = P[1][k - 1] + c * P[0][k];
        P[2][k + 1] = P[2][k - 1] + c * P[1][k];
    }
    return P;
}

/// Clamped at x = -1 and 1: P_k - 2 (2k+5)/(2k+7) P_(k+2) + (2k+3)/(2k+7) P_(k+4), with derivatives; one column per derivative.
fem::Matrix clamped(int n, double x)
{
    const auto P = legendre(n + 4, x);
    fem::Matrix value(n, 3);
    for (int k = 0; k < n; ++k)
        for (int d = 0; d < 3; ++d) {
            const auto& p = P[static_cast<std::size_t>(d)];
            const auto i = static_cast<std::size_t>(k);
            value(k, d) = p[i] - 2.0 * (2 * k + 5) / (2 * k + 7) * p[i + 2] + (2.0 * k + 3) / (2 * k + 7) * p[i + 4];
        }
    return value;
}

/// Gauss points and weights on -1 .. 1 by Newton's method on the Legendre polynomial.
std::vector<std::array<double, 2>> gauss(int n)
{
    std::vector<std::array<double, 2>> points;
    for (int i = 0; i < n; ++i) {
        double x = std::cos(M_PI * (i + 0.75) / (n + 0.5)), slope = 1;
        for (int step = 0; step < 20; ++step) {
            const auto P = legendre(n + 1, x);
            slope = P[1][static_cast<std::size_t>(n)];
            x -= P[0][static_cast<std::size_t>(n)] / slope;
        }
        points.push_back({x, 2 / ((1 - x * x) * slope * slope)});
    }
    return points;
}

/// Mean of the functions over a length `side` about x in 0 .. 1.
fem::Vector mean(int n, double x, double side)
{
    if (side <= 0) return clamped(n, 2 * x - 1).col(0);
    fem::Vector sum = fem::Vector::Zero(n);
    for (const auto& g : gauss(n / 2 + 8)) sum += g[1] / 2 * clamped(n, 2 * x - 1 + g[0] * side).col(0);
    return sum;
}

} // namespace

double ritz_work(const PlateProblem& problem, int n)
{
    fem::Matrix A = fem::Matrix::Zero(n, n), B = A, C = A; // second derivatives, functions, first derivatives on the unit length
    for (const auto& g : gauss(n + 8)) {
        const fem::Matrix v = clamped(n, g[0]);
        A += 8 * g[1] * v.col(2) * v.col(2).transpose();
        B += g[1] / 2 * v.col(0) * v.col(0).transpose();
        C += 2 * g[1] * v.col(1) * v.col(1).transpose();
    }
    // Clamped all round: the energy is that of the Laplacian squared. These functions leave few entries.
    std::vector<Eigen::Triplet<double>> entries;
    for (int i = 0; i < n; ++i)
        for (int j = 0; j < n; ++j) {
            if (std::abs(i - j) > 4) continue;
            for (int k = 0; k < n; ++k)
                for (int l = 0; l < n; ++l)
                    if (std::abs(k - l) <= 4) entries.emplace_back(i * n + k, j * n + l, A(i, j) * B(k, l) + B(i, j) * A(k, l) + 2 * C(i, j) * C(k, l));
        }
    fem::Sparse K(n * n, n * n);
    K.setFromTriplets(entries.begin(), entries.end());
    fem::Vector f = fem::Vector::Zero(n * n);
    for (const Pad& p : problem.pads) {
        const fem::Vector x = mean(n, p.x, p.side), y = mean(n, p.y, p.side);
        for (int i = 0; i < n; ++i) f.segment(i * n, n) += p.force * x(i) * y;
    }
    return f.dot(Eigen::SimplicialLDLT<fem::Sparse>(K).solve(f));
}

} // namespace thinskin::bench
