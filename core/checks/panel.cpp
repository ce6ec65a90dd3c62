#include "checks/checks.h"
#include "checks/rows.h"
#include "strength/sheet.h"

#include <algorithm>

namespace thinskin::checks {

namespace {

constexpr double parked_limit_mm = 1.0; ///< more than this parked is looked into; common practice, no source
std::vector<Demand> demands(const Demands& d, double results::SkinState::*figure)
{
    std::vector<Demand> out;
    for (const results::SkinState& s : *d.skin) out.push_back({s.load_case, s.*figure, s.stands, s.why_not});
    return out;
}

Place place(const std::string& id, const std::string& title) { return {id, "panel", "skin", title, false, "reinforcement.angles with their ends on the frame", ""}; }

void deflection_row(const Demands& d, std::vector<results::Check>& out)
{
    for (const results::SkinState& s : *d.skin) {
        if (s.load_case != "parked") continue;
        Place p = place("skin deflection", "parked deflection of the skin relative to the frame");
        p.judgement = true;
        out.push_back(against_limit(p, {s.load_case, s.max_deflection_mm, s.stands, s.why_not},
                                    {parked_limit_mm, "mm", d.layout->source->rules == model::Rules::allowable_strength ? "allowable_strength" : "partial_factors", "a skin that moves more when parked is looked into", "common practice, no source"}));
    }
}

const results::SkinState& state_of(const Demands& d, const results::Check& c)
{
    return *std::find_if(d.skin->begin(), d.skin->end(), [&c](const results::SkinState& s) { return s.load_case == c.load_case; });
}

std::string stress_note(const results::SkinState& s, const results::Check& c)
{
    if (s.stress_settled)
        return fmt::format("bending and membrane, both faces, outside washers, feet and legs; largest at x {:.0f}, y {:.0f} mm, on a grid of its own there (ID-16)", s.stress_at_mm[0], s.stress_at_mm[1]);
    if (c.demand > s.max_von_mises_MPa)
        return fmt::format("bending and membrane, both faces: at most this; the panel's grid shows {:.1f} MPa and may hide the rest beside footprints (ID-16)", s.max_von_mises_MPa);
    return "bending and membrane, both faces, as the panel's grid shows it; beside footprints it may be more (ID-16)";
}

/// What the skin bears at most, settled or with what the panel's grid may hide, decides a pass; what is seen decides a fail.
results::Check stress_row(const Demands& d, double fy)
{
    const Place p = place("skin stress", "stress of the skin outside the washers");
    results::Check c = worst_of(p, demands(d, &results::SkinState::stress_at_most_MPa), strength::SheetStress{fy});
    if (!c.has_numbers()) return c;
    const double at_most = c.demand;
    if (c.status == base::Status::fail) c = worst_of(p, demands(d, &results::SkinState::max_von_mises_MPa), strength::SheetStress{fy});
    if (!c.has_numbers()) return c;
    if (at_most > c.capacity && c.status != base::Status::fail)
        return not_covered(p, fmt::format("{:.0f} MPa shown in {}, {:.0f} allowed: beside washers and feet the panel's grid may hide up to {:.0f} MPa in all", c.demand, c.load_case, c.capacity, at_most));
    c.note = stress_note(state_of(d, c), c);
    return c;
}

} // namespace

double skin_allowable(const layout::Layout& l)
{
    const catalogue::Strength s = l.skin.material.strength(l.skin.core);
    if (!s.covered) return NAN;
    const base::Resistance r = strength::sheet_stress({s.fy});
    return r.covered ? r.capacity : NAN;
}

std::vector<results::Check> panel(const Demands& d)
{
    const catalogue::Strength s = d.layout->skin.material.strength(d.layout->skin.core);
    if (!s.covered) {
        Place p = place("skin stress", "stress of the skin");
        p.lift_with = "panel.skin.material";
        return {not_covered(p, s.reason)};
    }
    std::vector<results::Check> out;
    out.push_back(stress_row(d, s.fy));
    out.push_back(worst_of(place("hem shear flow", "shear flow handed to the hem"), demands(d, &results::SkinState::hem_shear_flow_N_mm), strength::ShearFlow{d.layout->skin.core, s.fy}));
    opening_rows(d, s.fy, out);
    deflection_row(d, out);
    return out;
}

std::vector<results::Check> not_covered_parts(const Demands& d)
{
    std::vector<results::Check> out;
    for (const layout::Layout::NotCovered& n : d.layout->not_covered)
        out.push_back(not_covered({fmt::format("not covered/{}/{}", n.group, n.part), n.group, n.part, n.part, false, n.lift_with, ""}, n.reason));
    return out;
}

} // namespace thinskin::checks
