#include "catalogue/sections.h"

#include <doctest/doctest.h>

#include <string>

TEST_SUITE_BEGIN("reading a section");

using namespace thinskin::catalogue;

namespace {

Section section(const std::string& text)
{
    const ReadSection r = read_section(text);
    REQUIRE_MESSAGE(r.ok, r.expected);
    return r.section;
}

} // namespace

TEST_CASE("blanks and the multiplication sign do not matter; the name is kept tidy")
{
    for (const char* text : {"angle 40x40x4", "  angle   40 x 40 x 4  ", "angle 40\xC3\x97" "40 \xC3\x97 4", "angle 40x40x4 mm"}) {
        CAPTURE(text);
        CHECK(section(text).designation == "angle 40x40x4");
        CHECK(section(text).A == 304);
    }
    CHECK(section("box 60 x 25 x 0.7").designation == "box 60x25x0.7");
    CHECK(section("flat 30x3  lying").designation == "flat 30x3 lying");
    CHECK(section("angle 1 1/2 x 1 1/2 x 1/8 in").A == section("angle 1-1/2x1-1/2x1/8 in").A);
}

TEST_CASE("what is not a section is refused with an example")
{
    struct Row { const char* text; const char* says; };
    constexpr Row rows[] = {
        {"", "angle 40x40x4"},
        {"angel 40x40x4", "did you mean angle?"},
        {"40x40x4", "angle 40x40x4"},
        {"angle", "is not a size"},
        {"angle 40x40", "an angle has three sizes"},
        {"angle 40x40x4x4", "an angle has three sizes"},
        {"angle 40x40x40", "thinner than each leg"},
        {"angle 40x4x40", "thinner than each leg"},
        {"angle 40x40x0", "is not between 0 and 1000 mm"},
        {"angle 40x40x-4", "is not between 0 and 1000 mm"},
        {"angle 40x40xnan", "is not a size"},
        {"angle infx40x4", "is not a size"},
        {"angle 4000x40x4", "is not between 0 and 1000 mm"},
        {"angle 40,5x40x4", "is not a size"},
        {"angle 40x40x4 lying", "only a flat"},
        {"angle 40x40x4 ft", "is not a size"},
        {"angle 40x40x4mm", "is not a size"},
        {"angle 40x40x", "is not a size"},
        {"flat 30", "a flat has two sizes"},
        {"flat 3x30", "comes last"},
        {"flat 30x30", "comes last"},
        {"box 60x25", "a box has three sizes"},
        {"box 60x25x12.5", "two walls"},
        {"hat 40x25", "a hat has three sizes"},
        {"hat 40x25x20", "two walls"},
        {"hat 40x25x12x1x1", "a hat has three sizes"},
    };
    for (const Row& r : rows) {
        CAPTURE(r.text);
        const ReadSection read = read_section(r.text);
        CHECK(!read.ok);
        CHECK(read.section.A == 0);
        CAPTURE(read.expected);
        CHECK(read.expected.find("expected a section such as") == 0);
        CHECK(read.expected.find(r.says) != std::string::npos);
    }
}

TEST_SUITE_END();
