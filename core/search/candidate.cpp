#include "search/candidate.h"

#include "search/space.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::search {

namespace {

constexpr double on_hand = 0.2;

double bolt_points(double d, bool stainless) { return d / 8 * (stainless ? 1.5 : 1); }

double share(const model::Propose& p, const std::string& what) { return listed(p.stock, what) ? on_hand : 1; }

struct Holes { int skin = 0, frame = 0; };

Holes holes_of(const layout::Layout& l)
{
    Holes h;
    h.skin = static_cast<int>(l.outer_stacks().size());
    for (const layout::Angle& a : l.angles)
        for (const layout::MemberEnd& e : a.ends) h.frame += static_cast<int>(e.fasteners.size());
    for (const layout::Strap& s : l.straps)
        for (const layout::StrapEnd& e : s.ends) h.frame += e.to == model::MemberEnd::To::frame ? static_cast<int>(e.fasteners.size()) : 0;
    return h;
}

double steel_points(const layout::Layout& l, const model::Propose& p)
{
    constexpr double a_kg = 1.2, to_cut = 1;
    double points = 0;
    for (const layout::Angle& a : l.angles) points += to_cut + a_kg * a.bar.mass() * share(p, a.bar.section.designation);
    for (const layout::Plate& x : l.plates) points += to_cut + a_kg * x.mass() * share(p, fmt::format("plate {:g}", x.thickness));
    for (const layout::Strap& s : l.straps) points += to_cut + a_kg * s.mass() * share(p, s.section.designation);
    return points;
}

/// Diameter of the fasteners that hold the outer parts.
double diameter(const layout::Layout& l) { return l.outer_stacks().empty() ? 0 : l.outer_stacks().front()->hardware.d; }

} // namespace

int as_printed(double margin)
{
    constexpr double most = 5;
    if (!(margin <= most)) return static_cast<int>(100 * most) + 1;
    return static_cast<int>(std::floor(std::max(margin, -1.0) * 100));
}

bool beats(const Place& a, const Place& b)
{
    if (!no_more(a.worth, b.worth) || a.margin < b.margin) return false;
    return !same(a.worth, b.worth) || a.margin > b.margin || a.order < b.order;
}

void take_worth(const layout::Layout& l, const model::Propose& wishes, Candidate& c)
{
    constexpr double skin_hole = 0.5, frame_hole = 1, points_a_class = 4;
    const Choices& k = c.choices;
    const Holes h = holes_of(l);
    double brackets = 0, legs = 0;
    for (const layout::Bracket& b : l.brackets) brackets += b.mass(), legs += k.down + k.up > 0 || !k.leg.empty() ? 1 : 0;
    c.mass_kg = brackets + l.reinforcement_mass;
    c.skin_holes = h.skin;
    c.points = h.skin * (skin_hole + bolt_points(diameter(l), k.bolt.grade.rfind('A', 0) == 0) * share(wishes, k.bolt.own.empty() ? k.bolt.size : k.bolt.own));
    if (k.ends.bolts > 0) c.points += h.frame * (frame_hole + 0.8 * share(wishes, k.ends.size));
    c.points += legs + steel_points(l, wishes);
    c.worth = {h.skin + h.frame, static_cast<int>(std::ceil(c.mass_kg * 10 - 1e-6)), std::min(9, 1 + static_cast<int>(c.points / points_a_class))};
}

} // namespace thinskin::search
