#pragma once
#include "checks/rows.h"

namespace thinskin::checks {

/// Rows of one stack (bracket fastener or end fastener) from its forces in all load cases.
struct StackForces { const layout::Stack* stack; std::string group, part; std::vector<results::FastenerForce> forces; };
[[nodiscard]] std::vector<results::Check> stack_rows(const StackForces& s);

/// Elastic share or the whole of the row, whichever is more.
[[nodiscard]] double shear_demand(const results::FastenerForce& f);

/// Width of a lying leg that one bolt may claim: to the bar's ends and half-way to its neighbours, at most `reach` to a side.
[[nodiscard]] double strip_available(const layout::AngleBar& bar, const layout::Stack& at, const std::vector<const layout::Stack*>& on_bar, double reach);

/// Diameter that presses on a ply of the stack from outside: head's side at the first, nut's at the last; washers that are too
/// thin for the pull-over clause do not count.
[[nodiscard]] double pressing_diameter(const layout::Stack& s, const std::string& part);

/// Lying leg of a bar between its heel and a bolt.
[[nodiscard]] results::Check lying_leg_row(const Place& p, const layout::AngleBar& bar, const layout::Stack& s, const std::vector<const layout::Stack*>& on_bar, const std::vector<results::FastenerForce>& forces);

} // namespace thinskin::checks
