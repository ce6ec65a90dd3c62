// Edits of a case file's text: only the bytes concerned change, and the strict reader then finds exactly the edited case.
#include "casefile/edit.h"
#include "casefile/starter.h"
#include "casefile/write_visitor.h"
#include "support/cases.h"

#include <algorithm>
#include <random>

using namespace thinskin;
using casefile::edit_text;

namespace {

/// Comments of a text in which # stands for nothing else.
std::vector<std::string> comments(const std::string& text)
{
    std::vector<std::string> out;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);)
        if (const auto at = line.find('#'); at != std::string::npos) out.push_back(line.substr(at));
    return out;
}

std::string after(const std::string& text, const std::vector<casefile::Change>& changes)
{
    const casefile::Edited e = edit_text(text, changes);
    INFO(e.why);
    REQUIRE(e.ok);
    CHECK_FALSE(e.comments_lost);
    return e.text;
}

struct Value { std::string path, text; };

/// Key paths as the reader writes them, and their values as written; defaults left out.
std::vector<Value> values(const model::Case& c)
{
    std::vector<Value> out;
    for (const std::string& line : casefile::list_values(c)) {
        const std::string kinds = "fastener_kinds.";
        std::string path = line.substr(0, line.find(": ")), text = line.substr(line.find(": ") + 2);
        if (const auto last = path.rfind('.'); path.starts_with(kinds)) path = "fastener_kinds[" + path.substr(kinds.size(), last - kinds.size()) + "]" + path.substr(last);
        out.push_back({path, text});
    }
    return out;
}

std::optional<model::Case> read(const std::string& text) { return casefile::read_text(text, "test.yaml").value; }

/// A number with a unit gets another number; empty: not such a value.
std::string another(const std::string& text, std::mt19937& random)
{
    const auto blank = text.find(' ');
    if (blank == std::string::npos || text.find_first_not_of("0123456789.-") != blank) return "";
    const double x = std::stod(text.substr(0, blank));
    const int part = static_cast<int>(random() % 64) + 1;
    std::ostringstream out;
    out << x * (1 + part / 4096.0) << text.substr(blank);
    return out.str() == text ? "" : out.str();
}

const std::string sample = "# head\n"
                           "a: 1 mm # of a\n"
                           "list:\n"
                           "  - name: x\n"
                           "    at: [1 mm, 2 mm]  # place\n"
                           "  # between\n"
                           "  - {name: \"y # not a comment\", at: [3 mm,\n"
                           "      4 mm]}\n"
                           "block:\n"
                           "  b: 'it''s'\n"
                           "  text: |\n"
                           "    two\n"
                           "    lines\n"
                           "  # last of block\n"
                           "empty: []\n"
                           "named:\n"
                           "  4.8 screw: {type: screw}\n"
                           "end: of a\n"
                           "  text on two lines\n"
                           "# tail";

} // namespace

TEST_SUITE_BEGIN("consistency");

TEST_CASE("random edits of every shipped case read back as exactly the edited case, with all comments")
{
    std::mt19937 random(20261125);
    int edits = 0, refused = 0;
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const std::string text = tests::edited_text(name);
        const std::vector<Value> before = values(tests::read_case(text));
        for (int round = 0; round < 25; ++round) {
            const std::size_t pick = random() % before.size();
            const std::string path = before[pick].path, value = another(before[pick].text, random);
            const bool of_default = text.find(before[pick].text) == std::string::npos;
            if (value.empty() || of_default) continue;
            CAPTURE(path);
            CAPTURE(value);
            const casefile::Edited e = edit_text(text, {casefile::set(path, value)});
            if (!e.ok) { // a value that stands once for several places, or in a copy
                ++refused;
                continue;
            }
            CHECK_FALSE(e.comments_lost);
            CHECK(comments(e.text) == comments(text));
            const auto c = read(e.text);
            if (!c) { // the reader's own rules, such as a washer in one text
                ++refused;
                continue;
            }
            ++edits;
            const std::vector<Value> now = values(*c);
            REQUIRE(now.size() == before.size());
            for (std::size_t i = 0; i < now.size(); ++i) {
                CAPTURE(now[i].path);
                const bool meant = now[i].path == path || before[i].text == now[i].text || (now[i].path.starts_with("panel.frame.") && now[i].text == value);
                CHECK(meant);
            }
            CHECK(now[pick].text == value);
        }
    }
    CHECK(edits > 5 * static_cast<int>(tests::shipped_cases().size()));
    CHECK(refused < edits / 4);
}

