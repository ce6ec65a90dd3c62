#pragma once
#include "search/search.h"

#include <atomic>
#include <chrono>
#include <memory>

namespace thinskin::search {

inline constexpr std::chrono::milliseconds between_calls{100};

/// Seconds left of a stage that began with `from` of `of` done and now has n.
[[nodiscard]] inline double left_at_pace(std::chrono::steady_clock::time_point began, std::size_t from, std::size_t n, std::size_t of)
{
    const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count();
    return n > from ? seconds / static_cast<double>(n - from) * static_cast<double>(of - n) : -1;
}

/// A stage and what it counts: `from` of `of` are done before it begins.
struct Counted { const char* stage; int step; std::size_t from, of; };

/// The worth of each where all weigh the same.
[[nodiscard]] inline std::size_t each_counts_one(std::size_t) { return 1; }

/// For in_parallel(): f(i, thread) or f(i) until `stop`, with progress told from the calling thread; i is worth(i) of what is counted.
template <class Worth, class F> auto counted(const Options& options, Counted what, Worth worth, std::stop_token stop, F f)
{
    using Clock = std::chrono::steady_clock;
    const auto done = std::make_shared<std::atomic<std::size_t>>(what.from);
    const auto tell = [&options, what, began = Clock::now()](std::size_t n) { options.progress({what.stage, n, what.of, left_at_pace(began, what.from, n, what.of), what.step, 3, {}}); };
    if (options.progress) tell(what.from);
    return [&options, stop, f, done, tell, worth, last = std::make_shared<Clock::time_point>(Clock::now())](std::size_t i, unsigned thread) {
        if (stop.stop_requested()) return;
        if constexpr (std::is_invocable_v<F, std::size_t, unsigned>) f(i, thread);
        else f(i);
        const std::size_t n = *done += worth(i);
        if (thread != 0 || !options.progress || Clock::now() - *last < between_calls) return; // thread 0 is the one that called
        *last = Clock::now();
        tell(n);
    };
}

} // namespace thinskin::search
