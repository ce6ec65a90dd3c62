// Natural frequencies (theory FE-24). Shift below zero: K + s M of every body is positive definite, free or held, so the bodies are
// factored alone as in statics and the joints are condensed the same way; no rigid coordinates are needed.
#include "fem/modes.h"

#include "fem/modes_system.h"

#include <Spectra/SymGEigsShiftSolver.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace thinskin::fem {
namespace {

constexpr double accuracy = 1e-8;            // of 1 / (omega^2 + s)
constexpr Eigen::Index dense_size = 60;      // below: no iteration
constexpr int most_rounds = 12;

/// What has been found so far; nu = 1 / (omega^2 + s), vectors with x^T M x = 1.
struct Found { std::vector<double> nu; std::vector<Vector> x; };

/// The shifted inverse without the vectors found: they become vectors of the eigenvalue zero.
struct Inverse {
    using Scalar = double;
    const ModesSystem& system;
    const Found& found;
    [[nodiscard]] Eigen::Index rows() const { return system.size(); }
    [[nodiscard]] Eigen::Index cols() const { return system.size(); }
    void set_shift(double) {}
    void perform_op(const double* in, double* out) const
    {
        const Eigen::Map<const Vector> f(in, rows());
        Vector x = system.solve(f);
        for (std::size_t k = 0; k < found.x.size(); ++k) x -= found.nu[k] * found.x[k].dot(f) * found.x[k];
        Eigen::Map<Vector>(out, rows()) = x;
    }
};

struct Mass {
    using Scalar = double;
    const ModesSystem& system;
    [[nodiscard]] Eigen::Index rows() const { return system.size(); }
    [[nodiscard]] Eigen::Index cols() const { return system.size(); }
    void perform_op(const double* in, double* out) const
    {
        Eigen::Map<Vector>(out, rows()).noalias() = system.mass().transpose() * Eigen::Map<const Vector>(in, rows()); // symmetric: rows instead of columns
    }
};

/// A start with a part in every mode, the same on every run.
Vector start_vector(const Inverse& inverse, std::uint32_t seed)
{
    Vector x(inverse.rows()), y(inverse.rows());
    for (double& v : x) {
        seed = seed * 1664525U + 1013904223U;
        v = static_cast<double>(seed >> 8) / 16777216.0 - 0.5;
    }
    const Vector f = inverse.system.mass() * x;
    inverse.perform_op(f.data(), y.data());
    return y;
}

/// The largest nu left. A single Lanczos run sees one vector of a repeated eigenvalue, so the caller runs it until nothing new comes.
bool search(const ModesSystem& system, int count, std::uint32_t seed, Found& found)
{
    Inverse inverse{system, found};
    Mass mass{system};
    const int wanted = std::min<int>(count, static_cast<int>(system.size()) - 1);
    const int space = std::min<int>(std::max(2 * wanted + 6, 12), static_cast<int>(system.size()));
    Spectra::SymGEigsShiftSolver<Inverse, Mass, Spectra::GEigsMode::ShiftInvert> solver(inverse, mass, wanted, space, -system.shift());
    const Vector start = start_vector(inverse, seed);
    if (!(start.dot(system.mass() * start) > 0)) return true; // nothing with mass is left
    solver.init(start.data());
    solver.compute(Spectra::SortRule::LargestMagn, 300, accuracy);
    if (solver.info() != Spectra::CompInfo::Successful) return false;
    const Vector values = solver.eigenvalues();
    const Matrix vectors = solver.eigenvectors();
    Found now;
    for (Eigen::Index k = 0; k < values.size(); ++k) {
        Vector x = vectors.col(k);
        const double modal = x.dot(system.mass() * x), nu = 1 / (values(k) + system.shift());
        if (!(modal > 0) || !(nu > 0) || !std::isfinite(nu)) continue; // what is left of vectors already found
        now.x.push_back(x / std::sqrt(modal));
        now.nu.push_back(nu);
    }
    found.nu.insert(found.nu.end(), now.nu.begin(), now.nu.end());
    found.x.insert(found.x.end(), now.x.begin(), now.x.end());
    return true;
}

/// nu of the last mode that will be given; 0 when there are fewer.
double last_wanted(const Found& found, int count)
{
    std::vector<double> sorted = found.nu;
    std::sort(sorted.rbegin(), sorted.rend());
    return static_cast<int>(sorted.size()) < count ? 0 : sorted[static_cast<std::size_t>(count) - 1];
}

bool search_all(const ModesSystem& system, int count, Found& found)
{
    for (int round = 0; round < most_rounds; ++round) {
        const std::size_t before = found.nu.size();
        const double last = last_wanted(found, count);
        if (!search(system, round == 0 ? count : std::min(count, 2), 12345U + static_cast<std::uint32_t>(round), found)) return false;
        if (found.nu.size() == before) return true;
        const double best = *std::max_element(found.nu.begin() + static_cast<std::ptrdiff_t>(before), found.nu.end());
        if (round > 0 && last > 0 && best <= last * (1 - 1e-9)) return true;
    }
    return false;
}

/// M^1/2 A^-1 M^1/2 as a full matrix.
void search_dense(const ModesSystem& system, Found& found)
{
    const Eigen::SelfAdjointEigenSolver<Matrix> mass{Matrix(system.mass())};
    const Vector root = mass.eigenvalues().cwiseMax(0).cwiseSqrt();
    const Matrix half = mass.eigenvectors() * root.asDiagonal() * mass.eigenvectors().transpose();
    Matrix inverse(system.size(), system.size());
    for (Eigen::Index k = 0; k < system.size(); ++k) inverse.col(k) = system.solve(Vector::Unit(system.size(), k));
    Matrix S = half * inverse * half;
    S = (0.5 * (S + S.transpose())).eval();
    const Eigen::SelfAdjointEigenSolver<Matrix> solver(S);
    for (Eigen::Index k = system.size() - 1; k >= 0; --k) {
        const double nu = solver.eigenvalues()(k);
        if (!(nu > 1e-12 * solver.eigenvalues()(system.size() - 1))) break;
        const Vector x = inverse * (half * solver.eigenvectors().col(k));
        const double modal = x.dot(system.mass() * x);
        if (!(modal > 0)) break;
        found.nu.push_back(nu);
        found.x.push_back(x / std::sqrt(modal));
    }
}

Modes collect(const ModesSystem& system, const Found& found, int count)
{
    Modes out;
    std::vector<std::size_t> order(found.nu.size());
    for (std::size_t k = 0; k < order.size(); ++k) order[k] = k;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return found.nu[a] > found.nu[b]; });
    for (const std::size_t k : order) {
        if (static_cast<int>(out.modes.size()) == count) break;
        out.modes.push_back(system.describe(1 / found.nu[k] - system.shift(), found.x[k]));
        if (out.modes.back().frequency_Hz == 0) ++out.free_motions;
    }
    out.status = ModesStatus::solved;
    for (const Mode& m : out.modes)
        if (!(m.residual <= 1e-4)) {
            out.status = ModesStatus::ill_conditioned;
            out.where = "the shapes do not satisfy their equations (residual " + std::to_string(m.residual) + ")";
        }
    return out;
}

} // namespace

Modes modes(const Assembly& assembly, const std::vector<char>& active, const std::vector<MassMatrix>& masses, int count)
{
    if (count < 1) throw std::invalid_argument("modes: at least one mode must be wanted");
    if (active.size() != assembly.joints.size()) throw std::invalid_argument("modes: one flag per joint");
    if (masses.size() != assembly.bodies.size()) throw std::invalid_argument("modes: one mass per body");
    ModesSystem system(assembly, active, masses);
    Modes failed;
    failed.status = system.status();
    failed.where = system.where();
    if (failed.status != ModesStatus::solved) return failed;
    Found found;
    if (system.size() <= dense_size) search_dense(system, found);
    else if (!search_all(system, count, found)) {
        failed.status = ModesStatus::not_converged;
        failed.where = "the iteration for the lowest frequencies did not converge";
        return failed;
    }
    return collect(system, found, count);
}

} // namespace thinskin::fem
