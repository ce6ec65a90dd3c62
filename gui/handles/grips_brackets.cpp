#include "handles/grips.h"

#include <fmt/format.h>

/// A copy takes all but its bolt line from its original: what is dragged on it changes the original, and so both.
namespace thinskin::gui {
namespace {

struct Pair {
    const model::Bracket* here = nullptr;       ///< as drawn
    const model::Bracket* original = nullptr;   ///< where the file has its parts; the same for a bracket of its own
    std::string path, original_path;
    bool mirrored = false;
    [[nodiscard]] bool own() const { return here == original; }
    /// Place across of a point of the original, as layout expands it.
    [[nodiscard]] double across(double x) const
    {
        const double off = x - original->x.value;
        return here->x.value + (mirrored ? -off : off);
    }
};

std::optional<Pair> pair_of(const model::Case& c, std::size_t i)
{
    const model::Bracket& b = c.brackets[i];
    Pair p;
    p.here = &b;
    p.path = fmt::format("brackets[{}]", i);
    p.mirrored = !b.mirror_of.empty();
    const std::string& link = p.mirrored ? b.mirror_of : b.copy_of;
    if (link.empty()) {
        p.original = &b;
        p.original_path = p.path;
        return p;
    }
    for (std::size_t k = 0; k < c.brackets.size(); ++k)
        if (c.brackets[k].name == link && c.brackets[k].copy_of.empty() && c.brackets[k].mirror_of.empty()) {
            p.original = &c.brackets[k];
            p.original_path = fmt::format("brackets[{}]", k);
            return p;
        }
    return std::nullopt;
}

std::string name_of(const Pair& p, const model::Fastener& f)
{
    if (p.own()) return f.name;
    const auto renamed = p.here->rename.find(f.name);
    return renamed != p.here->rename.end() ? renamed->second : f.name + " (" + p.here->name + ")";
}

std::string copies_of(const model::Case& c, const model::Bracket& b)
{
    std::string names;
    for (const model::Bracket& k : c.brackets)
        if (k.copy_of == b.name || k.mirror_of == b.name) names += (names.empty() ? "" : ", ") + k.name;
    return names;
}

/// What else a change of the bracket's parts moves.
std::string follows(const model::Case& c, const Pair& p)
{
    if (!p.own()) return fmt::format("bracket {} is a {} of {}: this moves both", p.here->name, p.mirrored ? "mirror" : "copy", p.original->name);
    const std::string copies = copies_of(c, *p.here);
    return copies.empty() ? "" : fmt::format("bracket {} follows", copies);
}

/// Sideways a bracket goes with its holes; those of a copy stand in its original and follow by themselves.
std::vector<Binding> sideways(const Pair& p)
{
    std::vector<Binding> b = {bind(0, p.path + ".x", p.here->x)};
    for (std::size_t k = 0; p.own() && k < p.here->fasteners.size(); ++k) b.push_back(bind(0, fmt::format("{}.fasteners[{}].at[0]", p.path, k), p.here->fasteners[k].at.x));
    return b;
}

void whole(const model::Case& c, const Pair& p, Grips& out)
{
    const model::Bracket& o = *p.original;
    std::vector<Binding> b = sideways(p);
    const auto down = [&](const std::string& path, const model::Quantity& q) { b.push_back(bind(1, p.original_path + path, q)); };
    if (o.leg) {
        down(".leg.from", o.leg->from);
        down(".leg.to", o.leg->to);
    }
    if (o.arm) down(".arm.at", o.arm->at);
    if (o.brace) down(".brace.from", o.brace->from);
    for (std::size_t k = 0; k < o.fasteners.size(); ++k) down(fmt::format(".fasteners[{}].at[1]", k), o.fasteners[k].at.y);
    const double middle = o.leg ? (o.leg->from.value + o.leg->to.value) / 2 : 0;
    Grip& g = add(out, HandleKind::bracket, p.path, p.here->name, "bracket " + p.here->name, {p.here->x.value, middle, 0}, std::move(b));
    const std::string also = follows(c, p);
    if (!also.empty()) g.handle.follows = "up and down: " + also;
}

void parts(const model::Case& c, const Pair& p, Grips& out)
{
    const model::Bracket& o = *p.original;
    const double x = p.here->x.value;
    const std::string also = follows(c, p), of = " of bracket " + p.here->name;
    const auto part = [&](HandleKind kind, const std::string& key, const std::string& what, const Vec3& at, std::vector<Binding> b) {
        add(out, kind, p.path + key, p.here->name, what + of, at, std::move(b)).handle.follows = also;
    };
    const auto one = [&](int axis, const std::string& key, const model::Quantity& q) { return bind(axis, p.original_path + key, q); };
    if (o.leg) {
        part(HandleKind::bracket_leg_end, ".leg.from", "lower end of the leg", {x, o.leg->from.value, 0}, {one(1, ".leg.from", o.leg->from)});
        part(HandleKind::bracket_leg_end, ".leg.to", "upper end of the leg", {x, o.leg->to.value, 0}, {one(1, ".leg.to", o.leg->to)});
    }
    if (o.arm) part(HandleKind::arm, ".arm", "end of the arm", {x, o.arm->at.value, o.arm->length.value}, {one(1, ".arm.at", o.arm->at), one(2, ".arm.length", o.arm->length)});
    if (o.brace) part(HandleKind::brace, ".brace.from", "foot of the brace", {x, o.brace->from.value, 0}, {one(1, ".brace.from", o.brace->from)});
    if (o.brace && o.arm) part(HandleKind::brace, ".brace.to_arm", "upper end of the brace", {x, o.arm->at.value, o.brace->to_arm.value}, {one(2, ".brace.to_arm", o.brace->to_arm)});
    for (std::size_t k = 0; o.arm && k < o.mounts.size(); ++k) {
        const std::string key = fmt::format(".mounts[{}].at", k);
        part(HandleKind::mount, fmt::format(".mounts[{}]", k), fmt::format("mount {}", k + 1), {x, o.arm->at.value, o.mounts[k].at.value}, {one(2, key, o.mounts[k].at)});
    }
}

/// Up and down a hole moves along its leg. Sideways there is no room for it: the holes lie on the leg's gauge line and a washer
/// leaves the leg after a few millimetres. Who pulls a hole sideways means the bracket, so the bracket comes along.
void fasteners(const model::Case& c, const Pair& p, Grips& out)
{
    const model::Bracket& o = *p.original;
    const std::string along = "sideways its bracket goes along", also = follows(c, p);
    for (std::size_t k = 0; k < o.fasteners.size(); ++k) {
        const model::Fastener& f = o.fasteners[k];
        const std::string key = fmt::format(".fasteners[{}]", k), name = name_of(p, f);
        std::vector<Binding> b = sideways(p);
        b.push_back(bind(1, p.original_path + key + ".at[1]", f.at.y));
        Grip& g = add(out, HandleKind::fastener, p.path + key, name, "fastener " + name, {p.across(f.at.x.value), f.at.y.value, 0}, std::move(b));
        if (p.own()) g.handle.follows = along + (also.empty() ? "" : "; up and down: " + also);
        else g.handle.follows = fmt::format("it is the {} of {} in bracket {}: up and down both move; {}", p.mirrored ? "mirror" : "copy", f.name, o.name, along);
    }
}

} // namespace

void bracket_grips(const model::Case& c, Grips& out)
{
    for (std::size_t i = 0; i < c.brackets.size(); ++i)
        if (const auto p = pair_of(c, i)) {
            whole(c, *p, out);
            parts(c, *p, out);
            fasteners(c, *p, out);
        }
}

} // namespace thinskin::gui
