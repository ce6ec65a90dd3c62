#pragma once
#include "model/case.h"
#include "pipeline/analyse.h"

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace thinskin::gui {

/// How far a request is worked out, one stage after the other; each stage gives an answer.
enum class Stage {
    linear,   ///< linear theory in every load case, no natural frequencies: tens of milliseconds, for a drag
    full,     ///< large deflection where it is needed, natural frequencies: what `thinskin check` prints
    effects,  ///< and the effect of each assumption on the governing margin
};

struct Request {
    std::uint64_t revision = 0;                 ///< of the document
    std::shared_ptr<const model::Case> value;   ///< must not be null
    Stage upto = Stage::full;                   ///< linear while dragging, full on release
};

/// An immutable result, shared between the threads. `source` keeps alive what the layout points at.
struct Answer {
    std::uint64_t revision = 0;
    Stage stage = Stage::linear;
    bool final = false;                         ///< the figures are those of `check`; nothing more will come for this request
    std::shared_ptr<const model::Case> source;
    pipeline::Analysis analysis;                ///< no outcome: the case itself is wrong, see its diagnostics
    std::shared_ptr<const layout::Layout> in_error; ///< where the geometry cannot be: its parts all the same, for the drawing alone
    std::vector<std::string> linear_only;       ///< load cases that need large deflection and have only linear figures here
    double milliseconds = 0;                    ///< from the start of the request's work to this answer

    [[nodiscard]] const results::Outcome* outcome() const { return analysis.outcome ? &*analysis.outcome : nullptr; }
    [[nodiscard]] bool solved() const;          ///< has margins
    [[nodiscard]] const layout::Layout* drawn() const { return analysis.layout ? analysis.layout.get() : in_error.get(); } ///< null: nothing can be drawn
};

/// The outcome of an answer that has one, as it is filed and as `check --json` has it: with the estimate of the grid's error, one more analysis.
[[nodiscard]] results::Outcome filed(const Answer& a);

struct Progress { bool busy = false; std::uint64_t revision = 0; Stage stage = Stage::linear; double seconds = 0; pipeline::Step step; };

/// One background thread with one warm workspace. The latest request wins: a waiting one is replaced; a running one is stopped,
/// unless it is in its linear stage, which is let finish so that a steady stream of requests still gives answers.
/// All members may be called from any thread; none waits for a solution but the destructor, which waits for the running step to
/// notice its stop token.
class Worker {
public:
    Worker();
    ~Worker();
    Worker(const Worker&) = delete;
    Worker& operator=(const Worker&) = delete;

    void post(Request r);
    void cancel();                                          ///< stops what runs and drops what waits; no answer comes for it
    /// Newest answer not yet fetched; null = nothing new.
    [[nodiscard]] std::shared_ptr<const Answer> poll();
    [[nodiscard]] Progress progress() const;
    /// Waits until nothing is to be done, at most so long; for tests and screenshots. False: it was still busy.
    bool wait_idle(double seconds);

private:
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

} // namespace thinskin::gui
