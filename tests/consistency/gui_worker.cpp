// The worker thread: what it answers is what the pipeline gives, the latest request wins, nothing comes after a cancel.
#include "report/json.h"
#include "support/gui.h"
#include "worker/results_shown.h"
#include "worker/worker.h"

#include <algorithm>
#include <thread>

using namespace thinskin;
using namespace thinskin::gui;

namespace {

std::shared_ptr<const model::Case> shared_case(const std::string& name, const tests::Edits& edits = {})
{
    return std::make_shared<const model::Case>(tests::read_case(tests::edited_text(name, edits)));
}

std::string direct(const model::Case& c)
{
    pipeline::Workspace w;
    return report::check_json(*pipeline::analyse(c, w).outcome);
}

/// Fetches until the worker is idle.
std::vector<std::shared_ptr<const Answer>> answers(Worker& w, double seconds = 60)
{
    std::vector<std::shared_ptr<const Answer>> out;
    for (int k = 0; k < static_cast<int>(seconds * 1000); ++k) {
        const bool idle = w.wait_idle(0.001);
        if (auto a = w.poll()) out.push_back(std::move(a));
        if (idle) return out;
    }
    FAIL("the worker does not come to an end");
    return out;
}

} // namespace

TEST_SUITE_BEGIN("consistency");

TEST_CASE("worker: the final answer has the very figures of the pipeline, warm or cold")
{
    Worker w;
    std::uint64_t revision = 0;
    for (const char* name : {"plain_panel", "sliding_door", "plain_panel"}) {
        CAPTURE(name);
        const auto c = shared_case(name);
        w.post({++revision, c, Stage::full});
        const auto all = answers(w);
        REQUIRE_FALSE(all.empty());
        const Answer& last = *all.back();
        CHECK(last.final);
        CHECK(last.revision == revision);
        REQUIRE(last.outcome());
        CHECK(report::check_json(*last.outcome()) == direct(*c));
        REQUIRE(last.analysis.layout);
        CHECK(last.analysis.layout->source == last.source.get());
    }
}

TEST_CASE("worker: linear figures are marked where they do not stand, and refined when asked")
{
    Worker w;
    const auto c = shared_case("condenser_door");
    w.post({1, c, Stage::linear});
    auto all = answers(w);
    REQUIRE(all.size() == 1);
    CHECK(all[0]->stage == Stage::linear);
    CHECK_FALSE(all[0]->final);
    CHECK(all[0]->linear_only == std::vector<std::string>{"slam inward"});
    ResultsShown shown;
    shown.take(all[0]);
    CHECK(shown.state(1, true) == ResultsShown::State::linear);
    for (const results::SkinState& k : all[0]->outcome()->skin) CHECK(k.stands == (k.load_case != "slam inward"));

    w.post({1, c, Stage::full});
    all = answers(w);
    REQUIRE_FALSE(all.empty());
    CHECK(all.back()->final);
    shown.take(all.back());
    CHECK(shown.state(1, true) == ResultsShown::State::current);
    CHECK(report::check_json(*all.back()->outcome()) == direct(*c));
}

TEST_CASE("worker: a stream of requests gives answers on the way, in order, and ends with the last")
{
    Worker w;
    std::vector<std::uint64_t> seen;
    std::uint64_t revision = 0;
    for (int k = 0; k < 30; ++k) {
        w.post({++revision, shared_case("plain_panel", {{"thickness: 0.8 mm", "thickness: 0.8" + std::to_string(k + 10) + " mm"}}), k == 29 ? Stage::full : Stage::linear});
        std::this_thread::sleep_for(std::chrono::milliseconds(4));
        if (const auto a = w.poll()) seen.push_back(a->revision);
    }
    for (const auto& a : answers(w)) seen.push_back(a->revision);
    REQUIRE_FALSE(seen.empty());
    CHECK(std::is_sorted(seen.begin(), seen.end()));
    CHECK(seen.back() == revision);
}

TEST_CASE("worker: after a cancel nothing comes, and the next answer is right all the same")
{
    Worker w;
    const auto c = shared_case("condenser_door");
    w.post({1, c, Stage::effects});
    std::this_thread::sleep_for(std::chrono::milliseconds(30));
    CHECK(w.progress().busy);
    CHECK(w.progress().revision <= 1);
    w.cancel();
    CHECK(w.wait_idle(60));
    CHECK_FALSE(w.poll());
    CHECK_FALSE(w.progress().busy);
    const auto wall = shared_case("plain_panel");
    w.post({2, wall, Stage::full});
    const auto all = answers(w);
    REQUIRE_FALSE(all.empty());
    CHECK(report::check_json(*all.back()->outcome()) == direct(*wall));
}

TEST_CASE("worker: threads may post, poll, cancel and look at once")
{
    Worker w;
    const auto c = shared_case("plain_panel");
    std::vector<std::thread> threads;
    for (int t = 0; t < 4; ++t)
        threads.emplace_back([&w, &c, t] {
            for (std::uint64_t k = 0; k < 40; ++k) {
                if (t == 0) w.post({k, c, Stage::full});
                if (t == 1) (void)w.poll();
                if (t == 2 && k % 8 == 0) w.cancel();
                if (t == 3) (void)w.progress();
                std::this_thread::sleep_for(std::chrono::microseconds(300));
            }
        });
    for (std::thread& t : threads) t.join();
    w.post({1000, c, Stage::full});
    const auto all = answers(w);
    REQUIRE_FALSE(all.empty());
    CHECK(all.back()->revision == 1000);
}

