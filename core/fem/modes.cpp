// Natural frequencies (theory FE-24). Shift below zero: K + s M of every body is positive definite, free or held, so the bodies are
// factored alone as in statics and the joints are condensed the same way; no rigid coordinates are needed.
#include "fem/modes.h"

#include "fem/modes_lanczos.h"

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace thinskin::fem {
namespace {

constexpr double accuracy = 1e-6;            // of the pair; the frequency's own error goes with its square where it stands apart from its neighbours
constexpr double first_look = 1e-4;          // the same where it is only asked whether anything is left
constexpr Eigen::Index dense_size = 60;      // below: no iteration
constexpr int most_rounds = 12;

/// nu of the last mode that will be given; 0 when there are fewer.
double last_wanted(const Found& found, int count)
{
    std::vector<double> sorted = found.nu;
    std::sort(sorted.rbegin(), sorted.rend());
    return static_cast<int>(sorted.size()) < count ? 0 : sorted[static_cast<std::size_t>(count) - 1];
}

std::uint32_t seed_of(int round) { return 12345U + static_cast<std::uint32_t>(round); }

/// Is what is left of the modes certainly beyond the last wanted one? A rough look, ten times closer than what it decides on.
bool nothing_left(const ModesSystem& system, int round, double last, const Found& found)
{
    Found rough = found;
    if (last == 0 || !search(system, 2, seed_of(round), first_look, rough)) return false;
    if (rough.nu.size() == found.nu.size()) return false;
    return *std::max_element(rough.nu.begin() + static_cast<std::ptrdiff_t>(found.nu.size()), rough.nu.end()) < last * (1 - 10 * first_look);
}

bool search_all(const ModesSystem& system, int count, Found& found)
{
    for (int round = 0; round < most_rounds; ++round) {
        const std::size_t before = found.nu.size();
        const double last = last_wanted(found, count);
        if (round > 0 && nothing_left(system, round, last, found)) return true;
        if (!search(system, round == 0 ? count : std::min(count, 2), seed_of(round), accuracy, found)) return false;
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

bool find(const ModesSystem& system, int count, Found& found)
{
    if (system.size() > dense_size) return search_all(system, count, found);
    search_dense(system, found);
    return true;
}

Modes lowest(const ModesSystem& system, int count)
{
    Found found;
    if (find(system, count, found)) return collect(system, found, count);
    Modes failed;
    failed.where = "the iteration for the lowest frequencies did not converge";
    return failed;
}

void check_arguments(const Assembly& assembly, const std::vector<char>& active, const std::vector<MassMatrix>& masses, int count)
{
    if (count < 1) throw std::invalid_argument("modes: at least one mode must be wanted");
    if (active.size() != assembly.joints.size()) throw std::invalid_argument("modes: one flag per joint");
    if (masses.size() != assembly.bodies.size()) throw std::invalid_argument("modes: one mass per body");
}

/// `first` modes, then twice as many, until one is wanted or there are `count`.
Modes look(const Assembly& assembly, const std::vector<char>& active, const std::vector<MassMatrix>& masses, int first, int count, const std::function<bool(const Mode&)>& wanted, ModesCache* cache)
{
    check_arguments(assembly, active, masses, count);
    ModesCache own;
    const ModesSystem system(assembly, active, masses, (cache ? cache : &own)->impl());
    Modes out;
    out.status = system.status();
    out.where = system.where();
    if (out.status != ModesStatus::solved) return out;
    for (int n = std::min(first, count);; n = std::min(2 * n, count)) {
        out = lowest(system, n);
        if (n == count || out.status != ModesStatus::solved || std::any_of(out.modes.begin(), out.modes.end(), wanted)) return out;
    }
}

constexpr int few = 4;

} // namespace

ModesCache::ModesCache() : impl_(std::make_unique<Impl>()) {}
ModesCache::~ModesCache() = default;
ModesCache::ModesCache(ModesCache&&) noexcept = default;
ModesCache& ModesCache::operator=(ModesCache&&) noexcept = default;

Modes modes(const Assembly& assembly, const std::vector<char>& active, const std::vector<MassMatrix>& masses, int count, ModesCache* cache)
{
    return look(assembly, active, masses, count, count, [](const Mode&) { return false; }, cache);
}

Modes modes_until(const Assembly& assembly, const std::vector<char>& active, const std::vector<MassMatrix>& masses, int count, const std::function<bool(const Mode&)>& wanted, ModesCache* cache)
{
    return look(assembly, active, masses, few, count, wanted, cache);
}

} // namespace thinskin::fem
