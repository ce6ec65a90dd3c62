#include "worker/worker.h"

#include "layout/offered.h"
#include "studies/effects.h"
#include "studies/grid_error.h"

#include <algorithm>
#include <chrono>
#include <condition_variable>
#include <mutex>
#include <optional>
#include <set>
#include <stop_token>
#include <thread>
#include <utility>

namespace thinskin::gui {

using Clock = std::chrono::steady_clock;

namespace {

template <class T> void not_standing(const std::vector<T>& all, std::set<std::string>& names)
{
    for (const T& x : all)
        if (!x.stands) names.insert(x.load_case);
}

/// Load cases with a figure that linear theory does not give, in the order of the load cases.
std::vector<std::string> beyond_linear(const results::Outcome& o)
{
    std::set<std::string> names;
    not_standing(o.skin, names);
    not_standing(o.fasteners, names);
    not_standing(o.members, names);
    not_standing(o.member_ends, names);
    not_standing(o.mounts, names);
    not_standing(o.joints, names);
    std::vector<std::string> out;
    for (const results::LoadCase& lc : o.load_cases)
        if (names.count(lc.name) != 0) out.push_back(lc.name);
    return out;
}

std::shared_ptr<const model::Case> linear_case(const std::shared_ptr<const model::Case>& c)
{
    if (c->skin == model::SkinTheory::linear) return c;
    auto linear = std::make_shared<model::Case>(*c);
    linear->skin = model::SkinTheory::linear;
    return linear;
}

/// A broken contract inside must not take the window down; it is told like an error of the case.
pipeline::Analysis analysed(const model::Case& c, pipeline::Workspace& w, pipeline::Depth depth, const std::stop_token& stop, const pipeline::Tell& tell)
{
    try {
        return pipeline::analyse(c, w, depth, stop, tell);
    } catch (const std::exception& e) {
        pipeline::Analysis a;
        a.diagnostics.push_back({{c.file, 0, 0}, "", std::string("the case could not be worked out: ") + e.what(), ""});
        w = pipeline::Workspace{};
        return a;
    }
}

} // namespace

bool Answer::solved() const { return analysis.outcome && analysis.outcome->verdict != base::Verdict::not_solved && !analysis.outcome->checks.empty(); }

struct Worker::Impl {
    mutable std::mutex mutex;
    std::condition_variable changed;
    std::optional<Request> waiting;
    std::shared_ptr<const Answer> answer;    ///< newest, not yet fetched
    Progress now;
    Clock::time_point started;
    std::stop_source stop;                   ///< of what runs; a new one for each request
    bool ends = false;
    std::thread thread;                      ///< last: everything above is there when it starts

    /// Whether a stage may begin: not cancelled, and nothing newer waits.
    bool begin(Stage s, const std::stop_token& token)
    {
        const std::lock_guard lock(mutex);
        if (token.stop_requested() || (s != Stage::linear && waiting)) return false;
        now.stage = s;
        if (s == Stage::effects) now.step = {"effects of the assumptions", 0, 0};
        return true;
    }

    /// What runs, for progress().
    pipeline::Tell tell()
    {
        return [this](const pipeline::Step& step) {
            const std::lock_guard lock(mutex);
            now.step = step;
        };
    }

    void publish(Answer a, const std::stop_token& token)
    {
        const std::lock_guard lock(mutex);
        if (token.stop_requested()) return; // cancelled, or stopped half way: its figures are not for use
        a.milliseconds = std::chrono::duration<double, std::milli>(Clock::now() - started).count();
        answer = std::make_shared<const Answer>(std::move(a));
        changed.notify_all();
    }

    /// Linear theory and margins alone first: no frequencies, no effects. True: there is more to do.
    bool linear(const Request& r, pipeline::Workspace& w, const std::stop_token& token)
    {
        Answer a;
        a.revision = r.revision;
        a.source = linear_case(r.value);
        a.analysis = analysed(*a.source, w, pipeline::Depth::margins, token, tell());
        if (a.outcome()) a.linear_only = beyond_linear(*a.outcome());
        const bool wrong = !a.outcome();
        if (wrong) {
            a.stage = Stage::full;
            if (auto l = layout::drawable(*a.source)) a.in_error = std::make_shared<const layout::Layout>(std::move(*l));
        }
        a.final = wrong;
        publish(std::move(a), token);
        return r.upto != Stage::linear && !wrong;
    }

    void effects(Answer a, const Request& r, pipeline::Workspace& w, const std::stop_token& token)
    {
        if (!begin(Stage::effects, token)) return;
        try {
            studies::add_effects(*r.value, w, *a.analysis.outcome, token);
        } catch (const std::exception&) {
            w = pipeline::Workspace{}; // those that were not run say so
        }
        a.stage = Stage::effects;
        a.final = true;
        publish(std::move(a), token);
    }

    void work(const Request& r, pipeline::Workspace& w, const std::stop_token& token)
    {
        if (!begin(Stage::linear, token) || !linear(r, w, token) || !begin(Stage::full, token)) return;
        Answer a;
        a.revision = r.revision;
        a.stage = Stage::full;
        a.source = r.value;
        a.analysis = analysed(*r.value, w, pipeline::Depth::full, token, tell());
        a.final = r.upto == Stage::full || !a.solved();
        publish(a, token);
        if (!a.final) effects(std::move(a), r, w, token);
    }

    void run()
    {
        pipeline::Workspace workspace;
        std::unique_lock lock(mutex);
        while (true) {
            changed.wait(lock, [this] { return ends || waiting; });
            if (ends) return;
            const Request r = std::move(*waiting);
            waiting.reset();
            stop = std::stop_source{};
            const std::stop_token token = stop.get_token();
            started = Clock::now();
            now = {true, r.revision, Stage::linear, 0, {}};
            lock.unlock();
            work(r, workspace, token);
            lock.lock();
            now.busy = false;
            changed.notify_all();
        }
    }
};

Worker::Worker() : impl_(std::make_unique<Impl>())
{
    impl_->thread = std::thread([impl = impl_.get()] { impl->run(); });
}

Worker::~Worker()
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

void Worker::post(Request r)
{
    if (!r.value) return;
    {
        const std::lock_guard lock(impl_->mutex);
        impl_->waiting = std::move(r);
        if (impl_->now.busy && impl_->now.stage != Stage::linear) impl_->stop.request_stop();
    }
    impl_->changed.notify_all();
}

void Worker::cancel()
{
    const std::lock_guard lock(impl_->mutex);
    impl_->waiting.reset();
    impl_->answer.reset();
    if (impl_->now.busy) impl_->stop.request_stop();
    impl_->changed.notify_all();
}

std::shared_ptr<const Answer> Worker::poll()
{
    const std::lock_guard lock(impl_->mutex);
    return std::exchange(impl_->answer, nullptr);
}

results::Outcome filed(const Answer& a)
{
    results::Outcome o = *a.outcome();
    studies::add_grid_error(*a.source, o);
    pipeline::add_contact_bounds(*a.source, o);
    return o;
}

Progress Worker::progress() const
{
    const std::lock_guard lock(impl_->mutex);
    Progress p = impl_->now;
    p.busy = p.busy || impl_->waiting.has_value();
    p.seconds = impl_->now.busy ? std::chrono::duration<double>(Clock::now() - impl_->started).count() : 0;
    return p;
}

bool Worker::wait_idle(double seconds)
{
    std::unique_lock lock(impl_->mutex);
    return impl_->changed.wait_for(lock, std::chrono::duration<double>(seconds), [this] { return !impl_->now.busy && !impl_->waiting; });
}

} // namespace thinskin::gui
