#include "fem/buckling_lanczos.h"

#include <cmath>
#include <optional>

namespace thinskin::fem {
namespace {

constexpr int most_steps = 150;
constexpr double accuracy = 2e-3;        // residual of the pair; the factor's own error goes with its square
constexpr int first_room = 16;           // columns of the basis; more only where the iteration asks for them
constexpr double no_compression = 1e-9;  // largest over smallest eigenvalue below which nothing is pressed

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
    void step(Vector q, int most);
    [[nodiscard]] auto last() const { return basis.col(static_cast<Eigen::Index>(diagonal.size())); }

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

void Iteration::step(Vector q, int most)
{
    const auto k = static_cast<int>(diagonal.size());
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

/// Iterations that run side by side, up to as many as go through the factor at once.
template <int Width> class Group {
public:
    Group(const Factor& factor, const PressedSheet& sheet, std::vector<Iteration*> members) : f(factor), sheet_(sheet), all(std::move(members)), x(Several<Width>::Pieces::Zero(Width, factor.size()))
    {
        std::vector<const ForceField*> of;
        for (const Iteration* i : all) of.push_back(i->field);
        fields = beside_each_other<Width>(of, 0, static_cast<Eigen::Index>(of.size()));
    }

    /// One step takes out of a start what has no part in buckling.
    void start(const Vector& from, int most)
    {
        for (std::size_t i = 0; i < all.size(); ++i) row(i) = from.transpose().array();
        operate();
        for (std::size_t i = 0; i < all.size(); ++i) all[i]->start(row(i).matrix().transpose(), most);
    }

    /// Those that are settled stay as zeros.
    void step(int most)
    {
        x.setZero();
        for (std::size_t i = 0; i < all.size(); ++i)
            if (!all[i]->mu) row(i) = all[i]->last().transpose().array();
        operate();
        for (std::size_t i = 0; i < all.size(); ++i)
            if (!all[i]->mu) all[i]->step(row(i).matrix().transpose(), most);
    }

private:
    const Factor& f;
    const PressedSheet& sheet_;
    std::vector<Iteration*> all;
    typename Several<Width>::Pieces fields, x;

    auto row(std::size_t i) { return x.row(static_cast<Eigen::Index>(i)); }

    /// x <- G^-1 (-K_g) G^-T x with K = G G^T: symmetric, its largest eigenvalue is one over the factor.
    void operate()
    {
        f.backward(x);
        x = press(sheet_, fields, x);
        f.forward(x);
    }
};

std::vector<Iteration*> open_ones(std::vector<Iteration*> all)
{
    std::erase_if(all, [](const Iteration* i) { return i->mu.has_value(); });
    return all;
}

template <int Width> void start(const Factor& f, const PressedSheet& sheet, const std::vector<Iteration*>& all, int most) { Group<Width>(f, sheet, all).start(start_vector(f), most); }

/// Until at most `few` of them are open.
template <int Width> void iterate(const Factor& f, const PressedSheet& sheet, const std::vector<Iteration*>& all, std::size_t few, int most)
{
    if (all.empty()) return;
    Group<Width> group(f, sheet, all);
    while (open_ones(all).size() > few) group.step(most);
}

} // namespace

std::vector<double> largest_eigenvalues(const Factor& f, const PressedSheet& sheet, const std::vector<ForceField>& fields)
{
    const int most = std::min(most_steps, f.size());
    std::vector<Iteration> all(fields.size());
    for (std::size_t i = 0; i < all.size(); ++i) all[i].field = &fields[i];
    by_eights(static_cast<Eigen::Index>(all.size()), [&]<int Width>(Several<Width>, Eigen::Index first, Eigen::Index count) {
        std::vector<Iteration*> these;
        for (Eigen::Index i = 0; i < count; ++i) these.push_back(&all[static_cast<std::size_t>(first + i)]);
        start<Width>(f, sheet, these, most);
        if (Width == 8) iterate<8>(f, sheet, open_ones(these), 4, most);
        iterate<4>(f, sheet, open_ones(these), 0, most);
    });
    std::vector<double> out;
    for (const Iteration& i : all) out.push_back(i.mu.value_or(std::nan("")));
    return out;
}

} // namespace thinskin::fem
