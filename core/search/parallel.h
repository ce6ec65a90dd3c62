#pragma once
#include "base/side_by_side.h"

#include <atomic>
#include <cstddef>
#include <exception>
#include <future>
#include <vector>

namespace thinskin::search {

/// f(i, thread) for i below n, on `threads` threads; every i is done once, in no order. What f throws comes out here.
template <class F> void in_parallel(std::size_t n, unsigned threads, F f)
{
    std::atomic<std::size_t> next{0};
    const auto work = [&](unsigned thread) {
        const base::AtWork here;
        for (std::size_t i = next++; i < n; i = next++) f(i, thread);
    };
    std::vector<std::future<void>> others;
    for (unsigned t = 1; t < threads && t < n; ++t) others.push_back(std::async(std::launch::async, work, t));
    std::exception_ptr thrown;
    try {
        work(0);
    } catch (const std::exception&) {
        thrown = std::current_exception();
        next = n;
    }
    for (std::future<void>& o : others) o.get();
    if (thrown) std::rethrow_exception(thrown);
}

} // namespace thinskin::search
