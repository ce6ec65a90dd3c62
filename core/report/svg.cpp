#include "report/svg.h"

#include <algorithm>
#include <iterator>
#include <fmt/format.h>

// On paper: mm, y down. Line widths 0.35 and 0.18 mm, dashes after the habits of ISO 128-2 in those widths.
namespace thinskin::report {
namespace {

using drawing::PartKind;
using drawing::Point;
using drawing::Style;

constexpr double gap_between_views = 4; // mm on paper

constexpr const char* style_sheet =
    "<style>.ts path,.ts circle{fill:none;stroke:#1b1f24;stroke-linejoin:round}"
    ".ts text{font-family:'DejaVu Sans','Liberation Sans',Arial,sans-serif;fill:#1b1f24;stroke:#fff!important;stroke-width:.7!important;paint-order:stroke;stroke-linejoin:round}"
    ".ts .v{stroke-width:.35}.ts .t{stroke-width:.18}.ts .h{stroke-width:.2;stroke-dasharray:1.4 .7}"
    ".ts .c{stroke-width:.15;stroke-dasharray:3.2 .6 .5 .6}.ts .p{stroke-width:.18;stroke-dasharray:3.2 .6 .4 .6 .4 .6}"
    ".ts .f{fill:#1b1f24;stroke-width:.1}"
    ".ts .angle,.ts .rib,.ts .plate,.ts .board,.ts .strap{stroke:#8a5200}.ts .bracket{stroke:#1d4f7c}.ts .zone{stroke:#a3281c}"
    ".ts .item{stroke:#37597a}.ts .item.f{fill:#37597a;fill-opacity:.07;stroke-width:.18}"
    ".ts .load{stroke:#a3281c}.ts .load.f,.ts text.load{fill:#a3281c}.ts .d{stroke-width:.12;stroke:#59616b}.ts .d.f{fill:#59616b}"
    ".ts text.note{font-weight:bold}</style>";

std::string_view class_of(Style s)
{
    switch (s) {
    case Style::visible: return "v";
    case Style::thin: return "t";
    case Style::hidden: return "h";
    case Style::centre: return "c";
    case Style::phantom: return "p";
    case Style::dimension: return "d";
    }
    return "v";
}

std::string_view class_of(PartKind k)
{
    static constexpr std::string_view names[]{"skin", "frame", "rib", "angle", "plate", "board", "strap", "bracket", "fastener", "endfix", "item", "mass", "hinge", "latch",
                                                            "rest", "gauge", "zone", "load", "dim", "note", "checkstrap"};
    static_assert(std::size(names) == static_cast<std::size_t>(PartKind::check_strap) + 1, "a name for every kind of part");
    return names[static_cast<std::size_t>(k)];
}

std::string number(double v)
{
    std::string s = fmt::format("{:.2f}", v);
    while (s.back() == '0') s.pop_back();
    if (s.back() == '.') s.pop_back();
    return s == "-0" ? "0" : s;
}

/// One view's marks on paper.
class Writer {
public:
    Writer(double scale, Point origin) : scale_(scale), origin_(origin) {}

    std::string write(const drawing::View& v)
    {
        for (const drawing::Polyline& p : v.polylines) path(p.points, p.closed, p.filled, p.style, p.part);
        for (const drawing::Line& l : v.lines) path({l.a, l.b}, false, false, l.style, l.part);
        for (const drawing::Circle& c : v.circles)
            out_ += fmt::format("<circle {} cx=\"{}\" cy=\"{}\" r=\"{}\"/>\n", attributes(c.style, c.part, c.filled), x(c.centre), y(c.centre), number(c.radius / scale_));
        for (const drawing::Dimension& d : v.dimensions) {
            const drawing::DimensionMarks m = drawing::marks(d);
            for (const drawing::Line& l : m.lines) path({l.a, l.b}, false, false, l.style, l.part);
            for (const drawing::Polyline& p : m.heads) path(p.points, true, true, p.style, p.part);
        }
        for (const drawing::Text& t : v.all_texts()) text(t);
        return out_;
    }

private:
    std::string x(Point p) const { return number((p.x + origin_.x) / scale_); }
    std::string y(Point p) const { return number((origin_.y - p.y) / scale_); }

    static std::string attributes(Style s, const drawing::Part& part, bool filled)
    {
        return fmt::format("class=\"{}{} {}\" data-part=\"{}\"", class_of(s), filled ? " f" : "", class_of(part.kind), escaped(part.name));
    }

    void path(const std::vector<Point>& points, bool closed, bool filled, Style s, const drawing::Part& part)
    {
        std::string d;
        for (const Point& p : points) d += fmt::format("{}{} {}", d.empty() ? "M" : "L", x(p), y(p));
        out_ += fmt::format("<path {} d=\"{}{}\"/>\n", attributes(s, part, filled), d, closed ? "Z" : "");
    }

