#include "app/session.h"

#include <algorithm>
#include <array>
#include <utility>

namespace thinskin::gui {
namespace {

using drawing::PartKind;

constexpr std::array<std::pair<HandleKind, PartKind>, 13> pairs{{{HandleKind::fastener, PartKind::fastener},
                                                                {HandleKind::foot, PartKind::fastener},
                                                                {HandleKind::end_fastener, PartKind::end_fixing},
                                                                {HandleKind::bracket, PartKind::bracket},
                                                                {HandleKind::angle, PartKind::angle},
                                                                {HandleKind::plate, PartKind::plate},
                                                                {HandleKind::board, PartKind::board},
                                                                {HandleKind::item, PartKind::item},
                                                                {HandleKind::item_centre, PartKind::mass_centre},
                                                                {HandleKind::gauge, PartKind::gauge},
                                                                {HandleKind::latch, PartKind::latch},
                                                                {HandleKind::rest, PartKind::rest},
                                                                {HandleKind::hinge, PartKind::hinge}}};

} // namespace

void apply(Session& s, const Edit& edit)
{
    if (edit.changes.empty()) return;
    const Applied a = s.document.apply(edit);
    if (!a.ok) return s.say(a.errors.empty() ? edit.name + ": refused" : a.errors.front().key_path + ": " + a.errors.front().message, true);
    if (a.changed) s.stepped(edit.name);
    if (a.comments_lost) s.say(edit.name + "; the file had to be written anew: its comments are lost, undo brings them back", true);
    else if (a.changed) s.say(edit.name);
}

void apply(Session& s, const FieldEdit& edit)
{
    if (edit.ok()) apply(s, edit.edit);
    else s.say(edit.why, true);
}

void show_document(Session& s, Document d)
{
    s.worker.cancel();
    s.document = std::move(d);
    s.results = {};
    s.steps.clear();
    ++s.opened;
    s.study.drop();
    s.studies.proposal.reset();
    s.studies.spread.reset();
    s.studies.taken.clear();
    s.posted = 0;
    s.part.reset();
    s.follow_governing = true;
    s.check.clear();
    s.check_case.clear();
    s.load_case.clear();
    s.group.clear();
}

void keep_worker_busy(Session& s, bool dragging)
{
    if (!s.document.is_open() || !s.document.readable()) return;
    const Stage wanted = dragging ? Stage::linear : Stage::full;
    const bool asked = s.posted == s.document.revision() && (s.posted_stage == wanted || s.posted_stage == Stage::full);
    if (asked || !s.document.current()) return;
    s.worker.post({s.document.revision(), s.document.current(), wanted});
    s.posted = s.document.revision();
    s.posted_stage = wanted;
}

std::optional<Handle> handle_of(const std::vector<Handle>& all, const drawing::Part& part)
{
    for (const Handle& h : all) {
        const auto pair = std::find_if(pairs.begin(), pairs.end(), [&h](const auto& p) { return p.first == h.kind; });
        if (pair == pairs.end() || pair->second != part.kind) continue;
        const bool one_of_its_kind = part.kind == PartKind::item || part.kind == PartKind::mass_centre || part.kind == PartKind::rest;
        if (one_of_its_kind || h.name == part.name) return h;
    }
    return std::nullopt;
}

std::vector<Handle> grips_of(const std::vector<Handle>& all, const drawing::Part& part)
{
    std::vector<Handle> out;
    for (const Handle& h : all) {
        const bool whole = std::any_of(pairs.begin(), pairs.end(), [&h](const auto& p) { return p.first == h.kind; });
        if (!whole && h.name == part.name && (h.moves[0] || h.moves[1] || h.moves[2])) out.push_back(h);
    }
    return out;
}

std::optional<drawing::Part> part_called(const layout::Layout& l, const std::string& name)
{
    const auto is = [&name](const auto& p) { return p.name == name; };
    if (std::any_of(l.angles.begin(), l.angles.end(), [&name](const layout::Angle& a) { return a.bar.name == name; })) return drawing::Part{PartKind::angle, name};
    if (std::any_of(l.brackets.begin(), l.brackets.end(), is)) return drawing::Part{PartKind::bracket, name};
    if (std::any_of(l.straps.begin(), l.straps.end(), is)) return drawing::Part{PartKind::strap, name};
    if (std::any_of(l.ribs.begin(), l.ribs.end(), is)) return drawing::Part{PartKind::rib, name};
    for (const layout::Stack* k : l.outer_stacks())
        if (k->name == name) return drawing::Part{PartKind::fastener, name};
    if (l.item && l.item->name == name) return drawing::Part{PartKind::item, name};
    if (name == "skin") return drawing::Part{PartKind::skin, "skin"};
    if (name.rfind("frame ", 0) == 0) return drawing::Part{PartKind::frame, name.substr(6)};
    return std::nullopt;
}

} // namespace thinskin::gui
