#include "actions/second_path.h"

#include "actions/load_cases.h"
#include "actions/vehicle.h"

#include <algorithm>
#include <fmt/core.h>

namespace thinskin::actions {

namespace {

results::Tether open(results::Tether t, std::string why, const char* key)
{
    t.why_not = std::move(why);
    t.lift_with = key;
    return t;
}

/// The worst road state down; 0 when none was run. A load case of the item's own is no road state.
double largest_down(const std::vector<results::LoadCase>& cases)
{
    double down = 0;
    bool driven = false;
    for (const results::LoadCase& c : cases) {
        if (c.on_item) continue;
        driven = driven || c.name == name_pothole;
        down = std::max(down, -c.acceleration_g[1]);
    }
    return driven ? down : 0;
}

/// A rope or webbing stretches easily first and stiffens towards its break, so that its secant stores more than it does. Half of the
/// stretch at the break is taken to come without a force (the item falls through it), the other half in proportion. Every curve that
/// bends upward and is at its break no stiffer than twice its secant lies above that line and stores more before it pulls as hard.
constexpr double soft_share = 0.5;

/// Fall before it pulls, beside the slack, and stiffness from there on; a stiffness of 0: not known.
struct Give { double soft_mm = 0, stiffness_N_mm = 0; };

Give give(const model::Tether& m)
{
    if (m.stiffness) return {0, m.stiffness->value};
    if (!(m.strength && m.stretch && m.length)) return {};
    const double at_break = m.stretch->value * m.length->value;
    return {soft_share * at_break, m.strength->value / ((1 - soft_share) * at_break)};
}

} // namespace

results::Tether tether(const layout::Layout& l, const std::vector<results::LoadCase>& cases)
{
    results::Tether t;
    if (!l.item || !l.source->item || !l.source->item->tether) return t;
    const model::Tether& m = *l.source->item->tether;
    t.given = true;
    t.mass_kg = l.item->design_mass();
    t.down_g = largest_down(cases);
    const Give rope = give(m);
    t.soft_mm = rope.soft_mm;
    t.stiffness_N_mm = rope.stiffness_N_mm;
    if (m.tied_to.empty()) return open(t, "what the tether is tied to is not said", "item.tether.tied_to");
    if (m.tied_to == "skin" || m.tied_to == "bracket")
        return open(t, fmt::format("tied to the {} it hangs on what it is to stand in for: no second path", m.tied_to), "item.tether.tied_to: frame, or body");
    if (!m.slack) return open(t, "how far the item falls before the tether pulls is not said", "item.tether.slack");
    if (!(t.stiffness_N_mm > 0)) return open(t, "how far the tether stretches is not known", m.stretch || m.length ? "item.tether.length, stretch and strength" : "item.tether.stiffness");
    if (!(t.down_g > 0)) return open(t, "no road state was run", "road");
    t.fall_mm = m.slack->value + rope.soft_mm;
    const auto standing = tether_catch({.m_kg = t.mass_kg, .s_mm = t.fall_mm, .k_N_mm = t.stiffness_N_mm});
    const auto shaken = tether_catch({.m_kg = t.mass_kg * t.down_g, .s_mm = t.fall_mm, .k_N_mm = t.stiffness_N_mm});
    if (!standing.covered || !shaken.covered) return open(t, standing.covered ? shaken.reason : standing.reason, "item.tether");
    t.standing_N = standing.nominal;
    t.shaken_N = shaken.nominal;
    t.stretch_mm = t.shaken_N / t.stiffness_N_mm;
    return t;
}

} // namespace thinskin::actions
