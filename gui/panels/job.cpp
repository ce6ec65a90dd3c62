#include "panels/job.h"
#include "handles/handles.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"
#include "presentation/words.h"

#include <algorithm>
#include <cmath>
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
    const bool name = case_ && (draft_.field.path.ends_with("].name") || (draft_.field.path.starts_with("fastener_kinds[") && draft_.field.path.ends_with("]")));
    if (case_ && draft_.field.path.starts_with("brackets[") && draft_.field.path.ends_with("].x")) { // with its holes, as when it is dragged
        const std::vector<Handle> all = handles(*case_);
        const Handle* h = find(all, draft_.field.path.substr(0, draft_.field.path.size() - 2));
        const Moved m = h ? place_at(*case_, *h, {draft_.text, "", ""}, units_) : Moved{};
        e.edit = FieldEdit{m.edit, m.why, ""};
    } else e.edit = name ? rename_part(*case_, draft_.field.path, draft_.text) : edit_field(draft_.field, draft_.text, units_, draft_.coordinate);
    const std::string renamed = "fastener_kinds[" + draft_.text + "]"; // its section stays open
    if (draft_.field.path.starts_with("fastener_kinds[") && draft_.field.path.ends_with("]") && e.edit && e.edit->ok() && open_.count(draft_.field.path) > 0) open_.insert(renamed);
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
    std::vector<std::string> shown = words;
    if (f.kind == FieldKind::choice) std::transform(shown.begin(), shown.end(), shown.begin(), plain_words);
    if (widgets::choice(f.path, shown, chosen, width)) e.edit = edit_field(f, words[static_cast<std::size_t>(chosen)], units_, -1);
    if (ImGui::IsItemHovered()) {
        const std::string help = help_of(f);
        if (!help.empty()) widgets::tip(help);
    }
}

/// Whether a field was led to in this frame: it gets the keyboard and comes into view.
bool JobPanel::wanted(const std::string& path)
{
    if (go_to_ != path) return false;
    go_to_.clear();
    lit_ = path;
    lit_until_ = ImGui::GetTime() + 4;
    scrolls_ = 4;
    return true;
}

/// A ring round the last item, so that the eye finds it; what stands above it stays in sight. (The keyboard brings an item to the edge
/// of the column only, so this scrolls for a few frames more.)
void JobPanel::light()
{
    if (scrolls_ > 0 && --scrolls_ > 0) ImGui::SetScrollHereY(0.3f);
    if (ImGui::GetTime() > lit_until_) return;
    const ImVec2 a = ImGui::GetItemRectMin(), b = ImGui::GetItemRectMax();
    const bool bright = std::fmod(ImGui::GetTime(), 0.6) < 0.3;
    if (bright) ImGui::GetWindowDrawList()->AddRectFilled(a, b, palette::with_alpha(palette::caution, 0.5f));
    ImGui::GetWindowDrawList()->AddRect({a.x - 2, a.y - 2}, {b.x + 2, b.y + 2}, palette::judgement, 0, 0, (bright ? 4.0f : 2.5f) * k());
}

void JobPanel::field(const Field& f, JobEvents& e)
{
    if (wanted(f.path)) ImGui::SetKeyboardFocusHere();
    const float room = ImGui::GetContentRegionAvail().x, label = std::min((f.coordinates.size() > 2 ? 0.36f : 0.42f) * room, 150 * k());
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImFont* small = look().fonts.small;
    const float tall = ImGui::GetFrameHeight();
    const ImU32 colour = !f.error.empty() ? palette::fail : f.assumed ? palette::not_covered : palette::faint;
    const std::string name = (f.assumed ? "* " : "") + f.label;
    // A long name, or a word to choose that is long, has a line of its own: nothing is cut.
    const std::string word = kind_of_choice(f.kind) && !f.choices.empty() ? (f.kind == FieldKind::choice ? plain_words(f.value) : f.value) : "";
    const bool own_line = widgets::size_of(name, small).x > label - 4 * k() || widgets::size_of(word.substr(0, word.find(" (")), ImGui::GetFont()).x > room - label - ImGui::GetFrameHeight() - 2 * ImGui::GetStyle().FramePadding.x;
    const float line = own_line ? small->FontSize + 2 * k() : 0;
    widgets::letters_within({at.x, at.y + (own_line ? 1 * k() : (tall - small->FontSize) / 2)}, own_line ? room : label - 4 * k(), name, colour, small);
    ImGui::SetCursorScreenPos({at.x + (own_line ? 0 : label), at.y + line});
    const float wide = own_line ? room : room - label;
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
    if (lit_ == f.path) {
        light();
        if (const std::string help = help_of(f); !help.empty()) widgets::wrapped(help, palette::judgement, small);
    }
    if (!f.error.empty()) widgets::wrapped(f.error, palette::fail, small);
}

void JobPanel::section(const Section& s, const model::Case* c, const std::string& chosen_part, JobEvents& e)
{
    ImGui::PushID(s.path.c_str());
    const bool asked = !open_wanted_.empty() && s.part == open_wanted_;
    if (asked) {
        open_.insert(s.path);
        ImGui::SetScrollHereY(0.1f);
        open_wanted_.clear();
    }
    const bool led_to = wanted(s.path);
    if (led_to) ImGui::SetKeyboardFocusHere();
    const bool open = open_.count(s.path) > 0, chosen = !s.part.empty() && s.part == chosen_part;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float wide = ImGui::GetContentRegionAvail().x, tall = ImGui::GetFrameHeight();
    if (ImGui::InvisibleButton("head", {wide, tall})) {
        if (open) open_.erase(s.path);
        else open_.insert(s.path);
        e.chosen_part = s.part;
    }
    if (lit_ == s.path) light();
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
        if (c) keys_of(s, *c, e);
        if (s.can_be_removed && c && widgets::button("Remove##" + s.path, "Takes " + s.title + " out of the case; undo brings it back")) e.edit = remove_part(*c, s.path);
        ImGui::Unindent(10 * k());
        widgets::space(4);
    }
    ImGui::PopID();
}

/// What a fitter reaches for: another angle, another bolt, other bolts.
void JobPanel::parts_to_add(const model::Case& c, JobEvents& e)
{
    const bool asked = wanted("reinforcement.angles"); // the link in the advice presses the button
    const bool pushed = widgets::button("+ angle", "A further angle behind the skin, tied to the frame");
    if (lit_ == "reinforcement.angles") light();
    if (pushed || asked) e.edit = add_angle(c);
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

void JobPanel::go_to(const Spot& s)
{
    if (!s.section.empty()) open_.insert(s.section);
    if (s.add.empty()) {
        go_to_ = s.field.empty() ? s.section : s.field;
    } else if (s.add == "reinforcement.angles") {
        go_to_ = s.add; // its own button
    } else {
        add_wanted_ = s.add;
        add_owner_ = s.section;
    }
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
        if (c && !g.can_add.empty()) add_to(g.title, g.can_add, *c, ImGui::GetContentRegionAvail().x);
        form(g.title, e);
        widgets::space(6);
    }
    widgets::text("* assumed: nobody measured it", palette::not_covered, look().fonts.small);
    // A field that went away while it was typed into: what was typed is not lost.
    if (!draft_.id.empty() && !draft_.drawn && !e.edit) put_in(e);
    return e;
}

} // namespace thinskin::gui
