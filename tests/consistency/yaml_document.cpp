#include "yaml/document.h"
#include "yaml/emit.h"
#include "yaml/patch_tree.h"

#include <chrono>
#include <doctest/doctest.h>

namespace {

using namespace thinskin;
using yaml::Node;

std::string first_error(const yaml::Document& d) { return d.errors.empty() ? std::string{} : base::format(d.errors.front()); }

TEST_SUITE_BEGIN("yaml");

TEST_CASE("a tree keeps text, order and places in characters; a byte order mark moves nothing")
{
    for (const std::string mark : {"", "\xEF\xBB\xBF"}) {
        const auto d = yaml::parse(mark + "a: {k\xC3\xBC" "che: 1 N\xC2\xB7m, z: '2'}\nlist:\n  - x\n", "f.yaml");
        REQUIRE(d.usable);
        CHECK(d.errors.empty());
        const Node& a = d.root.entries[0].value;
        CHECK(a.at.column == 4);
        CHECK(a.entries[0].key == "k\xC3\xBC" "che");
        CHECK(a.entries[1].at.column == 19);
        CHECK(a.entries[1].value.quoted);
        CHECK(d.root.find("list")->items[0].at.line == 3);
        CHECK(d.root.find("nothing") == nullptr);
    }
}

TEST_CASE("an alias bomb is refused at each alias and takes no time")
{
    std::string text = "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n";
    for (int i = 1; i < 30; ++i) {
        const std::string alias = "*a" + std::to_string(i - 1);
        text += "a" + std::to_string(i) + ": &a" + std::to_string(i) + " [" + alias;
        for (int k = 0; k < 9; ++k) text += ", " + alias;
        text += "]\n";
    }
    const auto start = std::chrono::steady_clock::now();
    const auto d = yaml::parse(text, "bomb.yaml");
    CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(2));
    CHECK(d.usable);
    CHECK(d.errors.size() == 30 + 29 * 10);
}

TEST_CASE("twenty thousand brackets are refused, closed ones at the first that is too deep")
{
    const std::pair<std::string, std::string> brackets[] = {{"[", "]"}, {"{a: ", "}"}, {"- ", ""}};
    for (const auto& pair : brackets)
        for (const bool closed : {true, false}) {
            const std::string open = pair.first, close = pair.second;
            std::string text, end;
            for (int i = 0; i < 20000; ++i) {
                text += open;
                if (closed) end += close;
            }
            CAPTURE(open);
            const auto d = yaml::parse(text + end, "deep.yaml");
            CHECK_FALSE(d.usable);
            REQUIRE(d.errors.size() == 1);
            CHECK(d.errors[0].message.find("more than 32 deep") != std::string::npos);
            if (closed && open == "- ") CHECK(d.errors[0].at.column == 65);
        }
    const std::string forty = std::string(40, '[') + std::string(40, ']');
    CHECK(yaml::parse(forty, "deep.yaml").errors.at(0).at.column == 33);
}

TEST_CASE("too many values are refused by count")
{
    std::string text = "[";
    for (int i = 0; i < 100001; ++i) text += "1,";
    const auto d = yaml::parse(text + "1]", "many.yaml");
    CHECK_FALSE(d.usable);
    CHECK(first_error(d).find("more than 100000 values") != std::string::npos);
}

TEST_CASE("bytes that are no UTF-8 text are refused with their place")
{
    const std::string nul("a: b\0c", 6);
    const std::pair<std::string, std::string> rows[] = {
        {"a: \xFF", "f:1:4"}, {"a: 1\nb: \xC3(", "f:2:4"}, {"a: \xC0\x80", "f:1:4"}, {"a: \xED\xA0\x80", "f:1:4"},
        {"a: \xF4\x90\x80\x80", "f:1:4"}, {"a: \xE2\x82", "f:1:4"}, {nul, "f:1:5"}, {"\xFF\xFE" "a", "f:1:1"}, {"a:\tb", "f:1:3"}, {"a: b\rc: d", "f:1:5"}};
    for (const auto& row : rows) {
        const std::string text = row.first, place = row.second;
        const auto d = yaml::parse(text, "f");
        CAPTURE(place);
        CHECK_FALSE(d.usable);
        CHECK(first_error(d).find(place + ": error: ") == 0);
    }
    CHECK(yaml::parse("a: b # tab\there\n", "f").errors.empty());
    CHECK(yaml::parse("a: \xF0\x9F\x94\xA7 \xE2\x82\xAC\n", "f").errors.empty());
}

TEST_CASE("every text that starts a file, cut anywhere, is a document or one error, never a crash")
{
    const std::string text = "a: {b: [1, \"x\\n\"], c: 'it''s'}\nd: |\n  block\n  text\n? e\n: f\n- g\n%h\n&i *j !k <<: --- ...\n";
    for (std::size_t n = 0; n <= text.size(); ++n) {
        CAPTURE(text.substr(0, n));
        const auto d = yaml::parse(std::string_view(text).substr(0, n), "cut.yaml");
        CHECK((d.usable || d.errors.size() == 1));
    }
}

TEST_CASE("what is emitted is read back as the same tree, whatever the texts hold")
{
    Node root = yaml::map(), flow = yaml::list(), block = yaml::map();
    const char* texts[] = {"plain", "8.8", "0.8 mm", "-3 mm", "- x", "a: b", "a:b", "ends:", "x # y", "#x", "", " lead", "trail ", "null", "~", "yes", "[x]", "{x}", "a, b",
                           "\"q\"", "it's", "back\\slash", "two\nlines", "&a", "*a", "!t", "%d", "@x", "`x", "|", ">", "?", "-", "---", "N\xC2\xB7m", "<<", "=", "tab\tin"};
    int k = 0;
    for (const char* t : texts) {
        flow.items.push_back(yaml::scalar(t));
        yaml::put(block, "key " + std::to_string(k++), yaml::scalar(t));
        yaml::put(block, std::string("k") + t + "k", yaml::scalar(t));
    }
    Node items = yaml::list();
    items.items = {block, flow, yaml::scalar("x"), yaml::list(), yaml::map()};
    yaml::put(root, "flow", flow);
    yaml::put(root, "block", block);
    yaml::put(root, "items", items);
    for (const int width : {20, 110, 100000}) {
        const std::string text = yaml::emit(root, width);
        CAPTURE(text);
        const auto d = yaml::parse(text, "emitted.yaml");
        CAPTURE(first_error(d));
        const bool only_tabs = text.find('\t') != std::string::npos;
        CHECK_FALSE(only_tabs);
        REQUIRE(d.usable);
        CHECK(d.errors.empty());
        CHECK(yaml::same(d.root, root));
        Node other = root;
        other.entries[2].value.items[1].items[0].text = "plane";
        CHECK_FALSE(yaml::same(d.root, other));
    }
}

TEST_SUITE_END();

} // namespace
