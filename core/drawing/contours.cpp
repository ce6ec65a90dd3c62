#include "drawing/contours.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace thinskin::drawing {

namespace {

struct Corner { Point at; double w = 0; };

/// 1, 2 or 5 times a power of ten, at least the wanted one.
double round_step(double wanted)
{
    const double ten = std::pow(10.0, std::floor(std::log10(wanted)));
    for (const double k : {1.0, 2.0, 5.0})
        if (k * ten >= wanted * (1 - 1e-12)) return k * ten;
    return 10 * ten;
}

int band_of(double w, double step) { return static_cast<int>(std::floor(w / step)); }

Point between(const Corner& a, const Corner& b, double w)
{
    const double s = (w - a.w) / (b.w - a.w);
    return {a.at.x + s * (b.at.x - a.at.x), a.at.y + s * (b.at.y - a.at.y)};
}

/// The part of a convex polygon at or above w (keep_above), or at or below it.
std::vector<Corner> cut(const std::vector<Corner>& all, double w, bool keep_above)
{
    std::vector<Corner> kept;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Corner &a = all[i], &b = all[(i + 1) % all.size()];
        const bool a_in = keep_above ? a.w >= w : a.w <= w, b_in = keep_above ? b.w >= w : b.w <= w;
        if (a_in) kept.push_back(a);
        if (a_in != b_in) kept.push_back({between(a, b, w), w});
    }
    return kept;
}

class Cutter {
public:
    explicit Cutter(Contours& out) : out_(out) {}

    void triangle(const std::array<Corner, 3>& t)
    {
        const auto [low, high] = std::minmax({t[0].w, t[1].w, t[2].w});
        const int first = band_of(low, out_.step_mm), last = band_of(high, out_.step_mm);
        std::vector<Corner> rest(t.begin(), t.end());
        for (int k = first; k < last; ++k) {
            const double w = (k + 1) * out_.step_mm;
            patch(k, cut(rest, w, false));
            line(k + 1, t, w);
            rest = cut(rest, w, true);
        }
        patch(last, rest);
    }

    void patch(int band, const std::vector<Corner>& corners)
    {
        if (corners.size() < 3) return;
        Patch p{band, {}};
        for (const Corner& c : corners) p.points.push_back(c.at);
        out_.patches.push_back(std::move(p));
    }

private:
    void line(int band, const std::array<Corner, 3>& t, double w)
    {
        std::vector<Point> ends;
        for (std::size_t i = 0; i < 3; ++i) {
            const Corner &a = t[i], &b = t[(i + 1) % 3];
            if ((a.w < w) != (b.w < w)) ends.push_back(between(a, b, w));
        }
        if (ends.size() == 2) out_.lines.push_back({band, ends[0], ends[1]});
    }

    Contours& out_;
};

bool find_peaks(const results::SkinField& f, Contours& c)
{
    bool any = false;
    for (std::size_t i = 0; i < f.w_mm.size(); ++i) {
        const double w = f.w_mm[i];
        if (!std::isfinite(w)) continue;
        const Peak here{{f.x_mm[i % f.x_mm.size()], f.y_mm[i / f.x_mm.size()]}, w};
        if (!any || w > c.outward.w_mm) c.outward = here;
        if (!any || w < c.inward.w_mm) c.inward = here;
        any = true;
    }
    return any;
}

/// Neighbouring cells of one row that lie in one band as a whole become one patch.
void cells_of_row(const results::SkinField& f, std::size_t iy, double step, Cutter& cutter)
{
    const std::size_t n = f.x_mm.size();
    const auto corner = [&](std::size_t ix, std::size_t dy) { return Corner{{f.x_mm[ix], f.y_mm[iy + dy]}, f.w_mm[(iy + dy) * n + ix]}; };
    const auto whole = [&](std::size_t ix) -> std::pair<bool, int> {
        const int band = band_of(corner(ix, 0).w, step);
        for (const Corner& c : {corner(ix + 1, 0), corner(ix, 1), corner(ix + 1, 1)})
            if (band_of(c.w, step) != band) return {false, 0};
        return {true, band};
    };
    for (std::size_t ix = 0; ix + 1 < n; ++ix) {
        const std::array<Corner, 4> c{corner(ix, 0), corner(ix + 1, 0), corner(ix + 1, 1), corner(ix, 1)};
        if (std::any_of(c.begin(), c.end(), [](const Corner& k) { return !std::isfinite(k.w); })) continue;
        const auto [is_whole, band] = whole(ix);
        if (!is_whole) {
            cutter.triangle({c[0], c[1], c[2]});
            cutter.triangle({c[0], c[2], c[3]});
            continue;
        }
        std::size_t end = ix + 1;
        while (end + 1 < n && std::isfinite(corner(end + 1, 0).w) && std::isfinite(corner(end + 1, 1).w) && whole(end) == std::pair{true, band}) ++end;
        cutter.patch(band, {c[0], corner(end, 0), corner(end, 1), c[3]});
        ix = end - 1;
    }
}

} // namespace

Contours contours(const results::SkinField& f, int most, double unit_mm)
{
    Contours c;
    const bool fits = f.x_mm.size() >= 2 && f.y_mm.size() >= 2 && f.w_mm.size() == f.x_mm.size() * f.y_mm.size() && most >= 2;
    if (!fits || !find_peaks(f, c)) return {};
    const double low = std::min(c.inward.w_mm, 0.0), high = std::max(c.outward.w_mm, 0.0);
    if (!(high - low > 1e-9)) return c;
    // Zero being a limit may cost one band more than the range over the step.
    c.step_mm = unit_mm * round_step((high - low) / (most - 1) / unit_mm);
    c.first = band_of(low, c.step_mm);
    c.last = std::max(band_of(high, c.step_mm), c.first);
    Cutter cutter(c);
    for (std::size_t iy = 0; iy + 1 < f.y_mm.size(); ++iy) cells_of_row(f, iy, c.step_mm, cutter);
    return c;
}

} // namespace thinskin::drawing
