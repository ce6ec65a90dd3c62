// Stress of the skin beside what presses on it, on a fine grid round the worst places (ID-16).
#include "idealise/local_stress.h"
#include "idealise/skin_forces.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thinskin::idealise {

namespace {

constexpr double reach = 45;          // mm from the middle of a place to the boundary of its area, at least
constexpr double read_within = 32;    // mm: further out the boundary given by the coarse grid shows
constexpr double most_reach = 160;    // mm: an area that must grow beyond this to hold its footprints is not looked into
constexpr std::size_t most_places = 3;
constexpr double bound_is_enough = 0.5; // of the allowable: a load case bounded by less is not looked into; a matter of time, not of safety

/// The footprints that press hardest, and the place where the coarse grid shows most.
std::vector<layout::Point> places(const std::vector<fem::LocalForce>& forces, const results::SkinState& shown)
{
    std::vector<fem::LocalForce> normal;
    for (const fem::LocalForce& f : forces)
        if (f.direction == fem::SkinDirection::z) normal.push_back(f);
    std::stable_sort(normal.begin(), normal.end(), [](const auto& a, const auto& b) { return std::abs(a.force) > std::abs(b.force); });
    std::vector<layout::Point> out{{shown.stress_at_mm[0], shown.stress_at_mm[1]}};
    for (const fem::LocalForce& f : normal) {
        const bool seen = std::any_of(out.begin(), out.end(), [&f](const layout::Point& p) { return std::hypot(p.x - f.where.x, p.y - f.where.y) < read_within / 2; });
        if (!seen && out.size() < most_places) out.push_back({f.where.x, f.where.y});
    }
    return out;
}

bool touches(const fem::Footprint& w, const fem::LocalArea& a) { return w.x + w.half_x > a.x0 && w.x - w.half_x < a.x1 && w.y + w.half_y > a.y0 && w.y - w.half_y < a.y1; }

/// The area round a place, grown until every footprint that touches it lies inside; without size: it would grow too far.
fem::LocalArea area_of(const Structure& s, layout::Point p, const std::vector<fem::LocalForce>& forces)
{
    fem::LocalArea a{p.x - reach, p.y - reach, p.x + reach, p.y + reach, s.options.local_grid};
    for (bool grown = true; grown;) {
        grown = false;
        a = {std::max(a.x0, 0.0), std::max(a.y0, 0.0), std::min(a.x1, s.layout->width), std::min(a.y1, s.layout->height), s.options.local_grid};
        for (const fem::LocalForce& f : forces) {
            const fem::Footprint& w = f.where;
            if (!touches(w, a)) continue;
            const fem::LocalArea with{std::min(a.x0, w.x - w.half_x), std::min(a.y0, w.y - w.half_y), std::max(a.x1, w.x + w.half_x), std::max(a.y1, w.y + w.half_y), s.options.local_grid};
            grown = grown || with.x0 < a.x0 || with.y0 < a.y0 || with.x1 > a.x1 || with.y1 > a.y1;
            a = with;
        }
        if (std::max(p.x - a.x0, a.x1 - p.x) > most_reach || std::max(p.y - a.y0, a.y1 - p.y) > most_reach) return {};
    }
    return a;
}

/// Under a part's footprint the sheet lies on what presses on it.
bool covered(const std::vector<fem::LocalForce>& forces, double x, double y)
{
    return std::any_of(forces.begin(), forces.end(), [&](const fem::LocalForce& f) { return std::abs(x - f.where.x) < f.where.half_x && std::abs(y - f.where.y) < f.where.half_y; });
}

/// Points of the fine grid round a place, and rings just outside the footprints there.
std::vector<layout::Point> read_at(const Structure& s, layout::Point p, const fem::LocalArea& a, const OnSkin& forces)
{
    std::vector<layout::Point> out;
    const auto take = [&](double x, double y) {
        if (x >= a.x0 && x <= a.x1 && y >= a.y0 && y <= a.y1 && std::max(std::abs(x - p.x), std::abs(y - p.y)) <= read_within && !covered(forces.parts, x, y) && readable(s, x, y)) out.push_back({x, y});
    };
    for (double x = a.x0; x <= a.x1; x += s.options.local_grid)
        for (double y = a.y0; y <= a.y1; y += s.options.local_grid) take(x, y);
    take(p.x, p.y);
    for (const fem::LocalForce& f : forces.all)
        for (int k = 0; k < 24 && f.direction == fem::SkinDirection::z; ++k) { // on the square itself, a hair outside
            const double angle = std::numbers::pi * k / 12, c = std::cos(angle), q = std::sin(angle), side = 1.02 / std::max(std::abs(c), std::abs(q));
            take(f.where.x + side * f.where.half_x * c, f.where.y + side * f.where.half_y * q);
        }
    return out;
}

struct Peak { bool settled = true; double stress = 0; layout::Point at; };

void look(const Structure& s, const Run& run, const fem::LargeModel& model, const fem::LargeField& field, layout::Point p, const OnSkin& forces, fem::LocalGrids& kept, Peak& peak)
{
    const fem::LocalArea a = area_of(s, p, forces.all);
    std::vector<fem::LocalForce> inside;
    for (const fem::LocalForce& f : forces.all)
        if (touches(f.where, a)) inside.push_back(f);
    const bool point = std::any_of(inside.begin(), inside.end(), [](const fem::LocalForce& f) { return f.direction == fem::SkinDirection::z && !(f.where.half_x > 0 && f.where.half_y > 0); });
    if (!(a.x1 > a.x0) || point) { // under a point force elastic theory has no bound
        peak.settled = false;
        return;
    }
    const fem::LargeLocal local = fem::large_local(model, field, a, inside, pressure_on_skin(s, run), &kept);
    peak.settled = peak.settled && local.status == fem::SolveStatus::solved;
    if (!peak.settled) return;
    for (const layout::Point q : read_at(s, p, a, forces)) {
        const double stress = fem::von_mises(s.skin->model.sheet, fem::local_point(local, q.x, q.y));
        if (takes_over(stress, peak.stress)) peak.stress = stress, peak.at = q;
    }
    peak.settled = std::isfinite(peak.stress);
}

Peak peak_of(const Structure& s, const Solution& sol, const Run& run, const fem::LargeModel& model, const results::SkinState& shown, fem::LocalGrids& kept)
{
    const fem::Vector u = run.large ? run.large->skin_u : fem::recover(s.assembly, s.skin_body, s.loads, run.factors, sol.free, run.states[0]).u;
    const fem::LargeField field = fem::large_field(model, u);
    const OnSkin forces = forces_on_skin(s, run);
    Peak peak;
    for (const layout::Point p : places(forces.all, shown)) look(s, run, model, field, p, forces, kept, peak);
    return peak;
}

} // namespace

void settle_stress(const Structure& s, const Solution& sol, const fem::LargeModel& model, double allowable, std::vector<results::SkinState>& skin, fem::LocalGrids& kept, std::stop_token stop)
{
    std::vector<std::size_t> order;
    for (std::size_t k = 0; k < skin.size(); ++k)
        if (sol.runs[k].solved(0) && skin[k].stress_at_most_MPa > bound_is_enough * allowable) order.push_back(k);
    std::stable_sort(order.begin(), order.end(), [&skin](std::size_t a, std::size_t b) { return skin[a].stress_at_most_MPa > skin[b].stress_at_most_MPa; });
    double most = 0;
    for (const std::size_t k : order) {
        if (stop.stop_requested() || skin[k].stress_at_most_MPa <= most) return;
        const Peak peak = peak_of(s, sol, sol.runs[k], model, skin[k], kept);
        if (!peak.settled) continue;
        skin[k].max_von_mises_MPa = skin[k].stress_at_most_MPa = peak.stress;
        skin[k].stress_at_mm = {peak.at.x, peak.at.y};
        skin[k].stress_settled = true;
        base::keep_largest(most, peak.stress);
    }
}

} // namespace thinskin::idealise
