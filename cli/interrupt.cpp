#include "interrupt.h"

#include <csignal>
#include <pthread.h>
#include <unistd.h>

namespace thinskin::cli {
namespace {

constexpr int finished = SIGUSR1; // wakes the watcher when the program is done

sigset_t watched()
{
    sigset_t set;
    sigemptyset(&set);
    for (const int s : {SIGINT, SIGTERM, finished}) sigaddset(&set, s);
    return set;
}

/// Signals are taken by a thread that waits for them, because a handler may not call request_stop().
void watch(std::stop_source stop)
{
    const sigset_t set = watched();
    for (int signal = 0; sigwait(&set, &signal) == 0 && signal != finished;) {
        if (stop.stop_requested()) _exit(130);
        stop.request_stop();
    }
}

} // namespace

Interrupt::Interrupt()
{
    const sigset_t set = watched();
    pthread_sigmask(SIG_BLOCK, &set, nullptr);
    watcher_ = std::thread(watch, stop_);
}

Interrupt::~Interrupt()
{
    pthread_kill(watcher_.native_handle(), finished);
    watcher_.join();
    const sigset_t set = watched();
    pthread_sigmask(SIG_UNBLOCK, &set, nullptr);
}

} // namespace thinskin::cli
