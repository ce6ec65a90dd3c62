#include "document/document.h"

#include "casefile/reader.h"

#include <algorithm>

namespace thinskin::gui {
namespace {

std::size_t errors_in(const std::vector<base::Diagnostic>& all)
{
    return static_cast<std::size_t>(std::count_if(all.begin(), all.end(), [](const base::Diagnostic& d) { return d.severity == base::Severity::error; }));
}

std::vector<base::Diagnostic> only_errors(std::vector<base::Diagnostic> all)
{
    all.erase(std::remove_if(all.begin(), all.end(), [](const base::Diagnostic& d) { return d.severity != base::Severity::error; }), all.end());
    return all;
}

std::string file_name(const std::string& path) { return path.substr(path.rfind('/') + 1); }

} // namespace

std::shared_ptr<const Reading> read_case_text(std::string text, const std::string& file)
{
    auto reading = std::make_shared<Reading>();
    casefile::ReadResult read = casefile::read_text(text, file);
    reading->text = std::move(text);
    reading->diagnostics = std::move(read.diagnostics);
    reading->places = std::move(read.places);
    if (read.value) reading->value = std::make_shared<const model::Case>(std::move(*read.value));
    return reading;
}

Document::Document(std::string text, std::string file) : file_(std::move(file)), as_made_(text)
{
    if (!file_.empty()) saved_ = text;
    steps_.push_back({"", "", read_case_text(std::move(text), file_)});
    arrive(0);
}

std::string Document::title() const
{
    if (last_good_ && !last_good_->job.title.empty()) return last_good_->job.title;
    return file_.empty() ? "new case" : file_name(file_);
}

const std::string& Document::text() const
{
    static const std::string nothing;
    return is_open() ? steps_[now_].reading->text : nothing;
}

const std::vector<base::Diagnostic>& Document::diagnostics() const
{
    static const std::vector<base::Diagnostic> nothing;
    return is_open() ? steps_[now_].reading->diagnostics : nothing;
}

bool Document::readable() const { return is_open() && steps_[now_].reading->value != nullptr; }

bool Document::dirty() const { return is_open() && text() != (saved_ ? *saved_ : as_made_); }

void Document::set_saved_text(std::optional<std::string> text)
{
    saved_ = std::move(text);
    as_made_.clear();
}

void Document::arrive(std::size_t step)
{
    now_ = step;
    ++revision_;
    if (steps_[now_].reading->value) last_good_ = steps_[now_].reading->value;
}

void Document::forget_old()
{
    std::size_t bytes = 0, keep = steps_.size();
    while (keep > 0 && bytes <= history_bytes) bytes += steps_[--keep].reading->text.size();
    keep = std::min(keep, now_);
    steps_.erase(steps_.begin(), steps_.begin() + static_cast<std::ptrdiff_t>(keep));
    now_ -= keep;
}

Applied Document::push(const std::string& name, const std::string& drag, std::shared_ptr<const Reading> reading, bool comments_lost)
{
    if (reading->text == text()) return {true, false, {}, false};
    steps_.resize(now_ + 1);
    const bool goes_on = drag_open_ && !drag.empty() && now_ > 0 && steps_[now_].drag == drag;
    if (goes_on) steps_.pop_back();
    if (goes_on && steps_.back().reading->text == reading->text) { // dragged back to where it came from
        drag_open_ = false;
        arrive(steps_.size() - 1);
        return {true, true, {}, false};
    }
    steps_.push_back({name, drag, std::move(reading)});
    drag_open_ = !drag.empty();
    arrive(steps_.size() - 1);
    forget_old();
    return {true, true, {}, comments_lost};
}

Applied Document::apply(const Edit& edit)
{
    if (!is_open()) return {false, false, {{{}, "", "no case is open", ""}}, false};
    casefile::Edited edited = casefile::edit_text(text(), edit.changes);
    if (!edited.ok) return {false, false, {{{file_, 0, 0}, "", edited.why, ""}}, false};
    auto reading = read_case_text(std::move(edited.text), file_);
    // A file that was wrong before may be mended step by step; a good one stays good.
    const std::size_t before = errors_in(diagnostics()), after = errors_in(reading->diagnostics);
    if (after > 0 && (readable() || after > before)) return {false, false, only_errors(reading->diagnostics), false};
    return push(edit.name, edit.drag, std::move(reading), edited.comments_lost);
}

Applied Document::replace_text(const std::string& name, std::string text)
{
    if (!is_open()) return {false, false, {{{}, "", "no case is open", ""}}, false};
    return push(name, "", read_case_text(std::move(text), file_), false);
}

std::string Document::undo_name() const { return can_undo() ? steps_[now_].name : ""; }
std::string Document::redo_name() const { return can_redo() ? steps_[now_ + 1].name : ""; }

bool Document::undo()
{
    drag_open_ = false;
    if (!can_undo()) return false;
    arrive(now_ - 1);
    return true;
}

bool Document::redo()
{
    drag_open_ = false;
    if (!can_redo()) return false;
    arrive(now_ + 1);
    return true;
}

void Document::mark_saved(std::string file)
{
    drag_open_ = false;
    saved_ = text();
    if (file == file_) return;
    // The file's name stands in diagnostics, in the case and so in its results: the text is read again under the new name.
    file_ = std::move(file);
    for (Step& s : steps_) s.reading = read_case_text(s.reading->text, file_);
    last_good_ = nullptr;
    arrive(now_);
}

} // namespace thinskin::gui
