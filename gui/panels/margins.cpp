#include "panels/margins.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"

#include <algorithm>
#include <fmt/format.h>

namespace thinskin::gui {
namespace {

float k() { return look().scale; }

ImU32 colour_of(Mark m)
{
    switch (m) {
    case Mark::pass: return palette::pass;
    case Mark::judgement: return palette::judgement;
    case Mark::fail: return palette::fail;
    case Mark::not_covered: case Mark::linear: return palette::not_covered;
    case Mark::not_solved: case Mark::stale: return palette::grey;
    }
    return palette::grey;
}

base::Status status_of(Mark m)
{
    switch (m) {
    case Mark::pass: return base::Status::pass;
    case Mark::judgement: return base::Status::judgement;
    case Mark::fail: return base::Status::fail;
    default: return base::Status::not_covered;
    }
}

/// The verdict as a stamp: mark, word, one line why, one line what helps.
void stamp(const MarginsShown& m)
{
    const VerdictLines& v = *m.verdict;
    const ImU32 colour = m.stale ? palette::grey : colour_of(v.mark);
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float wide = ImGui::GetContentRegionAvail().x, tall = look().fonts.large->FontSize + 14 * k(), size = look().fonts.large->FontSize;
    d.AddRect(at, {at.x + wide, at.y + tall}, colour, 0, 0, 2.5f * k());
    widgets::mark({at.x + 9 * k(), at.y + 7 * k()}, size, status_of(v.mark), colour);
    widgets::letters({at.x + 18 * k() + size, at.y + 6 * k()}, v.word, colour, look().fonts.large);
    const float left = at.x + 26 * k() + size + widgets::size_of(v.word, look().fonts.large).x;
    const float room = at.x + wide - 8 * k() - left;
    widgets::letters_within({left, at.y + (tall - look().fonts.small->FontSize) / 2}, room, m.state, palette::faint, look().fonts.small);
    ImGui::Dummy({wide, tall});
    const ImU32 ink = m.stale ? palette::grey : palette::ink;
    widgets::wrapped(v.headline, ink, look().fonts.plain);
    if (!v.advice.empty()) widgets::wrapped(v.advice, m.stale ? palette::grey : palette::judgement, look().fonts.plain);
    if (!v.counts.empty()) widgets::wrapped(v.counts, palette::faint, look().fonts.small);
}

void groups(const MarginsShown& m, MarginsEvents& e)
{
    ImFont* font = look().fonts.plain;
    for (const GroupRow& g : *m.groups) {
        const ImVec2 at = ImGui::GetCursorScreenPos();
        const float wide = ImGui::GetContentRegionAvail().x, tall = font->FontSize + 4 * k();
        if (ImGui::InvisibleButton(("group " + g.name).c_str(), {wide, tall})) e.group = m.group == g.name ? std::string() : g.name;
        ImDrawList& d = *ImGui::GetWindowDrawList();
        if (m.group == g.name) d.AddRectFilled(at, {at.x + wide, at.y + tall}, palette::chosen);
        if (ImGui::IsItemHovered()) {
            d.AddRectFilled(at, {at.x + wide, at.y + tall}, palette::pointed);
            widgets::tip(g.part.empty() ? "Show only this group" : g.part + ": " + g.check + (g.remark.empty() ? "" : "\n" + g.remark));
        }
        probe::target("group " + g.name, at, {at.x + wide, at.y + tall});
        const ImU32 colour = m.stale ? palette::grey : colour_of(g.mark);
        widgets::mark({at.x + 3 * k(), at.y + 3 * k()}, font->FontSize - 2 * k(), status_of(g.mark), colour);
        widgets::letters({at.x + 22 * k(), at.y + 2 * k()}, g.name, palette::ink, font);
        widgets::letters({at.x + 128 * k(), at.y + 2 * k()}, g.status, colour, font);
        if (m.comparing && !g.delta.empty()) widgets::letters_right(at.x + wide - 56 * k(), at.y + 3 * k(), g.delta, g.better < 0 ? palette::fail : palette::pass, look().fonts.small);
        widgets::letters_right(at.x + wide - 4 * k(), at.y + 2 * k(), g.margin, colour, look().fonts.bold);
    }
}

float row_height() { return look().fonts.plain->FontSize + look().fonts.small->FontSize + 9 * k(); }

bool lit(const MarginRow& r, const std::string& part)
{
    if (part.empty()) return false;
    if (r.part == part) return true;
    const std::size_t at = r.title.find(part);
    if (at == std::string::npos) return false;
    const std::size_t end = at + part.size();
    return (at == 0 || r.title[at - 1] == ' ') && (end == r.title.size() || r.title[end] == ' ');
}

void row(const MarginsShown& m, const MarginRow& r, int index, MarginsEvents& e)
{
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float wide = ImGui::GetContentRegionAvail().x, tall = row_height();
    ImGui::PushID(index);
    if (ImGui::InvisibleButton("row", {wide, tall})) {
        e.check = r.check_id;
        e.load_case = r.load_case;
    }
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const bool chosen = r.check_id == m.chosen_check && r.load_case == m.chosen_case;
    if (chosen) d.AddRectFilled(at, {at.x + wide, at.y + tall}, palette::chosen | IM_COL32(0, 0, 0, 120));
    else if (lit(r, m.lit_part)) d.AddRectFilled(at, {at.x + wide, at.y + tall}, palette::pointed);
    if (ImGui::IsItemHovered() || ImGui::IsItemFocused()) d.AddRect(at, {at.x + wide, at.y + tall}, palette::judgement);
    probe::target(fmt::format("margin {}", index), at, {at.x + wide, at.y + tall});
    const ImU32 colour = m.stale ? palette::grey : colour_of(r.mark);
    ImFont *plain = look().fonts.plain, *small = look().fonts.small, *bold = look().fonts.bold;
    widgets::mark({at.x + 3 * k(), at.y + 4 * k()}, plain->FontSize, status_of(r.mark), colour);
    const float left = at.x + 24 * k(), right = at.x + wide - 5 * k();
    widgets::letters_right(right, at.y + 3 * k(), r.margin, colour, bold);
    const float margin_wide = std::max(widgets::size_of(r.margin, bold).x, 42 * k());
    float end = right - margin_wide - 8 * k();
    if (m.comparing && !r.delta.empty()) {
        widgets::letters_right(end, at.y + 4 * k(), r.delta, r.better < 0 ? palette::fail : palette::pass, small);
        end -= widgets::size_of(r.delta, small).x + 6 * k();
    }
    widgets::letters_within({left, at.y + 3 * k()}, end - left, r.part + (r.governing ? "  (governs)" : ""), palette::ink, r.governing ? bold : plain);
    const float below = at.y + plain->FontSize + 5 * k();
    const std::string status = r.status;
    widgets::letters_right(right, below, status, colour, small);
    widgets::letters_within({left, below}, right - widgets::size_of(status, small).x - 8 * k() - left, r.title, palette::faint, small);
    d.AddLine({at.x, at.y + tall}, {at.x + wide, at.y + tall}, palette::rule);
    ImGui::PopID();
}

void list(const MarginsShown& m, float tall, MarginsEvents& e)
{
    ImGui::BeginChild("margins", {0, tall});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 0});
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(m.rows->size()), row_height());
    while (clipper.Step())
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) row(m, (*m.rows)[static_cast<std::size_t>(i)], i, e);
    ImGui::PopStyleVar();
    ImGui::EndChild();
}

