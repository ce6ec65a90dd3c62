#include "panels/studies.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"

#include <fmt/format.h>
#include <imgui.h>

namespace thinskin::gui {
namespace {

float k() { return look().scale; }

ImU32 colour_of(Mark m) { return m == Mark::pass ? palette::pass : m == Mark::judgement ? palette::judgement : m == Mark::fail ? palette::fail : palette::not_covered; }
base::Status status_of(Mark m) { return m == Mark::pass ? base::Status::pass : m == Mark::judgement ? base::Status::judgement : m == Mark::fail ? base::Status::fail : base::Status::not_covered; }

void line(const char* head, const std::string& words, ImU32 colour = palette::ink)
{
    if (words.empty()) return;
    ImFont* small = look().fonts.small;
    widgets::letters(ImGui::GetCursorScreenPos(), head, palette::faint, small);
    ImGui::Indent(84 * k());
    widgets::wrapped(words, colour, small);
    ImGui::Unindent(84 * k());
    widgets::space(2);
}

void lines(const char* head, const std::vector<std::string>& all)
{
    for (std::size_t i = 0; i < all.size(); ++i) line(i == 0 ? head : "", all[i]);
}

void bar(float share, float wide)
{
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float tall = ImGui::GetFrameHeight();
    const ImVec2 a{at.x, at.y + 5 * k()}, b{at.x + wide, at.y + tall - 5 * k()};
    if (share >= 0) d.AddRectFilled(a, {a.x + (b.x - a.x) * share, b.y}, palette::judgement);
    d.AddRect(a, b, palette::ink);
    ImGui::Dummy({wide, tall});
}

} // namespace

void StudiesPanel::head(const StudiesShown& s, StudiesEvents& e)
{
    if (widgets::toggle("proposals", !s.spread, "Which angle, how many fasteners: schemes that hold and that no other beats (P)")) e.spread = false;
    ImGui::SameLine(0, 4 * k());
    if (widgets::toggle("spread", s.spread, "The case over the ranges of everything that nobody measured (S)")) e.spread = true;
    const float close = widgets::size_of("close", look().fonts.plain).x + 14 * k();
    ImGui::SameLine(std::max(0.0f, ImGui::GetContentRegionMax().x - close));
    if (widgets::button("close##studies")) e.close = true;
}

void StudiesPanel::controls(const StudiesShown& s, StudiesEvents& e)
{
    if (s.running) {
        if (widgets::button(s.stopping ? "Stopping..." : s.spread ? "Stop##study" : "Stop, keep the best so far", "", !s.stopping)) e.stop = true;
        ImGui::SameLine(0, 8 * k());
        bar(s.share, 120 * k());
        ImGui::SameLine(0, 8 * k());
        const ImVec2 at = ImGui::GetCursorScreenPos();
        widgets::letters_within({at.x, at.y + 4 * k()}, ImGui::GetContentRegionAvail().x, s.progress, palette::ink, look().fonts.small);
        ImGui::NewLine();
        return;
    }
    if (widgets::button(s.spread ? "Run 100 times" : "Search", s.spread ? "Each figure that nobody measured is drawn from its range, 100 times" : "Looks for fixings that hold; takes up to a few minutes, the window goes on", s.can_start)) e.start = true;
    if (s.spread) return;
    bool robust = s.robust;
    ImGui::SameLine(0, 8 * k());
    if (widgets::checkbox("how robust they are, too", robust)) e.robust = robust;
    if (ImGui::IsItemHovered()) widgets::tip("With each assumption at its bad end, with one thing lost at a time, and what shakes them; takes longer");
}

void StudiesPanel::scheme(const StudiesShown& s, std::size_t i, StudiesEvents& e)
{
    const SchemeRow& r = s.proposal->schemes[i];
    ImFont *plain = look().fonts.plain, *small = look().fonts.small, *bold = look().fonts.bold;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float wide = ImGui::GetContentRegionAvail().x, tall = plain->FontSize + 2 * small->FontSize + 11 * k();
    const bool open = open_ == i;
    ImGui::PushID(static_cast<int>(i));
    if (ImGui::InvisibleButton("scheme", {wide, tall})) open_ = open ? s.proposal->schemes.size() : i;
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const bool taken = s.taken == r.number;
    if (taken) d.AddRectFilled(at, {at.x + wide, at.y + tall}, palette::chosen);
    if (ImGui::IsItemHovered() || ImGui::IsItemFocused()) d.AddRect(at, {at.x + wide, at.y + tall}, palette::judgement);
    probe::target(fmt::format("scheme {}", r.number), at, {at.x + wide, at.y + tall});
    const ImU32 colour = s.older ? palette::grey : colour_of(r.mark);
    widgets::mark({at.x + 3 * k(), at.y + 4 * k()}, plain->FontSize, status_of(r.mark), colour);
    const float left = at.x + 24 * k(), right = at.x + wide - 5 * k(), margin = widgets::size_of(r.margin, bold).x;
    widgets::letters_right(right, at.y + 3 * k(), r.margin, colour, bold);
    widgets::letters_within({left, at.y + 3 * k()}, right - margin - 8 * k() - left, (r.number > 0 ? fmt::format("{}: ", r.number) : "closest: ") + r.words, palette::ink, taken ? bold : plain);
    const float second = at.y + plain->FontSize + 5 * k(), third = second + small->FontSize + 2 * k();
    widgets::letters_within({left, second}, right - left, r.figures, palette::faint, small);
    widgets::letters_within({left, third}, right - left, "tightest: " + r.governing + (r.robust.empty() ? "" : "; " + r.robust), palette::faint, small);
    if (open) {
        ImGui::Indent(24 * k());
        if (widgets::button(r.number > 0 ? fmt::format("Take scheme {}", r.number) : "Take the closest scheme", "Puts it into the case in one step; undo brings yours back. Comments inside its brackets and reinforcement go")) e.take = i;
        line("scheme", r.words);
        lines("stands on", r.rests_on);
        lines("also tight", r.tight);
        lines("parts", r.parts);
        line("assumptions", r.robust);
        line("losses", r.loss.empty() ? "not run" : r.loss);
        line("shaking", r.shaking);
        line("a step up", r.next_step);
        ImGui::Unindent(24 * k());
        widgets::space(4);
    }
    d.AddLine({at.x, ImGui::GetCursorScreenPos().y}, {at.x + wide, ImGui::GetCursorScreenPos().y}, palette::rule);
    ImGui::PopID();
}

void StudiesPanel::schemes(const StudiesShown& s, StudiesEvents& e)
{
    const ProposalShown& p = *s.proposal;
    if (of_ != s.proposal) open_ = 0;
    of_ = s.proposal;
    widgets::wrapped(p.headline, s.older ? palette::grey : p.holds ? palette::pass : palette::fail, look().fonts.plain);
    if (!p.advice.empty()) widgets::wrapped(p.advice, s.older ? palette::grey : palette::judgement, look().fonts.plain);
    widgets::space(2);
    widgets::rule();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {ImGui::GetStyle().ItemSpacing.x, 1 * k()});
    for (std::size_t i = 0; i < p.schemes.size(); ++i) scheme(s, i, e);
    widgets::space(6);
    lines("to make it hold", p.changes);
    lines("not covered", p.not_covered);
    lines("caution", p.cautions);
    line("counted", p.counts);
    ImGui::PopStyleVar();
}

