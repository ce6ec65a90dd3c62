#pragma once
#include "base/location.h"
#include "document/edit.h"
#include "model/case.h"

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace thinskin::gui {

/// A text and what the strict reader made of it. Immutable: shared with the worker thread.
struct Reading {
    std::string text;
    std::shared_ptr<const model::Case> value;   ///< null when the text has errors
    std::vector<base::Diagnostic> diagnostics;  ///< in the order of the file; cautions may stand beside a value
    std::map<std::string, base::Location> places = {}; ///< key path -> where its value stands; what is not written is absent
};

/// What became of an edit.
struct Applied {
    bool ok = false;
    bool changed = false;                       ///< false: the text already said so; nothing is in the undo list
    std::vector<base::Diagnostic> errors = {};  ///< why not; the document is as it was
    bool comments_lost = false;                 ///< see casefile::Edited: tell the user
};

/// One case as the window holds it. The truth is the text; the case is what the reader makes of it. Used by one thread.
class Document {
public:
    /// An empty document: nothing open.
    Document() = default;
    /// `file` is the name in diagnostics and where save goes; empty = never saved.
    Document(std::string text, std::string file);

    [[nodiscard]] bool is_open() const { return !steps_.empty(); }
    [[nodiscard]] const std::string& file() const { return file_; }
    [[nodiscard]] std::string title() const;                    ///< the job's title, else the file's name, else "new case"
    [[nodiscard]] const std::string& text() const;
    [[nodiscard]] const std::vector<base::Diagnostic>& diagnostics() const;
    [[nodiscard]] bool readable() const;                        ///< the text reads without errors
    [[nodiscard]] const Reading* reading() const { return is_open() ? steps_[now_].reading.get() : nullptr; }
    /// The case of the text; while the text has errors the last one that had none (null: there never was one).
    [[nodiscard]] std::shared_ptr<const model::Case> current() const { return last_good_; }
    [[nodiscard]] std::uint64_t revision() const { return revision_; } ///< grows with every accepted edit, undo, redo, reload
    [[nodiscard]] bool dirty() const;                           ///< the text is not the saved one, byte for byte; a new case as it was made is not dirty

    /// Patches the text. Refused, with reasons and nothing changed, when the reader finds errors that were not there before.
    Applied apply(const Edit& edit);
    /// Any text, errors too (a text pane, a reload from disk that can be undone).
    Applied replace_text(const std::string& name, std::string text);
    void end_drag() { drag_open_ = false; }

    [[nodiscard]] bool can_undo() const { return now_ > 0; }
    [[nodiscard]] bool can_redo() const { return now_ + 1 < steps_.size(); }
    [[nodiscard]] std::string undo_name() const;                ///< "Move L2"; empty when there is nothing
    [[nodiscard]] std::string redo_name() const;
    bool undo();                                                ///< the exact bytes before the last edit
    bool redo();

    /// After a successful save: these bytes are what is on disk, and `file` their place.
    void mark_saved(std::string file);
    /// Text as last saved or opened; not set for a document that was never on disk.
    [[nodiscard]] const std::optional<std::string>& saved_text() const { return saved_; }
    /// A recovered text: what is on disk now, or nothing; it is dirty unless it is the same.
    void set_saved_text(std::optional<std::string> text);

    static constexpr std::size_t history_bytes = std::size_t{64} << 20; ///< older steps are dropped beyond
private:
    struct Step { std::string name, drag; std::shared_ptr<const Reading> reading; };
    Applied push(const std::string& name, const std::string& drag, std::shared_ptr<const Reading> reading, bool comments_lost);
    void arrive(std::size_t step);
    void forget_old();

    std::string file_;
    std::optional<std::string> saved_;
    std::string as_made_;           ///< text of a document that was never on disk, before any edit
    std::vector<Step> steps_;       ///< steps_[0] is the text as opened; the name of a step is that of the edit leading to it
    std::size_t now_ = 0;
    bool drag_open_ = false;
    std::uint64_t revision_ = 0;
    std::shared_ptr<const model::Case> last_good_;
};

/// Reads a text as the document does.
[[nodiscard]] std::shared_ptr<const Reading> read_case_text(std::string text, const std::string& file);

} // namespace thinskin::gui
