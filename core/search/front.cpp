#include "search/front.h"

#include "search/counted.h"
#include "search/parallel.h"
#include "studies/effects.h"
#include "studies/single_loss.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <fmt/core.h>
#include <numeric>

namespace thinskin::search {

namespace {

using results::ProposedScheme;

std::size_t looked_at(const Front& f, const ProposeOptions& o) { return std::min(o.looked_at, f.schemes.size()); }

/// f(i, workspace) for each i, on all threads, with progress.
template <class F> void each(std::size_t n, const char* stage, int step, const ProposeOptions& options, std::stop_token stop, F f)
{
    if (n == 0) return;
    const unsigned threads = threads_of(options.search);
    std::vector<pipeline::Workspace> w(threads);
    in_parallel(n, threads, counted(options.search, {stage, step, 0, n}, each_counts_one, stop, [&](std::size_t i, unsigned t) { f(i, w[t]); }));
}

ProposedScheme::Then then(const pipeline::Analysis& a)
{
    if (!a.outcome) return {};
    const bool figure = a.outcome->governing && a.outcome->verdict != base::Verdict::not_solved;
    return {figure ? a.outcome->governing->margin() : -1, a.outcome->verdict};
}

int rank(base::Verdict v) { return v == base::Verdict::pass ? 0 : v == base::Verdict::not_covered ? 1 : 2; }

bool worse(const ProposedScheme::Then& a, const ProposedScheme::Then& b) { return rank(a.verdict) != rank(b.verdict) ? rank(a.verdict) > rank(b.verdict) : a.margin < b.margin; }

/// One run: `what` is empty for all at once.
struct Ask { std::size_t scheme = 0; enum class Kind { one, all, hinges } kind = Kind::one; std::string with; model::Case edited; ProposedScheme::Then then; bool done = false, passes = false; };

std::vector<Ask> asks_of(std::size_t scheme, const model::Case& c)
{
    std::vector<Ask> out;
    for (studies::BadEnd& b : studies::bad_ends(c)) out.push_back({scheme, Ask::Kind::one, b.words.empty() ? b.what : fmt::format("{}: {}", b.what, b.words), std::move(b.edited), {}, false});
    out.push_back({scheme, Ask::Kind::all, "", studies::at_bad_ends(c), {}, false});
    if (c.door && c.door->hinges && c.door->hinges->evidence.kind != model::HingeEvidence::Kind::none) {
        out.push_back({scheme, Ask::Kind::hinges, "", c, {}, false});
        out.back().edited.door->hinges->evidence = {};
    }
    return out;
}

void take(const Ask& a, ProposedScheme::Robust& worst)
{
    if (a.kind == Ask::Kind::all) worst.together = a.then;
    else if (a.kind == Ask::Kind::hinges) worst.hinges_unknown = a.then.verdict;
    else if (worse(a.then, worst)) static_cast<ProposedScheme::Then&>(worst) = a.then, worst.with = a.with;
}

void rank_losses(std::vector<ProposedScheme>& schemes)
{
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < schemes.size(); ++i)
        if (schemes[i].loss) order.push_back(i);
    const auto key = [&](std::size_t i) {
        const ProposedScheme::Loss& l = *schemes[i].loss;
        return std::tuple(-static_cast<double>(l.survived) / std::max(1, l.of), -l.worst_margin, i);
    };
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
    for (std::size_t k = 0; k < order.size(); ++k) schemes[order[k]].loss->rank = static_cast<int>(k) + 1;
}

void take_losses(const results::SingleLoss& s, ProposedScheme& scheme)
{
    ProposedScheme::Loss l;
    l.of = static_cast<int>(s.losses.size());
    l.survived = static_cast<int>(std::count_if(s.losses.begin(), s.losses.end(), [&](const results::Loss& x) { return x.verdict == scheme.verdict && rank(x.verdict) < 2; }));
    if (!s.losses.empty()) {
        l.worst = s.losses[s.worst].what;
        l.worst_margin = s.losses[s.worst].least_margin.value_or(-1);
    }
    scheme.loss = l;
}

} // namespace

