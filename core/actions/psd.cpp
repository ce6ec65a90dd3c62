// Notation: f frequency, P one-sided density, n slope of a segment in log-log: P = P1 (f/f1)^n
#include "actions/psd.h"

#include "base/quantity.h"

#include <cmath>
#include <fmt/format.h>

namespace thinskin::actions {

namespace {

double slope(const PsdPoint& a, const PsdPoint& b) { return std::log(b.P / a.P) / std::log(b.f_Hz / a.f_Hz); }

/// (e^(m L) - 1)/m with L = ln(f2/f1): the branch m = 0 is the logarithm, and near it nothing cancels.
double area(const PsdPoint& a, const PsdPoint& b)
{
    const double L = std::log(b.f_Hz / a.f_Hz), m = slope(a, b) + 1;
    return a.P * a.f_Hz * (std::abs(m * L) < 1e-12 ? L : std::expm1(m * L) / m);
}

bool usable(const PsdPoint& p) { return std::isfinite(p.f_Hz) && std::isfinite(p.P) && p.f_Hz > 0 && p.P > 0; }

} // namespace

Psd in_g2_Hz(Psd table, PsdUnit unit)
{
    if (unit == PsdUnit::m2_s3)
        for (PsdPoint& p : table.points) p.P /= base::gravity_m_s2 * base::gravity_m_s2;
    return table;
}

std::string problem_of(const Psd& table)
{
    if (table.points.size() < 2) return "a table of densities needs two points or more";
    for (std::size_t i = 0; i < table.points.size(); ++i) {
        const PsdPoint& p = table.points[i];
        if (!usable(p)) return fmt::format("point {} of the table ({:g} Hz, {:g}) is not above zero", i + 1, p.f_Hz, p.P);
        if (i > 0 && !(p.f_Hz > table.points[i - 1].f_Hz)) return fmt::format("the frequencies of the table do not grow at point {} ({:g} Hz)", i + 1, p.f_Hz);
    }
    return {};
}

double value_at(const Psd& table, double f_Hz)
{
    for (std::size_t i = 0; i + 1 < table.points.size(); ++i) {
        const PsdPoint &a = table.points[i], &b = table.points[i + 1];
        if (f_Hz >= a.f_Hz && f_Hz <= b.f_Hz) return a.P * std::pow(f_Hz / a.f_Hz, slope(a, b));
    }
    return 0;
}

double mean_square(const Psd& table)
{
    double sum = 0;
    for (std::size_t i = 0; i + 1 < table.points.size(); ++i) sum += area(table.points[i], table.points[i + 1]);
    return sum;
}

template <> const Clause<PsdSegment>& clause<PsdSegment>()
{
    static const Clause<PsdSegment> c{
        {.id = "AC-6",
         .title = "Rms of one segment of a spectral density, log-log",
         .formula = "a = (P1 f1/(n+1) ((f2/f1)^(n+1) - 1))^0.5, n = ln(P2/P1)/ln(f2/f1); n = -1: (P1 f1 ln(f2/f1))^0.5",
         .unit = "g",
         .rule = "actions",
         .source = "area under a power law; elementary",
         .edition = "-",
         .label = base::Label::computed,
         .range = "one-sided densities; segments add as squares",
         .not_for = "the answer of a mount (AC-8); straight lines in linear scales, which give too much; two-sided densities, which are half as large"},
        {{&PsdSegment::f1_Hz, {.name = "f1", .unit = "Hz", .meaning = "lower end of the segment", .lower = 0, .upper = 5000, .lower_open = true}},
         {&PsdSegment::P1, {.name = "P1", .unit = "g2/Hz", .meaning = "density at f1", .lower = 0, .upper = 100, .lower_open = true}},
         {&PsdSegment::f2_Hz, {.name = "f2", .unit = "Hz", .meaning = "upper end, above f1", .lower = 0, .upper = 5000, .lower_open = true}},
         {&PsdSegment::P2, {.name = "P2", .unit = "g2/Hz", .meaning = "density at f2", .lower = 0, .upper = 100, .lower_open = true}}},
        [](const PsdSegment& in) {
            const Psd table{{{in.f1_Hz, in.P1}, {in.f2_Hz, in.P2}}};
            if (std::string why = problem_of(table); !why.empty()) return base::not_covered(std::move(why));
            return base::covered(std::sqrt(mean_square(table)), 1);
        }};
    return c;
}

base::Resistance segment_rms(const PsdSegment& in) { return clause<PsdSegment>()(in); }

} // namespace thinskin::actions
