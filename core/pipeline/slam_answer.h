#pragma once
#include "checks/checks.h"

#include <functional>

namespace thinskin::pipeline {

/// Outcome of other load cases on the same bodies: forces, fields, balance; nothing when they were not solved or do not balance.
using SolveMore = std::function<std::optional<results::Outcome>(const std::vector<results::LoadCase>&)>;
using Rows = std::vector<results::Check> (*)(const checks::Demands&);

/// The row `slam/answer`, group door: the slam once more with what the mounted item answers to its stop (actions/slam_answer.h, AC-4)
/// in place of the stop's own peak, run as load cases `slam inward, answered` and `slam outward, answered` beside the 1 g; the largest
/// utilisation of all required rows against 1. At most judgement.
/// Not covered, required: outside of AC-4, not solved, or a row that is not covered there. Not covered, not required: the slam itself fails or is not
/// covered, which its own rows say. Empty: no slam was run, or nothing hangs.
/// `solver_Hz`: lowest natural frequency of what hangs, asked only when it makes a difference; without it and without a measured one a
/// mount of any frequency.
[[nodiscard]] std::vector<results::Check> slam_answer_rows(const checks::Demands& d, Rows rows, const SolveMore& more, const std::function<std::optional<double>()>& solver_Hz);

/// The demands that an outcome holds.
[[nodiscard]] checks::Demands demands(const layout::Layout& l, const results::Outcome& o);

} // namespace thinskin::pipeline
