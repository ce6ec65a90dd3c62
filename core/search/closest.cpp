#include "search/closest.h"

#include "search/apply.h"
#include "search/counted.h"
#include "search/parallel.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <fmt/core.h>
#include <functional>
#include <set>

namespace thinskin::search {

namespace {

constexpr std::size_t together = 8;

using Cases = std::vector<model::Case>;

std::vector<Said> solved(const Cases& cases, double wanted, const Options& options, std::stop_token stop)
{
    std::vector<Said> said(cases.size());
    const unsigned threads = threads_of(options);
    std::vector<pipeline::Workspace> w(threads);
    in_parallel(cases.size(), threads, counted(options, {stage_changes, 6, 0, cases.size()}, each_counts_one, stop, [&](std::size_t i, unsigned t) { said[i] = settled(cases[i], wanted, w[t], stop); }));
    return said;
}

/// Unsolved ones with the largest upper bounds, one of each structure.
std::vector<std::size_t> most_promising(const Searched& s, double better_than)
{
    std::vector<std::size_t> all;
    for (std::size_t i = 0; i < s.candidates.size(); ++i)
        if (const Candidate& k = s.candidates[i]; k.state != State::impossible && k.state != State::over_limit && k.level < at_settled && k.upper > better_than) all.push_back(i);
    std::stable_sort(all.begin(), all.end(), [&](std::size_t a, std::size_t b) { return s.candidates[a].upper > s.candidates[b].upper; });
    std::set<std::size_t> structures;
    std::vector<std::size_t> out;
    for (std::size_t i : all)
        if (out.size() < together && structures.insert(s.candidates[i].structure).second) out.push_back(i);
    return out;
}

/// The same, once none of them has a bound of a few load cases alone: that says enough to turn a scheme down, not to rank it.
std::vector<std::size_t> promising_in_full(Searched& s, double better_than, const Options& options, std::stop_token stop)
{
    for (;;) {
        const std::vector<std::size_t> next = most_promising(s, better_than);
        std::vector<std::size_t> asked;
        for (std::size_t i : next)
            if (s.candidates[i].of_few) asked.push_back(i);
        if (asked.empty() || stop.stop_requested()) return next;
        const unsigned threads = threads_of(options);
        std::vector<pipeline::Workspace> w(threads);
        std::vector<Said> said(asked.size());
        in_parallel(asked.size(), threads, [&](std::size_t k, unsigned t) { said[k] = by_forces(applied(s.written, s.candidates[asked[k]].choices), w[t], stop); });
        for (std::size_t k = 0; k < asked.size() && !stop.stop_requested(); ++k) {
            Candidate& c = s.candidates[asked[k]];
            c.upper = std::min(c.upper, said[k].upper);
            c.of_few = false;
            ++s.counts.forces;
        }
    }
}

std::optional<std::size_t> best_of(const Searched& s)
{
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < s.candidates.size(); ++i)
        if (const Candidate& k = s.candidates[i]; k.level == at_settled && k.margin > -1 && (!best || k.margin > s.candidates[*best].margin)) best = i;
    return best;
}

struct Change { std::string what; std::function<bool(model::Case&)> on; };

bool softer_stop(model::Case& c, double times)
{
    if (!c.door || !c.door->slam) return false;
    c.door->slam->stop = {times * c.door->slam->stop.value, fmt::format("{:g} ms", 1000 * times * c.door->slam->stop.value)};
    return true;
}

bool doubler(model::Case& c)
{
    bool any = false;
    for (auto& f : c.panel.frame)
        if (f && f->inner) {
            f->inner->thickness = mm(f->inner->thickness.value + 0.5);
            any = true;
        }
    return any;
}

bool better_road(model::Case& c)
{
    if (!c.road || c.road->basis != model::Basis::quasi_static) return false;
    const std::string next = c.road->surface == "track" ? "unsealed" : c.road->surface == "unsealed" ? "sealed" : "";
    if (next.empty()) return false;
    c.road->surface = next;
    return true;
}

double stop_ms(const model::Case& c) { return c.door && c.door->slam ? 1000 * c.door->slam->stop.value : 0; }

Change buffers(const model::Case& c, double times)
{
    return {fmt::format("buffers that stop the door in {:g} ms instead of {:g} ms (door.slam.stop)", times * stop_ms(c), stop_ms(c)), [times](model::Case& x) { return softer_stop(x, times); }};
}

bool less_mass(model::Case& c, double share)
{
    if (!c.item) return false;
    c.item->mass = {share * c.item->mass.value, fmt::format("{:.3g} kg", share * c.item->mass.value)};
    return true;
}

Change lighter(double share)
{
    return {fmt::format("an item of {:.0f} % of the mass (item.mass)", 100 * share), [share](model::Case& c) { return less_mass(c, share); }};
}

std::vector<Change> changes(const model::Case& c)
{
    return {buffers(c, 2), buffers(c, 3), buffers(c, 5),
            {"a doubler of 0.5 mm on the frame's inner sheet where the angles end (panel.frame.inner.thickness)", doubler},
            {fmt::format("buffers that stop the door in {:g} ms and such a doubler", 2 * stop_ms(c)), [](model::Case& x) { return softer_stop(x, 2) && doubler(x); }},
            {"kept to the next better road (road.surface)", better_road},
            lighter(0.9), lighter(0.75), lighter(0.5),
            {fmt::format("buffers that stop the door in {:g} ms, a doubler of 0.5 mm on the frame's inner sheet and an item of 75 % of the mass", 3 * stop_ms(c)), [](model::Case& x) { return softer_stop(x, 3) && doubler(x) && less_mass(x, 0.75); }}};
}

results::Relaxation relaxation(const std::string& what, const Said& said)
{
    results::Relaxation r;
    r.what = what;
    if (said.outcome) r.verdict = said.outcome->verdict;
    if (said.margin > -1) r.margin = said.margin;
    r.enough = said.holds;
    return r;
}

/// A scheme that holds once the limits are lifted.
results::Relaxation beyond_limits(const Searched& s, std::size_t i, const char* with)
{
    const Candidate& k = s.candidates[i];
    const results::Outcome& o = *s.outcomes.at(i);
    return {fmt::format("{} holes through the skin and {:.1f} kg added{}: {}", k.skin_holes, std::ceil(k.mass_kg * 10 - 1e-6) / 10, with, words(k.choices)), o.verdict, k.margin, true};
}

} // namespace

