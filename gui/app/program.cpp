#include "app/program.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"
#include "presentation/compare.h"
#include "report/words.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <filesystem>
#include <fmt/format.h>
#include <imgui.h>
#include <imgui_internal.h>
#include <utility>

namespace thinskin::gui {
namespace {

float k() { return look().scale; }

constexpr float first_left = 248, first_right = 306, first_drawer = 290;

float remembered(const State& s, const char* key, float otherwise)
{
    const auto it = s.layout.find(key);
    if (it == s.layout.end()) return otherwise;
    const float v = std::strtof(it->second.c_str(), nullptr);
    return v > 100 && v < 900 ? v : otherwise;
}

} // namespace

std::string Program::window_title() const
{
    return s_.document.is_open() ? fmt::format("{}{} - thinskin", s_.document.dirty() ? "* " : "", s_.document.title()) : "thinskin";
}

bool Program::settled() const
{
    if (!s_.document.is_open() || !s_.document.readable()) return true;
    const auto newest = s_.results.newest();
    return s_.posted == s_.document.revision() && s_.posted_stage == Stage::full && newest && newest->revision == s_.document.revision() && newest->final && !s_.worker.progress().busy;
}

bool Program::is_drawn() const
{
    const auto newest = s_.results.newest();
    return !s_.document.readable() || (newest && newest->revision == s_.document.revision());
}

const Answer* Program::drawn() const { return drawn_.get(); }

/// How many load cases still wait for large deflection: while dragging, and until it is worked out.
std::string Program::linear_words() const
{
    return fmt::format("rough (linear), {} to refine", s_.results.shown()->linear_only.size());
}

std::string Program::state_words() const
{
    switch (s_.results.state(s_.document.revision(), s_.document.readable())) {
    case ResultsShown::State::none: return s_.worker.progress().busy ? "working..." : "no result yet";
    case ResultsShown::State::current: return "";
    case ResultsShown::State::linear: return linear_words();
    case ResultsShown::State::stale: return s_.worker.progress().busy ? "older figures, working..." : "figures of an older state";
    }
    return "";
}

void Program::fetch()
{
    if (auto a = s_.worker.poll()) {
        s_.results.take(a);
        const auto newest = s_.results.newest();
        if (newest && newest->drawn()) drawn_ = newest;
        ++sheet_version_;
    }
    if (!dragging_) states_.clear();
    note_state();
    if (!s_.results.newest()) drawn_.reset();
    if (!new_part_.empty() && drawn_)
        if (const auto part = part_called(*drawn_->drawn(), new_part_)) { // somebody who adds a thing wants to see where it went
            s_.part = part; // the column is not scrolled: the next press of the same button comes often
            new_part_.clear();
        }
    keep_worker_busy(s_, dragging_);
    if (s_.autosave && s_.document.is_open() && s_.autosave->tick(s_.document, std::chrono::steady_clock::now()) && !std::exchange(told_of_copy_, true)) s_.say("Kept a copy in case the program ends"); // later copies say nothing: the line belongs to what the user does
}

/// Since when the document is as it is: the age of older figures is counted from here.
void Program::note_state()
{
    if (states_.empty() || states_.back().first != s_.document.revision()) states_.emplace_back(s_.document.revision(), std::chrono::steady_clock::now());
}

/// What the changes beside the margins are changes since; empty: there is nothing to compare with.
std::string Program::compared_with_words() const
{
    const auto with = s_.results.compared_with();
    if (!with) return "";
    const std::uint64_t upto = s_.results.shown()->revision;
    std::vector<std::string> steps;
    for (auto k = s_.steps.upper_bound(with->revision); k != s_.steps.end() && k->first <= upto; ++k) steps.push_back(k->second);
    return compared_words(s_.results.compares_with_accepted(), s_.results.shown()->stage == Stage::linear && !s_.results.shown()->linear_only.empty(), steps);
}

/// Rows are made when the answer, what it is compared with, the units or the choice change.
void Program::rows_anew()
{
    const Answer* a = s_.results.shown().get();
    const std::shared_ptr<const Answer> with = s_.compare ? s_.results.compared_with() : nullptr;
    const std::string key = fmt::format("{} {} {} {} {} {}", static_cast<const void*>(with.get()), s_.settings.units == UnitSystem::us, s_.group, s_.check, s_.check_case, s_.document.revision());
    if (a == rows_of_ && key == rows_key_) return;
    rows_of_ = a;
    rows_key_ = key;
    verdict_.reset();
    rows_.clear();
    groups_.clear();
    cases_.clear();
    card_.reset();
    if (!a || !a->outcome()) return;
    MarginOptions o;
    o.units = s_.settings.units;
    o.group = s_.group;
    o.compare_with = with ? with->outcome() : nullptr;
    const bool decided = a->stage != Stage::linear;
    verdict_ = decided ? verdict_lines(*a->outcome()) : verdict_so_far(*a->outcome());
    groups_ = group_rows(*a->outcome(), o.compare_with);
    if (!decided) take_so_far(groups_);
    stands_on_ = decided ? report::stands_on_words(*a->outcome()) : "";
    rows_ = margin_rows(*a->outcome(), o);
    cases_ = load_case_rows(*a->outcome());
    if (s_.follow_governing && !rows_.empty()) {
        s_.check = rows_.front().check_id;
        s_.check_case = rows_.front().load_case;
    }
    card_ = margin_card(*a->outcome(), s_.check, s_.check_case, o);
    if (card_) return;
    // The worst load case of the chosen check may have become another one; the check may be gone with its part.
    if (!rows_.empty() && std::none_of(rows_.begin(), rows_.end(), [this](const MarginRow& r) { return r.check_id == s_.check; })) {
        s_.follow_governing = true;
        s_.check = rows_.front().check_id;
    }
    for (const MarginRow& r : rows_)
        if (r.check_id == s_.check) {
            s_.check_case = r.load_case;
            card_ = margin_card(*a->outcome(), s_.check, s_.check_case, o);
            break;
        }
}

void Program::choose(const drawing::Part& part)
{
    s_.part = part;
    s_.say(words_about(part));
    const std::string name = part.kind == drawing::PartKind::frame ? "frame " + part.name : part.name;
    job_.open_part(part.name);
    const auto is = [&name](const MarginRow& r) { return r.part == name; };
    auto r = std::find_if(rows_.begin(), rows_.end(), is);
    if (r == rows_.end()) // a fastener: its rows are its bracket's, the title ends in its name
        r = std::find_if(rows_.begin(), rows_.end(), [&name](const MarginRow& m) { return m.title.size() > name.size() && m.title.compare(m.title.size() - name.size(), name.size(), name) == 0 && m.title[m.title.size() - name.size() - 1] == ' '; });
    if (r == rows_.end()) return;
    s_.follow_governing = false;
    s_.check = r->check_id;
    s_.check_case = r->load_case;
}

void Program::choose_margin(const std::string& check, const std::string& load_case)
{
    s_.follow_governing = false;
    s_.check = check;
    s_.check_case = load_case;
    if (!drawn()) return;
    const auto row = std::find_if(rows_.begin(), rows_.end(), [&](const MarginRow& r) { return r.check_id == check; });
    if (row == rows_.end()) return;
    const std::size_t blank = row->title.rfind(' ');
    auto part = blank == std::string::npos ? std::nullopt : part_called(*drawn()->drawn(), row->title.substr(blank + 1));
    if (!part) part = part_called(*drawn()->drawn(), row->part);
    if (part) s_.part = part;
}

void Program::step_margin(int by)
{
    if (rows_.empty()) return;
    const auto now = std::find_if(rows_.begin(), rows_.end(), [this](const MarginRow& r) { return r.check_id == s_.check; });
    const int at = now == rows_.end() ? 0 : static_cast<int>(now - rows_.begin()) + by;
    const MarginRow& r = rows_[static_cast<std::size_t>(std::clamp(at, 0, static_cast<int>(rows_.size()) - 1))];
    choose_margin(r.check_id, r.load_case);
}

void Program::step_load_case(int by)
{
    if (cases_.empty()) return;
    const auto now = std::find_if(cases_.begin(), cases_.end(), [this](const LoadCaseRow& r) { return r.name == s_.load_case; });
    const int at = now == cases_.end() ? (by > 0 ? 0 : static_cast<int>(cases_.size()) - 1) : static_cast<int>(now - cases_.begin()) + by;
    s_.load_case = at < 0 || at >= static_cast<int>(cases_.size()) ? std::string() : cases_[static_cast<std::size_t>(at)].name;
}

void Program::run(Command c)
{
    if (c == Command::undo || c == Command::redo) ImGui::ClearActiveID(); // a field that has the keyboard would go on showing what it held
    switch (c) {
    case Command::new_case: dialogs_.unless_unsaved(s_, [this] { dialogs_.ask(Dialogs::Kind::new_case); }); break;
    case Command::open: dialogs_.unless_unsaved(s_, [this] { dialogs_.ask(Dialogs::Kind::open); }); break;
    case Command::save: if (s_.document.is_open()) save_now(s_, dialogs_); break;
    case Command::save_as: if (s_.document.is_open()) dialogs_.ask(Dialogs::Kind::save_as); break;
    case Command::record: if (s_.document.is_open()) dialogs_.ask(Dialogs::Kind::record); break;
    case Command::quit: close_asked(); break;
    case Command::undo: if (const std::string name = s_.document.undo_name(); s_.document.undo()) {
        s_.stepped("undo of " + name);
        s_.say("Undone: " + name);
    }
    break;
    case Command::redo: if (const std::string name = s_.document.redo_name(); s_.document.redo()) {
        s_.stepped(name);
        s_.say("Done again: " + name);
    }
    break;
    case Command::snap: s_.settings.snap = !s_.settings.snap; s_.say(s_.settings.snap ? "Snap on" : "Snap off"); break;
    case Command::worst_case: s_.load_case = s_.check_case; break;
    case Command::next_case: step_load_case(1); break;
    case Command::previous_case: step_load_case(-1); break;
    case Command::next_margin: step_margin(1); break;
    case Command::previous_margin: step_margin(-1); break;
    case Command::accept: s_.results.accept(); s_.say("Accepted: from now on changes are shown against this state"); ++sheet_version_; break;
    case Command::step_before: s_.results.compare_with_step_before(); s_.say("Changes are shown against the state before the last step"); ++sheet_version_; break;
    case Command::compare: s_.compare = !s_.compare; ++sheet_version_; break;
    case Command::contours: s_.contours = !s_.contours; break;
    case Command::forces: s_.forces = !s_.forces; break;
    case Command::dimensions: s_.dimensions = !s_.dimensions; ++sheet_version_; break;
    case Command::fit: sheet_.fit(); break;
    case Command::zoom_in: sheet_.zoom(1.25f); break;
    case Command::zoom_out: sheet_.zoom(0.8f); break;
    case Command::larger: s_.settings.font_scale = std::min(3.0, s_.settings.font_scale + 0.125); break;
    case Command::smaller: s_.settings.font_scale = std::max(0.75, s_.settings.font_scale - 0.125); break;
    case Command::units: s_.settings.units = s_.settings.units == UnitSystem::us ? UnitSystem::metric : UnitSystem::us; inputs_of_ = 0; ++sheet_version_; if (s_.studies.proposal && s_.studies.proposal->proposed) proposal_ = proposal_shown(s_.studies.proposal->proposed->answer, s_.settings.units); break;
    case Command::proposals: show_studies(false); break;
    case Command::spread: show_studies(true); break;
    case Command::cancel: if (s_.study.progress().kind != StudyKind::none) stop_study(); else if (s_.worker.progress().busy) { s_.worker.cancel(); s_.say("Stopped; F5 or the next change starts it again"); } break;
    case Command::again: s_.posted_stage = Stage::linear; break;
    case Command::errors: if (s_.document.is_open()) dialogs_.ask(Dialogs::Kind::errors); break;
    case Command::keys: dialogs_.ask(Dialogs::Kind::keys); break;
    }
}

void Program::dropped(const std::string& path) { dialogs_.unless_unsaved(s_, [this, path] { open_into(s_, path); }); }
void Program::close_asked() { dialogs_.unless_unsaved(s_, [this] { dialogs_.quit = true; }); }

void Program::divider(const char* id, float& width, float sign, float least, float most)
{
    ImGui::SameLine(0, 0);
    ImGui::InvisibleButton(id, {6 * k(), ImGui::GetContentRegionAvail().y});
    probe::target(std::string("divider ") + id, ImGui::GetItemRectMin(), ImGui::GetItemRectMax());
    if (ImGui::IsItemHovered() || ImGui::IsItemActive()) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeEW);
    if (ImGui::IsItemActive()) {
        width = std::clamp(width + sign * ImGui::GetIO().MouseDelta.x / k(), least, most);
        s_.state.layout[id] = fmt::format("{:.0f}", width);
    }
    ImGui::SameLine(0, 0);
}

