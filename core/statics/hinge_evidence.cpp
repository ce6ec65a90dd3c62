#include "base/quantity.h"
#include "statics/door_parts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::statics {

namespace {

using base::Label;
using base::Status;
using results::Check;
using Kind = model::HingeEvidence::Kind;

constexpr const char* evidence_key = "door.hinges.evidence";

/// Pass or fail by numbers; anything that is not a number is not covered.
Check judged(Check c, double demand, double capacity)
{
    c.demand = demand;
    c.capacity = capacity;
    if (!(std::isfinite(demand) && demand >= 0 && std::isfinite(capacity) && capacity > 0))
        return not_covered(c, "a figure of the comparison is not a positive number", evidence_key);
    c.status = demand <= capacity ? Status::pass : Status::fail;
    return c;
}

// ---- the regulation's index

Check index_row(const std::string& title)
{
    Check c = door_row("hinges/index", title);
    c.formula = "ST-9";
    c.unit = "-";
    c.rule = "pro-rata share of the regulation's load on a hinge system, terms added";
    c.source = "UN Regulation 11, 6.1.5.1 and 6.1.5.3";
    c.edition = "03 series of amendments";
    c.label = base::name(Label::judgement); // the loads were read as extracts; adding the terms is a screen
    c.range = "one-time loads to separation; side-hinged doors, vertical figure for back doors only";
    c.capacity = 1;
    return c;
}

/// The other text a door can be approved to.
Check regulation_index_row(const layout::Door& d)
{
    Check c = index_row("hinges against the regulation's level");
    if (d.evidence != Kind::us_regulation) return c;
    c.source = "49 CFR 571.206, S4.1.2.1";
    c.edition = "in force since 2009";
    c.range = "one-time loads to separation; back doors along their hinge plates, no vertical figure for side-hinged ones";
    return c;
}

struct Worst { HingeIndex index; std::string one_case, shared_case, kind_case, refused, refused_key; };

/// The largest indices over all load cases and states of the door.
Worst worst_index(const layout::Layout& l, const std::vector<HingeStatics>& statics)
{
    Worst w;
    for (const HingeStatics& s : statics) {
        const HingeIndex here = hinge_index(l, s);
        if (!s.covered) {
            w.refused = s.load_case + ": " + s.reason;
            w.refused_key = s.lift_with;
        }
        if (!here.covered) w.index.reason = here.reason;
        w.index.without_vertical = std::max(w.index.without_vertical, here.without_vertical);
        w.index.V_N = std::max(w.index.V_N, here.V_N);
        if (w.one_case.empty() || here.one_hinge > w.index.one_hinge) { w.index.one_hinge = here.one_hinge; w.one_case = s.load_case; }
        if (w.shared_case.empty() || here.shared > w.index.shared) { w.index.shared = here.shared; w.shared_case = s.load_case; }
        if (w.kind_case.empty() || here.kind > w.index.kind) { w.index.kind = here.kind; w.kind_case = s.load_case; }
    }
    w.index.covered = w.index.reason.empty() && w.refused.empty() && !w.one_case.empty();
    return w;
}

std::string index_words(const Worst& w)
{
    if (!w.index.covered) return fmt::format("index of the horizontal forces alone {:.2f}, the vertical {:.0f} N on all hinges unproven", w.index.without_vertical, w.index.V_N);
    return fmt::format("index {:.2f} with all vertical on one hinge ({}), {:.2f} with it shared ({})", w.index.one_hinge, w.one_case, w.index.shared, w.shared_case);
}

/// Beyond the regulation's one-time load even when every assumption is kind: that is a fail, whatever the evidence.
bool beyond(const Worst& w) { return w.index.kind > 1; }

Check beyond_row(Check c, const Worst& w)
{
    c.demand = w.index.kind;
    c.load_case = w.kind_case;
    c.status = Status::fail;
    c.note = "beyond the one-time load at which the regulation lets a hinge come apart, even with the vertical shared";
    return c;
}

Check none_row(const Worst& w)
{
    Check c = index_row("hinges against the regulation's level, strength unknown");
    if (beyond(w)) return beyond_row(c, w);
    c.demand = w.index.covered ? w.index.one_hinge : w.index.without_vertical;
    c.load_case = w.one_case;
    if (!w.refused.empty()) return not_covered(c, "nothing is known of the hinges' strength; " + w.refused, evidence_key);
    return not_covered(c, "nothing is known of the hinges' strength; " + index_words(w) + ": a typical level, not shown to apply to this door", evidence_key);
}

Check regulation_row(const layout::Door& d, const Worst& w)
{
    Check c = regulation_index_row(d);
    if (beyond(w)) return beyond_row(c, w);
    if (!w.refused.empty()) return not_covered(c, w.refused, w.refused_key);
    if (!w.index.covered) return not_covered(c, w.index.reason + "; " + index_words(w), evidence_key);
    const double shared = 2.0 * w.index.shared, one = 1.33 * w.index.one_hinge;
    c.demand = std::max(shared, one);
    c.load_case = shared > one ? w.shared_case : w.one_case;
    c.inputs = {{"index shared", w.index.shared}, {"index on one hinge", w.index.one_hinge}};
    const std::string words = fmt::format("factor 2 on {:.2f} with the vertical shared, 1.33 on {:.2f} with it on one hinge", w.index.shared, w.index.one_hinge);
    if (!(c.demand <= 1)) return not_covered(c, words + ": above 1 is not shown", evidence_key);
    c.status = Status::judgement;
    c.note = words + "; the test knows no couple, no pillar sheet and no repeated load";
    return c;
}

// ---- the maker's limit

Check maker_row(const std::string& id, const std::string& title, const layout::Door& d)
{
    Check c = door_row(id, title);
    c.load_case = "parked";
    c.rule = "everything added at 1 g, item with its mass tolerance, against the maker's limit, which already contains the road";
    c.source = d.evidence_note.empty() ? "door maker's limit as entered in the case" : "door maker's limit as entered in the case: " + d.evidence_note;
    c.label = base::name(Label::judgement);
    c.range = "side-hinged door";
    return c;
}

Check outreach_row(const layout::Door& d, const FirstMoments& f)
{
    Check c = maker_row("hinges/outreach", "added mass times its distance off the pin", d);
    c.unit = "kg m";
    if (!d.evidence_has_z) return not_covered(c, "the maker's limit has no distance off the skin", "door.hinges.evidence.at");
    const double limit = d.evidence_mass * e_of(d, d.evidence_at);
    // The limit says nothing of the other side of the pin line.
    if (f.kg_e * limit < 0) return not_covered(c, "the added mass is on the other side of the pin line than the maker's limit", evidence_key);
    return judged(c, std::abs(f.kg_e) / 1000, std::abs(limit) / 1000);
}

std::vector<Check> maker_rows(const layout::Layout& l, double mass_tolerance)
{
    const layout::Door& d = *l.door;
    const FirstMoments f = added(d, door_masses(l, mass_tolerance));
    Check mass = maker_row("hinges/mass", "added mass", d), moment = maker_row("hinges/moment", "added mass times its distance from the hinge line", d);
    mass.unit = "kg";
    moment.unit = "kg m";
    if (!d.evidence_has_numbers) return {not_covered(mass, "the maker's limit has no mass or no place", "door.hinges.evidence.mass")};
    const double limit_y = y_of(d, d.evidence_at);
    return {judged(mass, f.kg, d.evidence_mass), judged(moment, f.kg_y / 1000, d.evidence_mass * limit_y / 1000), outreach_row(d, f)};
}

// ---- the proof hang

struct Component { std::string id, title, load_case; double demand = 0, proof = 0; bool known = true; };

/// Why a hang proves nothing, and the key that would lift it; empty when it counts.
std::array<std::string, 2> hang_problem(const layout::Door& d)
{
    if (!d.evidence_has_numbers) return {"the proof hang has no mass or no place", "door.hinges.evidence.mass"};
    if (d.evidence_state != "open" && d.evidence_state != "closed") return {"the state of the door during the proof hang is not given", "door.hinges.evidence.state"};
    if (d.evidence_state == "closed" && d.rest) return {"the closed door sat on its rest during the proof hang", "door.hinges.evidence.state"};
    return {"", ""};
}

/// What the hang put on the hinges: the bare door and the hung mass, at rest.
Couples hung(const layout::Door& d)
{
    return at_rest(d, {{DoorMass::Kind::door, "bare door", d.mass, d.centre}, {DoorMass::Kind::item, "proof mass", d.evidence_mass, d.evidence_at}});
}

std::array<Component, 3> components(const layout::Door& d, const std::string& state)
{
    const Couples c = hung(d);
    return {Component{"hinges/" + state + "/vertical", state + ": vertical on the hinges", "", 0, c.V, true},
            Component{"hinges/" + state + "/in-plane", state + ": worst hinge, across the door", "", 0, std::abs(c.T), true},
            Component{"hinges/" + state + "/out-of-plane", state + ": worst hinge, out of the door", "", 0, std::abs(c.N), d.evidence_has_z}};
}

void raise(Component& c, double demand, const std::string& load_case)
{
    if (!c.load_case.empty() && !(demand > c.demand)) return;
    c.demand = demand;
    c.load_case = load_case;
}

Check hang_row(const Component& c)
{
    Check row = door_row(c.id, c.title);
    row.load_case = c.load_case;
    row.unit = "N";
    row.rule = "a proof hang counts where its own force on the hinges reaches the demand";
    row.source = "proof hang as entered in the case";
    row.label = base::name(Label::judgement);
    row.range = "side-hinged door; one slow load, no repeated load";
    row.demand = c.demand;
    row.capacity = c.proof;
    if (!c.known) return not_covered(row, "the proof hang has no distance off the skin", "door.hinges.evidence.at");
    if (!(std::isfinite(c.demand) && c.demand <= c.proof))
        return not_covered(row, fmt::format("the proof hang put {:.0f} N there and {:.0f} N is needed", c.proof, c.demand), evidence_key);
    row.status = Status::pass;
    return row;
}

std::vector<Check> hang_rows(const layout::Layout& l, const std::vector<HingeStatics>& statics)
{
    const layout::Door& d = *l.door;
    Check all = door_row("hinges/proof", "hinges by proof hang");
    if (const auto [why, key] = hang_problem(d); !why.empty()) return {not_covered(all, why, key)};
    std::array<Component, 3> parked = components(d, "parked"), driving = components(d, "driving"), open = components(d, "open");
    for (const HingeStatics& s : statics) {
        if (!s.covered) return {not_covered(all, s.load_case + ": " + s.reason, s.lift_with)};
        std::array<Component, 3>& to = s.load_case == "parked" ? parked : s.open ? open : driving;
        raise(to[0], std::abs(s.V_N), s.load_case);
        raise(to[1], s.in_plane_N, s.load_case);
        raise(to[2], s.out_of_plane_N, s.load_case);
    }
    std::vector<Check> rows;
    for (const auto* set : {&parked, &driving, &open})
        for (const Component& c : *set)
            if (!c.load_case.empty()) rows.push_back(hang_row(c));
    return rows;
}

// ---- what a limit on mass says nothing about

double on_worst_hinge(const HingeStatics& s) { return std::max(std::hypot(s.top_N[0], s.V_N, s.top_N[2]), std::hypot(s.bottom_N[0], s.V_N, s.bottom_N[2])); }

/// Slam and open door under a maker's limit: a limit on mass knows no force. Printed beside what parked puts there; only what goes beyond
/// the regulation's one-time load is judged, and that is a fail.
std::vector<Check> event_rows(const layout::Layout& l, const std::vector<HingeStatics>& statics)
{
    std::vector<HingeStatics> events;
    double parked = 0;
    const HingeStatics* worst = nullptr;
    for (const HingeStatics& s : statics) {
        if (s.load_case == "parked") parked = on_worst_hinge(s);
        if (s.event) events.push_back(s);
    }
    for (const HingeStatics& s : events)
        if (s.covered && (!worst || on_worst_hinge(s) > on_worst_hinge(*worst))) worst = &s;
    if (!worst) return {};
    const Worst w = worst_index(l, events);
    if (beyond(w)) return {beyond_row(index_row("hinges in a slam or with the door open"), w)};
    Check c = door_row("hinges/event", "hinges in a slam or with the door open");
    c.required = false;
    c.demand = on_worst_hinge(*worst);
    c.load_case = worst->load_case;
    c.unit = "N";
    c.rule = "force printed; a limit on mass at rest says nothing of it";
    c.source = "rigid-body statics";
    c.label = base::name(Label::computed);
    c.range = "side-hinged door, rigid leaf";
    c.inputs = {{"parked, N", parked}, {"regulation index", w.index.kind}};
    return {not_covered(c, fmt::format("the maker's limit is a mass at rest: the {:.0f} N on the worst hinge ({:.1f} times parked) are compared with nothing but the level at which a hinge comes apart once ({:.2f} of it)",
                                       c.demand, parked > 0 ? c.demand / parked : 0, w.index.kind), "door.hinges.evidence: {kind: regulation}")};
}

} // namespace

std::vector<Check> evidence_rows(const layout::Layout& l, const std::vector<HingeStatics>& statics, double mass_tolerance)
{
    switch (l.door->evidence) {
    case Kind::none: return {none_row(worst_index(l, statics))};
    case Kind::maker_limit: {
        std::vector<Check> rows = maker_rows(l, mass_tolerance);
        for (Check& c : event_rows(l, statics)) rows.push_back(std::move(c));
        return rows;
    }
    case Kind::proof_hang: return hang_rows(l, statics);
    case Kind::regulation:
    case Kind::us_regulation: return {regulation_row(*l.door, worst_index(l, statics))};
    }
    return {none_row(worst_index(l, statics))};
}

} // namespace thinskin::statics
