// Notation, time in radians of the mount (theta = w t), accelerations over the base's peak A:
//   u = w^2 z/A, v = w z'/A   stroke and its speed         a, b   base acceleration and its slope: a' = r b
//   r = W/w                   the pulse's own frequency over the mount's
//   s = (u, v, a, b, 1)       s' = M s, so that s(theta + h) = exp(M h) s without error
#include "actions/pulses.h"

#include "base/quantity.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace thinskin::actions {

namespace {

constexpr double pi = std::numbers::pi;
constexpr std::size_t n = 5;
constexpr double steps_a_period = 200;
using State = std::array<double, n>;
using Matrix = std::array<State, n>;

State times(const Matrix& m, const State& s)
{
    State out{};
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = 0; j < n; ++j) out[i] += m[i][j] * s[j];
    return out;
}

Matrix times(const Matrix& a, const Matrix& b)
{
    Matrix out{};
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = 0; j < n; ++j)
            for (std::size_t k = 0; k < n; ++k) out[i][j] += a[i][k] * b[k][j];
    return out;
}

/// exp(M h) by its series; |M| h is below 0.04, so that 12 terms are far beyond rounding.
Matrix exponential(const Matrix& M, double h)
{
    Matrix sum{}, term{};
    for (std::size_t i = 0; i < n; ++i) sum[i][i] = term[i][i] = 1;
    for (int k = 1; k <= 12; ++k) {
        term = times(term, M);
        for (std::size_t i = 0; i < n; ++i)
            for (std::size_t j = 0; j < n; ++j) {
                term[i][j] *= h / k;
                sum[i][j] += term[i][j];
            }
    }
    return sum;
}

/// Mount with a base that follows a' = r b, b' = -r p (a - q).
Matrix mount(double zeta, double r, double p, double q)
{
    Matrix M{};
    M[0][1] = 1;
    M[1] = {-1, -2 * zeta, -1, 0, 0};
    M[2][3] = r;
    M[3] = {0, 0, -r * p, 0, r * p * q};
    return M;
}

/// Largest |y| of equally spaced samples, with the vertex of the parabola through each peak.
class Peak {
public:
    void add(double y)
    {
        largest_ = std::max(largest_, std::abs(y));
        const double bend = before_[0] - 2 * before_[1] + y;
        if (count_ >= 2 && std::abs(before_[1]) >= std::abs(before_[0]) && std::abs(before_[1]) >= std::abs(y) && before_[0] * y > 0 && bend != 0)
            largest_ = std::max(largest_, std::abs(before_[1] - (y - before_[0]) * (y - before_[0]) / (8 * bend)));
        before_ = {before_[1], y};
        ++count_;
    }
    void restart() { count_ = 0; } ///< the slope may jump here
    [[nodiscard]] double largest() const { return largest_; }

private:
    std::array<double, 2> before_{};
    double largest_ = 0;
    int count_ = 0;
};

struct Search {
    double zeta = 0;
    Peak absolute{}, pseudo{};
    void add(const State& s)
    {
        absolute.add(s[0] + 2 * zeta * s[1]);
        pseudo.add(s[0]);
    }
    void run(const Matrix& step, State& s, int steps)
    {
        absolute.restart();
        pseudo.restart();
        add(s);
        for (int i = 0; i < steps; ++i) add(s = times(step, s));
    }
    /// One period of the free motion holds its largest peaks.
    void free_motion(State s)
    {
        s[2] = s[3] = s[4] = 0;
        const double period = 2 * pi / std::sqrt(1 - zeta * zeta);
        run(exponential(mount(zeta, 0, 0, 0), period / steps_a_period), s, static_cast<int>(steps_a_period));
    }
    [[nodiscard]] ShockPeaks peaks() const { return {absolute.largest(), pseudo.largest()}; }
};

struct Motion { Matrix M; State start; };

Motion motion_of(Pulse pulse, double x, double zeta)
{
    switch (pulse) {
    case Pulse::half_sine: return {mount(zeta, 1 / (2 * x), 1, 0), {0, 0, 0, 1, 1}};
    case Pulse::sawtooth: return {mount(zeta, 1 / (2 * pi * x), 0, 0), {0, 0, 0, 1, 1}};
    case Pulse::versed_sine: return {mount(zeta, 1 / x, 1, 0.5), {0, 0, 0, 0, 1}};
    }
    return {};
}

bool damping_in_range(double zeta) { return zeta >= 0 && zeta <= 0.5; }

} // namespace

std::optional<ShockPeaks> shock_peaks(Pulse pulse, double x, double zeta)
{
    if (!(x > 0 && x <= 50 && damping_in_range(zeta))) return std::nullopt;
    Search search{.zeta = zeta};
    auto [M, s] = motion_of(pulse, x, zeta);
    const int steps = static_cast<int>(std::ceil(steps_a_period * std::max(1.0, x)));
    search.run(exponential(M, 2 * pi * x / steps), s, steps);
    search.free_motion(s);
    return search.peaks();
}

