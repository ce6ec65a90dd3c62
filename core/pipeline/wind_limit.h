#pragma once
#include "checks/checks.h"

#include <string>
#include <vector>

namespace thinskin::pipeline {

/// How much of a load every row stands, from the row's utilisation in 1 g alone (u0) and with the load (u1):
///   u1 >= 1: (1 - u0)/(u1 - u0)       u1 < 1: 1 + (1 - u1)/(u1 + u0)
/// Both are on the safe side for sizes of forces in a linear structure, which bend upward with the load: the first is the chord
/// between two states, the second takes the load's own part as no less than the difference and no more than the sum.
/// A load that relieves a row at first (u1 < u0) may turn it round: the second holds there, too.
/// 0 when 1 g alone uses the row up; infinity when the load does not reach it (u1 = u0). NaN for what is not a number.
[[nodiscard]] double share_of_load(double u0, double u1);

/// Rows of one load case alone that a load of its own can use up: required, of what is stressed, not of what repeats.
[[nodiscard]] std::vector<results::Check> stressed_rows(const checks::Demands& d, std::vector<results::Check> (*rows)(const checks::Demands&), const std::string& load_case);

/// For each of item.loads that says its wind: v sqrt(share), the least over all required rows, AC-17. Without a speed and with the
/// reason: a row that is not covered under it, or the load case was not run. Large deflection: an estimate, said so.
[[nodiscard]] std::vector<results::WindLimit> wind_limits(const checks::Demands& d, std::vector<results::Check> (*rows)(const checks::Demands&));

} // namespace thinskin::pipeline