StudiesEvents StudiesPanel::show(const StudiesShown& s)
{
    StudiesEvents e;
    head(s, e);
    controls(s, e);
    ImGui::BeginChild("study", {0, 0}, false, ImGuiWindowFlags_AlwaysUseWindowPadding);
    if (!s.why.empty()) widgets::wrapped(s.why, palette::fail, look().fonts.plain);
    if (s.older) widgets::wrapped("Found for another state of the case than that on the drawing.", palette::grey, look().fonts.small);
    if (s.stopped) widgets::wrapped(s.spread ? "Stopped before the end: the runs so far." : "Stopped before the end: the best so far.", palette::not_covered, look().fonts.small);
    if (!s.spread && s.proposal) schemes(s, e);
    if (s.spread && s.spread_found) {
        widgets::wrapped(s.spread_found->headline, s.older ? palette::grey : palette::ink, look().fonts.plain);
        widgets::wrapped(s.spread_found->counts, palette::faint, look().fonts.small);
        const auto table = [](const char* title, const std::vector<SpreadShown::Line>& all) {
            widgets::space(4);
            widgets::text(title, palette::faint, look().fonts.small);
            for (const SpreadShown::Line& l : all) {
                const ImVec2 at = ImGui::GetCursorScreenPos();
                const float wide = std::min(ImGui::GetContentRegionAvail().x, 420 * k()), value = widgets::size_of(l.value, look().fonts.bold).x;
                widgets::letters_within(at, wide - value - 8 * k(), l.what, palette::ink, look().fonts.plain);
                widgets::letters_right(at.x + wide, at.y, l.value, palette::ink, look().fonts.bold);
                ImGui::Dummy({wide, look().fonts.plain->FontSize});
            }
        };
        table("least margin", s.spread_found->quantiles);
        table("what matters most: +1 more of it gives more margin, -1 less, 0 nothing", s.spread_found->inputs);
    }
    if (!s.running && s.why.empty() && !(s.spread ? s.spread_found != nullptr : s.proposal != nullptr))
        widgets::wrapped(s.spread ? "How much the least margin moves while everything that nobody measured runs through its range. The ranges are engineering judgement, no probabilities."
                                  : "Which angle, which fasteners, how many and where: the schemes that hold and that no other beats on holes, mass, cost class and margin. Choosing one is one step that undo takes back.",
                         palette::faint, look().fonts.plain);
    ImGui::EndChild();
    return e;
}

} // namespace thinskin::gui
