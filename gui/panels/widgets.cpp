#include "panels/widgets.h"
#include "panels/probe.h"

#include <algorithm>
#include <cfloat>
#include <cmath>
#include <vector>

namespace thinskin::gui {

Look& look()
{
    static Look l;
    return l;
}

namespace widgets {
namespace {

ImDrawList& ink_on() { return *ImGui::GetWindowDrawList(); }

/// As much of the words as fits, "..." included.
std::string shortened(const std::string& words, float width, ImFont* font)
{
    if (size_of(words, font).x <= width) return words;
    std::string kept = words;
    while (!kept.empty()) {
        do kept.pop_back();
        while (!kept.empty() && (static_cast<unsigned char>(kept.back()) & 0xC0U) == 0x80U);
        if (size_of(kept + "...", font).x <= width) break;
    }
    if (!kept.empty() && (static_cast<unsigned char>(kept.back()) & 0x80U) != 0) // the lead byte of a cut letter
        kept.pop_back();
    return kept + "...";
}

} // namespace

ImVec2 size_of(const std::string& words, ImFont* font) { return font->CalcTextSizeA(font->FontSize, FLT_MAX, 0, words.data(), words.data() + words.size()); }

void letters(ImVec2 at, const std::string& words, ImU32 colour, ImFont* font)
{
    at = {std::floor(at.x), std::floor(at.y)};
    ink_on().AddText(font, font->FontSize, at, colour, words.data(), words.data() + words.size());
    const ImVec2 size = size_of(words, font);
    probe::text(words, at, {at.x + size.x, at.y + size.y});
}

void letters_right(float right, float y, const std::string& words, ImU32 colour, ImFont* font) { letters({right - size_of(words, font).x, y}, words, colour, font); }

void letters_within(ImVec2 at, float width, const std::string& words, ImU32 colour, ImFont* font)
{
    const std::string kept = shortened(words, width, font);
    letters(at, kept, colour, font);
    if (kept != words && ImGui::IsMouseHoveringRect(at, {at.x + width, at.y + font->FontSize})) tip(words);
}

void text(const std::string& words, ImU32 colour, ImFont* font)
{
    const ImVec2 at = ImGui::GetCursorScreenPos();
    letters(at, words, colour, font);
    ImGui::Dummy(size_of(words, font));
}

std::vector<std::string> lines_of(const std::string& words, float width, ImFont* font)
{
    std::vector<std::string> lines(1);
    for (std::size_t at = 0; at < words.size();) {
        if (words[at] == '\n') {
            lines.emplace_back();
            ++at;
            continue;
        }
        const std::size_t end = std::min(words.find_first_of(" \n", at), words.size());
        const std::string word = words.substr(at, end - at);
        const std::string longer = lines.back().empty() ? word : lines.back() + " " + word;
        if (lines.back().empty() || size_of(longer, font).x <= width) lines.back() = longer;
        else lines.push_back(word);
        at = end + (end < words.size() && words[end] == ' ' ? 1 : 0);
    }
    return lines;
}

void wrapped(const std::string& words, ImU32 colour, ImFont* font)
{
    const float width = std::max(ImGui::GetContentRegionAvail().x, 4 * font->FontSize);
    for (const std::string& line : lines_of(words, width, font)) {
        letters_within(ImGui::GetCursorScreenPos(), width, line, colour, font);
        ImGui::Dummy({1, font->FontSize * 1.18f - ImGui::GetStyle().ItemSpacing.y});
    }
}

void tip(const std::string& words)
{
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(look().scale * 420);
    ImGui::TextUnformatted(words.data(), words.data() + words.size());
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
}

namespace {

/// Words in the middle of the last item, which is a target under the same name.
void word_of_item(const std::string& words, float offset_x)
{
    const std::string shown = words.substr(0, words.find("##"));
    const ImVec2 a = ImGui::GetItemRectMin(), b = ImGui::GetItemRectMax();
    const ImVec2 size = size_of(shown, ImGui::GetFont());
    const float x = offset_x < 0 ? (a.x + b.x - size.x) / 2 : a.x + offset_x, y = (a.y + b.y - size.y) / 2;
    probe::text(shown, {x, y}, {x + size.x, y + size.y});
    probe::target(words, a, b);
}

} // namespace

bool button(const std::string& words, const std::string& help, bool enabled)
{
    ImGui::BeginDisabled(!enabled);
    const bool pushed = ImGui::Button(words.c_str());
    ImGui::EndDisabled();
    word_of_item(words, -1);
    if (!help.empty() && ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled)) tip(help);
    return pushed;
}

bool link(const std::string& words, bool first, const std::string& help)
{
    ImFont* font = look().fonts.small;
    const float gap = 12 * look().scale, room = ImGui::GetContentRegionMax().x + ImGui::GetWindowPos().x - ImGui::GetScrollX();
    const std::string kept = shortened("> " + words, std::max(ImGui::GetContentRegionAvail().x, 4 * font->FontSize), font);
    const ImVec2 size = size_of(kept, font);
    if (!first && ImGui::GetItemRectMax().x + gap + size.x <= room) ImGui::SameLine(0, gap);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const bool pushed = ImGui::InvisibleButton(("go to " + words).c_str(), {size.x, font->FontSize + 2 * look().scale});
    const bool lit = ImGui::IsItemHovered() || ImGui::IsItemFocused();
    if (lit) ink_on().AddRectFilled(ImGui::GetItemRectMin(), ImGui::GetItemRectMax(), palette::pointed);
    if (ImGui::IsItemHovered()) ImGui::SetMouseCursor(ImGuiMouseCursor_Hand);
    letters(at, kept, palette::judgement, font);
    ink_on().AddLine({at.x, at.y + font->FontSize}, {at.x + size.x, at.y + font->FontSize}, palette::judgement);
    probe::target("go to " + words, ImGui::GetItemRectMin(), ImGui::GetItemRectMax());
    if (ImGui::IsItemHovered() && !help.empty()) tip(help);
    return pushed;
}

bool toggle(const std::string& words, bool on, const std::string& help)
{
    if (on) ImGui::PushStyleColor(ImGuiCol_Button, palette::with_alpha(palette::item, 0.55f));
    const bool pushed = button(words, help);
    if (on) ImGui::PopStyleColor();
    return pushed;
}

bool checkbox(const std::string& words, bool& on)
{
    const bool changed = ImGui::Checkbox(words.c_str(), &on);
    word_of_item(words, ImGui::GetFrameHeight() + ImGui::GetStyle().ItemInnerSpacing.x);
    return changed;
}

bool choice(const std::string& id, const std::vector<std::string>& words, int& chosen, float width)
{
    bool taken = false;
    ImGui::SetNextItemWidth(width);
    const std::string now = chosen >= 0 && chosen < static_cast<int>(words.size()) ? words[static_cast<std::size_t>(chosen)] : "";
    const float room = width - ImGui::GetFrameHeight() - 2 * ImGui::GetStyle().FramePadding.x;
    const bool fits = size_of(now, ImGui::GetFont()).x <= room; // else without what stands in brackets behind it
    const std::string shown = shortened(fits ? now : now.substr(0, now.find(" (")), room, ImGui::GetFont());
    const bool open = ImGui::BeginCombo(("##" + id).c_str(), shown.c_str(), ImGuiComboFlags_HeightLarge);
    if (!open) {
        const ImVec2 a = ImGui::GetItemRectMin(), b = ImGui::GetItemRectMax(), pad = ImGui::GetStyle().FramePadding;
        probe::text(shown, {a.x + pad.x, a.y + pad.y}, {a.x + pad.x + size_of(shown, ImGui::GetFont()).x, b.y - pad.y});
        probe::target(id, a, b);
        return false;
    }
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool is = static_cast<int>(i) == chosen;
        if (ImGui::Selectable((words[i] + "##" + std::to_string(i)).c_str(), is)) {
            chosen = static_cast<int>(i);
            taken = !is;
        }
        probe::target(words[i], ImGui::GetItemRectMin(), ImGui::GetItemRectMax());
        if (is && ImGui::IsWindowAppearing()) ImGui::SetScrollHereY();
    }
    ImGui::EndCombo();
    return taken;
}

