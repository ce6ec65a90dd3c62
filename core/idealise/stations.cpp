#include "idealise/structure.h"

#include <algorithm>
#include <cmath>

namespace thinskin::idealise {

namespace {

constexpr double apart = 0.5; ///< stations closer than this are one, mm

int nearest(const std::vector<double>& stations, double at)
{
    std::size_t best = 0;
    for (std::size_t i = 1; i < stations.size(); ++i)
        if (std::abs(stations[i] - at) < std::abs(stations[best] - at)) best = i;
    return static_cast<int>(best);
}

struct Range { double low, high; };

Range leg_x(const layout::AngleBar& leg)
{
    const double a = leg.heel(0).x, b = leg.toe(0).x;
    return {std::min(a, b), std::max(a, b)};
}

/// Extent of an angle's lying leg; only for angles along x or y.
struct Extent { Range x, y; };
Extent extent(const layout::AngleBar& bar)
{
    const layout::Point p[] = {bar.heel(0), bar.toe(0), bar.heel(bar.length()), bar.toe(bar.length())};
    Extent e{{p[0].x, p[0].x}, {p[0].y, p[0].y}};
    for (const layout::Point& q : p) {
        e.x = {std::min(e.x.low, q.x), std::max(e.x.high, q.x)};
        e.y = {std::min(e.y.low, q.y), std::max(e.y.high, q.y)};
    }
    return e;
}

bool along_an_axis(const layout::AngleBar& bar) { return std::abs(bar.along.x) > 1 - 1e-9 || std::abs(bar.along.y) > 1 - 1e-9; }

void tidy(std::vector<double>& v)
{
    std::sort(v.begin(), v.end());
    v.erase(std::unique(v.begin(), v.end(), [](double a, double b) { return b - a < apart; }), v.end());
}

void fill(std::vector<double>& v, double spacing)
{
    tidy(v);
    const std::vector<double> fixed = v;
    for (std::size_t i = 0; i + 1 < fixed.size(); ++i) {
        const int parts = static_cast<int>(std::ceil((fixed[i + 1] - fixed[i]) / spacing - 1e-9));
        for (int k = 1; k < parts; ++k) v.push_back(fixed[i] + (fixed[i + 1] - fixed[i]) * k / parts);
    }
    tidy(v);
}

std::vector<double> leg_stations(const layout::Layout& l, const layout::Bracket& b, double spacing)
{
    const double low = b.leg.from.y, high = b.leg.to.y;
    std::vector<double> y{low, high};
    for (const layout::Angle& a : l.angles) {
        const Extent e = extent(a.bar);
        const Range x = leg_x(b.leg);
        if (!along_an_axis(a.bar) || e.x.low >= x.high || e.x.high <= x.low) continue;
        for (double edge : {e.y.low, e.y.high})
            if (edge > low && edge < high) y.push_back(edge);
    }
    for (const layout::Plate& p : l.plates) {
        const Range x = leg_x(b.leg);
        if (p.low.x >= x.high || p.high.x <= x.low) continue;
        for (double edge : {p.low.y, p.high.y})
            if (edge > low && edge < high) y.push_back(edge);
    }
    fill(y, spacing);
    return y;
}

bool on_skin(const layout::Layout& l, layout::Point p) { return p.x > 0 && p.x < l.width && p.y > 0 && p.y < l.height; }

/// Overlap of the leg's width with an angle at height y, or nothing.
std::optional<Range> overlap_x(const layout::Bracket& b, const layout::AngleBar& bar, double y)
{
    const Range x = leg_x(b.leg);
    if (!along_an_axis(bar)) return std::nullopt;
    const Extent e = extent(bar);
    const Range both{std::max(x.low, e.x.low), std::min(x.high, e.x.high)};
    if (both.high - both.low < apart || y < e.y.low - 1e-9 || y > e.y.high + 1e-9) return std::nullopt;
    return both;
}

/// The same with a plate.
std::optional<Range> overlap_x(const layout::Bracket& b, const layout::Plate& p, double y)
{
    const Range x = leg_x(b.leg), both{std::max(x.low, p.low.x), std::min(x.high, p.high.x)};
    if (both.high - both.low < apart || y < p.low.y - 1e-9 || y > p.high.y + 1e-9) return std::nullopt;
    return both;
}

bool near_a_bolt(const layout::Layout& l, layout::Point p)
{
    for (const layout::Stack* s : l.outer_stacks())
        if (std::hypot(s->at.x - p.x, s->at.y - p.y) < 30) return true;
    return false;
}

bool over_the_frame(const layout::Layout& l, const layout::Angle& a, double s)
{
    for (const layout::MemberEnd& e : a.ends)
        if (e.tied) {
            const double port = std::hypot(e.port.x - a.bar.from.x, e.port.y - a.bar.from.y);
            const double width = std::max({l.frames[0].width, l.frames[1].width, l.frames[2].width, l.frames[3].width, 40.0});
            if (std::abs(s - port) < width) return true;
        }
    return false;
}

} // namespace

int BracketBody::leg_node(double y) const { return nearest(leg_y, y); }
int BracketBody::arm_node(double z) const { return first_arm_node + nearest(arm_z, z); }
int AngleBody::node(double s) const { return nearest(stations, s); }

std::vector<ContactPoint> leg_contacts(const layout::Layout& l, const layout::Bracket& b, double spacing)
{
    std::vector<ContactPoint> out;
    const Range x = leg_x(b.leg);
    for (double y : leg_stations(l, b, spacing)) {
        int behind = -1, plate = -1;
        Range where = x;
        for (std::size_t i = 0; i < l.angles.size(); ++i)
            if (const auto both = overlap_x(b, l.angles[i].bar, y)) {
                behind = static_cast<int>(i);
                where = *both;
            }
        for (std::size_t i = 0; i < l.plates.size() && behind < 0; ++i)
            if (const auto both = overlap_x(b, l.plates[i], y)) {
                plate = static_cast<int>(i);
                where = *both;
            }
        for (double at : {where.low, where.high})
            if (on_skin(l, {at, y})) out.push_back({{at, y}, behind, plate});
    }
    return out;
}

std::vector<ContactPoint> foot_contacts(const layout::Layout& l, const layout::Foot& f)
{
    std::vector<ContactPoint> out;
    const Range fx{f.stack.at.x - f.half_x, f.stack.at.x + f.half_x}, fy{f.stack.at.y - f.half_y, f.stack.at.y + f.half_y};
    const auto corners = [&](const Range& x, const Range& y, int angle, int plate) {
        if (!(x.high - x.low > apart && y.high - y.low > apart)) return;
        for (double px : {x.low, x.high})
            for (double py : {y.low, y.high}) out.push_back({{px, py}, angle, plate});
    };
    for (std::size_t i = 0; i < l.angles.size(); ++i) {
        if (!along_an_axis(l.angles[i].bar)) continue;
        const Extent e = extent(l.angles[i].bar);
        const Range x{std::max(fx.low, e.x.low), std::min(fx.high, e.x.high)}, y{std::max(fy.low, e.y.low), std::min(fy.high, e.y.high)};
        corners(x, y, static_cast<int>(i), -1);
    }
    for (std::size_t i = 0; i < l.plates.size(); ++i) {
        const layout::Plate& p = l.plates[i];
        corners({std::max(fx.low, p.low.x), std::min(fx.high, p.high.x)}, {std::max(fy.low, p.low.y), std::min(fy.high, p.high.y)}, -1, static_cast<int>(i));
    }
    const std::size_t backed = out.size();
    for (double px : {fx.low, fx.high})
        for (double py : {fy.low, fy.high}) {
            const bool taken = std::any_of(out.begin(), out.begin() + static_cast<std::ptrdiff_t>(backed), [&](const ContactPoint& c) { return std::hypot(c.at.x - px, c.at.y - py) < 1; });
            if (!taken && on_skin(l, {px, py})) out.push_back({{px, py}, -1, -1});
        }
    return out;
}

std::vector<layout::Point> angle_contacts(const layout::Layout& l, const layout::Angle& a, double spacing)
{
    std::vector<layout::Point> out;
    const double length = a.bar.length();
    for (int end = 0; end < 2; ++end) {
        if (a.ends[static_cast<std::size_t>(end)].tied) continue;
        const double s = end == 0 ? 0.0 : length;             // a floating end bears on the skin at heel and toe
        for (layout::Point p : {a.bar.heel(s), a.bar.toe(s)})
            if (on_skin(l, p)) out.push_back(p);
    }
    const int parts = static_cast<int>(std::ceil(length / spacing - 1e-9));
    for (int k = 1; k < parts; ++k) {
        const double s = length * k / parts;
        const layout::Point p = a.bar.on_bolt_line(s);
        if (on_skin(l, p) && !near_a_bolt(l, p) && !over_the_frame(l, a, s)) out.push_back(p);
    }
    return out;
}

} // namespace thinskin::idealise
