#include "handles/grips.h"

#include <cmath>
#include <fmt/format.h>

namespace thinskin::gui {
namespace {

constexpr double inch = 25.4;       // exact by definition
constexpr double same_place = 1e-6; // mm

std::optional<Grip> grip_of(const model::Case& c, const std::string& id)
{
    Grips all;
    other_grips(c, all);
    member_grips(c, all);
    angle_grips(c, all);
    bracket_grips(c, all);
    for (Grip& g : all)
        if (g.handle.id == id) return std::move(g);
    return std::nullopt;
}

bool exact(double mm, UnitSystem u) { return std::abs(base::read_quantity(written_length(mm, u), base::Dimension::length).quantity.value - mm) <= same_place; }

/// What is taken hold of is written in the units of its snap lines. What goes with it keeps the units it has in the file where
/// that is exact, so that a long drag does not wear the distances between them.
std::string text_of(double mm, bool taken, UnitSystem file, UnitSystem screen)
{
    const UnitSystem first = taken ? screen : file, second = taken ? file : screen;
    return written_length(mm, exact(mm, first) || !exact(mm, second) ? first : second);
}

/// The edit that puts the grip at `to`; a coordinate that was typed keeps its text where the file holds it as such.
Moved moved(const Grip& g, const Vec3& to, UnitSystem units, const std::array<std::string, 3>& texts)
{
    Moved m;
    m.to = to;
    m.edit.name = "Move " + g.handle.label;
    m.edit.drag = "move " + g.handle.id;
    for (const Binding& b : g.bindings) {
        const auto axis = static_cast<std::size_t>(b.axis);
        const double by = to[axis] - g.handle.at[axis];
        if (!(std::abs(by) > same_place)) continue;
        const bool taken = b.sign > 0 && std::abs(b.value - g.handle.at[axis]) <= same_place;
        m.edit.changes.push_back(casefile::set(b.path, taken && !texts[axis].empty() ? texts[axis] : text_of(b.value + b.sign * by, taken, b.written_in, units)));
    }
    return m;
}

Moved cannot(const Handle& h, std::string why)
{
    Moved m;
    m.to = h.at;
    m.why = std::move(why);
    return m;
}

std::string gone(const Handle& h) { return h.label + " is no longer in the case"; }
std::string held(const Handle& h) { return h.follows.empty() ? h.label + " cannot be moved" : h.follows; }

} // namespace

double snap_step(const Snap& s)
{
    if (s.units == UnitSystem::us) return s.on ? inch / 4 : inch / 100;
    return s.on ? 5.0 : 0.1;
}

double snapped(double mm, const Snap& s) { return std::round(mm / snap_step(s)) * snap_step(s); }

Moved move_to(const model::Case& c, const Handle& h, const Vec3& to, const Snap& snap)
{
    const auto g = grip_of(c, h.id);
    if (!g) return cannot(h, gone(h));
    if (g->bindings.empty()) return cannot(g->handle, held(g->handle));
    Vec3 goal = g->handle.at;
    for (std::size_t a = 0; a < 3; ++a) {
        if (!std::isfinite(to[a])) return cannot(g->handle, "this is no place");
        // What is hardly moved along an axis stays where it is there, on the snap lines or not.
        if (g->handle.moves[a] && std::abs(to[a] - goal[a]) >= snap_step(snap) / 2) goal[a] = snapped(to[a], snap);
    }
    return moved(*g, goal, snap.units, {});
}

Moved nudge(const model::Case& c, const Handle& h, int dx, int dy, int dz, const Snap& snap, bool fine)
{
    const auto g = grip_of(c, h.id);
    if (!g) return cannot(h, gone(h));
    const double step = snap_step(snap) * (fine ? 0.1 : 1.0);
    const std::array<int, 3> way = {dx, dy, dz};
    Vec3 goal = g->handle.at;
    bool any = false;
    for (std::size_t a = 0; a < 3; ++a) {
        if (way[a] == 0 || !g->handle.moves[a]) continue;
        any = true;
        const double steps = goal[a] / step; // a place on a step line moves on to the next one
        goal[a] = (way[a] > 0 ? std::floor(steps + 1e-6) + way[a] : std::ceil(steps - 1e-6) + way[a]) * step;
    }
    if (!any) return cannot(g->handle, g->bindings.empty() ? held(g->handle) : g->handle.label + " does not move this way");
    return moved(*g, goal, snap.units, {});
}

Moved place_at(const model::Case& c, const Handle& h, const std::array<std::string, 3>& typed_text, UnitSystem units)
{
    const auto g = grip_of(c, h.id);
    if (!g) return cannot(h, gone(h));
    if (g->bindings.empty()) return cannot(g->handle, held(g->handle));
    Vec3 goal = g->handle.at;
    std::array<std::string, 3> texts;
    for (std::size_t a = 0; a < 3; ++a) {
        if (typed_text[a].empty()) continue;
        const Typed t = typed(typed_text[a], base::Dimension::length, units);
        if (!t.ok) return cannot(g->handle, t.expected);
        if (!g->handle.moves[a]) return cannot(g->handle, g->handle.label + " does not move this way");
        texts[a] = t.text;
        goal[a] = base::read_quantity(t.text, base::Dimension::length).quantity.value;
    }
    Moved m = moved(*g, goal, units, texts);
    m.edit.drag.clear();
    return m;
}

} // namespace thinskin::gui
