#include "worker/study.h"

#include "pipeline/analyse.h"
#include "studies/spread.h"

#include <algorithm>
#include <chrono>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <stop_token>
#include <thread>
#include <utility>

namespace thinskin::gui {

using Clock = std::chrono::steady_clock;

namespace {

unsigned beside_the_window(unsigned asked)
{
    const unsigned cores = std::max(2U, std::thread::hardware_concurrency());
    return asked > 0 ? asked : std::min(4U, cores - 1);
}

} // namespace

struct Study::Impl {
    using Work = std::function<StudyAnswer(const std::stop_token&)>;

    mutable std::mutex mutex;
    std::condition_variable changed;
    std::optional<Work> waiting;
    StudyKind waiting_kind = StudyKind::none;
    std::shared_ptr<const StudyAnswer> answer;
    StudyProgress now;
    Clock::time_point started;
    std::stop_source stop;
    bool dropped = false;                    ///< of what runs: its answer is not wanted
    bool ends = false;
    std::thread thread;                      ///< last: everything above is there when it starts

    void tell(const std::string& stage, std::size_t done, std::size_t of, double left)
    {
        const std::lock_guard lock(mutex);
        now.stage = stage;
        now.done = done;
        now.of = of;
        now.seconds_left = left;
    }

    void post(StudyKind kind, Work w)
    {
        {
            const std::lock_guard lock(mutex);
            waiting = std::move(w);
            waiting_kind = kind;
            answer.reset();
            dropped = true;
            stop.request_stop();
        }
        changed.notify_all();
    }

    /// A broken contract inside must not take the window down.
    static StudyAnswer done(const Work& w, const std::stop_token& token)
    {
        try {
            return w(token);
        } catch (const std::exception& e) {
            StudyAnswer a;
            a.why = e.what();
            return a;
        }
    }

    void run()
    {
        std::unique_lock lock(mutex);
        while (true) {
            changed.wait(lock, [this] { return ends || waiting; });
            if (ends) return;
            const Work w = std::move(*waiting);
            waiting.reset();
            stop = std::stop_source{};
            dropped = false;
            const std::stop_token token = stop.get_token();
            started = Clock::now();
            now = {};
            now.kind = std::exchange(waiting_kind, StudyKind::none);
            const StudyKind kind = now.kind;
            lock.unlock();
            StudyAnswer a = done(w, token);
            a.kind = kind;
            a.stopped = token.stop_requested();
            lock.lock();
            now = {};
            if (!dropped) answer = std::make_shared<const StudyAnswer>(std::move(a));
            changed.notify_all();
        }
    }
};

Study::Study() : impl_(std::make_unique<Impl>())
{
    impl_->thread = std::thread([impl = impl_.get()] { impl->run(); });
}

Study::~Study()
{
    {
        const std::lock_guard lock(impl_->mutex);
        impl_->ends = true;
        impl_->waiting.reset();
        impl_->stop.request_stop();
    }
    impl_->changed.notify_all();
    impl_->thread.join();
}

void Study::propose(std::shared_ptr<const model::Case> c, bool robust, std::size_t schemes, unsigned threads)
{
    if (!c) return;
    impl_->post(StudyKind::proposal, [impl = impl_.get(), c, robust, schemes, threads](const std::stop_token& token) {
        search::ProposeOptions o;
        o.single_loss = o.robust = robust;
        o.search.schemes = schemes;
        o.search.threads = beside_the_window(threads);
        o.search.progress = [impl](const search::Progress& p) { impl->tell(search::stage_words(p), p.done, p.of, p.seconds_left); };
        StudyAnswer a;
        a.source = c;
        a.proposed = search::propose(*c, o, token);
        return a;
    });
}

void Study::spread(std::shared_ptr<const model::Case> c, double nominal_margin, int samples)
{
    if (!c) return;
    impl_->post(StudyKind::spread, [impl = impl_.get(), c, nominal_margin, samples](const std::stop_token& token) {
        const auto began = Clock::now();
        studies::SpreadOptions o;
        o.samples = samples;
        o.progress = [impl, began](int done, int of) {
            const double seconds = std::chrono::duration<double>(Clock::now() - began).count();
            impl->tell("runs", static_cast<std::size_t>(done), static_cast<std::size_t>(of), done > 0 ? seconds / done * (of - done) : -1);
        };
        pipeline::Workspace w;
        StudyAnswer a;
        a.source = c;
        a.spread = studies::spread(*c, nominal_margin, w, o, token);
        return a;
    });
}

void Study::stop()
{
    const std::lock_guard lock(impl_->mutex);
    if (impl_->now.kind == StudyKind::none) return;
    impl_->now.stopping = true;
    impl_->stop.request_stop();
}

void Study::drop()
{
    const std::lock_guard lock(impl_->mutex);
    impl_->waiting.reset();
    impl_->answer.reset();
    impl_->dropped = true;
    impl_->stop.request_stop();
}

StudyProgress Study::progress() const
{
    const std::lock_guard lock(impl_->mutex);
    StudyProgress p = impl_->now;
    if (p.kind == StudyKind::none && impl_->waiting) p.kind = impl_->waiting_kind;
    else if (p.kind != StudyKind::none) p.seconds = std::chrono::duration<double>(Clock::now() - impl_->started).count();
    return p;
}

std::shared_ptr<const StudyAnswer> Study::poll()
{
    const std::lock_guard lock(impl_->mutex);
    return std::exchange(impl_->answer, nullptr);
}

bool Study::wait_idle(double seconds)
{
    std::unique_lock lock(impl_->mutex);
    return impl_->changed.wait_for(lock, std::chrono::duration<double>(seconds), [this] { return impl_->now.kind == StudyKind::none && !impl_->waiting; });
}

} // namespace thinskin::gui
