#include "fem/joint_system.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace thinskin::fem {
namespace {

constexpr int block_passes = 12;         // all violators at once; after that one at a time, by index (finite for definite F + C)
constexpr double tolerance = 1e-9;       // of the largest force or elongation

JointProblem make_problem(const Assembly& assembly, const Condensed& c, const Free& free, const Vector& factors, double skin_bending)
{
    const auto n = static_cast<Eigen::Index>(assembly.joints.size());
    JointProblem p{&assembly, c.F, c.compliance, free.elongation * factors, Vector::Zero(n), c.R, free.rigid_load * factors, Vector::Ones(c.R.cols()),
                   std::vector<char>(assembly.joints.size(), 0)};
    if (skin_bending != 0 && skin_bending != 1) {                                                      // theory FE-17
        p.F -= (1 - 1 / skin_bending) * c.F_skin;
        p.elongation -= (1 - 1 / skin_bending) * (free.elongation_skin * factors);
    }
    for (std::size_t k = 0; k < assembly.joints.size(); ++k) {
        const Joint& j = assembly.joints[k];
        p.dropped[k] = skin_bending == 0 && j.skin_normal;
        p.shift(static_cast<Eigen::Index>(k)) = j.law == Law::contact ? j.gap : j.law == Law::strap ? -j.gap : 0;
    }
    for (Eigen::Index k = 0; k < c.R.cols(); ++k)
        if (const double largest = c.R.rows() > 0 ? c.R.col(k).cwiseAbs().maxCoeff() : 0; largest > 0) p.scale(k) = 1 / largest;
    return p;
}

bool finite(const JointProblem& p)
{
    return p.F.allFinite() && p.compliance.allFinite() && p.elongation.allFinite() && p.R.allFinite() && p.rigid_load.allFinite();
}

class ActiveSet {
public:
    ActiveSet(const JointProblem& problem, const std::vector<int>& bodies, const std::vector<char>& start, JointFactors* factors) : p(problem), rigid_body(bodies), kept(factors)
    {
        const std::size_t n = p.assembly->joints.size();
        state.active.assign(n, 1);
        for (std::size_t k = 0; k < n; ++k) {
            if (p.assembly->joints[k].law != Law::tie && !start.empty()) state.active[k] = start[k] != 0;
            if (p.dropped[k]) state.active[k] = 0;
        }
    }

    JointState run()
    {
        const int most = block_passes + 50 + 4 * static_cast<int>(state.active.size());
        for (state.passes = 1; state.passes <= most; ++state.passes) {
            list_active();
            const DenseSolution x = solve_dense(p, active, kept);
            if (x.status == DenseStatus::failed || (x.status == DenseStatus::solved && !finite_solution(x))) return give_up(x);
            if (x.status == DenseStatus::rank_deficient) {
                if (!close_along_free_motion()) return state;
                continue;
            }
            take(x);
            if (!flip_violators()) return state.status = SolveStatus::solved, state;
        }
        state.status = SolveStatus::no_contact_state;
        state.where = "the contacts and straps did not settle";
        return state;
    }

private:
    const JointProblem& p;
    const std::vector<int>& rigid_body;
    JointFactors* kept;
    JointState state;
    std::vector<int> active;
    double force_tolerance = 0, gap_tolerance = 0;
    Vector elongation;

    [[nodiscard]] static bool finite_solution(const DenseSolution& x)
    {
        return x.lambda.allFinite() && x.alpha.allFinite() && std::isfinite(x.residual);
    }

    void list_active()
    {
        active.clear();
        for (std::size_t k = 0; k < state.active.size(); ++k)
            if (state.active[k]) active.push_back(static_cast<int>(k));
    }

    JointState give_up(const DenseSolution& x)
    {
        state.status = SolveStatus::ill_conditioned;
        state.residual = x.residual;
        state.where = "joint equations: joints that repeat each other without compliance, or figures too far apart";
        return state;
    }

