#include "app/dialogs.h"
#include "app/commands.h"
#include "app/session.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"
#include "presentation/diagnostics.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <imgui_stdlib.h>
#include <utility>

namespace thinskin::gui {
namespace {

namespace fs = std::filesystem;

constexpr const char* title_of(Dialogs::Kind k)
{
    switch (k) {
    case Dialogs::Kind::open: return "Open a case";
    case Dialogs::Kind::save_as: return "Save the case as";
    case Dialogs::Kind::record: return "Folder for the job record";
    case Dialogs::Kind::new_case: return "New case";
    case Dialogs::Kind::unsaved: return "Not saved yet";
    case Dialogs::Kind::changed_outside: return "The file was changed by somebody else";
    case Dialogs::Kind::recover: return "A case that was not saved";
    case Dialogs::Kind::errors: return "Text and errors of the file";
    case Dialogs::Kind::keys: return "Keys";
    case Dialogs::Kind::none: break;
    }
    return "";
}

struct Entry { std::string name; bool folder = false; };

std::vector<Entry> entries(const std::string& folder)
{
    std::vector<Entry> all;
    std::error_code e;
    for (const fs::directory_entry& d : fs::directory_iterator(folder, fs::directory_options::skip_permission_denied, e)) {
        const std::string name = d.path().filename().string();
        std::error_code ignored;
        const bool is_folder = d.is_directory(ignored);
        if (name.empty() || name[0] == '.' || (!is_folder && d.path().extension() != ".yaml" && d.path().extension() != ".yml")) continue;
        all.push_back({name, is_folder});
    }
    std::sort(all.begin(), all.end(), [](const Entry& a, const Entry& b) { return a.folder != b.folder ? a.folder : a.name < b.name; });
    return all;
}

bool row(const std::string& words, float wide, const std::string& right = "")
{
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float tall = ImGui::GetFrameHeight();
    const bool pushed = ImGui::InvisibleButton(words.c_str(), {wide, tall});
    ImDrawList& d = *ImGui::GetWindowDrawList();
    if (ImGui::IsItemHovered() || ImGui::IsItemFocused()) d.AddRectFilled(at, {at.x + wide, at.y + tall}, palette::pointed);
    const float beside = right.empty() ? 0 : widgets::size_of(right, look().fonts.small).x + 12 * look().scale;
    widgets::letters_within({at.x + 6 * look().scale, at.y + 3 * look().scale}, wide - 12 * look().scale - beside, words, palette::ink, look().fonts.plain);
    if (!right.empty()) widgets::letters_right(at.x + wide - 6 * look().scale, at.y + 4 * look().scale, right, palette::faint, look().fonts.small);
    probe::target(words, at, {at.x + wide, at.y + tall});
    return pushed;
}

} // namespace

void Dialogs::unless_unsaved(Session& s, std::function<void()> then)
{
    if (!s.document.is_open() || !s.document.dirty()) {
        then();
        return;
    }
    then_ = std::move(then);
    ask(Kind::unsaved);
}

void Dialogs::close()
{
    kind_ = Kind::none;
    ImGui::CloseCurrentPopup();
}

void Dialogs::begin(Session& s)
{
    kind_ = wanted_;
    wanted_ = Kind::none;
    why_.clear();
    write_over_.clear();
    const fs::path now = s.document.file();
    if (folder_.empty()) folder_ = now.has_parent_path() ? now.parent_path().string() : fs::current_path().string();
    name_ = kind_ == Kind::save_as ? (now.empty() ? "new_case.yaml" : now.filename().string()) : kind_ == Kind::record ? (now.empty() ? "record" : now.stem().string() + "_record") : "";
    if (kind_ == Kind::errors) text_ = s.document.text();
    ImGui::OpenPopup(title_of(kind_));
}

void Dialogs::file_done(Session& s)
{
    const fs::path path = fs::path(name_).is_absolute() ? fs::path(name_) : fs::path(folder_) / name_;
    if (kind_ == Kind::open) {
        if (open_into(s, path.string())) close();
        else why_ = s.message;
    } else if (kind_ == Kind::record) {
        write_record(s, path.string());
        close();
    } else if (std::error_code e; fs::exists(path, e) && path.string() != s.document.file() && path.string() != write_over_) {
        write_over_ = path.string();
        why_ = path.filename().string() + " is there already: press Save once more to write over it";
    } else {
        const Saved saved = save_as(s.document, path.string());
        if (saved.kind == Saved::Kind::ok) {
            s.say("Saved " + path.string());
            remember_file(s.state, path.string());
            close();
            if (then_) std::exchange(then_, nullptr)();
        } else why_ = saved.why;
    }
}

void Dialogs::files(Session& s)
{
    const float wide = 560 * look().scale;
    widgets::text("folder", palette::faint, look().fonts.small);
    ImGui::SetNextItemWidth(wide);
    ImGui::InputText("##folder", &folder_);
    probe::target("folder", ImGui::GetItemRectMin(), ImGui::GetItemRectMax());
    ImGui::BeginChild("entries", {wide, 260 * look().scale}, true);
    const float room = ImGui::GetContentRegionAvail().x;
    if (row("..", room, "one folder up")) folder_ = fs::path(folder_).parent_path().string();
    for (const Entry& e : entries(folder_)) {
        if (!row(e.name, room, e.folder ? "folder" : "")) continue;
        if (e.folder) folder_ = (fs::path(folder_) / e.name).string();
        else name_ = e.name;
    }
    ImGui::EndChild();
    widgets::text(kind_ == Kind::record ? "new folder in it" : "file", palette::faint, look().fonts.small);
    ImGui::SetNextItemWidth(wide);
    if (ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
    const bool entered = ImGui::InputText("##name", &name_, ImGuiInputTextFlags_EnterReturnsTrue);
    probe::target("file name", ImGui::GetItemRectMin(), ImGui::GetItemRectMax());
    if (!why_.empty()) widgets::wrapped(why_, palette::fail, look().fonts.small);
    const bool done = widgets::button(kind_ == Kind::open ? "Open##do" : kind_ == Kind::record ? "Write##do" : "Save##do", "", !name_.empty());
    if ((done || entered) && !name_.empty()) file_done(s);
    ImGui::SameLine();
    if (widgets::button("Cancel")) {
        then_ = nullptr;
        close();
    }
}

void Dialogs::starters(Session& s)
{
    const float wide = 460 * look().scale;
    widgets::text("Start from", palette::faint, look().fonts.small);
    for (const Starter& k : gui::starters()) {
        if (row(k.kind, wide)) {
            show_document(s, new_document(k.kind));
            s.say("New case from " + k.kind);
            close();
        }
        for (const std::string& line : widgets::lines_of(k.title, wide - 24 * look().scale, look().fonts.small)) {
            ImGui::Indent(12 * look().scale);
            widgets::text(line, palette::faint, look().fonts.small);
            ImGui::Unindent(12 * look().scale);
        }
    }
    if (widgets::button("Cancel")) close();
}

void Dialogs::unsaved(Session& s)
{
    widgets::text("\"" + s.document.title() + "\" has changes that are not saved.", palette::ink, look().fonts.plain);
    const auto go_on = [this] {
        close();
        if (then_) std::exchange(then_, nullptr)();
    };
    if (widgets::button("Save##unsaved")) {
        if (s.document.file().empty()) {
            close();
            ask(Kind::save_as);
        } else if (save_now(s, *this)) go_on();
        else if (wanted_ != Kind::none) close();
    }
    ImGui::SameLine();
    if (widgets::button("Do not save")) {
        if (s.autosave) s.autosave->clear();
        go_on();
    }
    ImGui::SameLine();
    if (widgets::button("Cancel")) {
        then_ = nullptr;
        close();
    }
}

void Dialogs::changed_outside(Session& s)
{
    widgets::text(s.document.file() + " is not what was opened here.", palette::ink, look().fonts.plain);
    if (widgets::button("Write over it")) {
        const Saved saved = save(s.document, true);
        s.say(saved.kind == Saved::Kind::ok ? "Saved " + s.document.file() : saved.why, saved.kind != Saved::Kind::ok);
        close();
    }
    ImGui::SameLine();
    if (widgets::button("Take theirs")) {
        std::string why;
        const bool ok = reload(s.document, why);
        s.say(ok ? "Read again; undo brings yours back" : why, !ok);
        close();
    }
    ImGui::SameLine();
    if (widgets::button("Cancel")) close();
}

void Dialogs::recover(Session& s)
{
    const std::vector<Recoverable> all = Autosave::find(autosave_folder());
    if (all.empty()) {
        close();
        return;
    }
    widgets::text("The program ended without saving:", palette::ink, look().fonts.plain);
    for (const Recoverable& r : all) {
        const std::string name = (r.file.empty() ? std::string("a case that was never saved") : r.file) + ", " + r.time;
        ImGui::PushID(r.slot.c_str());
        if (widgets::button("Open it")) {
            show_document(s, Autosave::recover(r));
            Autosave::discard(autosave_folder(), r);
            s.say("Brought back: " + name);
            close();
        }
        ImGui::SameLine();
        if (widgets::button("Throw away")) Autosave::discard(autosave_folder(), r);
        ImGui::SameLine();
        widgets::text(name, palette::ink, look().fonts.plain);
        ImGui::PopID();
    }
    if (widgets::button("Later")) close();
}

void Dialogs::errors(Session& s)
{
    const float wide = 860 * look().scale;
    const std::vector<DiagnosticRow> rows = diagnostic_rows(s.document.diagnostics(), s.document.text());
    widgets::text(rows.empty() ? "The file reads without errors." : diagnostic_summary(s.document.diagnostics()), palette::ink, look().fonts.bold);
    ImGui::BeginChild("rows", {wide, std::min(180.0f, 12 + 40 * static_cast<float>(rows.size())) * look().scale}, true);
    for (const DiagnosticRow& r : rows) {
        const std::string place = r.line > 0 ? fmt::format("line {}: ", r.line) : "";
        widgets::wrapped(place + r.key_path + ": " + r.message + (r.hint.empty() ? "" : " (" + r.hint + ")"), r.error ? palette::fail : palette::judgement, look().fonts.plain);
        if (!r.source_line.empty()) widgets::wrapped(r.source_line, palette::faint, look().fonts.small);
    }
    ImGui::EndChild();
    ImGui::InputTextMultiline("##text", &text_, {wide, 320 * look().scale}, ImGuiInputTextFlags_AllowTabInput);
    probe::target("text", ImGui::GetItemRectMin(), ImGui::GetItemRectMax());
    if (widgets::button("Put in", "Takes the text as it stands; undo brings the old one back", text_ != s.document.text())) {
        const Applied a = s.document.replace_text("Text of the file", text_);
        if (!a.ok && !a.errors.empty()) s.say(a.errors.front().message, true);
        if (a.ok && a.changed) s.stepped("Text of the file");
    }
    ImGui::SameLine();
    if (widgets::button("Close")) close();
}

void Dialogs::keys()
{
    const float wide = 380 * look().scale;
    const auto line = [wide](const std::string& words, const std::string& key) {
        const ImVec2 at = ImGui::GetCursorScreenPos();
        widgets::letters(at, words, palette::ink, look().fonts.plain);
        widgets::letters_right(at.x + wide, at.y, key, palette::judgement, look().fonts.bold);
        ImGui::Dummy({wide, look().fonts.plain->FontSize - 1});
    };
    for (const CommandRow& c : commands()) line(c.words, c.key);
    widgets::rule();
    line("Nudge what is chosen", "arrows");
    line("Walk through fields and rows", "Tab, arrows");
    line("Zoom, move the drawing", "wheel, right button");
    if (widgets::button("Close")) close();
}

void Dialogs::show(Session& s)
{
    if (kind_ == Kind::none && wanted_ != Kind::none) begin(s);
    if (kind_ == Kind::none) return;
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({screen.x / 2, screen.y / 2}, ImGuiCond_Always, {0.5f, 0.5f});
    if (!ImGui::BeginPopupModal(title_of(kind_), nullptr, ImGuiWindowFlags_AlwaysAutoResize | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings)) {
        kind_ = Kind::none;
        return;
    }
    if (ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape)) && !ImGui::IsAnyItemActive()) {
        then_ = nullptr;
        close();
    }
    switch (kind_) {
    case Kind::open: case Kind::save_as: case Kind::record: files(s); break;
    case Kind::new_case: starters(s); break;
    case Kind::unsaved: unsaved(s); break;
    case Kind::changed_outside: changed_outside(s); break;
    case Kind::recover: recover(s); break;
    case Kind::errors: errors(s); break;
    case Kind::keys: keys(); break;
    case Kind::none: break;
    }
    ImGui::EndPopup();
}

bool open_into(Session& s, const std::string& path)
{
    Opened o = open_file(path);
    if (!o.document) {
        s.say(o.why, true);
        forget_file(s.state, path);
        return false;
    }
    show_document(s, std::move(*o.document));
    remember_file(s.state, path);
    s.say("Opened " + path);
    return true;
}

bool save_now(Session& s, Dialogs& dialogs)
{
    if (s.document.file().empty() || compare_with_disk(s.document) == Disk::unsaved) {
        dialogs.ask(Dialogs::Kind::save_as);
        return false;
    }
    const Saved saved = save(s.document);
    if (saved.kind == Saved::Kind::changed_outside) {
        dialogs.ask(Dialogs::Kind::changed_outside);
        return false;
    }
    s.say(saved.kind == Saved::Kind::ok ? "Saved " + s.document.file() : saved.why, saved.kind != Saved::Kind::ok);
    return saved.kind == Saved::Kind::ok;
}

} // namespace thinskin::gui
