#include "panels/margins.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"

#include <algorithm>
#include <map>
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
    case Mark::aside: return palette::faint;
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

/// The symbol of a mark; what is not counted has a ring with an i, as a note has.
void symbol(ImVec2 at, float size, Mark m, ImU32 colour)
{
    if (m != Mark::aside) return widgets::mark(at, size, status_of(m), colour);
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const ImVec2 c{at.x + size / 2, at.y + size / 2};
    const float w = std::max(1.3f, size / 9);
    d.AddCircle(c, 0.46f * size, colour, 0, w);
    d.AddLine({c.x, c.y - 0.04f * size}, {c.x, c.y + 0.27f * size}, colour, w);
    d.AddCircleFilled({c.x, c.y - 0.22f * size}, w * 0.7f, colour);
}

void links(const std::vector<Spot>& all, MarginsEvents& e)
{
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 2 * k()});
    for (std::size_t i = 0; i < all.size(); ++i)
        if (widgets::link(all[i].label, i == 0, all[i].add == "reinforcement.angles" ? "Adds one at the next free height; undo takes it away again" : "Leads to its field on the left")) e.go_to = all[i];
    ImGui::PopStyleVar();
    if (!all.empty()) widgets::space(3);
}

/// The verdict as a stamp: mark, word, one line why, one line what helps and where that is typed in.
void stamp(const MarginsShown& m, MarginsEvents& e)
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
    ImGui::PushID("advice");
    links(m.advice_at, e);
    ImGui::PopID();
    if (!m.stands_on.empty()) widgets::wrapped(m.stands_on, m.stale ? palette::grey : palette::not_covered, look().fonts.small);
    if (!v.aside.empty()) {
        widgets::wrapped(v.aside + ".", palette::faint, look().fonts.small);
        if (widgets::link("why, and which frequency", true, "Chooses its row")) {
            e.check = v.aside_check;
            e.load_case = v.aside_case;
        }
    }
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
        symbol({at.x + 3 * k(), at.y + 3 * k()}, font->FontSize - 2 * k(), g.mark, colour);
        widgets::letters({at.x + 22 * k(), at.y + 2 * k()}, g.name, palette::ink, font);
        widgets::letters({at.x + 128 * k(), at.y + 2 * k()}, g.status, colour, font);
        if (m.comparing && !g.delta.empty()) widgets::letters_right(at.x + wide - 56 * k(), at.y + 3 * k(), g.delta, g.better < 0 ? palette::fail : palette::pass, look().fonts.small);
        widgets::letters_right(at.x + wide - 4 * k(), at.y + 2 * k(), g.margin, colour, look().fonts.bold);
    }
}

float status_wide(const MarginRow& r) { return widgets::size_of(r.status, look().fonts.small).x + 8 * k(); }

/// A row's title in as many lines as it needs; broken up once, not once a frame.
const std::vector<std::string>& title_lines(const MarginRow& r, float wide)
{
    static std::map<std::string, std::vector<std::string>> all;
    const std::string key = fmt::format("{:.0f} {:.1f} {}", wide - status_wide(r), k(), r.title);
    const auto it = all.find(key);
    if (it != all.end()) return it->second;
    if (all.size() > 2000) all.clear();
    return all[key] = widgets::lines_of(r.title, wide - status_wide(r), look().fonts.small);
}

