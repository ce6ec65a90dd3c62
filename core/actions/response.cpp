// Notation: P one-sided density, f_n and zeta of the mount, r = f/f_n, m0 and m2 spectral moments, N cycles
#include "actions/response.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace thinskin::actions {

namespace {

struct GaussPoint { double at, weight; };
/// 8 points on [-1, 1].
constexpr std::array<GaussPoint, 4> gauss{{{0.1834346424956498, 0.3626837833783620},
                                           {0.5255324099163290, 0.3137066458778873},
                                           {0.7966664774136267, 0.2223810344533745},
                                           {0.9602898564975363, 0.1012285362903763}}};

/// Ends of pieces in ln f: half an octave at most, and finer towards f_n, where the answer is narrow.
std::vector<double> pieces(double from, double to, double centre, double zeta)
{
    std::vector<double> ends{from, to};
    const auto put = [&](double at) {
        if (at > from && at < to) ends.push_back(at);
    };
    put(centre);
    for (double d = 0.5 * zeta; d < to - from + std::abs(centre - from); d *= 2) {
        put(centre - d);
        put(centre + d);
    }
    for (double at = from + 0.35; at < to; at += 0.35) put(at);
    std::sort(ends.begin(), ends.end());
    return ends;
}

Moments& operator+=(Moments& a, const Moments& b)
{
    a.m0 += b.m0;
    a.m2 += b.m2;
    return a;
}

bool mount_in_range(double f_n, double zeta) { return std::isfinite(f_n) && f_n > 0 && zeta >= 0.005 && zeta <= 0.3; }

/// What speaks against Miles at this place; empty when nothing does.
std::string miles_doubts(const Psd& table, double f_n, double zeta)
{
    std::vector<std::string> doubts;
    if (zeta > 0.1) doubts.push_back("damping is above 0.1");
    if (!(f_n / 2 >= table.points.front().f_Hz && f_n * 2 <= table.points.back().f_Hz)) doubts.push_back("the table does not reach an octave to both sides");
    double least = value_at(table, f_n), most = least;
    for (double f : {f_n / 2, f_n / 1.4142, f_n * 1.4142, f_n * 2})
        if (const double P = value_at(table, f); P > 0) {
            least = std::min(least, P);
            most = std::max(most, P);
        }
    for (const PsdPoint& p : table.points)
        if (p.f_Hz >= f_n / 2 && p.f_Hz <= f_n * 2) {
            least = std::min(least, p.P);
            most = std::max(most, p.P);
        }
    if (!(most <= 1.25 * least)) doubts.push_back("the density is not flat within an octave");
    std::string text;
    for (const std::string& d : doubts) text += (text.empty() ? "" : "; ") + d;
    return text;
}

RandomResponse refused(std::string reason)
{
    RandomResponse r;
    r.reason = std::move(reason);
    return r;
}

} // namespace

double transmissibility_squared(double r, double zeta)
{
    const double c = 2 * zeta * r, k = 1 - r * r;
    return (1 + c * c) / (k * k + c * c);
}

Moments response_moments(const std::function<double(double)>& P, double f1_Hz, double f2_Hz, double f_n_Hz, double zeta)
{
    if (!(f1_Hz > 0 && f2_Hz > f1_Hz && f_n_Hz > 0 && zeta > 0 && std::isfinite(f2_Hz) && std::isfinite(f_n_Hz))) return {std::nan(""), std::nan("")};
    Moments sum;
    const std::vector<double> ends = pieces(std::log(f1_Hz), std::log(f2_Hz), std::log(f_n_Hz), zeta);
    for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
        const double middle = 0.5 * (ends[i] + ends[i + 1]), half = 0.5 * (ends[i + 1] - ends[i]);
        for (const GaussPoint& g : gauss)
            for (const double at : {middle - half * g.at, middle + half * g.at}) {
                const double f = std::exp(at), y = P(f) * transmissibility_squared(f / f_n_Hz, zeta) * f * half * g.weight;
                sum += {y, f * f * y};
            }
    }
    return sum;
}

RandomResponse random_response(const Psd& table, double f_n_Hz, double zeta)
{
    if (std::string why = problem_of(table); !why.empty()) return refused(std::move(why));
    if (!mount_in_range(f_n_Hz, zeta)) return refused(fmt::format("a mount of {:g} Hz and damping {:g} is outside of the rule (damping 0.005 .. 0.3)", f_n_Hz, zeta));
    const double first = table.points.front().f_Hz, last = table.points.back().f_Hz;
    if (!(f_n_Hz >= first && f_n_Hz <= last))
        return refused(fmt::format("the natural frequency {:.4g} Hz is outside of the table ({:g} .. {:g} Hz): what shakes the mount most is not in it", f_n_Hz, first, last));
    Moments m;
    for (std::size_t i = 0; i + 1 < table.points.size(); ++i) {
        const PsdPoint a = table.points[i], b = table.points[i + 1];
        const double n = std::log(b.P / a.P) / std::log(b.f_Hz / a.f_Hz);
        m += response_moments([a, n](double f) { return a.P * std::pow(f / a.f_Hz, n); }, a.f_Hz, b.f_Hz, f_n_Hz, zeta);
    }
    RandomResponse r;
    r.rms_g = std::sqrt(m.m0);
    r.rate_Hz = std::sqrt(m.m2 / m.m0);
    r.miles_g = miles({.f_n_Hz = f_n_Hz, .zeta = zeta, .P = value_at(table, f_n_Hz)}).nominal;
    r.miles_warning = miles_doubts(table, f_n_Hz, zeta);
    return r;
}

base::Resistance miles(const Miles& in) { return clause<Miles>()(in); }
base::Resistance segment_response(const SegmentResponse& in) { return clause<SegmentResponse>()(in); }
base::Resistance peak_factor(const PeakFactor& in) { return clause<PeakFactor>()(in); }
base::Resistance level_crossings(const LevelCrossings& in) { return clause<LevelCrossings>()(in); }
base::Resistance random_factor(const RandomFactor& in) { return clause<RandomFactor>()(in); }

} // namespace thinskin::actions
