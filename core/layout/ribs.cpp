#include "layout/resolver.h"

#include <cmath>
#include <fmt/core.h>

/// Ribs behind the skin, and what ties their ends to the frame beside the edge of the skin they end at (ID-12).
namespace thinskin::layout {

namespace {

constexpr double at_the_edge = 1; // mm

std::size_t side_index(const std::string& side) { return side == "left" ? 0 : side == "right" ? 1 : side == "bottom" ? 2 : 3; }

double from_edge(const Layout& l, const std::string& side, Point p)
{
    return std::abs(side == "left" ? p.x : side == "right" ? l.width - p.x : side == "bottom" ? p.y : l.height - p.y);
}

/// Why the end cannot be modelled as it is said to be fixed, with the key that lifts it; nothing: it can.
struct Refused { std::string why, lift; };
Refused refused(const Layout& l, const model::MemberEnd& end, const std::string& side, Point at, const std::string& key)
{
    if (end.to != model::MemberEnd::To::frame) return {"an end of a rib stops with the skin or is fixed to the frame, to nothing else", key + ".to: none or frame"};
    if (!(from_edge(l, side, at) <= at_the_edge))
        return {fmt::format("its {} end is said to be fixed to the frame but stops {:.0f} mm before the panel's edge", side, from_edge(l, side, at)), fmt::format("{}.to: none, or the rib drawn on to the edge", key)};
    const bool skin_held = l.edges[side_index(side)].kind == model::EdgeCondition::Kind::held;
    if (skin_held && end.turning != "fixed")
        return {fmt::format("its {} end is fixed to the frame and may turn, but the skin it is joined to is held there and would not let it", side), fmt::format("{}.turning: fixed, or panel.edges.{}: hinged", key, side)};
    return {};
}

void take_end(Resolver& r, const Rib& rib, const model::MemberEnd& end, const std::string& path, MemberEnd& out)
{
    out.tied = true;
    out.turning_fixed = end.turning == "fixed";
    if (end.gap) out.gap = end.gap->value;
    if (end.rotational_stiffness) out.rotational_stiffness = end.rotational_stiffness->value;
    out.frame_section = r.out.frames[side_index(out.side)].section_text;
    for (std::size_t i = 0; i < end.fasteners.size(); ++i) {
        Stack s = rib_end_stack(r, rib, out, end.fasteners[i], fmt::format("{}.fasteners[{}]", path, i));
        s.name = end.fasteners[i].name.empty() ? fmt::format("{} {} {}", rib.name, out.side, i + 1) : end.fasteners[i].name;
        out.fasteners.push_back(std::move(s));
    }
}

void resolve_end(Resolver& r, Rib& rib, const model::MemberEnd& end, std::size_t index, const std::string& path)
{
    MemberEnd& out = rib.ends[index];
    const Point at = index == 0 ? rib.from : rib.to;
    out.side = side_name({rib.to.x - rib.from.x, rib.to.y - rib.from.y}, static_cast<int>(index));
    out.port = at;
    if (end.to == model::MemberEnd::To::none) return;
    const Refused no = refused(r.out, end, out.side, at, fmt::format("panel.ribs.{}.ends.{}", rib.name, out.side));
    if (!no.why.empty()) return r.not_covered("reinforcement", rib.name, no.why, no.lift);
    take_end(r, rib, end, fmt::format("{}.ends.{}", path, out.side), out);
}

void resolve_rib(Resolver& r, model::Rib rib, std::size_t index)
{
    const std::string path = fmt::format("panel.ribs[{}]", index);
    Rib out;
    out.name = rib.name;
    out.from = {rib.from.x.value, rib.from.y.value};
    out.to = {rib.to.x.value, rib.to.y.value};
    out.section = r.section(rib.section, rib.at, path + ".section");
    out.material = r.material(rib.material, rib.at, path + ".material");
    out.seen = rib.seen;
    out.standing = !rib.lying.has_value();
    if (out.from.x != out.to.x && out.from.y != out.to.y)
        r.error(rib.at, path, "a rib runs along the panel's width or its height; this one is oblique", "make from and to share their x or their y");
    if (out.from.x > out.to.x || out.from.y > out.to.y) std::swap(out.from, out.to); // ends are named by their sides, whichever is written as `from`
    if (rib.ends.second.same_as_other) mirror_end(rib.from, rib.to, rib.ends.first, rib.ends.second);
    else if (rib.ends.first.same_as_other) mirror_end(rib.from, rib.to, rib.ends.second, rib.ends.first);
    resolve_end(r, out, rib.ends.first, 0, path);
    resolve_end(r, out, rib.ends.second, 1, path);
    r.out.ribs.push_back(out);
}

} // namespace

void resolve_ribs(Resolver& r)
{
    for (std::size_t i = 0; i < r.source.panel.ribs.size(); ++i) resolve_rib(r, r.source.panel.ribs[i], i);
}

} // namespace thinskin::layout
