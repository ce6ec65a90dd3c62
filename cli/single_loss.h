#pragma once
#include "interrupt.h"
#include "pipeline/analyse.h"

namespace thinskin::cli {

/// Runs the study and tells on standard error how far it is, at most once a second and nothing before the first second is over.
/// True: done; false: stopped, the outcome is as it was.
[[nodiscard]] bool run_single_loss(const model::Case& c, pipeline::Workspace& workspace, results::Outcome& outcome, double rust_mm, bool strict, const Interrupt& interrupt);

} // namespace thinskin::cli
