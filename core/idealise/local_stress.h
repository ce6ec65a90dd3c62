#pragma once
#include "idealise/response.h"

#include <stop_token>

/// ID-16: beside what presses on it the skin's stress changes within millimetres, which the panel's grid does not see. Round the places
/// where it may be largest - where the grid shows most, and under the footprints that press hardest - the sheet is solved again on a grid
/// of 2.5 mm, large deflection included, between displacements given by the panel's solution and under every force of the state.
/// Read outside all footprints (washers; pads of 10 mm where a leg, a foot or an angle touches) and within 32 mm of the place.
///   range   load cases whose bound (skin_forces.h) is more than half of `allowable`; of them those whose bound exceeds what is settled
///   errors  halving the fine grid, or the panel's, moves the figure by less than 2 % (tests/consistency/behaviour_local_stress.cpp)
///   source  engineering judgement: the pads and the places
namespace thinskin::idealise {

/// Replaces max_von_mises_MPa and stress_at_mm of the states it settles and marks them; the others stay as the grid shows them.
void settle_stress(const Structure& s, const Solution& sol, const fem::LargeModel& model, double allowable, std::vector<results::SkinState>& skin, fem::LocalGrids& kept, std::stop_token stop);

/// Whether elastic theory has a figure for the skin there: not in an opening, nor within a grid spacing of its corner.
[[nodiscard]] bool readable(const Structure& s, double x, double y);

} // namespace thinskin::idealise
