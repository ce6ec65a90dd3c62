#include "drawing/drawing.h"
#include "drawing/canvas.h"

#include <algorithm>

namespace thinskin::drawing {

namespace {

void title(View& v, const std::string& text, Anchor anchor, double y, double h)
{
    v.title = text;
    v.texts.push_back({{0, y}, text, 1.1 * h, anchor, false, {PartKind::note, "title"}});
}

std::string faces(const layout::Layout& l)
{
    switch (l.faces) {
    case model::Faces::rear: return "rear";
    case model::Faces::front: return "front";
    case model::Faces::left: return "left side";
    case model::Faces::right: return "right side";
    }
    return "";
}

/// Small marks whose leader ends beside them instead of in them.
bool is_symbol(PartKind k) { return k == PartKind::fastener || k == PartKind::end_fixing || k == PartKind::gauge || k == PartKind::hinge; }

std::vector<Label> number_labels(const std::vector<Numbered>& parts, bool elevation, const Options& o)
{
    std::vector<Label> all;
    for (const Numbered& n : parts) {
        std::string text = std::to_string(n.row.number);
        const auto note = o.notes.find(n.row.checked_as);
        if (note != o.notes.end() && !n.row.checked_as.empty()) text += ": " + note->second;
        for (const Point& p : elevation ? n.in_elevation : n.in_side) {
            // Parts behind each other from the side share one label.
            const auto same = std::find_if(all.begin(), all.end(), [&p](const Label& l) { return l.target.x == p.x && l.target.y == p.y; });
            if (!elevation) text = std::to_string(n.row.number);
            if (same != all.end()) same->text += ", " + text;
            else all.push_back({p, text, n.row.part, 1.1 * o.text_height, is_symbol(n.row.part.kind) ? 0.7 * o.text_height : 0, true});
        }
    }
    return all;
}

/// Of the parts that something is noted about, each at its point nearest to the column.
std::vector<Callout> callouts(const std::vector<Numbered>& parts, const Options& o)
{
    std::vector<Callout> all;
    for (const Numbered& n : parts) {
        const auto note = o.notes.find(n.row.checked_as);
        if (note == o.notes.end() || n.in_elevation.empty()) continue;
        const Point at = *std::max_element(n.in_elevation.begin(), n.in_elevation.end(), [](const Point& a, const Point& b) { return a.x < b.x; });
        all.push_back({at, n.row.name + "  " + note->second, n.row.part});
    }
    return all;
}

} // namespace

Drawing draw(const layout::Layout& l, const results::Outcome* outcome, const Options& options)
{
    Drawing d;
    if (!(l.width > 0 && l.height > 0 && options.text_height > 0)) return d;
    const double h = options.text_height;
    Canvas e(d.elevation), s(d.side);
    draw_item(l, e, s, h);
    draw_panel(l, e, s, h);
    draw_reinforcement(l, e, s);
    draw_brackets(l, e, s);
    draw_fasteners(l, e, s, h);
    draw_zones(l, e);
    draw_door(l, e, s, h);
    const std::vector<Label> forces = draw_loads(l, outcome, options.load_case, e, s, h, options.figures);
    const Box side_of_parts = d.side.extent();
    if (options.every_dimension) dimension(l, d.elevation, d.side, h, options.figures);
    else overall_dimensions(l, d.elevation, h, options.figures);
    const double top = std::max(d.elevation.extent().y1, d.side.extent().y1) + 1.5 * h;
    title(d.elevation, "from outside (" + faces(l) + ")", Anchor::start, top, h);
    title(d.side, "inside | outside", Anchor::middle, top, h);

    const std::vector<Numbered> parts = parts_list(l);
    for (const Numbered& n : parts) d.legend.push_back(n.row);
    const double right = l.door && l.door->has_hinges ? std::max(l.width, l.door->pin_x) : l.width;
    const bool window = options.labels == Labels::callouts;
    std::vector<Label> figures;
    for (const PointNote& n : options.at_points) figures.push_back({n.at, n.text, {PartKind::note, "figure"}, h, 0.5 * h, false});
    place_labels(d.elevation, figures, {0, 0, l.width, l.height}, 6);
    place_labels(d.elevation, names(l, h), {0, 0, l.width, l.height}, window ? 2.6 : 0);
    const double column = options.every_dimension ? std::max(right + 3.5 * h, d.elevation.extent().x1 + 1.5 * h) : right + 3.5 * h;
    if (window) place_callouts(d.elevation, callouts(parts, options), column, 1.5 * h, l.height, h);
    else place_labels(d.elevation, number_labels(parts, true, options), {0, 0.2 * h, right + 9 * h, l.height});
    const Box room{std::min(side_of_parts.x0, -8 * h), 0.2 * h, std::max(side_of_parts.x1, 5 * h), l.height};
    place_labels(d.side, forces, room, window ? 4 : 0);
    if (!window) place_labels(d.side, number_labels(parts, false, options), room);
    return d;
}

} // namespace thinskin::drawing
