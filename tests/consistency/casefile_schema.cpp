#include "base/quantity.h"
#include "casefile/edit.h"
#include "casefile/reader.h"
#include "casefile/rules.h"
#include "casefile/schema.h"
#include "casefile/starter.h"
#include "casefile/starter_texts.h"
#include "casefile/write_visitor.h"
#include "consistency/casefile_full.h"

#include <doctest/doctest.h>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

namespace {

using namespace thinskin;

std::string slurp(const std::string& path)
{
    std::ifstream in(path, std::ios::binary);
    REQUIRE(in.good());
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

TEST_SUITE_BEGIN("case file: schema");

TEST_CASE("docs/case_file.md is what the table says")
{
    CHECK(slurp(THINSKIN_SOURCE_DIR "/docs/case_file.md") == casefile::schema_markdown());
}

TEST_CASE("docs/case_file.schema.json is what the table says, and is JSON")
{
    const std::string text = slurp(THINSKIN_SOURCE_DIR "/docs/case_file.schema.json");
    CHECK(text == casefile::schema_json());
    const auto json = nlohmann::json::parse(text);
    for (const casefile::Row* row : casefile::rows_in("")) CHECK(json["properties"].contains(row->key()));
    CHECK(json["$defs"].contains("fastener"));
    CHECK(json["properties"]["panel"]["properties"]["skin"]["properties"].contains("thickness_from"));
}

TEST_CASE("each key has one row, a sentence of help, and a block to stand in")
{
    std::set<std::string> seen, insides{""};
    for (const casefile::Row& row : casefile::schema()) insides.insert(row.inside());
    insides.insert("<frames>");
    for (const casefile::Row& row : casefile::schema()) {
        CAPTURE(row.path);
        CHECK(seen.insert(row.path).second);
        CHECK(row.help.size() > 3);
        CHECK(row.help.back() == '.');
        CHECK(insides.count(row.parent()) == 1);
        CHECK((row.shared.empty() || !casefile::rows_in(row.shared).empty()));
        CHECK_FALSE((row.required && !row.fallback.empty()));
        CHECK((row.why.empty() || !row.fallback.empty()));
    }
}

TEST_CASE("a default is a value that the key itself would take")
{
    for (const casefile::Row& row : casefile::schema()) {
        if (row.fallback.empty()) continue;
        CAPTURE(row.path);
        if (row.type == casefile::Type::quantity) CHECK(base::read_quantity(row.fallback, row.dimension).ok);
        if (row.type == casefile::Type::word || row.type == casefile::Type::word_or_block)
            CHECK(std::find(row.words.begin(), row.words.end(), row.fallback) != row.words.end());
    }
}

TEST_CASE("the spread of an unmeasured figure goes from a low to a high value")
{
    int spreads = 0;
    for (const casefile::Row& row : casefile::schema()) {
        if (row.spread.empty()) continue;
        CAPTURE(row.path);
        const std::size_t cut = row.spread.find(" .. ");
        REQUIRE(cut != std::string::npos);
        ++spreads;
        const std::string low = row.spread.substr(0, cut), high = row.spread.substr(cut + 4);
        if (!row.words.empty()) {
            CHECK(std::find(row.words.begin(), row.words.end(), low) != row.words.end());
            CHECK(std::find(row.words.begin(), row.words.end(), high) != row.words.end());
            continue;
        }
        const auto dimension = low.back() == '%' ? base::Dimension::ratio : row.dimension;
        const auto a = base::read_quantity(low, dimension), b = base::read_quantity(high, dimension);
        REQUIRE(a.ok);
        REQUIRE(b.ok);
        CHECK(a.quantity.value < b.quantity.value);
    }
    CHECK(spreads > 5);
}

TEST_CASE("each starter case reads without a word and explains its keys")
{
    REQUIRE(casefile::starter_kinds().size() >= 2);
    for (const std::string& kind : casefile::starter_kinds()) {
        CAPTURE(kind);
        const std::string text = casefile::starter(kind);
        const casefile::ReadResult r = casefile::read_text(text, kind);
        CHECK(r.value.has_value());
        CHECK(r.diagnostics.empty());
        CHECK(text.find("  # " + casefile::comment_of(*casefile::find_row("panel", "width")) + "\n  width: ") != std::string::npos);
    }
    CHECK_THROWS_AS((void)casefile::starter("no such kind"), std::invalid_argument);
}

TEST_CASE("what a starter case offers as comments is read when it is put in its place, the check strap among it")
{
    int straps = 0;
    for (const casefile::StarterText& s : casefile::starter_texts())
        for (const std::string_view offer : s.offers) {
            CAPTURE(offer);
            const std::string text = casefile::starter(std::string(s.kind)), line(offer);
            CHECK(text.find("#   " + line + "\n") != std::string::npos);
            const std::size_t colon = line.find(": ");
            REQUIRE(colon != std::string::npos);
            straps += line.substr(0, colon) == "door.check_strap";
            const std::string value = line.substr(colon + 2);
            const casefile::Edited e = casefile::edit_text(text, {value[0] == '{' ? casefile::set_block(line.substr(0, colon), value) : casefile::set(line.substr(0, colon), value)});
            CHECK(e.ok);
            const casefile::ReadResult r = casefile::read_text(e.text, "offer.yaml");
            CHECK(r.value.has_value());
            CHECK(r.diagnostics.empty());
        }
    CHECK(straps == 1);
}

TEST_CASE("the starter cases hold the values of the shipped cases")
{
    const std::pair<const char*, const char*> pairs[] = {{"condenser-on-door", "condenser_door"}, {"bare-panel", "plain_panel"}};
    for (const auto& pair : pairs) {
        const std::string kind = pair.first, file = pair.second;
        CAPTURE(kind);
        const auto a = casefile::read_text(casefile::starter(kind), kind);
        const auto b = casefile::read_file(std::string(THINSKIN_SOURCE_DIR "/cases/") + file + ".yaml");
        REQUIRE(a.value.has_value());
        REQUIRE(b.value.has_value());
        CHECK(casefile::list_values(*a.value) == casefile::list_values(*b.value));
        CHECK(a.value->defaults.size() == b.value->defaults.size());
    }
}

TEST_CASE("a case made by a program obeys the rules of the file: measured_from must name a measured key")
{
    auto c = casefile::read_text(tests::full_case, "full.yaml").value;
    REQUIRE(c.has_value());
    CHECK(casefile::check_rules(*c, {}).empty());
    c->measured_from["panel.skin.colour"] = "offcut";
    c->measured_from["panel.skin.material"] = "offcut";
    CHECK(casefile::check_rules(*c, {}).size() == 2);
}

TEST_SUITE_END();

} // namespace
