#include "base/sha256.h"
#include "pipeline/assemble.h"

#include <algorithm>
#include <fmt/core.h>

namespace thinskin::pipeline {

namespace {

const char* exclusions[] = {
    "crash retention: what happens to the item in a collision is not calculated",
    "corrosion: drilled holes must be primed, sealed and looked at; a corroded sheet is a thinner sheet",
    "law: lamps, plate, overhang, egress and door retention are for the local code and the body-builder instructions",
};

void model_assumptions(const layout::Layout& l, results::Outcome& o)
{
    o.assumptions.push_back({"edges of the skin on a rigid frame", "door flexibility left out", "model", "not run"});
    for (const layout::Rib& r : l.ribs) {
        o.assumptions.push_back({"ends of " + r.name, "held with the skin where they meet an edge of the panel; elsewhere the rib stops", "model", "not run"});
        if (r.seen == model::Seen::assumed) o.cautions.push_back(fmt::format("{} is only assumed to be there; look or tap before you drill", r.name));
    }
    if (l.nothing_hung()) return;
    o.assumptions.push_back({"own mass of the skin", "left out: the door carried it before", "model", "not run"});
    o.assumptions.push_back({"friction and preload of the bolts", "not counted", "model", "not run"});
    if (l.item && !l.item->feet.empty()) o.assumptions.push_back({"feet of " + l.item->name, "steel S235, as stiff as the item", "assumed", "not run"});
    const auto washers = [](const model::FastenerKind& k) { return k.head_washer || k.nut_washer; };
    if (l.source && std::any_of(l.source->fastener_kinds.begin(), l.source->fastener_kinds.end(), washers)) o.assumptions.push_back({"steel of the washers", "yields at 235 MPa", "engineering judgement", "not run"});
    if (!l.brackets.empty()) o.assumptions.push_back({"filler of the welds", "420 MPa", "common practice, no source", "not run"});
    for (const layout::Angle& a : l.angles) {
        if (a.seen == model::Seen::assumed) o.assumptions.push_back({a.bar.name, "there and as drawn", "assumed", "not run"});
        for (const layout::MemberEnd& e : a.ends)
            if (e.tied && e.gap > 0) o.assumptions.push_back({fmt::format("gap of {:.0f} mm at the {} end of {}", e.gap, e.side, a.bar.name), "its bolts bend by V gap/2; how far they give is left out", "model", "not run"});
        const auto lies = [](const layout::MemberEnd& e) { return e.tied && !(e.gap > 0); };
        if (!lies(a.ends[0]) && !lies(a.ends[1])) continue;
        o.assumptions.push_back({"ends of " + a.bar.name, "lie on the sheet of the frame they are fixed to, packed or joggled where the frame is deeper; pushed inward they bear on seal and body", "model", "not run"});
    }
    if (l.item) o.assumptions.push_back({"inertia of " + l.item->name, l.item->has_box ? "a uniform cuboid of its box about the given centre of mass" : "a point: without item.box its nodding and rocking come out too high", "model", "not run"});
    for (const layout::Plate& p : l.plates) {
        o.assumptions.push_back({p.name, "flat, lies on the skin without a gap; its bolts clamp the skin to it, elsewhere it only pushes", "model", "not run"});
        if (p.tied()) o.assumptions.push_back({"fasteners of " + p.name + " on the frame", "the plate lies on the sheet of the frame, packed or joggled where the frame is deeper; pushed inward it bears on seal and body", "model", "not run"});
    }
    if (l.item)
        for (const model::ItemLoad& load : l.source->item->loads)
            if (load.wind && !load.both_ways) o.cautions.push_back(fmt::format("{} is run one way only; wind presses and lifts: both_ways: yes", load.name));
    if (l.item && l.item->snow + l.item->water > 0)
        o.assumptions.push_back({"snow and water on " + l.item->name, fmt::format("{:g} kg of snow and {:g} kg of water in its mass, at its centre of mass, on the road, too", l.item->snow, l.item->water), "case file", "not run"});
    if (l.item && !l.source->item->tether) o.cautions.push_back(fmt::format("no tether holds {} if a fixing lets go; one under item.tether is checked for catching it", l.item->name));
    if (l.door && l.door->strap) o.assumptions.push_back({"line of the check strap", "square to the leaf where the forces balance; any direction where hinges are judged", "model", "not run"});
    if (l.door && l.door->wind) o.assumptions.push_back({"wind on the open door", "force coefficient 1.2 of a flat leaf square to it, in the middle of the area", "from memory", "not run"});
    if (l.door && l.door->end_stop) o.assumptions.push_back({"end stop of the open door", "takes the whole of what is flung into it, the strap nothing", "model", "not run"});
    if (l.door && l.door->has_slam) o.assumptions.push_back({"rebound of a slammed door", "0.3 of its speed", "engineering judgement", "not run"});
    if (l.door && l.item && !l.item->has_box) o.assumptions.push_back({"own inertia of the item in a slam", "left out: its box is not given", "item.box", "not run"});
}

void frame_assumptions(const layout::Layout& l, results::Outcome& o)
{
    static const char* sides[] = {"left", "right", "bottom", "top"};
    for (std::size_t i = 0; i < 4; ++i)
        for (const layout::Plate& p : l.plates)
            if (l.frames[i].given && l.frames[i].seen == model::Seen::assumed && std::any_of(p.fasteners.begin(), p.fasteners.end(), [&](const layout::PlateFastener& f) { return f.side == sides[i]; }))
                o.cautions.push_back(fmt::format("the frame member at the {} edge of {} is only assumed; look or tap before you drill", sides[i], p.name));
    for (std::size_t i = 0; i < 4; ++i)
        for (const layout::Angle& a : l.angles)
            for (const layout::MemberEnd& e : a.ends)
                if (e.tied && e.side == sides[i] && l.frames[i].given && l.frames[i].seen == model::Seen::assumed) {
                    o.cautions.push_back(fmt::format("the frame member at the {} end of {} is only assumed; look or tap before you drill", e.side, a.bar.name));
                }
}

} // namespace

results::Outcome outcome_of_case(const model::Case& c, const layout::Layout& l)
{
    results::Outcome o;
    o.case_file = c.file;
    o.sha256 = base::sha256(c.text);
    o.title = c.job.title;
    o.rules = c.rules == model::Rules::allowable_strength ? "allowable_strength" : "partial_factors";
    if (l.item) o.weight.item_kg = l.item->mass;
    for (const layout::Bracket& b : l.brackets) {
        o.weight.brackets_kg += b.mass();
    }
    for (const layout::Stack* s : l.outer_stacks()) o.stacks.push_back({s->name, s->line});
    for (const layout::MemberEnd* e : l.member_ends())
        for (const layout::Stack& s : e->fasteners) o.stacks.push_back({s.name, s.line});
    for (const layout::Strap& s : l.straps)
        for (const layout::StrapEnd& e : s.ends)
            for (const layout::Stack& f : e.fasteners) o.stacks.push_back({f.name, f.line});
    for (const layout::Plate& p : l.plates)
        for (const layout::PlateFastener& f : p.fasteners) o.stacks.push_back({f.stack.name, f.stack.line});
    o.weight.reinforcement_kg = l.reinforcement_mass;
    if (l.door) o.weight.door_kg = l.door->mass;
    o.weight.total_kg = o.weight.item_kg + o.weight.brackets_kg + o.weight.reinforcement_kg + o.weight.door_kg;
    for (const model::DefaultTaken& d : c.defaults) o.assumptions.push_back({d.key_path, d.value, "default: " + d.why, "not run"});
    for (const auto& [key, from] : c.measured_from) o.assumptions.push_back({key, "as given", from, "not run"});
    model_assumptions(l, o);
    frame_assumptions(l, o);
    o.cautions.insert(o.cautions.end(), l.cautions.begin(), l.cautions.end());
    for (const std::string& row : l.own_rows) o.cautions.push_back("a row of the case's own, taken as written: " + row);
    for (const model::Gauge& g : c.gauges)
        if (g.relative_to != "frame") o.not_covered.push_back(fmt::format("gauge {} relative to the {}: the door's own flexibility is not in the model", g.name, g.relative_to));
    o.exclusions.assign(std::begin(exclusions), std::end(exclusions));
    return o;
}

results::Check no_rule_set(const layout::Layout& l)
{
    results::Check c;
    c.id = "rules";
    c.group = l.nothing_hung() ? "panel" : "fixing";
    c.part = "the case";
    c.title = "rule set partial_factors";
    c.note = "the partial-factor rule set has no clauses yet";
    c.lift_with = "rules: allowable_strength";
    return c;
}

} // namespace thinskin::pipeline
