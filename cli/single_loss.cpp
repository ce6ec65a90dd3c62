#include "single_loss.h"

#include "studies/single_loss.h"

#include <chrono>
#include <fmt/format.h>

namespace thinskin::cli {

bool run_single_loss(const model::Case& c, pipeline::Workspace& workspace, results::Outcome& outcome, double rust_mm, bool strict, const Interrupt& interrupt)
{
    using Clock = std::chrono::steady_clock;
    auto last = Clock::now();
    studies::SingleLossOptions options;
    options.rust_mm = rust_mm;
    options.strict = strict;
    options.progress = [&last](int done, int of, const std::string& what) {
        const auto now = Clock::now();
        if (now - last < std::chrono::seconds(1)) return;
        last = now;
        fmt::print(stderr, "single loss: {} of {} done, now without {}\n", done, of, what);
    };
    studies::add_single_loss(c, workspace, outcome, options, interrupt.token());
    return !interrupt.requested();
}

} // namespace thinskin::cli