std::optional<ShockPeaks> shock_peaks(const Record& record, double f_Hz, double zeta)
{
    const double h = 2 * pi * f_Hz * record.dt_s;
    if (!(record.a.size() >= 2 && h > 0 && h <= 2 * pi * 0.05 && damping_in_range(zeta))) return std::nullopt;
    if (!std::all_of(record.a.begin(), record.a.end(), [](double a) { return std::isfinite(a); })) return std::nullopt;
    const int parts = static_cast<int>(std::ceil(h / (2 * pi) * steps_a_period));
    const Matrix step = exponential(mount(zeta, 1, 0, 0), h / parts); // a' = b: the slope of the straight line
    Search search{.zeta = zeta};
    State s{};
    for (std::size_t i = 0; i + 1 < record.a.size(); ++i) {
        s[2] = record.a[i];
        s[3] = (record.a[i + 1] - record.a[i]) / h;
        search.run(step, s, parts);
    }
    search.free_motion(s);
    return search.peaks();
}

namespace {

base::Resistance shock_formula(const ShockResponse& in)
{
    const auto peaks = shock_peaks(static_cast<Pulse>(static_cast<int>(in.pulse)), in.f_Hz * in.D_s, in.zeta);
    if (!peaks) return base::not_covered("f D = " + std::to_string(in.f_Hz * in.D_s) + " is outside > 0, <= 50");
    return base::covered(in.A_g * (in.kind == pseudo_acceleration ? peaks->pseudo : peaks->absolute), 1);
}

base::Resistance speed_formula(const SpeedChange& in)
{
    const double shape = in.pulse == half_sine ? 2 / pi : 0.5;
    return base::covered(shape * in.A_g * base::gravity_m_s2 * 1000 * in.D_s, 1);
}

const base::Symbol pulse_symbol{.name = "pulse", .unit = "-", .meaning = "0 half-sine, 1 terminal-peak sawtooth, 2 versed sine", .choices = {half_sine, sawtooth, versed_sine}};
const base::Symbol A_symbol{.name = "A", .unit = "g", .meaning = "peak of the base's acceleration", .lower = 0, .upper = 1000};
const base::Symbol D_symbol{.name = "D", .unit = "s", .meaning = "duration of the pulse", .lower = 0.0001, .upper = 2};

} // namespace

template <> const Clause<ShockResponse>& clause<ShockResponse>()
{
    static const Clause<ShockResponse> c{
        {.id = "AC-4",
         .title = "Shock response of a mount to a base pulse",
         .formula = "a = A S(pulse, f D, zeta), S the largest answer during and after the pulse",
         .unit = "g",
         .rule = "actions",
         .source = "equation of motion of one mass on a base, solved without error; elementary dynamics",
         .edition = "-",
         .label = base::Label::computed,
         .range = "one degree of freedom, linear, base stiff against the mount; f D up to 50",
         .not_for = "roads: a test pulse on a stiff fixture is not a design load of a heavy unit on thin sheet; a second dynamic factor on top; "
                    "two mounts in series; bump stops"},
        {{&ShockResponse::pulse, pulse_symbol},
         {&ShockResponse::kind, {.name = "kind", .unit = "-", .meaning = "0 absolute acceleration, 1 pseudo-acceleration (spring force)", .choices = {0, 1}}},
         {&ShockResponse::A_g, A_symbol},
         {&ShockResponse::D_s, D_symbol},
         {&ShockResponse::f_Hz, {.name = "f", .unit = "Hz", .meaning = "natural frequency of the mounted item", .lower = 0.1, .upper = 1000}},
         {&ShockResponse::zeta, {.name = "zeta", .unit = "-", .meaning = "damping ratio of the mount", .lower = 0, .upper = 0.5}}},
        &shock_formula};
    return c;
}

template <> const Clause<SpeedChange>& clause<SpeedChange>()
{
    static const Clause<SpeedChange> c{
        {.id = "AC-5",
         .title = "Speed change of a pulse",
         .formula = "dv = 2 A g D/pi (half-sine), A g D/2 (sawtooth, versed sine)",
         .unit = "mm/s",
         .rule = "actions",
         .source = "area under the pulse; elementary",
         .edition = "-",
         .label = base::Label::computed,
         .range = "all",
         .not_for = "rebound: what springs back has more than this taken from it"},
        {{&SpeedChange::pulse, pulse_symbol}, {&SpeedChange::A_g, A_symbol}, {&SpeedChange::D_s, D_symbol}},
        &speed_formula};
    return c;
}

base::Resistance shock_response(const ShockResponse& in) { return clause<ShockResponse>()(in); }
base::Resistance speed_change(const SpeedChange& in) { return clause<SpeedChange>()(in); }

} // namespace thinskin::actions
