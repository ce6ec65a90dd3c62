#include "search/search.h"

#include "layout/layout.h"
#include "search/apply.h"
#include "search/counted.h"
#include "search/describe.h"
#include "search/parallel.h"
#include "search/prepare.h"

#include <algorithm>
#include <chrono>
#include <fmt/core.h>
#include <map>
#include <memory>
#include <numeric>
#include <set>
#include <thread>

namespace thinskin::search {

namespace {

constexpr std::size_t round_size = 32;      ///< fixed, so that the threads do not decide what is solved
constexpr std::size_t workspace_life = 150; ///< questions; then its columns of parts that are gone are let go

/// A warm workspace of each thread.
class Workspaces {
public:
    explicit Workspaces(unsigned threads) : all_(threads) {}
    pipeline::Workspace& of(unsigned thread)
    {
        One& one = all_[thread];
        if (!one.w || ++one.used % workspace_life == 0) one.w = std::make_unique<pipeline::Workspace>();
        return *one.w;
    }

private:
    struct One { std::unique_ptr<pipeline::Workspace> w; std::size_t used = 0; };
    std::vector<One> all_;
};

class Search {
public:
    Search(const model::Case& c, const Options& options, Searched& s, std::stop_token stop)
        : options_(options), s_(s), stop_(std::move(stop)), wanted_(wishes_of(c).margin.value), threads_(threads_of(options)), workspaces_(threads_)
    {
        for (std::size_t i = 0; i < s_.candidates.size(); ++i) {
            const Candidate& k = s_.candidates[i];
            if (k.state == State::impossible) continue;
            if (k.structure >= families_.size()) families_.resize(k.structure + 1);
            families_[k.structure].push_back(i);
            cousins_[kind_words(k.choices)].push_back(i);
            if (options_.exhaustive && k.state == State::discarded) s_.candidates[i].state = State::waiting;
            if (s_.candidates[i].state == State::waiting) line_.push_back(i);
        }
        std::stable_sort(line_.begin(), line_.end(), [this](std::size_t a, std::size_t b) { return earlier(a, b); });
    }

    void run()
    {
        const std::size_t from = s_.candidates.size() - line_.size();
        const auto began = std::chrono::steady_clock::now();
        while (!stop_.stop_requested()) {
            const std::vector<std::size_t> batch = next_batch();
            tell(from, began);
            if (batch.empty()) return;
            const std::vector<Said> said = answers(batch);
            for (std::size_t k = 0; k < batch.size(); ++k) take(batch[k], said[k]);
        }
    }

private:
    bool earlier(std::size_t a, std::size_t b) const
    {
        const Worth &p = s_.candidates[a].worth, &q = s_.candidates[b].worth;
        return std::tuple(p.holes, p.mass_100g, p.cost, a) < std::tuple(q.holes, q.mass_100g, q.cost, b);
    }

    bool beaten(std::size_t i) const
    {
        const Candidate& k = s_.candidates[i];
        const Place at_best{k.worth, as_printed(k.upper), i};
        return std::any_of(holding_.begin(), holding_.end(), [&](const Place& p) { return beats(p, at_best); });
    }

    /// Takes what is decided out of the line and gives the first few of the rest, no two of one structure.
    std::vector<std::size_t> next_batch()
    {
        std::vector<std::size_t> batch;
        std::set<std::size_t> structures;
        std::erase_if(line_, [&](std::size_t i) {
            Candidate& k = s_.candidates[i];
            if (k.state != State::waiting) return true;
            if (batch.size() == round_size) return false;
            if (!options_.exhaustive && beaten(i)) {
                k.state = State::beaten;
                return true;
            }
            if (structures.insert(k.structure).second || options_.exhaustive) batch.push_back(i);
            return false;
        });
        return batch;
    }

    int level_of(std::size_t i) const { return options_.exhaustive ? at_whole : s_.candidates[i].level; }

    /// The answers, each at its place. Long questions are begun first, so that the threads end together.
    std::vector<Said> answers(const std::vector<std::size_t>& batch)
    {
        std::vector<std::size_t> turn(batch.size());
        std::iota(turn.begin(), turn.end(), 0);
        std::stable_sort(turn.begin(), turn.end(), [&](std::size_t a, std::size_t b) { return level_of(batch[a]) > level_of(batch[b]); });
        std::vector<Said> said(batch.size());
        in_parallel(batch.size(), threads_, [&](std::size_t k, unsigned thread) { said[turn[k]] = ask(batch[turn[k]], workspaces_.of(thread)); });
        return said;
    }