TEST_CASE("an edit there and back gives the same bytes")
{
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const std::string text = tests::edited_text(name);
        const std::string there = after(text, {casefile::set("panel.width", "1234 mm")});
        CHECK(there != text);
        CHECK(after(there, {casefile::set("panel.width", tests::read_case(text).panel.width.text)}) == text);
        CHECK(after(after(text, {casefile::append("gauges", "{name: new one, at: [1 mm, 2 mm]}")}), {}).size() > text.size());
    }
}

TEST_CASE("sets of values in block and flow form change nothing else")
{
    CHECK(after(sample, {casefile::set("a", "2 in")}) == std::string(sample).replace(sample.find("1 mm"), 4, "2 in"));
    CHECK(after(sample, {casefile::set("list[0].at[1]", "5 mm")}) == std::string(sample).replace(sample.find("2 mm]"), 4, "5 mm"));
    CHECK(after(sample, {casefile::set("list[1].at[1]", "5 mm")}) == std::string(sample).replace(sample.find("4 mm"), 4, "5 mm"));
    CHECK(after(sample, {casefile::set("list[1].name", "z")}) == std::string(sample).replace(sample.find("\"y # not a comment\""), 19, "z"));
    CHECK(after(sample, {casefile::set("block.b", "c: d")}) == std::string(sample).replace(sample.find("'it''s'"), 7, "\"c: d\""));
    CHECK(after(sample, {casefile::set("named[4.8 screw].type", "bolt")}) == std::string(sample).replace(sample.find("type: screw") + 6, 5, "bolt"));
    CHECK(after(sample, {casefile::set("end", "x")}).find("end: x\n# tail") != std::string::npos);
    CHECK(after(sample, {casefile::set("block.text", "one")}).find("  text: one\n  # last of block\n") != std::string::npos);
}

TEST_CASE("keys, entries and blocks are added where they belong and taken away with their lines")
{
    CHECK(after(sample, {casefile::set("list[0].use", "M8")}).find("# place\n    use: M8\n  # between") != std::string::npos);
    CHECK(after(sample, {casefile::set("list[1].use", "M8")}).find("4 mm], use: M8}") != std::string::npos);
    CHECK(after(sample, {casefile::set("new.deep.key", "1")}).find("\nnew: {deep: {key: 1}}") != std::string::npos);
    CHECK(after(sample, {casefile::append("empty", "{a: 1}")}).find("empty: [{a: 1}]\n") != std::string::npos);
    CHECK(after(sample, {casefile::append("list", "{name: z}")}).find("4 mm]}\n  - {name: z}\nblock:") != std::string::npos);
    CHECK(after(sample, {casefile::append("missing", "{name: z}")}).find("missing:") != std::string::npos);
    CHECK(after(sample, {casefile::remove("list[0]")}).find("list:\n  # between\n  - {name") != std::string::npos);
    CHECK(after(sample, {casefile::remove("list[1].at")}).find("{name: \"y # not a comment\"}\n") != std::string::npos);
    CHECK(after(sample, {casefile::remove("list[0].name")}).find("  - at: [1 mm, 2 mm]  # place\n") != std::string::npos);
    CHECK(after(sample, {casefile::remove("named[4.8 screw]")}).find("named: {}\n") != std::string::npos);
    CHECK(after(sample, {casefile::remove("block.text")}).find("'it''s'\n  # last of block\n") != std::string::npos);
    CHECK(after(sample, {casefile::set_block("list", "[]")}).find("a: 1 mm # of a\nlist: []\nblock:") != std::string::npos);
}

TEST_CASE("many values at once give what they give one after the other")
{
    const std::string text = tests::edited_text("condenser_door");
    const std::vector<casefile::Change> all = {casefile::set("brackets[0].x", "151.5 mm"), casefile::set("job.title", "a: b # c"), casefile::set("brackets[0].fasteners[1].at[1]", "7 in"), casefile::set("panel.skin.thickness", "22 ga")};
    std::string one_by_one = text;
    for (const casefile::Change& c : all) one_by_one = after(one_by_one, {c});
    CHECK(after(text, all) == one_by_one);
    CHECK(after(text, {casefile::set("panel.width", "1 mm"), casefile::set("panel.width", "2 mm")}) == after(text, {casefile::set("panel.width", "2 mm")}));
}

