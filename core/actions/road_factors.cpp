// Notation: P peak answer to a pulse, a peak of the vibration, k peak factor, f lowest frequency that counts
#include "actions/road_factors.h"

#include "actions/pulses.h"
#include "actions/quarter_car.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::actions {

namespace {

using catalogue::RoadSurface;

const std::string every = "every driving case";

std::string source_of(const RoadSurface& r)
{
    if (r.origin.note == catalogue::own_row_note) return fmt::format("road of the case's own, {}: {} ({})", r.name, r.origin.source, base::name(r.origin.label));
    if (r.origin.source.empty() || r.origin.source == "no document") return fmt::format("road catalogue, {} ({})", r.name, base::name(r.origin.label));
    return fmt::format("road catalogue, {}: {} ({})", r.name, r.origin.source, base::name(r.origin.label));
}

bool finite(const RoadSurface& r)
{
    return std::isfinite(r.down) && std::isfinite(r.up) && std::isfinite(r.lateral) && std::isfinite(r.fore_aft);
}

RoadFactors refused(std::string reason, std::string lift_with)
{
    RoadFactors f;
    f.basis = "not run";
    f.derivation = reason;
    f.shaking.why_not = reason;
    f.shaking.lift_with = lift_with;
    f.problem = {every, std::move(reason), std::move(lift_with)};
    return f;
}

/// The rules for securing cargo that name forces, beside what is used: where that is less, who asks more. Rules against a breaking strength or a
/// working load are about another strength, those against tipping about no force.
void compare_securing(RoadFactors& f, const std::string& road)
{
    const catalogue::SecuringFactor *along = nullptr, *across = nullptr;
    for (const catalogue::SecuringFactor& s : catalogue::securing_factors()) {
        if (s.against != "forces") continue;
        if (!along || std::max(s.forward, s.rearward) > std::max(along->forward, along->rearward)) along = &s;
        if (!across || s.sideways > across->sideways) across = &s;
    }
    if (!along || !across) return;
    const double most = std::max(along->forward, along->rearward);
    if (f.fore_aft >= most && f.lateral >= across->sideways) {
        f.beside_securing = "; no rule for securing cargo that names forces asks for more (catalogue securing_factors; the cargo standard leaves out vehicles up to 3.5 t, which can brake harder)";
        return;
    }
    f.cautions.push_back(fmt::format("the road row {} has {:g} g along the vehicle and {:g} g across; rules for securing cargo ask for up to {:g} g along ({}) and {:g} g across ({})", road, f.fore_aft, f.lateral, most,
                                     along->origin.source, across->sideways, across->origin.source));
}

RoadFactors of_row(const RoadSurface& r)
{
    RoadFactors f;
    f.down = r.down;
    f.up = r.up;
    f.lateral = f.mixed_lateral = r.lateral;
    f.fore_aft = f.mixed_fore_aft = r.fore_aft;
    f.source = source_of(r);
    f.shaking.why_not = "this way to the road's factor knows peaks and no spectrum: how often which stress repeats is not known";
    f.shaking.lift_with = "road.basis: random_vibration";
    f.basis = "quasi-static";
    f.derivation = fmt::format("{:g} g down in total ({:g} g on top of the weight) for {} ({}); it is already dynamic, so neither shock response nor random vibration multiplies it", r.down, r.down - 1, r.origin.note == catalogue::own_row_note ? r.name : r.name + " roads",
                               base::name(r.origin.label));
    return f;
}

/// The mount: lowest frequency that counts, damping, and where they come from.
struct MountOf { double f_Hz = 0, zeta = 0.05; std::string words; bool assumed_damping = true; };

std::optional<MountOf> mount_of(const layout::Layout& l, std::optional<double> solver_Hz)
{
    MountOf m;
    if (const auto& d = l.source->road->damping) {
        m.zeta = d->value;
        m.assumed_damping = false;
    }
    if (l.source->item && l.source->item->natural_frequency) {
        const double f = l.source->item->natural_frequency->value;
        m.f_Hz = 0.85 * f;
        m.words = fmt::format("any mount at or above {:.4g} Hz (lowest natural frequency {:g} Hz measured, taken 15 % lower)", m.f_Hz, f);
    } else if (solver_Hz) {
        m.f_Hz = 0.5 * *solver_Hz;
        m.words = fmt::format("any mount at or above {:.4g} Hz (by the solver: half of the lowest with rigid edges, at most the lowest of a door on its own frame)", m.f_Hz);
    } else {
        return std::nullopt;
    }
    return m;
}

void assume_damping(RoadFactors& f, const MountOf& m)
{
    if (m.assumed_damping) f.assumptions.push_back({"road.damping", "5 %", "nobody measured it", "not run"});
}

// ---- base pulse

std::optional<Pulse> shape_of(const catalogue::BasePulse& p)
{
    if (p.shape == "half-sine") return Pulse::half_sine;
    if (p.shape == "sawtooth") return Pulse::sawtooth;
    if (p.shape == "versed sine") return Pulse::versed_sine;
    return std::nullopt;
}

/// Largest absolute answer over A of all mounts with f D at or above x; 0 when the rule does not cover it. Beyond f D = 10 it is near 1.
double largest_answer(Pulse pulse, double x, double zeta)
{
    double most = 0;
    for (double at = x; at < std::max(10.0, 1.01 * x); at *= 1.02) {
        const auto peaks = shock_peaks(pulse, at, zeta);
        if (!peaks) return 0;
        most = std::max(most, peaks->absolute);
    }
    return most;
}

RoadFactors of_pulse(const layout::Layout& l, const RoadSurface& r, std::optional<double> solver_Hz)
{
    const std::string& name = l.source->road->pulse;
    if (name.empty()) return refused("no base pulse is named", "road.pulse");
    const auto p = catalogue::base_pulse(name, l.source->own);
    const auto shape = p ? shape_of(*p) : std::nullopt;
    if (!shape) return refused(fmt::format("no base pulse called {}", name), "road.pulse");
    const auto m = mount_of(l, solver_Hz);
    if (!m) return refused("the natural frequency of the hung item is not known", "item.natural_frequency");
    const double S = largest_answer(*shape, m->f_Hz * p->D_s, m->zeta), P = S * p->A_g;
    if (!(P > 0 && std::isfinite(P))) return refused("frequency and duration of the pulse are outside of the rule (f D up to 50)", "road.pulse");
    RoadFactors f = of_row(r);
    f.down = 1 + P;
    f.up = P - 1;
    f.lateral = std::max(P, r.lateral);
    f.fore_aft = std::max(P, r.fore_aft);
    f.basis = "base pulse";
    f.source = fmt::format("base pulse {}: {} ({})", p->name, p->origin.source, base::name(p->origin.label));
    f.derivation = fmt::format("{} {:g} g, {:g} ms; largest absolute acceleration of {}, damping {:g} %: {:.3f} times the pulse (AC-4) = {:.2f} g in both senses of each axis on its own; "
                               "down {:.2f} g with the weight. No road factor and no random vibration multiplies it",
                               p->shape, p->A_g, 1000 * p->D_s, m->words, 100 * m->zeta, S, P, f.down);
    f.cautions.push_back("base pulses of test standards are for small devices on stiff fixtures; they say nothing about this road");
    assume_damping(f, *m);
    return f;
}

// ---- random vibration

/// The governing answer of all mounts at or above f.
struct Answer { RandomResponse response; double f_Hz = 0; std::vector<results::Answer> all = {}; };

template <class At> Answer largest_of(double f, double last, At at)
{
    Answer most;
    most.response = at(f);
    most.f_Hz = f;
    std::vector<results::Answer> all{{f, most.response.rms_g, most.response.rate_Hz}};
    for (double next = 1.04 * f; most.response.reason.empty() && next <= last; next *= 1.04) {
        RandomResponse r = at(next);
        all.push_back({next, r.rms_g, r.rate_Hz});
        if (!r.reason.empty() || r.rms_g > most.response.rms_g) most = {std::move(r), next};
    }
    most.all = std::move(all);
    return most;
}

double overhang_of(const model::Road& road, RoadFactors& f)
{
    if (road.wheelbase && road.overhang) {
        const auto k = overhang({.d_mm = road.overhang->value, .L_mm = road.wheelbase->value, .q = 1});
        return k.covered ? k.nominal : 0;
    }
    constexpr double usual = 1.41;
    f.assumptions.push_back({"overhang behind the rear axle", "x1.41 (1.2 m on a wheelbase of 3.3 m)", "road.overhang and road.wheelbase are not given", "not run"});
    return usual;
}

Psd table_of(const model::Road& road)
{
    Psd table;
    for (const model::DensityPoint& p : road.density) table.points.push_back({p.at.value, p.value.value});
    return table;
}

struct Shaken { Answer answer; double factor = 1; std::string words; };

Shaken by_class(const model::Road& road, const MountOf& m, RoadFactors& f)
{
    Shaken s;
    const bool laden = road.load == model::VehicleLoad::laden;
    const Road under{roughness_of_class(road.roughness[0]), road.speed->value};
    s.answer = largest_of(m.f_Hz, 80, [&](double at) { return mount_on_car(laden ? rear_corner_laden : rear_corner_unladen, under, at, m.zeta); });
    s.factor = overhang_of(road, f);
    s.words = fmt::format("road of class {} at {:.3g} km/h, {} quarter car of a light van, times {:.3f} for the overhang (AC-14, AC-15)", road.roughness, road.speed->value * 3.6e-3,
                          laden ? "laden" : "unladen", s.factor);
    f.assumptions.push_back({"quarter car", laden ? "700 and 75 kg, 45 and 260 N/mm, 3.2 N s/mm" : "350 and 75 kg, 45 and 260 N/mm, 3.2 N s/mm", "common practice, no source", "not run"});
    f.cautions.push_back("the quarter car has a stiff body: modes of body and door (20 to 40 Hz) are not in it and add to it");
    return s;
}

Shaken by_density(const model::Road& road, const MountOf& m)
{
    Shaken s;
    const Psd table = table_of(road);
    s.answer = largest_of(m.f_Hz, table.points.back().f_Hz, [&](double at) { return random_response(table, at, m.zeta); });
    const RandomResponse& r = s.answer.response;
    s.words = fmt::format("density of the case, {:.4g} g rms (AC-6, AC-8)", std::sqrt(mean_square(table)));
    if (r.reason.empty())
        s.words += fmt::format("; Miles beside it, not used: {:.3f} g{}", r.miles_g, r.miles_warning.empty() ? std::string{} : " (doubtful: " + r.miles_warning + ")");
    return s;
}

constexpr double usual_years = 10;

/// What the item does to itself while it runs.
void take_running(const model::Item& item, results::Shaking& s)
{
    for (const model::Quantity& f : item.running_frequency) s.running_Hz.push_back(f.value);
    if (s.running_Hz.empty()) return;
    if (item.running_acceleration && item.running_time_per_year) {
        s.running_g = item.running_acceleration->value;
        s.running_s_a_year = item.running_time_per_year->value;
        return;
    }
    s.running_Hz.clear();
    s.running_missing = item.running_acceleration ? "item.running_time_per_year" : "item.running_acceleration";
}

results::Shaking shaking_of(const layout::Layout& l, const Shaken& s)
{
    const model::Road& road = *l.source->road;
    results::Shaking out;
    out.why_not = out.lift_with = "";
    for (results::Answer a : s.answer.all) {
        a.rms_g *= s.factor;
        out.answers.push_back(a);
    }
    out.speed_mm_s = road.speed->value;
    out.distance_per_year_mm = road.distance_per_year->value;
    out.wanted_mm = road.life_distance ? road.life_distance->value : usual_years * out.distance_per_year_mm;
    out.wanted_words = road.life_distance ? "road.life_distance" : "ten years, nobody said";
    if (l.source->item) take_running(*l.source->item, out);
    return out;
}

RoadFactors of_random(const layout::Layout& l, const RoadSurface& r, std::optional<double> solver_Hz)
{
    const model::Road& road = *l.source->road;
    if (road.roughness.empty() && road.density.empty()) return refused("neither a class of roughness nor a density is given", "road.roughness");
    if (!road.speed) return refused("the speed is not given", "road.speed");
    if (!road.distance_per_year) return refused("the distance a year is not given: the largest of how many shakes is not known", "road.distance_per_year");
    const auto m = mount_of(l, solver_Hz);
    if (!m) return refused("the natural frequency of the hung item is not known", "item.natural_frequency");
    RoadFactors f = of_row(r);
    const Shaken s = road.density.empty() ? by_class(road, *m, f) : by_density(road, *m);
    if (!s.answer.response.reason.empty()) return refused(s.answer.response.reason, road.density.empty() ? "item.natural_frequency" : "road.density");
    const double rms = s.factor * s.answer.response.rms_g;
    const auto k = peak_factor({.rate_Hz = s.answer.response.rate_Hz, .T_s = road.distance_per_year->value / road.speed->value});
    if (!(k.covered && rms > 0 && std::isfinite(rms))) return refused("distance, speed, overhang or wheelbase are outside of the rules", "road.distance_per_year");
    const double a = k.nominal * rms;
    f.down = 1 + a;
    f.up = a - 1;
    f.basis = "random vibration";
    f.source = road.density.empty() ? "road roughness through a quarter car (computed from the formula; vehicle: common practice, no source)" : "density of the case file (computed from the formula)";
    f.derivation = fmt::format("{}; {}, damping {:g} %: worst at {:.3g} Hz, {:.3f} g rms; a year's distance at that speed, {:.2g} cycles: largest peak {:.2f} times the rms (AC-9) = {:.2f} g; "
                               "down {:.2f} g with the weight (AC-11). Along and across the vehicle: the road row, {}. Neither a quasi-static factor nor a pulse multiplies it",
                               s.words, m->words, 100 * m->zeta, s.answer.f_Hz, rms, s.answer.response.rate_Hz * road.distance_per_year->value / road.speed->value, k.nominal, a, f.down, r.name);
    f.cautions.push_back("steady vibration holds no single potholes, kerbs or bumps");
    if (!(f.down >= r.down)) f.cautions.push_back(fmt::format("random vibration gives {:.2f} g down, less than the {:g} g of the road row {}, which holds its potholes", f.down, r.down, r.name));
    assume_damping(f, *m);
    f.shaking = shaking_of(l, s);
    if (!road.life_distance) f.assumptions.push_back({"road.life_distance", "ten years of distance_per_year", "nobody said how long the job has to last", "not run"});
    return f;
}

RoadFactors by_basis(const layout::Layout& l, const RoadSurface& r, std::optional<double> solver_Hz)
{
    switch (l.source->road->basis) {
    case model::Basis::quasi_static: return of_row(r);
    case model::Basis::base_pulse: return of_pulse(l, r, solver_Hz);
    case model::Basis::random_vibration: return of_random(l, r, solver_Hz);
    }
    return refused("no basis", "road.basis");
}

} // namespace

RoadFactors road_factors(const layout::Layout& l, std::optional<double> solver_Hz)
{
    if (!l.source || !l.source->road) return refused("no road is given", "road");
    const auto r = catalogue::road_surface(l.source->road->surface, l.source->own);
    if (!r) return refused(fmt::format("no road surface called {}", l.source->road->surface), "road.surface");
    if (!finite(*r)) return refused(fmt::format("the road row {} has a figure that is not a number", r->name), "road.surface");
    RoadFactors f = by_basis(l, *r, solver_Hz);
    if (f.problem.reason.empty()) compare_securing(f, r->name);
    return f;
}

} // namespace thinskin::actions
