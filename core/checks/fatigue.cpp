// Notation: u stress per g of vertical acceleration, sigma = u rms, n cycles over the wanted distance, D damage
#include "checks/fatigue.h"

#include "base/largest.h"
#include "checks/fatigue_details.h"
#include "checks/rows.h"
#include "strength/fatigue.h"

#include <algorithm>
#include <cmath>

namespace thinskin::checks {

namespace {

constexpr double gamma_Mf = 1.35;     ///< on the stress: safe life, a failure that hurts; from memory, range 1.00 to 1.35
constexpr double damage_limit = 0.3;  ///< for random loads 0.3 to 0.5 is common practice, no source; the lower end

constexpr double mm_per_km = 1e6;

double cycles(const results::Answer& a, const results::Shaking& s) { return a.rate_Hz * s.wanted_mm / s.speed_mm_s; }

/// One answer of the road over n cycles.
double random_part(const results::Life& life, const results::Answer& a, double n)
{
    const auto r = strength::random_damage({.line = strength::direct_stress, .C_MPa = life.category, .gamma = gamma_Mf, .sigma_MPa = life.per_g_MPa * a.rms_g, .n = n});
    return r.covered ? r.nominal : NAN;
}

/// The item's own shaking, a steady sine: range 2 u a.
double running_part(const results::Life& life, const results::Shaking& s, double years)
{
    double sum = 0;
    for (double hertz : s.running_Hz) {
        const auto r = strength::block_damage({.line = strength::direct_stress, .C_MPa = life.category, .gamma = gamma_Mf, .S_MPa = 2 * life.per_g_MPa * s.running_g, .n = hertz * s.running_s_a_year * years});
        sum += r.covered ? r.nominal : NAN;
    }
    return sum;
}

std::string not_finite(const results::Life& life)
{
    if (!std::isfinite(life.per_g_MPa)) return "its stress is not a number";
    return std::isfinite(life.damage) ? "" : "stress or number of cycles is outside of the rule (FA-2: 300 MPa rms)";
}

} // namespace

double per_g(const Swing& f, const Heave& a)
{
    double most = std::abs(f.parked / a.parked);
    const auto take = [&most](double u) {
        base::keep_largest(most, u);
    };
    take(std::abs((f.pothole - f.parked) / (a.pothole - a.parked)));
    take(std::abs((f.rebound - f.parked) / (a.rebound - a.parked)));
    take(std::abs(f.pothole / a.pothole));
    if (!(std::abs(a.rebound) < 0.2)) take(std::abs(f.rebound / a.rebound));
    return most;
}

void work_out(results::Life& life, const results::Shaking& s)
{
    double road = 0;
    for (const results::Answer& a : s.answers) {
        const double n = cycles(a, s), part = random_part(life, a, n);
        if (!(part < road)) {
            road = part;
            life.sigma_MPa = life.per_g_MPa * a.rms_g;
            life.at_Hz = a.f_Hz;
            life.three_band = n * strength::three_band_damage(strength::SnLine::direct, life.category, gamma_Mf * life.sigma_MPa);
        }
        if (std::isnan(road)) break;
    }
    life.damage_running = running_part(life, s, s.wanted_mm / s.distance_per_year_mm);
    life.damage = road + life.damage_running;
    if (!(life.damage > 1e-12)) return; // no damage worth a figure: no distance is printed for it
    life.km = s.wanted_mm / mm_per_km * damage_limit / life.damage;
    life.years = *life.km * mm_per_km / s.distance_per_year_mm;
}

results::Fatigue fatigue_lives(const Demands& d)
{
    results::Fatigue out;
    if (!d.layout->item || d.layout->nothing_hung() || !d.shaking) return out;
    const results::Shaking& s = *d.shaking;
    out.asked = true;
    out.why_not = s.why_not;
    out.lift_with = s.lift_with;
    if (!s.why_not.empty()) return out;
    out.run = true;
    out.limit = damage_limit;
    out.gamma = gamma_Mf;
    out.scope = std::string(strength::fatigue_scope);
    out.lives = fatigue_details(d);
    for (results::Life& life : out.lives) {
        if (!life.why_not.empty()) continue;
        work_out(life, s);
        life.why_not = not_finite(life);
    }
    return out;
}

namespace {

std::string km_words(const results::Life& l)
{
    return l.km ? fmt::format("{:.3g} km, {:.3g} years to the limit", *l.km, *l.years) : "no damage worth a figure";
}

results::Check life_row(const results::Fatigue& f, const results::Life& l)
{
    Place p{fmt::format("fatigue/{}", l.kind), "fatigue", l.part, fmt::format("life of {}, the worst: {}", l.kind, l.detail), true, l.lift_with, ""};
    if (!l.why_not.empty()) return not_covered(p, l.why_not);
    p.note = fmt::format("{}; {:.3g} MPa rms, category {:g} ({}), stress times {:g} (FA-2)", km_words(l), l.sigma_MPa, l.category, l.category_label, f.gamma);
    return against_limit(p, {"random vibration", l.damage, true, ""},
                         {f.limit, "-", "Miner's sum over the wanted distance", "S-N lines of EN 1993-1-9 (read second-hand), by analogy; limit of the sum: common practice, no source", "engineering judgement"});
}

} // namespace

std::vector<results::Check> fatigue(const Demands& d)
{
    std::vector<results::Check> out;
    if (!d.fatigue || !d.fatigue->asked) return out;
    const results::Fatigue& f = *d.fatigue;
    if (!f.run) out.push_back(not_covered({"fatigue", "fatigue", d.layout->item->name, "life under repeated stress", true, f.lift_with, ""}, f.why_not));
    std::vector<std::string> kinds;
    for (const results::Life& l : f.lives)
        if (std::find(kinds.begin(), kinds.end(), l.kind) == kinds.end()) kinds.push_back(l.kind);
    for (const std::string& kind : kinds) {
        const results::Life* worst = nullptr;
        for (const results::Life& l : f.lives)
            if (l.kind == kind && (!worst || results::worse(l, *worst, f.limit))) worst = &l;
        out.push_back(life_row(f, *worst));
    }
    if (f.run && !d.shaking->running_missing.empty()) out.push_back(not_covered({"fatigue/running", "fatigue", d.layout->item->name, "life: what the item's own running adds", true, d.shaking->running_missing, ""}, "it shakes by itself; how hard and how long is not given"));
    for (results::Check& c : out) c.required = c.status == base::Status::fail;
    return out;
}

} // namespace thinskin::checks
