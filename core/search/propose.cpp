#include "search/propose.h"

#include "layout/layout.h"
#include "search/apply.h"
#include "search/closest.h"
#include "search/describe.h"
#include "search/front.h"
#include "search/tidy.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <fmt/core.h>
#include <map>

namespace thinskin::search {

namespace {

using results::ProposedScheme;

std::vector<ProposedScheme::RestsOn> rests_on(const results::Outcome& o)
{
    std::vector<ProposedScheme::RestsOn> out;
    for (const results::RestsOn& r : o.rests_on) out.push_back({r.what + (r.margin ? ", least margin there in: " + r.least : ", no figure there"), r.key, {r.margin.value_or(-1), r.verdict}, false});
    return out;
}

class Proposer {
public:
    Proposer(const model::Case& c, const ProposeOptions& options, std::stop_token stop)
        : case_(c), asked_(options), options_(options), stop_(std::move(stop)), wishes_(wishes_of(c))
    {
        if (options.search.progress) options_.search.progress = [this](const Progress& p) { tell(p); };
        searched_ = search(c, options_.search, stop_);
    }

    Proposed run()
    {
        out_.answer.case_file = case_.file;
        out_.answer.title = case_.job.title;
        out_.answer.margin_wanted = wishes_.margin.value;
        out_.answer.cautions = searched_.cautions;
        if (!searched_.front.empty()) take_front();
        else if (searched_.why_empty.empty()) take_closest();
        out_.answer.stopped = stop_.stop_requested();
        out_.answer.counts = searched_.counts;
        say();
        return std::move(out_);
    }

private:
    /// Numbered over all that is to come: four stages, six where more is asked of the front; where nothing holds five or six.
    void tell(Progress p)
    {
        nothing_holds_ = nothing_holds_ || p.stage == stage_closest;
        p.steps = nothing_holds_ ? (sets_limits(wishes_) ? 6 : 5) : options_.robust || options_.single_loss ? 6 : 4;
        if (p.stage == stage_changes) p.step = p.steps;
        asked_.search.progress(p);
    }

    void take_front()
    {
        for (const std::size_t i : searched_.front) take_scheme(i);
        add_next_steps(out_.answer.front);
        const Front front{out_.answer.front, out_.cases, outcomes_, wishes_.margin.value};
        add_frequencies(front, options_, stop_);
        if (!outcomes_.empty()) take_standing(outcomes_.front());
        if (options_.robust) add_bad_ends(front, options_, stop_);
        if (options_.single_loss) add_losses(front, options_, stop_);
    }

    /// Its words and figures; it was solved when it was found.
    void take_scheme(std::size_t i)
    {
        model::Case edited = applied(searched_.written, searched_.candidates[i].choices);
        const layout::Result r = layout::resolve(edited);
        const auto outcome = searched_.outcomes.find(i);
        if (!r.layout || outcome == searched_.outcomes.end()) return;
        ProposedScheme p = described(searched_.candidates[i], *r.layout, *outcome->second, wishes_);
        p.number = static_cast<int>(out_.answer.front.size()) + 1;
        p.rests_on = rests_on(*outcome->second);
        out_.answer.front.push_back(std::move(p));
        outcomes_.push_back(*outcome->second);
        out_.cases.push_back(tidied(case_, edited));
    }

    void take_closest()
    {
        const auto best = closest(searched_, wishes_.margin.value, options_.search, stop_);
        if (sets_limits(wishes_) && !stop_.stop_requested()) out_.answer.relaxations = limits_lifted(case_, options_.search, stop_);
        pipeline::Workspace w;
        if (!best) {
            if (const pipeline::Analysis as_it_is = pipeline::analyse(case_, w, pipeline::Depth::margins, stop_); as_it_is.outcome) take_standing(*as_it_is.outcome);
            return;
        }
        const model::Case edited = applied(searched_.written, searched_.candidates[*best].choices);
        const pipeline::Analysis a = pipeline::analyse(edited, w, pipeline::Depth::settled); // not stopped: what is found is kept
        if (!a.outcome || !a.layout) return;
        out_.answer.closest = described(searched_.candidates[*best], *a.layout, *a.outcome, wishes_);
        out_.answer.closest->rests_on = rests_on(*a.outcome);
        binds_ = what_binds(*a.outcome, *out_.answer.closest);
        take_standing(*a.outcome);
        out_.cases.push_back(tidied(case_, edited));
        if (stop_.stop_requested()) return;
        for (results::Relaxation& r : relaxations(edited, *a.outcome, wishes_.margin.value, options_.search, stop_)) out_.answer.relaxations.push_back(std::move(r));
    }