    /// The next cheaper question first; exhaustive: the last one at once.
    Said ask(std::size_t i, pipeline::Workspace& w)
    {
        const model::Case edited = applied(s_.written, s_.candidates[i].choices);
        switch (level_of(i)) {
        case at_bounds: return by_forces_of_few(edited, w);
        case at_forces: return by_parked(edited, w, stop_);
        case at_parked: return by_margins(edited, w, stop_);
        default: return settled(edited, wanted_, w, stop_);
        }
    }

    /// First the load cases that decided most of the earlier schemes; all of them where these do not decide.
    Said by_forces_of_few(const model::Case& edited, pipeline::Workspace& w) const
    {
        if (few_.empty()) return by_forces(edited, w, stop_);
        if (Said few = by_forces(edited, w, stop_, few_); few.stopped || few.upper < wanted_) return few;
        Said all = by_forces(edited, w, stop_);
        all.analyses = 2;
        return all;
    }

    void count_deciding(const Said& said)
    {
        constexpr std::size_t most = 3;
        if (said.upper_in.empty() || !(said.upper < wanted_)) return;
        ++decided_[said.upper_in];
        std::vector<std::pair<int, std::string>> order;
        for (const auto& [name, times] : decided_) order.emplace_back(-times, name);
        std::sort(order.begin(), order.end());
        few_.clear();
        for (std::size_t k = 0; k < std::min(most, order.size()); ++k) few_.push_back(order[k].second);
    }

    void take(std::size_t i, const Said& said)
    {
        if (said.stopped) return;
        count_deciding(said);
        Candidate& k = s_.candidates[i];
        const int level = level_of(i);
        (level == at_whole ? s_.counts.settled : level == at_parked ? s_.counts.without_stress : level == at_forces ? s_.counts.parked : s_.counts.forces) += said.analyses;
        k.of_few = said.of_few;
        k.level = level == at_bounds && !said.needs_large ? at_parked : level + 1;
        lower(k, said.upper, level == at_whole ? "" : level == at_bounds ? "forces by linear theory" : "all but the skin's stress", By::itself);
        if (level == at_whole) {
            k.margin = said.margin;
            k.state = said.holds ? State::holds : State::fails;
            if (said.holds) keep(i, *said.outcome);
        }
        if (!options_.exhaustive) tell_relatives(i, said);
    }

    /// Outcomes are large: only of those that nothing solved so far beats.
    void keep(std::size_t i, const results::Outcome& o)
    {
        const Place place{s_.candidates[i].worth, as_printed(s_.candidates[i].margin), i};
        if (std::none_of(holding_.begin(), holding_.end(), [&](const Place& p) { return beats(p, place); })) s_.outcomes[i] = std::make_shared<const results::Outcome>(o);
        std::erase_if(s_.outcomes, [&](const auto& kept) {
            const Candidate& k = s_.candidates[kept.first];
            return kept.first != i && beats(place, {k.worth, as_printed(k.margin), kept.first});
        });
        holding_.push_back(place);
    }

    /// What one solution says of those that it was not made for.
    void tell_relatives(std::size_t i, const Said& said)
    {
        const Candidate k = s_.candidates[i];
        for (std::size_t sister : families_[k.structure]) {
            Candidate& s = s_.candidates[sister];
            if (sister == i) continue;
            const bool twin = s.twins == k.twins;
            if (twin && !said.of_few) s.level = std::max(s.level, std::min<int>(k.level, at_whole));
            lower(s, twin ? upper_of_twin(said, s.bolt) : upper_of_sister(said, s.bolt), twin ? "a scheme with bolts of another grade" : "a scheme with other bolts");
        }
        if (said.upper_of_cousins >= wanted_) return;
        for (std::size_t cousin : cousins_[kind_words(k.choices)]) lower(s_.candidates[cousin], said.upper_of_cousins, "a scheme of the same kind, by the skin alone");
    }

    enum class By { itself, relative };
    void lower(Candidate& k, double upper, const char* why, By by = By::relative)
    {
        k.upper = std::min(k.upper, upper);
        if (k.state != State::waiting || k.upper >= wanted_ || *why == 0) return;
        k.state = State::discarded;
        k.why = why;
        if (by == By::relative) ++s_.counts.by_sisters;
    }

