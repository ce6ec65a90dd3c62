#pragma once
#include "fem/types.h"

#include <cstdint>
#include <memory>

namespace thinskin::fem {

/// Sparse LDL^T of the unsupported dofs with its symbolic part; forward-only solves along the elimination tree.
class Factor;

/// One part, factored alone. Supported dofs stay in K (rows and columns over all dofs) and are left out of the factor.
struct Body {
    std::string name;
    int dofs = 0;
    Sparse K;                          ///< all dofs, symmetric, both triangles
    std::vector<char> supported;       ///< per dof: 1 = held at zero by the ground
    std::vector<Spot> spots;           ///< per dof, of a body on a grid; else empty: it only says in what order to eliminate
    bool held = true;                  ///< false: the supported dofs are six auxiliary ones (statically determinate); the body is free
    bool rigid = false;                ///< no elastic dofs at all: moves by rigid_modes only, K empty
    Matrix rigid_modes;                ///< dofs x 6: translations along x y z and rotations about x y z through the origin (0,0,0)
    std::shared_ptr<const Factor> factor; ///< null when rigid, or when it was made without one
    std::uint64_t made_as = 0;         ///< of a sheet: a number of its own, never reused, which copies keep; 0: none
};

/// The next such number; factors count with it as well.
[[nodiscard]] std::uint64_t next_number();

/// Throws std::invalid_argument where there is none.
[[nodiscard]] const Factor& factor_of(const Body& body);

/// Displacement u (all dofs) under a load (all dofs; entries at supported dofs are ignored), free of joint forces.
[[nodiscard]] Vector solve(const Body& body, const Vector& load);
[[nodiscard]] Matrix solve_columns(const Body& body, const Matrix& loads); ///< a column each; the factor is read once

/// Adds value * row to a load vector over all dofs.
void add(Vector& load, const Row& row, double value);

/// row . u
[[nodiscard]] double apply(const Row& row, const Vector& u);

/// Factor of the unsupported block; throws std::runtime_error naming the dof when it is singular or not positive definite.
[[nodiscard]] std::shared_ptr<const Factor> factorise(const Sparse& K, const std::vector<char>& supported, const std::vector<Spot>& spots = {});

} // namespace thinskin::fem
