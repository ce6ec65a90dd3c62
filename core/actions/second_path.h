#pragma once
#include "layout/layout.h"
#include "results/results.h"

#include <vector>

namespace thinskin::actions {

/// The item falling into its tether by AC-22: design mass m (1 + tolerance), times the largest factor down of `cases` for the
/// shaken state (engineering judgement, on the safe side). Stiffness as given, else from the
/// stretch at its breaking strength: half of that stretch without a force, the other half in proportion, safe for a rope that stiffens late.
/// Without a force and with the key that lifts it: a missing figure, a road that was not run, a figure outside of AC-22, a tether
/// tied to the skin or to the bracket. Not given: all empty.
[[nodiscard]] results::Tether tether(const layout::Layout& l, const std::vector<results::LoadCase>& cases);

} // namespace thinskin::actions
