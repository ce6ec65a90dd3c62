#include "search/propose.h"

#include "layout/layout.h"
#include "search/apply.h"
#include "search/closest.h"
#include "search/describe.h"
#include "search/parallel.h"
#include "studies/effects.h"
#include "studies/single_loss.h"

#include <algorithm>
#include <chrono>
#include <fmt/core.h>
#include <map>

namespace thinskin::search {

namespace {

using results::ProposedScheme;

class Proposer {
public:
    Proposer(const model::Case& c, const ProposeOptions& options, std::stop_token stop)
        : case_(c), options_(options), stop_(std::move(stop)), wishes_(wishes_of(c)), threads_(threads_of(options.search)), searched_(search(c, options.search, stop_))
    {
    }

    Proposed run()
    {
        out_.answer.case_file = case_.file;
        out_.answer.title = case_.job.title;
        out_.answer.margin_wanted = wishes_.margin.value;
        out_.answer.cautions = searched_.cautions;
        out_.answer.cautions.push_back("natural frequencies are not looked at here: check the scheme that is taken");
        if (!searched_.front.empty()) take_front();
        else if (searched_.why_empty.empty()) take_closest();
        out_.answer.stopped = stop_.stop_requested();
        out_.answer.counts = searched_.counts;
        say();
        return std::move(out_);
    }

private:
    /// A scheme solved once more for its words; its place in the answer.
    struct Solved { model::Case edited; pipeline::Analysis analysis; };

    Solved solve(std::size_t i, pipeline::Workspace& w) const
    {
        Solved s{applied(searched_.written, searched_.candidates[i].choices), {}};
        s.analysis = pipeline::analyse(s.edited, w, pipeline::Depth::settled); // not stopped: what is found is kept
        return s;
    }

    void tell(const char* stage, std::size_t done, std::size_t of) const
    {
        if (options_.search.progress) options_.search.progress({stage, done, of, -1});
    }

    void take_front()
    {
        std::vector<Solved> solved(searched_.front.size());
        std::vector<pipeline::Workspace> w(threads_);
        tell("front", 0, solved.size());
        in_parallel(solved.size(), threads_, [&](std::size_t i, unsigned t) { solved[i] = solve(searched_.front[i], w[t]); });
        for (std::size_t i = 0; i < solved.size(); ++i) {
            Solved& s = solved[i];
            if (!s.analysis.outcome || !s.analysis.layout) continue;
            ProposedScheme p = described(searched_.candidates[searched_.front[i]], *s.analysis.layout, *s.analysis.outcome, wishes_);
            p.number = static_cast<int>(out_.answer.front.size()) + 1;
            take_standing(*s.analysis.outcome);
            out_.answer.front.push_back(std::move(p));
            outcomes_.push_back(std::move(*s.analysis.outcome));
            out_.cases.push_back(std::move(s.edited));
        }
        add_next_steps(out_.answer.front);
        const std::size_t some = std::min(options_.looked_at, out_.cases.size());
        tell("bad ends of assumptions", 0, some);
        if (options_.robust) in_parallel(some, threads_, [&](std::size_t i, unsigned t) { look_at_bad_ends(i, w[t]); });
        if (options_.single_loss) tell("single losses", 0, some);
        if (options_.single_loss) in_parallel(some, threads_, [&](std::size_t i, unsigned t) { lose_one(i, w[t]); });
    }

    void look_at_bad_ends(std::size_t i, pipeline::Workspace& w)
    {
        ProposedScheme::Robust worst{out_.answer.front[i].margin, out_.answer.front[i].verdict, "none of them makes it worse"};
        for (const studies::BadEnd& b : studies::bad_ends(out_.cases[i])) {
            const pipeline::Analysis a = pipeline::analyse(b.edited, w, pipeline::Depth::settled, stop_);
            if (stop_.stop_requested()) return;
            const bool figure = a.outcome && a.outcome->governing && a.outcome->verdict != base::Verdict::not_solved;
            const double margin = figure ? a.outcome->governing->margin() : -1;
            if (margin < worst.margin) worst = {margin, a.outcome ? a.outcome->verdict : base::Verdict::not_solved, fmt::format("{}: {}", b.what, b.words)};
        }
        out_.answer.front[i].robust = worst;
    }

    void lose_one(std::size_t i, pipeline::Workspace& w)
    {
        studies::add_single_loss(out_.cases[i], w, outcomes_[i], {}, stop_);
        if (!outcomes_[i].single_loss) return;
        const results::SingleLoss& s = *outcomes_[i].single_loss;
        ProposedScheme::Loss l;
        l.of = static_cast<int>(s.losses.size());
        for (const results::Loss& x : s.losses) l.survived += x.verdict == base::Verdict::pass ? 1 : 0;
        if (!s.losses.empty()) l.worst = s.losses[s.worst].what;
        out_.answer.front[i].loss = l;
    }

