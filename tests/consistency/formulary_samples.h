#pragma once
#include "base/card.h"

#include <cmath>
#include <optional>
#include <random>
#include <vector>

namespace thinskin::tests {

/// A random admissible value of a symbol: a choice, or a point between its bounds (logarithmic where the range is wide).
inline double sample(const base::Symbol& s, std::mt19937& random)
{
    if (!s.choices.empty()) return s.choices[random() % s.choices.size()];
    const double share = std::uniform_real_distribution<double>(0, 1)(random);
    const double lower = std::isfinite(s.lower) ? s.lower : -1e4;
    const double upper = std::isfinite(s.upper) ? s.upper : std::max(1e4, 10 * std::abs(lower));
    if (lower >= 0 && upper > 100 * (lower + 0.01)) return lower + (upper - lower) * std::pow(10.0, -4 * share);
    return lower + (upper - lower) * (0.001 + 0.998 * share);
}

/// Values of a card that it covers; nullopt after many tries = there seem to be none.
inline std::optional<std::vector<double>> covered_sample(const base::Card& card, std::mt19937& random, int tries = 5000)
{
    std::vector<double> values(card.symbols.size());
    while (tries-- > 0) {
        for (std::size_t i = 0; i < values.size(); ++i) values[i] = sample(card.symbols[i], random);
        if (card.evaluate(values).covered) return values;
    }
    return std::nullopt;
}

} // namespace thinskin::tests
