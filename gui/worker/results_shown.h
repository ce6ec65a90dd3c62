#pragma once
#include "worker/worker.h"

#include <memory>
#include <string>
#include <vector>

namespace thinskin::gui {

/// Which result the window shows, and how: stale numbers are greyed, never shown as current. One thread.
class ResultsShown {
public:
    enum class State {
        none,     ///< nothing solved yet
        current,  ///< figures of the document as it is
        linear,   ///< of the document as it is, linear theory only; some load cases wait for large deflection (answer->linear_only)
        stale,    ///< of an earlier state: the new one is being solved, or could not be (see why_stale)
    };

    void take(std::shared_ptr<const Answer> a);               ///< from Worker::poll(); null is ignored
    /// State for a document at `revision`; readable = its text has no errors.
    [[nodiscard]] State state(std::uint64_t revision, bool readable) const;
    /// The last answer with margins; null: none yet.
    [[nodiscard]] const std::shared_ptr<const Answer>& shown() const { return good_; }
    /// The newest answer, margins or not: its layout is drawn, its diagnostics are listed.
    [[nodiscard]] const std::shared_ptr<const Answer>& newest() const { return newest_; }
    /// Why the newest state has no margins, one sentence each: geometry errors, not solved and why. Empty when it has.
    [[nodiscard]] std::vector<std::string> why_stale() const;

    /// The state the user compares with (ghost, delta margins).
    void accept() { accepted_ = good_; }
    void accept(std::shared_ptr<const Answer> a) { accepted_ = std::move(a); }
    [[nodiscard]] const std::shared_ptr<const Answer>& accepted() const { return accepted_; }

private:
    std::shared_ptr<const Answer> newest_, good_, accepted_;
};

} // namespace thinskin::gui
