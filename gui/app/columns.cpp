#include "app/program.h"
#include "panels/margins.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <imgui.h>

namespace thinskin::gui {
namespace {

float k() { return look().scale; }

/// A failed check makes its part fail, an open one not covered; else the part is what its least margin is.
std::map<std::string, base::Status> status_of_parts(const results::Outcome& o)
{
    std::map<std::string, base::Status> all;
    for (const results::Check& c : o.checks) {
        if (c.group == "vibration") continue; // not counted, and no strength: as in the figures at the parts
        const auto [it, is_first] = all.emplace(c.part, c.status);
        const bool worse = c.status == base::Status::fail || (c.status == base::Status::not_covered && it->second != base::Status::fail);
        if (!is_first && worse) it->second = c.status;
    }
    return all;
}

/// What the thing under the pointer is, and what can be done with it.
std::string words_for(const drawing::Part& p)
{
    using drawing::PartKind;
    switch (p.kind) {
    case PartKind::fastener: return "fastener " + p.name + ": drag it, or choose it and use the arrow keys";
    case PartKind::end_fixing: return "end fastener " + p.name + ": drag it";
    case PartKind::bracket: return "bracket " + p.name + ": drag it";
    case PartKind::angle: return "angle " + p.name + ": drag it";
    case PartKind::item: return p.name + ": drag it";
    case PartKind::mass_centre: return "centre of mass: drag it";
    case PartKind::gauge: return "gauge " + p.name + ": drag it";
    case PartKind::frame: return "frame " + p.name;
    case PartKind::strap: return "strap " + p.name;
    case PartKind::rib: return "rib " + p.name;
    case PartKind::hinge: return "hinge";
    case PartKind::latch: return "latch: drag it";
    case PartKind::rest: return "rest: drag it";
    default: return p.name;
    }
}

/// What else goes when it goes: a hole of a mirrored bracket, a copy of an angle.
std::string with_what_follows(const std::string& words, const std::vector<Handle>& all, const drawing::Part& p)
{
    const auto h = handle_of(all, p);
    return h && !h->follows.empty() ? words + "; " + h->follows : words;
}

} // namespace

void Program::recent_menu()
{
    if (s_.state.recent.empty()) return;
    const bool open = ImGui::BeginMenu("Recent");
    probe::target("Recent", ImGui::GetItemRectMin(), ImGui::GetItemRectMax());
    if (!open) return;
    const std::vector<std::string> all = s_.state.recent;
    for (const std::string& path : all)
        if (widgets::menu_item(std::filesystem::path(path).filename().string() + "   " + std::filesystem::path(path).parent_path().string(), "")) dropped(path);
    ImGui::EndMenu();
}

void Program::menu()
{
    if (!ImGui::BeginMenuBar()) return;
    const char* menu = "";
    bool open = false;
    for (const CommandRow& c : commands()) {
        if (std::string_view(menu) != c.menu) {
            if (open) ImGui::EndMenu();
            menu = c.menu;
            open = ImGui::BeginMenu(menu);
            const ImVec2 a = ImGui::GetItemRectMin(), b = ImGui::GetItemRectMax();
            const ImVec2 size = widgets::size_of(menu, ImGui::GetFont());
            // An open one has made its list the window that texts belong to.
            if (!open) probe::text(menu, {(a.x + b.x - size.x) / 2, (a.y + b.y - size.y) / 2}, {(a.x + b.x + size.x) / 2, (a.y + b.y + size.y) / 2});
            probe::target(std::string("menu ") + menu, a, b);
        }
        if (!open) continue;
        std::string words = c.words;
        bool enabled = true, ticked = false;
        if (c.command == Command::undo) { enabled = s_.document.can_undo(); words += enabled ? ": " + s_.document.undo_name() : ""; }
        if (c.command == Command::redo) { enabled = s_.document.can_redo(); words += enabled ? ": " + s_.document.redo_name() : ""; }
        if (c.command == Command::snap) ticked = s_.settings.snap;
        if (c.command == Command::contours) ticked = s_.contours;
        if (c.command == Command::forces) ticked = s_.forces;
        if (c.command == Command::dimensions) ticked = s_.dimensions;
        if (c.command == Command::compare) ticked = s_.compare;
        if (c.command == Command::proposals) ticked = s_.studies.open && !s_.studies.show_spread;
        if (c.command == Command::spread) ticked = s_.studies.open && s_.studies.show_spread;
        if (c.command == Command::units) ticked = s_.settings.units == UnitSystem::us;
        if (widgets::menu_item(words, c.key, enabled, ticked)) run(c.command);
        if (c.command == Command::open) recent_menu();
    }
    if (open) ImGui::EndMenu();
    ImFont* bold = look().fonts.bold;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float wide = ImGui::GetWindowWidth() - at.x;
    const std::string name = s_.document.is_open() ? (s_.document.dirty() ? "* " : "") + s_.document.title() : "no case is open";
    widgets::letters_within({at.x + 20 * k(), at.y + 3 * k()}, wide - 30 * k(), name, palette::ink, bold);
    ImGui::EndMenuBar();
}

/// Drawn before anything else gets its room: it is always there.
void Program::caution(float top, float tall)
{
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const float wide = ImGui::GetIO().DisplaySize.x;
    d.AddRectFilled({0, top}, {wide, top + tall}, palette::caution);
    d.AddLine({0, top}, {wide, top}, palette::ink, 1.5f * k());
    // The sign of caution: a triangle with an exclamation mark.
    const ImVec2 c{18 * k(), top + tall / 2};
    d.AddTriangleFilled({c.x, c.y - 9 * k()}, {c.x - 10 * k(), c.y + 8 * k()}, {c.x + 10 * k(), c.y + 8 * k()}, palette::ink);
    d.AddLine({c.x, c.y - 3.5f * k()}, {c.x, c.y + 2.5f * k()}, palette::caution, 2 * k());
    d.AddCircleFilled({c.x, c.y + 5.5f * k()}, 1.3f * k(), palette::caution);
    ImGui::SetCursorScreenPos({36 * k(), top + 5 * k()});
    ImGui::PushClipRect({0, top}, {wide, top + tall}, true);
    ImGui::BeginChild("caution", {wide - 46 * k(), tall - 6 * k()}, false, ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoInputs);
    widgets::wrapped(std::string(base::caution_text), palette::ink, look().fonts.bold);
    ImGui::EndChild();
    ImGui::PopClipRect();
}

void Program::job_column()
{
    if (!s_.document.is_open()) {
        widgets::wrapped("Open a case file, drop one on this window, or start from a starter case.", palette::ink, look().fonts.plain);
        widgets::space(6);
        if (widgets::button("Open...##start")) run(Command::open);
        ImGui::SameLine();
        if (widgets::button("New...##start")) run(Command::new_case);
        return;
    }
    if (inputs_of_ != s_.document.revision() + 1) {
        inputs_ = input_groups(s_.document, s_.settings.units);
        inputs_of_ = s_.document.revision() + 1;
    }
    const auto c = s_.document.current();
    const JobEvents e = job_.show(inputs_, c.get(), s_.settings.units, s_.part ? s_.part->name : "");
    if (!e.chosen_part.empty() && drawn())
        if (const auto p = part_called(*drawn()->drawn(), e.chosen_part)) s_.part = p;
    if (!e.edit) return;
    const std::uint64_t before = s_.document.revision();
    apply(s_, *e.edit);
    if (s_.document.revision() == before) job_.not_taken();
    else job_.taken();
    new_part_ = e.edit->part;
}

void Program::load_case_bar()
{
    std::vector<std::string> words{"load path's load case"};
    if (const Answer* a = s_.results.shown().get(); a && a->outcome() && !a->outcome()->load_path_case.empty()) words[0] = a->outcome()->load_path_case + " (load path)";
    int chosen = 0;
    for (const LoadCaseRow& r : cases_) {
        words.push_back(r.name + (r.governs ? " (the tightest)" : ""));
        if (r.name == s_.load_case) chosen = static_cast<int>(words.size()) - 1;
    }
    const ImVec2 at = ImGui::GetCursorScreenPos();
    widgets::letters({at.x, at.y + 4 * k()}, "load case", palette::faint, look().fonts.small);
    ImGui::SetCursorScreenPos({at.x + widgets::size_of("load case", look().fonts.small).x + 8 * k(), at.y});
    if (widgets::choice("load case", words, chosen, 200 * k())) s_.load_case = chosen == 0 ? "" : cases_[static_cast<std::size_t>(chosen - 1)].name;
    const struct { const char* words; bool& on; Command command; const char* tip; } all[] = {
        {"movement", s_.contours, Command::contours, "Movement of the skin as bands, in mm (M)"}, {"forces", s_.forces, Command::forces, "Forces of the load case (F)"},
        {"dimensions", s_.dimensions, Command::dimensions, "All running dimensions (D)"}, {"changes", s_.compare, Command::compare, "What changed by the last step, or since the state accepted with Ctrl+E (C)"}};
    for (const auto& t : all) {
        ImGui::SameLine(0, 4 * k());
        if (ImGui::GetContentRegionAvail().x < widgets::size_of(t.words, look().fonts.plain).x + 14 * k()) break;
        if (widgets::toggle(t.words, t.on, t.tip)) run(t.command);
    }
    const float fit = widgets::size_of("fit", look().fonts.plain).x + 14 * k();
    ImGui::SameLine(0, 4 * k());
    if (ImGui::GetContentRegionAvail().x >= fit && widgets::button("fit", "The whole drawing (Home)")) sheet_.fit();
    if (s_.studies.open) return;
    const float proposals = widgets::size_of("proposals", look().fonts.plain).x + 14 * k();
    if (ImGui::GetItemRectMax().x + 12 * k() + proposals > ImGui::GetWindowPos().x + ImGui::GetContentRegionMax().x) return;
    ImGui::SameLine(0, 12 * k());
    if (widgets::button("proposals", "Which angle, how many fasteners: what would hold (P)")) show_studies(false);
}

/// Of the thing under the pointer; made when another one is pointed at.
std::string Program::words_about(const drawing::Part& p)
{
    const auto document = s_.document.current();
    if (!document) return words_for(p);
    if (about_of_ != document || !same(about_part_, p)) {
        about_ = with_what_follows(words_for(p), handles(*document), p);
        about_of_ = document;
        about_part_ = p;
    }
    return about_;
}

/// Why the document as it is has no figures; empty: it has, or they are being worked out.
std::vector<std::string> Program::trouble() const
{
    if (s_.document.is_open() && !s_.document.readable()) {
        std::vector<std::string> all{"The file has errors; F2 shows them with their lines."};
        for (const base::Diagnostic& d : s_.document.diagnostics())
            if (d.severity == base::Severity::error && all.size() < 6) all.push_back(fmt::format("line {}: {}: {}", d.at.line, d.key_path, d.message));
        return all;
    }
    const auto state = s_.results.state(s_.document.revision(), s_.document.readable());
    const bool stale = state == ResultsShown::State::stale || state == ResultsShown::State::none;
    return stale && !s_.worker.progress().busy ? s_.results.why_stale() : std::vector<std::string>{};
}

void Program::sheet_column()
{
    load_case_bar();
    SheetContents c;
    const Answer *shown = s_.results.shown().get(), *now = drawn();
    const auto state = s_.results.state(s_.document.revision(), s_.document.readable());
    if (now) {
        c.layout = now->drawn();
        c.outcome = now->solved() ? now->outcome() : shown ? shown->outcome() : nullptr;
    }
    c.stale = state == ResultsShown::State::stale;
    if (c.outcome) {
        if (marked_ != c.outcome || marked_version_ != sheet_version_) { // once an answer, not once a frame
            notes_ = part_margins(*c.outcome);
            statuses_ = status_of_parts(*c.outcome);
            marked_ = c.outcome;
            marked_version_ = sheet_version_;
        }
        c.notes = notes_;
        c.statuses = statuses_;
    }
    c.version = sheet_version_;
    c.opened = s_.opened;
    if (now && now->stage != Stage::linear && !c.stale && s_.document.undo_name().empty()) settled_file_ = s_.opened;
    c.settled = settled_file_ == s_.opened;
    c.load_case = s_.load_case;
    c.trouble = trouble();
    if (now && !now->analysis.layout)
        for (const base::Diagnostic& d : now->analysis.diagnostics)
            if (d.severity == base::Severity::error) c.wrong.push_back(d.key_path);
    const std::shared_ptr<const Answer> before = s_.compare ? s_.results.compared_with() : nullptr;
    if (before && before->analysis.layout) c.ghost = before->analysis.layout.get();
    c.chosen = s_.part;
    if (const auto document = s_.document.current(); document && s_.part) {
        if (grips_for_ != document || !same(grips_part_, *s_.part)) {
            grips_ = grips_of(handles(*document), *s_.part);
            grips_for_ = document;
            grips_part_ = s_.part;
        }
        c.grips = grips_;
    }
    c.units = s_.settings.units;
    c.contours = s_.contours;
    c.forces = s_.forces;
    c.dimensions = s_.dimensions;
    const float room = ImGui::GetContentRegionAvail().y, drawer = s_.studies.open ? std::min(drawer_ * k(), 0.62f * room) : 0;
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
    ImGui::BeginChild("paper", {0, room - drawer}, false, ImGuiWindowFlags_NoNavInputs | ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    const SheetEvents e = sheet_.show(c);
    const bool focused = ImGui::IsWindowFocused();
    ImGui::EndChild();
    ImGui::PopStyleVar();
    if (s_.studies.open) studies_drawer();
    if (e.chosen) choose(*e.chosen);
    if (e.chosen_nothing) s_.part.reset();
    if (e.drag) drag_on_sheet(*e.drag);
    hint_ = e.drag || dialogs_.any() ? "" : !e.pointed_grip.empty() ? e.pointed_grip + ": drag it" : e.pointed ? words_about(*e.pointed) : "";
    if (focused || ImGui::IsWindowFocused()) nudge();
}

/// Where on the left the keys of an advice stand.
std::vector<Spot> Program::spots(const std::vector<std::string>& keys) const
{
    std::vector<Spot> out;
    const auto c = s_.document.current();
    if (!c) return out;
    for (const std::string& key : keys)
        if (Spot s = spot_of(inputs_, *c, key); s.found() && std::none_of(out.begin(), out.end(), [&s](const Spot& o) { return o.label == s.label; })) out.push_back(std::move(s));
    return out;
}

void Program::margins_column()
{
    rows_anew();
    MarginsShown m;
    const auto state = s_.results.state(s_.document.revision(), s_.document.readable());
    m.verdict = verdict_ ? &*verdict_ : nullptr;
    m.groups = &groups_;
    m.rows = &rows_;
    m.card = card_ ? &*card_ : nullptr;
    m.chosen_check = s_.check;
    m.chosen_case = s_.check_case;
    m.lit_part = s_.part ? (s_.part->kind == drawing::PartKind::frame ? "frame " + s_.part->name : s_.part->name) : "";
    m.state = s_.document.is_open() ? state_words() : "Margins stand here, the governing one first.";
    m.stale = state == ResultsShown::State::stale;
    m.trouble = trouble();
    m.stands_on = stands_on_;
    m.comparing = s_.compare && m.trouble.empty(); // figures of an older state have nothing to be compared with
    m.compared_with = m.comparing ? compared_with_words() : "";
    m.group = s_.group;
    const std::string spots_of = rows_key_ + std::to_string(inputs_of_);
    if (spots_of != spots_of_ || rows_of_ != spots_rows_) {
        advice_at_ = spots(verdict_ ? verdict_->advice_at : std::vector<std::string>{});
        help_at_ = spots(card_ ? card_->help_at : std::vector<std::string>{});
        spots_of_ = spots_of;
        spots_rows_ = rows_of_;
    }
    m.advice_at = advice_at_;
    m.help_at = help_at_;
    const MarginsEvents e = show_margins(m);
    if (e.go_to) job_.go_to(*e.go_to);
    if (!e.check.empty()) choose_margin(e.check, e.load_case);
    if (e.group) s_.group = *e.group;
}

} // namespace thinskin::gui
