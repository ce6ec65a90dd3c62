#pragma once
#include "fem/large_factor.h"

/// Internal to core/fem: Newton's method at one load level.
namespace thinskin::fem {

/// Loads of one load case at full level, split into the skin's and what the other bodies do under theirs.
struct LargeLoads { Vector skin, elongation, rigid; };

/// A positive amplitude beta for the start beta w_lin + u_lin + beta^2 u_2 (theory FE-22).
struct LargeStart { Vector u; double beta = 1; };

class LargeNewton {
public:
    LargeNewton(const Assembly& assembly, int skin_body, const LargeModel& model, const std::vector<UnitLoad>& loads, const Vector& factors,
                ColumnCache& cache, const NewtonRule& rule, LargeFactor& factor, std::stop_token stop);

    /// Runs at a share of the load from the given state; result in `out` (status, where, steps, residuals, joints, skin_u, skin_support).
    void run(double share, LargeState start, Large& out);
    [[nodiscard]] LargeStart start(double share, const JointState& linear) const;
    [[nodiscard]] const Vector& skin_load() const { return loads_.skin; }
    [[nodiscard]] Vector joint_forces(const JointState& joints) const; ///< on the skin, all dofs

private:
    const Assembly& assembly_;
    int skin_;
    const LargeModel& model_;
    NewtonRule rule_;
    std::stop_token stop_;
    Condensed others_;
    LargeLoads loads_;
    Vector weight_;                          ///< turns moments into forces for the residual
    LargeFactor& factor_;
    Tangent tangent_;                        ///< the force always, K when a new factor is asked for

    [[nodiscard]] Vector out_of_balance(double share, const LargeState& at) const;
    [[nodiscard]] LargeState step(double share, const LargeState& from);
    [[nodiscard]] double residual(double share, const LargeState& at) const;
    bool stable(const Vector& u, std::string& where);
};

} // namespace thinskin::fem
