#include "checks/checks.h"
#include "checks/rows.h"

/// The second load path: a caught item against the strength of its tether and of what that is tied to.
namespace thinskin::checks {

namespace {

constexpr double share_of_breaking = 0.5; ///< of a breaking strength in one catch; engineering judgement

results::Check catch_row(Place p, const results::Tether& t, const std::optional<model::Quantity>& strength, const char* key, const std::string& whose)
{
    p.lift_with = key;
    if (!t.why_not.empty()) {
        p.lift_with = t.lift_with;
        return not_covered(p, t.why_not);
    }
    if (!strength) return not_covered(p, fmt::format("caught, it pulls {:.0f} N (AC-22); the strength to hold that is not given", t.shaken_N));
    p.judgement = true;
    p.note = fmt::format("{:.0f} mm of slack{}, then {:.0f} mm of stretch at {:.1f} times its weight; {:.0f} N when the vehicle stands (AC-22){}", t.fall_mm - t.soft_mm,
                         t.soft_mm > 0 ? fmt::format(" and {:.0f} mm of soft stretch (half of that at its break, judgement)", t.soft_mm) : "", t.stretch_mm, t.down_g, t.standing_N,
                         whose.empty() ? "" : "; strength: " + whose);
    results::Check c = against_limit(p, {"a fixing lets go", t.shaken_N, true, ""},
                                     {share_of_breaking * strength->value, "N", "half of the breaking strength in one catch", "case file, item.tether; half: engineering judgement", "engineering judgement"});
    c.range = "elastic, straight fall; used once, then replaced";
    return c;
}

} // namespace

std::vector<results::Check> tether(const Demands& d)
{
    if (!d.tether || !d.tether->given) return {};
    const model::Tether& m = *d.layout->source->item->tether;
    const std::string& item = d.layout->item->name;
    return {catch_row({"tether/strap", "fixing", item, "tether that catches " + item, false, "", ""}, *d.tether, m.strength, "item.tether.strength", m.source),
            catch_row({"tether/anchor", "fixing", item, "what the tether of " + item + " is tied to", false, "", ""}, *d.tether, m.anchor_strength, "item.tether.anchor_strength", m.source)};
}

} // namespace thinskin::checks
