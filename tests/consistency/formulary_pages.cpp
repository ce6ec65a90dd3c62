// docs/theory against the cards: one heading per id, and the figures on the page are the figures of the code.
#include "casefile/schema.h"
#include "consistency/formulary_samples.h"
#include "formulary/formulary.h"
#include "strength/cards.h"
#include "support/near.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <random>
#include <regex>
#include <sstream>

using namespace thinskin;
namespace fs = std::filesystem;

namespace {

const fs::path root = THINSKIN_SOURCE_DIR;

std::string text_of(const fs::path& file)
{
    std::ifstream in(file);
    std::stringstream s;
    s << in.rdbuf();
    return s.str();
}

struct Section { std::string id, title, text; };

/// The parts of a page that start with "### XX-n title".
std::vector<Section> sections(const std::string& page)
{
    static const std::regex heading("### ([A-Z]{2}-[0-9]+) ?(.*)");
    std::vector<Section> all;
    std::istringstream lines(page);
    bool inside = false;
    for (std::string line; std::getline(lines, line);) {
        std::smatch m;
        if (std::regex_match(line, m, heading)) all.push_back({m[1], m[2], {}});
        inside = line.starts_with("#") ? line.starts_with("### ") && !all.empty() : inside;
        if (inside) all.back().text += line + "\n";
    }
    return all;
}

std::vector<Section> theory()
{
    std::vector<Section> all;
    for (const auto& entry : fs::directory_iterator(root / "docs" / "theory"))
        if (entry.path().extension() == ".md")
            for (Section& s : sections(text_of(entry.path()))) all.push_back(std::move(s));
    return all;
}

Section section_of(const std::string& id)
{
    for (Section& s : theory())
        if (s.id == id) return s;
    return {};
}

/// Same words whatever the line breaks.
std::string one_line(const std::string& text) { return std::regex_replace(text, std::regex("\\s+"), " "); }

std::vector<std::string> matches(const std::string& text, const std::string& pattern)
{
    const std::regex what(pattern);
    std::vector<std::string> all;
    for (std::sregex_iterator i(text.begin(), text.end(), what), end; i != end; ++i) all.push_back((*i)[1]);
    return all;
}

} // namespace

TEST_SUITE_BEGIN("consistency: theory pages");

TEST_CASE("every formula card has exactly one heading in docs/theory")
{
    std::map<std::string, int> headings;
    for (const Section& s : theory()) ++headings[s.id];
    for (const base::Card* card : formulary::all_cards()) {
        CAPTURE(card->id);
        CHECK(headings[card->id] == 1);
    }
}

TEST_CASE("every heading with an id is a formula card, except those of the solver (FE-) and of the idealisation (ID-)")
{
    const std::vector<Section> all = theory();
    REQUIRE_FALSE(all.empty());
    for (const Section& s : all) {
        CAPTURE(s.id);
        if (!s.id.starts_with("FE-") && !s.id.starts_with("ID-")) CHECK(formulary::find(s.id) != nullptr);
    }
}

namespace {

/// Between nominal value and capacity, somewhere in the card's range.
double factor_of(const base::Card& card)
{
    std::mt19937 random(1);
    const auto values = tests::covered_sample(card, random);
    return values ? card.evaluate(*values).factor : std::nan("");
}

/// The line "Result in ..." names this factor among its numbers, or says in words that there is none.
bool names_factor(const std::string& text, double factor)
{
    std::smatch line;
    static const std::regex result("Result in [^;]*;([^\n]*)"), number("[0-9]+\\.?[0-9]*");
    if (!std::regex_search(text, line, result)) return false;
    const std::string rest = line[1];
    if (factor == 1 && (rest.find("no factor") != std::string::npos || rest.find("limit") != std::string::npos)) return true;
    return std::any_of(std::sregex_iterator(rest.begin(), rest.end(), number), std::sregex_iterator(), [&](const std::smatch& m) { return std::abs(std::stod(m.str()) - factor) < 1e-9; });
}

} // namespace

TEST_CASE("a clause's page shows the title, formula, ranges, limits, source and label of its card")
{
    for (const base::Card* card : strength::cards()) {
        CAPTURE(card->id);
        const Section s = section_of(card->id);
        CHECK(s.title == card->title);
        CHECK(s.text.find("    " + card->formula + "\n") != std::string::npos);
        for (const base::Symbol& x : card->symbols) {
            const std::string row = "| `" + x.name + "` | " + x.unit + " | " + base::range_text(x) + " | " + x.meaning + " |\n";
            CAPTURE(row);
            CHECK(s.text.find(row) != std::string::npos);
        }
        const std::string flat = one_line(s.text);
        for (const std::string* part : {&card->range, &card->not_for, &card->source}) {
            CAPTURE(*part);
            CHECK(flat.find(one_line(*part)) != std::string::npos);
        }
        CHECK(flat.find("Label: " + std::string(base::name(card->label)) + ".") != std::string::npos);
        CHECK(flat.find("Result in " + card->unit + ";") != std::string::npos);
        CHECK(names_factor(s.text, factor_of(*card)));
    }
}

TEST_CASE("a clause's page names the file that holds its id and the published test that carries it")
{
    for (const base::Card* card : strength::cards()) {
        CAPTURE(card->id);
        const std::string text = section_of(card->id).text;
        const auto code = matches(text, "Code: (core/[a-z_/]+\\.cpp)"), test = matches(text, "Test: (tests/[a-z_/]+\\.cpp)");
        REQUIRE(code.size() == 1);
        REQUIRE(test.size() == 1);
        CHECK(text_of(root / code[0]).find("\"" + card->id + "\"") != std::string::npos);
        CHECK(text_of(root / test[0]).find(card->id) != std::string::npos);
    }
}

TEST_CASE("a clause's page names keys that the case file has")
{
    const std::vector<casefile::Row>& rows = casefile::schema();
    for (const base::Card* card : strength::cards()) {
        CAPTURE(card->id);
        const std::string text = section_of(card->id).text;
        const std::size_t at = text.find("Keys: ");
        REQUIRE(at != std::string::npos);
        const auto keys = matches(text.substr(at), "`([^`]+)`");
        CHECK_FALSE(keys.empty());
        for (const std::string& key : keys) {
            CAPTURE(key);
            CHECK(std::any_of(rows.begin(), rows.end(), [&](const casefile::Row& r) { return r.path == key; }));
        }
    }
}

TEST_SUITE_END();
