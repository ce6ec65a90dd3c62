#include "studies/grid_error.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::studies {

namespace {

model::GridSize neighbour(model::GridSize size)
{
    return size == model::GridSize::normal ? model::GridSize::quick : model::GridSize::normal;
}

/// ID-15: largest difference of any load case over the largest figure of all; absent when there is none or a load case has no figure.
std::optional<double> difference(const results::Outcome& a, const results::Outcome& b, double results::SkinState::*figure)
{
    double most = 0, apart = 0;
    if (a.skin.size() != b.skin.size()) return std::nullopt;
    for (std::size_t k = 0; k < a.skin.size(); ++k) {
        if (!a.skin[k].why_not.empty() && a.skin[k].why_not.rfind("not solved", 0) == 0) return std::nullopt;
        if (!b.skin[k].why_not.empty() && b.skin[k].why_not.rfind("not solved", 0) == 0) return std::nullopt;
        most = std::max(most, std::abs(a.skin[k].*figure));
        apart = std::max(apart, std::abs(a.skin[k].*figure - b.skin[k].*figure));
    }
    if (!(most > 0) || !std::isfinite(apart)) return std::nullopt;
    return apart / most;
}

/// Of the largest stress alone, where both grids settled it: which other load cases are settled depends on the grid (ID-16).
std::optional<double> stress_difference(const results::Outcome& a, const results::Outcome& b)
{
    const auto worst = [](const results::Outcome& o) {
        return std::max_element(o.skin.begin(), o.skin.end(), [](const auto& x, const auto& y) { return x.max_von_mises_MPa < y.max_von_mises_MPa; });
    };
    const auto x = worst(a), y = worst(b);
    if (x == a.skin.end() || y == b.skin.end() || !x->stress_settled || !y->stress_settled) return difference(a, b, &results::SkinState::max_von_mises_MPa);
    return std::abs(x->max_von_mises_MPa - y->max_von_mises_MPa) / x->max_von_mises_MPa;
}

std::optional<double> of_governing(const results::Outcome& a, const results::Outcome& b)
{
    if (!a.governing || !(std::abs(a.governing->demand) > 0)) return std::nullopt;
    for (const results::Check& c : b.checks)
        if (c.id == a.governing->id && c.has_numbers()) return std::abs(c.demand - a.governing->demand) / std::abs(a.governing->demand);
    return std::nullopt;
}

std::string percent(const std::optional<double>& x)
{
    return x ? fmt::format("{:.2g} %", 100 * *x) : std::string("no figure");
}

} // namespace

void add_grid_error(const model::Case& c, results::Outcome& o, std::stop_token stop)
{
    if (!(o.grid.spacing_mm > 0)) return; // nothing was solved
    model::Case other = c;
    other.grid = neighbour(c.grid);
    pipeline::Workspace workspace; // its own: the caller's keeps the skin of the case
    const pipeline::Analysis a = pipeline::analyse(other, workspace, pipeline::Depth::settled, stop);
    if (stop.stop_requested() || !a.outcome || !(a.outcome->grid.spacing_mm > 0)) return;
    const results::Outcome& b = *a.outcome;
    const double ratio = o.grid.spacing_mm / b.grid.spacing_mm, r2 = ratio * ratio;
    const double share = ratio < 1 ? 1 / (1 / r2 - 1) : r2 / (r2 - 1); // Richardson, second order
    const auto scaled = [share](std::optional<double> x) { return x ? std::optional<double>(*x * share) : x; };
    results::GridError& e = o.grid.error;
    e.other_spacing_mm = b.grid.spacing_mm;
    e.deflection = scaled(difference(o, b, &results::SkinState::max_deflection_mm));
    e.peak_stress = scaled(stress_difference(o, b));
    e.governing_demand = scaled(of_governing(o, b));
    o.grid.error_estimate = fmt::format("deflection of the skin {}, its peak stress {}, governing demand {} (second order, {} against {} grid)", percent(e.deflection),
                                        percent(e.peak_stress), percent(e.governing_demand), model::name(c.grid), model::name(other.grid));
}

} // namespace thinskin::studies
