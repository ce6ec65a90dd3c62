#pragma once
#include <algorithm>
#include <atomic>
#include <cstddef>
#include <future>
#include <optional>
#include <thread>
#include <vector>

namespace thinskin::base {

/// Stands on each thread of work that has threads of its own: what one of them asks to have done side by side takes cores that are idle alone.
class AtWork {
public:
    AtWork() { ++threads; }
    ~AtWork() { --threads; }
    AtWork(const AtWork&) = delete;
    AtWork& operator=(const AtWork&) = delete;
    [[nodiscard]] static std::size_t idle_cores() { return std::thread::hardware_concurrency() - std::min<std::size_t>(std::thread::hardware_concurrency(), std::max<std::size_t>(1, threads)); }

private:
    static inline std::atomic<std::size_t> threads{0};
};

/// f(0) to f(n - 1) on this thread and on as many more as there are idle cores (AtWork), at most four in all; results in order, the same on any number of threads as
/// long as f(i) depends on i alone. f must be safe to call at the same time; what it throws comes out here.
template <class F> [[nodiscard]] auto side_by_side(std::size_t n, F f) -> std::vector<decltype(f(std::size_t{}))>
{
    std::vector<std::optional<decltype(f(std::size_t{}))>> done(n);
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
        for (std::size_t i = next++; i < n; i = next++) done[i] = f(i);
    };
    std::vector<std::future<void>> others;
    const std::size_t threads = std::min<std::size_t>({n, 1 + AtWork::idle_cores(), 4});
    for (std::size_t t = 1; t < threads; ++t) others.push_back(std::async(std::launch::async, work));
    work();
    for (std::future<void>& o : others) o.get();
    std::vector<decltype(f(std::size_t{}))> out;
    for (auto& r : done) out.push_back(std::move(*r));
    return out;
}

} // namespace thinskin::base