std::optional<std::size_t> closest(Searched& s, double wanted, const Options& options, std::stop_token stop)
{
    const auto began = std::chrono::steady_clock::now();
    Options silent = options;
    silent.progress = {};
    for (std::size_t done = 0; done < most_solved && !stop.stop_requested();) {
        if (options.progress) options.progress({stage_closest, done, most_solved, left_at_pace(began, 0, done, most_solved), 4, 5, {}});
        const auto best = best_of(s);
        if (done > 0 && best && s.candidates[*best].margin < hopeless) break;
        const std::vector<std::size_t> next = promising_in_full(s, best ? s.candidates[*best].margin : -INFINITY, options, stop);
        if (next.empty()) break;
        Cases cases;
        for (std::size_t i : next) cases.push_back(applied(s.written, s.candidates[i].choices));
        const std::vector<Said> said = solved(cases, wanted, silent, stop);
        for (std::size_t i = 0; i < next.size() && !stop.stop_requested(); ++i) {
            s.candidates[next[i]].level = at_settled;
            s.candidates[next[i]].margin = said[i].margin;
            ++s.counts.settled;
        }
        done += next.size();
    }
    return best_of(s);
}

std::vector<results::Relaxation> relaxations(const model::Case& scheme, const results::Outcome& o, double wanted, const Options& options, std::stop_token stop)
{
    std::vector<results::Relaxation> out;
    if (o.verdict == base::Verdict::pass && o.governing) out.push_back({fmt::format("a margin of {:.2f} instead of {:.2f}", std::floor(o.governing->margin() * 100) / 100, wanted), o.verdict, o.governing->margin(), true});
    Cases cases;
    std::vector<std::string> whats;
    for (const Change& c : changes(scheme)) {
        model::Case edited = scheme;
        if (!c.on(edited)) continue;
        cases.push_back(std::move(edited));
        whats.push_back(c.what);
    }
    const std::vector<Said> said = solved(cases, wanted, options, stop);
    for (std::size_t i = 0; i < said.size(); ++i)
        if (!said[i].stopped) out.push_back(relaxation(whats[i], said[i]));
    return out;
}

bool sets_limits(const model::Propose& p) { return p.added_mass || p.holes || p.stock_only || !p.not_use.empty(); }

std::vector<results::Relaxation> limits_lifted(const model::Case& c, const Options& options, std::stop_token stop)
{
    model::Propose p = wishes_of(c);
    Options told = options;
    if (options.progress)
        told.progress = [&options](Progress now) {
            if (now.stage != stage_schemes) return;
            now.stage = stage_limits;
            now.step = 5;
            options.progress(now);
        };
    const auto without = [&](const char* said, auto lift) -> std::vector<results::Relaxation> {
        lift(p);
        model::Case freer = c;
        freer.propose = p;
        const Searched s = search(freer, told, stop);
        std::vector<results::Relaxation> out;
        if (s.front.empty() || stop.stop_requested()) return out;
        const auto lighter = [&](std::size_t a, std::size_t b) { return s.candidates[a].mass_kg < s.candidates[b].mass_kg; };
        for (const std::size_t i : std::set<std::size_t>{s.front.front(), *std::min_element(s.front.begin(), s.front.end(), lighter)}) out.push_back(beyond_limits(s, i, said));
        return out;
    };
    std::vector<results::Relaxation> out;
    if (p.added_mass || p.holes) out = without("", [](model::Propose& x) { x.added_mass.reset(), x.holes.reset(); });
    if (out.empty() && p.stock_only) out = without(" with more than what is on hand", [](model::Propose& x) { x.stock_only = false; });
    if (out.empty() && !p.not_use.empty()) out = without(" with what must not be used (propose.not_use)", [](model::Propose& x) { x.not_use.clear(); });
    return out;
}

} // namespace thinskin::search
