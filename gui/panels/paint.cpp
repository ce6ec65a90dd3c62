#include "panels/paint.h"
#include "panels/palette.h"
#include "panels/probe.h"
#include "panels/widgets.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace thinskin::gui {
namespace {

using drawing::PartKind;
using drawing::Point;
using drawing::Style;

ImDrawList& ink_on() { return *ImGui::GetWindowDrawList(); }

ImU32 colour_of(const drawing::Part& p, Style s)
{
    if (s == Style::dimension) return palette::faint;
    switch (p.kind) {
    case PartKind::rib: case PartKind::angle: case PartKind::plate: case PartKind::board: case PartKind::strap: return palette::hidden;
    case PartKind::bracket: return palette::bracket;
    case PartKind::zone: case PartKind::load: return palette::fail;
    case PartKind::item: return IM_COL32(0x2A, 0x5F, 0x86, 255);
    case PartKind::dimension: return palette::faint;
    default: return palette::ink;
    }
}

/// Lines of a chosen part are drawn twice: a broad marker first.
struct Pen { ImU32 colour; float width; std::span<const float> dashes; };

constexpr std::array<float, 2> dashed{7, 3.5f};
constexpr std::array<float, 4> chain{16, 3, 2.5f, 3};
constexpr std::array<float, 6> double_chain{16, 3, 2.5f, 3, 2.5f, 3};

Pen pen_of(Style s, ImU32 colour)
{
    const float k = look().scale;
    switch (s) {
    case Style::visible: return {colour, 1.9f * k, {}};
    case Style::thin: return {colour, 1.0f * k, {}};
    case Style::hidden: return {colour, 1.2f * k, dashed};
    case Style::centre: return {colour, 0.9f * k, chain};
    case Style::phantom: return {colour, 1.1f * k, double_chain};
    case Style::dimension: return {colour, 0.8f * k, {}};
    }
    return {colour, 1, {}};
}

/// The part of a stretch within the window's clip rectangle, grown a little: dashes of what cannot be seen cost nothing.
bool clipped(ImVec2& a, ImVec2& b, float& before)
{
    const ImVec2 lo = ink_on().GetClipRectMin(), hi = ink_on().GetClipRectMax();
    float t0 = 0, t1 = 1;
    const ImVec2 d{b.x - a.x, b.y - a.y};
    const auto cut = [&](float p, float q, float lower, float upper) {
        if (std::abs(q) < 1e-6f) return p >= lower && p <= upper;
        float u = (lower - p) / q, v = (upper - p) / q;
        if (u > v) std::swap(u, v);
        t0 = std::max(t0, u);
        t1 = std::min(t1, v);
        return t0 < t1;
    };
    if (!cut(a.x, d.x, lo.x - 20, hi.x + 20) || !cut(a.y, d.y, lo.y - 20, hi.y + 20)) return false;
    const ImVec2 from{a.x + t0 * d.x, a.y + t0 * d.y}, to{a.x + t1 * d.x, a.y + t1 * d.y};
    before = t0 * std::hypot(d.x, d.y);
    a = from;
    b = to;
    return true;
}

/// One stretch of a dashed line; `run` is the length drawn before it, so that dashes go round corners.
void dashes(ImVec2 a, ImVec2 b, const Pen& pen, float& run)
{
    const float whole = std::hypot(b.x - a.x, b.y - a.y);
    const float start = run;
    run += whole;
    float before = 0;
    if (whole < 0.01f || !clipped(a, b, before)) return;
    float period = 0;
    for (const float d : pen.dashes) period += d * look().scale;
    const float length = std::hypot(b.x - a.x, b.y - a.y);
    const ImVec2 u{(b.x - a.x) / length, (b.y - a.y) / length};
    float at = -std::fmod(start + before, period);
    while (at < length)
        for (std::size_t i = 0; i < pen.dashes.size(); ++i) {
            const float from = std::max(at, 0.0f), to = std::min(at + pen.dashes[i] * look().scale, length);
            if (i % 2 == 0 && to > from) ink_on().AddLine({a.x + from * u.x, a.y + from * u.y}, {a.x + to * u.x, a.y + to * u.y}, pen.colour, pen.width);
            at += pen.dashes[i] * look().scale;
        }
}

void stroke(const std::vector<ImVec2>& points, bool closed, const Pen& pen)
{
    if (pen.dashes.empty()) {
        ink_on().AddPolyline(points.data(), static_cast<int>(points.size()), pen.colour, closed ? ImDrawFlags_Closed : ImDrawFlags_None, pen.width);
        return;
    }
    float run = 0;
    for (std::size_t i = 0; i + (closed ? 0 : 1) < points.size(); ++i) dashes(points[i], points[(i + 1) % points.size()], pen, run);
}

std::vector<ImVec2> in_pixels(const std::vector<Point>& points, const Place& place)
{
    std::vector<ImVec2> out;
    for (const Point& p : points) out.push_back(place.of(p));
    return out;
}

std::vector<ImVec2> ring(const drawing::Circle& c, const Place& place)
{
    const float r = static_cast<float>(c.radius) * place.px_per_mm;
    const int sides = std::clamp(static_cast<int>(r * 1.5f), 16, 96);
    std::vector<ImVec2> out;
    const ImVec2 m = place.of(c.centre);
    for (int i = 0; i < sides; ++i) {
        const float a = 6.2831853f * static_cast<float>(i) / static_cast<float>(sides);
        out.push_back({m.x + r * std::cos(a), m.y + r * std::sin(a)});
    }
    return out;
}

class Painter {
public:
    Painter(const Place& place, const PaintOptions& o) : place_(place), o_(o) {}