TEST_CASE("a new key goes where the schema has it")
{
    const std::string text = tests::edited_text("condenser_door");
    CHECK(after(text, {casefile::set("brackets[0].leg.gauge_from", "drawing")}).find("gauge: 25 mm, gauge_from: drawing}") != std::string::npos);
    CHECK(after(text, {casefile::remove("job.number"), casefile::set("job.number", "7")}).find("door, number: 7, vehicle") != std::string::npos);
    CHECK(after(text, {casefile::set_block("no_drill", "[{circle: {at: [1 mm, 2 mm], radius: 3 mm}, why: latch}]")}).find("740 mm]}\nno_drill:") != std::string::npos);
}

TEST_CASE("line ends of Windows and a byte order mark stay")
{
    std::string text = "\xEF\xBB\xBF";
    for (const char c : sample) text += c == '\n' ? std::string("\r\n") : std::string(1, c);
    const std::string edited = after(after(text, {casefile::set("list[0].use", "M8"), casefile::append("list", "{name: z}")}), {casefile::remove("list[1]"), casefile::set("a", "9 mm")});
    CHECK(edited.starts_with("\xEF\xBB\xBF# head\r\na: 9 mm # of a\r\n"));
    CHECK(std::count(edited.begin(), edited.end(), '\n') == std::count(edited.begin(), edited.end(), '\r'));
}

TEST_CASE("a path that is not there, a text that is not YAML and a list that is none change nothing and say why")
{
    for (const casefile::Change& c : {casefile::remove("nothing"), casefile::set("a.b", "1"), casefile::append("a", "{x: 1}"), casefile::set("list[7]", "1"), casefile::set_block("block", "{a: "), casefile::set("a..b", "1"), casefile::set("", "1"), casefile::set("list[0", "1")}) {
        CAPTURE(c.path);
        const casefile::Edited e = edit_text(sample, {casefile::set("a", "3 mm"), c});
        CHECK_FALSE(e.ok);
        CHECK_FALSE(e.why.empty());
        CHECK(e.text == sample);
    }
}

TEST_CASE("starter cases, with a comment above each key, are edited in place")
{
    for (const std::string& kind : casefile::starter_kinds()) {
        const std::string text = casefile::starter(kind), edited = after(text, {casefile::set("panel.width", "800 mm"), casefile::set("job.notes", "a # b")});
        CHECK(comments(after(text, {casefile::set("panel.width", "800 mm")})) == comments(text));
        REQUIRE(read(edited));
        CHECK(read(edited)->job.notes == "a # b");
    }
}

TEST_CASE("rows of concrete key paths")
{
    REQUIRE(casefile::row_at("brackets[0].fasteners[1].at") != nullptr);
    CHECK(casefile::row_at("brackets[0].fasteners[1].at")->type == casefile::Type::point2);
    CHECK(casefile::row_at("fastener_kinds[4.8 screw].hole")->dimension == base::Dimension::length);
    CHECK(casefile::row_at("reinforcement.angles[0].ends.left.to")->words.size() == 4);
    CHECK(casefile::row_at("panel.frame.left.width") != nullptr);
    CHECK(casefile::row_at("panel.thicknes") == nullptr);
}

TEST_CASE("a key gets another name in its place; a block is written on lines of its own in the place of the old one")
{
    const std::string text = "a: 1 # one\nkinds:\n  M8 bolt: {size: M8} # of the shop\n  \"4.8: screw\": {size: 4.8 mm}\n# the list\nlist: [x, y] # behind\nend: 2\n";
    CHECK(after(text, {casefile::rename("kinds[M8 bolt]", "long: bolt")}) == "a: 1 # one\nkinds:\n  \"long: bolt\": {size: M8} # of the shop\n  \"4.8: screw\": {size: 4.8 mm}\n# the list\nlist: [x, y] # behind\nend: 2\n");
    CHECK(after(text, {casefile::rename("kinds[4.8: screw]", "screw")}).find("  screw: {size: 4.8 mm}\n") != std::string::npos);
    CHECK_FALSE(edit_text(text, {casefile::rename("kinds[M8 bolt]", "4.8: screw")}).ok);
    CHECK_FALSE(edit_text(text, {casefile::rename("list[0]", "z")}).ok);
    CHECK_FALSE(edit_text(text, {casefile::rename("kinds[M9]", "z")}).ok);
    const std::string long_text(60, 'w');
    const std::string lines = after(text, {casefile::set_lines("list", "[{name: a, text: " + long_text + "}, {name: b, text: " + long_text + "}]")});
    CHECK(lines.find("# the list\nlist:\n  - {name: a") != std::string::npos);
    CHECK(lines.find("# behind\nend: 2\n") != std::string::npos);
}

TEST_SUITE_END();