    void text(const drawing::Text& t)
    {
        const double size = t.height / scale_;
        const char* anchor = t.anchor == drawing::Anchor::start ? "start" : t.anchor == drawing::Anchor::middle ? "middle" : "end";
        // The base line lies below the middle of the letters by about 0.36 of their size.
        const std::string turn = t.upright ? fmt::format(" transform=\"rotate(-90 {} {})\"", x(t.at), y(t.at)) : "";
        out_ += fmt::format("<text class=\"{}\" data-part=\"{}\" x=\"{}\" y=\"{}\" dy=\"{}\" font-size=\"{}\" text-anchor=\"{}\"{}>{}</text>\n", class_of(t.part.kind), escaped(t.part.name), x(t.at), y(t.at),
                            number(0.36 * size), number(size), anchor, turn, escaped(t.text));
    }

    double scale_;
    Point origin_;
    std::string out_;
};

/// Sizes in mm on paper, 1 mm of paper round everything; boxes in the drawing's mm.
struct PaperSize { double width = 0, height = 0, elevation_width = 0, elevation_height = 0; drawing::Box elevation, side; };

PaperSize paper(const Sheet& s)
{
    PaperSize p;
    p.elevation = s.drawing.elevation.extent();
    p.side = s.drawing.side.extent();
    p.elevation_width = (p.elevation.x1 - p.elevation.x0) / s.scale;
    p.elevation_height = (p.elevation.y1 - p.elevation.y0) / s.scale;
    const double side_width = (p.side.x1 - p.side.x0) / s.side_scale;
    if (s.stacked) {
        p.width = std::max(p.elevation_width, side_width) + 2;
        p.height = p.elevation_height + (p.side.y1 - p.side.y0) / s.side_scale + gap_between_views + 2;
        return p;
    }
    const drawing::Box both = drawing::joined(p.elevation, p.side);
    p.width = p.elevation_width + side_width + gap_between_views + 2;
    p.height = (both.y1 - both.y0) / s.scale + 2;
    return p;
}

constexpr double usual_scales[] = {1.0, 2.0, 2.5, 5.0, 7.5, 10.0, 12.5, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 75.0, 100.0};

bool fits(const Sheet& s, const SheetSize& room)
{
    const PaperSize p = paper(s);
    return p.width <= room.width && p.height <= room.height;
}

/// The side view below the elevation drawn larger, up to twice, where the room lets it: the list of parts wants to stand on the sheet too.
Sheet with_larger_side(const Sheet& s, const layout::Layout& l, const results::Outcome* outcome, const SheetSize& room)
{
    for (const double scale : usual_scales) {
        if (scale < s.scale / 2) continue;
        if (scale >= s.scale) break;
        Sheet larger = s;
        larger.side_scale = scale;
        larger.drawing.side = drawing::draw(l, outcome, {.text_height = room.text_height * scale, .notes = room.notes}).side;
        if (fits(larger, room)) return larger;
    }
    return s;
}

} // namespace

Sheet draw_to_fit(const layout::Layout& l, const results::Outcome* outcome, const SheetSize& room)
{
    Sheet s;
    for (const double scale : usual_scales) {
        s.scale = s.side_scale = scale;
        s.drawing = drawing::draw(l, outcome, {.text_height = room.text_height * scale, .notes = room.notes});
        for (const bool stacked : {false, true}) {
            s.stacked = stacked;
            if (fits(s, room)) return stacked ? with_larger_side(s, l, outcome, room) : s;
        }
    }
    s.stacked = false;
    return s;
}

std::string svg(const Sheet& s, std::string_view caption)
{
    const PaperSize p = paper(s);
    // Below each other the side view starts where the elevation does.
    const double top = (s.stacked ? p.elevation.y1 : std::max(p.elevation.y1, p.side.y1)) + s.scale;
    const double side_top = s.stacked ? p.side.y1 + (1 + p.elevation_height + gap_between_views) * s.side_scale : top;
    const double side_left = 1 + (s.stacked ? 0.0 : p.elevation_width + gap_between_views); // mm on paper
    std::string out = fmt::format("<svg class=\"ts\" xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-label=\"{}\" width=\"{}mm\" height=\"{}mm\" viewBox=\"0 0 {} {}\">\n", escaped(caption),
                                  number(p.width), number(p.height), number(p.width), number(p.height));
    out += style_sheet;
    out += "\n<g>\n" + Writer(s.scale, {s.scale - p.elevation.x0, top}).write(s.drawing.elevation);
    out += "</g>\n<g>\n" + Writer(s.side_scale, {side_left * s.side_scale - p.side.x0, side_top}).write(s.drawing.side);
    return out + "</g>\n</svg>\n";
}

} // namespace thinskin::report
