#include "casefile/shapes.h"
#include "handles/grips.h"

#include <fmt/format.h>

namespace thinskin::gui {
namespace {

void rib(const model::Rib& r, const std::string& path, Grips& out)
{
    add(out, HandleKind::rib_end, path + ".from", r.name, "start of " + r.name, {r.from.x.value, r.from.y.value, 0}, of_point(path + ".from", r.from));
    add(out, HandleKind::rib_end, path + ".to", r.name, "end of " + r.name, {r.to.x.value, r.to.y.value, 0}, of_point(path + ".to", r.to));
}

/// Plates and boards: the whole by its middle, with its fasteners; its upper right corner changes its size.
template <class T> void sheet(const T& s, const std::string& path, HandleKind kind, HandleKind corner_kind, const char* what, Grips& out)
{
    const double w = s.box.size.x.value, h = s.box.size.y.value, x = s.box.from.x.value, y = s.box.from.y.value;
    std::vector<Binding> b = of_point(path + ".box.from", s.box.from);
    for (std::size_t k = 0; k < s.fasteners.size(); ++k) join(b, of_point(fmt::format("{}.fasteners[{}].at", path, k), s.fasteners[k].at));
    add(out, kind, path, s.name, fmt::format("{} {}", what, s.name), {x + w / 2, y + h / 2, 0}, std::move(b));
    add(out, corner_kind, path + ".box.size", s.name, fmt::format("corner of {}", s.name), {x + w, y + h, 0}, of_point(path + ".box.size", s.box.size));
    for (std::size_t k = 0; k < s.fasteners.size(); ++k) {
        const model::Fastener& f = s.fasteners[k];
        const std::string key = fmt::format("{}.fasteners[{}]", path, k);
        add(out, HandleKind::fastener, key, f.name, "fastener " + f.name, {f.at.x.value, f.at.y.value, 0}, of_point(key + ".at", f.at));
    }
}

/// The end called left or bottom first, as the case has it.
void strap(const model::Strap& s, const std::string& path, Grips& out)
{
    const model::Point2 from{s.from.x, s.from.y}, to{s.to.x, s.to.y};
    const bool upright = casefile::stands_upright(from, to);
    const bool forward = upright ? from.y.value <= to.y.value : from.x.value <= to.x.value;
    for (int e = 0; e < 2; ++e) {
        const bool at_from = (e == 0) == forward;
        const model::Point3& at = at_from ? s.from : s.to;
        const model::MemberEnd& end = e == 0 ? s.ends.first : s.ends.second;
        const std::string side(casefile::end_names(upright)[static_cast<std::size_t>(e)]), key = path + (at_from ? ".from" : ".to");
        std::vector<Binding> b = of_point(key, at);
        for (std::size_t k = 0; k < end.fasteners.size(); ++k) {
            const model::EndFastener& f = end.fasteners[k];
            const std::string f_path = fmt::format("{}.ends.{}.fasteners[{}]", path, side, k), name = f.name.empty() ? fmt::format("{} {} {}", s.name, side, k + 1) : f.name;
            join(b, of_point(f_path + ".at", f.at));
            add(out, HandleKind::end_fastener, f_path, name, "end fastener " + name, {f.at.x.value, f.at.y.value, at.z.value}, of_point(f_path + ".at", f.at));
        }
        add(out, HandleKind::strap_end, key, s.name, fmt::format("{} end of {}", side, s.name), {at.x.value, at.y.value, at.z.value}, std::move(b));
    }
}

} // namespace

void member_grips(const model::Case& c, Grips& out)
{
    const model::Reinforcement& r = c.reinforcement;
    for (std::size_t i = 0; i < c.panel.ribs.size(); ++i) rib(c.panel.ribs[i], fmt::format("panel.ribs[{}]", i), out);
    for (std::size_t i = 0; i < r.backing_plates.size(); ++i)
        sheet(r.backing_plates[i], fmt::format("reinforcement.backing_plates[{}]", i), HandleKind::plate, HandleKind::plate_corner, "plate", out);
    for (std::size_t i = 0; i < r.boards.size(); ++i)
        sheet(r.boards[i], fmt::format("reinforcement.boards[{}]", i), HandleKind::board, HandleKind::board_corner, "board", out);
    for (std::size_t i = 0; i < r.straps.size(); ++i) strap(r.straps[i], fmt::format("reinforcement.straps[{}]", i), out);
}

} // namespace thinskin::gui