std::string Program::working_words() const
{
    constexpr double worth_telling = 0.3; // seconds: shorter work is over before it is read
    const Progress p = s_.worker.progress();
    if (!p.busy || p.seconds < worth_telling || p.step.what.empty()) return "";
    const std::string part = p.step.of > 0 ? fmt::format(" ({} of {})", p.step.done + 1, p.step.of) : "";
    return fmt::format("Working: {}{}, {:.0f} s. Escape stops it", p.step.what, part, std::floor(p.seconds));
}

/// What happened last, or what lies under the pointer; at the right what is being worked out, with how much of it is done.
void Program::status_line(float top)
{
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    ImFont* small = look().fonts.small;
    const std::string working = working_words();
    const float bar = working.empty() ? 0 : 90 * k(), right = working.empty() ? 0 : widgets::size_of(working, small).x + bar + 30 * k();
    widgets::letters_within({12 * k(), top}, screen.x - 24 * k() - right, hint_.empty() ? s_.message : hint_, hint_.empty() && s_.message_is_error ? palette::fail : palette::faint, small);
    if (working.empty()) return;
    widgets::letters_right(screen.x - bar - 20 * k(), top, working, palette::ink, small);
    const pipeline::Step step = s_.worker.progress().step;
    const ImVec2 a{screen.x - bar - 12 * k(), top + 3 * k()}, b{screen.x - 12 * k(), top + small->FontSize - 1 * k()};
    ImDrawList& d = *ImGui::GetWindowDrawList();
    if (step.of > 0) d.AddRectFilled(a, {a.x + (b.x - a.x) * static_cast<float>(step.done) / static_cast<float>(step.of), b.y}, palette::judgement);
    d.AddRect(a, b, palette::ink);
}

