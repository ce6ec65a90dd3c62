// Notation: S stress range, S_D and S_L knees of the line, C category, sigma rms of the stress, t = (S/sigma)^2/8, K = N S^m
#include "strength/fatigue.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace thinskin::strength {

namespace {

constexpr double N_C = 2e6, N_D = 5e6, N_L = 1e8;

double cube(double x) { return x * x * x; }
double fifth(double x) { return x * x * x * x * x; }

struct Constants { double K3, K5; };
Constants constants(SnLine line, double C)
{
    if (line == SnLine::shear) return {0, N_C * fifth(C)};
    return {N_C * cube(C), N_D * fifth(sn_knees(line, C).S_D_MPa)};
}

} // namespace

SnKnees sn_knees(SnLine line, double C)
{
    if (line == SnLine::shear) return {0, std::pow(N_C / N_L, 0.2) * C};
    const double S_D = std::cbrt(N_C / N_D) * C;
    return {S_D, std::pow(N_D / N_L, 0.2) * S_D};
}

double sn_cycles(SnLine line, double C, double S)
{
    const auto [S_D, S_L] = sn_knees(line, C);
    const auto [K3, K5] = constants(line, C);
    if (S < S_L) return std::numeric_limits<double>::infinity();
    if (line == SnLine::direct && S >= S_D) return K3 / cube(S);
    return K5 / fifth(S);
}

double miner_sum(SnLine line, double C, const std::vector<Block>& blocks)
{
    double sum = 0;
    for (const Block& b : blocks) sum += b.n / sn_cycles(line, C, b.S_MPa);
    return sum;
}

double upper_gamma(int twice_a, double t)
{
    // Gamma(a + 1, t) = a Gamma(a, t) + t^a exp(-t)
    double a = twice_a % 2 ? 0.5 : 1;
    double value = twice_a % 2 ? std::sqrt(std::numbers::pi) * std::erfc(std::sqrt(t)) : std::exp(-t);
    for (; 2 * a < twice_a - 0.5; a += 1) value = a * value + std::pow(t, a) * std::exp(-t);
    return value;
}

double narrow_band_damage(SnLine line, double C, double sigma)
{
    if (sigma == 0) return 0;
    const auto [S_D, S_L] = sn_knees(line, C);
    const auto [K3, K5] = constants(line, C);
    const double S = 2 * std::numbers::sqrt2 * sigma, t_D = S_D * S_D / (S * S), t_L = S_L * S_L / (S * S);
    if (line == SnLine::shear) return fifth(S) / K5 * upper_gamma(7, t_L);
    return cube(S) / K3 * upper_gamma(5, t_D) + fifth(S) / K5 * (upper_gamma(7, t_L) - upper_gamma(7, t_D));
}

double three_band_damage(SnLine line, double C, double sigma)
{
    return miner_sum(line, C, {{2 * sigma, 0.683}, {4 * sigma, 0.271}, {6 * sigma, 0.0433}});
}

} // namespace thinskin::strength
