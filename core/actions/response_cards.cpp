// AC-7 .. AC-11: the cards of a mount on a random base.
#include "actions/response.h"

#include <cmath>
#include <numbers>

namespace thinskin::actions {

namespace {

constexpr const char* mechanics = "transfer function of one mass on a base; elementary random vibration";

base::Symbol frequency() { return {.name = "f", .unit = "Hz", .meaning = "natural frequency of the mounted item", .lower = 0.5, .upper = 2000}; }
base::Symbol damping() { return {.name = "zeta", .unit = "-", .meaning = "damping ratio of the mount", .lower = 0.005, .upper = 0.3}; }
base::Symbol density(const char* name, const char* meaning) { return {.name = name, .unit = "g2/Hz", .meaning = meaning, .lower = 0, .upper = 100, .lower_open = true}; }
base::Symbol rate() { return {.name = "nu", .unit = "Hz", .meaning = "upward zero crossings a second", .lower = 0, .upper = 2000, .lower_open = true}; }
base::Symbol duration() { return {.name = "T", .unit = "s", .meaning = "time on the road", .lower = 0, .upper = 1e9, .lower_open = true}; }
base::Symbol end(const char* name, const char* meaning) { return {.name = name, .unit = "Hz", .meaning = meaning, .lower = 0.1, .upper = 5000}; }

base::Resistance segment_formula(const SegmentResponse& in)
{
    RandomResponse r = random_response({{{in.f1_Hz, in.P1}, {in.f2_Hz, in.P2}}}, in.f_n_Hz, in.zeta);
    return r.reason.empty() ? base::covered(r.rms_g, 1) : base::not_covered(std::move(r.reason));
}

base::Resistance peak_formula(const PeakFactor& in)
{
    const double N = in.rate_Hz * in.T_s;
    if (!(N >= 10)) return base::not_covered("fewer than ten cycles: nu T = " + std::to_string(N));
    const double root = std::sqrt(2 * std::log(N));
    return base::covered(root + 0.5772 / root, 1);
}

} // namespace

template <> const Clause<Miles>& clause<Miles>()
{
    static const Clause<Miles> c{
        {.id = "AC-7",
         .title = "Rms of a mount by Miles",
         .formula = "a = (pi/2 f Q P)^0.5, Q = 1/(2 zeta)",
         .unit = "g",
         .rule = "actions",
         .source = "Miles' formula, as quoted in test notes; read second-hand",
         .edition = "-",
         .label = base::Label::published_read,
         .range = "density flat for an octave to both sides of f, damping small",
         .not_for = "design: the program shows it beside the integral (AC-8) and never uses it; steep or notched densities; f below the table's first point"},
        {{&Miles::f_n_Hz, frequency()}, {&Miles::zeta, damping()}, {&Miles::P, density("P", "density at f")}},
        [](const Miles& in) { return base::covered(std::sqrt(std::numbers::pi / 2 * in.f_n_Hz * in.P / (2 * in.zeta)), 1); }};
    return c;
}

template <> const Clause<SegmentResponse>& clause<SegmentResponse>()
{
    static const Clause<SegmentResponse> c{
        {.id = "AC-8",
         .title = "Rms of a mount, full integral over one segment",
         .formula = "a^2 = int P (1 + (2 zeta r)^2)/((1 - r^2)^2 + (2 zeta r)^2) df, r = fr/f, fr from f1 to f2, P log-log",
         .unit = "g",
         .rule = "actions",
         .source = mechanics,
         .edition = "-",
         .label = base::Label::computed,
         .range = "f inside the segment; the program adds the segments of a table as squares",
         .not_for = "peaks (AC-9) and weight (AC-11); input that is not steady, such as single bumps and potholes; bump stops, rattling"},
        {{&SegmentResponse::f_n_Hz, frequency()},
         {&SegmentResponse::zeta, damping()},
         {&SegmentResponse::f1_Hz, end("f1", "lower end of the segment")},
         {&SegmentResponse::P1, density("P1", "density at f1")},
         {&SegmentResponse::f2_Hz, end("f2", "upper end, above f1")},
         {&SegmentResponse::P2, density("P2", "density at f2")}},
        &segment_formula};
    return c;
}

template <> const Clause<PeakFactor>& clause<PeakFactor>()
{
    static const Clause<PeakFactor> c{
        {.id = "AC-9",
         .title = "Expected largest peak of a random vibration",
         .formula = "k = (2 ln N)^0.5 + 0.5772/(2 ln N)^0.5, N = nu T",
         .unit = "-",
         .rule = "actions",
         .source = "Davenport 1964, extreme of a Gaussian process; formula recalled, its figures computed",
         .edition = "1964",
         .label = base::Label::from_memory,
         .range = "ten cycles or more, steady Gaussian vibration",
         .not_for = "real roads, which are rougher in places: single events need their own load case"},
        {{&PeakFactor::rate_Hz, rate()}, {&PeakFactor::T_s, duration()}},
        &peak_formula};
    return c;
}

template <> const Clause<LevelCrossings>& clause<LevelCrossings>()
{
    static const Clause<LevelCrossings> c{
        {.id = "AC-10",
         .title = "How often a level is passed in random vibration",
         .formula = "n = nu T exp(-k^2/2)",
         .unit = "-",
         .rule = "actions",
         .source = "Rice 1945, crossings of a Gaussian process; the formula read in a course on design for uncertainty",
         .edition = "1945",
         .label = base::Label::published_read,
         .range = "steady Gaussian vibration",
         .not_for = "calling three times the rms a maximum: it is passed many times an hour"},
        {{&LevelCrossings::rate_Hz, rate()},
         {&LevelCrossings::T_s, duration()},
         {&LevelCrossings::k, {.name = "k", .unit = "-", .meaning = "level over the rms", .lower = 0, .upper = 10}}},
        [](const LevelCrossings& in) { return base::covered(in.rate_Hz * in.T_s * std::exp(-in.k * in.k / 2), 1); }};
    return c;
}

template <> const Clause<RandomFactor>& clause<RandomFactor>()
{
    static const Clause<RandomFactor> c{
        {.id = "AC-11",
         .title = "Total downward factor from random vibration",
         .formula = "down = 1 + k a",
         .unit = "g",
         .rule = "actions",
         .source = "weight and vibration add; elementary",
         .edition = "-",
         .label = base::Label::computed,
         .range = "a at the item, with the mount's answer in it",
         .not_for = "multiplying with a quasi-static factor or a shock response: each of the three already holds the dynamics"},
        {{&RandomFactor::k, {.name = "k", .unit = "-", .meaning = "peak factor (AC-9)", .lower = 0, .upper = 10}},
         {&RandomFactor::rms_g, {.name = "a", .unit = "g", .meaning = "rms of the item's vertical acceleration", .lower = 0, .upper = 100}}},
        [](const RandomFactor& in) { return base::covered(1 + in.k * in.rms_g, 1); }};
    return c;
}

} // namespace thinskin::actions
