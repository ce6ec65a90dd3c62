#pragma once
#include <stop_token>
#include <thread>

namespace thinskin::cli {

/// While it lives, Ctrl-C (or a termination request) sets a stop token instead of killing the program in mid-write.
/// A second one ends the program at once. Build it before any other thread is started.
class Interrupt {
public:
    Interrupt();
    ~Interrupt();
    Interrupt(const Interrupt&) = delete;
    Interrupt& operator=(const Interrupt&) = delete;
    [[nodiscard]] std::stop_token token() const { return stop_.get_token(); }
    [[nodiscard]] bool requested() const { return stop_.stop_requested(); }

private:
    std::stop_source stop_;
    std::thread watcher_;
};

} // namespace thinskin::cli
