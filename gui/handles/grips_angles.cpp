#include "casefile/shapes.h"
#include "handles/grips.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

/// An angle that is a copy is the original shifted by the difference of their `from`. Moving one end alone of a congruent family
/// therefore shifts `from` of every member, or `to` of the original; fasteners go with their end.
namespace thinskin::gui {
namespace {

struct Family {
    const model::Angle* here = nullptr;
    const model::Angle* original = nullptr;
    std::string path, original_path;
    double dx = 0, dy = 0;                                     ///< from the original to this one
    std::vector<std::pair<std::string, const model::Angle*>> copies; ///< all copies of the original
    bool upright = false, forward = true;                      ///< forward: the end that is called left or bottom is at `from`
    [[nodiscard]] bool own() const { return here == original; }
    [[nodiscard]] const model::MemberEnd& end(int e) const { return e == 0 ? original->ends.first : original->ends.second; }
    [[nodiscard]] std::string end_name(int e) const { return std::string(casefile::end_names(upright)[static_cast<std::size_t>(e)]); }
    [[nodiscard]] std::string end_path(int e) const { return original_path + ".ends." + end_name(e); }
};

std::optional<Family> family_of(const model::Case& c, std::size_t i)
{
    const auto& all = c.reinforcement.angles;
    const auto path = [](std::size_t k) { return fmt::format("reinforcement.angles[{}]", k); };
    Family f;
    f.here = &all[i];
    f.path = path(i);
    const std::string& root = all[i].copy_of.empty() ? all[i].name : all[i].copy_of;
    for (std::size_t k = 0; k < all.size(); ++k) {
        if (all[k].copy_of.empty() && all[k].name == root) {
            f.original = &all[k];
            f.original_path = path(k);
        } else if (all[k].copy_of == root) {
            f.copies.emplace_back(path(k), &all[k]);
        }
    }
    if (!f.original || !f.original->to) return std::nullopt;
    f.dx = f.here->from.x.value - f.original->from.x.value;
    f.dy = f.here->from.y.value - f.original->from.y.value;
    f.upright = casefile::stands_upright(f.original->from, *f.original->to);
    f.forward = f.upright ? f.original->from.y.value <= f.original->to->y.value : f.original->from.x.value <= f.original->to->x.value;
    return f;
}

std::string follows(const Family& f)
{
    if (!f.own()) return fmt::format("{} is a copy of {}: this moves both", f.here->name, f.original->name);
    std::string names;
    for (const auto& copy : f.copies) names += (names.empty() ? "" : ", ") + copy.second->name;
    return names.empty() ? "" : names + " follows";
}

std::vector<Binding> of_fasteners(const Family& f, int e)
{
    std::vector<Binding> b;
    if (f.end(e).same_as_other) return b; // reflected about the middle: they follow by themselves
    for (std::size_t k = 0; k < f.end(e).fasteners.size(); ++k) join(b, of_point(fmt::format("{}.fasteners[{}].at", f.end_path(e), k), f.end(e).fasteners[k].at));
    return b;
}

/// The bolts of brackets and feet that go through a level angle go up and down with it: the holes are in it.
std::string bolts_on(const model::Case& c, const Family& f, std::vector<Binding>& b)
{
    const model::Angle& o = *f.original;
    const double y = f.here->from.y.value, low = std::min(o.from.x.value, o.to->x.value) + f.dx, high = std::max(o.from.x.value, o.to->x.value) + f.dx;
    std::string names;
    const auto take = [&](const std::string& path, const std::string& name, const model::Point2& at) {
        if (std::abs(at.y.value - y) > 0.5 || at.x.value < low || at.x.value > high) return;
        b.push_back(bind(1, path + ".at[1]", at.y));
        names += (names.empty() ? "" : ", ") + name;
    };
    if (o.from.y.value != o.to->y.value) return names;
    for (std::size_t i = 0; i < c.brackets.size(); ++i)
        for (std::size_t k = 0; k < c.brackets[i].fasteners.size(); ++k) take(fmt::format("brackets[{}].fasteners[{}]", i, k), c.brackets[i].fasteners[k].name, c.brackets[i].fasteners[k].at);
    for (std::size_t k = 0; c.item && k < c.item->fixings.size(); ++k) take(fmt::format("item.fixings[{}]", k), c.item->fixings[k].name, c.item->fixings[k].at);
    return names;
}

void whole(const model::Case& c, const Family& f, Grips& out)
{
    const model::Angle& o = *f.original;
    std::vector<Binding> b = of_point(f.path + ".from", f.here->from);
    const std::string bolts = bolts_on(c, f, b);
    if (f.own()) {
        join(b, of_point(f.path + ".to", *o.to));
        join(b, of_fasteners(f, 0));
        join(b, of_fasteners(f, 1));
    }
    const Vec3 middle = {(o.from.x.value + o.to->x.value) / 2 + f.dx, (o.from.y.value + o.to->y.value) / 2 + f.dy, 0};
    Grip& g = add(out, HandleKind::angle, f.path, f.here->name, "angle " + f.here->name, middle, std::move(b));
    if (!bolts.empty()) g.handle.follows = "up and down the bolts through it go along: " + bolts;
}

/// A level angle stays level: its ends move along it. An inclined one turns.
void keep_level(const Family& f, std::vector<Binding>& b)
{
    const model::Angle& o = *f.original;
    const bool level = o.from.y.value == o.to->y.value, plumb = o.from.x.value == o.to->x.value;
    if (level || plumb) std::erase_if(b, [level](const Binding& k) { return k.axis == (level ? 1 : 0); });
}

void end(const Family& f, int e, Grips& out)
{
    const model::Angle& o = *f.original;
    const bool at_from = (e == 0) == f.forward;
    const model::Point2& at = at_from ? o.from : *o.to;
    std::vector<Binding> b = of_point(f.original_path + (at_from ? ".from" : ".to"), at);
    if (at_from)
        for (const auto& copy : f.copies) join(b, of_point(copy.first + ".from", copy.second->from));
    join(b, of_fasteners(f, e));
    keep_level(f, b);
    Grip& g = add(out, HandleKind::angle_end, f.path + (at_from ? ".from" : ".to"), f.here->name, fmt::format("{} end of {}", f.end_name(e), f.here->name), {at.x.value + f.dx, at.y.value + f.dy, 0}, std::move(b));
    g.handle.follows = follows(f);
}

/// As layout reflects them: along the member about its middle.
Vec3 reflected(const model::Angle& a, const model::Point2& p)
{
    const double dx = a.to->x.value - a.from.x.value, dy = a.to->y.value - a.from.y.value, length2 = dx * dx + dy * dy;
    const double s = length2 > 0 ? ((p.x.value - (a.to->x.value + a.from.x.value) / 2) * dx + (p.y.value - (a.to->y.value + a.from.y.value) / 2) * dy) / length2 : 0;
    return {p.x.value - 2 * s * dx, p.y.value - 2 * s * dy, 0};
}

void end_fasteners(const Family& f, int e, Grips& out)
{
    const model::Angle& o = *f.original;
    const bool same = f.end(e).same_as_other;
    const int source = same ? 1 - e : e;
    const std::string also = follows(f);
    for (std::size_t k = 0; k < f.end(source).fasteners.size(); ++k) {
        const model::EndFastener& k_f = f.end(source).fasteners[k];
        std::vector<Binding> b = of_point(fmt::format("{}.fasteners[{}].at", f.end_path(source), k), k_f.at);
        Vec3 at = {k_f.at.x.value, k_f.at.y.value, 0};
        std::string why;
        if (same) {
            at = reflected(o, k_f.at);
            b[f.upright ? 1 : 0].sign = -1;
            const bool level = o.from.y.value == o.to->y.value || o.from.x.value == o.to->x.value;
            if (!level) b.clear();
            why = fmt::format("the {} end is the same as the {}: {}", f.end_name(e), f.end_name(source), level ? "this moves both" : "move the fastener there");
        }
        const std::string name = k_f.name.empty() ? fmt::format("{} {} {}", f.here->name, f.end_name(e), k + 1) : k_f.name + (same ? " mirrored" : "");
        Grip& g = add(out, HandleKind::end_fastener, fmt::format("{}.ends.{}.fasteners[{}]", f.path, f.end_name(e), k), name, "end fastener " + name, {at[0] + f.dx, at[1] + f.dy, 0}, std::move(b));
        g.handle.follows = why.empty() || also.empty() ? why + also : why + "; " + also;
    }
}

} // namespace

void angle_grips(const model::Case& c, Grips& out)
{
    for (std::size_t i = 0; i < c.reinforcement.angles.size(); ++i)
        if (const auto f = family_of(c, i)) {
            whole(c, *f, out);
            for (int e = 0; e < 2; ++e) end(*f, e, out);
            for (int e = 0; e < 2; ++e) end_fasteners(*f, e, out);
        }
}

} // namespace thinskin::gui
