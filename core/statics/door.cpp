#include "base/quantity.h"
#include "statics/door_rules.h"
#include "statics/open_door.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <numbers>
#include <utility>

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
    const results::HingeForce held = made(s.open && s.turns && !l.door->end_stop ? "stop of the check strap" : s.open || s.latch_N < 0 ? s.latch : "stop at " + s.latch, {0, 0, s.latch_N});
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

/// The rest with a force on it, and the hinges relieved by that.
void add_rested(DoorFigures& out, const layout::Layout& l, const results::LoadCase& lc, double mass_tolerance, const char* name, const char* state, double N)
{
    const Vec3 force{0, N, 0};
    out.stops.push_back({name, "closed", lc.name, force, 0, on_body(l, force, 0), body_words(l, force, 0)});
    const HingeStatics s = hinge_statics(l, lc, mass_tolerance, N);
    for (const auto& [hinge, at] : {std::pair{"top hinge", &s.top_N}, std::pair{"bottom hinge", &s.bottom_N}}) out.hinges.push_back({hinge, state, lc.name, *at, 0, on_body(l, *at, 0), body_words(l, *at, 0)});
}

/// Both bounds, no rest (the states above) and the whole weight moment on it, and between them what the gives of hinges and rest make
/// of it (ST-15), where they were measured. The hinges are judged without it: a rest wears, and is gone when the door opens.
void add_rest(DoorFigures& out, const layout::Layout& l, const results::LoadCase& lc, const HingeStatics& s, double mass_tolerance)
{
    const layout::Door& d = *l.door;
    if (!s.covered || s.open || !d.rest) return;
    const double h = hinge_spacing(d), y = y_of(d, {d.rest->x, 0, 0}), most = s.T_N * h / y;
    if (!(most > 0 && std::isfinite(most))) return;
    add_rested(out, l, lc, mass_tolerance, "rest, at most", "closed, all on the rest", most);
    if (!d.rest_gap || !d.rest_stiffness || !out.sag) return;
    const double bare = at_rest(d, {door_masses(l, mass_tolerance).front()}).T;
    const double N = giving_rest({.c = out.sag->give_mm_N, .y_s = y, .h = h, .T = s.T_N, .T_b = bare, .gap = *d.rest_gap, .k = *d.rest_stiffness});
    if (std::isfinite(N)) add_rested(out, l, lc, mass_tolerance, "rest, by its give", "closed, rest by its give", N);
}

/// Why there is no estimate between the bounds; empty: there is one, or no rest.
std::string no_estimate(const layout::Door& d)
{
    if (!d.rest) return "";
    if (!d.sag_test) return "the give of the hinges was not measured (door.hinges.sag_test)";
    if (!d.rest_gap) return "the gap under the bare door is not given (door.rest.gap)";
    return d.rest_stiffness ? "" : "the give of the rest was not measured (door.rest.stiffness)";
}

std::vector<std::string> states_not_run(const layout::Layout& l, const results::OpenDoor& open)
{
    std::vector<std::string> out;
    for (const results::OpenDoor::NotRun& n : open.not_run) out.push_back(fmt::format("{}: not run, {} ({})", n.what, n.reason, n.lift_with));
    if (!l.door->sag_test) out.push_back("sag of the free edge: not run, the give of the hinges was not measured (door.hinges.sag_test)");
    if (const std::string why = no_estimate(*l.door); !why.empty()) out.push_back("what the rest gets between its two bounds: not run, " + why);
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
        const bool compared = lc.driven && l.door->evidence == Kind::proof_hang; // its forces are among those of the drive
        if (!lc.on_item || compared || l.door->evidence == Kind::regulation) continue;
        Check c = door_row("hinges/" + lc.name, "hinges under " + lc.name);
        c.load_case = lc.name;
        c.required = !lc.driven; // small beside the road, which a limit contains
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

constexpr double latch_level_N = 11000; ///< UN Regulation 11, 6.1.1.1: load across a fully latched latch, once, without separation
constexpr double latch_factor = 2;     ///< of a strength that does not count; engineering judgement

/// What the latch bears, told or tested: half of it. Without a figure its pull stands beside the regulation's level and is judged only beyond it.
Check latch_row(const layout::Door& d, const Peak& pull)
{
    const std::string alone = d.latches.size() > 1 ? "; several latches share in an unknown way, each is taken alone and the weakest counts" : "";
    if (d.latch_strength) {
        Check c = force_only("latch/pull", "pull on the latch", pull, "N", "half of the strength counts: engineering judgement, no source" + alone);
        c.required = true;
        c.rule = "pull out of the door, twice, against what the latch with its striker bears";
        c.source = d.latch_source.empty() ? "case file, door.latches; whose figure is not said" : "case file, door.latches: " + d.latch_source;
        c.label = base::name(base::Label::judgement);
        c.capacity = *d.latch_strength / latch_factor;
        if (!(c.capacity > 0 && std::isfinite(c.demand))) return not_covered(c, "a figure of the comparison is not a positive number", "door.latches");
        c.status = c.demand <= c.capacity ? base::Status::judgement : base::Status::fail;
        return c;
    }
    const double index = pull.value / latch_level_N;
    Check c = force_only("latch/pull", "pull on the latch", pull, "N",
                         fmt::format("the latch's strength is not in the case; {:.2f} of the regulation's one-time load on a latch ({:.0f} N), not shown to apply to this door{}", index, latch_level_N, alone));
    c.lift_with = "door.latches[0].strength";
    c.source = "rigid-body statics; level: UN Regulation 11, 03 series, 6.1.1.1, read as an extract";
    if (index > 1) {
        c.required = true;
        c.status = base::Status::fail;
        c.capacity = latch_level_N;
        c.note = "beyond the one-time load at which the regulation lets a latch come apart";
    }
    return c;
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
    if (latch.value > 0) rows.push_back(latch_row(*l.door, latch));
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
    out.sag = sag(l, mass_tolerance);
    for (const results::LoadCase& lc : cases) {
        const HingeStatics s = hinge_statics(l, lc, mass_tolerance);
        add_forces(out, l, s, open.angles_rad);
        add_rest(out, l, lc, s, mass_tolerance);
        out.statics.push_back(s);
    }
    for (const results::DoorState& state : open.states) {
        const HingeStatics s = hinge_statics(l, load_of(l, state, mass_tolerance), mass_tolerance);
        add_forces(out, l, s, open.angles_rad);
        out.statics.push_back(s);
    }
    out.ratios = door_ratios(l, mass_tolerance);
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
