#include "panels/job.h"
#include "handles/handles.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"

#include <algorithm>
#include <fmt/format.h>
#include <imgui_stdlib.h>

namespace thinskin::gui {
namespace {

float k() { return look().scale; }

/// A bar across the column with the group's number in a ring: the order of the job.
void bar(int number, const std::string& title)
{
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float wide = ImGui::GetContentRegionAvail().x, tall = look().fonts.bold->FontSize + 8 * k();
    d.AddRectFilled(at, {at.x + wide, at.y + tall}, palette::ink);
    const std::string n = std::to_string(number);
    widgets::letters({at.x + 7 * k(), at.y + 4 * k()}, n, palette::caution, look().fonts.bold);
    widgets::letters_within({at.x + 24 * k(), at.y + 4 * k()}, wide - 30 * k(), title, palette::paper, look().fonts.bold);
    ImGui::Dummy({wide, tall});
}

std::string id_of(const Field& f, int coordinate) { return coordinate < 0 ? f.path : fmt::format("{}#{}", f.path, coordinate); }

std::string help_of(const Field& f)
{
    std::string s = f.help;
    const auto add = [&s](const std::string& more) { s += (s.empty() ? "" : "\n") + more; };
    if (f.is_default) add("Not given in the file: the default is shown.");
    if (!f.read_only.empty()) add(f.read_only);
    if (!f.measured_from.empty()) add("Measured from: " + f.measured_from + ".");
    if (!f.error.empty()) add("Error: " + f.error);
    return s;
}

std::vector<std::string> with_present(std::vector<std::string> words, const std::string& present, int& chosen)
{
    auto it = std::find(words.begin(), words.end(), present);
    if (it == words.end()) it = words.insert(words.begin(), present);
    chosen = static_cast<int>(it - words.begin());
    return words;
}

/// Coordinates are many and narrow: the unit that a plain number means is left out.
std::string without_unit(const std::string& shown, std::string_view unit)
{
    const std::string end = " " + std::string(unit);
    return shown.size() > end.size() && shown.compare(shown.size() - end.size(), end.size(), end) == 0 ? shown.substr(0, shown.size() - end.size()) : shown;
}

bool kind_of_choice(FieldKind kind) { return kind == FieldKind::choice || kind == FieldKind::fastener_kind || kind == FieldKind::material; }

} // namespace

void JobPanel::put_in(JobEvents& e)
{
    if (draft_.id.empty()) return;
    const bool name = case_ && draft_.field.path.ends_with("].name");
    if (case_ && draft_.field.path.starts_with("brackets[") && draft_.field.path.ends_with("].x")) { // with its holes, as when it is dragged
        const std::vector<Handle> all = handles(*case_);
        const Handle* h = find(all, draft_.field.path.substr(0, draft_.field.path.size() - 2));
        const Moved m = h ? place_at(*case_, *h, {draft_.text, "", ""}, units_) : Moved{};
        e.edit = FieldEdit{m.edit, m.why, ""};
    } else e.edit = name ? rename_part(*case_, draft_.field.path, draft_.text) : edit_field(draft_.field, draft_.text, units_, draft_.coordinate);
    draft_ = {};
}

void JobPanel::input(const Field& f, int coordinate, const std::string& value, float width, JobEvents& e)
{
    const std::string id = id_of(f, coordinate);
    const bool mine = draft_.id == id;
    std::string text = mine ? draft_.text : value;
    ImGui::SetNextItemWidth(width);
    const bool changed = ImGui::InputText(("##" + id).c_str(), &text, ImGuiInputTextFlags_AutoSelectAll);
    const ImVec2 a = ImGui::GetItemRectMin(), b = ImGui::GetItemRectMax(), pad = ImGui::GetStyle().FramePadding;
    probe::target(id, a, b);
    // Free text may be longer than its field; a figure may not.
    const float whole = widgets::size_of(text, ImGui::GetFont()).x, wide = f.kind == FieldKind::text ? std::min(whole, b.x - a.x - 2 * pad.x) : whole;
    if (!ImGui::IsItemActive()) {
        ImGui::PushClipRect({a.x + pad.x / 2, a.y}, {b.x - pad.x / 2, b.y}, true);
        probe::text(text, {a.x + pad.x, a.y + pad.y}, {a.x + pad.x + wide, b.y - pad.y});
        ImGui::PopClipRect();
    }
    if (ImGui::IsItemHovered()) {
        const std::string help = help_of(f);
        if (!help.empty()) widgets::tip(help);
    }
    if (changed) draft_ = {id, text, f, coordinate, true};
    if (mine) draft_.drawn = true;
    if (draft_.id == id && ImGui::IsItemDeactivated()) {
        if (ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape))) draft_ = {};
        else put_in(e);
    }
}