void line(const char* head, const std::string& words, ImU32 colour = palette::ink)
{
    if (words.empty()) return;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImFont* small = look().fonts.small;
    widgets::letters(at, head, palette::faint, small);
    ImGui::Indent(74 * k());
    widgets::wrapped(words, colour, small);
    ImGui::Unindent(74 * k());
    widgets::space(3);
}

void symbols(const MarginCard& c)
{
    ImFont* small = look().fonts.small;
    for (const MarginCard::Symbol& s : c.symbols) {
        const ImVec2 at = ImGui::GetCursorScreenPos();
        const float wide = ImGui::GetContentRegionAvail().x;
        const std::string value = s.name + " = " + s.value + (s.unit.empty() || s.unit == "-" ? "" : " " + s.unit);
        widgets::letters(at, value, palette::ink, small);
        const float left = std::max(96 * k(), widgets::size_of(value, small).x + 8 * k()), step = small->FontSize + 2 * k();
        const std::vector<std::string> lines = widgets::lines_of(s.meaning, wide - left, small);
        for (std::size_t i = 0; i < lines.size(); ++i) widgets::letters_within({at.x + left, at.y + step * static_cast<float>(i)}, wide - left, lines[i], palette::faint, small);
        ImGui::Dummy({wide, step * static_cast<float>(lines.size()) - ImGui::GetStyle().ItemSpacing.y + 1 * k()});
    }
    if (!c.symbols.empty()) widgets::space(4);
}

