#include "panels/job.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"

#include <algorithm>
#include <imgui_stdlib.h>

/// Optional keys of a section: added through a small form, taken away from a list.
namespace thinskin::gui {
namespace {

float k() { return look().scale; }

/// A choice whose first row only says what it is for.
std::size_t pick_from(const std::string& id, const std::string& title, const std::vector<std::string>& words, float width)
{
    std::vector<std::string> all{title};
    all.insert(all.end(), words.begin(), words.end());
    int chosen = 0;
    return widgets::choice(id, all, chosen, width) ? static_cast<std::size_t>(chosen) - 1 : words.size();
}

} // namespace

void JobPanel::begin_adding(const std::string& owner, const std::string& path, const model::Case& c)
{
    Adding a{owner, new_key(c, path, units_), {}, true};
    if (a.key.fields.empty()) return;
    for (const Field& f : a.key.fields) a.texts.push_back(f.value);
    adding_ = std::move(a);
}

void JobPanel::add_to(const std::string& owner, const std::vector<std::string>& can_add, const model::Case& c, float width)
{
    if (!add_wanted_.empty() && std::find(can_add.begin(), can_add.end(), add_wanted_) != can_add.end() && (add_owner_.empty() || add_owner_ == owner)) {
        begin_adding(owner, add_wanted_, c);
        add_wanted_.clear();
        ImGui::SetScrollHereY(0.3f);
    }
    std::vector<std::string> words;
    for (const std::string& path : can_add) words.push_back(key_words(owner, path));
    if (const std::size_t i = pick_from("add to " + owner, "add ...", words, width); i < can_add.size()) begin_adding(owner, can_add[i], c);
}

void JobPanel::keys_of(const Section& s, const model::Case& c, JobEvents& e)
{
    const float room = ImGui::GetContentRegionAvail().x, half = s.can_add.empty() || s.can_remove.empty() ? room : (room - 4 * k()) / 2;
    if (!s.can_add.empty()) add_to(s.path, s.can_add, c, half);
    if (!s.can_remove.empty()) {
        if (!s.can_add.empty()) ImGui::SameLine(0, 4 * k());
        std::vector<std::string> words;
        for (const std::string& path : s.can_remove) words.push_back(key_words(s.path, path));
        if (const std::size_t i = pick_from("remove from " + s.path, "leave out ...", words, half); i < s.can_remove.size()) e.edit = remove_key(c, s.can_remove[i]);
    }
    form(s.path, e);
}

void JobPanel::form_field(std::size_t i, bool& entered)
{
    const Field& f = adding_->key.fields[i];
    std::string& text = adding_->texts[i];
    const float room = ImGui::GetContentRegionAvail().x, label = 0.42f * room;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    widgets::letters_within({at.x, at.y + (ImGui::GetFrameHeight() - look().fonts.small->FontSize) / 2}, label - 4 * k(), f.label + (f.unit.empty() ? "" : ", " + f.unit), palette::faint, look().fonts.small);
    ImGui::SetCursorScreenPos({at.x + label, at.y});
    const std::string id = "new " + f.path;
    if (adding_->fresh && i == 0) ImGui::SetKeyboardFocusHere();
    if (!f.choices.empty()) {
        std::vector<std::string> words = f.choices;
        words.insert(words.begin(), "choose");
        const auto now = std::find(words.begin() + 1, words.end(), text);
        int chosen = now == words.end() ? 0 : static_cast<int>(now - words.begin());
        if (widgets::choice(id, words, chosen, room - label)) text = chosen == 0 ? "" : words[static_cast<std::size_t>(chosen)];
    } else {
        ImGui::SetNextItemWidth(room - label);
        entered = ImGui::InputText(("##" + id).c_str(), &text, ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll) || entered;
        probe::target(id, ImGui::GetItemRectMin(), ImGui::GetItemRectMax());
    }
    widgets::wrapped(how_to_fill(f), palette::faint, look().fonts.small);
}

void JobPanel::form(const std::string& owner, JobEvents& e)
{
    if (!adding_ || adding_->owner != owner) return;
    ImGui::PushID("form");
    widgets::rule();
    widgets::wrapped("New: " + adding_->key.label, palette::judgement, look().fonts.bold);
    bool entered = false;
    for (std::size_t i = 0; i < adding_->key.fields.size(); ++i) form_field(i, entered);
    adding_->fresh = false;
    const bool done = widgets::button("Add " + adding_->key.label);
    ImGui::SameLine(0, 4 * k());
    const bool cancelled = widgets::button("Cancel##form");
    widgets::rule();
    ImGui::PopID();
    if (done || entered) {
        e.edit = add_key(adding_->key, adding_->texts);
        if (e.edit->ok()) {
            sent_ = std::move(adding_);
            adding_.reset();
        }
    } else if (cancelled) adding_.reset();
}

} // namespace thinskin::gui
