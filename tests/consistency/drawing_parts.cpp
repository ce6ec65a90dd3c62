#include "drawing/canvas.h"
#include "support/drawn.h"
#include "support/near.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thinskin;
using drawing::PartKind;
using drawing::Style;
using tests::Drawn;

namespace {

bool of(const drawing::Part& p, PartKind kind, const std::string& name) { return p.kind == kind && p.name == name; }

bool shown(const drawing::View& v, PartKind kind, const std::string& name)
{
    const auto has = [&](const auto& marks) { return std::any_of(marks.begin(), marks.end(), [&](const auto& m) { return of(m.part, kind, name); }); };
    return has(v.polylines) || has(v.circles) || has(v.lines);
}

bool circle_at(const drawing::View& v, PartKind kind, const std::string& name, layout::Point at)
{
    return std::any_of(v.circles.begin(), v.circles.end(), [&](const drawing::Circle& c) { return of(c.part, kind, name) && c.centre.x == at.x && c.centre.y == at.y; });
}

void in_both(const Drawn& d, PartKind kind, const std::string& name)
{
    CAPTURE(name);
    CHECK(shown(d.sheet.drawing.elevation, kind, name));
    CHECK(shown(d.sheet.drawing.side, kind, name));
}

} // namespace

TEST_SUITE_BEGIN("parts of the drawing");

TEST_CASE("every part of a shipped case is in both views under its own name")
{
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const Drawn& d = tests::drawn(name);
        const layout::Layout& l = *d.analysis.layout;
        in_both(d, PartKind::skin, "skin");
        for (const auto& a : l.angles) in_both(d, PartKind::angle, a.bar.name);
        for (const auto& b : l.brackets) in_both(d, PartKind::bracket, b.name);
        for (const auto& r : l.ribs) in_both(d, PartKind::rib, r.name);
        for (const auto& s : l.straps) in_both(d, PartKind::strap, s.name);
        for (const auto& g : l.source->gauges) in_both(d, PartKind::gauge, g.name);
        if (l.item) in_both(d, PartKind::mass_centre, l.item->name);
        if (l.item && l.item->has_box) in_both(d, PartKind::item, l.item->name);
        if (l.door && l.door->has_hinges) in_both(d, PartKind::hinge, "hinge line");
        if (l.door && !l.door->latches.empty()) in_both(d, PartKind::latch, "latch");
    }
}

TEST_CASE("every fastener and end fixing has its symbol at its place")
{
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const Drawn& d = tests::drawn(name);
        const drawing::View& e = d.sheet.drawing.elevation;
        for (const layout::Stack* s : d.analysis.layout->outer_stacks()) CHECK(circle_at(e, PartKind::fastener, s->name, s->at));
        for (const auto& a : d.analysis.layout->angles)
            for (const auto& end : a.ends)
                for (const auto& s : end.fasteners) CHECK(circle_at(e, PartKind::end_fixing, s.name, s.at));
    }
}

TEST_CASE("what lies behind the skin is dashed, what lies on it is not")
{
    const Drawn& d = tests::drawn("condenser_door");
    int behind = 0, on = 0;
    for (const drawing::Polyline& p : d.sheet.drawing.elevation.polylines) {
        if (p.part.kind == PartKind::angle && p.style != Style::dimension) {
            ++behind;
            CHECK(p.style == Style::hidden);
        }
        if (p.part.kind == PartKind::bracket && p.style != Style::dimension) {
            ++on;
            CHECK(p.style == Style::visible);
        }
    }
    CHECK(behind >= 2);
    CHECK(on >= 4);
}

TEST_CASE("both views share the height axis")
{
    const Drawn& d = tests::drawn("condenser_door");
    const layout::Bracket& b = d.analysis.layout->brackets.front();
    const auto top = [&](const drawing::View& v) {
        double y = -1e9;
        for (const drawing::Polyline& p : v.polylines)
            if (of(p.part, PartKind::bracket, b.name) && p.style == Style::visible)
                for (const layout::Point q : p.points) y = std::max(y, q.y);
        return y;
    };
    CHECK(top(d.sheet.drawing.elevation) == b.leg.to.y);
    CHECK(top(d.sheet.drawing.side) == b.leg.to.y);
}

