#include "worker/results_shown.h"

namespace thinskin::gui {

void ResultsShown::take(std::shared_ptr<const Answer> a)
{
    if (!a) return;
    newest_ = std::move(a);
    if (newest_->solved()) good_ = newest_;
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
