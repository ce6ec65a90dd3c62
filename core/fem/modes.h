#pragma once
#include "fem/frame.h"
#include "fem/joints.h"
#include "fem/skin.h"

#include <functional>
#include <memory>

/// Natural frequencies and shapes of the assembly about a contact state: small vibrations, active joints stay closed,
/// the others stay open, no damping (theory FE-24).
namespace thinskin::fem {

/// Mass of one body, tonnes and mm: over all its dofs, symmetric; an empty matrix: no mass.
struct MassMatrix { Sparse M; };

/// Consistent mass of the sheet (transverse and in-plane; rotary inertia of the thickness left out) and of its ribs, the
/// ribs' mass on their line. `density` t/mm3; `rib_mass` t/mm per rib, in the order of the model, or none.
[[nodiscard]] MassMatrix skin_mass(const Skin& skin, double density, const std::vector<double>& rib_mass = {});

/// Consistent mass of the members, moving with the line of centroids and spinning about it (I_y + I_z); rotary inertia of bending
/// left out. And masses at points fixed to nodes. `density` t/mm3, of all members.
[[nodiscard]] MassMatrix frame_mass(const Frame& frame, double density, const std::vector<NodeMass>& masses = {});

/// Rigid item: mass t, centre of mass mm, inertia about it t mm2 (axes x y z; symmetric, positive about every axis).
[[nodiscard]] MassMatrix rigid_mass(double mass, const Vec3& centre, const Eigen::Matrix3d& inertia);

/// What moves: shares of the kinetic energy of a mode, which sum to 1 over all bodies.
struct BodyShare {
    std::string body;
    double share = 0;                    ///< of the whole kinetic energy
    std::array<double, 3> along{};       ///< of the body's share: its centre of mass moving along x, y, z
    std::array<double, 3> about{};       ///< of the body's share: turning about x, y, z through its centre of mass
    double bending = 0;                  ///< the rest: the body changes its shape
};

struct Mode {
    double frequency_Hz = 0;
    std::vector<Vector> shape;           ///< per body, all dofs; scaled to one unit of modal mass (t)
    std::vector<BodyShare> shares;       ///< per body, in the assembly's order
    std::string what;                    ///< "item moves along z", "item turns about x", "skin changes its shape"
    double residual = 0;                 ///< |K x - omega^2 M x + joints| over |omega^2 M x|, largest of the bodies
};

enum class ModesStatus { solved, no_mass, not_converged, ill_conditioned };
struct Modes {
    ModesStatus status = ModesStatus::not_converged;
    std::string where;                   ///< the reason when not solved
    std::vector<Mode> modes;             ///< ascending; motions that nothing resists come first with 0 Hz
    int free_motions = 0;                ///< how many of them those are
};

/// Keeps the shifted factor of the one held body and the columns of its joints from one call to the next; the same bits warm or cold.
/// Not thread safe. Another stiffness or mass of that body is noticed.
class ModesCache {
public:
    ModesCache();
    ~ModesCache();
    ModesCache(ModesCache&&) noexcept;
    ModesCache& operator=(ModesCache&&) noexcept;
    struct Impl;
    [[nodiscard]] Impl& impl() { return *impl_; }

private:
    std::unique_ptr<Impl> impl_;
};

/// The lowest `count` modes. active: per joint, 1 = closed (contact states from solve_joints; a tie counts whatever its entry).
/// Every free body needs mass; held bodies may be without.
/// Throws std::invalid_argument when sizes do not fit or count < 1.
[[nodiscard]] Modes modes(const Assembly& assembly, const std::vector<char>& active, const std::vector<MassMatrix>& masses, int count, ModesCache* cache = nullptr);

/// As many of the lowest modes as it takes to have one that is `wanted` among them, `count` at most: a search for a few is short.
/// Frequencies agree with those of modes() to the accuracy of the iteration (1e-8 of 1 / (omega^2 + s)).
[[nodiscard]] Modes modes_until(const Assembly& assembly, const std::vector<char>& active, const std::vector<MassMatrix>& masses, int count, const std::function<bool(const Mode&)>& wanted, ModesCache* cache = nullptr);

} // namespace thinskin::fem
