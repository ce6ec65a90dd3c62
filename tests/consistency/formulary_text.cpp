// symbol=value pairs and the text of a card.
#include "formulary/formulary.h"
#include "support/near.h"

#include <cmath>

using namespace thinskin;
using formulary::evaluate;
using thinskin::tests::check_near_rel;

TEST_SUITE_BEGIN("consistency: formulas from text");

TEST_CASE("the same bolt in inches and ksi bears the same force as in millimetres and MPa")
{
    const base::Card& card = *formulary::find("BB-2");
    const auto metric = evaluate(card, {"d=9.525", "t=1.524", "Fu=379.21165112"});
    const auto inches = evaluate(card, {"Fu=55 ksi", "d=3/8 in", "t=0.06 in"});
    REQUIRE_MESSAGE(metric.ok, metric.error);
    REQUIRE_MESSAGE(inches.ok, inches.error);
    check_near_rel(inches.resistance.capacity, metric.resistance.capacity, 1e-8);
}

TEST_CASE("a unit without a name in case files is read as the symbol's own")
{
    const base::Card& card = *formulary::find("TN-1");
    const auto got = evaluate(card, {"Ag = 160 mm2", "Fy=235 MPa"});
    REQUIRE_MESSAGE(got.ok, got.error);
    check_near_rel(got.resistance.nominal, 160 * 235.0, 1e-12);
    CHECK_FALSE(evaluate(card, {"Ag=160 in2", "Fy=235"}).ok);
}

TEST_CASE("mistakes in the pairs are named")
{
    const base::Card& card = *formulary::find("SF-1");
    CHECK(evaluate(card, {"t=0.8"}).error == "Fy is missing; SF-1 needs t, Fy");
    CHECK(evaluate(card, {"t=0.8", "t=0.9", "Fy=140"}).error == "t is given twice");
    CHECK(evaluate(card, {"t=0.8", "fy=140"}).error == "SF-1 has no symbol \"fy\"; it has t, Fy");
    CHECK(evaluate(card, {"t 0.8"}).error == "expected symbol=value, found \"t 0.8\"");
    for (const char* bad : {"t=", "t=nan", "t=inf", "t=0,8", "t=0.8 kg", "t=0.8 MPa", "t=0x1p3 mm"}) {
        CAPTURE(bad);
        const auto got = evaluate(card, {bad, "Fy=140"});
        CHECK_FALSE(got.ok);
        CHECK(got.error.starts_with("t: "));
    }
}

TEST_CASE("a value out of range is understood, and not covered with symbol, value and range")
{
    const auto got = evaluate(*formulary::find("BB-1"), {"d=8", "t=0.5 mm", "Fu=270", "mf=1"});
    REQUIRE_MESSAGE(got.ok, got.error);
    CHECK_FALSE(got.resistance.covered);
    CHECK(got.resistance.reason == "t = 0.5 mm is outside 0.61 .. 4.76 mm");
    const auto choice = evaluate(*formulary::find("BB-1"), {"d=8", "t=0.8", "Fu=270", "mf=0.9"});
    REQUIRE_MESSAGE(choice.ok, choice.error);
    CHECK(choice.resistance.reason == "mf = 0.9 is not one of 0.75, 1, 1.33");
}

TEST_CASE("ids are found in any letter case, unknown ones are not")
{
    CHECK(formulary::find("bb-1") == formulary::find("BB-1"));
    CHECK(formulary::find("BB-1") != nullptr);
    CHECK(formulary::find("BB-99") == nullptr);
    CHECK(formulary::find("") == nullptr);
}

TEST_CASE("the text of a card carries every figure a reader needs")
{
    for (const base::Card* card : formulary::all_cards()) {
        const std::string text = formulary::describe(*card);
        CAPTURE(card->id);
        for (const std::string* part : {&card->id, &card->title, &card->formula, &card->source, &card->edition, &card->range, &card->not_for})
            CHECK(text.find(*part) != std::string::npos);
        CHECK(text.find(base::name(card->label)) != std::string::npos);
        for (const base::Symbol& s : card->symbols) {
            CHECK(text.find(s.meaning) != std::string::npos);
            CHECK(text.find(base::range_text(s)) != std::string::npos);
        }
    }
}

TEST_SUITE_END();
