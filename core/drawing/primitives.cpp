#include "drawing/primitives.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace thinskin::drawing {

namespace {

constexpr double line_pitch = 1.2; ///< room a line of text takes over its letter height

/// A narrow closed head of ISO 129-1 with its tip at `tip`, pointing along the unit vector.
Polyline head(Point tip, Point towards, double size, const Part& part)
{
    const double half = size / 6;
    const Point back{tip.x - size * towards.x, tip.y - size * towards.y};
    return {{tip, {back.x - half * towards.y, back.y + half * towards.x}, {back.x + half * towards.y, back.y - half * towards.x}}, true, true, Style::dimension, part};
}

struct Bounds {
    double x0 = std::numeric_limits<double>::infinity(), y0 = x0, x1 = -x0, y1 = -x0;
    void take(Point p)
    {
        x0 = std::min(x0, p.x);
        y0 = std::min(y0, p.y);
        x1 = std::max(x1, p.x);
        y1 = std::max(y1, p.y);
    }
    void take(const Box& b)
    {
        take(Point{b.x0, b.y0});
        take(Point{b.x1, b.y1});
    }
};

} // namespace

DimensionMarks marks(const Dimension& d)
{
    const double size = 0.8 * d.text_height, past = 0.6 * d.text_height;
    const Point a = d.level ? Point{d.a.x, d.at} : Point{d.at, d.a.y};
    const Point b = d.level ? Point{d.b.x, d.at} : Point{d.at, d.b.y};
    const double length = std::hypot(b.x - a.x, b.y - a.y);
    const Point along = length > 0 ? Point{(b.x - a.x) / length, (b.y - a.y) / length} : Point{1, 0};
    const auto extension = [&](Point from, Point to) {
        const double l = std::hypot(to.x - from.x, to.y - from.y), f = l > 0 ? (l + past) / l : 1;
        return Line{from, {from.x + f * (to.x - from.x), from.y + f * (to.y - from.y)}, Style::dimension, d.part};
    };
    DimensionMarks m;
    m.lines = {extension(d.a, a), extension(d.b, b), {a, b, Style::dimension, d.part}};
    m.heads = {head(a, {-along.x, -along.y}, size, d.part), head(b, along, size, d.part)};
    m.text = {{(a.x + b.x) / 2, (a.y + b.y) / 2}, d.text, d.text_height, Anchor::middle, !d.level, d.part};
    (d.level ? m.text.at.y : m.text.at.x) += (d.level ? 0.75 : -0.75) * d.text_height;
    return m;
}

bool intersect(const Box& a, const Box& b) { return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1; }

Box joined(const Box& a, const Box& b) { return {std::min(a.x0, b.x0), std::min(a.y0, b.y0), std::max(a.x1, b.x1), std::max(a.y1, b.y1)}; }

std::size_t letters(const std::string& text)
{
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

Box box_of(const Text& t)
{
    const double w = static_cast<double>(letters(t.text)) * letter_width * t.height, h = line_pitch * t.height / 2;
    const double before = t.anchor == Anchor::start ? 0 : t.anchor == Anchor::middle ? w / 2 : w;
    if (t.upright) return {t.at.x - h, t.at.y - before, t.at.x + h, t.at.y - before + w};
    return {t.at.x - before, t.at.y - h, t.at.x - before + w, t.at.y + h};
}

std::vector<Text> View::all_texts() const
{
    std::vector<Text> all = texts;
    for (const Dimension& d : dimensions) all.push_back(marks(d).text);
    return all;
}

Box View::extent() const
{
    Bounds b;
    for (const Polyline& p : polylines)
        for (Point q : p.points) b.take(q);
    for (const Circle& c : circles) b.take(Box{c.centre.x - c.radius, c.centre.y - c.radius, c.centre.x + c.radius, c.centre.y + c.radius});
    const auto take_line = [&b](const Line& l) {
        b.take(l.a);
        b.take(l.b);
    };
    for (const Line& l : lines) take_line(l);
    for (const Dimension& d : dimensions)
        for (const Line& l : marks(d).lines) take_line(l);
    for (const Text& t : all_texts()) b.take(box_of(t));
    return b.x0 <= b.x1 ? Box{b.x0, b.y0, b.x1, b.y1} : Box{};
}

} // namespace thinskin::drawing
