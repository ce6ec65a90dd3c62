#include "studies/spread.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <numeric>

namespace thinskin::studies {

namespace {

constexpr std::uint64_t fixed_seed = 20240229;

/// One figure that nobody measured: u from 0 to 1 runs through its range.
struct Input { std::string what, range; std::function<void(model::Case&, double u)> set; };

bool measured(const model::Case& c, const std::string& path)
{
    const auto from = c.measured_from.find(path);
    return from != c.measured_from.end() && from->second != "assumed";
}

bool is_default(const model::Case& c, const std::string& path)
{
    return std::any_of(c.defaults.begin(), c.defaults.end(), [&](const model::DefaultTaken& d) { return d.key_path == path; });
}

double between(double low, double high, double u) { return low + u * (high - low); }

void set_fixity(model::Case& c, double r)
{
    const double t = c.panel.skin.thickness.value - c.panel.skin.coating.value, b = std::min(c.panel.width.value, c.panel.height.value);
    constexpr double E = 210000, nu = 0.3; // a range needs no more than the order of D
    const double D = E * t * t * t / (12 * (1 - nu * nu));
    for (model::EdgeCondition& e : c.panel.edges)
        if (e.kind == model::EdgeCondition::Kind::held) e = {model::EdgeCondition::Kind::sprung, {4 * D / b * r / (1 - std::min(r, 0.999)), ""}};
}

void set_core(model::Sheet& s, double share) { s.thickness.value = s.coating.value + share * (s.thickness.value - s.coating.value); }

std::vector<Input> inputs_of(const model::Case& c)
{
    std::vector<Input> out;
    const bool held = std::any_of(c.panel.edges.begin(), c.panel.edges.end(), [](const model::EdgeCondition& e) { return e.kind == model::EdgeCondition::Kind::held; });
    if (held) out.push_back({"edges of the skin against turning", "hinged .. held", set_fixity});
    if (c.panel.edges_in_plane == model::InPlane::fixed)
        out.push_back({"edges of the skin in its plane", "movable or fixed", [](model::Case& x, double u) { x.panel.edges_in_plane = u < 0.5 ? model::InPlane::movable : model::InPlane::fixed; }});
    if (is_default(c, "panel.skin.coating")) out.push_back({"coating of the skin", "0 .. 0.06 mm, more of it first", [](model::Case& x, double u) { x.panel.skin.coating.value = between(0.06, 0, u); }});
    if (!measured(c, "panel.skin.thickness")) out.push_back({"thickness of the skin", "-10 % .. +10 %", [](model::Case& x, double u) { set_core(x.panel.skin, between(0.9, 1.1, u)); }});
    if (std::any_of(c.panel.frame.begin(), c.panel.frame.end(), [](const auto& f) { return f && f->inner; }))
        out.push_back({"inner sheet of the frame", "-10 % .. +10 %", [](model::Case& x, double u) {
                           for (auto& f : x.panel.frame)
                               if (f && f->inner) set_core(*f->inner, between(0.9, 1.1, u));
                       }});
    if (c.item && c.item->mass_tolerance.value > 0 && !measured(c, "item.mass"))
        out.push_back({"mass of the item", fmt::format("-{0:g} % .. +{0:g} %", 100 * c.item->mass_tolerance.value), [](model::Case& x, double u) {
                           const double tolerance = x.item->mass_tolerance.value;
                           x.item->mass.value *= between(1 - tolerance, 1 + tolerance, u);
                           x.item->mass_tolerance.value = 0; // the draw is the mass itself
                       }});
    return out;
}

/// splitmix64: the same numbers on every machine.
struct Random {
    std::uint64_t state;
    std::uint64_t next()
    {
        std::uint64_t z = state += 0x9e3779b97f4a7c15ULL;
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
        z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
        return z ^ (z >> 31);
    }
    double unit() { return static_cast<double>(next() >> 11) * 0x1.0p-53; }
};

std::vector<double> ranks(const std::vector<double>& v)
{
    std::vector<std::size_t> order(v.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return v[a] < v[b]; });
    std::vector<double> out(v.size());
    for (std::size_t i = 0; i < order.size();) {
        std::size_t j = i;
        while (j < order.size() && v[order[j]] == v[order[i]]) ++j;
        for (std::size_t k = i; k < j; ++k) out[order[k]] = 0.5 * static_cast<double>(i + j - 1);
        i = j;
    }
    return out;
}

std::string signed_text(double m) { return m > 5 ? "more than +5" : fmt::format("{:+.2f}", std::floor(m * 100) / 100); }

std::string headline(const results::Spread& s)
{
    if (s.quantiles.empty()) return fmt::format("Spread: none of {} runs gave a margin.", s.samples);
    return fmt::format("Spread: {} of {} runs over the ranges of what nobody measured pass; least margin {} to {} in nine of ten, middle {}; what matters most: {}.", s.pass, s.samples, signed_text(s.quantiles.front().margin),
                       signed_text(s.quantiles.back().margin), signed_text(s.quantiles[2].margin), s.inputs.empty() ? "nothing" : s.inputs.front().what);
}

void count(const results::Outcome& o, results::Spread& s)
{
    ++(o.verdict == base::Verdict::pass ? s.pass : o.verdict == base::Verdict::fail ? s.fail : o.verdict == base::Verdict::not_covered ? s.not_covered : s.not_solved);
}

} // namespace