/// The chosen margin, as a title block tells everything about its drawing.
void card(const MarginCard& c, bool stale)
{
    ImFont *bold = look().fonts.bold, *small = look().fonts.small;
    const ImU32 colour = stale ? palette::grey : colour_of(c.row.mark);
    widgets::wrapped(c.row.part + ": " + c.row.title, palette::ink, bold);
    widgets::wrapped(c.sum, colour, look().fonts.plain);
    widgets::space(3);
    if (!c.formula.empty()) {
        widgets::wrapped(c.formula_id + "  " + c.formula_title, palette::faint, small);
        widgets::wrapped(c.formula, palette::ink, look().fonts.plain);
        widgets::space(3);
    }
    symbols(c);
    line("source", c.source);
    line("range", c.range);
    line("not for", c.not_for);
    line("load case", c.load_case);
    line("theory", c.theory);
    for (const std::string& h : c.hand_check) line("by hand", h);
    line("note", c.note);
    for (const std::string& h : c.help) line("would help", h, palette::judgement);
}

void card_panel(const MarginsShown& m)
{
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const ImVec2 at = ImGui::GetCursorScreenPos(), room = ImGui::GetContentRegionAvail();
    d.AddRectFilled(at, {at.x + room.x, at.y + room.y}, palette::paper);
    d.AddRect(at, {at.x + room.x, at.y + room.y}, palette::ink, 0, 0, 1.4f * k());
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {8 * k(), 6 * k()});
    ImGui::BeginChild("card", {0, 0}, false, ImGuiWindowFlags_AlwaysUseWindowPadding);
    if (m.card) card(*m.card, m.stale);
    else widgets::wrapped("Choose a margin above, or a part on the drawing: its formula with the numbers in, its source and its hand sum stand here.", palette::faint, look().fonts.plain);
    ImGui::EndChild();
    ImGui::PopStyleVar();
}

} // namespace

MarginsEvents show_margins(const MarginsShown& m)
{
    MarginsEvents e;
    if (!m.verdict) {
        widgets::wrapped(m.state.empty() ? "No result yet." : m.state, palette::faint, look().fonts.plain);
        return e;
    }
    stamp(m);
    widgets::space(4);
    groups(m, e);
    widgets::space(3);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float wide = ImGui::GetContentRegionAvail().x;
    ImFont* small = look().fonts.small;
    widgets::letters_within(at, wide - 60 * k(), m.group.empty() ? "margins, least first (worst load case of each)" : "margins of group " + m.group, palette::faint, small);
    widgets::letters_right(at.x + wide - 5 * k(), at.y, "margin", palette::faint, small);
    ImGui::Dummy({wide, small->FontSize});
    widgets::rule();
    const float left = ImGui::GetContentRegionAvail().y, for_card = std::clamp(0.48f * left, 120 * k(), 380 * k());
    list(m, left - for_card - 6 * k(), e);
    widgets::space(4);
    card_panel(m);
    return e;
}

} // namespace thinskin::gui
