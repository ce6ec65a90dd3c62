#include "layout/resolver.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/core.h>
#include <optional>

namespace thinskin::layout {

namespace {

void nearer(Ply& ply, double distance, const std::string& edge)
{
    if (distance < ply.edge_distance) {
        ply.edge_distance = distance;
        ply.edge = edge;
    }
}

Ply skin_ply(const Layout& l, Point p)
{
    Ply ply{"skin", Ply::Role::skin, l.skin.material, l.skin.core, INFINITY, ""};
    nearer(ply, p.x, "left edge of the panel");
    nearer(ply, l.width - p.x, "right edge of the panel");
    nearer(ply, p.y, "bottom edge of the panel");
    nearer(ply, l.height - p.y, "top edge of the panel");
    for (const Opening& o : l.openings) nearer(ply, o.distance(p), "edge of " + o.name);
    return ply;
}

Ply bar_ply(const AngleBar& bar, Point p, Ply::Role role)
{
    Ply ply{bar.name, role, bar.material, bar.section.t, INFINITY, ""};
    const Local at = local(bar, p);
    nearer(ply, at.along, "end of " + bar.name);
    nearer(ply, bar.length() - at.along, "end of " + bar.name);
    nearer(ply, bar.section.b - at.from_heel, "toe of " + bar.name);
    return ply;
}

Ply plate_ply(const Plate& plate, Point p)
{
    Ply ply{plate.name, Ply::Role::plate, plate.material, plate.thickness, INFINITY, ""};
    nearer(ply, p.x - plate.low.x, "left edge of " + plate.name);
    nearer(ply, plate.high.x - p.x, "right edge of " + plate.name);
    nearer(ply, p.y - plate.low.y, "lower edge of " + plate.name);
    nearer(ply, plate.high.y - p.y, "upper edge of " + plate.name);
    return ply;
}

int side_index(const std::string& side) { return side == "left" ? 0 : side == "right" ? 1 : side == "bottom" ? 2 : 3; }

Ply frame_ply(const Layout& l, const std::string& side, Point p)
{
    const Frame& f = l.frames[static_cast<std::size_t>(side_index(side))];
    Ply ply{fmt::format("frame {} inner", side), Ply::Role::frame_inner, f.inner->material, f.inner->core, INFINITY, ""};
    const double from_panel_edge = side == "left" ? p.x : side == "right" ? l.width - p.x : side == "bottom" ? p.y : l.height - p.y;
    nearer(ply, from_panel_edge, "outer edge of the frame");
    nearer(ply, f.width - from_panel_edge, "inner edge of the frame");
    return ply;
}

} // namespace

namespace {

/// How a stack ends at its far side.
std::string far_side(const Hardware& h)
{
    switch (h.type) {
    case Hardware::Type::bolt: return h.nut_washer ? "washer, nut" : "nut";
    case Hardware::Type::screw: return "tip";
    case Hardware::Type::rivet: return "blind side";
    case Hardware::Type::insert: return "insert";
    }
    return "";
}

} // namespace

std::string stack_line(const Stack& s)
{
    std::string line = s.hardware.head_washer ? "head, washer" : "head";
    for (const Ply& p : s.plies) line += fmt::format(" | {} {:.2f}", p.part, p.thickness);
    line += " | " + far_side(s.hardware);
    return s.gap > 0 ? line + fmt::format("; gap {:.2f}", s.gap) : line;
}

namespace {

/// Wall of a rib behind the skin at a point, and how far off the skin it is; none when the fastener misses the rib.
struct RibWall { Ply ply; double gap; };
std::optional<RibWall> rib_wall(const Rib& r, Point p)
{
    const bool level = r.from.y == r.to.y;
    const double s = level ? p.x : p.y, low = level ? std::min(r.from.x, r.to.x) : std::min(r.from.y, r.to.y), high = level ? std::max(r.from.x, r.to.x) : std::max(r.from.y, r.to.y);
    const double off = level ? std::abs(p.y - r.from.y) : std::abs(p.x - r.from.x);
    if (s < low || s > high) return std::nullopt;
    Ply ply{r.name, Ply::Role::rib, r.material, r.section.t, INFINITY, ""};
    nearer(ply, s - low, "end of " + r.name);
    nearer(ply, high - s, "end of " + r.name);
    if (r.section.kind == catalogue::Section::Kind::hat) {
        const double side = r.section.b / 2, rim = side + r.section.foot;
        if (off > side && off < rim) {
            nearer(ply, rim - off, "edge of the foot of " + r.name);
            return RibWall{ply, 0};
        }
        if (off < side - r.section.t) return RibWall{ply, r.section.h - r.section.t};
    }
    const bool channel = r.section.kind == catalogue::Section::Kind::channel, lies = channel || (r.section.kind == catalogue::Section::Kind::flat && !r.standing);
    const double wide = (channel ? r.section.b : std::max(r.section.b, r.section.h)) / 2;
    if (lies && off < wide) {
        nearer(ply, wide - off, "side of " + r.name);
        return RibWall{ply, 0};
    }
    return std::nullopt;
}

/// A rib's foot lies on the skin; its crown is a gap away, which only a bolt can reach.
void add_ribs(const Layout& l, Stack& s)
{
    for (const Rib& r : l.ribs)
        if (const auto wall = rib_wall(r, s.at); wall && (wall->gap == 0 || s.hardware.type == Hardware::Type::bolt)) {
            s.plies.push_back(wall->ply);
            s.gap = std::max(s.gap, wall->gap);
        }
}

bool head_inside(const Resolver& r, const std::string& use)
{
    const auto kind = std::find_if(r.source.fastener_kinds.begin(), r.source.fastener_kinds.end(), [&](const model::FastenerKind& k) { return k.name == use; });
    return kind != r.source.fastener_kinds.end() && kind->head == model::Face::inside;
}

/// Skin and what lies behind it at the point, then turned round when the head is inside.
void finish(Resolver& r, Stack& s, const std::string& use, const std::string& path)
{
    s.plies.push_back(skin_ply(r.out, s.at));
    add_ribs(r.out, s);
    for (const Angle& a : r.out.angles)
        if (on_lying_leg(a.bar, s.at)) s.plies.push_back(bar_ply(a.bar, s.at, Ply::Role::angle));
    for (const Plate& p : r.out.plates)
        if (p.holds(s.at)) s.plies.push_back(plate_ply(p, s.at));
    if (s.plies.size() > 3) r.error(s.where, path, fmt::format("{} goes through two parts at once ({}); they cannot lie in one place", s.name, s.plies[2].part + ", " + s.plies[3].part));
    if (head_inside(r, use)) std::reverse(s.plies.begin(), s.plies.end());
    if (s.hardware.type == Hardware::Type::insert && s.plies.back().role == Ply::Role::skin)
        r.caution(fmt::format("{} is an insert in bare skin: nothing else holds it, and it counts with its maker's or a tested pull in this very sheet, else with what the sheet round it bears (judgement)", s.name));
    s.line = stack_line(s);
}

} // namespace

Stack foot_stack(Resolver& r, const model::ItemFixing& f, const Ply& foot, const std::string& path)
{
    Stack s;
    s.name = f.name;
    s.owner = r.out.item->name;
    s.at = {f.at.x.value, f.at.y.value};
    s.where = f.where;
    s.hardware = r.hardware(f.use, f.where, path + ".use");
    s.plies.push_back(foot);
    finish(r, s, f.use, path);
    return s;
}

Stack bracket_stack(Resolver& r, const Bracket& b, const model::Fastener& f, const std::string& path)
{
    Stack s;
    s.name = f.name;
    s.owner = b.name;
    s.at = {f.at.x.value, f.at.y.value};
    s.where = f.where;
    s.hardware = r.hardware(f.use, f.where, path + ".use");
    s.plies.push_back(bar_ply(b.leg, s.at, Ply::Role::leg));
    finish(r, s, f.use, path);
    return s;
}

namespace {

/// The frame member on whose band a point lies; empty: on none.
std::string band_of(const Layout& l, Point p)
{
    static constexpr std::array<const char*, 4> sides{"left", "right", "bottom", "top"};
    const std::array<double, 4> off{p.x, l.width - p.x, p.y, l.height - p.y};
    for (std::size_t i = 0; i < 4; ++i)
        if (l.frames[i].given && off[i] <= l.frames[i].width) return sides[i];
    return "";
}

} // namespace

PlateFastener plate_stack(Resolver& r, const Plate& p, const model::Fastener& f, const std::string& path)
{
    PlateFastener out;
    Stack& s = out.stack;
    s.name = f.name;
    s.owner = p.name;
    s.at = {f.at.x.value, f.at.y.value};
    s.where = f.where;
    s.hardware = r.hardware(f.use, f.where, path + ".use");
    out.side = band_of(r.out, s.at);
    if (out.side.empty()) {
        s.plies = {skin_ply(r.out, s.at), plate_ply(p, s.at)};
        if (head_inside(r, f.use)) std::reverse(s.plies.begin(), s.plies.end());
    } else {
        s.plies.push_back(plate_ply(p, s.at));
        if (r.out.frames[static_cast<std::size_t>(side_index(out.side))].inner) s.plies.push_back(frame_ply(r.out, out.side, s.at));
    }
    s.line = stack_line(s);
    return out;
}

Stack end_stack(Resolver& r, const Angle& a, const MemberEnd& end, const model::EndFastener& f, const std::string& path)
{
    Stack s;
    s.owner = a.bar.name;
    s.at = {f.at.x.value, f.at.y.value};
    s.where = f.where;
    s.hardware = r.hardware(f.use, f.where, path + ".use");
    s.plies.push_back(bar_ply(a.bar, s.at, Ply::Role::angle));
    if (r.out.frames[static_cast<std::size_t>(side_index(end.side))].inner) {
        s.plies.push_back(frame_ply(r.out, end.side, s.at));
        s.gap = end.gap;
    }
    s.line = stack_line(s);
    return s;
}

Stack rib_end_stack(Resolver& r, const Rib& rib, const MemberEnd& end, const model::EndFastener& f, const std::string& path)
{
    Stack s;
    s.owner = rib.name;
    s.at = {f.at.x.value, f.at.y.value};
    s.where = f.where;
    s.hardware = r.hardware(f.use, f.where, path + ".use");
    if (const auto wall = rib_wall(rib, s.at)) {
        s.plies.push_back(wall->ply);
        s.gap = wall->gap;
    }
    if (!s.plies.empty() && r.out.frames[static_cast<std::size_t>(side_index(end.side))].inner) {
        s.plies.push_back(frame_ply(r.out, end.side, s.at));
        s.gap += end.gap;
    }
    s.line = stack_line(s);
    return s;
}

} // namespace thinskin::layout