std::vector<std::vector<double>> latin_hypercube(std::size_t samples, std::size_t inputs, std::uint64_t seed)
{
    Random random{seed};
    std::vector<std::vector<double>> out(samples, std::vector<double>(inputs));
    for (std::size_t i = 0; i < inputs; ++i) {
        std::vector<std::size_t> part(samples);
        std::iota(part.begin(), part.end(), std::size_t{0});
        for (std::size_t k = samples; k > 1; --k) std::swap(part[k - 1], part[random.next() % k]);
        for (std::size_t k = 0; k < samples; ++k) out[k][i] = (static_cast<double>(part[k]) + random.unit()) / static_cast<double>(samples);
    }
    return out;
}

double rank_correlation(const std::vector<double>& a, const std::vector<double>& b)
{
    const std::vector<double> x = ranks(a), y = ranks(b);
    const double mean = 0.5 * (static_cast<double>(a.size()) - 1);
    double xy = 0, xx = 0, yy = 0;
    for (std::size_t i = 0; i < x.size(); ++i) xy += (x[i] - mean) * (y[i] - mean), xx += (x[i] - mean) * (x[i] - mean), yy += (y[i] - mean) * (y[i] - mean);
    return xx > 0 && yy > 0 ? xy / std::sqrt(xx * yy) : 0;
}

double quantile(std::vector<double> values, double share)
{
    std::sort(values.begin(), values.end());
    const double at = share * static_cast<double>(values.size() - 1);
    const std::size_t low = static_cast<std::size_t>(at), high = std::min(low + 1, values.size() - 1);
    return values[low] + (at - static_cast<double>(low)) * (values[high] - values[low]);
}

results::Spread spread(const model::Case& c, double nominal_margin, pipeline::Workspace& workspace, const SpreadOptions& options, std::stop_token stop)
{
    results::Spread s;
    s.nominal_margin = nominal_margin;
    const std::vector<Input> inputs = inputs_of(c);
    const auto drawn = latin_hypercube(static_cast<std::size_t>(options.samples), inputs.size(), fixed_seed);
    std::vector<double> margins;
    std::vector<std::vector<double>> used(inputs.size());
    for (const std::vector<double>& u : drawn) {
        if (options.progress) options.progress(s.samples, options.samples);
        model::Case edited = c;
        for (std::size_t i = inputs.size(); i-- > 0;) inputs[i].set(edited, u[i]); // edges last: they know the skin drawn
        const pipeline::Analysis a = pipeline::analyse(edited, workspace, pipeline::Depth::settled, stop);
        if (stop.stop_requested() || !a.outcome) break;
        ++s.samples;
        count(*a.outcome, s);
        if (!a.outcome->governing || a.outcome->verdict == base::Verdict::not_solved) continue;
        margins.push_back(a.outcome->governing->margin());
        for (std::size_t i = 0; i < inputs.size(); ++i) used[i].push_back(u[i]);
    }
    for (std::size_t i = 0; i < inputs.size(); ++i) s.inputs.push_back({inputs[i].what, inputs[i].range, margins.size() > 1 ? rank_correlation(used[i], margins) : 0});
    std::stable_sort(s.inputs.begin(), s.inputs.end(), [](const auto& a, const auto& b) { return std::abs(a.rank_correlation) > std::abs(b.rank_correlation); });
    for (double q : {0.05, 0.25, 0.5, 0.75, 0.95})
        if (!margins.empty()) s.quantiles.push_back({q, quantile(margins, q)});
    s.headline = headline(s);
    return s;
}

} // namespace thinskin::studies
