#include "worker/results_shown.h"

#include <algorithm>

namespace thinskin::gui {

void ResultsShown::take(std::shared_ptr<const Answer> a)
{
    if (!a) return;
    newest_ = std::move(a);
    if (!newest_->solved()) return;
    good_ = newest_;
    keep(good_);
}

/// Kept are the accepted state, the last two that were worked out in full, and the newest.
void ResultsShown::keep(const std::shared_ptr<const Answer>& a)
{
    if (worked_.empty() || worked_.back().revision != a->revision) worked_.push_back({a->revision, nullptr, nullptr});
    (a->stage == Stage::linear ? worked_.back().linear : worked_.back().full) = a;
    int full = 0;
    std::vector<Worked> kept;
    for (auto w = worked_.rbegin(); w != worked_.rend(); ++w) {
        const bool newest = w == worked_.rbegin();
        full += w->full ? 1 : 0;
        if (newest || w->revision == accepted_ || (w->full && full <= 2)) kept.push_back(std::move(*w));
    }
    std::reverse(kept.begin(), kept.end());
    worked_ = std::move(kept);
}

void ResultsShown::accept()
{
    if (good_) accepted_ = good_->revision;
}

const ResultsShown::Worked* ResultsShown::reference() const
{
    for (auto w = worked_.rbegin(); w != worked_.rend(); ++w)
        if (accepted_ ? w->revision == *accepted_ : w->full && w->revision != good_->revision) return &*w;
    return nullptr;
}

std::shared_ptr<const Answer> ResultsShown::compared_with() const
{
    const Worked* w = good_ ? reference() : nullptr;
    if (!w || w->revision == good_->revision) return nullptr;
    return good_->stage == Stage::linear ? w->linear : w->full;
}

ResultsShown::State ResultsShown::state(std::uint64_t revision, bool readable) const
{
    if (!good_) return State::none;
    if (!readable || good_ != newest_ || good_->revision != revision) return State::stale;
    return good_->linear_only.empty() || good_->stage != Stage::linear ? State::current : State::linear;
}

std::vector<std::string> ResultsShown::why_stale() const
{
    std::vector<std::string> why;
    if (!newest_ || newest_->solved()) return why;
    for (const base::Diagnostic& d : newest_->analysis.diagnostics)
        if (d.severity == base::Severity::error) why.push_back(d.message + (d.hint.empty() ? "" : " (" + d.hint + ")"));
    if (const results::Outcome* o = newest_->outcome()) why.insert(why.end(), o->not_solved.begin(), o->not_solved.end());
    if (why.empty()) why.emplace_back("the case has nothing that can be checked");
    return why;
}

} // namespace thinskin::gui