TEST_CASE("worker: an end while it works waits for no more than the step it is in")
{
    Worker w;
    w.post({1, shared_case("condenser_door"), Stage::effects});
    std::this_thread::sleep_for(std::chrono::milliseconds(5));
}

TEST_CASE("each large-deflection load case is told before it begins, counted, and telling changes no byte")
{
    const auto c = shared_case("plain_panel", {{"analysis: {skin: automatic}", "analysis: {skin: large_deflection}"}});
    pipeline::Workspace w;
    std::vector<pipeline::Step> told;
    const pipeline::Analysis a = pipeline::analyse(*c, w, pipeline::Depth::full, {}, [&told](const pipeline::Step& step) { told.push_back(step); });
    REQUIRE(a.outcome);
    CHECK(report::check_json(*a.outcome) == direct(*c));
    std::size_t large = 0;
    for (const pipeline::Step& step : told) {
        if (step.of == 0) continue;
        CHECK(step.what.rfind("large deflection, ", 0) == 0);
        CHECK(step.done == large++);
        CHECK(step.of == a.outcome->load_cases.size());
    }
    CHECK(large == a.outcome->load_cases.size());
}

TEST_CASE("results shown: the last good ones stay, marked stale, with the reason")
{
    Worker w;
    ResultsShown shown;
    CHECK(shown.state(1, true) == ResultsShown::State::none);
    w.post({1, shared_case("plain_panel"), Stage::full});
    for (const auto& a : answers(w)) shown.take(a);
    CHECK(shown.state(1, true) == ResultsShown::State::current);
    CHECK(shown.state(2, true) == ResultsShown::State::stale);  // edited since
    CHECK(shown.state(1, false) == ResultsShown::State::stale); // the text has errors
    const auto good = shown.shown();
    w.post({2, shared_case("condenser_door", {{"at: [150 mm, 420 mm]", "at: [176 mm, 420 mm]"}}), Stage::full}); // on its angle's heel
    for (const auto& a : answers(w)) shown.take(a);
    CHECK(shown.shown() == good);
    CHECK(shown.state(2, true) == ResultsShown::State::stale);
    REQUIRE_FALSE(shown.why_stale().empty());
    CHECK(shown.why_stale().front().find("L1") != std::string::npos);
    CHECK(shown.newest()->analysis.layout == nullptr);
    REQUIRE(shown.newest()->drawn() != nullptr); // it cannot be worked out, but it is drawn
    CHECK(shown.newest()->drawn()->brackets.front().fasteners.front().at.x == 176);
}

// Fixed 2026-11-29: figures of a drag by linear theory were compared with refined ones, and those of a step with the file as opened.
TEST_CASE("results shown: compared are linear figures with linear ones and refined with refined, against the step before or an accepted state")
{
    const auto answer = [](std::uint64_t revision, Stage stage) {
        auto a = std::make_shared<Answer>();
        a->revision = revision;
        a->stage = stage;
        a->final = stage != Stage::linear;
        a->analysis.outcome.emplace();
        a->analysis.outcome->verdict = base::Verdict::pass;
        a->analysis.outcome->checks.emplace_back();
        return std::shared_ptr<const Answer>(a);
    };
    ResultsShown r;
    const auto linear1 = answer(1, Stage::linear), full1 = answer(1, Stage::full), dragged = answer(2, Stage::linear), linear3 = answer(3, Stage::linear), full3 = answer(3, Stage::full);
    r.take(linear1);
    CHECK(r.compared_with() == nullptr);
    r.take(full1);
    CHECK(r.compared_with() == nullptr); // nothing before it
    r.take(dragged);
    CHECK(r.compared_with() == linear1);
    r.take(linear3);
    CHECK(r.compared_with() == linear1); // the drag's states on the way are no steps
    r.take(full3);
    CHECK(r.compared_with() == full1);
    r.take(answer(4, Stage::linear));
    CHECK(r.compared_with() == linear3);
    r.take(answer(4, Stage::full));
    CHECK(r.compared_with() == full3); // the step before, not the first state
    r.accept();
    CHECK(r.compared_with() == nullptr); // it is the one shown
    const auto linear5 = answer(5, Stage::linear), full5 = answer(5, Stage::full);
    r.take(linear5);
    r.take(full5);
    for (std::uint64_t k = 6; k < 9; ++k) r.take(answer(k, Stage::full));
    REQUIRE(r.compared_with());
    CHECK(r.compared_with()->revision == 4);
    r.take(answer(9, Stage::linear));
    REQUIRE(r.compared_with());
    CHECK(r.compared_with()->stage == Stage::linear);
    r.compare_with_step_before();
    CHECK(r.compared_with() == nullptr); // the step before was never worked out by linear theory: nothing is said
}

TEST_SUITE_END();
