#pragma once
#include "base/status.h"

namespace thinskin::cli {

/// What the program ends with: an interface for scripts, documented in README.md. Never renumber.
enum class Exit : int { passed = 0, check_failed = 1, bad_command = 2, bad_case = 3, not_solved = 4, not_covered = 5, interrupted = 130 };

[[nodiscard]] constexpr Exit exit_of(base::Verdict v)
{
    switch (v) {
    case base::Verdict::pass: return Exit::passed;
    case base::Verdict::not_covered: return Exit::not_covered;
    case base::Verdict::not_solved: return Exit::not_solved;
    case base::Verdict::fail: return Exit::check_failed;
    }
    return Exit::not_solved;
}

/// Over several cases the one that needs attention first wins: 2, 3, 4, 1, 5, 0 (an interrupt before all).
[[nodiscard]] constexpr int rank(Exit e)
{
    switch (e) {
    case Exit::interrupted: return 6;
    case Exit::bad_command: return 5;
    case Exit::bad_case: return 4;
    case Exit::not_solved: return 3;
    case Exit::check_failed: return 2;
    case Exit::not_covered: return 1;
    case Exit::passed: return 0;
    }
    return 6;
}

[[nodiscard]] constexpr Exit worse(Exit a, Exit b) { return rank(a) >= rank(b) ? a : b; }

} // namespace thinskin::cli