    /// The tightest row; where its margin is enough, what is not covered of this scheme.
    std::string what_binds(const results::Outcome& o, const ProposedScheme& s) const
    {
        if (s.margin >= wishes_.margin.value)
            for (const results::Check& c : o.checks)
                if (c.required && c.status == base::Status::not_covered && !whichever_scheme(c)) return fmt::format("{} ({}) is not covered", c.title, c.load_case);
        return s.tight.empty() ? "no figure" : fmt::format("{} ({}), margin {}", s.tight.front().check, s.tight.front().load_case, margin_words(s.margin));
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
        } else if (a.stopped) {
            a.headline = "NOTHING FOUND YET: stopped before any scheme was found that holds; this does not say that none does.";
            if (a.closest) a.advice = fmt::format("Closest of those solved so far: {}; what binds: {}.", a.closest->words, binds_);
        } else if (a.closest) {
            say_nothing_holds();
        } else {
            a.headline = "NOTHING TO PROPOSE: " + (searched_.why_empty.empty() ? why_nothing_stands() : searched_.why_empty) + ".";
            if (searched_.why_empty.empty()) a.advice = cheapest();
        }
    }

    /// The first change that is enough, in words.
    std::string cheapest() const
    {
        const auto& all = out_.answer.relaxations;
        const auto enough = std::find_if(all.begin(), all.end(), [](const results::Relaxation& r) { return r.enough; });
        if (enough == all.end()) return "None of the changes tried makes it hold: hang less, or hang it elsewhere.";
        const bool open = enough->verdict != base::Verdict::pass;
        return fmt::format("Cheapest change that makes it hold{}: {}{}.", open ? " in what is covered; the rest stays NOT COVERED, and that is no pass" : "", enough->what, enough->margin ? ", margin " + margin_words(*enough->margin) : "");
    }

    void say_nothing_holds()
    {
        results::Proposal& a = out_.answer;
        a.headline = fmt::format("NOTHING HOLDS among {} schemes. Closest: {}. What binds: {}.", a.counts.space, a.closest->words, binds_);
        a.advice = cheapest();
        if (a.closest->verdict == base::Verdict::not_covered) a.advice = "Something is not covered, see below: it comes first. " + a.advice;
    }

    /// The limit that leaves nothing, else the reason that keeps most of the space from being built.
    std::string why_nothing_stands() const
    {
        double lightest = INFINITY;
        int fewest = 1000;
        std::map<std::string, int> why;
        for (const Candidate& k : searched_.candidates) {
            if (k.state == State::over_limit) lightest = std::min(lightest, k.mass_kg), fewest = std::min(fewest, k.skin_holes);
            else if (!k.why.empty()) ++why[k.why];
        }
        if (wishes_.added_mass && std::isfinite(lightest) && lightest > wishes_.added_mass->value) return fmt::format("the lightest scheme that can be built adds {:.1f} kg, {:g} kg are allowed (propose.added_mass)", std::ceil(lightest * 10 - 1e-6) / 10, wishes_.added_mass->value);
        if (wishes_.holes && std::isfinite(lightest) && fewest > *wishes_.holes) return fmt::format("no scheme that can be built has fewer than {} holes through the skin, {} are allowed (propose.holes)", fewest, *wishes_.holes);
        if (std::isfinite(lightest)) return "no scheme that can be built keeps both limits, propose.added_mass and propose.holes";
        const auto most = std::max_element(why.begin(), why.end(), [](const auto& x, const auto& y) { return x.second < y.second; });
        return most == why.end() ? "no scheme can be built" : "no scheme of the space can be solved; most often: " + most->first;
    }

    const model::Case& case_;
    const ProposeOptions& asked_;
    ProposeOptions options_;             ///< the same, with progress numbered
    std::stop_token stop_;
    model::Propose wishes_;
    bool nothing_holds_ = false;
    Searched searched_;
    std::string binds_;
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
