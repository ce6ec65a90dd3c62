#include "layout/resolver.h"

#include <algorithm>
#include <fmt/core.h>

/// Feet of an item straight on the panel. What the item is made of is not in the case: its feet are taken as S235.
namespace thinskin::layout {

namespace {

struct FootSize { double width = 0, height = 0, thickness = 0; };

/// "60x60x4 mm", checked by the reader.
FootSize foot_size(Resolver& r, const model::ItemFixing& f, const std::string& path)
{
    const std::size_t space = f.foot.rfind(' ');
    const std::string unit = space == std::string::npos ? "" : f.foot.substr(space);
    std::string sizes = f.foot.substr(0, space);
    std::vector<double> mm;
    while (true) {
        const std::size_t x = sizes.find('x');
        const base::ReadQuantity q = base::read_quantity(sizes.substr(0, x) + unit, base::Dimension::length);
        if (q.ok) mm.push_back(q.quantity.value);
        if (x == std::string::npos) break;
        sizes = sizes.substr(x + 1);
    }
    const bool good = mm.size() == 3 && std::all_of(mm.begin(), mm.end(), [](double v) { return v > 0; });
    if (!good) r.error(f.where, path + ".foot", fmt::format("expected a foot such as 60x60x4 mm, found {}", f.foot));
    return good ? FootSize{mm[0], mm[1], mm[2]} : FootSize{1, 1, 1};
}

void check_foot(Resolver& r, const Foot& f)
{
    const Stack& s = f.stack;
    if (s.at.x - f.half_x < 0 || s.at.y - f.half_y < 0 || s.at.x + f.half_x > r.out.width || s.at.y + f.half_y > r.out.height)
        r.error(s.where, s.name, fmt::format("the foot at {} reaches over the edge of the panel", s.name));
    const double washer = (s.hardware.head_washer ? s.hardware.head_washer->diameter : s.hardware.across_flats) / 2;
    if (washer > std::min(f.half_x, f.half_y)) r.error(s.where, s.name, fmt::format("head or washer of {} is wider than its foot", s.name));
}

} // namespace

void resolve_feet(Resolver& r)
{
    if (!r.out.item || r.source.item->fixings.empty()) return;
    for (std::size_t i = 0; i < r.source.item->fixings.size(); ++i) {
        model::ItemFixing f = r.source.item->fixings[i];
        const std::string path = fmt::format("item.fixings[{}]", i);
        if (f.name.empty()) f.name = fmt::format("foot {}", i + 1);
        const FootSize size = foot_size(r, f, path);
        const Ply ply{"foot " + f.name, Ply::Role::foot, r.material("S235", f.where, path), size.thickness, std::min(size.width, size.height) / 2, "edge of the foot"};
        Foot foot{foot_stack(r, f, ply, path), size.width / 2, size.height / 2};
        check_foot(r, foot);
        r.out.item->feet.push_back(std::move(foot));
    }
    r.caution(fmt::format("the feet of {} are taken as steel S235, as stiff as the item; their own bending and how the item is joined to them is not judged", r.out.item->name));
}

} // namespace thinskin::layout