std::optional<ProposedScheme::Shaking> shaking_of(const results::Outcome& o)
{
    if (!o.vibration.run && o.vibration.why_not.empty()) return std::nullopt;
    ProposedScheme::Shaking s;
    const auto hung = std::find_if(o.vibration.modes.begin(), o.vibration.modes.end(), results::is_hung);
    if (hung != o.vibration.modes.end()) s.lowest_Hz = hung->frequency_Hz;
    const results::Check* first = nullptr;
    int rows = 0, clear = 0;
    for (const results::Check& c : o.checks) {
        if (c.group != "vibration") continue;
        ++rows;
        const bool passes = c.status == base::Status::pass || c.status == base::Status::judgement;
        clear += passes ? 1 : 0;
        if (!passes && (!first || (c.status == base::Status::fail && first->status != base::Status::fail))) first = &c;
    }
    s.clear = rows > 0 && clear == rows;
    if (first) s.words = fmt::format("{}: {}{}", first->title, first->status == base::Status::fail ? "too near" : "not covered", first->note.empty() ? "" : ", " + first->note);
    else s.words = rows > 0 ? "clear of everything that shakes it" : o.vibration.why_not.empty() ? "nothing to compare with" : o.vibration.why_not;
    return s;
}

void add_frequencies(const Front& f, const ProposeOptions& options, std::stop_token stop)
{
    each(f.schemes.size(), stage_frequencies, 4, options, stop, [&](std::size_t i, pipeline::Workspace& w) {
        pipeline::Analysis a = pipeline::analyse(f.cases[i], w, pipeline::Depth::full, stop);
        if (!a.outcome || stop.stop_requested()) return;
        f.outcomes[i] = std::move(*a.outcome);
        f.schemes[i].shaking = shaking_of(f.outcomes[i]);
    });
}

void add_bad_ends(const Front& f, const ProposeOptions& options, std::stop_token stop)
{
    std::vector<Ask> all;
    for (std::size_t i = 0; i < looked_at(f, options); ++i)
        for (Ask& a : asks_of(i, f.cases[i])) all.push_back(std::move(a));
    each(all.size(), stage_bad_ends, 5, options, stop, [&](std::size_t k, pipeline::Workspace& w) {
        const pipeline::Analysis a = pipeline::analyse(all[k].edited, w, pipeline::Depth::settled, stop);
        all[k].then = then(a);
        all[k].passes = a.outcome && passes(*a.outcome);
        all[k].done = !stop.stop_requested();
    });
    if (!std::all_of(all.begin(), all.end(), [](const Ask& a) { return a.done; })) return;
    for (const Ask& a : all) {
        ProposedScheme& s = f.schemes[a.scheme];
        if (!s.robust) s.robust = {{s.margin, s.verdict}, "none of them makes it worse", {}, {}};
        take(a, *s.robust);
        if (a.kind == Ask::Kind::one && !(a.passes && a.then.margin >= f.wanted)) s.rests_on.push_back({a.with, "", a.then, true});
    }
}

void add_losses(const Front& f, const ProposeOptions& options, std::stop_token stop)
{
    const std::size_t n = looked_at(f, options);
    std::size_t all = 0;
    for (std::size_t i = 0; i < n; ++i) all += studies::single_losses(f.cases[i], studies::default_rust_mm).size();
    const unsigned threads = threads_of(options.search);
    std::vector<pipeline::Workspace> w(threads);
    std::atomic<std::size_t> done{0};
    const auto began = std::chrono::steady_clock::now();
    in_parallel(n, threads, [&](std::size_t i, unsigned thread) {
        studies::SingleLossOptions o;
        o.progress = [&, thread](int, int, const std::string&) { // one loss, not one scheme, at a time
            const std::size_t now = done++;
            if (thread == 0 && options.search.progress) options.search.progress({stage_losses, now, all, left_at_pace(began, 0, now, all), 6, 4, {}});
        };
        if (!stop.stop_requested()) studies::add_single_loss(f.cases[i], w[thread], f.outcomes[i], o, stop);
        if (f.outcomes[i].single_loss) take_losses(*f.outcomes[i].single_loss, f.schemes[i]);
    });
    rank_losses(f.schemes);
}

} // namespace thinskin::search
