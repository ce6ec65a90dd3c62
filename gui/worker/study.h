#pragma once
#include "results/spread.h"
#include "search/propose.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

namespace thinskin::gui {

enum class StudyKind { none, proposal, spread };

/// What a study found; immutable, shared between the threads.
struct StudyAnswer {
    StudyKind kind = StudyKind::none;
    std::shared_ptr<const model::Case> source;      ///< the case that was looked at
    std::optional<search::Proposed> proposed;       ///< of a proposal
    std::optional<results::Spread> spread;          ///< of a spread
    bool stopped = false;                           ///< before its end: the best so far, the runs so far
    std::string why;                                ///< it could not be done; nothing else is set
};

/// What runs, for a bar; of = 0: not known how much there is. seconds_left < 0: not known yet.
struct StudyProgress {
    StudyKind kind = StudyKind::none;               ///< none: nothing runs
    std::string stage;
    std::size_t done = 0, of = 0;
    double seconds = 0, seconds_left = -1;
    bool stopping = false;
};

/// Work of seconds or minutes beside the worker that keeps the margins up to date: proposals, and the spread over what nobody measured.
/// One at a time on a thread of its own; a new one stops the old one, whose answer is dropped. All members may be called from any thread.
class Study {
public:
    Study();
    ~Study();
    Study(const Study&) = delete;
    Study& operator=(const Study&) = delete;

    /// `robust`: those that hold once more with bad ends of assumptions, with single losses, and their natural frequencies.
    /// `threads` for the search: one core is left to the window and its margins. 0: so many as there are beside that one.
    void propose(std::shared_ptr<const model::Case> c, bool robust, std::size_t schemes = 0, unsigned threads = 0);
    /// `nominal_margin`: least margin of the case as it stands.
    void spread(std::shared_ptr<const model::Case> c, double nominal_margin, int samples);
    void stop();                                    ///< its answer comes, with what there is so far
    void drop();                                    ///< stops it, and no answer comes
    [[nodiscard]] StudyProgress progress() const;
    /// Answer not yet fetched; null = nothing new.
    [[nodiscard]] std::shared_ptr<const StudyAnswer> poll();
    bool wait_idle(double seconds);

private:
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

} // namespace thinskin::gui
