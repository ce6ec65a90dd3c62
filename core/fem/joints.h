#pragma once
#include "fem/body.h"

#include <optional>
#include <stop_token>

namespace thinskin::fem {

/// tie: both signs, compliance >= 0. contact: pushes only. strap: pulls only.
enum class Law { tie, contact, strap };

/// A joint between two ports. Elongation e = row_a . u_a - row_b . u_b. The force lambda > 0 pulls the two together:
/// it acts with -lambda on a and +lambda on b along the ports. A contact is on when lambda <= 0 (a is on the positive
/// side of b and pushed against it), a strap when lambda >= 0. body < 0 = the ground.
///     tie     e = compliance * lambda
///     contact e + gap >= compliance * lambda, lambda <= 0     gap >= 0: closes after moving that far
///     strap   e - gap <= compliance * lambda, lambda >= 0     gap = slack
struct PortRef {
    int body = -1;
    Row row;
    Footprint where{};                      ///< on a skin: what the row is spread over, and its direction
    SkinDirection along = SkinDirection::z;
};
struct Joint {
    std::string name;
    PortRef a, b;
    Law law = Law::tie;
    double compliance = 0;               ///< mm/N
    double gap = 0;                      ///< mm
    bool skin_normal = false;            ///< one of its ports is the skin's z: dropped when the skin's bending counts for nothing
};

struct Assembly { std::vector<const Body*> bodies; std::vector<Joint> joints; };

/// One unit load: a load vector per body (empty = none), over all dofs of that body (6 for a rigid one).
struct UnitLoad { std::vector<Vector> on_body; };

/// F + C, R and its parts (architecture: everything condensed to joint forces).
struct Condensed {
    Matrix F;                            ///< flexibility between joints, all bodies
    Matrix F_skin;                       ///< the part of F from body `skin_body` between skin_normal joints (zero elsewhere)
    Vector compliance;
    Matrix R;                            ///< joints x rigid coordinates of the free bodies: e = R alpha
    std::vector<int> rigid_body;         ///< body index per group of six columns of R
    int skin_body = -1;
};

/// Keeps L^-1 b by (body identity, row); same bits warm or cold. Not thread safe.
class ColumnCache {
public:
    ColumnCache();
    ~ColumnCache();
    ColumnCache(ColumnCache&&) noexcept;
    ColumnCache& operator=(ColumnCache&&) noexcept;
    struct Impl;
    Impl& impl() { return *impl_; }
private:
    std::unique_ptr<Impl> impl_;
};

[[nodiscard]] Condensed condense(const Assembly& assembly, int skin_body, ColumnCache& cache);

/// Free motion at the joints of every unit load (joints x unit loads) and the loads on the rigid coordinates.
struct Free {
    Matrix elongation;
    Matrix rigid_load;
    Matrix elongation_skin;              ///< the part of `elongation` from the skin at skin_normal joints
    std::vector<std::vector<Vector>> motion; ///< motion[load][body], all dofs
};
[[nodiscard]] Free free_motion(const Assembly& assembly, const Condensed& condensed, const std::vector<UnitLoad>& loads);

/// not_converged, buckled, stopped: of the large-deflection solution only (large.h).
enum class SolveStatus { solved, mechanism, no_contact_state, ill_conditioned, not_converged, buckled, stopped };

struct JointState {
    SolveStatus status = SolveStatus::ill_conditioned;
    std::string where;                   ///< mechanism: "bracket left is free to turn about x through (150, 740, 0)"
    Vector lambda;                       ///< per joint
    Vector alpha;                        ///< rigid coordinates
    std::vector<char> active;            ///< per joint
    int passes = 0;
    double residual = 0;                 ///< relative, of the dense system
};

/// Factors of the joints' equations, kept by which joints are on: for many load cases of one `Condensed` and one skin_bending, and of
/// nothing else. The same bits as without. Not thread safe.
class JointFactors {
public:
    JointFactors();
    ~JointFactors();
    JointFactors(JointFactors&&) noexcept;
    JointFactors& operator=(JointFactors&&) noexcept;
    struct Impl;
    Impl& impl() { return *impl_; }
private:
    std::unique_ptr<Impl> impl_;
};

/// skin_bending: 1 as is, 3 = the skin's bending flexibility divided by 3, 0 = skin_normal joints dropped.
[[nodiscard]] JointState solve_joints(const Assembly& assembly, const Condensed& condensed, const Free& free, const Vector& load_factors,
                                      const std::vector<char>& start, double skin_bending = 1, JointFactors* kept = nullptr);

struct Recovered {
    Vector u;                            ///< all dofs of the body
    Vector support;                      ///< reactions on supported dofs of a held body, from K u - f (zero elsewhere)
    Eigen::Matrix<double, 6, 1> applied; ///< resultant of loads and joint forces (force, moment about the origin)
    Eigen::Matrix<double, 6, 1> reaction;///< resultant of the supports
    double residual = 0;                 ///< |K u - f| at unsupported dofs over the largest |f|
};
/// Fields of one body under a combination of unit loads and the joint forces; residual from K u, not from F.
[[nodiscard]] Recovered recover(const Assembly& assembly, int body, const std::vector<UnitLoad>& loads, const Vector& load_factors,
                                const Free& free, const JointState& state);
/// Of one body in several states at once: the same, quicker.
[[nodiscard]] std::vector<Recovered> recover(const Assembly& assembly, int body, const std::vector<UnitLoad>& loads, const std::vector<const Vector*>& load_factors,
                                             const Free& free, const std::vector<const JointState*>& states);

} // namespace thinskin::fem
