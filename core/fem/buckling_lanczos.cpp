#include "fem/buckling_lanczos.h"

#include <cmath>
#include <optional>

namespace thinskin::fem {
namespace {

constexpr int most_steps = 150;
constexpr double accuracy = 2e-3;        // residual of the pair; the factor's own error goes with its square
constexpr int first_room = 16;           // columns of the basis; more only where the iteration asks for them
constexpr double no_compression = 1e-9;  // largest over smallest eigenvalue below which nothing is pressed

using Fields = std::vector<const ForceField*>; ///< one for each column

/// Y = G^-1 (-K_g) G^-T X with K = G G^T: symmetric, its largest eigenvalue is one over the factor.
Matrix operate(const Factor& f, const PressedSheet& sheet, const Fields& fields, Matrix X)
{
    f.backward(X);
    Matrix Y = press(sheet, fields, X);
    f.forward(Y);
    return Y;
}

/// A start with a part in every mode, the same on every run.
Vector start_vector(const Factor& f)
{
    Vector x(f.size());
    std::uint32_t seed = 12345;
    for (double& v : x) {
        seed = seed * 1664525U + 1013904223U;
        v = static_cast<double>(seed >> 8) / 16777216.0 - 0.5;
    }
    return x;
}

/// The iteration of one K_g.
struct Iteration {
    const ForceField* field = nullptr;
    Matrix basis;
    std::vector<double> diagonal, side;
    std::optional<double> mu;

    void start(const Vector& q, int most);
    void step(int k, Vector q, int most);

private:
    void look(int k, double beta, bool last);
};

void Iteration::start(const Vector& q, int most)
{
    const double beta = q.norm();
    if (!(beta > 0)) mu = beta == 0 ? 0 : std::nan("");
    else {
        basis.resize(q.size(), std::min(most, first_room) + 1);
        basis.col(0) = q / beta;
    }
}

/// What stands after step k: settled when the residual is small, when nothing is pressed, or when nothing more can come.
void Iteration::look(int k, double beta, bool last)
{
    Eigen::SelfAdjointEigenSolver<Matrix> ritz;
    ritz.computeFromTridiagonal(Eigen::Map<const Vector>(diagonal.data(), k + 1), Eigen::Map<const Vector>(side.data(), k));
    const double top = ritz.eigenvalues()(k), lowest = ritz.eigenvalues()(0);
    const double residual = beta * std::abs(ritz.eigenvectors()(k, k));
    if (top > 0 && residual <= accuracy * top) mu = top;
    else if (top <= no_compression * std::abs(lowest) && (last || residual <= no_compression * std::abs(lowest))) mu = 0;
    else if (last) mu = beta <= 1e-14 * std::abs(diagonal.front()) && top > 0 ? top : std::nan("");
}

void Iteration::step(int k, Vector q, int most)
{
    const auto known = basis.leftCols(k + 1);
    diagonal.push_back(basis.col(k).dot(q));
    q -= diagonal.back() * basis.col(k);
    if (k > 0) q -= side.back() * basis.col(k - 1);
    q -= known * (known.transpose() * q).eval(); // what rounding left
    const double beta = q.norm();
    const bool last = k + 1 == most || beta <= 1e-14 * std::abs(diagonal.front());
    if (!std::isfinite(beta)) mu = beta - beta;
    else if (k >= 3 || last) look(k, beta, last);
    if (mu) return;
    if (basis.cols() < k + 2) basis.conservativeResize(Eigen::NoChange, std::min(most + 1, 2 * (k + 1)));
    basis.col(k + 1) = q / beta;
    side.push_back(beta);
}

} // namespace

std::vector<double> largest_eigenvalues(const Factor& f, const PressedSheet& sheet, const std::vector<ForceField>& fields)
{
    const int most = std::min(most_steps, f.size());
    std::vector<Iteration> all(fields.size());
    std::vector<Iteration*> open;
    Fields of_open;
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i].field = &fields[i];
        open.push_back(&all[i]);
        of_open.push_back(&fields[i]);
    }
    const Matrix first = operate(f, sheet, of_open, start_vector(f).replicate(1, static_cast<Eigen::Index>(all.size()))); // one step takes out what has no part in buckling
    for (std::size_t i = 0; i < all.size(); ++i) all[i].start(first.col(static_cast<Eigen::Index>(i)), most);
    for (int k = 0; k < most; ++k) {
        std::erase_if(open, [](const Iteration* i) { return i->mu.has_value(); });
        if (open.empty()) break;
        of_open.clear();
        Matrix X(f.size(), static_cast<Eigen::Index>(open.size()));
        for (std::size_t i = 0; i < open.size(); ++i) {
            of_open.push_back(open[i]->field);
            X.col(static_cast<Eigen::Index>(i)) = open[i]->basis.col(k);
        }
        const Matrix Y = operate(f, sheet, of_open, std::move(X));
        for (std::size_t i = 0; i < open.size(); ++i) open[i]->step(k, Y.col(static_cast<Eigen::Index>(i)), most);
    }
    std::vector<double> out;
    for (const Iteration& i : all) out.push_back(i.mu.value_or(std::nan("")));
    return out;
}

} // namespace thinskin::fem
