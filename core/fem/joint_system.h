#pragma once
#include "fem/factor.h"
#include "fem/joints.h"

#include <array>

/// Internal to core/fem: one side of a joint, and the dense system of one active set.
namespace thinskin::fem {

/// Elongation e = sum over sides of sign * row . u (theory FE-11).
struct Side { int body = -1; double sign = 1; const Row* row = nullptr; };
[[nodiscard]] inline std::array<Side, 2> sides(const Joint& j) { return {{{j.a.body, 1.0, &j.a.row}, {j.b.body, -1.0, &j.b.row}}}; }

/// Row times the rigid modes of a body: what the port does when the body moves as one.
[[nodiscard]] Eigen::Matrix<double, 1, 6> rigid_row(const Body& body, const Row& row);

/// Throws std::invalid_argument when a joint names a body or dof that is not there, or has no sense.
void check_assembly(const Assembly& assembly);

/// condense() without the flexibility of one body (-1: with all), and that body's flexibility added later.
[[nodiscard]] Condensed condense_without(const Assembly& assembly, int skin_body, int left_out, ColumnCache& cache);

/// One joint side on a body, with its column; F_ij = y_i . y_j (theory FE-6).
struct Touch { int joint = 0; double sign = 1; bool normal = false; std::shared_ptr<const Column> column; };
/// Of every joint side on one body, in joint order.
[[nodiscard]] std::vector<Touch> touches(const Assembly& assembly, int body, ColumnCache& cache);
/// Adds the flexibility of the body that the touches are on.
void add_flexibility(const std::vector<Touch>& touches, bool is_skin, Condensed& condensed);

/// Everything solve_joints needs for one load case: (F + C) lambda - R alpha = e + shift, R^T lambda = f.
struct JointProblem {
    const Assembly* assembly = nullptr;
    Matrix F;                            ///< with the skin's part scaled
    Vector compliance, elongation, shift;///< shift: + gap for contact, - gap for strap, 0 for tie
    Matrix R;
    Vector rigid_load;
    Vector scale;                        ///< per column of R, so that its largest entry is 1
    std::vector<char> dropped;
};

/// One set of active joints without its loads: A = F + C, columns of R scaled, both as far as they can be factored by Cholesky.
struct JointEquations {
    Matrix A, R, X;                      ///< X = L^-1 R with A = L L^T
    Eigen::LLT<Matrix> chol, rigid;      ///< of A, and of d S d with S = R^T A^-1 R
    Vector d;
    bool definite = false;               ///< both are safely positive definite
};
/// kept: null, or the factors of this problem's F, C and R.
[[nodiscard]] std::shared_ptr<const JointEquations> joint_equations(const JointProblem& p, const std::vector<int>& active, JointFactors* kept);

enum class DenseStatus { solved, rank_deficient, failed };
struct DenseSolution { DenseStatus status = DenseStatus::failed; Vector lambda, alpha; double residual = 0; }; ///< lambda over the active list
[[nodiscard]] DenseSolution solve_dense(const JointProblem& p, const std::vector<int>& active, JointFactors* kept);

/// Orthonormal basis of the rigid motions (scaled columns) that no active joint resists.
[[nodiscard]] Matrix free_motions(const JointProblem& p, const std::vector<int>& active);
/// "bracket left is free to turn about x through (150, 740, 0)"
[[nodiscard]] std::string mechanism_words(const JointProblem& p, const std::vector<int>& rigid_body, const Matrix& basis);

} // namespace thinskin::fem
