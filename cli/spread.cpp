#include "spread.h"

#include "studies/spread.h"

#include <chrono>
#include <fmt/format.h>

namespace thinskin::cli {

std::optional<results::Spread> run_spread(const model::Case& c, pipeline::Workspace& workspace, const results::Outcome& outcome, int samples, const Interrupt& interrupt)
{
    using Clock = std::chrono::steady_clock;
    auto last = Clock::now();
    studies::SpreadOptions options;
    options.samples = samples;
    options.progress = [&last](int done, int of) {
        const auto now = Clock::now();
        if (now - last < std::chrono::seconds(1)) return;
        last = now;
        fmt::print(stderr, "spread: {} of {} runs done\n", done, of);
    };
    const double nominal = outcome.governing ? outcome.governing->margin() : -1;
    results::Spread s = studies::spread(c, nominal, workspace, options, interrupt.token());
    if (interrupt.requested()) return std::nullopt;
    return s;
}

} // namespace thinskin::cli
