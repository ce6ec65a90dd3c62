#include "layout/resolver.h"

#include <cmath>
#include <fmt/core.h>
#include <utility>

namespace thinskin::layout {

namespace {

void shift(model::Point2& p, double dx, double dy)
{
    p.x.value += dx;
    p.y.value += dy;
}

model::Angle shifted_copy(const model::Angle& original, const model::Angle& copy)
{
    model::Angle out = original;
    const double dx = copy.from.x.value - original.from.x.value, dy = copy.from.y.value - original.from.y.value;
    out.name = copy.name;
    out.copy_of = copy.copy_of;
    out.at = copy.at;
    shift(out.from, dx, dy);
    if (out.to) shift(*out.to, dx, dy);
    for (model::MemberEnd* end : {&out.ends.first, &out.ends.second})
        for (model::EndFastener& f : end->fasteners) shift(f.at, dx, dy);
    return out;
}

/// From left to right, or from bottom to top: the ends are named by their sides, whichever of them is written as `from`.
void in_order(model::Angle& a)
{
    const std::string at_from = side_name({a.to->x.value - a.from.x.value, a.to->y.value - a.from.y.value}, 0);
    if (at_from == "right" || at_from == "top") std::swap(a.from, *a.to);
}

int side_index(const std::string& side) { return side == "left" ? 0 : side == "right" ? 1 : side == "bottom" ? 2 : 3; }

/// Torsion is held only by two fasteners that are apart across the member.
bool apart_across(const AngleBar& bar, const std::vector<Stack>& fasteners)
{
    for (const Stack& f : fasteners)
        if (std::abs(local(bar, f.at).from_heel - local(bar, fasteners.front().at).from_heel) > 2 * f.hardware.d) return true;
    return false;
}

MemberEnd resolve_end(Resolver& r, const Angle& a, const model::MemberEnd& end, int index, const std::string& path)
{
    MemberEnd out;
    out.side = side_name(a.bar.along, index);
    out.tied = end.to == model::MemberEnd::To::frame;
    if (!out.tied) return out;
    if (end.gap) out.gap = end.gap->value;
    if (end.rotational_stiffness) out.rotational_stiffness = end.rotational_stiffness->value;
    out.frame_section = r.out.frames[static_cast<std::size_t>(side_index(out.side))].section_text;
    for (std::size_t i = 0; i < end.fasteners.size(); ++i) {
        Stack s = end_stack(r, a, out, end.fasteners[i], fmt::format("{}.fasteners[{}]", path, i));
        s.name = end.fasteners[i].name.empty() ? fmt::format("{} {} {}", a.bar.name, out.side, i + 1) : end.fasteners[i].name;
        out.port.x += s.at.x / static_cast<double>(end.fasteners.size());
        out.port.y += s.at.y / static_cast<double>(end.fasteners.size());
        out.fasteners.push_back(std::move(s));
    }
    if (out.fasteners.empty()) out.port = a.bar.on_bolt_line(index == 0 ? 0 : a.bar.length());
    else out.torsion_held = apart_across(a.bar, out.fasteners);
    return out;
}

} // namespace

void mirror_end(const model::Point2& start, const model::Point2& stop, const model::MemberEnd& from, model::MemberEnd& to)
{
    const base::Location at = to.at;
    to = from;
    to.at = at;
    to.same_as_other = false;
    const double dx = stop.x.value - start.x.value, dy = stop.y.value - start.y.value;
    const double length2 = dx * dx + dy * dy;
    const double mx = (stop.x.value + start.x.value) / 2, my = (stop.y.value + start.y.value) / 2;
    for (model::EndFastener& f : to.fasteners) {
        const double s = ((f.at.x.value - mx) * dx + (f.at.y.value - my) * dy) / length2;
        shift(f.at, -2 * s * dx, -2 * s * dy);
        if (!f.name.empty()) f.name += " mirrored";
    }
}

std::string side_name(Point along, int end)
{
    const bool level = std::abs(along.x) >= std::abs(along.y);
    const bool forward = level ? along.x > 0 : along.y > 0;
    const bool far = (end == 1) == forward;
    if (level) return far ? "right" : "left";
    return far ? "top" : "bottom";
}

std::vector<model::Angle> expanded_angles(Resolver& r)
{
    std::vector<model::Angle> out;
    for (const model::Angle& a : r.source.reinforcement.angles) {
        if (a.copy_of.empty()) {
            out.push_back(a);
            continue;
        }
        const model::Angle* original = nullptr;
        for (const model::Angle& o : r.source.reinforcement.angles)
            if (o.name == a.copy_of && o.copy_of.empty()) original = &o;
        if (original) out.push_back(shifted_copy(*original, a));
        else r.error(a.at, "reinforcement.angles." + a.name + ".copy_of", fmt::format("no angle called {} to copy", a.copy_of));
    }
    for (model::Angle& a : out) {
        if (!a.to) continue;
        if (a.ends.second.same_as_other) mirror_end(a.from, *a.to, a.ends.first, a.ends.second);
        else if (a.ends.first.same_as_other) mirror_end(a.from, *a.to, a.ends.second, a.ends.first);
        in_order(a);
    }
    return out;
}

void resolve_angles(Resolver& r)
{
    const std::vector<model::Angle> all = expanded_angles(r);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const model::Angle& a = all[i];
        const std::string path = fmt::format("reinforcement.angles[{}]", i);
        if (!a.to) continue;
        Angle out;
        out.bar = angle_bar(r.section(a.section, a.at, path + ".section"), r.material(a.material, a.at, path + ".material"),
                            {a.from.x.value, a.from.y.value}, {a.to->x.value, a.to->y.value}, a.lying, a.gauge.value);
        out.bar.name = a.name;
        out.inside = a.face == model::Face::inside;
        out.bar.standing = out.inside ? -1 : 1;
        out.bar.face_z = out.inside ? -r.out.skin.core : 0;
        out.seen = a.seen;
        out.where = a.at;
        if (out.bar.section.kind != catalogue::Section::Kind::angle || !(out.bar.length() > 0)) {
            r.error(a.at, path + ".section", "expected an angle with two legs and a length, such as angle 40x40x4");
            continue;
        }
        if (!out.inside) {
            r.not_covered("reinforcement", a.name, "an angle between bracket and skin is not covered", path + ".face: inside");
            continue;
        }
        for (int e = 0; e < 2; ++e) out.ends[static_cast<std::size_t>(e)] = resolve_end(r, out, e == 0 ? a.ends.first : a.ends.second, e, path + ".ends");
        for (const MemberEnd& end : out.ends)
            if (!end.tied)
                r.caution(fmt::format("{} stops in the skin at its {} end: there it hands its pull to the thin sheet along one line, where the sheet creases and tires; better carried on to the frame", a.name, end.side));
        r.out.reinforcement_mass += out.bar.mass();
        r.out.angles.push_back(std::move(out));
    }
}

} // namespace thinskin::layout
