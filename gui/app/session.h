#pragma once
#include "document/document.h"
#include "document/files.h"
#include "document/recovery.h"
#include "document/settings.h"
#include "handles/handles.h"
#include "panels/sheet.h"
#include "presentation/inputs.h"
#include "presentation/margins.h"
#include "worker/results_shown.h"
#include "worker/study.h"
#include "worker/worker.h"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace thinskin::gui {

/// Proposals and the spread, and which state of the case they were made for.
struct Studies {
    bool open = false, show_spread = false, robust = true;
    std::shared_ptr<const StudyAnswer> proposal, spread;
    std::string proposal_of, spread_of;         ///< text of the document that was looked at
    std::map<std::string, int> taken;           ///< text after a scheme was taken -> its number
};

/// Everything that one open window holds. Panels read it; the program changes it between frames.
struct Session {
    Document document;
    Settings settings;
    State state;
    std::unique_ptr<Autosave> autosave;         ///< null: no folder to save into
    Worker worker;
    ResultsShown results;
    Study study;
    Studies studies;
    std::map<std::uint64_t, std::string> steps; ///< revision -> name of the edit, undo or redo that led to it
    std::uint64_t opened = 0;                   ///< how many documents were shown so far
    std::uint64_t posted = 0;                   ///< revision that the worker was last asked for
    Stage posted_stage = Stage::linear;

    // What is chosen on the screen.
    std::optional<drawing::Part> part;
    std::string check, check_case;              ///< the chosen margin
    bool follow_governing = true;               ///< nobody chose one yet: it is the governing one
    std::string load_case;                      ///< on the drawing; empty: the load path's
    std::string group;                          ///< only this group in the list; empty: all
    bool contours = true, forces = true, dimensions = false, compare = true;

    std::string message;                        ///< last thing that happened, in the line above the caution
    bool message_is_error = false;

    void say(std::string words, bool error = false)
    {
        message = std::move(words);
        message_is_error = error;
    }
    /// The document has just become another one by this.
    void stepped(const std::string& name) { steps[document.revision()] = name; }
    [[nodiscard]] Snap snap() const { return {settings.snap, settings.units}; }
};

/// Applies an edit and tells what became of it.
void apply(Session& s, const Edit& edit);
void apply(Session& s, const FieldEdit& edit);

/// Puts a document in place of the old one: nothing chosen, a first result asked for.
void show_document(Session& s, Document d);

/// Asks the worker for the document as it is now, unless it was asked already; linear while dragging.
void keep_worker_busy(Session& s, bool dragging);

/// The handle that a part of the drawing is moved by; none where it cannot be moved.
[[nodiscard]] std::optional<Handle> handle_of(const std::vector<Handle>& all, const drawing::Part& part);

/// Points of a part that can be dragged by themselves: ends, arms, corners.
[[nodiscard]] std::vector<Handle> grips_of(const std::vector<Handle>& all, const drawing::Part& part);

/// The part of the drawing that the checks call so.
[[nodiscard]] std::optional<drawing::Part> part_called(const layout::Layout& l, const std::string& name);

} // namespace thinskin::gui
