#include "consistency/report_sample.h"
#include "report/figures.h"
#include "report/table.h"
#include "report/text.h"
#include "report/words.h"
#include "support/cases.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <doctest/doctest.h>
#include <limits>
#include <sstream>

using namespace thinskin;
using tests::sample_check;
using tests::sample_outcome;

namespace {

std::vector<std::string> lines_of(const std::string& text)
{
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

bool contains(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

std::size_t count(const std::string& text, const std::string& part)
{
    std::size_t n = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
    return n;
}

const std::string caution_start = "CAUTION: a screening calculation, not a certificate.";

} // namespace

TEST_SUITE_BEGIN("report as text");

TEST_CASE("a printed margin is never better than the computed one and at most 0.01 worse")
{
    for (int i = -10007; i < 50000; i += 7) {
        const double margin = i / 10000.0;
        const double printed = std::strtod(report::margin_text(margin).c_str(), nullptr);
        CAPTURE(margin);
        CHECK(printed <= margin + 1e-9); // the slack of the rounding itself
        CHECK(printed > margin - 0.0100001);
    }
}

TEST_CASE("a failing check never prints a margin of zero or a utilisation of one")
{
    CHECK(report::margin_text(-1e-12) == "-0.01");
    CHECK(report::margin_text(0.0) == "+0.00");
    CHECK(report::utilisation_text(1.0 + 1e-12) == "1.01");
    CHECK(report::utilisation_text(1.0) == "1.00");
    CHECK(report::utilisation_text(0.7801) == "0.79");
}

TEST_CASE("a margin that is exact in two decimals keeps them")
{
    CHECK(report::margin_text(1.16 - 1.0) == "+0.16"); // 0.1599999... in binary
    CHECK(report::margin_text(1.29 - 1.0) == "+0.29");
}

TEST_CASE("large, infinite and missing margins are words")
{
    const double inf = std::numeric_limits<double>::infinity(), nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(report::margin_text(5.01) == "> 5");
    CHECK(report::margin_text(5.0) == "+5.00");
    CHECK(report::margin_text(inf) == "no load");
    CHECK(report::margin_text(nan) == "no figure");
    CHECK(report::utilisation_text(nan) == "no figure");
    CHECK(report::figure(nan) == "no figure");
    CHECK(report::figure(inf) == "no figure");
}

TEST_CASE("figures keep three digits, and a zero has no sign")
{
    CHECK(report::figure(1304.6) == "1305");
    CHECK(report::figure(72.44) == "72.4");
    CHECK(report::figure(0.1234) == "0.123");
    CHECK(report::figure(-3.456) == "-3.46");
    CHECK(report::fixed(-0.001, 2) == "0.00");
}

TEST_CASE("the verdict stands first, the advice second, the caution below them and at the very end, whatever the options")
{
    for (const base::Verdict v : {base::Verdict::pass, base::Verdict::not_covered, base::Verdict::not_solved, base::Verdict::fail}) {
        for (const bool detail : {false, true}) {
            results::Outcome o = sample_outcome();
            o.verdict = v;
            const std::string text = report::check_text(o, {.detail = detail, .strict = detail});
            const auto lines = lines_of(text);
            CAPTURE(text);
            CHECK(contains(lines[0], o.headline));
            CHECK(contains(lines[1], o.advice));
            CHECK(count(text, caution_start) == 2);
            CHECK(text.find(caution_start) < text.find("Case "));
            CHECK(contains(lines[lines.size() - 2], caution_start.substr(0, 30)));
            CHECK(contains(lines.back(), "licensed engineer decide."));
        }
    }
}

TEST_CASE("a pass says what it stands on: slam, hinges, road, what nobody measured; nothing else does")
{
    results::Outcome o = tests::check_case("condenser_door_made_good");
    const auto on = [&o](const char* key) { return std::find_if(o.rests_on.begin(), o.rests_on.end(), [key](const results::RestsOn& r) { return r.key == key; }); };
    for (const char* key : {"door.slam", "door.hinges.evidence", "road.surface"}) {
        CAPTURE(key);
        REQUIRE(on(key) != o.rests_on.end());
        REQUIRE(on(key)->margin);
        CHECK(*on(key)->margin >= o.governing->margin()); // of the required rows one is the least
    }
    double slammed = INFINITY;
    for (const results::Check& c : o.checks)
        if (c.required && c.load_case.rfind("slam", 0) == 0 && c.has_numbers()) slammed = std::min(slammed, c.margin());
    CHECK(*on("door.slam")->margin == slammed);
    o.verdict = base::Verdict::pass;
    const std::string words = report::stands_on_words(o);
    CHECK(words.rfind("This pass stands on: a slam at 1", 0) == 0);
    for (const char* said : {"that stops in", "for the hinges", "no road worse than", "that nobody measured"}) CHECK(words.find(said) != std::string::npos);
    CHECK(report::check_text(o).find("This pass stands on: ") != std::string::npos);
    o.verdict = base::Verdict::fail;
    CHECK(report::stands_on_words(o).empty());
}

TEST_CASE("standing exclusions and what to see to on the vehicle are in every output")
{
    const std::string text = report::check_text(sample_outcome());
    for (const char* item : {"crash retention", "corrosion", "law", "number plate", "overhang", "get out", "latch", "hoses", "second, independent", "50 to 100 km"})
        CHECK_MESSAGE(contains(text, item), item);
}

TEST_CASE("a headline that begins with the verdict does not say it twice")
{
    results::Outcome o = sample_outcome();
    o.headline = "PASSES: the skin holds";
    CHECK(lines_of(report::check_text(o))[0] == "PASSES: the skin holds");
    o.headline = "passing holes are large";
    CHECK(lines_of(report::check_text(o))[0] == "PASS: passing holes are large");
    o.headline = "FAILS: this is not the verdict";
    CHECK(lines_of(report::check_text(o))[0] == "PASS: FAILS: this is not the verdict");
}

TEST_CASE("without equilibrium no margin is printed")
{
    results::Outcome o = sample_outcome();
    o.verdict = base::Verdict::not_solved;
    o.not_solved = {"bracket left can turn about its bolt"};
    for (const bool detail : {false, true}) {
        const std::string text = report::check_text(o, {.detail = detail});
        CHECK_FALSE(contains(text, "+1.17")); // 1305 / 600 - 1
        CHECK_FALSE(contains(text, "> 5"));
        CHECK(contains(text, "bracket left can turn about its bolt"));
    }
}

TEST_CASE("what is not covered has no margin, and its reason is told once with the input that lifts it")
{
    results::Outcome o = sample_outcome();
    const results::Check open = o.checks.back();
    o.checks.push_back(open);
    const std::string text = report::check_text(o);
    CHECK(count(text, "nobody knows what the hinges carry") == 1);
    CHECK(contains(text, "door.hinges.evidence"));
    for (const auto& line : lines_of(report::check_text(o, {.detail = true})))
        if (contains(line, "hinge strength") && contains(line, "pothole") && contains(line, " N ")) CHECK(line.find('+') == std::string::npos);
}

TEST_CASE("the short table has the worst row of each part and check, at most fifteen, and says how many more")
{
    results::Outcome o = sample_outcome();
    o.checks.clear();
    for (int i = 0; i < 20; ++i)
        for (int repeat = 0; repeat < 3; ++repeat)
            o.checks.push_back(sample_check("bolt" + std::to_string(i), "bearing", 1000 - i - repeat, 2000, i > 16 ? base::Status::fail : base::Status::pass));
    const std::string text = report::check_text(o);
    CHECK(count(text, "bearing") == 15);
    CHECK(contains(text, "and 5 more, 3 of them failing"));
    const std::string all = report::check_text(o, {.detail = true});
    CHECK(count(all, "  bearing  ") == 60);
}

TEST_CASE("--detail adds forces, clauses, hand sums with their differences and the solver time")
{
    const std::string brief = report::check_text(sample_outcome()), full = report::check_text(sample_outcome(), {.detail = true});
    for (const char* item : {"solver time, linear: 42.0 ms", "prying 100 N, pivot shift 41 N", "BB-2", "d = 8, t = 0.76", "left arm-leg", "left mount 1",
                             "above left bracket", "N·m"}) {
        CAPTURE(item);
        CHECK(contains(full, item));
        CHECK_FALSE(contains(brief, item));
    }
}

TEST_CASE("what the door puts on the body stands in the short form, with its direction in words")
{
    auto o = sample_outcome();
    o.hinges.push_back({"top hinge", "open 90 deg", "open", {0, 100, 0}, 90, {0, 0, -100}, "pulled 225 N rearward, 100 N down"});
    o.latches[0].words = "pulled 86 N rearward";
    const std::string brief = report::check_text(o);
    for (const char* item : {"What the door puts on the body", "latch 1", "pulled 86 N rearward", "slam outward", "open 90 deg", "pulled 225 N rearward, 100 N down", "inertia about the hinges", "slam force"}) {
        CAPTURE(item);
        CHECK(contains(brief, item));
    }
}

TEST_CASE("columns line up on the screen although a unit has letters of two bytes")
{
    report::Table table({{"unit"}, {"value", report::Align::right}});
    table.row({"N·m", "1"});
    table.row({"N/mm", "20"});
    CHECK(table.text() == "  unit  value\n  ----  -----\n  N·m       1\n  N/mm     20\n");
}

TEST_CASE("long sentences wrap under their beginning")
{
    CHECK(report::wrapped("  - ", "aaaa bbbb cccc dddd eeee ffff gggg hhhh iiii", 40) == "  - aaaa bbbb cccc dddd eeee ffff gggg\n    hhhh iiii\n");
}

TEST_CASE("colour only where it is asked for")
{
    CHECK_FALSE(contains(report::check_text(sample_outcome()), "\033"));
    CHECK(contains(report::check_text(sample_outcome(), {.colour = true}), "\033[1;32mPASS\033[0m"));
}

TEST_SUITE_END();
