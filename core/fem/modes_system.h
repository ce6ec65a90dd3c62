#pragma once
#include "fem/joint_system.h"
#include "fem/modes.h"

#include <memory>

/// Internal to core/fem: K + s M of all bodies with the closed joints, solved as in statics (theory FE-24).
namespace thinskin::fem {

struct ModesCache::Impl {
    std::uint64_t body = 0;              ///< of the body as it was given; 0: nothing kept yet
    Sparse M;
    std::shared_ptr<const Body> shifted;
    ColumnCache columns;
};

class ModesSystem {
public:
    /// `cache` outlives the system.
    ModesSystem(const Assembly& assembly, const std::vector<char>& active, const std::vector<MassMatrix>& masses, ModesCache::Impl& cache);

    [[nodiscard]] ModesStatus status() const { return status_; }
    [[nodiscard]] const std::string& where() const { return where_; }
    [[nodiscard]] Eigen::Index size() const { return size_; }
    [[nodiscard]] double shift() const { return shift_; }
    [[nodiscard]] const Sparse& mass() const { return mass_; }   ///< all bodies one after the other; zero at supported dofs
    [[nodiscard]] Vector solve(const Vector& load) const;
    [[nodiscard]] Mode describe(double omega_squared, const Vector& x) const;

private:
    const Assembly& bodies_;                 ///< as given
    const std::vector<MassMatrix>& masses_;
    std::vector<std::shared_ptr<const Body>> shifted_; ///< K + s M, factored
    Assembly assembly_;                      ///< shifted bodies and closed joints
    std::vector<Eigen::Index> begin_;        ///< first dof of each body
    std::vector<Eigen::Matrix<double, 6, 6>> rigid_mass_; ///< of each body about the origin; zero where it has none
    Eigen::Index size_ = 0;
    double shift_ = 0;
    Sparse mass_;
    ModesCache::Impl& cache_;
    std::vector<std::vector<Touch>> touches_; ///< per body: what its joints touch, as forward-only columns
    Matrix joint_flexibility_;
    Eigen::LLT<Matrix> definite_;
    Eigen::CompleteOrthogonalDecomposition<Matrix> general_;
    bool is_definite_ = true;
    ModesStatus status_ = ModesStatus::solved;
    std::string where_;

    bool add_body(std::size_t b);
    [[nodiscard]] std::shared_ptr<const Body> shifted(const Body& body, const MassMatrix& mass);
    [[nodiscard]] std::shared_ptr<const Body> shifted_held(const Body& body, const MassMatrix& mass);
    void check_mass(std::size_t b) const;
    void join_masses();
    void condense_joints(const std::vector<char>& active);
    [[nodiscard]] Vector body_part(const Vector& x, std::size_t b) const;
    [[nodiscard]] Vector free_solve(const Vector& load) const;
    [[nodiscard]] Vector joint_loads(const Vector& lambda) const;
    [[nodiscard]] Vector lambda(const Vector& free) const;
    [[nodiscard]] Vector joint_forces(const Vector& gaps) const;
    [[nodiscard]] BodyShare share(std::size_t b, const Vector& x) const;
    [[nodiscard]] double residual(double omega_squared, const Vector& x) const;
};

/// "item moves along z, 81 %": the body with the largest share and what it does most.
[[nodiscard]] std::string mode_words(const std::vector<BodyShare>& shares, const Assembly& assembly);

} // namespace thinskin::fem
