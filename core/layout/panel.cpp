#include "layout/resolver.h"

#include <fmt/core.h>

namespace thinskin::layout {

namespace {

constexpr const char* side_names[] = {"left", "right", "bottom", "top"};

Frame frame(Resolver& r, const model::Frame& f, int side)
{
    const std::string path = fmt::format("panel.frame.{}", side_names[side]);
    Frame out;
    out.given = true;
    out.width = f.width.value;
    out.depth = f.depth.value;
    out.seen = f.seen;
    if (f.inner) out.inner = r.sheet(*f.inner, path + ".inner");
    out.section_text = f.section;
    if (!f.section.empty()) out.section = r.section(f.section, f.at, path + ".section");
    return out;
}

} // namespace

void resolve_panel(Resolver& r)
{
    const model::Panel& p = r.source.panel;
    r.out.width = p.width.value;
    r.out.height = p.height.value;
    r.out.faces = p.faces;
    r.out.kind = p.kind;
    r.out.skin = r.sheet(p.skin, "panel.skin");
    r.out.edges = p.edges;
    r.out.in_plane_fixed = p.edges_in_plane == model::InPlane::fixed;
    r.out.cavity = p.cavity ? p.cavity->depth.value : 0;
    for (std::size_t i = 0; i < 4; ++i)
        if (p.frame[i]) r.out.frames[i] = frame(r, *p.frame[i], static_cast<int>(i));
    resolve_ribs(r);
    resolve_openings(r);
    if (p.skin.crown.value > 0) r.not_covered("panel", "crown of the skin", fmt::format("a skin with a crown of {} is not flat; its shape and its snapping through are not in the model", p.skin.crown.text), "panel.skin.crown: 0 mm");
    if (p.kind == model::PanelKind::sliding_door || p.kind == model::PanelKind::top_hinged_door)
        for (const char* group : {"fixing", "reinforcement", "bracket", "panel", "door"})
            r.not_covered(group, "panel", "sliding and top-hinged doors are not covered", "panel.kind");
}

} // namespace thinskin::layout
