#include "base/quantity.h"
#include "statics/door_parts.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::statics {

namespace {

using results::Check;

/// The worst of a figure over the load cases, and where.
struct Peak { double value = 0; std::string load_case; };

template <class Figure> Peak peak(const std::vector<HingeStatics>& statics, Figure figure)
{
    Peak p;
    for (const HingeStatics& s : statics) {
        if (!s.covered) continue;
        const double v = figure(s);
        if (p.load_case.empty() || v > p.value) p = {v, s.load_case};
    }
    return p;
}

Check force_only(const std::string& id, const std::string& title, const Peak& p, const std::string& unit, const std::string& note)
{
    Check c = door_row(id, title);
    c.required = false;
    c.demand = p.value;
    c.load_case = p.load_case;
    c.unit = unit;
    c.rule = "force printed, strength not judged";
    c.source = "rigid-body statics";
    c.label = base::name(base::Label::computed);
    c.range = "rigid door, closed";
    c.note = note;
    return c;
}

double resultant(const HingeStatics& s)
{
    return std::max(std::hypot(s.top_N[0], s.V_N, s.top_N[2]), std::hypot(s.bottom_N[0], s.V_N, s.bottom_N[2]));
}

void add_hinges(std::vector<results::HingeForce>& out, const HingeStatics& s)
{
    if (!s.covered) return;
    out.push_back({"top hinge", "closed", s.load_case, s.top_N});
    out.push_back({"bottom hinge", "closed", s.load_case, s.bottom_N});
    out.push_back({"one hinge, all vertical", "closed", s.load_case, {0, s.V_N, 0}});
}

void add_supports(DoorFigures& out, const layout::Door& d, const HingeStatics& s)
{
    if (!s.covered || s.latch_N == 0) return;
    const std::string state = d.latches.size() > 1 ? "closed, taken alone" : "closed";
    std::vector<results::SupportForce>& list = s.latch_N < 0 ? out.latches : out.stops;
    list.push_back({s.latch_N < 0 ? s.latch : "stop at " + s.latch, state, s.load_case, {0, 0, s.latch_N}});
}

/// Whole weight moment on the rest: the most it can get; the hinges are judged without it.
void add_rest(DoorFigures& out, const layout::Layout& l, const results::LoadCase& lc, const HingeStatics& s)
{
    if (!s.covered || !l.door->rest) return;
    const double y = y_of(*l.door, {l.door->rest->x, 0, 0});
    const double force = s.T_N * hinge_spacing(*l.door) / y;
    if (force > 0 && std::isfinite(force)) out.stops.push_back({"rest, at most", "closed", lc.name, {0, force, 0}});
}

std::vector<std::string> states_not_run(const layout::Layout& l, const std::vector<results::LoadCase>& cases)
{
    std::vector<std::string> out{"door open at an angle: not run", "wind on the open door: not run", "vehicle on a slope, door open: not run",
                                 "door flung open against its check strap or by a gust: not run"};
    for (const results::LoadCase& lc : cases)
        if (!lc.door_closed) out.push_back(lc.name + ": hinge and check strap forces not run, the check strap is not given");
    if (l.door && l.door->latches.size() > 1) out.push_back("several latches: how they share is not judged, each is taken alone");
    return out;
}

/// A maker's limit or a proof hang says what mass the hinges bear, nothing about a force on the item (wind, a person).
std::vector<Check> item_load_rows(const layout::Layout& l, const std::vector<results::LoadCase>& cases)
{
    std::vector<Check> out;
    using Kind = model::HingeEvidence::Kind;
    for (const results::LoadCase& lc : cases) {
        if (!lc.on_item || l.door->evidence == Kind::regulation) continue;
        Check c = door_row("hinges/" + lc.name, "hinges under " + lc.name);
        c.load_case = lc.name;
        c.note = "what is known of the hinges says nothing about a force on the item";
        c.lift_with = "door.hinges.evidence: {kind: regulation}";
        out.push_back(c);
    }
    return out;
}

std::vector<Check> unknown_hinges(const layout::Layout& l)
{
    Check c = door_row("hinges/index", "hinges");
    c.note = no_hinges(l);
    c.lift_with = no_hinges_key(l);
    return {c};
}

} // namespace

Check door_row(const std::string& id, const std::string& title)
{
    Check c;
    c.id = id;
    c.title = title;
    c.group = "door";
    c.part = id.substr(0, id.find('/'));
    c.status = base::Status::not_covered;
    return c;
}

std::vector<Check> force_only_rows(const layout::Layout& l, const std::vector<HingeStatics>& statics)
{
    const Peak hinge = peak(statics, resultant);
    const double h = hinge_spacing(*l.door);
    const Peak couple = peak(statics, [h](const HingeStatics& s) { return 0.5 * std::abs(s.top_N[2] - s.bottom_N[2]) * h / 1000; });
    const Peak latch = peak(statics, [](const HingeStatics& s) { return s.latch_N < 0 ? -s.latch_N : 0.0; });
    std::vector<Check> rows{
        force_only("pillar/hinge", "pillar sheet at the worst hinge", hinge, "N", "the pillar's sheet and reinforcement are not in the case"),
        force_only("hinge sheet/hinge", "door sheet under the worst hinge", hinge, "N", "the hinge's mounting sheet is not in the case"),
        force_only("door torsion/couple", "couple that twists the leaf between its hinges", couple, "N m", "the leaf's torsional strength is not in the case")};
    if (latch.value > 0)
        rows.push_back(force_only("latch/pull", "pull on the latch", latch, "N",
                                  l.door->latches.size() > 1 ? "shared between several latches, not judged; the figure is for one alone" : "the latch's strength is not in the case"));
    return rows;
}

namespace {

/// Without a latch every load case that turns the door about its pin line is without an answer, whatever is known of the hinges.
Check no_latch()
{
    Check c;
    c.id = "latch/none";
    c.group = "door";
    c.part = "latch";
    c.title = "what keeps the door shut";
    c.note = "no latch is given, so what turns the door about its hinges is not held by anything";
    c.lift_with = "door.latches";
    return c;
}

} // namespace

DoorFigures door_figures(const layout::Layout& l, const std::vector<results::LoadCase>& cases, double mass_tolerance)
{
    DoorFigures out;
    const bool bare = std::all_of(cases.begin(), cases.end(), [](const results::LoadCase& c) { return c.applied_only; });
    if (l.kind == model::PanelKind::wall || bare) return out;
    if (!no_hinges(l).empty()) {
        out.checks = unknown_hinges(l);
        return out;
    }
    std::vector<bool> closed;
    for (const results::LoadCase& lc : cases) {
        const HingeStatics s = hinge_statics(l, lc, mass_tolerance);
        closed.push_back(lc.door_closed);
        add_hinges(out.hinges, s);
        add_supports(out, *l.door, s);
        add_rest(out, l, lc, s);
        out.statics.push_back(s);
    }
    out.ratios = door_ratios(l, mass_tolerance);
    out.checks = evidence_rows(l, out.statics, closed, mass_tolerance);
    for (const Check& c : item_load_rows(l, cases)) out.checks.push_back(c);
    const std::vector<Check> forces = force_only_rows(l, out.statics);
    out.checks.insert(out.checks.end(), forces.begin(), forces.end());
    if (l.door->latches.empty()) out.checks.push_back(no_latch());
    out.not_covered = states_not_run(l, cases);
    return out;
}

DoorFigures door_figures(const layout::Layout& l, const std::vector<results::LoadCase>& cases)
{
    return door_figures(l, cases, l.item ? l.item->tolerance : 0.0);
}

} // namespace thinskin::statics