float title_step() { return look().fonts.small->FontSize + 2 * k(); }
float row_height(const std::vector<std::string>& title) { return look().fonts.plain->FontSize + title_step() * static_cast<float>(title.size()) + 7 * k(); }

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
    const float wide = ImGui::GetContentRegionAvail().x;
    const std::vector<std::string>& title = title_lines(r, wide - 29 * k());
    const float tall = row_height(title);
    if (!ImGui::IsRectVisible({wide, tall})) return ImGui::Dummy({wide, tall});
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
    symbol({at.x + 3 * k(), at.y + 4 * k()}, plain->FontSize, r.mark, colour);
    const float left = at.x + 24 * k(), right = at.x + wide - 5 * k();
    widgets::letters_right(right, at.y + 3 * k(), r.margin, colour, bold);
    const float margin_wide = std::max(widgets::size_of(r.margin, bold).x, 42 * k());
    float end = right - margin_wide - 8 * k();
    if (m.comparing && !r.delta.empty()) {
        widgets::letters_right(end, at.y + 4 * k(), r.delta, r.better < 0 ? palette::fail : palette::pass, small);
        end -= widgets::size_of(r.delta, small).x + 6 * k();
    }
    widgets::letters_within({left, at.y + 3 * k()}, end - left, r.part + (r.governing ? "  (the tightest)" : ""), palette::ink, r.governing ? bold : plain);
    const float below = at.y + plain->FontSize + 5 * k();
    widgets::letters_right(right, below, r.status, colour, small);
    for (std::size_t i = 0; i < title.size(); ++i) widgets::letters_within({left, below + title_step() * static_cast<float>(i)}, right - status_wide(r) - left, title[i], palette::faint, small);
    d.AddLine({at.x, at.y + tall}, {at.x + wide, at.y + tall}, palette::rule);
    ImGui::PopID();
}

void list(const MarginsShown& m, float tall, MarginsEvents& e)
{
    ImGui::BeginChild("margins", {0, tall});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 0});
    for (std::size_t i = 0; i < m.rows->size(); ++i) row(m, (*m.rows)[i], static_cast<int>(i), e);
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
void card(const MarginCard& c, const std::vector<Spot>& help_at, bool stale, MarginsEvents& e)
{
    ImFont *bold = look().fonts.bold, *small = look().fonts.small;
    const ImU32 colour = stale ? palette::grey : colour_of(c.row.mark);
    widgets::wrapped(c.row.part + ": " + c.row.title, palette::ink, bold);
    widgets::wrapped(c.sum, colour, look().fonts.plain);
    if (!c.not_counted.empty()) widgets::wrapped(c.not_counted, palette::ink, small);
    widgets::space(3);
    for (const std::string& h : c.help) widgets::wrapped(h, palette::judgement, small);
    links(help_at, e);
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
}

void card_panel(const MarginsShown& m, MarginsEvents& e)
{
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const ImVec2 at = ImGui::GetCursorScreenPos(), room = ImGui::GetContentRegionAvail();
    d.AddRectFilled(at, {at.x + room.x, at.y + room.y}, palette::paper);
    d.AddRect(at, {at.x + room.x, at.y + room.y}, palette::ink, 0, 0, 1.4f * k());
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {8 * k(), 6 * k()});
    ImGui::BeginChild("card", {0, 0}, false, ImGuiWindowFlags_AlwaysUseWindowPadding);
    if (m.card) card(*m.card, m.help_at, m.stale, e);
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
        for (const std::string& why : m.trouble) widgets::wrapped(why, palette::fail, look().fonts.plain);
        return e;
    }
    stamp(m, e);
    for (std::size_t i = 0; i < m.trouble.size() && i < 5; ++i) widgets::wrapped(m.trouble[i], palette::fail, look().fonts.plain);
    widgets::space(4);
    groups(m, e);
    widgets::space(3);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float wide = ImGui::GetContentRegionAvail().x;
    ImFont* small = look().fonts.small;
    widgets::letters_within(at, wide - 60 * k(), m.group.empty() ? "margins, least first (worst load case of each)" : "margins of group " + m.group, palette::faint, small);
    widgets::letters_right(at.x + wide - 5 * k(), at.y, "margin", palette::faint, small);
    ImGui::Dummy({wide, small->FontSize});
    if (m.comparing) { // its line is there without words too: the list must not jump
        const ImVec2 below = ImGui::GetCursorScreenPos();
        widgets::letters_within(below, wide, m.compared_with, palette::judgement, small);
        ImGui::Dummy({wide, small->FontSize});
    }
    widgets::rule();
    const float left = ImGui::GetContentRegionAvail().y, for_card = std::clamp(0.48f * left, 120 * k(), 380 * k());
    list(m, left - for_card - 6 * k(), e);
    widgets::space(4);
    card_panel(m, e);
    return e;
}

} // namespace thinskin::gui
