// Where the grid lines go (theory FE-18), and what is refused before anything is built.
#include "fem/skin_elements.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace thinskin::fem {
namespace {

constexpr double same_line = 1e-3; // mm; closer lines are one line

struct Lines { std::vector<double> at; std::vector<int> interval_class; };

/// Break points, sorted and joined, each gap divided evenly; all intervals of one gap have exactly one length.
Lines fill(std::vector<double> breaks, double spacing, std::vector<double>& lengths)
{
    std::sort(breaks.begin(), breaks.end());
    std::vector<double> kept{breaks.front()};
    for (const double b : breaks)
        if (b - kept.back() > same_line) kept.push_back(b);
    if (breaks.back() - kept.back() > 0) kept.back() = breaks.back(); // the far edge wins over a rib beside it
    Lines lines{{kept.front()}, {}};
    for (std::size_t g = 0; g + 1 < kept.size(); ++g) {
        const double gap = kept[g + 1] - kept[g];
        const int n = std::max(1, static_cast<int>(std::ceil(gap / spacing - 1e-9)));
        for (int k = 1; k < n; ++k) lines.at.push_back(kept[g] + gap * k / n);
        lines.at.push_back(kept[g + 1]);
        const double length = gap / n;
        const auto same = std::find_if(lengths.begin(), lengths.end(), [&](double l) { return std::abs(l - length) < 1e-12 * length; });
        const int index = static_cast<int>(same - lengths.begin());
        if (same == lengths.end()) lengths.push_back(length);
        lines.interval_class.insert(lines.interval_class.end(), static_cast<std::size_t>(n), index);
    }
    return lines;
}

int nearest(const std::vector<double>& lines, double p)
{
    const auto it = std::min_element(lines.begin(), lines.end(), [&](double a, double b) { return std::abs(a - p) < std::abs(b - p); });
    return static_cast<int>(it - lines.begin());
}

void number_bubbles(const SkinModel& model, GridAndElements& g)
{
    const SkinLayout l{g.grid};
    SkinElements& e = *g.elements;
    e.x_bubble.assign(static_cast<std::size_t>((l.nx() - 1) * l.ny()), -1);
    e.y_bubble.assign(static_cast<std::size_t>(l.nx() * (l.ny() - 1)), -1);
    g.dofs = l.grid_dofs();
    for (const RibModel& rib : model.ribs) {
        const RibLine r = rib_line(g.grid, rib);
        for (int k = r.first; k < r.last; ++k) {
            int& bubble = r.along_x ? e.x_bubble[static_cast<std::size_t>(k + (l.nx() - 1) * r.line)]
                                    : e.y_bubble[static_cast<std::size_t>(r.line + l.nx() * k)];
            if (bubble < 0) bubble = g.dofs++;
        }
    }
}

} // namespace

RibLine rib_line(const SkinGrid& grid, const RibModel& rib)
{
    const bool along_x = std::abs(rib.from[1] - rib.to[1]) <= same_line;
    const std::size_t a = along_x ? 0 : 1;
    const std::vector<double>& along = along_x ? grid.x : grid.y;
    const int p = nearest(along, rib.from[a]), q = nearest(along, rib.to[a]);
    return {along_x, nearest(along_x ? grid.y : grid.x, rib.from[1 - a]), std::min(p, q), std::max(p, q)};
}

namespace {

void cut_openings(const SkinModel& model, GridAndElements& g)
{
    const SkinLayout l{g.grid};
    const std::vector<double>&x = g.grid.x, &y = g.grid.y;
    g.elements->missing.assign(static_cast<std::size_t>((l.nx() - 1) * (l.ny() - 1)), 0);
    for (int j = 0; j + 1 < l.ny(); ++j)
        for (int i = 0; i + 1 < l.nx(); ++i) {
            const auto a = static_cast<std::size_t>(i), b = static_cast<std::size_t>(j);
            g.elements->missing[l.element(i, j)] = in_opening(model, 0.5 * (x[a] + x[a + 1]), 0.5 * (y[b] + y[b + 1]));
        }
}

} // namespace

GridAndElements make_grid(const SkinModel& model)
{
    std::vector<double> x{0, model.width}, y{0, model.height};
    for (const RibModel& rib : model.ribs)
        for (const auto& end : {rib.from, rib.to}) x.push_back(end[0]), y.push_back(end[1]);
    for (const Opening& o : model.openings) {
        for (const double p : {o.x0, o.x1})
            if (p > 0 && p < model.width) x.push_back(p);
        for (const double p : {o.y0, o.y1})
            if (p > 0 && p < model.height) y.push_back(p);
    }
    GridAndElements g;
    g.elements = std::make_shared<SkinElements>();
    Lines lx = fill(std::move(x), model.spacing, g.elements->x_length), ly = fill(std::move(y), model.spacing, g.elements->y_length);
    g.grid = {std::move(lx.at), std::move(ly.at)};
    g.elements->x_class = std::move(lx.interval_class);
    g.elements->y_class = std::move(ly.interval_class);
    number_bubbles(model, g);
    cut_openings(model, g);
    return g;
}

bool in_opening(const SkinModel& model, double x, double y)
{
    const auto inside = [&](const Opening& o) {
        return x > o.x0 + same_line && x < o.x1 - same_line && y > o.y0 + same_line && y < o.y1 - same_line;
    };
    return std::any_of(model.openings.begin(), model.openings.end(), inside);
}

namespace {

/// The interval a point was found in, and those it touches: it may lie on a line.
std::vector<Interval> with_neighbours(const std::vector<double>& lines, const Interval& at)
{
    std::vector<Interval> out{at};
    const auto length = [&](int i) { return lines[static_cast<std::size_t>(i) + 1] - lines[static_cast<std::size_t>(i)]; };
    if (at.index > 0 && at.s * at.length <= same_line) out.push_back({at.index - 1, 1, length(at.index - 1)});
    if (at.index + 2 < static_cast<int>(lines.size()) && (1 - at.s) * at.length <= same_line) out.push_back({at.index + 1, 0, length(at.index + 1)});
    return out;
}

} // namespace

