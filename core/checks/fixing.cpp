#include "checks/checks.h"
#include "checks/fastener_rows.h"
#include "strength/bearing.h"
#include "strength/spacing.h"

namespace thinskin::checks {

namespace {

std::vector<results::FastenerForce> of_fastener(const std::vector<results::FastenerForce>& all, const std::string& name)
{
    std::vector<results::FastenerForce> out;
    for (const auto& f : all)
        if (f.name == name) out.push_back(f);
    return out;
}

struct Apart { base::Resistance need; const base::Card* card; double d; };

/// What one kind of fastener asks of its neighbour.
Apart spacing_of(const layout::Hardware& h)
{
    using Type = layout::Hardware::Type;
    if (h.type == Type::screw) return {strength::screw_spacing({h.d}), &strength::screw_spacing_card(), h.d};
    if (h.type == Type::rivet) return {strength::rivet_spacing({h.d}), &strength::rivet_spacing_card(), h.d};
    if (h.type == Type::insert) return {strength::insert_spacing({h.hole}), &strength::insert_spacing_card(), h.hole};
    return {strength::minimum_spacing({h.d}), &strength::minimum_spacing_card(), h.d};
}

/// Spacing of the fasteners of one part: of two neighbours the one that asks for more.
void spacing_rows(const std::string& part, const std::vector<const layout::Stack*>& all, std::vector<results::Check>& out)
{
    for (std::size_t i = 0; i < all.size(); ++i)
        for (std::size_t j = i + 1; j < all.size(); ++j) {
            const layout::Stack &p = *all[i], &q = *all[j];
            if (!p.hardware.not_covered.empty() || !q.hardware.not_covered.empty()) continue;
            const Apart a = spacing_of(p.hardware), b = spacing_of(q.hardware);
            const Apart& more = a.need.capacity >= b.need.capacity ? a : b;
            const Place place{fmt::format("spacing/{}/{}", p.name, q.name), "fixing", part, fmt::format("spacing of {} and {}", p.name, q.name), false, "", ""};
            const bool known = a.need.covered && b.need.covered;
            out.push_back(against(place, {"geometry", known ? more.need.capacity : NAN, true, ""}, base::covered(std::hypot(p.at.x - q.at.x, p.at.y - q.at.y), 1), *more.card, {{"d", more.d}}));
        }
}

/// Feet of the item straight on the panel.
void feet_rows(const Demands& d, const layout::Item& item, std::vector<results::Check>& out)
{
    std::vector<const layout::Stack*> all;
    for (const layout::Foot& f : item.feet) {
        all.push_back(&f.stack);
        const auto rows = stack_rows({&f.stack, "fixing", item.name, of_fastener(*d.fasteners, f.stack.name)});
        out.insert(out.end(), rows.begin(), rows.end());
    }
    spacing_rows(item.name, all, out);
}

} // namespace

std::vector<results::Check> fixing(const Demands& d)
{
    std::vector<results::Check> out;
    for (const layout::Bracket& b : d.layout->brackets) {
        std::vector<const layout::Stack*> on_leg;
        for (const layout::Stack& s : b.fasteners) on_leg.push_back(&s);
        for (const layout::Stack& s : b.fasteners) {
            const auto forces = of_fastener(*d.fasteners, s.name);
            const auto rows = stack_rows({&s, "fixing", b.name, forces});
            out.insert(out.end(), rows.begin(), rows.end());
            out.push_back(lying_leg_row({"lying leg/" + s.name, "bracket", b.name, fmt::format("lying leg of {} at {}", b.leg.name, s.name), false, "", ""}, b.leg, s, on_leg, forces));
        }
        spacing_rows(b.name, on_leg, out);
    }
    if (d.layout->item && !d.layout->item->feet.empty()) feet_rows(d, *d.layout->item, out);
    return out;
}

} // namespace thinskin::checks
