// Notation: u utilisation of a row, u0 in 1 g alone, u1 with the load; s share of the load; v speed of the wind
#include "pipeline/wind_limit.h"

#include "actions/load_cases.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <limits>

namespace thinskin::pipeline {

namespace {

/// The demands of one load case alone.
struct Some {
    std::vector<results::FastenerForce> fasteners;
    std::vector<results::MemberForce> members;
    std::vector<results::EndForce> ends;
    std::vector<results::MountForce> mounts;
    std::vector<results::JointForce> joints;
    std::vector<results::SkinState> skin;
    std::vector<results::RimStress> rims;
    std::vector<results::CornerStress> corners;
    checks::Demands demands;

    Some(const checks::Demands& d, const std::string& load_case) : demands(d)
    {
        const auto keep = [&load_case](const auto* from, auto& to) {
            for (const auto& x : *from)
                if (x.load_case == load_case) to.push_back(x);
            return &to;
        };
        demands.fasteners = keep(d.fasteners, fasteners);
        demands.members = keep(d.members, members);
        demands.ends = keep(d.ends, ends);
        demands.mounts = keep(d.mounts, mounts);
        demands.joints = keep(d.joints, joints);
        demands.skin = keep(d.skin, skin);
        demands.rims = keep(d.rims, rims);
        demands.corners = keep(d.corners, corners);
        demands.tether = nullptr; // a tether, a plate and a life are no matter of this load
        demands.added = nullptr;
        demands.fatigue = nullptr;
    }
};

/// Utilisation of the row with this id: 0 when nothing asks for it, infinity when it has no figure.
double used(const std::vector<results::Check>& rows, const std::string& id)
{
    for (const results::Check& c : rows)
        if (c.id == id) return c.has_numbers() ? c.utilisation() : std::numeric_limits<double>::infinity();
    return 0;
}

/// Repeated stress is the road's matter and has no figure in one load case alone.
bool counts(const results::Check& c) { return c.required && c.group != "vibration" && c.load_case != "geometry" && c.title.rfind("repeated", 0) != 0; }

void take(results::WindLimit& w, const results::Check& c, double share)
{
    const double v = w.given_mm_s * std::sqrt(share);
    if (w.limit_mm_s && !(v < *w.limit_mm_s)) return;
    w.limit_mm_s = v;
    w.check = c.title;
    w.part = c.part;
}

void find(results::WindLimit& w, const std::vector<results::Check>& still, const std::vector<results::Check>& blown)
{
    for (const results::Check& c : blown) {
        if (!counts(c)) continue;
        const double share = c.has_numbers() ? share_of_load(used(still, c.id), c.utilisation()) : NAN;
        if (std::isnan(share)) {
            w.limit_mm_s.reset();
            w.why_not = fmt::format("{} is not covered under it", c.title);
            return;
        }
        take(w, c, share);
    }
    if (!w.limit_mm_s) w.why_not = "no check stands under it";
    else if (std::isinf(*w.limit_mm_s)) w.limit_mm_s.reset(), w.why_not = "it adds to no check";
}

} // namespace

double share_of_load(double u0, double u1)
{
    if (std::isnan(u0) || std::isnan(u1)) return NAN;
    if (!(u0 < 1)) return 0;
    if (std::abs(u1 - u0) <= 1e-9 * u0) return std::numeric_limits<double>::infinity();
    return u1 < 1 ? 1 + (1 - u1) / (u1 + u0) : (1 - u0) / (u1 - u0);
}

std::vector<results::Check> stressed_rows(const checks::Demands& d, std::vector<results::Check> (*rows)(const checks::Demands&), const std::string& load_case)
{
    std::vector<results::Check> out = rows(Some(d, load_case).demands);
    std::erase_if(out, [](const results::Check& c) { return !counts(c); });
    return out;
}

std::vector<results::WindLimit> wind_limits(const checks::Demands& d, std::vector<results::Check> (*rows)(const checks::Demands&))
{
    std::vector<results::WindLimit> out;
    const auto& item = d.layout->source->item;
    if (!item || std::none_of(item->loads.begin(), item->loads.end(), [](const model::ItemLoad& load) { return load.wind.has_value(); })) return out;
    const Some alone(d, actions::name_parked);
    const auto still = rows(alone.demands);
    for (const model::ItemLoad& load : d.layout->source->item->loads)
        for (const results::LoadCase& lc : *d.load_cases) {
            if (!load.wind || !lc.on_item || (lc.name != load.name && lc.name != load.name + ", turned round")) continue;
            results::WindLimit w;
            w.load_case = lc.name;
            w.given_mm_s = load.wind->value;
            w.estimate = lc.theory == "large deflection";
            const Some blown(d, lc.name);
            find(w, still, rows(blown.demands));
            out.push_back(w);
        }
    return out;
}

} // namespace thinskin::pipeline