    void tell(std::size_t from, std::chrono::steady_clock::time_point began) const
    {
        if (!options_.progress) return;
        const std::size_t all = s_.candidates.size(), done = all - line_.size();
        options_.progress({stage_schemes, done, all, left_at_pace(began, from, done, all), 3, 3, so_far()});
    }

    /// Of those that hold the one with the fewest holes, of these the one with the largest margin.
    std::string so_far() const
    {
        const auto first = std::min_element(holding_.begin(), holding_.end(), [](const Place& a, const Place& b) { return std::tuple(a.worth.holes, -a.margin) < std::tuple(b.worth.holes, -b.margin); });
        if (first == holding_.end()) return "";
        const Candidate& k = s_.candidates[first->order];
        return fmt::format("{} hold; fewest holes {}, margin {}: {}", holding_.size(), first->worth.holes, margin_words(k.margin), words(k.choices));
    }

    const Options& options_;
    Searched& s_;
    std::stop_token stop_;
    double wanted_;
    unsigned threads_;
    Workspaces workspaces_;
    std::vector<std::vector<std::size_t>> families_;
    std::map<std::string, std::vector<std::size_t>> cousins_;
    std::vector<std::size_t> line_;       ///< waiting, cheapest first
    std::vector<Place> holding_;
    std::map<std::string, int> decided_; ///< schemes, by the load case that said the least
    pipeline::Only few_;                  ///< the first of these
};

void take_front(Searched& s)
{
    std::vector<Place> holding;
    for (std::size_t i = 0; i < s.candidates.size(); ++i)
        if (s.candidates[i].state == State::holds) holding.push_back({s.candidates[i].worth, as_printed(s.candidates[i].margin), i});
    for (const Place& p : holding)
        if (std::none_of(holding.begin(), holding.end(), [&](const Place& q) { return q.order != p.order && beats(q, p); })) s.front.push_back(p.order);
    std::sort(s.front.begin(), s.front.end(), [&](std::size_t a, std::size_t b) {
        const Candidate &p = s.candidates[a], &q = s.candidates[b];
        return std::tuple(p.worth.holes, p.worth.mass_100g, p.worth.cost, -as_printed(p.margin), a) < std::tuple(q.worth.holes, q.worth.mass_100g, q.worth.cost, -as_printed(q.margin), b);
    });
}

void count(Searched& s)
{
    results::ProposalCounts& n = s.counts;
    n.space = s.candidates.size();
    for (const Candidate& k : s.candidates) {
        if (k.state == State::impossible) ++n.impossible;
        if (k.state == State::over_limit) ++n.over_limit;
        if (k.state == State::discarded) ++n.discarded;
        if (k.state == State::beaten) ++n.beaten;
        if (k.state == State::fails) ++n.fail;
        if (k.state == State::holds) ++n.hold;
        if (k.state == State::waiting) ++n.open;
    }
}

/// Evenly spaced over the whole space.
void thin_out(std::vector<Choices>& all, std::size_t most)
{
    if (most == 0 || all.size() <= most) return;
    std::vector<Choices> out;
    for (std::size_t i = 0; i < most; ++i) out.push_back(all[i * all.size() / most]);
    all = std::move(out);
}

} // namespace

unsigned threads_of(const Options& options)
{
    return options.threads > 0 ? options.threads : std::min(4U, std::max(1U, std::thread::hardware_concurrency()));
}

Searched search(const model::Case& c, const Options& options, std::stop_token stop)
{
    Searched s;
    Space space = space_of(c);
    s.cautions = space.cautions;
    s.why_empty = space.why_empty;
    s.written = layout::written_out(c);
    thin_out(space.schemes, options.schemes);
    for (const Choices& k : space.schemes) s.candidates.emplace_back().choices = k;
    prepare(c, options, s, stop);
    s.counts.by_bounds = static_cast<std::size_t>(std::count_if(s.candidates.begin(), s.candidates.end(), [](const Candidate& k) { return k.state == State::discarded; }));
    if (!stop.stop_requested()) Search(c, options, s, stop).run();
    s.stopped = stop.stop_requested();
    take_front(s);
    count(s);
    return s;
}

} // namespace thinskin::search
