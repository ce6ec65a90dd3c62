#pragma once
#include <cstddef>
#include <cstdlib>
#include <memory>
#include <new>
#ifdef __linux__
#include <sys/mman.h>
#endif

/// Internal to core/fem.
namespace thinskin::fem {

/// Room for many figures, not set to anything. A large one lies on large pages where the system has them: to get a page of 4 kB takes as
/// long as to work out what stands in it.
class Room {
public:
    Room() = default;
    explicit Room(std::size_t figures)
    {
        constexpr std::size_t page = std::size_t{1} << 21, worth_it = 8 * page; // below, what large pages leave empty counts more
        const std::size_t bytes = figures * sizeof(double);
        at_.reset(static_cast<double*>(bytes < worth_it ? std::malloc(bytes) : std::aligned_alloc(page, (bytes / page + 1) * page)));
        if (!at_ && bytes > 0) throw std::bad_alloc();
#ifdef MADV_HUGEPAGE
        if (bytes >= worth_it) (void)madvise(at_.get(), bytes / page * page, MADV_HUGEPAGE); // a wish: without it all is as before
#endif
    }
    [[nodiscard]] double* data() const { return at_.get(); }

private:
    struct Free { void operator()(double* p) const { std::free(p); } };
    std::unique_ptr<double, Free> at_;
};

} // namespace thinskin::fem
