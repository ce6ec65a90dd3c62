#include "base/quantity.h"
#include "statics/door_rules.h"
#include "statics/open_door.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <numbers>

namespace thinskin::statics {

namespace {

using results::Check;
using results::Vec3;

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
    c.range = "rigid door";
    c.note = note;
    return c;
}

double resultant(const HingeStatics& s)
{
    return std::max(std::hypot(s.top_N[0], s.V_N, s.top_N[2]), std::hypot(s.bottom_N[0], s.V_N, s.bottom_N[2]));
}

constexpr double degrees = 180 / std::numbers::pi;

/// Hinges and what holds the door, the door opened by theta: the same forces in the door's own axes, others in those of the vehicle.
void add_forces(DoorFigures& out, const layout::Layout& l, const HingeStatics& s, const std::string& state, double theta)
{
    const auto made = [&](const std::string& name, const Vec3& force) {
        return results::HingeForce{name, state, s.load_case, force, theta * degrees, on_body(l, force, theta), body_words(l, force, theta)};
    };
    out.hinges.push_back(made("top hinge", s.top_N));
    out.hinges.push_back(made("bottom hinge", s.bottom_N));
    out.hinges.push_back(made("one hinge, all vertical", {0, s.V_N, 0}));
    if (s.latch_N == 0) return;
    const results::HingeForce held = made(s.open && s.turns ? "stop of the check strap" : s.open || s.latch_N < 0 ? s.latch : "stop at " + s.latch, {0, 0, s.latch_N});
    std::vector<results::SupportForce>& list = (s.open ? !s.turns : s.latch_N < 0) ? out.latches : out.stops;
    list.push_back({held.name, l.door->latches.size() > 1 && !s.open ? state + ", taken alone" : state, held.load_case, held.force_N, held.open_deg, held.on_body_N, held.words});
}

void add_forces(DoorFigures& out, const layout::Layout& l, const HingeStatics& s, const std::vector<double>& angles)
{
    if (!s.covered) return;
    if (!s.open) add_forces(out, l, s, "closed", 0);
    else
        for (const double theta : angles) add_forces(out, l, s, theta == 0 ? "ajar" : fmt::format("open {:.0f} deg", theta * degrees), theta);
}

/// Whole weight moment on the rest: the most it can get; the hinges are judged without it.
void add_rest(DoorFigures& out, const layout::Layout& l, const results::LoadCase& lc, const HingeStatics& s)
{
    if (!s.covered || s.open || !l.door->rest) return;
    const double y = y_of(*l.door, {l.door->rest->x, 0, 0});
    const Vec3 force{0, s.T_N * hinge_spacing(*l.door) / y, 0};
    if (force[1] > 0 && std::isfinite(force[1])) out.stops.push_back({"rest, at most", "closed", lc.name, force, 0, on_body(l, force, 0), body_words(l, force, 0)});
}

std::vector<std::string> states_not_run(const layout::Layout& l, const results::OpenDoor& open)
{
    std::vector<std::string> out;
    for (const results::OpenDoor::NotRun& n : open.not_run) out.push_back(fmt::format("{}: not run, {} ({})", n.what, n.reason, n.lift_with));
    if (!l.door->sag_test) out.push_back("sag of the free edge: not run, the give of the hinges was not measured (door.hinges.sag_test)");
    if (l.door->latches.size() > 1) out.push_back("several latches: how they share is not judged, each is taken alone");
    return out;
}

/// Give of the hinges from the test, and what it makes of the masses on the door.
std::optional<results::DoorSag> sag(const layout::Layout& l, double mass_tolerance)
{
    if (!l.door->sag_test) return std::nullopt;
    const layout::Door& d = *l.door;
    const double h = hinge_spacing(d);
    results::DoorSag out;
    out.give_mm_N = hinge_give({.s = d.sag_test->sag, .h = h, .m = d.sag_test->mass, .y = y_of(d, {d.sag_test->at.x, 0, 0})});
    const std::vector<DoorMass> all = door_masses(l, mass_tolerance);
    const auto edge = [&](double T) { return 2 * out.give_mm_N * T * edge_distance(l) / h; }; // AC-20
    out.edge_mm = edge(at_rest(d, all).T);
    out.bare_mm = edge(at_rest(d, {all.front()}).T);
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

Check not_covered(Check c, const std::string& note, const std::string& lift_with)
{
    c.status = base::Status::not_covered;
    c.note = note;
    c.lift_with = lift_with;
    return c;
}

std::vector<Check> force_only_rows(const layout::Layout& l, const std::vector<HingeStatics>& statics)
{
    const Peak hinge = peak(statics, resultant);
    const double h = hinge_spacing(*l.door);
    const Peak couple = peak(statics, [h](const HingeStatics& s) { return 0.5 * std::abs(s.top_N[2] - s.bottom_N[2]) * h / 1000; });
    const Peak latch = peak(statics, [](const HingeStatics& s) { return !s.open && s.latch_N < 0 ? -s.latch_N : 0.0; });
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

DoorFigures door_figures(const layout::Layout& l, const std::vector<results::LoadCase>& cases, const results::OpenDoor& open, double mass_tolerance)
{
    DoorFigures out;
    const bool bare = std::all_of(cases.begin(), cases.end(), [](const results::LoadCase& c) { return c.applied_only; });
    if (l.kind == model::PanelKind::wall || bare) return out;
    if (!no_hinges(l).empty()) {
        out.checks = unknown_hinges(l);
        return out;
    }
    for (const results::LoadCase& lc : cases) {
        const HingeStatics s = hinge_statics(l, lc, mass_tolerance);
        add_forces(out, l, s, open.angles_rad);
        add_rest(out, l, lc, s);
        out.statics.push_back(s);
    }
    for (const results::DoorState& state : open.states) {
        const HingeStatics s = hinge_statics(l, load_of(l, state, mass_tolerance), mass_tolerance);
        add_forces(out, l, s, open.angles_rad);
        out.statics.push_back(s);
    }
    out.ratios = door_ratios(l, mass_tolerance);
    out.sag = sag(l, mass_tolerance);
    out.checks = evidence_rows(l, out.statics, mass_tolerance);
    for (const std::vector<Check>& more : {item_load_rows(l, cases), strap_rows(l, out.statics), force_only_rows(l, out.statics)}) out.checks.insert(out.checks.end(), more.begin(), more.end());
    if (l.door->latches.empty()) out.checks.push_back(no_latch());
    out.not_covered = states_not_run(l, open);
    return out;
}

DoorFigures door_figures(const layout::Layout& l, const std::vector<results::LoadCase>& cases, double mass_tolerance) { return door_figures(l, cases, {}, mass_tolerance); }

DoorFigures door_figures(const layout::Layout& l, const std::vector<results::LoadCase>& cases, const results::OpenDoor& open)
{
    return door_figures(l, cases, open, l.item ? l.item->tolerance : 0.0);
}

DoorFigures door_figures(const layout::Layout& l, const std::vector<results::LoadCase>& cases)
{
    return door_figures(l, cases, {}, l.item ? l.item->tolerance : 0.0);
}

} // namespace thinskin::statics
