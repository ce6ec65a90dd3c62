// No clause may jump without saying so: along each symbol, between two random places that are covered, the largest step is halved until
// it is gone or is a jump. Those that the clauses have by themselves are named, with their size and reason.
#include "formulary/formulary.h"
#include "formulary_samples.h"

#include <doctest/doctest.h>
#include <map>

using namespace thinskin;
using thinskin::tests::covered_sample;
using thinskin::tests::sample;

namespace {

/// Largest step that is no fault, over the largest answer on the way.
const std::map<std::string, double>& jumps()
{
    static const std::map<std::string, double> all{
        {"AB-1", 0.0091}, // slender legs, b/t = 0.91 (E/Fy)^0.5
        {"BC-1", 0.0005}, // E3-2 and E3-3 meet in rounded figures
        {"BX-1", 0.0002}, // rho leaves 1 at lambda = 0.673
        {"BT-1", 0.1001}, {"BV-1", 0.1112}, {"BI-1", 0.1112}, // 0.675 and 0.400 to 0.75 and 0.450 at 12 mm
        {"WE-2", 0.165},  // 2.55 to 3.05 at L/t = 25
        {"RV-3", 0.334},  // 1.5 at a head of 7.94 mm
        {"WS-3", 0.065},  // bands of Fyb
        {"AL-3", 0.406},  // Ks and k step at 2.03 mm
        {"FA-1", 1}, {"FA-2", 1}, {"FA-3", 1}, // below the cut-off nothing counts
        {"AC-4", 1e-5}, {"AC-15", 1e-5},           // the largest of a sampled answer; a sum over frequencies
    };
    return all;
}

struct Jump { double size = 0, at = 0; };

/// What is left of the largest of the steps from `low` to `high` when it is halved down to rounding, over the largest answer on the
/// way; 0: nothing, or the way leads over places that are not covered.
Jump largest_jump(const base::Card& card, std::vector<double> values, std::size_t i, double low, double high)
{
    const auto at = [&](double x) {
        values[i] = x;
        const base::Resistance r = card.evaluate(values);
        return r.covered ? r.capacity : std::nan("");
    };
    constexpr int steps = 24;
    double a = low, b = high, most = 0, largest = std::abs(at(low));
    for (int k = 0; k < steps; ++k) {
        const double x = low + (high - low) * k / steps, y = low + (high - low) * (k + 1) / steps;
        largest = std::max(largest, std::abs(at(y)));
        if (const double s = std::abs(at(x) - at(y)); s > most) most = s, a = x, b = y;
    }
    for (int k = 0; k < 40 && b - a > 1e-11 * std::abs(b); ++k) {
        const double m = (a + b) / 2;
        if (std::abs(at(a) - at(m)) >= std::abs(at(m) - at(b))) b = m;
        else a = m;
    }
    const double left = std::abs(at(a) - at(b)) / largest;
    return left > 0 && std::isfinite(left) ? Jump{left, b} : Jump{};
}

/// Largest jump of a clause over all its symbols, and where.
struct Found { double size = 0; std::string where; };
Found search(const base::Card& card, std::mt19937& random)
{
    Found found;
    for (int k = 0; k < 25; ++k) {
        const auto values = covered_sample(card, random);
        if (!values) continue;
        for (std::size_t i = 0; i < card.symbols.size(); ++i) {
            if (!card.symbols[i].choices.empty()) continue; // a word has no places between
            const double x = sample(card.symbols[i], random), y = (*values)[i];
            const Jump j = largest_jump(card, *values, i, std::min(x, y), std::max(x, y));
            if (j.size > found.size) found = {j.size, card.symbols[i].name + " = " + std::to_string(j.at)};
        }
    }
    return found;
}

} // namespace

TEST_SUITE_BEGIN("consistency: continuity of the clauses");

TEST_CASE("no clause jumps along any of its symbols but where it is said to")
{
    for (const base::Card* card : formulary::all_cards()) {
        std::seed_seq own(card->id.begin(), card->id.end()); // its places do not depend on the cards before it
        std::mt19937 random(own);
        const Found found = search(*card, random);
        const auto known = jumps().find(card->id);
        CAPTURE(card->id);
        CAPTURE(found.where);
        CHECK(found.size <= (known == jumps().end() ? 1e-6 : known->second));
    }
}

TEST_SUITE_END();
