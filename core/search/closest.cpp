#include "search/closest.h"

#include "search/apply.h"
#include "search/parallel.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <functional>
#include <set>

namespace thinskin::search {

namespace {

constexpr std::size_t together = 8;

using Cases = std::vector<model::Case>;

std::vector<Said> solved(const Cases& cases, double wanted, unsigned threads, std::stop_token stop)
{
    std::vector<Said> said(cases.size());
    std::vector<pipeline::Workspace> w(threads);
    in_parallel(cases.size(), threads, [&](std::size_t i, unsigned t) { said[i] = settled(cases[i], wanted, w[t], stop); });
    return said;
}

/// Unsolved ones with the largest upper bounds, one of each structure.
std::vector<std::size_t> most_promising(const Searched& s, double better_than)
{
    std::vector<std::size_t> all;
    for (std::size_t i = 0; i < s.candidates.size(); ++i)
        if (const Candidate& k = s.candidates[i]; k.state != State::impossible && k.state != State::over_limit && k.level < 3 && k.upper > better_than) all.push_back(i);
    std::stable_sort(all.begin(), all.end(), [&](std::size_t a, std::size_t b) { return s.candidates[a].upper > s.candidates[b].upper; });
    std::set<std::size_t> structures;
    std::vector<std::size_t> out;
    for (std::size_t i : all)
        if (out.size() < together && structures.insert(s.candidates[i].structure).second) out.push_back(i);
    return out;
}

std::optional<std::size_t> best_of(const Searched& s)
{
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < s.candidates.size(); ++i)
        if (const Candidate& k = s.candidates[i]; k.level == 3 && k.margin > -1 && (!best || k.margin > s.candidates[*best].margin)) best = i;
    return best;
}

struct Change { std::string what; std::function<bool(model::Case&)> on; };

bool softer_stop(model::Case& c)
{
    if (!c.door || !c.door->slam) return false;
    c.door->slam->stop = {2 * c.door->slam->stop.value, fmt::format("{:g} ms", 2000 * c.door->slam->stop.value)};
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

Change lighter(double share)
{
    return {fmt::format("an item of {:.0f} % of the mass", 100 * share), [share](model::Case& c) {
                if (!c.item) return false;
                c.item->mass = {share * c.item->mass.value, fmt::format("{:.3g} kg", share * c.item->mass.value)};
                return true;
            }};
}

std::vector<Change> changes(const model::Case& c)
{
    const double stop = c.door && c.door->slam ? 2000 * c.door->slam->stop.value : 0;
    return {{fmt::format("buffers that stop the door in {:g} ms instead of {:g} ms", stop, stop / 2), softer_stop},
            {"a doubler of 0.5 mm on the frame's inner sheet where the angles end", doubler},
            {"such buffers and such a doubler", [](model::Case& x) { return softer_stop(x) && doubler(x); }},
            {"kept to the next better road", better_road},
            lighter(0.9), lighter(0.75), lighter(0.5)};
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

} // namespace

std::optional<std::size_t> closest(Searched& s, double wanted, unsigned threads, std::stop_token stop)
{
    for (std::size_t done = 0; done < most_solved && !stop.stop_requested();) {
        const auto best = best_of(s);
        const std::vector<std::size_t> next = most_promising(s, best ? s.candidates[*best].margin : -INFINITY);
        if (next.empty()) break;
        Cases cases;
        for (std::size_t i : next) cases.push_back(applied(s.written, s.candidates[i].choices));
        const std::vector<Said> said = solved(cases, wanted, threads, stop);
        for (std::size_t i = 0; i < next.size() && !stop.stop_requested(); ++i) {
            s.candidates[next[i]].level = 3;
            s.candidates[next[i]].margin = said[i].margin;
            ++s.counts.settled;
        }
        done += next.size();
    }
    return best_of(s);
}

std::vector<results::Relaxation> relaxations(const model::Case& scheme, const results::Outcome& o, double wanted, unsigned threads, std::stop_token stop)
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
    const std::vector<Said> said = solved(cases, wanted, threads, stop);
    for (std::size_t i = 0; i < said.size(); ++i)
        if (!said[i].stopped) out.push_back(relaxation(whats[i], said[i]));
    return out;
}

std::vector<results::Relaxation> limits_lifted(const Searched& s, const model::Propose& wishes, unsigned threads, std::stop_token stop)
{
    std::vector<std::size_t> beyond;
    for (std::size_t i = 0; i < s.candidates.size(); ++i)
        if (s.candidates[i].state == State::over_limit && s.candidates[i].upper >= wishes.margin.value) beyond.push_back(i);
    std::stable_sort(beyond.begin(), beyond.end(), [&](std::size_t a, std::size_t b) { return std::tuple(s.candidates[a].skin_holes, s.candidates[a].mass_kg) < std::tuple(s.candidates[b].skin_holes, s.candidates[b].mass_kg); });
    std::vector<std::size_t> some;
    for (std::size_t i = 0; i < most_solved && i < beyond.size(); ++i) some.push_back(beyond[i * beyond.size() / std::min(most_solved, beyond.size())]);
    Cases cases;
    for (std::size_t i : some) cases.push_back(applied(s.written, s.candidates[i].choices));
    const std::vector<Said> said = solved(cases, wishes.margin.value, threads, stop);
    for (std::size_t i = 0; i < some.size(); ++i)
        if (said[i].holds) {
            const Candidate& k = s.candidates[some[i]];
            return {relaxation(fmt::format("limits of {} holes through the skin and {:.1f} kg: {}", k.skin_holes, std::ceil(k.mass_kg * 10) / 10, words(k.choices)), said[i])};
        }
    return {};
}

} // namespace thinskin::search
