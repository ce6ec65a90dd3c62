#include "checks/bar_rows.h"
#include "checks/bolt_steel.h"
#include "checks/checks.h"
#include "checks/weld_line.h"
#include "strength/aluminium.h"
#include "strength/bearing.h"
#include "strength/welds.h"

#include <algorithm>

namespace thinskin::checks {

namespace {

constexpr double filler_strength = 420; ///< MPa, FEXX of a common filler for S235; common practice, no source

struct JointSpec { const char* name; const char* key; const layout::WeldOrBolt* joint; const catalogue::Section* section; const catalogue::Material* material; };

void weld_rows(const Demands& d, const layout::Bracket& b, const JointSpec& spec, std::vector<results::Check>& out)
{
    Place place{fmt::format("{}/{}", spec.name, b.name), "bracket", b.name, fmt::format("weld {} of bracket {}", spec.name, b.name), false, fmt::format("brackets.{}.joints.{}", b.name, spec.key), ""};
    if (!spec.joint->given || !(spec.joint->weld_leg > 0)) {
        out.push_back(not_covered(place, spec.joint->given && !spec.joint->bolt.empty() ? "a bolted joint has no check yet; give a weld" : "how the parts are joined is not said"));
        return;
    }
    const catalogue::Strength s = spec.material->strength(spec.section->t);
    if (!s.covered) {
        out.push_back(not_covered(place, s.reason));
        return;
    }
    const double length = std::min(spec.section->b, spec.section->h);
    if (aluminium(*spec.material)) {
        out.push_back(not_covered(place, no_aluminium_clause(*spec.material, "a weld and the metal beside it, which loses a third to a half of its strength,")));
        return;
    }
    place.note = fmt::format("two fillets of {:.0f} mm, force and moment as resultants; filler {:.0f} MPa assumed", length, filler_strength);
    std::vector<Demand> demands;
    for (const results::JointForce& j : *d.joints)
        if (j.part == b.name && j.name == spec.name) demands.push_back({j.load_case, weld_line_demand(j, length), j.stands, j.why_not});
    place.judgement = true;
    out.push_back(worst_of(place, demands, strength::FilletThroat{spec.joint->weld_leg, filler_strength}));
    place.id += "/beside";
    place.title = "metal beside the " + place.title;
    out.push_back(worst_of(place, demands, strength::SheetBesideFillet{spec.section->t, s.fu, length, strength::weld_across_force}));
}

void mount_rows(const Demands& d, const layout::Bracket& b, const layout::Mount& m, std::vector<results::Check>& out)
{
    Place place{"mount tension/" + m.name, "bracket", b.name, "uplift of the bolt at " + m.name, false, fmt::format("brackets.{}.mounts.use", b.name), ""};
    if (!m.hardware || !m.hardware->not_covered.empty()) {
        out.push_back(not_covered(place, m.hardware ? m.hardware->not_covered : "what holds the item on the arm is not said"));
        return;
    }
    if (m.hardware->type != layout::Hardware::Type::bolt) {
        out.push_back(not_covered(place, "the item's mount on the arm is covered for bolts only"));
        return;
    }
    if (!m.rigid) {
        place.lift_with = fmt::format("brackets.{}.mounts.kind: rigid", b.name);
        out.push_back(not_covered(place, "a rubber mount in uplift holds only when it is captive; the tool cannot see that"));
        return;
    }
    std::vector<Demand> uplift, shear;
    for (const results::MountForce& f : *d.mounts) {
        if (f.name != m.name) continue;
        const double up = positive(f.force_N[1]), side = std::hypot(f.force_N[0], f.force_N[2]);
        uplift.push_back({f.load_case, up, f.stands, f.why_not});
        shear.push_back({f.load_case, side, f.stands, f.why_not});
    }
    out.push_back(bolt_tension_row(place, *m.hardware, uplift));
    place.id = "mount shear/" + m.name;
    place.title = "shear of the bolt at " + m.name;
    out.push_back(bolt_shear_row(place, *m.hardware, shear));
    place.id = "mount tension with shear/" + m.name;
    place.title = "uplift of the bolt at " + m.name + " beside its shear";
    if (!uplift.empty()) out.push_back(bolt_tension_beside_shear_row(place, *m.hardware, uplift, shear));
    const catalogue::Strength s = b.arm_material.strength(b.arm_section.t);
    Place bearing{"mount bearing/" + m.name, "bracket", b.name, fmt::format("bearing of arm {} at {}", b.name, m.name), false, "", ""};
    const double clear = b.arm_section.b - std::abs(b.x - b.web_x) - m.hardware->hole / 2;
    if (s.covered && aluminium(b.arm_material)) out.push_back(worst_of(bearing, shear, strength::AluminiumBearing{m.hardware->d, b.arm_section.t, s.fu, clear + m.hardware->hole / 2}));
    else if (s.covered) out.push_back(worst_of(bearing, shear, strength::HotRolledBearing{m.hardware->d, b.arm_section.t, s.fu, clear}));
    else out.push_back(not_covered(bearing, s.reason));
}

} // namespace

std::vector<results::Check> bracket(const Demands& d)
{
    std::vector<results::Check> out;
    const auto add = [&out](std::vector<results::Check> rows) { out.insert(out.end(), rows.begin(), rows.end()); };
    for (const layout::Bracket& b : d.layout->brackets) {
        const auto bar = [&](const std::string& part, const catalogue::Section& s, const catalogue::Material& m, double length) {
            return Bar{part + " " + b.name, "bracket", b.name, &s, &m, length, of_member(*d.members, part + " " + b.name)};
        };
        add(bar_rows(bar("leg", b.leg.section, b.leg.material, b.leg.length())));
        add(bar_rows(bar("arm", b.arm_section, b.arm_material, b.arm_length)));
        weld_rows(d, b, {"arm to leg", "arm_leg", &b.arm_leg, &b.arm_section, &b.arm_material}, out);
        if (b.has_brace) {
            add(brace_rows(bar("brace", b.brace_section, b.brace_material, std::hypot(b.arm_top_y - b.brace_from_y, b.brace_to_z))));
            weld_rows(d, b, {"brace to leg", "brace_leg", &b.brace_leg, &b.brace_section, &b.brace_material}, out);
            weld_rows(d, b, {"brace to arm", "brace_arm", &b.brace_arm, &b.brace_section, &b.brace_material}, out);
        }
        if (b.mounts.empty()) out.push_back(not_covered({"mounts/" + b.name, "bracket", b.name, "mounts of bracket " + b.name, false, fmt::format("brackets.{}.mounts", b.name), ""}, "the item is not held on this arm"));
        for (const layout::Mount& m : b.mounts) mount_rows(d, b, m, out);
    }
    return out;
}

} // namespace thinskin::checks
