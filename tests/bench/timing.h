#pragma once
#include <algorithm>
#include <chrono>
#include <functional>
#include <limits>
#include <malloc.h>
#include <vector>

/// The machine is noisy: only ratios from one run count, each from the least of several alternating runs.
namespace thinskin::bench {

inline double milliseconds(const std::function<void()>& f)
{
    const auto start = std::chrono::steady_clock::now();
    f();
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

/// Least time of each candidate, taken in turns so that a slow spell hits all of them.
inline std::vector<double> least_in_turns(const std::vector<std::function<void()>>& candidates, int rounds)
{
    std::vector<double> least(candidates.size(), std::numeric_limits<double>::infinity());
    for (int k = 0; k < rounds; ++k)
        for (std::size_t i = 0; i < candidates.size(); ++i) least[i] = std::min(least[i], milliseconds(candidates[i]));
    return least;
}

/// Heap in use, MB.
inline double heap_MB()
{
    const auto m = mallinfo2();
    return static_cast<double>(m.uordblks + m.hblkhd) / 1e6;
}

} // namespace thinskin::bench
