#pragma once
#include "checks/rows.h"

namespace thinskin::checks {

/// A bar of angle or box section in bending about both axes with axial force, and in torsion.
struct Bar {
    std::string name, group, part;
    const catalogue::Section* section;
    const catalogue::Material* material;
    double unbraced = 0;               ///< mm
    std::vector<results::MemberForce> forces;
};
[[nodiscard]] std::vector<results::Check> bar_rows(const Bar& b);

/// A pinned brace: compression or tension.
[[nodiscard]] std::vector<results::Check> brace_rows(const Bar& b);

[[nodiscard]] std::vector<results::MemberForce> of_member(const std::vector<results::MemberForce>& all, const std::string& name);

} // namespace thinskin::checks
