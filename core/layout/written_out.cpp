#include "layout/resolver.h"

#include <cmath>
#include <fmt/core.h>

namespace thinskin::layout {

namespace {

void name_end(const std::string& member, const std::string& side, model::MemberEnd& end)
{
    for (std::size_t i = 0; i < end.fasteners.size(); ++i)
        if (end.fasteners[i].name.empty()) end.fasteners[i].name = fmt::format("{} {} {}", member, side, i + 1);
}

void write_out(model::Bracket& b)
{
    b.copy_of.clear();
    b.mirror_of.clear();
    b.rename.clear();
    for (std::size_t i = 0; i < b.mounts.size(); ++i) b.mounts[i].name = fmt::format("{} mount {}", b.name, i + 1);
}

void write_out(model::Angle& a)
{
    a.copy_of.clear();
    if (!a.to) return;
    const Point along{a.to->x.value - a.from.x.value, a.to->y.value - a.from.y.value};
    name_end(a.name, side_name(along, 0), a.ends.first);
    name_end(a.name, side_name(along, 1), a.ends.second);
}

void write_out(model::Strap& s)
{
    const bool upright = std::abs(s.to.y.value - s.from.y.value) > std::abs(s.to.x.value - s.from.x.value);
    name_end(s.name, upright ? "bottom" : "left", s.ends.first);
    name_end(s.name, upright ? "top" : "right", s.ends.second);
}

void write_out(model::Rib& rib)
{
    if (rib.ends.second.same_as_other) mirror_end(rib.from, rib.to, rib.ends.first, rib.ends.second);
    else if (rib.ends.first.same_as_other) mirror_end(rib.from, rib.to, rib.ends.second, rib.ends.first);
    const bool upright = rib.from.x.value == rib.to.x.value;
    name_end(rib.name, upright ? "bottom" : "left", rib.ends.first);
    name_end(rib.name, upright ? "top" : "right", rib.ends.second);
}

} // namespace

model::Case written_out(const model::Case& c)
{
    Resolver r{c}; // for the two expansions only; their complaints come again when the result is resolved
    model::Case out = c;
    out.brackets = expanded_brackets(r);
    out.reinforcement.angles = expanded_angles(r);
    for (model::Bracket& b : out.brackets) write_out(b);
    for (model::Angle& a : out.reinforcement.angles) write_out(a);
    for (model::Rib& rib : out.panel.ribs) write_out(rib);
    for (model::Strap& s : out.reinforcement.straps) write_out(s);
    if (out.item)
        for (std::size_t i = 0; i < out.item->fixings.size(); ++i)
            if (out.item->fixings[i].name.empty()) out.item->fixings[i].name = fmt::format("foot {}", i + 1);
    return out;
}

} // namespace thinskin::layout
