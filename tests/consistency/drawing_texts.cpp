#include "drawing/canvas.h"
#include "report/record_parts.h"
#include "report/svg.h"
#include "support/cases.h"
#include "support/drawn.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <random>
#include <set>

using namespace thinskin;
using tests::Drawn;

namespace {

void no_overlap(const drawing::View& v)
{
    const std::vector<drawing::Text> texts = v.all_texts();
    CAPTURE(v.title);
    for (std::size_t i = 0; i < texts.size(); ++i)
        for (std::size_t j = i + 1; j < texts.size(); ++j) {
            CAPTURE(texts[i].text);
            CAPTURE(texts[j].text);
            CHECK_FALSE(drawing::intersect(drawing::box_of(texts[i]), drawing::box_of(texts[j])));
        }
}

bool holds(const drawing::View& v, const std::string& text)
{
    const std::vector<drawing::Text> all = v.all_texts();
    return std::any_of(all.begin(), all.end(), [&](const drawing::Text& t) { return t.text == text; });
}

/// "15" stands in some text as a whole number: "15", "15: +0.20", "8, 15".
bool numbered(const drawing::View& v, int number)
{
    const std::string n = std::to_string(number);
    const std::vector<drawing::Text> all = v.all_texts();
    return std::any_of(all.begin(), all.end(), [&](const drawing::Text& t) { return t.text == n || t.text.rfind(n + ":", 0) == 0; });
}

} // namespace

TEST_SUITE_BEGIN("texts of the drawing");

TEST_CASE("in the shipped cases no text of a view touches another, with the margins and forces of the record on it")
{
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const Drawn& d = tests::drawn(name);
        no_overlap(d.sheet.drawing.elevation);
        no_overlap(d.sheet.drawing.side);
    }
}

TEST_CASE("the two views stand beside or below each other without touching and fit the sheet; a long wall is drawn with the side view below")
{
    const report::SheetSize room;
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const Drawn& d = tests::drawn(name);
        const drawing::Box e = d.sheet.drawing.elevation.extent(), s = d.sheet.drawing.side.extent();
        const double scales[] = {d.sheet.scale, d.sheet.side_scale};
        const double widths[] = {(e.x1 - e.x0) / scales[0], (s.x1 - s.x0) / scales[1]}, heights[] = {(e.y1 - e.y0) / scales[0], (s.y1 - s.y0) / scales[1]}; // on paper
        CHECK((d.sheet.stacked ? std::max(widths[0], widths[1]) : widths[0] + widths[1]) <= room.width);
        CHECK((d.sheet.stacked ? heights[0] + heights[1] : (std::max(e.y1, s.y1) - std::min(e.y0, s.y0)) / scales[0]) <= room.height);
        CHECK((d.sheet.stacked || scales[1] == scales[0])); // side by side they stand on one height axis
        if (name == "awning_wall") CHECK((d.sheet.stacked && scales[0] <= 30 && scales[1] <= 15));
        if (name == "condenser_door") CHECK_FALSE(d.sheet.stacked);
    }
}

TEST_CASE("every part of the list has its number on the elevation, and its least margin beside it")
{
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const Drawn& d = tests::drawn(name);
        const auto notes = report::part_notes(*d.analysis.outcome);
        for (const drawing::LegendRow& r : d.sheet.drawing.legend) {
            CAPTURE(r.name);
            CHECK(numbered(d.sheet.drawing.elevation, r.number));
            const auto note = notes.find(r.checked_as);
            if (!r.checked_as.empty() && note != notes.end()) CHECK(holds(d.sheet.drawing.elevation, std::to_string(r.number) + ": " + note->second));
        }
    }
}

TEST_CASE("every fastener on the panel is named and its two distances from the datum edges are written")
{
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const Drawn& d = tests::drawn(name);
        for (const layout::Stack* s : d.analysis.layout->outer_stacks()) {
            CAPTURE(s->name);
            CHECK(holds(d.sheet.drawing.elevation, s->name));
            CHECK(holds(d.sheet.drawing.elevation, drawing::millimetres(s->at.x)));
            CHECK(holds(d.sheet.drawing.elevation, drawing::millimetres(s->at.y)));
        }
    }
}

TEST_CASE("width and height of the panel and the height of the item are dimensioned")
{
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const Drawn& d = tests::drawn(name);
        const layout::Layout& l = *d.analysis.layout;
        CHECK(holds(d.sheet.drawing.elevation, drawing::millimetres(l.width)));
        CHECK(holds(d.sheet.drawing.elevation, drawing::millimetres(l.height)));
        if (l.item && l.item->has_box) CHECK(holds(d.sheet.drawing.side, drawing::millimetres(l.item->box_size[1])));
    }
}

TEST_CASE("an estimated box is as wide as its letters, wherever it is anchored and however it is turned")
{
    drawing::Text t{{100, 50}, "12\xC2\xB0 ab", 10, drawing::Anchor::start, false, {}};
    const double w = 6 * drawing::letter_width * 10; // six characters, seven bytes
    CHECK(drawing::box_of(t).x0 == 100);
    CHECK(drawing::box_of(t).x1 == doctest::Approx(100 + w));
    t.anchor = drawing::Anchor::end;
    CHECK(drawing::box_of(t).x1 == doctest::Approx(100));
    t.upright = true;
    CHECK(drawing::box_of(t).y1 == doctest::Approx(50));
    CHECK(drawing::box_of(t).y0 == doctest::Approx(50 - w));
}

TEST_CASE("figures pushed apart keep their order and their pitch, and stay where they are when there is room")
{
    CHECK(drawing::spread_out({0, 100, 200}, 30) == std::vector<double>{0, 100, 200});
    std::mt19937 random(7);
    std::uniform_real_distribution<double> place(0, 500);
    for (int run = 0; run < 200; ++run) {
        std::vector<double> wanted;
        for (int i = 0; i < 12; ++i) wanted.push_back(place(random));
        std::sort(wanted.begin(), wanted.end());
        const std::vector<double> got = drawing::spread_out(wanted, 30);
        double moved = 0;
        for (std::size_t i = 0; i < got.size(); ++i) {
            if (i > 0) CHECK(got[i] - got[i - 1] >= 30 - 1e-9);
            moved += got[i] - wanted[i];
        }
        CHECK(std::abs(moved) < 1e-9); // least squares: the mean does not move
    }
}

TEST_SUITE_END();