    void take_closest()
    {
        tell("closest scheme", 0, most_solved);
        const auto best = closest(searched_, wishes_.margin.value, threads_, stop_);
        if (!best) return;
        pipeline::Workspace w;
        Solved s = solve(*best, w);
        if (!s.analysis.outcome || !s.analysis.layout) return;
        out_.answer.closest = described(searched_.candidates[*best], *s.analysis.layout, *s.analysis.outcome, wishes_);
        take_standing(*s.analysis.outcome);
        out_.answer.relaxations = limits_lifted(searched_, wishes_, threads_, stop_);
        for (results::Relaxation& r : relaxations(s.edited, *s.analysis.outcome, wishes_.margin.value, threads_, stop_)) out_.answer.relaxations.push_back(std::move(r));
        out_.cases.push_back(std::move(s.edited));
    }

    void take_standing(const results::Outcome& o)
    {
        if (!out_.answer.exclusions.empty()) return;
        out_.answer.sha256 = o.sha256;
        out_.answer.exclusions = o.exclusions;
        out_.answer.not_covered = o.not_covered;
        for (const results::Check& c : o.checks)
            if (c.status == base::Status::not_covered) out_.answer.not_covered.push_back(fmt::format("{}{}: {}{}", c.required ? "REQUIRED: " : "", c.title, c.note, c.lift_with.empty() ? "" : "; lifted by " + c.lift_with));
    }

    void say()
    {
        results::Proposal& a = out_.answer;
        const std::string so_far = a.stopped ? " Stopped before the end: the best so far." : "";
        if (!a.front.empty()) {
            const ProposedScheme& first = a.front.front();
            const bool open = first.verdict != base::Verdict::pass;
            a.headline = fmt::format("{}: fewest holes ({}): {}. Least margin {}: {} ({}).{}", open ? "NOT COVERED, whichever scheme; in what is covered it can be done" : "CAN BE DONE", first.holes, first.words, margin_words(first.margin), first.tight.empty() ? "" : first.tight.front().check, first.tight.empty() ? "" : first.tight.front().load_case, so_far);
            if (open) a.advice = "Not covered comes first, see below: until it is lifted nothing here is a pass. ";
            a.advice += a.front.size() == 1 ? "No other scheme of the space has fewer holes, less mass, a lower cost class or more margin." : fmt::format("{} schemes are beaten by none on holes, mass, cost class and margin at once: choose among them.", a.front.size());
        } else if (a.closest) {
            say_nothing_holds(so_far);
        } else {
            a.headline = "NOTHING TO PROPOSE: " + (searched_.why_empty.empty() ? a.stopped ? std::string("stopped before anything was solved") : why_nothing_stands() : searched_.why_empty) + ".";
        }
    }

    void say_nothing_holds(const std::string& so_far)
    {
        results::Proposal& a = out_.answer;
        const ProposedScheme& c = *a.closest;
        const std::string limit = c.tight.empty() ? "no figure" : fmt::format("{} ({}), margin {}", c.tight.front().check, c.tight.front().load_case, margin_words(c.margin));
        a.headline = fmt::format("NOTHING HOLDS among {} schemes. Closest: {}. What binds: {}.{}", a.counts.space, c.words, limit, so_far);
        const auto enough = std::find_if(a.relaxations.begin(), a.relaxations.end(), [](const results::Relaxation& r) { return r.enough; });
        a.advice = enough == a.relaxations.end() ? "None of the changes tried makes it hold: hang less, or hang it elsewhere." : fmt::format("Cheapest change that makes it hold: {}{}.", enough->what, enough->margin ? ", margin " + margin_words(*enough->margin) : "");
        if (c.verdict == base::Verdict::not_covered) a.advice = "Something is not covered whatever is fitted, see below: it comes first. " + a.advice;
    }

    /// The reason that keeps most of the space from being built.
    std::string why_nothing_stands() const
    {
        std::map<std::string, int> why;
        for (const Candidate& k : searched_.candidates)
            if (!k.why.empty()) ++why[k.why];
        const auto most = std::max_element(why.begin(), why.end(), [](const auto& x, const auto& y) { return x.second < y.second; });
        return most == why.end() ? "no scheme can be built" : "no scheme of the space can be solved; most often: " + most->first;
    }

    const model::Case& case_;
    const ProposeOptions& options_;
    std::stop_token stop_;
    model::Propose wishes_;
    unsigned threads_;
    Searched searched_;
    std::vector<results::Outcome> outcomes_;
    Proposed out_;
};

} // namespace

Proposed propose(const model::Case& c, const ProposeOptions& options, std::stop_token stop)
{
    const auto began = std::chrono::steady_clock::now();
    Proposed p = Proposer(c, options, std::move(stop)).run();
    p.answer.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count();
    return p;
}

} // namespace thinskin::search
