// Facts that hold for every card of the program, whatever folder it comes from.
#include "formulary/formulary.h"
#include "formulary_samples.h"
#include "support/near.h"

#include <cmath>
#include <limits>
#include <set>

using namespace thinskin;
using thinskin::tests::covered_sample;

namespace {

/// Values just outside and far outside a symbol's range, with NaN and the infinities.
std::vector<double> inadmissible(const base::Symbol& s)
{
    std::vector<double> bad{std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
    if (!s.choices.empty()) bad.insert(bad.end(), {s.choices.front() + 0.01, 1e9});
    if (std::isfinite(s.lower)) bad.insert(bad.end(), {std::nextafter(s.lower, -1e300), s.lower - 1e6});
    if (std::isfinite(s.lower) && s.lower_open) bad.push_back(s.lower);
    if (std::isfinite(s.upper)) bad.insert(bad.end(), {std::nextafter(s.upper, 1e300), s.upper + 1e6});
    return bad;
}

} // namespace

TEST_SUITE_BEGIN("consistency: formula cards");

TEST_CASE("every card says what it is, and its id is its own")
{
    std::set<std::string> ids;
    CHECK(formulary::all_cards().size() >= 27);
    for (const base::Card* card : formulary::all_cards()) {
        CAPTURE(card->id);
        CHECK(ids.insert(card->id).second);
        for (const std::string* text : {&card->id, &card->title, &card->formula, &card->unit, &card->rule, &card->source, &card->range, &card->not_for})
            CHECK_FALSE(text->empty());
        REQUIRE(bool(card->evaluate));
        CHECK(formulary::find(card->id) == card);
    }
}

TEST_CASE("every symbol has a name of its own, a unit, a meaning and a range that is not empty")
{
    for (const base::Card* card : formulary::all_cards()) {
        std::set<std::string> names;
        for (const base::Symbol& s : card->symbols) {
            CAPTURE(card->id);
            CAPTURE(s.name);
            CHECK(names.insert(s.name).second);
            CHECK_FALSE(s.unit.empty());
            CHECK_FALSE(s.meaning.empty());
            CHECK(s.lower < s.upper);
        }
    }
}

TEST_CASE("NaN, infinities and values outside the range are not covered, for every symbol of every card")
{
    std::mt19937 random(20240501);
    for (const base::Card* card : formulary::all_cards()) {
        CAPTURE(card->id);
        const auto good = covered_sample(*card, random);
        REQUIRE(good.has_value());
        for (std::size_t i = 0; i < good->size(); ++i)
            for (double bad : inadmissible(card->symbols[i])) {
                CAPTURE(card->symbols[i].name);
                CAPTURE(bad);
                std::vector<double> values = *good;
                values[i] = bad;
                const base::Resistance r = card->evaluate(values);
                CHECK_FALSE(r.covered);
                CHECK(r.capacity == 0);
                CHECK(r.reason.find(card->symbols[i].name + " = ") != std::string::npos);
            }
    }
}

TEST_CASE("a wrong number of values is not covered")
{
    std::mt19937 random(7);
    for (const base::Card* card : formulary::all_cards()) {
        CAPTURE(card->id);
        auto values = covered_sample(*card, random);
        REQUIRE(values.has_value());
        values->push_back(1);
        CHECK_FALSE(card->evaluate(*values).covered);
        CHECK_FALSE(card->evaluate({}).covered);
    }
}

TEST_CASE("whatever is covered is a finite figure and says capacity = nominal / factor")
{
    std::mt19937 random(11);
    for (const base::Card* card : formulary::all_cards())
        for (int i = 0; i < 200; ++i) {
            CAPTURE(card->id);
            const auto values = covered_sample(*card, random);
            REQUIRE(values.has_value());
            const base::Resistance r = card->evaluate(*values);
            CHECK(std::isfinite(r.capacity));
            CHECK(r.factor >= 1);
            CHECK(r.reason.empty());
            CHECK(r.capacity == r.nominal / r.factor);
        }
}

TEST_CASE("the hinge index of the statics and the one of the strength cards are the same rule on a rear door")
{
    const base::Card *statics = formulary::find("ST-9"), *strength = formulary::find("HI-1");
    REQUIRE(bool(statics));
    REQUIRE(bool(strength));
    for (double n : {2.0, 3.0, 4.0})
        tests::check_near_rel(statics->evaluate({259, 756, 2082, n}).nominal, strength->evaluate({n, 0, 259, 756, 2082}).nominal, 1e-12);
}

TEST_SUITE_END();
