#include "studies/single_loss.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <map>
#include <utility>

namespace thinskin::studies {

namespace {

using base::Verdict;
using results::Loss;

/// Without the part nothing holds what hung on it: no figure, and no pass.
Loss lets_go(const LossEdit& e, const std::string& why)
{
    Loss l;
    l.what = e.what;
    l.kind = e.kind;
    l.verdict = Verdict::fail;
    l.note = why + ": it lets go";
    return l;
}

const results::Check* first_open(const results::Outcome& o)
{
    const auto it = std::find_if(o.checks.begin(), o.checks.end(), [](const results::Check& c) { return c.required && c.status == base::Status::not_covered; });
    return it == o.checks.end() ? nullptr : &*it;
}

using Margins = std::map<std::pair<std::string, std::string>, double>;

Margins margins_of(const results::Outcome& o)
{
    Margins all;
    for (const results::Check& c : o.checks)
        if (c.has_numbers()) all.emplace(std::pair(c.id, c.load_case), c.margin());
    return all;
}

/// Checks stand least margin first, so the first that became worse is the one.
std::optional<Loss::Hit> hit_of(const Margins& as_is, const results::Outcome& o)
{
    constexpr double noticeable = 0.01;
    for (const results::Check& c : o.checks) {
        if (!c.has_numbers() || !c.required || c.load_case == "geometry") continue;
        const auto before = as_is.find({c.id, c.load_case});
        if (before != as_is.end() && !(c.margin() < before->second - noticeable)) continue;
        return Loss::Hit{c.title, c.part, c.load_case, before == as_is.end() ? std::nullopt : std::optional(before->second), c.margin()};
    }
    return std::nullopt;
}

Loss loss_of(const LossEdit& e, const Margins& as_is, const results::Outcome& o)
{
    Loss l;
    l.what = e.what;
    l.kind = e.kind;
    l.verdict = o.verdict;
    if (o.governing && o.verdict != Verdict::not_solved) {
        l.least_margin = o.governing->margin();
        l.check = o.governing->title;
        l.part = o.governing->part;
        l.load_case = o.governing->load_case;
        l.hit = hit_of(as_is, o);
    }
    if (o.verdict == Verdict::not_solved) l.note = o.not_solved.empty() ? "not solved" : o.not_solved.front();
    if (const results::Check* open = first_open(o); open && o.verdict == Verdict::not_covered) l.note = open->title + ": " + open->note;
    return l;
}

/// A part that is free to move is not held: no question of figures.
bool is_mechanism(const results::Outcome& o)
{
    return o.verdict == Verdict::not_solved && !o.not_solved.empty() && o.not_solved.front().find("free to") != std::string::npos;
}

Loss run(const LossEdit& e, const Margins& as_is, pipeline::Workspace& workspace, bool strict, std::stop_token stop)
{
    if (!e.alone.empty()) return lets_go(e, e.alone);
    pipeline::Analysis a = pipeline::analyse(e.edited, workspace, pipeline::Depth::settled, stop);
    if (a.outcome && is_mechanism(*a.outcome)) return lets_go(e, a.outcome->not_solved.front());
    if (a.outcome) {
        if (strict) pipeline::apply_strict(*a.outcome);
        return loss_of(e, as_is, *a.outcome);
    }
    Loss l;
    l.what = e.what;
    l.kind = e.kind;
    l.verdict = Verdict::not_solved;
    l.note = a.diagnostics.empty() ? "no result" : a.diagnostics.front().message;
    return l;
}

/// Worse first: fails before not solved before not covered before pass, then the lesser margin; a loss without a figure before one with.
int rank(Verdict v) { return v == Verdict::fail ? 0 : v == Verdict::not_solved ? 1 : v == Verdict::not_covered ? 2 : 3; }

double hit_margin(const Loss& l) { return l.hit ? l.hit->after : INFINITY; }

bool worse(const Loss& a, const Loss& b)
{
    if (rank(a.verdict) != rank(b.verdict)) return rank(a.verdict) < rank(b.verdict);
    const double margin_a = a.least_margin.value_or(-INFINITY), margin_b = b.least_margin.value_or(-INFINITY);
    if (margin_a != margin_b) return margin_a < margin_b;
    return hit_margin(a) < hit_margin(b);
}

std::string margin_text(double m) { return m > 5 ? "more than +5" : fmt::format("{:+.2f}", std::floor(m * 100) / 100); }

/// What the loss spoils: the check it hits, else the governing one.
std::string margin_words(const Loss& l)
{
    if (l.hit) return fmt::format("{} ({}), margin {}", l.hit->check, l.hit->load_case, margin_text(l.hit->after));
    if (l.least_margin) return fmt::format("{} ({}), margin {}", l.check, l.load_case, margin_text(*l.least_margin));
    return l.note;
}

int count(const std::vector<Loss>& all, Verdict v) { return static_cast<int>(std::count_if(all.begin(), all.end(), [v](const Loss& l) { return l.verdict == v; })); }

/// One sentence: what the loss that matters most does.
std::string headline(const results::Outcome& as_is, const results::SingleLoss& s)
{
    if (s.losses.empty()) return "Single loss: the case has no fastener, strap or skin to lose.";
    const Loss& worst = s.losses[s.worst];
    const int n = static_cast<int>(s.losses.size()), failing = count(s.losses, Verdict::fail);
    if (as_is.verdict == Verdict::fail) return fmt::format("Single loss: it fails with nothing lost; worst without {}: {}.", worst.what, margin_words(worst));
    switch (worst.verdict) {
    case Verdict::fail: return fmt::format("Single loss: FAILS without {}: {}; {} of {} single losses turn it to fail.", worst.what, margin_words(worst), failing, n);
    case Verdict::not_solved: return fmt::format("Single loss: no result without {}: {}.", worst.what, worst.note);
    case Verdict::not_covered: return fmt::format("Single loss: none of {} turns it to fail, but without {} it is not covered: {}.", n, worst.what, worst.note);
    case Verdict::pass: return fmt::format("Single loss: holds with any one of {} lost; worst without {}: {}.", n, worst.what, margin_words(worst));
    }
    return "";
}

} // namespace

void add_single_loss(const model::Case& c, pipeline::Workspace& workspace, results::Outcome& outcome, const SingleLossOptions& options, std::stop_token stop)
{
    const std::vector<LossEdit> edits = single_losses(c, options.rust_mm);
    const Margins as_is = margins_of(outcome);
    results::SingleLoss s;
    s.verdict = outcome.verdict;
    s.rust_mm = options.rust_mm;
    for (const LossEdit& e : edits) {
        if (options.progress) options.progress(static_cast<int>(s.losses.size()), static_cast<int>(edits.size()), e.what);
        s.losses.push_back(run(e, as_is, workspace, options.strict, stop));
        if (stop.stop_requested()) return;
    }
    const auto worst = std::min_element(s.losses.begin(), s.losses.end(), worse);
    s.worst = static_cast<std::size_t>(worst - s.losses.begin());
    if (worst != s.losses.end() && rank(worst->verdict) < rank(s.verdict)) s.verdict = worst->verdict;
    s.headline = headline(outcome, s);
    outcome.single_loss = std::move(s);
}

} // namespace thinskin::studies
