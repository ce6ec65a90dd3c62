#pragma once
#include "worker/worker.h"

#include <cstdint>
#include <memory>
#include <optional>
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

    // What is shown is compared with an earlier state (ghost, changes of margins), like with like: figures of linear theory with
    // those of linear theory, figures worked out in full with those worked out in full.
    /// From now on with the state that is shown.
    void accept();
    /// From now on with the state before the last step again.
    void compare_with_step_before() { accepted_.reset(); }
    [[nodiscard]] bool compares_with_accepted() const { return accepted_.has_value(); }
    /// Null: there is no such state, it is the one shown, or its figures of this kind were never worked out.
    [[nodiscard]] std::shared_ptr<const Answer> compared_with() const;

private:
    /// Both answers of one state of the document.
    struct Worked { std::uint64_t revision = 0; std::shared_ptr<const Answer> linear, full; };
    void keep(const std::shared_ptr<const Answer>& a);
    [[nodiscard]] const Worked* reference() const;

    std::shared_ptr<const Answer> newest_, good_;
    std::vector<Worked> worked_;                ///< oldest first
    std::optional<std::uint64_t> accepted_;     ///< its revision
};

} // namespace thinskin::gui
