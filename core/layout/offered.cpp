#include "layout/offered.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace thinskin::layout {

namespace {

// Common practice, no source: room for a socket beside a leg; rows of bolts that the standing leg must not come down on.
constexpr double beside_a_leg = 5, with_a_choice = 20, round_a_row = 45, from_edge = 60, step = 5;

std::set<std::string> errors_of(const Result& r)
{
    std::set<std::string> all;
    for (const base::Diagnostic& d : r.diagnostics)
        if (d.severity == base::Severity::error) all.insert(d.message);
    return all;
}

struct Band { double from = 0, to = 0; };

Band band_of(const AngleBar& bar)
{
    const double ys[] = {bar.heel(0).y, bar.toe(0).y, bar.heel(bar.length()).y, bar.toe(bar.length()).y};
    return {*std::min_element(std::begin(ys), std::end(ys)), *std::max_element(std::begin(ys), std::end(ys))};
}

/// What lies behind the skin where the last angle would lie.
bool is_clear(const Layout& l, double room)
{
    const Band mine = band_of(l.angles.back().bar);
    const auto apart = [&mine, room](const Band& b) { return b.from > mine.to + room - 1e-9 || b.to < mine.from - room + 1e-9; };
    for (std::size_t i = 0; i + 1 < l.angles.size(); ++i)
        if (!apart(band_of(l.angles[i].bar))) return false;
    for (const Plate& p : l.plates)
        if (!apart({p.low.y, p.high.y})) return false;
    return std::all_of(l.ribs.begin(), l.ribs.end(), [&apart](const Rib& rib) {
        const bool level = std::abs(rib.from.y - rib.to.y) < 1;
        return !level || apart({rib.from.y - rib.section.b / 2, rib.from.y + rib.section.b / 2});
    });
}

/// Heights with fasteners through the skin, from the top down.
std::vector<double> rows_of(const model::Case& c)
{
    std::set<double, std::greater<>> rows;
    for (const model::Bracket& b : c.brackets)
        for (const model::Fastener& f : b.fasteners) rows.insert(f.at.y.value);
    if (c.item)
        for (const model::ItemFixing& f : c.item->fixings) rows.insert(f.at.y.value);
    return {rows.begin(), rows.end()};
}

std::vector<double> heights_to_try(const model::Case& c)
{
    const std::vector<double> rows = rows_of(c);
    std::vector<double> all = rows, free;
    if (all.size() > 2) std::rotate(all.begin() + 1, all.end() - 1, all.end());
    const double tall = c.panel.height.value, middle = rows.empty() ? tall / 2 : (rows.front() + rows.back()) / 2;
    for (double y = from_edge; y <= tall - from_edge; y += step)
        if (std::none_of(rows.begin(), rows.end(), [y](double r) { return std::abs(r - y) < round_a_row; })) free.push_back(y);
    std::stable_sort(free.begin(), free.end(), [middle](double a, double b) { return std::abs(a - middle) < std::abs(b - middle); });
    all.insert(all.end(), free.begin(), free.end());
    return all;
}

} // namespace

std::vector<std::string> new_errors(const model::Case& before, const model::Case& after)
{
    const std::set<std::string> old = errors_of(resolve(before));
    std::vector<std::string> out;
    for (const std::string& e : errors_of(resolve(after)))
        if (old.count(e) == 0) out.push_back(e);
    return out;
}

std::optional<double> height_for_angle(const model::Case& c, const WithAngle& with)
{
    const std::set<std::string> old = errors_of(resolve(c));
    const std::vector<double> of_bolts = rows_of(c);
    const std::set<double> rows(of_bolts.begin(), of_bolts.end());
    for (const double y : heights_to_try(c)) {
        const model::Case tried = with(y);
        const std::set<std::string> errors = errors_of(resolve(tried));
        if (!std::includes(old.begin(), old.end(), errors.begin(), errors.end())) continue;
        if (const std::optional<Layout> l = drawable(tried); l && !l->angles.empty() && is_clear(*l, rows.count(y) > 0 ? beside_a_leg : with_a_choice)) return y;
    }
    return std::nullopt;
}

} // namespace thinskin::layout
