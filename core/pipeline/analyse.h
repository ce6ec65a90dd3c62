#pragma once
#include "base/location.h"
#include "layout/layout.h"
#include "model/case.h"
#include "results/results.h"

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

namespace thinskin::pipeline {

/// forces: what the forces of the linear load cases say, the skin's own rows not covered, so never a pass: for a search that looks for what fails. margins: what a dragged hole needs. settled: every row that decides the verdict, the skin's stress on fine grids (ID-16) and what the mounted item answers to a slam with the rest. full: also the list of natural frequencies and the wind that may not be exceeded; the effects of assumptions are a study of their own.
enum class Depth { forces, margins, settled, full };

/// What is being worked out; of = 0: it has no counted parts. For a line that tells a waiting person.
struct Step { std::string what; std::size_t done = 0, of = 0; };
/// Called on the thread that analyses, before each step begins; must not throw.
using Tell = std::function<void(const Step&)>;

/// Keeps factored bodies and solved columns between calls; a warm one gives the same bytes as a cold one.
struct Workspace {
    Workspace();
    ~Workspace();
    Workspace(Workspace&&) noexcept;
    Workspace& operator=(Workspace&&) noexcept;
    struct Impl;
    std::unique_ptr<Impl> impl;
};

struct Analysis {
    std::optional<results::Outcome> outcome;      ///< absent when the case itself is wrong
    std::vector<base::Diagnostic> diagnostics;    ///< errors of names and geometry, with their places
    /// Parts at their places, for the drawing; absent when the case itself is wrong. Points at the case that was analysed
    /// (`layout::Layout::source`), which the caller keeps alive for as long as the layout is used.
    std::shared_ptr<const layout::Layout> layout;
};

/// Names of load cases.
using Only = std::vector<std::string>;

/// The one way from a case to its margins; the only file that knows the order of the steps.
/// only: these load cases and the first one (parked), where it is not empty; the verdict is then fail or not solved, never a pass.
[[nodiscard]] Analysis analyse(const model::Case& c, Workspace& workspace, Depth depth = Depth::full, std::stop_token stop = {}, const Tell& tell = {}, const Only& only = {});

/// Adds the lowest natural frequency with all contacts closed and with all open to an outcome that has frequencies: two more sets of modes.
void add_contact_bounds(const model::Case& c, results::Outcome& outcome);

/// Judgement counts as not covered (`--strict`).
void apply_strict(results::Outcome& outcome);

} // namespace thinskin::pipeline