void JobPanel::pick(const Field& f, float width, JobEvents& e)
{
    int chosen = 0;
    const std::vector<std::string> words = with_present(f.choices, f.value, chosen);
    if (widgets::choice(f.path, words, chosen, width)) e.edit = edit_field(f, words[static_cast<std::size_t>(chosen)], units_, -1);
    if (ImGui::IsItemHovered()) {
        const std::string help = help_of(f);
        if (!help.empty()) widgets::tip(help);
    }
}

void JobPanel::field(const Field& f, JobEvents& e)
{
    const float room = ImGui::GetContentRegionAvail().x, label = std::min((f.coordinates.size() > 2 ? 0.36f : 0.42f) * room, 150 * k());
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImFont* small = look().fonts.small;
    const float tall = ImGui::GetFrameHeight();
    const ImU32 colour = !f.error.empty() ? palette::fail : f.assumed ? palette::not_covered : palette::faint;
    widgets::letters_within({at.x, at.y + (tall - small->FontSize) / 2}, label - 4 * k(), (f.assumed ? "* " : "") + f.label, colour, small);
    ImGui::SetCursorScreenPos({at.x + label, at.y});
    const float wide = room - label;
    ImGui::BeginDisabled(!f.read_only.empty());
    if (!f.coordinates.empty()) {
        const bool narrow = f.coordinates.size() > 2;
        if (narrow) ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {2 * k(), ImGui::GetStyle().FramePadding.y});
        const float gap = 3 * k(), each = (wide - gap * static_cast<float>(f.coordinates.size() - 1)) / static_cast<float>(f.coordinates.size());
        for (std::size_t i = 0; i < f.coordinates.size(); ++i) {
            if (i > 0) ImGui::SameLine(0, gap);
            input(f, static_cast<int>(i), without_unit(f.coordinates[i], shown_unit(f.dimension, units_)), each, e);
        }
        if (narrow) ImGui::PopStyleVar();
    } else if (kind_of_choice(f.kind) && !f.choices.empty()) pick(f, wide, e);
    else input(f, -1, f.value, wide, e);
    ImGui::EndDisabled();
    if (!f.error.empty()) widgets::wrapped(f.error, palette::fail, small);
}

