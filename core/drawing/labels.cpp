#include "drawing/canvas.h"

#include <algorithm>
#include <cmath>
#include <limits>

// How a label finds its place: candidates on rings round its point, the cheapest one is taken. Costs in text heights:
//   another text        may not be met at all as long as any candidate is free of it
//   beside another text 5, less than half a height away from it: the two would be read as one
//   a line crossed      1.5 for a visible or filled edge, 0.7 for the others
//   distance            1 for each text height between the point and the nearest side of the text
//   leader over a text  4
namespace thinskin::drawing {

namespace {

constexpr double text_over_text = 1000, text_beside_text = 5;

struct Segment { Point a, b; double weight = 0; };

/// Does the segment meet the box? Clipped interval by interval.
bool meets(const Box& box, Point a, Point b)
{
    double t0 = 0, t1 = 1;
    const auto cut = [&](double p, double d, double lower, double upper) {
        if (d == 0) return p > lower && p < upper;
        double u = (lower - p) / d, v = (upper - p) / d;
        if (u > v) std::swap(u, v);
        t0 = std::max(t0, u);
        t1 = std::min(t1, v);
        return t0 < t1;
    };
    return cut(a.x, b.x - a.x, box.x0, box.x1) && cut(a.y, b.y - a.y, box.y0, box.y1);
}

double weight(Style s) { return s == Style::visible ? 1.5 : 0.7; }

void add_ring(std::vector<Segment>& all, const Circle& c)
{
    constexpr int sides = 12;
    const auto at = [&c](int i) {
        const double a = 2 * 3.14159265358979323846 * i / sides;
        return Point{c.centre.x + c.radius * std::cos(a), c.centre.y + c.radius * std::sin(a)};
    };
    for (int i = 0; i < sides; ++i) all.push_back({at(i), at(i + 1), weight(c.style)});
}

std::vector<Segment> segments(const View& v)
{
    std::vector<Segment> all;
    for (const Line& l : v.lines) all.push_back({l.a, l.b, weight(l.style)});
    for (const Circle& c : v.circles) add_ring(all, c);
    for (const Polyline& p : v.polylines)
        for (std::size_t i = 0; i + (p.closed ? 0 : 1) < p.points.size(); ++i) all.push_back({p.points[i], p.points[(i + 1) % p.points.size()], p.filled ? 1.5 : weight(p.style)});
    for (const Dimension& d : v.dimensions)
        for (const Line& l : marks(d).lines) all.push_back({l.a, l.b, 0.7});
    return all;
}

Point end_of_leader(const Box& b, Point target)
{
    return {target.x > b.x1 ? b.x1 : target.x < b.x0 ? b.x0 : (b.x0 + b.x1) / 2, target.y > b.y1 ? b.y1 : target.y < b.y0 ? b.y0 : (b.y0 + b.y1) / 2};
}

class Placer {
public:
    Placer(View& v, const Box& room, double furthest) : view_(v), room_(room), furthest_(furthest), lines_(segments(v))
    {
        for (const Text& t : v.all_texts()) taken_.push_back(box_of(t));
    }

    void put(const Label& l)
    {
        Text best;
        double least = furthest_ > 0 ? text_over_text : std::numeric_limits<double>::infinity();
        for (const double ring : {0.7, 1.5, 2.6, 4.0, 6.0, 9.0, 13.0}) {
            if (furthest_ > 0 && ring > furthest_) break;
            for (int i = 0; i < 24; ++i) {
                const Text t = candidate(l, ring * l.height + l.clear, i);
                const double c = cost(l, t, least - ring) + ring;
                if (c < least) {
                    least = c;
                    best = t;
                }
            }
        }
        take(l, best);
    }

private:
    /// Directions of 15 degrees, up to the right first. The text stands with its nearest side at the ring.
    static Text candidate(const Label& l, double r, int i)
    {
        const double a = (45 + 15.0 * (i % 2 == 0 ? i / 2 : -(i + 1) / 2)) * 3.14159265358979323846 / 180;
        const double c = std::cos(a), s = std::sin(a), w = static_cast<double>(letters(l.text)) * letter_width * l.height;
        const double side = std::abs(c) < 0.2 ? 0 : c > 0 ? 1 : -1;
        Text t{{l.target.x + r * c - (side < 0 ? w : side > 0 ? 0 : w / 2), l.target.y + r * s + (side == 0 ? 0.6 * l.height * (s > 0 ? 1 : -1) : 0)}, l.text, l.height, Anchor::start, false, l.part};
        return t;
    }

