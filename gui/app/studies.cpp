#include "app/program.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"

#include <algorithm>
#include <fmt/format.h>
#include <imgui.h>

/// Proposals and the spread: started, followed and taken from the drawer below the drawing.
namespace thinskin::gui {
namespace {

float k() { return look().scale; }

} // namespace

void Program::fetch_study()
{
    if (auto a = s_.study.poll()) {
        if (a->kind == StudyKind::spread) s_.studies.spread = a;
        else {
            s_.studies.proposal = a;
            if (a->proposed) proposal_ = proposal_shown(a->proposed->answer, s_.settings.units);
        }
        if (a->spread) spread_ = spread_shown(*a->spread);
        s_.say(!a->why.empty() ? a->why : a->kind == StudyKind::spread ? "The spread is there" : "The search is over", !a->why.empty());
    }
}

/// Opens the drawer, turns it to the other study, or closes it.
void Program::show_studies(bool spread)
{
    Studies& t = s_.studies;
    t.open = !(t.open && t.show_spread == spread);
    t.show_spread = spread;
}

void Program::start_study()
{
    const auto c = s_.document.current();
    if (!c || !s_.document.readable()) return s_.say("The case has errors: nothing can be looked for", true);
    const Answer* shown = s_.results.shown().get();
    const results::Outcome* o = shown && s_.results.state(s_.document.revision(), true) == ResultsShown::State::current ? shown->outcome() : nullptr;
    if (s_.studies.show_spread && !o) return s_.say("The margins are not there yet: try again in a moment", true);
    if (s_.studies.show_spread) {
        s_.studies.spread.reset();
        s_.study.spread(c, o->governing ? o->governing->margin() : -1, 100);
        s_.studies.spread_of = {s_.document.text()};
    } else {
        s_.studies.proposal.reset();
        s_.study.propose(c, s_.studies.robust);
        s_.studies.proposal_of = {s_.document.text()};
        s_.studies.taken.clear();
    }
}

void Program::stop_study()
{
    s_.study.stop();
    s_.say("Stopping; what there is so far is kept");
}

void Program::take(std::size_t scheme)
{
    const StudyAnswer* a = s_.studies.proposal.get();
    const auto c = s_.document.current();
    if (!a || !a->proposed || scheme >= a->proposed->cases.size() || scheme >= proposal_.schemes.size() || !c) return;
    const std::uint64_t before = s_.document.revision();
    apply(s_, take_scheme(*c, a->proposed->cases[scheme], proposal_.schemes[scheme]));
    if (s_.document.revision() != before) s_.studies.taken[s_.document.text()] = proposal_.schemes[scheme].number;
}

/// The room below the drawing, with a bar to draw it larger or smaller.
void Program::studies_drawer()
{
    ImGui::InvisibleButton("drawer", {ImGui::GetContentRegionAvail().x, 6 * k()});
    probe::target("divider drawer", ImGui::GetItemRectMin(), ImGui::GetItemRectMax());
    if (ImGui::IsItemHovered() || ImGui::IsItemActive()) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeNS);
    if (ImGui::IsItemActive()) {
        drawer_ = std::clamp(drawer_ - ImGui::GetIO().MouseDelta.y / k(), 120.0f, 900.0f);
        s_.state.layout["drawer"] = fmt::format("{:.0f}", drawer_);
    }
    const StudyProgress p = s_.study.progress();
    const Studies& t = s_.studies;
    const StudyAnswer* found = t.show_spread ? t.spread.get() : t.proposal.get();
    StudiesShown shown;
    shown.spread = t.show_spread;
    shown.running = p.kind == (t.show_spread ? StudyKind::spread : StudyKind::proposal);
    shown.stopping = p.stopping;
    shown.progress = progress_words(p.stage, p.done, p.of, p.seconds_left);
    shown.share = p.of > 0 ? static_cast<float>(p.done) / static_cast<float>(p.of) : -1;
    shown.can_start = s_.document.is_open() && s_.document.readable();
    shown.robust = t.robust;
    if (found) {
        shown.proposal = found->proposed ? &proposal_ : nullptr;
        shown.spread_found = found->spread ? &spread_ : nullptr;
        shown.stopped = found->stopped;
        shown.why = found->why;
        const auto it = t.taken.find(s_.document.text());
        shown.taken = it == t.taken.end() ? -1 : it->second;
        shown.older = s_.document.text() != (t.show_spread ? t.spread_of : t.proposal_of) && (t.show_spread || it == t.taken.end());
    }
    ImGui::PushStyleColor(ImGuiCol_ChildBg, palette::card);
    ImGui::BeginChild("studies", {0, 0}, false, ImGuiWindowFlags_AlwaysUseWindowPadding);
    const StudiesEvents e = studies_panel_.show(shown);
    ImGui::EndChild();
    ImGui::PopStyleColor();
    if (e.spread) s_.studies.show_spread = *e.spread;
    if (e.robust) s_.studies.robust = *e.robust;
    if (e.close) s_.studies.open = false;
    if (e.start) start_study();
    if (e.stop) stop_study();
    if (e.take) take(*e.take);
}

} // namespace thinskin::gui
