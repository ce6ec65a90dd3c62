#include "studies/effects.h"

#include <cmath>
#include <fmt/core.h>

namespace thinskin::studies {

namespace {

bool is_default(const model::Case& c, const std::string& path)
{
    for (const model::DefaultTaken& d : c.defaults)
        if (d.key_path == path) return true;
    return false;
}

bool measured(const model::Case& c, const std::string& path)
{
    const auto from = c.measured_from.find(path);
    return from != c.measured_from.end() && from->second != "assumed";
}

model::Case with_hinged_edges(model::Case c)
{
    for (model::EdgeCondition& e : c.panel.edges)
        if (e.kind == model::EdgeCondition::Kind::held) e.kind = model::EdgeCondition::Kind::hinged;
    return c;
}

model::Case with_movable_edges(model::Case c)
{
    c.panel.edges_in_plane = model::InPlane::movable;
    return c;
}

model::Case with_thinner_skin(model::Case c)
{
    c.panel.skin.thickness.value = c.panel.skin.coating.value + 0.9 * (c.panel.skin.thickness.value - c.panel.skin.coating.value);
    return c;
}

model::Case with_more_coating(model::Case c)
{
    c.panel.skin.coating.value *= 2;
    return c;
}

model::Case with_more_mass(model::Case c)
{
    c.item->mass.value *= 1 + c.item->mass_tolerance.value;
    return c;
}

/// Half-sine of the same speed: its peak goes with 1/stop. How far off a stop is that somebody stated is judgement.
model::Case with_harder_slam(model::Case c)
{
    constexpr double shorter = 0.7;
    model::Quantity& stop = c.door->slam->stop;
    stop = {shorter * stop.value, fmt::format("{:g} ms", 1000 * shorter * stop.value)};
    return c;
}

std::string effect(const results::Outcome& as_is, const results::Outcome& bad)
{
    if (!bad.governing || !as_is.governing) return fmt::format("{} then", base::name(bad.verdict));
    const double before = as_is.governing->margin(), after = bad.governing->margin();
    const std::string verdict = bad.verdict == as_is.verdict ? "" : fmt::format(", {} then", base::name(bad.verdict));
    return fmt::format("{:+.2f} to {:+.2f}{}", std::floor(before * 100) / 100, std::floor(after * 100) / 100, verdict);
}

void note(results::Outcome& o, const BadEnd& b, const std::string& effect)
{
    for (results::Assumption& a : o.assumptions)
        if (a.what == b.what) {
            a.effect_on_governing_margin = effect;
            return;
        }
    o.assumptions.push_back({b.what, b.words, "assumed", effect});
}

} // namespace

std::vector<BadEnd> bad_ends(const model::Case& c)
{
    std::vector<BadEnd> out;
    out.push_back({"edges of the skin", "held, or hinged at worst", with_hinged_edges(c)});
    if (c.panel.edges_in_plane == model::InPlane::fixed) out.push_back({"edges of the skin in its plane", "fixed, or movable at worst", with_movable_edges(c)});
    if (!measured(c, "panel.skin.thickness")) out.push_back({"thickness of the skin", "as given, or 10 % less", with_thinner_skin(c)});
    if (is_default(c, "panel.skin.coating")) out.push_back({"panel.skin.coating", "", with_more_coating(c)});
    if (c.item && !measured(c, "item.mass")) out.push_back({"mass of the item", "with its tolerance, or that much again", with_more_mass(c)});
    if (c.door && c.door->slam) out.push_back({"stop of a slammed door", "as given, or in 30 % less time", with_harder_slam(c)});
    return out;
}

model::Case at_bad_ends(const model::Case& c)
{
    model::Case all = c;
    for (const BadEnd& one : bad_ends(c))
        for (BadEnd& then : bad_ends(all))
            if (then.what == one.what) {
                all = std::move(then.edited);
                break;
            }
    return all;
}

void add_effects(const model::Case& c, pipeline::Workspace& workspace, results::Outcome& outcome, std::stop_token stop)
{
    for (const BadEnd& b : bad_ends(c)) {
        if (stop.stop_requested()) return;
        const pipeline::Analysis a = pipeline::analyse(b.edited, workspace, pipeline::Depth::settled, stop);
        if (a.outcome && !stop.stop_requested()) note(outcome, b, effect(outcome, *a.outcome));
    }
}

} // namespace thinskin::studies