bool menu_item(const std::string& words, const std::string& key, bool enabled, bool ticked)
{
    const bool taken = ImGui::MenuItem(words.c_str(), key.empty() ? nullptr : key.c_str(), ticked, enabled);
    probe::target(words, ImGui::GetItemRectMin(), ImGui::GetItemRectMax());
    return taken;
}

void mark(ImVec2 at, float size, base::Status s, ImU32 colour)
{
    ImDrawList& d = ink_on();
    const auto p = [at, size](float x, float y) { return ImVec2{at.x + x * size, at.y + y * size}; };
    const float w = std::max(1.5f, size / 6);
    switch (s) {
    case base::Status::pass:
        for (const auto& [a, b] : {std::pair{p(0.12f, 0.55f), p(0.38f, 0.85f)}, std::pair{p(0.38f, 0.85f), p(0.9f, 0.15f)}}) d.AddLine(a, b, colour, w);
        break;
    case base::Status::fail:
        d.AddLine(p(0.15f, 0.15f), p(0.85f, 0.85f), colour, w);
        d.AddLine(p(0.15f, 0.85f), p(0.85f, 0.15f), colour, w);
        break;
    case base::Status::judgement:
        for (const float y : {0.35f, 0.7f}) d.AddBezierCubic(p(0.08f, y + 0.1f), p(0.35f, y - 0.25f), p(0.65f, y + 0.3f), p(0.92f, y - 0.08f), colour, w);
        break;
    case base::Status::not_covered:
        for (int i = 0; i < 6; ++i) {
            d.PathArcTo(p(0.5f, 0.5f), 0.46f * size, static_cast<float>(i) * 1.0472f, static_cast<float>(i) * 1.0472f + 0.62f, 4);
            d.PathStroke(colour, ImDrawFlags_None, std::max(1.0f, w * 0.7f));
        }
        d.PathArcTo(p(0.5f, 0.38f), 0.15f * size, -3.3f, 1.2f, 8);
        d.PathLineTo(p(0.5f, 0.62f));
        d.PathStroke(colour, ImDrawFlags_None, w * 0.8f);
        d.AddCircleFilled(p(0.5f, 0.76f), w * 0.5f, colour);
        break;
    }
}

void mark(ImVec2 at, float size, base::Verdict v, ImU32 colour)
{
    mark(at, size, v == base::Verdict::pass ? base::Status::pass : v == base::Verdict::fail ? base::Status::fail : base::Status::not_covered, colour);
}

void rule()
{
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float w = ImGui::GetContentRegionAvail().x;
    ink_on().AddLine({at.x, at.y + 1}, {at.x + w, at.y + 1}, palette::rule);
    ImGui::Dummy({w, 2});
}

void space(float px) { ImGui::Dummy({1, px * look().scale - ImGui::GetStyle().ItemSpacing.y}); }

} // namespace widgets
} // namespace thinskin::gui
