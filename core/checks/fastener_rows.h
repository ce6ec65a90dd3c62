#pragma once
#include "checks/rows.h"

namespace thinskin::checks {

/// Rows of one stack (bracket fastener or end fastener) from its forces in all load cases.
struct StackForces { const layout::Stack* stack; std::string group, part; std::vector<results::FastenerForce> forces; };
[[nodiscard]] std::vector<results::Check> stack_rows(const StackForces& s);

/// Elastic share or the whole of the row, whichever is more.
[[nodiscard]] double shear_demand(const results::FastenerForce& f);

} // namespace thinskin::checks