    void take(const DenseSolution& x)
    {
        const auto n = static_cast<Eigen::Index>(state.active.size());
        state.lambda = Vector::Zero(n);
        for (std::size_t k = 0; k < active.size(); ++k) state.lambda(active[k]) = x.lambda(static_cast<Eigen::Index>(k));
        state.alpha = x.alpha;
        state.residual = x.residual;
        const Vector elastic = p.F * state.lambda, rigid = p.R * state.alpha;
        elongation = p.elongation - elastic + rigid;                                                   // theory FE-11
        force_tolerance = tolerance * largest(state.lambda);
        gap_tolerance = tolerance * std::max({largest(elastic), largest(rigid), largest(p.elongation), largest(p.shift)});
    }

    [[nodiscard]] static double largest(const Vector& v) { return v.size() == 0 ? 0 : v.cwiseAbs().maxCoeff(); }

    /// Contact: push <= 0 when on, no overlap when off; strap: the mirror image (theory FE-12).
    [[nodiscard]] bool violated(std::size_t k) const
    {
        const Law law = p.assembly->joints[k].law;
        if (law == Law::tie || p.dropped[k]) return false;
        const auto i = static_cast<Eigen::Index>(k);
        const double sign = law == Law::contact ? 1 : -1;
        return state.active[k] ? sign * state.lambda(i) > force_tolerance : sign * (elongation(i) + p.shift(i)) < -gap_tolerance;
    }

    bool flip_violators()
    {
        bool any = false;
        for (std::size_t k = 0; k < state.active.size(); ++k) {
            if (!violated(k)) continue;
            state.active[k] = !state.active[k];
            any = true;
            if (state.passes > block_passes) break;
        }
        return any;
    }

    /// Nothing resists some rigid motion: lets the load start it and closes every contact and strap it runs into. False: a mechanism.
    bool close_along_free_motion()
    {
        const Matrix basis = free_motions(p, active);
        const Vector load = p.rigid_load.cwiseProduct(p.scale), along = basis.transpose() * load;
        bool closed = false;
        if (along.norm() > tolerance * load.norm()) closed = close_along(basis * along / along.norm());
        if (closed) return true;
        state.status = SolveStatus::mechanism;
        state.where = mechanism_words(p, rigid_body, basis);
        state.lambda.resize(0);
        state.alpha.resize(0);
        return false;
    }

    bool close_along(const Vector& motion)
    {
        const Vector rate = p.R * motion.cwiseProduct(p.scale);
        bool any = false;
        for (std::size_t k = 0; k < state.active.size(); ++k) {
            const Law law = p.assembly->joints[k].law;
            if (state.active[k] || law == Law::tie || p.dropped[k]) continue;
            const double closing = (law == Law::contact ? -1 : 1) * rate(static_cast<Eigen::Index>(k));
            if (closing > 1e-7) state.active[k] = 1, any = true;
        }
        return any;
    }
};

} // namespace

JointState solve_joints(const Assembly& assembly, const Condensed& condensed, const Free& free, const Vector& load_factors,
                        const std::vector<char>& start, double skin_bending, JointFactors* kept)
{
    const std::size_t n = assembly.joints.size();
    if (condensed.F.rows() != static_cast<Eigen::Index>(n) || free.elongation.rows() != condensed.F.rows() || load_factors.size() != free.elongation.cols())
        throw std::invalid_argument("solve_joints: the parts do not belong together");
    if (!start.empty() && start.size() != n) throw std::invalid_argument("solve_joints: one start flag per joint, or none");
    if (!(skin_bending >= 0) || !std::isfinite(skin_bending)) throw std::invalid_argument("solve_joints: skin_bending must be 0 or positive");
    const JointProblem p = make_problem(assembly, condensed, free, load_factors, skin_bending);
    if (!finite(p)) {
        JointState state;
        state.where = "a load, flexibility or compliance is not a number";
        return state;
    }
    return ActiveSet(p, condensed.rigid_body, start, kept).run();
}

} // namespace thinskin::fem