ElementPlace find_element(const Skin& skin, double x, double y, const char* who)
{
    if (!(x >= 0 && x <= skin.model.width && y >= 0 && y <= skin.model.height)) throw std::invalid_argument(std::string(who) + "outside the panel");
    const SkinLayout l{skin.grid};
    const Interval at_x = find_interval(skin.grid.x, x), at_y = find_interval(skin.grid.y, y);
    if (!skin.elements->missing[l.element(at_x.index, at_y.index)]) return {at_x, at_y};
    for (const Interval& iy : with_neighbours(skin.grid.y, at_y))
        for (const Interval& ix : with_neighbours(skin.grid.x, at_x))
            if (!skin.elements->missing[l.element(ix.index, iy.index)]) return {ix, iy};
    throw std::invalid_argument(std::string(who) + "inside an opening");
}

Interval find_interval(const std::vector<double>& lines, double p)
{
    const auto up = std::upper_bound(lines.begin(), lines.end(), p);
    const auto last = static_cast<std::ptrdiff_t>(lines.size()) - 2;
    const auto k = std::clamp<std::ptrdiff_t>(up - lines.begin() - 1, 0, last);
    const double a = lines[static_cast<std::size_t>(k)], h = lines[static_cast<std::size_t>(k) + 1] - a;
    return {static_cast<int>(k), (p - a) / h, h};
}

namespace {

void require(bool good, const std::string& what)
{
    if (!good) throw std::invalid_argument(what);
}

bool finite_and_not_negative(double v) { return std::isfinite(v) && v >= 0; }

void check_rib(const SkinModel& m, const RibModel& r)
{
    const std::string who = "skin '" + m.name + "', rib '" + r.name + "': ";
    const auto inside = [&](const std::array<double, 2>& p) {
        return p[0] >= -same_line && p[0] <= m.width + same_line && p[1] >= -same_line && p[1] <= m.height + same_line;
    };
    require(inside(r.from) && inside(r.to), who + "its ends must lie in the panel");
    const double dx = std::abs(r.to[0] - r.from[0]), dy = std::abs(r.to[1] - r.from[1]);
    require((dx <= same_line) != (dy <= same_line), who + "it must run parallel to x or to y and have a length");
    require(std::max(dx, dy) > 10 * same_line, who + "it is too short");
    for (const double v : {r.E, r.G, r.A, r.I_normal, r.I_lateral, r.J}) require(finite_and_not_negative(v), who + "section values must be finite and not negative");
    require(std::isfinite(r.offset_z), who + "offset_z must be finite");
    for (const RibEnd& e : r.ends) require(finite_and_not_negative(e.rotational_stiffness), who + "an end's rotational stiffness must be finite and not negative");
}

void check_opening(const SkinModel& m, const Opening& o)
{
    const std::string who = "skin '" + m.name + "', opening '" + o.name + "': ";
    for (const double v : {o.x0, o.x1, o.y0, o.y1}) require(std::isfinite(v), who + "its sides must be finite");
    require(o.x1 - o.x0 > 10 * same_line && o.y1 - o.y0 > 10 * same_line, who + "it must have a width and a height");
    require(o.x1 > 0 && o.y1 > 0 && o.x0 < m.width && o.y0 < m.height, who + "it lies outside the panel");
    for (const RibModel& r : m.ribs) {
        const double x0 = std::min(r.from[0], r.to[0]), x1 = std::max(r.from[0], r.to[0]);
        const double y0 = std::min(r.from[1], r.to[1]), y1 = std::max(r.from[1], r.to[1]);
        const bool apart = x1 <= o.x0 + same_line || x0 >= o.x1 - same_line || y1 <= o.y0 + same_line || y0 >= o.y1 - same_line;
        require(apart, who + "rib '" + r.name + "' runs through it");
    }
}

} // namespace

void check_skin_model(const SkinModel& m, bool loose)
{
    const std::string who = "skin '" + m.name + "': ";
    require(std::isfinite(m.width) && m.width > 0 && std::isfinite(m.height) && m.height > 0, who + "width and height must be positive");
    require(std::isfinite(m.spacing) && m.spacing > 0, who + "grid spacing must be positive");
    require(m.width / m.spacing < 400 && m.height / m.spacing < 400, who + "more than 400 grid intervals along a side");
    require(std::isfinite(m.mid_z), who + "mid_z must be finite");
    require(std::isfinite(m.sheet.E) && m.sheet.E > 0 && std::isfinite(m.sheet.thickness) && m.sheet.thickness > 0, who + "E and thickness must be positive");
    require(m.sheet.nu >= 0 && m.sheet.nu < 0.5, who + "Poisson's ratio must lie in 0 <= nu < 0.5");
    bool all_free = true;
    for (const EdgeHold& e : m.edges) {
        require(finite_and_not_negative(e.rotational_stiffness), who + "an edge's rotational stiffness must be finite and not negative");
        all_free = all_free && e.kind == Hold::free;
    }
    for (const RibModel& r : m.ribs) check_rib(m, r);
    for (const Opening& o : m.openings) check_opening(m, o);
    for (const auto& p : m.held_points) require(p[0] >= 0 && p[0] <= m.width && p[1] >= 0 && p[1] <= m.height, who + "held points must lie in the panel");
    if (all_free && !loose && m.held_points.empty()) throw std::runtime_error(who + "mechanism: all four edges are free, nothing holds the skin");
}

} // namespace thinskin::fem