    /// Infinite as soon as it is not less than `least` any more.
    double cost(const Label& l, const Text& t, double least) const
    {
        constexpr double no = std::numeric_limits<double>::infinity();
        if (!(least > 0)) return no;
        const Box b = box_of(t);
        if (b.x0 < room_.x0 || b.y0 < room_.y0 || b.x1 > room_.x1 || b.y1 > room_.y1) return std::numeric_limits<double>::infinity();
        double c = 0;
        const double gap = 0.5 * t.height;
        const Box apart{b.x0 - gap, b.y0 - 0.2 * gap, b.x1 + gap, b.y1 + 0.2 * gap};
        for (const Box& other : taken_) c += intersect(b, other) ? text_over_text : intersect(apart, other) ? text_beside_text : 0;
        if (c >= least) return no;
        for (const Segment& s : lines_) {
            c += meets(b, s.a, s.b) ? s.weight : 0;
            if (c >= least) return no;
        }
        if (!l.leader) return c;
        const Point from = end_of_leader(b, l.target);
        for (const Box& other : taken_) c += meets(other, from, l.target) ? 4 : 0;
        return c;
    }

    void take(const Label& l, const Text& t)
    {
        if (t.text.empty()) return; // no candidate within the room
        const Box b = box_of(t);
        taken_.push_back(b);
        view_.texts.push_back(t);
        const Point from = end_of_leader(b, l.target);
        const bool beside = std::hypot(from.x - l.target.x, from.y - l.target.y) < l.clear + 1.3 * l.height;
        if (!l.leader && beside) return;
        const Part note{PartKind::note, l.part.name};
        const double length = std::hypot(l.target.x - from.x, l.target.y - from.y), f = length > l.clear ? (length - l.clear) / length : 0;
        const Point to{from.x + f * (l.target.x - from.x), from.y + f * (l.target.y - from.y)};
        view_.lines.push_back({from, to, Style::dimension, note});
        if (l.leader && l.clear == 0) view_.circles.push_back({l.target, 0.16 * l.height, true, Style::dimension, note});
        lines_.push_back({from, l.target, 1.5});
    }

    View& view_;
    Box room_;
    double furthest_;
    std::vector<Segment> lines_;
    std::vector<Box> taken_;
};

struct Cluster { double sum = 0; int count = 0; std::size_t first = 0; };

} // namespace

void place_labels(View& v, const std::vector<Label>& labels, const Box& room, double furthest)
{
    Placer placer(v, room, furthest);
    for (const Label& l : labels) placer.put(l);
}

void place_callouts(View& v, std::vector<Callout> all, double x, double mark, double top, double height)
{
    std::stable_sort(all.begin(), all.end(), [](const Callout& a, const Callout& b) { return a.target.y < b.target.y; });
    std::vector<double> wanted;
    for (const Callout& c : all) wanted.push_back(c.target.y);
    std::vector<double> places = spread_out(wanted, 1.5 * height);
    for (std::size_t i = places.size(); i-- > 0;) // from the uppermost down
        places[i] = std::min(places[i], i + 1 < places.size() ? places[i + 1] - 1.5 * height : top);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Part note{PartKind::note, all[i].part.name};
        const double start = x - 0.9 * height;
        v.polylines.push_back({{all[i].target, {start, places[i]}, {x - 0.2 * height, places[i]}}, false, false, Style::dimension, note});
        v.circles.push_back({all[i].target, 0.16 * height, true, Style::dimension, note});
        v.texts.push_back({{x + mark, places[i]}, all[i].text, height, Anchor::start, false, all[i].part});
    }
}

std::vector<double> spread_out(const std::vector<double>& wanted, double pitch)
{
    // With the pitch taken off, only the order has to be kept: neighbours in the wrong order share their mean.
    std::vector<Cluster> all;
    const auto mean = [](const Cluster& c) { return c.sum / c.count; };
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        all.push_back({wanted[i] - pitch * static_cast<double>(i), 1, i});
        while (all.size() > 1 && mean(all[all.size() - 2]) > mean(all.back())) {
            all[all.size() - 2].sum += all.back().sum;
            all[all.size() - 2].count += all.back().count;
            all.pop_back();
        }
    }
    std::vector<double> out(wanted.size());
    for (const Cluster& c : all)
        for (std::size_t i = c.first; i < c.first + static_cast<std::size_t>(c.count); ++i) out[i] = mean(c) + pitch * static_cast<double>(i);
    return out;
}

} // namespace thinskin::drawing