void JobPanel::section(const Section& s, const model::Case* c, const std::string& chosen_part, JobEvents& e)
{
    ImGui::PushID(s.path.c_str());
    const bool wanted = !open_wanted_.empty() && s.part == open_wanted_;
    if (wanted) {
        open_.insert(s.path);
        ImGui::SetScrollHereY(0.1f);
        open_wanted_.clear();
    }
    const bool open = open_.count(s.path) > 0, chosen = !s.part.empty() && s.part == chosen_part;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float wide = ImGui::GetContentRegionAvail().x, tall = ImGui::GetFrameHeight();
    if (ImGui::InvisibleButton("head", {wide, tall})) {
        if (open) open_.erase(s.path);
        else open_.insert(s.path);
        e.chosen_part = s.part;
    }
    ImDrawList& d = *ImGui::GetWindowDrawList();
    if (chosen) d.AddRectFilled(at, {at.x + wide, at.y + tall}, palette::chosen);
    if (ImGui::IsItemHovered() || ImGui::IsItemFocused()) d.AddRectFilled(at, {at.x + wide, at.y + tall}, palette::pointed);
    const float m = tall / 2, r = 3.5f * k();
    if (open) d.AddTriangleFilled({at.x + 3 * k(), at.y + m - r / 2}, {at.x + 3 * k() + 2 * r, at.y + m - r / 2}, {at.x + 3 * k() + r, at.y + m + r}, palette::ink);
    else d.AddTriangleFilled({at.x + 4 * k(), at.y + m - r}, {at.x + 4 * k() + 1.5f * r, at.y + m}, {at.x + 4 * k(), at.y + m + r}, palette::ink);
    const bool wrong = std::any_of(s.fields.begin(), s.fields.end(), [](const Field& f) { return !f.error.empty(); });
    widgets::letters_within({at.x + 16 * k(), at.y + (tall - look().fonts.plain->FontSize) / 2}, wide - 18 * k(), s.title, wrong ? palette::fail : palette::ink, look().fonts.plain);
    probe::target("section " + s.title, at, {at.x + wide, at.y + tall});
    if (open) {
        ImGui::Indent(10 * k());
        for (const Field& f : s.fields) field(f, e);
        if (s.can_be_removed && c && widgets::button("Remove##" + s.path, "Takes " + s.title + " out of the case; undo brings it back")) e.edit = remove_part(*c, s.path);
        ImGui::Unindent(10 * k());
        widgets::space(4);
    }
    ImGui::PopID();
}

/// What a fitter reaches for: another angle, another bolt, other bolts.
void JobPanel::parts_to_add(const model::Case& c, JobEvents& e)
{
    if (widgets::button("+ angle", "A further angle behind the skin, tied to the frame")) e.edit = add_angle(c);
    if (!c.brackets.empty()) {
        ImGui::SameLine();
        if (widgets::button("+ fastener", "A further fastener through the first bracket's leg")) e.edit = add_fastener(c, c.brackets.front().name);
        ImGui::SameLine();
        if (widgets::button("+ strap", "A strap that pulls the first bracket back")) e.edit = add_strap(c, c.brackets.front().name);
    }
    const std::vector<std::string> used = kinds_through_skin(c);
    if (used.empty()) return;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float label = 0.42f * ImGui::GetContentRegionAvail().x;
    widgets::letters_within({at.x, at.y + 4 * k()}, label - 4 * k(), "swap all for", palette::faint, look().fonts.small);
    ImGui::SetCursorScreenPos({at.x + label, at.y});
    int chosen = 0;
    const std::vector<std::string> words = with_present(kinds_to_choose(c), used.size() == 1 ? used.front() : fmt::format("{} kinds", used.size()), chosen);
    if (widgets::choice("all fasteners", words, chosen, ImGui::GetContentRegionAvail().x)) e.edit = swap_kind(c, used.size() == 1 ? used.front() : "", words[static_cast<std::size_t>(chosen)]);
}

JobEvents JobPanel::show(const std::vector<InputGroup>& groups, const model::Case* c, UnitSystem units, const std::string& chosen_part)
{
    JobEvents e;
    units_ = units;
    case_ = c;
    draft_.drawn = false;
    if (first_look_ && !groups.empty()) {
        for (const InputGroup& g : groups)
            for (std::size_t i = 0; i < g.sections.size() && i < 1; ++i)
                if (g.sections[i].fields.size() <= 12) open_.insert(g.sections[i].path);
        first_look_ = false;
    }
    int number = 0;
    for (const InputGroup& g : groups) {
        bar(++number, g.title);
        if (g.title == "Fixing" && c) parts_to_add(*c, e);
        for (const Section& s : g.sections) section(s, c, chosen_part, e);
        widgets::space(6);
    }
    widgets::text("* assumed: nobody measured it", palette::not_covered, look().fonts.small);
    // A field that went away while it was typed into: what was typed is not lost.
    if (!draft_.id.empty() && !draft_.drawn && !e.edit) put_in(e);
    return e;
}

} // namespace thinskin::gui
