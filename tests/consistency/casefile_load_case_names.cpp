// Words of `when` against the names the load cases really have: a word without a load case would leave a load out in silence.
#include "actions/load_cases.h"
#include "casefile/schema.h"
#include "support/demo_layout.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace {

using namespace thinskin;

TEST_SUITE_BEGIN("case file: load case names");

TEST_CASE("each word of `when` is the name of a load case: of the demo, or of a panel alone")
{
    const tests::Demo demo = tests::demo();
    const actions::LoadCases all = actions::load_cases(demo.layout);
    for (const char* block : {"forces[]", "pressures[]"})
        for (const std::string& word : casefile::find_row(block, "when")->words) {
            CAPTURE(word);
            const bool known = word == actions::name_applied ||
                               std::any_of(all.cases.begin(), all.cases.end(), [&](const results::LoadCase& c) { return c.name == word; });
            CHECK(known);
        }
}

TEST_CASE("each single load case can be named; only the combined ones cannot")
{
    const tests::Demo demo = tests::demo();
    const auto& words = casefile::find_row("forces[]", "when")->words;
    for (const results::LoadCase& c : actions::load_cases(demo.layout).cases) {
        CAPTURE(c.name);
        const bool combined = c.name.compare(0, 9, "combined:") == 0;
        CHECK((combined || std::find(words.begin(), words.end(), c.name) != words.end()));
    }
}

TEST_SUITE_END();

} // namespace
