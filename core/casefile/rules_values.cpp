#include "casefile/rule_kit.h"
#include "casefile/shapes.h"

namespace thinskin::casefile {
namespace {

void check_sheet(RuleKit& k, const model::Sheet& s, const std::string& path)
{
    if (s.thickness.value > 0 && !(s.coating.value < s.thickness.value))
        k.error(path + ".coating", "the coating must be thinner than the sheet it is on");
}

void check_end(RuleKit& k, const model::MemberEnd& e, const std::string& path)
{
    const bool stops = e.to == model::MemberEnd::To::none && !e.same_as_other;
    const bool fixed = e.turning == "fixed";
    if (stops && (!e.fasteners.empty() || e.rotational_stiffness || fixed || e.gap))
        k.error(path, "an end that stops where it is drawn (to: none) has no fasteners, no stiffness and no gap of its own");
    if (fixed && e.rotational_stiffness) k.error(path + ".turning", "an end that is fixed against turning has no stiffness besides: give one of them");
}

/// The moment of such an end goes through its fasteners, which is worked out for ribs.
void only_ribs_are_fixed(RuleKit& k, const model::MemberEnd& e, const std::string& path)
{
    if (e.turning == "fixed") k.error(path + ".turning", "only the ends of ribs are fixed against turning; here it is rotational_stiffness, or free");
}

void check_line(RuleKit& k, const model::Ends& ends, const model::Point2& from, const model::Point2& to, const std::string& path)
{
    const bool read = !from.x.text.empty() && !to.x.text.empty();
    if (read && from.x.value == to.x.value && from.y.value == to.y.value) k.error(path + ".to", "from and to are the same point");
    const auto names = end_names(stands_upright(from, to));
    check_end(k, ends.first, fmt::format("{}.ends.{}", path, names[0]));
    check_end(k, ends.second, fmt::format("{}.ends.{}", path, names[1]));
}

void check_angle(RuleKit& k, const model::Angle& a, const std::string& path)
{
    if (!a.copy_of.empty() || !a.to) return;
    check_line(k, a.ends, a.from, *a.to, path);
    const auto names = end_names(stands_upright(a.from, *a.to));
    only_ribs_are_fixed(k, a.ends.first, fmt::format("{}.ends.{}", path, names[0]));
    only_ribs_are_fixed(k, a.ends.second, fmt::format("{}.ends.{}", path, names[1]));
    const bool across = a.lying == model::Way::left || a.lying == model::Way::right;
    if (k.written(path + ".lying") && across != stands_upright(a.from, *a.to))
        k.error(path + ".lying", across ? "an angle that lies flatter than 45 deg points up or down from its heel"
                                        : "an angle that is steeper than 45 deg points left or right from its heel");
}

void check_joint(RuleKit& k, const std::optional<model::JointWeld>& j, const std::string& path)
{
    if (j && j->weld.has_value() == !j->bolt.empty() && (k.written(path + ".weld") == k.written(path + ".bolt")))
        k.error(path, "a joint has either a weld or a bolt: give one of them");
}

void check_bracket(RuleKit& k, const model::Bracket& b, const std::string& path)
{
    if (b.leg && !b.leg->from.text.empty() && !b.leg->to.text.empty() && !(b.leg->from.value < b.leg->to.value))
        k.error(path + ".leg.to", "the leg must end above its lower end (to more than from)");
    check_joint(k, b.joints.arm_leg, path + ".joints.arm_leg");
    check_joint(k, b.joints.brace_leg, path + ".joints.brace_leg");
    check_joint(k, b.joints.brace_arm, path + ".joints.brace_arm");
    for (std::size_t i = 0; i < b.mounts.size(); ++i) {
        const std::string mount = fmt::format("{}.mounts[{}]", path, i);
        if (b.mounts[i].kind == "rubber" && !b.mounts[i].stiffness && !k.written(mount + ".stiffness"))
            k.error(mount, "a rubber mount needs its stiffness, such as 80 N/mm");
    }
}

void check_evidence(RuleKit& k, const model::HingeEvidence& e)
{
    using Kind = model::HingeEvidence::Kind;
    const std::string path = "door.hinges.evidence";
    const auto needs = [&](bool given, const std::string& key, const std::string& why) {
        if (!given && !k.written(path + "." + key)) k.error(path + "." + key, why);
    };
    const auto spare = [&](bool given, const std::string& key, const std::string& kind) {
        if (given) k.error(path + "." + key, fmt::format("evidence of the kind {} has no {}", kind, key));
    };
    const bool weighed = e.kind == Kind::maker_limit || e.kind == Kind::proof_hang;
    if (weighed) {
        const std::string kind = e.kind == Kind::maker_limit ? "a maker's limit" : "a proof hang";
        needs(e.mass.has_value(), "mass", kind + " needs the mass");
        needs(e.at.has_value(), "at", kind + " needs the place of the mass, with its z");
    } else if (k.written(path + ".kind")) {
        const std::string kind = e.kind == Kind::none ? "none" : e.kind == Kind::regulation ? "regulation" : "us_regulation";
        spare(e.mass.has_value(), "mass", kind);
        spare(e.at.has_value(), "at", kind);
    }
    if (e.kind == Kind::proof_hang) needs(!e.state.empty(), "state", "a proof hang needs the state of the door: closed or open");
    else if (k.written(path + ".kind")) spare(!e.state.empty(), "state", "other than proof_hang");
}

void check_door(RuleKit& k, const model::Door& d)
{
    if (!d.hinges) return;
    const auto& heights = d.hinges->heights;
    if (k.written("door.hinges.heights") && heights.size() == 1) k.error("door.hinges.heights", "a door has two hinges or more");
    for (std::size_t i = 0; i < heights.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (heights[i].value == heights[j].value) k.error(fmt::format("door.hinges.heights[{}]", i), "two hinges stand at the same height");
    check_evidence(k, d.hinges->evidence);
}

/// Hinges far apart take hardly any of the item's moment: a digit too many would hold everything.
void check_within_reach(RuleKit& k, const model::Quantity& at, const model::Quantity& size, const char* what, const std::string& path)
{
    if (size.value > 0 && !(at.value >= -size.value && at.value <= 2 * size.value))
        k.error(path, fmt::format("it lies farther outside the panel than the panel is {}: the panel reaches from 0 to {}", what, size.text));
}

void check_places_on_door(RuleKit& k, const model::Door& d, const model::Panel& p)
{
    for (std::size_t i = 0; d.hinges && i < d.hinges->heights.size(); ++i)
        check_within_reach(k, d.hinges->heights[i], p.height, "high", fmt::format("door.hinges.heights[{}]", i));
    if (d.hinges) check_within_reach(k, d.hinges->pin_x, p.width, "wide", "door.hinges.pin.x");
    for (std::size_t i = 0; i < d.latches.size(); ++i) {
        check_within_reach(k, d.latches[i].at.x, p.width, "wide", fmt::format("door.latches[{}].at", i));
        check_within_reach(k, d.latches[i].at.y, p.height, "high", fmt::format("door.latches[{}].at", i));
    }
}

void check_tether(RuleKit& k, const model::Tether& t)
{
    if (t.stiffness && t.stretch) k.error("item.tether.stretch", "the tether is given by its stiffness or by length and stretch, not by both");
}

void check_open_door(RuleKit& k, const model::Door& d)
{
    if (!d.open) return;
    const model::OpenDoor& o = *d.open;
    if (o.edge_speed && !o.stop) k.error("door.open", "a door flung open needs edge_speed and stop together; stop is missing");
    if (o.stop && !o.edge_speed) k.error("door.open.stop", "a door flung open needs edge_speed and stop together; edge_speed is missing");
    for (std::size_t i = 0; d.opening_angle && i < o.angles.size(); ++i)
        if (o.angles[i].value > d.opening_angle->value + 1e-9) k.error(fmt::format("door.open.angles[{}]", i), fmt::format("the door opens no farther than opening_angle, {}", d.opening_angle->text));
}

/// One way to the dynamic factor: what belongs to another way is an error, not a second factor.
void check_road(RuleKit& k, const model::Road& r)
{
    const auto belongs = [&](bool given, const char* key, model::Basis basis, const char* word) {
        if (given && r.basis != basis)
            k.error(fmt::format("road.{}", key), fmt::format("it belongs to basis: {}. Quasi-static factor, base pulse and random vibration each hold the whole dynamics already; "
                                                             "two of them together count the same road twice", word));
    };
    belongs(!r.pulse.empty(), "pulse", model::Basis::base_pulse, "base_pulse");
    belongs(!r.roughness.empty(), "roughness", model::Basis::random_vibration, "random_vibration");
    belongs(!r.density.empty(), "density", model::Basis::random_vibration, "random_vibration");
    if (!r.roughness.empty() && !r.density.empty()) k.error("road.density", "the road is given by its class or by a density, not by both");
}

/// A load whose case is never run would be left out in silence.
void check_when(RuleKit& k, const std::string& when, const std::string& path)
{
    if (model::is_bare_panel(k.c)) return;
    const bool slammed = k.c.door && k.c.door->hinges && k.c.door->slam;
    const bool slammed_open = k.c.door && k.c.door->hinges && k.c.door->open && k.c.door->open->edge_speed && k.c.door->open->stop;
    if (when.empty() && !k.written(path + ".when"))
        k.error(path, "with a road, each force and pressure needs its load case: when: parked, for instance");
    if (when == "applied") k.error(path + ".when", "the load case applied belongs to a panel alone; with a road, name one such as parked");
    if (when == "slam open") {
        if (!slammed_open) k.error(path + ".when", "this case has no door flung open: it needs door.hinges, door.open.edge_speed and door.open.stop");
    } else if (when.compare(0, 4, "slam") == 0 && !slammed)
        k.error(path + ".when", "this case has no slam: it needs door.hinges and door.slam");
}

} // namespace

void check_values(RuleKit& k)
{
    const model::Case& c = k.c;
    check_sheet(k, c.panel.skin, "panel.skin");
    for (std::size_t i = 0; i < c.panel.frame.size(); ++i) {
        const bool once = !k.written(fmt::format("panel.frame.{}", side_names[i]));
        if ((once && i > 0) || !c.panel.frame[i] || !c.panel.frame[i]->inner) continue;
        check_sheet(k, *c.panel.frame[i]->inner, once ? "panel.frame.inner" : fmt::format("panel.frame.{}.inner", side_names[i]));
    }
    for (std::size_t i = 0; i < c.panel.ribs.size(); ++i)
        check_line(k, c.panel.ribs[i].ends, c.panel.ribs[i].from, c.panel.ribs[i].to, fmt::format("panel.ribs[{}]", i));
    if (c.road) check_road(k, *c.road);
    if (c.door) {
        check_door(k, *c.door);
        check_places_on_door(k, *c.door, c.panel);
    }
    if (c.item && c.item->tether) check_tether(k, *c.item->tether);
    if (c.door) check_open_door(k, *c.door);
    for (std::size_t i = 0; i < c.brackets.size(); ++i) check_bracket(k, c.brackets[i], fmt::format("brackets[{}]", i));
    for (const model::FastenerKind& f : c.fastener_kinds)
        if (f.type == "bolt" && f.grade.empty() && !k.written(kind_path(f.name) + ".grade"))
            k.error(kind_path(f.name), "a bolt needs its grade, such as \"8.8\" (it stands on the head)");
    for (std::size_t i = 0; i < c.reinforcement.angles.size(); ++i)
        check_angle(k, c.reinforcement.angles[i], fmt::format("reinforcement.angles[{}]", i));
    for (std::size_t i = 0; i < c.reinforcement.straps.size(); ++i) {
        const model::Strap& s = c.reinforcement.straps[i];
        const std::string path = fmt::format("reinforcement.straps[{}]", i);
        const auto names = end_names(stands_upright({s.from.x, s.from.y}, {s.to.x, s.to.y}));
        check_end(k, s.ends.first, fmt::format("{}.ends.{}", path, names[0]));
        check_end(k, s.ends.second, fmt::format("{}.ends.{}", path, names[1]));
        only_ribs_are_fixed(k, s.ends.first, fmt::format("{}.ends.{}", path, names[0]));
        only_ribs_are_fixed(k, s.ends.second, fmt::format("{}.ends.{}", path, names[1]));
    }
    for (std::size_t i = 0; i < c.forces.size(); ++i) check_when(k, c.forces[i].when, fmt::format("forces[{}]", i));
    for (std::size_t i = 0; i < c.pressures.size(); ++i) check_when(k, c.pressures[i].when, fmt::format("pressures[{}]", i));
}

} // namespace thinskin::casefile
