#pragma once
#include "interrupt.h"
#include "model/case.h"
#include "pipeline/analyse.h"
#include "results/spread.h"

#include <optional>

namespace thinskin::cli {

/// Runs the spread with a line a second on standard error. None: stopped.
[[nodiscard]] std::optional<results::Spread> run_spread(const model::Case& c, pipeline::Workspace& workspace, const results::Outcome& outcome, int samples, const Interrupt& interrupt);

} // namespace thinskin::cli
