// Ports: exact means of the shape functions over a rectangle that may span several elements (theory FE-5).
#include "fem/hermite.h"
#include "fem/skin_elements.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace thinskin::fem {
namespace {

using Weights = std::vector<std::pair<int, double>>;

/// Pieces of [lo, hi] in each interval of the lines: interval, places in it, share of the whole length. A point has one piece.
struct Piece { int interval = 0; double s0 = 0, s1 = 0, length = 0, share = 0; };

std::vector<Piece> pieces(const std::vector<double>& lines, double lo, double hi)
{
    std::vector<Piece> out;
    const Interval first = find_interval(lines, lo);
    if (!(hi - lo > 1e-9)) return {{first.index, first.s, first.s, first.length, 1}};
    for (int k = first.index; k + 1 < static_cast<int>(lines.size()) && lines[static_cast<std::size_t>(k)] < hi; ++k) {
        const double a = lines[static_cast<std::size_t>(k)], b = lines[static_cast<std::size_t>(k) + 1];
        const double p = std::max(a, lo), q = std::min(b, hi);
        if (q > p) out.push_back({k, (p - a) / (b - a), (q - a) / (b - a), b - a, (q - p) / (hi - lo)});
    }
    return out;
}

/// Means of the Hermite functions; index = 2 line + (0 value, 1 slope).
Weights hermite_means(const std::vector<Piece>& parts)
{
    Weights w;
    for (const Piece& p : parts)
        for (const GaussPoint& g : gauss_2) {
            const Hermite f = hermite(p.length, p.s0 + g.s * (p.s1 - p.s0));
            for (int k = 0; k < 4; ++k) w.emplace_back(2 * p.interval + k, p.share * g.weight * f.value[static_cast<std::size_t>(k)]);
        }
    return w;
}

/// Means of the hat functions; index = line.
Weights hat_means(const std::vector<Piece>& parts)
{
    Weights w;
    for (const Piece& p : parts) {
        const double s = 0.5 * (p.s0 + p.s1);
        w.emplace_back(p.interval, p.share * (1 - s));
        w.emplace_back(p.interval + 1, p.share * s);
    }
    return w;
}

/// Means of the bubble 4 s (1 - s); index = interval.
Weights bubble_means(const std::vector<Piece>& parts)
{
    Weights w;
    for (const Piece& p : parts)
        for (const GaussPoint& g : gauss_2) {
            const double s = p.s0 + g.s * (p.s1 - p.s0);
            w.emplace_back(p.interval, p.share * g.weight * 4 * s * (1 - s));
        }
    return w;
}

Weights joined(Weights w)
{
    std::stable_sort(w.begin(), w.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    Weights out;
    for (const auto& [index, value] : w) {
        if (!out.empty() && out.back().first == index) out.back().second += value;
        else out.emplace_back(index, value);
    }
    return out;
}

struct Range { double lo = 0, hi = 0; };

Range clip(double at, double half, double size, const std::string& who)
{
    if (!(half >= 0) || !std::isfinite(half) || !std::isfinite(at)) throw std::invalid_argument(who + "footprint is not a number");
    const Range r{std::max(at - half, 0.0), std::min(at + half, size)};
    if (!(r.lo <= r.hi)) throw std::invalid_argument(who + "footprint lies outside the panel");
    return r;
}

void refuse_openings(const Skin& skin, const Range& x, const Range& y, const std::string& who)
{
    constexpr double touch = 1e-3; // mm; a footprint may lie against the opening's edge
    for (const Opening& o : skin.model.openings)
        if (x.hi > o.x0 + touch && x.lo < o.x1 - touch && y.hi > o.y0 + touch && y.lo < o.y1 - touch)
            throw std::invalid_argument(who + "footprint reaches into opening '" + o.name + "'");
}

void append_membrane(const Skin& skin, const std::vector<Piece>& px, const std::vector<Piece>& py, bool is_u, Row& row)
{
    const SkinLayout l{skin.grid};
    const Weights hx = joined(hat_means(px)), hy = joined(hat_means(py));
    for (const auto& [j, wy] : hy)
        for (const auto& [i, wx] : hx) row.emplace_back(l.dof(i, j, is_u ? 4 : 5), wx * wy);
    const Weights bubbles = joined(bubble_means(is_u ? px : py));
    for (const auto& [line, wl] : is_u ? hy : hx)
        for (const auto& [k, wb] : bubbles) {
            const int dof = is_u ? skin.elements->x_bubble[static_cast<std::size_t>(k + (l.nx() - 1) * line)]
                                 : skin.elements->y_bubble[static_cast<std::size_t>(line + l.nx() * k)];
            if (dof >= 0) row.emplace_back(dof, wl * wb);
        }
}

} // namespace

Row skin_port(const Skin& skin, const Footprint& where, SkinDirection direction)
{
    const std::string who = "skin '" + skin.model.name + "', port: ";
    const Range rx = clip(where.x, where.half_x, skin.model.width, who), ry = clip(where.y, where.half_y, skin.model.height, who);
    refuse_openings(skin, rx, ry, who);
    const std::vector<Piece> px = pieces(skin.grid.x, rx.lo, rx.hi), py = pieces(skin.grid.y, ry.lo, ry.hi);
    Row row;
    if (direction == SkinDirection::z) {
        const SkinLayout l{skin.grid};
        const Weights hx = joined(hermite_means(px)), hy = joined(hermite_means(py));
        for (const auto& [b, wy] : hy)
            for (const auto& [a, wx] : hx) row.emplace_back(l.dof(a / 2, b / 2, a % 2 + 2 * (b % 2)), wx * wy);
    } else {
        append_membrane(skin, px, py, direction == SkinDirection::x, row);
    }
    std::sort(row.begin(), row.end());
    return row;
}

Vector skin_pressure(const Skin& skin, double pressure)
{
    const SkinModel& m = skin.model;
    Vector load = Vector::Zero(skin.body.dofs);
    if (m.openings.empty()) {
        add(load, skin_port(skin, {m.width / 2, m.height / 2, m.width / 2, m.height / 2}, SkinDirection::z), pressure * m.width * m.height);
        return load;
    }
    const SkinLayout l{skin.grid};
    const std::vector<double>&x = skin.grid.x, &y = skin.grid.y;
    for (std::size_t j = 0; j + 1 < y.size(); ++j)
        for (std::size_t i = 0; i + 1 < x.size(); ++i) {
            if (skin.elements->missing[l.element(static_cast<int>(i), static_cast<int>(j))]) continue;
            const double hx = (x[i + 1] - x[i]) / 2, hy = (y[j + 1] - y[j]) / 2;
            add(load, skin_port(skin, {x[i] + hx, y[j] + hy, hx, hy}, SkinDirection::z), pressure * 4 * hx * hy);
        }
    return load;
}

} // namespace thinskin::fem
