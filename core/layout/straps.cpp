#include "layout/resolver.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

/// Straps: where each end hangs, and what its own fasteners go through. `from` and `to` are the points the force runs through.
namespace thinskin::layout {

namespace {

constexpr const char* side_names[] = {"left", "right", "bottom", "top"};

Vec3 vec(const model::Point3& p) { return {p.x.value, p.y.value, p.z.value}; }

/// The edge that a point lies nearest to.
int nearest_edge(const Layout& l, const Vec3& p)
{
    const double d[] = {p[0], l.width - p[0], p[1], l.height - p[1]};
    return static_cast<int>(std::min_element(d, d + 4) - d);
}

/// Distance from a point to the leg or the arm of a bracket; `arm` says which.
struct Near { double distance; bool arm; };
Near near(const Bracket& b, const Vec3& p)
{
    const double leg_y = std::clamp(p[1], b.leg.from.y, b.leg.to.y), arm_z = std::clamp(p[2], 0.0, b.arm_length);
    const double leg = std::hypot(p[0] - b.x, p[1] - leg_y, p[2]), arm = std::hypot(p[0] - b.x, p[1] - b.arm_top_y, p[2] - arm_z);
    return arm < leg ? Near{arm, true} : Near{leg, false};
}

void find_bracket(Resolver& r, const std::string& path, StrapEnd& end)
{
    double best = INFINITY;
    for (std::size_t i = 0; i < r.out.brackets.size(); ++i)
        if (const Near n = near(r.out.brackets[i], end.at); n.distance < best) {
            best = n.distance;
            end.bracket = static_cast<int>(i);
            end.on_arm = n.arm;
        }
    constexpr double reach = 80; // mm: farther off it is not fixed to that bracket
    if (!(best <= reach)) r.error(end.where, path, fmt::format("the strap's end at [{:.0f}, {:.0f}, {:.0f}] mm is not at a bracket", end.at[0], end.at[1], end.at[2]));
}

void find_frame(Resolver& r, const std::string& path, StrapEnd& end)
{
    const int edge = nearest_edge(r.out, end.at);
    end.side = side_names[edge];
    const Frame& f = r.out.frames[static_cast<std::size_t>(edge)];
    const double off[] = {end.at[0], r.out.width - end.at[0], end.at[1], r.out.height - end.at[1]};
    if (f.given && !(off[edge] >= 0 && off[edge] <= f.width))
        r.error(end.where, path, fmt::format("the strap's end at [{:.0f}, {:.0f}] mm is not on the frame, which is {:.0f} mm wide", end.at[0], end.at[1], f.width));
}

/// What the strap's end fastener goes through beside the strap; none: not known (the item).
std::optional<Ply> other_ply(const Layout& l, const StrapEnd& end)
{
    if (end.to == model::MemberEnd::To::frame) {
        const Frame& f = l.frames[static_cast<std::size_t>(nearest_edge(l, end.at))];
        if (!f.inner) return std::nullopt;
        return Ply{fmt::format("frame {} inner", end.side), Ply::Role::frame_inner, f.inner->material, f.inner->core, INFINITY, ""};
    }
    if (end.to != model::MemberEnd::To::bracket || end.bracket < 0) return std::nullopt;
    const Bracket& b = l.brackets[static_cast<std::size_t>(end.bracket)];
    if (end.on_arm) return Ply{"arm " + b.name, Ply::Role::plate, b.arm_material, b.arm_section.t, INFINITY, ""};
    return Ply{b.leg.name, Ply::Role::plate, b.leg.material, b.leg.section.t, INFINITY, ""};
}

void take_fasteners(Resolver& r, const Strap& s, const model::MemberEnd& e, const std::string& path, StrapEnd& end)
{
    // A flat lies with its wide face on what it is fixed to, whichever way round it is written.
    const double wide = s.section.kind == catalogue::Section::Kind::flat ? std::max(s.section.b, s.section.h) : s.section.b;
    for (std::size_t i = 0; i < e.fasteners.size(); ++i) {
        const model::EndFastener& f = e.fasteners[i];
        Stack stack;
        stack.name = f.name.empty() ? fmt::format("{} {} {}", s.name, end.key, i + 1) : f.name;
        stack.owner = s.name;
        stack.at = {f.at.x.value, f.at.y.value};
        stack.where = f.where;
        stack.hardware = r.hardware(f.use, f.where, fmt::format("{}.fasteners[{}].use", path, i));
        stack.plies.push_back({s.name, Ply::Role::plate, s.material, s.section.t, wide / 2, "side of the strap"});
        if (const auto ply = other_ply(r.out, end)) {
            stack.plies.push_back(*ply);
            if (e.gap) stack.gap = e.gap->value;
        }
        stack.line = stack_line(stack);
        end.fasteners.push_back(std::move(stack));
    }
}

StrapEnd resolve_end(Resolver& r, const Strap& s, const model::MemberEnd& e, const Vec3& at, const std::string& key, const std::string& path)
{
    StrapEnd end;
    end.at = at;
    end.to = e.to;
    end.key = end.side = key;
    end.where = e.at;
    if (e.to == model::MemberEnd::To::frame) find_frame(r, path, end);
    if (e.to == model::MemberEnd::To::bracket) find_bracket(r, path, end);
    if (e.to == model::MemberEnd::To::item && !r.out.item) r.error(e.at, path, "there is no item to fix the strap to");
    take_fasteners(r, s, e, path, end);
    return end;
}

void resolve_strap(Resolver& r, const model::Strap& m, const std::string& path)
{
    Strap s;
    s.name = m.name;
    s.from = vec(m.from);
    s.to = vec(m.to);
    s.section = r.section(m.section, m.at, path + ".section");
    s.material = r.material(m.material, m.at, path + ".material");
    s.slack = m.slack.value;
    s.where = m.at;
    if (!(s.length() > 0)) {
        r.error(m.at, path, "from and to of the strap are the same point");
        return;
    }
    const bool upright = std::abs(s.to[1] - s.from[1]) > std::abs(s.to[0] - s.from[0]);
    const bool forward = upright ? s.from[1] <= s.to[1] : s.from[0] <= s.to[0];
    const char* names[] = {upright ? "bottom" : "left", upright ? "top" : "right"};
    const model::MemberEnd* given[] = {&m.ends.first, &m.ends.second};
    for (std::size_t e = 0; e < 2; ++e) {
        const std::size_t k = forward ? e : 1 - e;
        model::MemberEnd end = *given[k];
        if (end.same_as_other) {
            end = *given[1 - k];
            end.fasteners.clear(); // their places belong to the other end
        }
        s.ends[e] = resolve_end(r, s, end, e == 0 ? s.from : s.to, names[k], fmt::format("{}.ends.{}", path, names[k]));
        if (s.ends[e].to == model::MemberEnd::To::none)
            r.not_covered("reinforcement", s.name, fmt::format("the {} end of the strap hangs on nothing: it is left out", names[k]), fmt::format("reinforcement.straps.{}.ends.{}.to", s.name, names[k]));
    }
    if (s.ends[0].to == model::MemberEnd::To::frame && s.ends[1].to == model::MemberEnd::To::frame) r.caution(fmt::format("both ends of {} are on the frame: it holds nothing", s.name));
    r.out.reinforcement_mass += s.mass();
    r.out.straps.push_back(std::move(s));
}

} // namespace

double Strap::length() const { return std::hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]); }

double Strap::mass() const { return section.mass_per_metre(material.density) * length() / 1000.0; }

bool Strap::acts() const
{
    using To = model::MemberEnd::To;
    const bool hangs = ends[0].to != To::none && ends[1].to != To::none;
    return hangs && !(ends[0].to == To::frame && ends[1].to == To::frame);
}

void resolve_straps(Resolver& r)
{
    for (std::size_t i = 0; i < r.source.reinforcement.straps.size(); ++i)
        resolve_strap(r, r.source.reinforcement.straps[i], fmt::format("reinforcement.straps[{}]", i));
}

} // namespace thinskin::layout
