#include "drawing/canvas.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thinskin::drawing {

namespace {

constexpr double same_place = 0.05; ///< mm: figures are printed to a tenth

/// One figure for each position: the mark nearest to the edge gives its extension line, words are joined.
std::vector<Ordinate> merged(std::vector<Ordinate> all, bool level, double away)
{
    const auto out = [&](const Ordinate& o) { return away * (level ? o.from.y : o.from.x); };
    std::stable_sort(all.begin(), all.end(), [](const Ordinate& a, const Ordinate& b) { return a.value < b.value; });
    std::vector<Ordinate> one;
    for (const Ordinate& o : all) {
        if (one.empty() || o.value - one.back().value > same_place) {
            one.push_back(o);
            continue;
        }
        Ordinate& kept = one.back();
        if (out(o) > out(kept)) kept.from = o.from;
        if (!o.words.empty() && kept.words.find(o.words) == std::string::npos) kept.words += (kept.words.empty() ? "" : ", ") + o.words;
    }
    return one;
}

} // namespace

std::string millimetres(double v)
{
    const double tenths = std::round(v * 10) / 10 + 0.0;
    return tenths == std::round(tenths) ? fmt::format("{:.0f}", tenths) : fmt::format("{:.1f}", tenths);
}

std::string newtons(double v) { return fmt::format("{:.0f} N", v); }

void place_ordinates(View& v, std::vector<Ordinate> all, bool level, double at, double away, double text_height, const Figures& figures)
{
    const std::vector<Ordinate> one = merged(std::move(all), level, away);
    std::vector<double> wanted;
    for (const Ordinate& o : one) wanted.push_back(o.value);
    const std::vector<double> places = spread_out(wanted, 1.25 * text_height);
    const auto point = [level](double along, double across) { return level ? Point{along, across} : Point{across, along}; };
    for (std::size_t i = 0; i < one.size(); ++i) {
        const Ordinate& o = one[i];
        const double start = (level ? o.from.y : o.from.x) + away * 0.3 * text_height;
        v.polylines.push_back({{point(o.value, start), point(o.value, at - away * 1.2 * text_height), point(places[i], at - away * 0.2 * text_height)}, false, false, Style::dimension, o.part});
        const std::string text = figures.length(o.value) + (o.words.empty() ? "" : " " + o.words);
        v.texts.push_back({point(places[i], at), text, text_height, away < 0 ? Anchor::end : Anchor::start, level, o.part});
    }
}

} // namespace thinskin::drawing
