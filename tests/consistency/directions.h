#pragma once
#include "formulary_samples.h"

#include <doctest/doctest.h>
#include <map>
#include <set>
#include <string>

/// Which way each symbol of a formula moves its answer, over random admissible values.
namespace thinskin::tests {

struct Direction {
    int sign;              ///< +1 more gives more, -1 more gives less, 0 no direction
    double allowed = 0;    ///< relative loss that the formula has by itself
};
using Directions = std::map<std::string, Direction>;

/// Moves one symbol up within its range; false = it could not be moved.
inline bool raise(const base::Symbol& s, double& value, std::mt19937& random)
{
    const double other = sample(s, random);
    const double nudged = value * 1.02;
    const bool near = s.choices.empty() && random() % 2 == 0 && nudged > value && base::outside(s, nudged).empty();
    const double next = near ? nudged : other;
    if (!(next > value)) return false;
    value = next;
    return true;
}

inline void check_direction(const base::Card& card, std::size_t i, Direction direction, std::mt19937& random)
{
    int compared = 0;
    for (int k = 0; k < 3000 && compared < 400; ++k) {
        auto values = covered_sample(card, random);
        REQUIRE(values.has_value());
        const double before = card.evaluate(*values).capacity, from = (*values)[i];
        if (!raise(card.symbols[i], (*values)[i], random)) continue;
        const base::Resistance after = card.evaluate(*values);
        if (!after.covered) continue;
        ++compared;
        CAPTURE(from);
        CAPTURE((*values)[i]);
        const double gain = direction.sign * (after.capacity - before);
        CHECK(gain >= -(direction.allowed + 1e-12) * std::max(before, after.capacity));
    }
    CHECK(compared > 50);
}

/// Every card has a row, every symbol an entry; those with a sign are tried.
inline void check_all(const std::vector<const base::Card*>& cards, const std::map<std::string, Directions>& rows, const std::set<std::string>& elsewhere)
{
    std::mt19937 random(42);
    for (const base::Card* card : cards) {
        CAPTURE(card->id);
        const auto row = rows.find(card->id);
        REQUIRE(row != rows.end());
        REQUIRE(row->second.size() == card->symbols.size());
        if (elsewhere.contains(card->id)) continue;
        for (std::size_t i = 0; i < card->symbols.size(); ++i) {
            CAPTURE(card->symbols[i].name);
            const auto entry = row->second.find(card->symbols[i].name);
            REQUIRE(entry != row->second.end());
            if (entry->second.sign != 0) check_direction(*card, i, entry->second, random);
        }
    }
}

} // namespace thinskin::tests