    void view(const drawing::View& v)
    {
        for (const drawing::Polyline& p : v.polylines)
            if (shown(p.part) && !left_out(p.style)) polyline(p);
        for (const drawing::Line& l : v.lines)
            if (shown(l.part) && !left_out(l.style)) marked({place_.of(l.a), place_.of(l.b)}, false, l.style, l.part);
        for (const drawing::Circle& c : v.circles)
            if (shown(c.part)) circle(c);
        if (o_.manner == Manner::ghost) return;
        for (const drawing::Dimension& d : v.dimensions) {
            const drawing::DimensionMarks m = drawing::marks(d);
            for (const drawing::Line& l : m.lines) marked({place_.of(l.a), place_.of(l.b)}, false, l.style, l.part);
            for (const drawing::Polyline& p : m.heads) fill(p.points, colour(p.part, Style::dimension));
        }
        if (!o_.letters) return;
        for (const drawing::Text& t : v.all_texts())
            if (shown(t.part) && !written_over(t)) words(t);
    }

private:
    [[nodiscard]] bool left_out(Style s) const { return o_.manner == Manner::ghost && s == Style::dimension; }
    [[nodiscard]] bool shown(const drawing::Part& p) const
    {
        if (p.kind == PartKind::load && !o_.loads) return false;
        if (o_.manner != Manner::ghost) return true;
        return p.kind == PartKind::bracket || p.kind == PartKind::fastener || p.kind == PartKind::angle || p.kind == PartKind::item || p.kind == PartKind::mass_centre || p.kind == PartKind::end_fixing || p.kind == PartKind::strap;
    }

    /// Names and figures give way; what a check says stays.
    [[nodiscard]] bool written_over(const drawing::Text& t) const
    {
        if (status_in(t)) return false;
        const drawing::Box box = drawing::box_of(t);
        return std::any_of(o_.no_letters_in.begin(), o_.no_letters_in.end(), [&box](const drawing::Box& b) { return drawing::intersect(box, b); });
    }

    [[nodiscard]] ImU32 colour(const drawing::Part& p, Style s) const
    {
        if (o_.manner == Manner::ghost) return palette::with_alpha(palette::not_covered, 0.55f);
        return colour_of(p, s);
    }

    /// A callout is a name, two blanks and what is noted.
    [[nodiscard]] std::optional<base::Status> status_in(const drawing::Text& t) const
    {
        if (!o_.marks || t.text.rfind("  ") == std::string::npos) return std::nullopt;
        const auto it = o_.marks->find({t.part.kind, t.part.name});
        return it == o_.marks->end() ? std::nullopt : std::optional(it->second);
    }

    void words(const drawing::Text& t)
    {
        const std::optional<base::Status> status = status_in(t);
        const bool figure = status || t.part.kind == PartKind::load;
        const ImU32 c = figure && o_.manner == Manner::greyed ? palette::grey : status ? palette::of(*status) : colour_of(t.part, Style::visible);
        if (same(o_.chosen, t.part) && status) marker(t, palette::chosen | IM_COL32(0, 0, 0, 60));
        else if (same(o_.pointed, t.part) && status) marker(t, palette::pointed);
        lettering(t, place_, c);
        if (!status) return;
        const float size = static_cast<float>(t.height) * place_.px_per_mm * 0.95f;
        const ImVec2 at = place_.of(t.at);
        widgets::mark({at.x - 1.35f * size, at.y - size / 2}, size, *status, c);
    }

    void marker(const drawing::Text& t, ImU32 c) const
    {
        const drawing::Box b = drawing::box_of(t);
        const ImVec2 lo = place_.of({b.x0 - 1.5 * t.height, b.y1}), hi = place_.of({b.x1, b.y0});
        ink_on().AddRectFilled(lo, hi, c);
    }

    void marked(const std::vector<ImVec2>& points, bool closed, Style s, const drawing::Part& part)
    {
        const float k = look().scale;
        if (same(o_.chosen, part)) stroke(points, closed, {palette::chosen | IM_COL32_A_MASK, 6 * k, {}});
        else if (same(o_.pointed, part)) stroke(points, closed, {palette::pointed, 6 * k, {}});
        Pen pen = pen_of(s, colour(part, s));
        if (o_.manner == Manner::ghost) pen.width = k;
        stroke(points, closed, pen);
    }