std::optional<double> Program::figures_age() const
{
    if (!dragging_ || !s_.results.shown()) return std::nullopt;
    for (const auto& [revision, since] : states_)
        if (revision > s_.results.shown()->revision) return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - since).count();
    return 0.0;
}

void Program::frame()
{
    fetch();
    fetch_study();
    const std::vector<const CommandRow*> pressed = pressed_commands(job_.typing()); // those pressed over a question are for it
    for (const CommandRow* c : pressed)
        if (!dialogs_.any()) run(c->command);
    if (left_ == 0) {
        left_ = remembered(s_.state, "left", first_left);
        right_ = remembered(s_.state, "right", first_right);
        drawer_ = remembered(s_.state, "drawer", first_drawer);
    }
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(screen);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
    ImGui::PushStyleColor(ImGuiCol_WindowBg, palette::desk);
    ImGui::Begin("screen", nullptr, ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_MenuBar | ImGuiWindowFlags_NoScrollWithMouse);
    ImGui::PopStyleColor();
    ImGui::PopStyleVar();
    // The caution takes its room first: as many lines as its letters need.
    const float line = look().fonts.bold->FontSize * 1.18f;
    const float words = widgets::size_of(std::string(base::caution_text), look().fonts.bold).x;
    const float caution_tall = (words > screen.x - 50 * k() ? 2 : 1) * line + 11 * k();
    const float status_tall = look().fonts.small->FontSize + 6 * k();
    menu();
    const ImVec2 top = ImGui::GetCursorScreenPos();
    caution(screen.y - caution_tall, caution_tall);
    status_line(screen.y - caution_tall - status_tall + 2 * k());
    ImGui::SetCursorScreenPos({top.x, top.y});
    const float tall = screen.y - caution_tall - status_tall - top.y;
    const float widest = std::max(180.0f, (screen.x / k() - 380) / 2);
    const float left = std::min(left_, widest) * k(), right = std::min(right_, widest + 60) * k(), middle = screen.x - left - right - 12 * k();
    ImGui::BeginChild("body", {0, tall});
    ImGui::PushStyleColor(ImGuiCol_ChildBg, palette::card);
    ImGui::BeginChild("job", {left, 0}, false, ImGuiWindowFlags_AlwaysUseWindowPadding);
    job_column();
    ImGui::EndChild();
    ImGui::PopStyleColor();
    divider("left", left_, 1, 200, 520);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {4 * k(), 5 * k()});
    ImGui::BeginChild("sheet column", {middle, 0}, false, ImGuiWindowFlags_AlwaysUseWindowPadding | ImGuiWindowFlags_NoNavInputs | ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    sheet_column();
    ImGui::EndChild();
    ImGui::PopStyleVar();
    divider("right", right_, -1, 240, 640);
    ImGui::PushStyleColor(ImGuiCol_ChildBg, palette::card);
    ImGui::BeginChild("result", {0, 0}, false, ImGuiWindowFlags_AlwaysUseWindowPadding | ImGuiWindowFlags_NoScrollbar);
    margins_column();
    ImGui::EndChild();
    ImGui::PopStyleColor();
    ImGui::EndChild();
    dialogs_.show(s_);
    ImGui::End();
    // What was changed in this frame is worked on while it is shown, not from the next one on.
    note_state();
    keep_worker_busy(s_, dragging_);
}

} // namespace thinskin::gui
