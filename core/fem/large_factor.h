#pragma once
#include "fem/joint_system.h"
#include "fem/large_model.h"

/// Internal to core/fem: what a Newton step divides by, and the step itself.
namespace thinskin::fem {

/// Where Newton stands; `u` over all dofs of the skin.
struct LargeState { Vector u; JointState joints; };

/// The factor of one tangent with what follows from it at the joints. A step is exact with any factor as far as the joints' laws
/// go; how fast steps converge depends on how far the state has moved since the tangent was taken (theory FE-21).
class LargeFactor {
public:
    /// Factor of the tangent `t` at u. Not positive definite: the tangent without membrane forces, which is put into `t`. False: neither.
    bool take(const LargeModel& model, const Vector& u, Tangent& t);
    /// Of the exact tangent only; false when that is not positive definite, with the place where nothing is left.
    bool take_exact(const LargeModel& model, const Vector& u, const Tangent& t, std::string& where);
    /// From `from` with its out-of-balance force (load + joints - internal). `others`: the joints' system without the skin,
    /// `free`: what the other bodies do there.
    [[nodiscard]] LargeState step(const Assembly& assembly, int skin, const Condensed& others, Free free, const LargeState& from, const Vector& out_of_balance);

    [[nodiscard]] bool empty() const { return body_.factor == nullptr; }
    [[nodiscard]] bool exact() const { return exact_; }
    [[nodiscard]] const Vector& at() const { return at_; } ///< the state whose tangent it is
    void clear() { *this = LargeFactor(); }

private:
    Body body_;
    Vector at_;
    bool exact_ = false, condensed_ = false;
    std::vector<Touch> touches_;
    Condensed skin_;                         ///< the skin's flexibility at the joints, nothing else

    void condense(const Assembly& assembly, int skin);
};

struct LargeMemory::Impl { LargeFactor factor; };

} // namespace thinskin::fem
