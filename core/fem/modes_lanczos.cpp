#include "fem/modes_lanczos.h"

#include <Eigen/Eigenvalues>

#include <cmath>

namespace thinskin::fem {
namespace {

constexpr int look_every = 4;                // steps: the small problem costs little, but not nothing
constexpr double nothing = 1e-13;            // of the first nu: no direction is left

/// A start with a part in every mode, the same on every run.
Vector start_vector(Eigen::Index size, std::uint32_t seed)
{
    Vector x(size);
    for (double& v : x) {
        seed = seed * 1664525U + 1013904223U;
        v = static_cast<double>(seed >> 8) / 16777216.0 - 0.5;
    }
    return x;
}

class Lanczos {
public:
    Lanczos(const ModesSystem& system, const Found& found, int most) : system_(system), found_(found), most_(most), V_(system.size(), std::min(most + 1, 16)), MV_(V_.rows(), V_.cols()) {}

    /// False: nothing with mass is left.
    bool start(std::uint32_t seed)
    {
        const Vector x = inverse(mass(start_vector(system_.size(), seed)));
        return push(x, mass(x));
    }

    /// Steps until `count` pairs have settled or nothing is left; false: neither.
    bool run(int count, double tolerance)
    {
        for (int k = 0; k < most_; ++k) {
            const bool more = step();
            if (!std::isfinite(side_.back())) return false;
            if (more && (k % look_every != look_every - 1 || !settled(count, tolerance))) continue;
            if (!more) ritz_of_all();
            return true;
        }
        return false;
    }

    /// The settled pairs; one more step of the inverse takes out what is left of fast motions, which stiffness would blow up.
    void take(int count, Found& found) const
    {
        const auto n = static_cast<Eigen::Index>(diagonal_.size());
        for (Eigen::Index k = n - 1; k >= std::max<Eigen::Index>(0, n - count); --k) {
            const double nu = ritz_.eigenvalues()(k);
            const Vector x = inverse(MV_.leftCols(n) * ritz_.eigenvectors().col(k));
            const double modal = x.dot(mass(x));
            if (!(nu > nothing * diagonal_.front()) || !(modal > 0)) continue; // what is left of vectors already found
            found.x.push_back(x / std::sqrt(modal));
            found.nu.push_back(nu);
        }
    }

private:
    const ModesSystem& system_;
    const Found& found_;
    int most_;
    Matrix V_, MV_;                          ///< the vectors, and M times each
    std::vector<double> diagonal_, side_;
    Eigen::SelfAdjointEigenSolver<Matrix> ritz_;

    [[nodiscard]] Vector mass(const Vector& x) const { return system_.mass().transpose() * x; } // symmetric: rows instead of columns

    /// (K + s M)^-1 f without the vectors found: they become vectors of the eigenvalue zero.
    [[nodiscard]] Vector inverse(const Vector& f) const
    {
        Vector x = system_.solve(f);
        for (std::size_t k = 0; k < found_.x.size(); ++k) x -= found_.nu[k] * found_.x[k].dot(f) * found_.x[k];
        return x;
    }

    bool push(const Vector& x, const Vector& Mx)
    {
        const double square = x.dot(Mx), length = square < 0 ? 0 : std::sqrt(square); // below zero: by rounding
        const auto k = static_cast<Eigen::Index>(diagonal_.size());
        if (k > 0) side_.push_back(length);
        if (!(length > (k > 0 ? nothing * diagonal_.front() : 0))) return false;
        if (V_.cols() < k + 1) {
            V_.conservativeResize(Eigen::NoChange, std::min(most_ + 1, static_cast<int>(k) + 16));
            MV_.conservativeResize(Eigen::NoChange, V_.cols());
        }
        V_.col(k) = x / length;
        MV_.col(k) = Mx / length;
        return true;
    }

    /// One more direction; false: there is none.
    bool step()
    {
        const auto k = static_cast<Eigen::Index>(diagonal_.size());
        Vector x = inverse(MV_.col(k));
        diagonal_.push_back(x.dot(MV_.col(k)));
        for (int twice = 0; twice < 2; ++twice) x -= V_.leftCols(k + 1) * (MV_.leftCols(k + 1).transpose() * x).eval();
        return push(x, mass(x));
    }

    void ritz_of_all()
    {
        const auto n = static_cast<Eigen::Index>(diagonal_.size());
        ritz_.computeFromTridiagonal(Eigen::Map<const Vector>(diagonal_.data(), n), Eigen::Map<const Vector>(side_.data(), n - 1));
    }

    bool settled(int count, double tolerance)
    {
        const auto n = static_cast<Eigen::Index>(diagonal_.size());
        if (n < count) return false;
        ritz_of_all();
        for (Eigen::Index k = n - count; k < n; ++k)
            if (!(side_.back() * std::abs(ritz_.eigenvectors()(n - 1, k)) <= tolerance * ritz_.eigenvalues()(k))) return false;
        return true;
    }
};

} // namespace

bool search(const ModesSystem& system, int count, std::uint32_t seed, double tolerance, Found& found)
{
    Lanczos lanczos(system, found, std::min(10 * count + 100, static_cast<int>(system.size())));
    if (!lanczos.start(seed)) return true;
    if (!lanczos.run(count, tolerance)) return false;
    Found now;
    lanczos.take(count, now);
    found.nu.insert(found.nu.end(), now.nu.begin(), now.nu.end());
    found.x.insert(found.x.end(), now.x.begin(), now.x.end());
    return true;
}

} // namespace thinskin::fem
