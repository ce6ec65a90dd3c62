#include "layout/resolver.h"

#include <cmath>
#include <fmt/core.h>

namespace thinskin::layout {

namespace {

const model::Bracket* original_of(const model::Case& c, const std::string& name)
{
    for (const model::Bracket& b : c.brackets)
        if (b.name == name && b.copy_of.empty() && b.mirror_of.empty()) return &b;
    return nullptr;
}

model::Way flipped(model::Way w) { return w == model::Way::left ? model::Way::right : w == model::Way::right ? model::Way::left : w; }

/// A copy shifts every absolute x by the difference of the bolt lines; a mirror reflects about the bolt line.
model::Bracket derived(const model::Bracket& original, const model::Bracket& b)
{
    model::Bracket out = original;
    out.name = b.name;
    out.x = b.x;
    out.copy_of = b.copy_of;
    out.mirror_of = b.mirror_of;
    out.rename = b.rename;
    out.at = b.at;
    const bool mirror = !b.mirror_of.empty();
    if (mirror && out.leg) out.leg->lying = flipped(out.leg->lying);
    for (model::Fastener& f : out.fasteners) {
        const double off = f.at.x.value - original.x.value;
        f.at.x.value = b.x.value + (mirror ? -off : off);
        const auto renamed = b.rename.find(f.name);
        f.name = renamed != b.rename.end() ? renamed->second : f.name + " (" + b.name + ")";
    }
    return out;
}

WeldOrBolt joint(const std::optional<model::JointWeld>& j)
{
    if (!j) return {};
    return {true, j->weld ? j->weld->value : 0.0, j->bolt};
}

void take_arm(Resolver& r, const model::Bracket& b, const std::string& path, Bracket& out)
{
    out.arm_section = r.section(b.arm->section, b.arm->where, path + ".arm.section");
    out.arm_material = r.material(b.arm->material, b.arm->where, path + ".arm.material");
    out.arm_top_y = b.arm->at.value;
    out.arm_length = b.arm->length.value;
    out.arm_mass = out.arm_section.mass_per_metre(out.arm_material.density) * out.arm_length / 1000.0;
    if (out.arm_section.kind != catalogue::Section::Kind::angle && out.arm_section.kind != catalogue::Section::Kind::box)
        r.error(b.arm->where, path + ".arm.section", "expected an angle or a box for an arm");
}

void take_brace(Resolver& r, const model::Bracket& b, const std::string& path, Bracket& out)
{
    out.has_brace = true;
    out.brace_section = r.section(b.brace->section, b.brace->at, path + ".brace.section");
    out.brace_material = r.material(b.brace->material, b.brace->at, path + ".brace.material");
    out.brace_from_y = b.brace->from.value;
    out.brace_to_z = b.brace->to_arm.value;
    const double length = std::hypot(out.arm_top_y - out.brace_from_y, out.brace_to_z);
    out.brace_mass = out.brace_section.mass_per_metre(out.brace_material.density) * length / 1000.0;
    if (!(out.brace_from_y < out.arm_top_y)) r.error(b.brace->at, path + ".brace.from", "a brace starts below the arm; expected less than the arm's height");
    if (!(out.brace_to_z <= out.arm_length)) r.error(b.brace->at, path + ".brace.to_arm", fmt::format("the brace meets the arm at {} mm but the arm is {} mm long", out.brace_to_z, out.arm_length));
}

void take_mounts(Resolver& r, const model::Bracket& b, const std::string& path, Bracket& out)
{
    for (std::size_t i = 0; i < b.mounts.size(); ++i) {
        const model::Mount& m = b.mounts[i];
        const std::string here = fmt::format("{}.mounts[{}]", path, i);
        Mount mount;
        mount.name = m.name.empty() ? fmt::format("{} mount {}", b.name, i + 1) : m.name;
        mount.along = m.at.value;
        mount.at = {out.x, out.arm_top_y, m.at.value};
        mount.rigid = m.kind != "rubber";
        mount.stiffness = m.stiffness ? m.stiffness->value : 0;
        mount.use = m.use;
        if (!m.use.empty()) mount.hardware = r.hardware(m.use, m.where, here + ".use");
        if (!(mount.along <= out.arm_length)) r.error(m.where, here + ".at", fmt::format("the mount is {} mm out but the arm is {} mm long", mount.along, out.arm_length));
        if (!mount.rigid && !(mount.stiffness > 0)) r.error(m.where, here + ".stiffness", "a rubber mount needs its stiffness, such as 120 N/mm");
        out.mounts.push_back(std::move(mount));
    }
}

/// Arm and brace meet the leg where there is a leg.
void check_on_leg(Resolver& r, const model::Bracket& b, const std::string& path)
{
    const auto on_leg = [&b](double y) { return y >= b.leg->from.value && y <= b.leg->to.value; };
    if (!on_leg(b.arm->at.value))
        r.error(b.arm->where, path + ".arm.at", fmt::format("the arm's top is at {:g} mm but the leg reaches from {:g} to {:g} mm", b.arm->at.value, b.leg->from.value, b.leg->to.value));
    if (b.brace && !on_leg(b.brace->from.value))
        r.error(b.brace->at, path + ".brace.from", fmt::format("the brace starts at {:g} mm but the leg reaches from {:g} to {:g} mm", b.brace->from.value, b.leg->from.value, b.leg->to.value));
}

void resolve_bracket(Resolver& r, const model::Bracket& b, const std::string& path)
{
    if (!b.leg || !b.arm) {
        r.error(b.at, path, "a bracket needs a leg and an arm");
        return;
    }
    Bracket out;
    out.name = b.name;
    out.x = b.x.value;
    out.where = b.at;
    const catalogue::Section leg = r.section(b.leg->section, b.leg->at, path + ".leg.section");
    if (leg.kind != catalogue::Section::Kind::angle) r.error(b.leg->at, path + ".leg.section", "expected an angle for a wall leg");
    out.leg = angle_bar(leg, r.material(b.leg->material, b.leg->at, path + ".leg.material"), {out.x, b.leg->from.value}, {out.x, b.leg->to.value}, b.leg->lying,
                        b.leg->gauge.value);
    out.leg.name = "leg " + b.name;
    out.leg.standing = 1;
    out.leg.face_z = 0;
    out.web_x = out.leg.heel(0).x;
    if (!(b.leg->to.value > b.leg->from.value)) r.error(b.leg->at, path + ".leg", "the leg ends below its start; expected from < to");
    out.leg_mass = out.leg.mass();
    take_arm(r, b, path, out);
    if (b.brace) take_brace(r, b, path, out);
    check_on_leg(r, b, path);
    out.arm_leg = joint(b.joints.arm_leg);
    out.brace_leg = joint(b.joints.brace_leg);
    out.brace_arm = joint(b.joints.brace_arm);
    take_mounts(r, b, path, out);
    for (std::size_t i = 0; i < b.fasteners.size(); ++i)
        out.fasteners.push_back(bracket_stack(r, out, b.fasteners[i], fmt::format("{}.fasteners[{}]", path, i)));
    if (out.fasteners.empty()) r.error(b.at, path + ".fasteners", "a bracket needs at least one fastener");
    r.out.brackets.push_back(std::move(out));
}

} // namespace

std::vector<model::Bracket> expanded_brackets(Resolver& r)
{
    std::vector<model::Bracket> out;
    for (const model::Bracket& b : r.source.brackets) {
        const std::string& link = b.copy_of.empty() ? b.mirror_of : b.copy_of;
        const model::Bracket* original = link.empty() ? nullptr : original_of(r.source, link);
        if (link.empty()) out.push_back(b);
        else if (original) out.push_back(derived(*original, b));
        else r.error(b.at, "brackets." + b.name, fmt::format("no bracket called {} to copy or mirror", link));
    }
    return out;
}

void resolve_brackets(Resolver& r)
{
    const std::vector<model::Bracket> all = expanded_brackets(r);
    for (std::size_t i = 0; i < all.size(); ++i) resolve_bracket(r, all[i], fmt::format("brackets[{}]", i));
}

} // namespace thinskin::layout
