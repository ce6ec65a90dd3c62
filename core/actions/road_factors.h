#pragma once
#include "actions/load_cases.h"

#include <optional>
#include <string>
#include <vector>

namespace thinskin::actions {

/// What one of the three ways to the dynamic factor gives, in g on the masses; down contains the weight, up is net.
///   quasi_static      the road row
///   base_pulse        P = A S (AC-4): down 1 + P, up P - 1, along and across the larger of P and the road row
///   random_vibration  a = k rms (AC-8 or AC-15 with AC-14, AC-9): down 1 + a, up a - 1, along and across the road row
/// S and rms are the largest of all mounts at or above the lowest frequency (engineering judgement): an item has more than one
/// frequency, and only the lowest is known. A measured one may be 15 % off; one of the solver is an upper bound, so half of it counts (idealise/vibration.h).
/// Combined states: down with half of the road row's figures. The three are never multiplied together.
struct RoadFactors {
    double down = 0, up = 0, lateral = 0, fore_aft = 0, mixed_lateral = 0, mixed_fore_aft = 0;
    std::string basis, source, derivation;
    std::string beside_securing; ///< words on the rules for securing cargo, where the row asks for no less
    std::vector<results::Assumption> assumptions;
    std::vector<std::string> cautions;
    results::Shaking shaking; ///< all answers of the mounts that count, overhang included; only by random vibration
    NotRun problem;  ///< a reason: there are no figures
};
[[nodiscard]] RoadFactors road_factors(const layout::Layout& l, std::optional<double> solver_Hz);

} // namespace thinskin::actions