    void fill(const std::vector<Point>& points, ImU32 c) const
    {
        const std::vector<ImVec2> px = in_pixels(points, place_);
        ink_on().AddConvexPolyFilled(px.data(), static_cast<int>(px.size()), c);
    }

    void polyline(const drawing::Polyline& p)
    {
        const bool item = p.part.kind == PartKind::item;
        if (p.filled && item && o_.manner != Manner::ghost) fill(p.points, palette::with_alpha(palette::item, same(o_.chosen, p.part) ? 0.22f : 0.11f));
        if (p.filled && !item) fill(p.points, colour(p.part, p.style));
        if (!p.filled || item) marked(in_pixels(p.points, place_), p.closed, p.style, p.part);
    }

    void circle(const drawing::Circle& c)
    {
        if (c.filled) ink_on().AddCircleFilled(place_.of(c.centre), std::max(static_cast<float>(c.radius) * place_.px_per_mm, 1.2f), colour(c.part, c.style));
        else marked(ring(c, place_), true, c.style, c.part);
    }

    Place place_;
    PaintOptions o_;
};

} // namespace

bool same(const std::optional<drawing::Part>& a, const drawing::Part& b) { return a && a->kind == b.kind && a->name == b.name; }

void paint(const drawing::View& v, const Place& place, const PaintOptions& options) { Painter(place, options).view(v); }

void lettering(const drawing::Text& t, const Place& place, ImU32 colour)
{
    ImFont* font = look().fonts.lettering;
    const float px = static_cast<float>(t.height) * place.px_per_mm * (lettering_px / lettering_height_px);
    const ImVec2 size = font->CalcTextSizeA(px, FLT_MAX, 0, t.text.data(), t.text.data() + t.text.size());
    const ImVec2 at = place.of(t.at);
    const float back = t.anchor == drawing::Anchor::start ? 0 : t.anchor == drawing::Anchor::middle ? size.x / 2 : size.x;
    ImDrawList& d = ink_on();
    ImVec2 lo{at.x - back, at.y - size.y / 2}, hi{lo.x + size.x, lo.y + size.y};
    if (t.upright) {
        lo = {at.x - size.y / 2, at.y + back - size.x};
        hi = {lo.x + size.y, lo.y + size.x};
    }
    d.AddRectFilled({lo.x - 1, lo.y + (t.upright ? 0.0f : 0.12f) * px}, {hi.x + 1, hi.y - (t.upright ? 0.0f : 0.12f) * px}, palette::with_alpha(palette::paper, 0.78f), 2);
    const int first = d.VtxBuffer.Size;
    // An upright text is written level at a corner that is surely within the clip rectangle, then turned: x to up, y to right.
    const ImVec2 flat = t.upright ? d.GetClipRectMin() : ImVec2{std::round(lo.x), std::round(lo.y)};
    d.AddText(font, px, flat, colour, t.text.data(), t.text.data() + t.text.size());
    if (t.upright)
        for (int i = first; i < d.VtxBuffer.Size; ++i) {
            const ImVec2 p = d.VtxBuffer[i].pos;
            d.VtxBuffer[i].pos = {std::round(lo.x) + p.y - flat.y, std::round(hi.y) - p.x + flat.x};
        }
    probe::text(t.text, {lo.x, lo.y + (t.upright ? 0.0f : 0.1f) * px}, {hi.x, hi.y - (t.upright ? 0.0f : 0.1f) * px});
}

ImU32 band_colour(const drawing::Contours& c, int band)
{
    // Strength grows with the band's distance from zero; the far end of the stronger side is full.
    const int most = std::max(c.last + 1, -c.first);
    const float f = static_cast<float>(band >= 0 ? band + 1 : -band) / static_cast<float>(std::max(most, 1));
    const float a = 0.06f + 0.62f * f;
    return palette::with_alpha(band >= 0 ? IM_COL32(0xE6, 0x9F, 0x00, 255) : IM_COL32(0x00, 0x72, 0xB2, 255), a * (band >= 0 ? 0.9f : 0.75f));
}

void paint(const drawing::Contours& c, const Place& place)
{
    ImDrawList& d = ink_on();
    const ImDrawListFlags flags = d.Flags;
    d.Flags &= ~ImDrawListFlags_AntiAliasedFill; // no seams between neighbours
    for (const drawing::Patch& p : c.patches) {
        const std::vector<ImVec2> px = in_pixels(p.points, place);
        d.AddConvexPolyFilled(px.data(), static_cast<int>(px.size()), band_colour(c, p.band));
    }
    d.Flags = flags;
    for (const drawing::ContourLine& l : c.lines) {
        const ImU32 colour = l.band == 0 ? palette::with_alpha(palette::ink, 0.35f) : palette::with_alpha(band_colour(c, l.band > 0 ? l.band - 1 : l.band), 0.9f);
        d.AddLine(place.of(l.a), place.of(l.b), colour, look().scale * 0.8f);
    }
}

} // namespace thinskin::gui
