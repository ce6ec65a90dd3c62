// One file per kind of mistake under tests/bad. Its first lines say what must be reported, and where:
//   # expect: LINE:COLUMN: words in the message
#include "casefile/reader.h"
#include "layout/layout.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace {

using namespace thinskin;

struct Expected {
    std::string place, words;
    bool met = false;
};

std::vector<Expected> expectations(const std::filesystem::path& file)
{
    std::ifstream in(file, std::ios::binary);
    std::vector<Expected> out;
    for (std::string line; std::getline(in, line);) {
        const std::string mark = "# expect: ";
        const std::size_t at = line.find(mark);
        if (at == std::string::npos) break;
        if (!line.empty() && line.back() == '\r') line.pop_back();
        const std::string rest = line.substr(at + mark.size());
        const std::size_t cut = rest.find(": ");
        out.push_back({rest.substr(0, cut), rest.substr(cut + 2), false});
    }
    return out;
}

std::vector<std::filesystem::path> bad_files()
{
    std::vector<std::filesystem::path> out;
    for (const auto& entry : std::filesystem::directory_iterator(THINSKIN_SOURCE_DIR "/tests/bad")) out.push_back(entry.path());
    std::sort(out.begin(), out.end());
    return out;
}

std::string all_of(const casefile::ReadResult& r)
{
    std::string out;
    for (const base::Diagnostic& d : r.diagnostics) out += base::format(d) + "\n";
    return out;
}

TEST_SUITE_BEGIN("case file: mistakes");

TEST_CASE("each bad file: exactly the expected errors, each at its line and column, and no case")
{
    const auto files = bad_files();
    REQUIRE(files.size() > 80);
    for (const auto& file : files) {
        CAPTURE(file.filename().string());
        auto expected = expectations(file);
        REQUIRE_FALSE(expected.empty());
        casefile::ReadResult r = casefile::read_file(file.string());
        if (r.value) // what the catalogue alone knows comes when names are looked up
            for (const base::Diagnostic& d : layout::resolve(*r.value).diagnostics) r.diagnostics.push_back(d);
        CAPTURE(all_of(r));
        CHECK(base::has_errors(r.diagnostics));
        CHECK(r.diagnostics.size() == expected.size());
        for (const base::Diagnostic& d : r.diagnostics) {
            const std::string text = base::format(d), place = std::to_string(d.at.line) + ":" + std::to_string(d.at.column);
            const auto hit = std::find_if(expected.begin(), expected.end(), [&](const Expected& e) {
                return !e.met && e.place == place && text.find(e.words) != std::string::npos;
            });
            CAPTURE(text);
            CHECK(hit != expected.end());
            if (hit != expected.end()) hit->met = true;
        }
    }
}

TEST_CASE("errors come in the order of the file")
{
    const casefile::ReadResult r = casefile::read_file(THINSKIN_SOURCE_DIR "/tests/bad/all_in_one_run.yaml");
    REQUIRE(r.diagnostics.size() == 4);
    for (std::size_t i = 1; i < r.diagnostics.size(); ++i) CHECK(r.diagnostics[i - 1].at.line <= r.diagnostics[i].at.line);
}

TEST_CASE("a file that is not there and a folder are errors that name the file")
{
    for (const std::string path : {THINSKIN_SOURCE_DIR "/tests/bad/no_such_file.yaml", THINSKIN_SOURCE_DIR "/tests/bad"}) {
        const casefile::ReadResult r = casefile::read_file(path);
        CHECK_FALSE(r.value.has_value());
        REQUIRE(r.diagnostics.size() == 1);
        CHECK(base::format(r.diagnostics[0]).find(path) == 0);
    }
}

TEST_CASE("a file above 1 MiB is refused before it is read as YAML")
{
    const casefile::ReadResult r = casefile::read_text("# " + std::string(std::size_t{1} << 20, 'x'), "large.yaml");
    REQUIRE(r.diagnostics.size() == 1);
    CHECK(r.diagnostics[0].message.find("at most 1048576") != std::string::npos);
}

TEST_SUITE_END();

} // namespace