TEST_CASE("a dimension is drawn as long as it says")
{
    const drawing::DimensionMarks level = drawing::marks({{10, 0}, {730, 5}, true, -50, "720", 20, {}});
    CHECK(level.lines[2].b.x - level.lines[2].a.x == 720);
    CHECK(level.lines[2].a.y == -50);
    CHECK(level.lines[2].b.y == -50);
    CHECK(level.text.at.x == 370);
    CHECK_FALSE(level.text.upright);
    const drawing::DimensionMarks upright = drawing::marks({{10, 100}, {30, 640}, false, 200, "540", 20, {}});
    CHECK(upright.lines[2].b.y - upright.lines[2].a.y == 540);
    CHECK(upright.lines[2].a.x == 200);
    CHECK(upright.text.upright);
    for (const char* name : {"condenser_door", "ladder_rack"})
        for (const drawing::View* v : {&tests::drawn(name).sheet.drawing.elevation, &tests::drawn(name).sheet.drawing.side})
            for (const drawing::Dimension& m : v->dimensions) CHECK(m.text == drawing::millimetres(std::abs(m.level ? m.b.x - m.a.x : m.b.y - m.a.y)));
}

TEST_CASE("the zone drawn round a latch is the one in which a hole is refused")
{
    const auto diagnostics = [](double distance) {
        const model::Case c = tests::read_case(tests::edited_text("condenser_door", {{"latches: [{at: [0 mm, 580 mm]}]", "latches: [{at: [150 mm, " + std::to_string(420 + distance) + " mm]}]"}}));
        return base::has_errors(layout::resolve(c).diagnostics);
    };
    CHECK(diagnostics(drawing::edge_zone_radius - 1));
    CHECK_FALSE(diagnostics(drawing::edge_zone_radius + 1));
}

TEST_CASE("without a result there are no forces and no margins on the drawing; rows that do not stand say so")
{
    const Drawn& d = tests::drawn("condenser_door");
    const drawing::Drawing bare = drawing::draw(*d.analysis.layout, nullptr, {.text_height = 30, .notes = {}});
    CHECK_FALSE(shown(bare.side, PartKind::load, "row"));
    CHECK(shown(d.sheet.drawing.side, PartKind::load, "row"));
    results::Outcome o = *d.analysis.outcome;
    for (results::FastenerForce& f : o.fasteners) f.stands = false;
    const drawing::Drawing open = drawing::draw(*d.analysis.layout, &o, {.text_height = 30, .notes = {}});
    CHECK_FALSE(shown(open.side, PartKind::load, "row"));
    CHECK(std::any_of(open.side.texts.begin(), open.side.texts.end(), [](const drawing::Text& t) { return t.text == "not covered"; }));
    o.verdict = base::Verdict::not_solved;
    CHECK_FALSE(shown(drawing::draw(*d.analysis.layout, &o, {.text_height = 30, .notes = {}}).side, PartKind::load, "item"));
}

TEST_CASE("the forces drawn are those of the result: item on its arms, pull of each row")
{
    const Drawn& d = tests::drawn("condenser_door");
    const results::Outcome& o = *d.analysis.outcome;
    double pull = 0;
    for (const results::FastenerForce& f : o.fasteners)
        if (f.load_case == o.load_path_case && (f.name == "L2" || f.name == "R2")) pull += f.own_pull_N;
    REQUIRE_FALSE(o.load_path.empty());
    const auto says = [&](double newtons) {
        const std::string text = std::to_string(static_cast<long>(std::lround(std::abs(newtons)))) + " N";
        const auto& all = d.sheet.drawing.side.texts;
        return std::any_of(all.begin(), all.end(), [&](const drawing::Text& t) { return t.text == text; });
    };
    CHECK(says(pull));
    CHECK(says(o.load_path.front().force_N));
}

TEST_CASE("a layout of no size gives empty views")
{
    const drawing::Drawing d = drawing::draw(layout::Layout{}, nullptr, {});
    CHECK(d.elevation.lines.empty());
    CHECK(d.side.polylines.empty());
    CHECK(d.elevation.extent().x1 == 0);
}

TEST_SUITE_END();
