// docs/verification/coverage.md: what the published tests hold of each formula. Files run in the order of their names, so this
// one, the last, sees what all others counted; picked out alone it fails. To write the page anew:
//   THINSKIN_UPDATE_COVERAGE=1 test_published
#include "formulary/formulary.h"
#include "support/coverage.h"

#include <cstdlib>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <fstream>
#include <iterator>

using namespace thinskin;
using tests::coverage;
using tests::From;

namespace {

const std::string page_path = std::string(THINSKIN_SOURCE_DIR) + "/docs/verification/coverage.md";

/// What one test case holds ends with it.
struct EndOfCase : doctest::IReporter {
    explicit EndOfCase(const doctest::ContextOptions&) {}
    void report_query(const doctest::QueryData&) override {}
    void test_run_start() override {}
    void test_run_end(const doctest::TestRunStats&) override {}
    void test_case_start(const doctest::TestCaseData&) override { tests::holds_nothing(); }
    void test_case_reenter(const doctest::TestCaseData&) override {}
    void test_case_end(const doctest::CurrentTestCaseStats&) override { tests::holds_nothing(); }
    void test_case_exception(const doctest::TestCaseException&) override {}
    void subcase_start(const doctest::SubcaseSignature&) override {}
    void subcase_end() override {}
    void log_assert(const doctest::AssertData&) override {}
    void log_message(const doctest::MessageData&) override {}
    void test_case_skipped(const doctest::TestCaseData&) override {}
};
REGISTER_LISTENER("end of case", 1, EndOfCase);

int values(const base::Card& card, From from)
{
    const auto at = coverage().counts.find(card.id);
    return at == coverage().counts.end() ? 0 : at->second[static_cast<std::size_t>(from)];
}

std::string row(const base::Card& c)
{
    return fmt::format("| {} | {} | {} | {} | {} | {} | {} | {} | {} |\n", c.id, c.title, c.rule, base::name(c.label), c.range, values(c, From::read), values(c, From::recomputed),
                       values(c, From::remembered), values(c, From::tested));
}

std::string ids_where(bool (*which)(const base::Card&))
{
    std::string all;
    for (const base::Card* card : formulary::all_cards())
        if (which(*card)) all += (all.empty() ? "" : ", ") + card->id;
    return all.empty() ? "none" : all;
}

bool nothing_from_outside(const base::Card& c) { return values(c, From::read) + values(c, From::tested) == 0; }
bool nothing_at_all(const base::Card& c)
{
    return nothing_from_outside(c) && values(c, From::recomputed) + values(c, From::remembered) == 0;
}

std::string page()
{
    std::string text =
        "# What the tests hold of each formula\n\n"
        "Written by `THINSKIN_UPDATE_COVERAGE=1 test_published`, which otherwise compares it (source `tests/published/verification_coverage.cpp`).\n"
        "Counted is each value that a published test compares with a figure from outside the program, by where that figure comes from:\n\n"
        "* **read**: it stood in a text that was read; the source is named at the check,\n"
        "* **recomputed**: worked out by hand from the formula, outside the program: it shows that the formula was written down as meant,\n"
        "  not that the formula is right; for a rule of our own (label engineering judgement) there is nothing else,\n"
        "* **remembered**: recalled from a printed table that was not at hand,\n"
        "* **tested**: a strength found in a laboratory or printed by a maker that the allowable force must not exceed.\n\n"
        "The label is that of the formula itself. Checks of ranges and of what is refused are not counted.\n\n"
        "| id | title | rule set | label of the formula | range | read | recomputed | remembered | tested |\n|---|---|---|---|---|---|---|---|---|\n";
    for (const base::Card* card : formulary::all_cards()) text += row(*card);
    text += fmt::format("\nNo value that was read or measured: {}.\n\nNo value at all: {}.\n", ids_where(nothing_from_outside), ids_where(nothing_at_all));
    return text;
}

} // namespace

TEST_SUITE_BEGIN("published: coverage");

TEST_CASE("coverage page: what the published tests of this run hold of each formula (needs the whole run)")
{
    for (const auto& counted : coverage().counts) {
        CAPTURE(counted.first);
        CHECK(formulary::find(counted.first) != nullptr);
    }
    if (std::getenv("THINSKIN_UPDATE_COVERAGE") != nullptr) std::ofstream(page_path) << page();
    std::ifstream in(page_path);
    const std::string committed(std::istreambuf_iterator<char>(in), {});
    CHECK(committed == page());
    CHECK(ids_where(nothing_at_all) == "none");
}

TEST_SUITE_END();
