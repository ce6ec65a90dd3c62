#include "actions/slam_answer.h"

#include "actions/pulses.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::actions {

namespace {

/// Largest answer between two products of frequency and duration; NaN outside of AC-4.
double largest(double x0, double x1, double zeta)
{
    double most = 0;
    for (double x = x0;; x = std::min(x1, 1.02 * x)) {
        const auto peaks = shock_peaks(Pulse::half_sine, x, zeta);
        if (!peaks) return NAN;
        most = std::max(most, peaks->absolute);
        if (!(x < x1)) return most;
    }
}

/// The known maximum lies at f D = 0.81 without damping and at 0.83 with 10 %.
double of_any(double zeta) { return largest(0.7, 1.0, zeta); }

} // namespace

bool slams(const layout::Layout& l) { return l.source && l.item && l.door && l.door->has_slam; }

std::optional<SlamAnswer> slam_answer(const layout::Layout& l, std::optional<double> solver_Hz)
{
    if (!slams(l)) return std::nullopt;
    const double D = l.door->slam_stop;
    const auto& damping = l.source->road ? l.source->road->damping : std::nullopt;
    const double zeta = damping ? damping->value : 0.05;
    SlamAnswer a;
    a.any = a.lowest = of_any(zeta);
    std::string mount = "a mount of any frequency";
    if (const auto& measured = l.source->item->natural_frequency) {
        a.from_Hz = 0.85 * measured->value;
        a.to_Hz = 1.15 * measured->value;
        mount = fmt::format("a mount of {:.3g} to {:.3g} Hz ({:g} Hz measured, 15 % each way)", a.from_Hz, a.to_Hz, measured->value);
    } else if (solver_Hz) {
        a.from_Hz = 0.5 * *solver_Hz;
        a.to_Hz = *solver_Hz;
        mount = fmt::format("a mount of {:.3g} to {:.3g} Hz (half of the solver's lowest to all of it)", a.from_Hz, a.to_Hz);
    }
    if (a.to_Hz > 0) a.lowest = largest(a.from_Hz * D, a.to_Hz * D, zeta);
    if (!(std::isfinite(a.any) && std::isfinite(a.lowest) && a.lowest > 0)) return std::nullopt;
    a.words = fmt::format("{}, damping {:g} %{}, answers a half-sine of {:g} ms with {:.2f} times its peak (AC-4, absolute acceleration)", mount, 100 * zeta, damping ? "" : " (nobody measured it)", 1000 * D, a.lowest);
    return a;
}

} // namespace thinskin::actions
