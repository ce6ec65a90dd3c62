// A window in the panel: what may not stand on it, what it does to the answer, and what the grid is off by.
#include "studies/grid_error.h"
#include "support/cases.h"

#include <algorithm>
#include <cmath>

using namespace thinskin;
using tests::Edits;

namespace {

std::string with_window(const std::string& name, const std::string& window)
{
    return tests::edited_text(name, {{"  skin: {material", "  openings: [" + window + "]\n  skin: {material"}});
}

/// First error of a case with a window; empty: it has none.
std::string error_of(const std::string& text)
{
    for (const base::Diagnostic& d : layout::resolve(tests::read_case(text)).diagnostics)
        if (d.severity == base::Severity::error) return d.message;
    return "";
}

bool contains(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_SUITE_BEGIN("behaviour: openings");

TEST_CASE("nothing stands on an opening, is screwed into it or reaches over its edge; each says which and where")
{
    const auto window = [](const std::string& from, const std::string& size) { return with_window("condenser_door", "{name: window, box: {from: [" + from + "], size: [" + size + "]}}"); };
    CHECK(error_of(window("200 mm, 1100 mm", "300 mm, 250 mm")) == "");
    CHECK(contains(error_of(window("100 mm, 700 mm", "80 mm, 80 mm")), "is in window"));          // the bolt L2 at [150, 740] mm
    CHECK(contains(error_of(window("158 mm, 700 mm", "80 mm, 80 mm")), "over the edge of window"));
    CHECK(contains(error_of(window("130 mm, 500 mm", "60 mm, 100 mm")), "lies over window"));       // the leg between its bolts
    CHECK(contains(error_of(window("600 mm, 1200 mm", "140 mm, 200 mm")), "edge of the panel"));
    const std::string two = "{name: window, box: {from: [200 mm, 1100 mm], size: [300 mm, 250 mm]}}, {name: hatch, box: {from: [400 mm, 1000 mm], size: [200 mm, 200 mm]}}";
    CHECK(contains(error_of(with_window("condenser_door", two)), "overlap"));
}

TEST_CASE("a plate, a board, a foot and the fixings at ends keep clear of an opening; each says the place, and how far out")
{
    const auto first = [](const std::string& text) {
        for (const base::Diagnostic& d : layout::resolve(tests::read_case(text)).diagnostics)
            if (d.severity == base::Severity::error) return d;
        return base::Diagnostic{};
    };
    const auto window = [](const std::string& from, const std::string& size) { return "{name: window, box: {from: [" + from + "], size: [" + size + "]}}"; };
    const auto told = [&first](const std::string& text, const std::string& path, const std::string& what, const std::string& hint) {
        const base::Diagnostic d = first(text);
        CAPTURE(path);
        CAPTURE(d.message);
        CAPTURE(d.hint);
        CHECK(d.at.line > 0);
        CHECK(contains(d.key_path, path));
        CHECK(contains(d.message, what));
        CHECK(contains(d.hint, hint));
    };
    const std::string small = "spare_wheel_small_plate", large = "spare_wheel_large_plate";
    CHECK(error_of(with_window(small, window("100 mm, 820 mm", "280 mm, 200 mm"))) == ""); // the feet end at y 820 mm
    told(with_window(small, window("200 mm, 806 mm", "300 mm, 200 mm")), "W3", "over the edge of window", "at least 10.0 mm from the opening's edge"); // hole and plate both: its washer comes first
    told(with_window(small, window("444 mm, 740 mm", "100 mm, 20 mm")), "backing_plates.backing plate.box", "backing plate (x 332 to 452, y 690 to 810 mm) lies over window", "8 mm or more to the left");
    told(with_window(small, window("200 mm, 815 mm", "300 mm, 200 mm")), "W3", "the foot at W3 stands over the edge", "5 mm or more down");
    told(with_window(large, window("30 mm, 870 mm", "45 mm, 40 mm")), "backing_plates.backing plate.box", "lies over window", "30 mm or more down");
    const std::string board = tests::edited_text(small, {{"gauges:", "  boards:\n    - {name: board, box: {from: [100 mm, 1000 mm], size: [300 mm, 200 mm]}, thickness: 15 mm, wood: plywood}\ngauges:"},
                                                         {"  skin: {material", "  openings: [" + window("390 mm, 1100 mm", "100 mm, 300 mm") + "]\n  skin: {material"}});
    told(board, "boards.board.box", "board (x 100 to 400, y 1000 to 1200 mm) lies over window", "10 mm or more to the left");
    told(with_window("ladder_rack", window("290 mm, 1200 mm", "60 mm, 80 mm")), "LS1", "is in window", "clear of the opening");   // the strap's bolt in the cant rail
    told(with_window("ladder_rack", window("20 mm, 560 mm", "12 mm, 12 mm")), "lower rail", "lies over window", "clear of the opening");
}

TEST_CASE("every fastener of a plate that is over an opening is named, not only the plate")
{
    std::vector<std::string> named;
    const std::string text = with_window("spare_wheel_large_plate", "{name: window, box: {from: [30 mm, 610 mm], size: [40 mm, 20 mm]}}");
    for (const base::Diagnostic& d : layout::resolve(tests::read_case(text)).diagnostics)
        if (d.severity == base::Severity::error) named.push_back(d.key_path);
    CHECK(std::count(named.begin(), named.end(), "F1") == 1);
    CHECK(std::count(named.begin(), named.end(), "F5") == 0);
}

TEST_CASE("a window lets the panel move more, a section round it less again; forces balance and its corners are said not to be covered")
{
    const std::string box = "box: {from: [250 mm, 560 mm], size: [200 mm, 200 mm]}";
    const tests::Analysed plain = tests::analyse_anew(tests::edited_text("plain_panel"));
    const tests::Analysed open = tests::analyse_anew(with_window("plain_panel", "{name: window, " + box + "}"));
    const tests::Analysed framed = tests::analyse_anew(with_window("plain_panel", "{name: window, " + box + ", edge: {section: flat 20x2, material: S235}}"));
    const auto w = [](const tests::Analysed& a) { return a.analysis.outcome->skin.front().linear_deflection_mm; }; // the theory that decides may differ
    CHECK(w(open) > 1.0001 * w(plain));
    CHECK(w(framed) < 0.9999 * w(open));
    for (const tests::Analysed* a : {&open, &framed}) {
        const results::Outcome& o = *a->analysis.outcome;
        CHECK(o.not_solved.empty());
        CHECK(o.balance.worst_relative_error <= 1e-8);
        CHECK(tests::row(o, "opening corners/window")->status == base::Status::not_covered);
    }
    CHECK(framed.analysis.layout->ribs.size() == plain.analysis.layout->ribs.size() + 4);
}

TEST_CASE("round corners of a window are checked; without a radius, or with one too small for the chart, they are not covered and neither is the panel")
{
    const auto checked = [](const std::string& radius) {
        return tests::analyse_anew(with_window("plain_panel", "{name: window, box: {from: [250 mm, 560 mm], size: [200 mm, 200 mm]}" + radius + "}"));
    };
    const auto panel = [](const tests::Analysed& a) {
        for (const results::Group& g : a.analysis.outcome->groups)
            if (g.name == "panel") return g.status;
        return base::Verdict::fail;
    };
    const tests::Analysed sharp = checked(""), small = checked(", corner_radius: 15 mm"), round = checked(", corner_radius: 60 mm");
    for (const tests::Analysed* a : {&sharp, &small}) {
        CHECK(tests::row(*a->analysis.outcome, "opening corners/window")->status == base::Status::not_covered);
        CHECK(panel(*a) == base::Verdict::not_covered);
    }
    const results::Check& c = *tests::row(*round.analysis.outcome, "opening corners/window");
    CHECK(c.status == base::Status::judgement);
    CHECK(c.demand > 0);
    CHECK(c.capacity < tests::row(*round.analysis.outcome, "skin stress")->capacity / 2.8); // the least of the chart is 2.9
    CHECK(error_of(with_window("plain_panel", "{name: window, box: {from: [250 mm, 560 mm], size: [200 mm, 200 mm]}, corner_radius: 120 mm}")).find("more than half") != std::string::npos);
}

TEST_CASE("a hole near an opening has its edge distance from there")
{
    const tests::Analysed a = tests::analyse_anew(with_window("condenser_door", "{name: window, box: {from: [140 mm, 830 mm], size: [80 mm, 80 mm]}}"));
    for (const layout::Stack& s : a.analysis.layout->brackets.front().fasteners)
        if (s.name == "L2")
            for (const layout::Ply& p : s.plies)
                if (p.role == layout::Ply::Role::skin) {
                    CHECK(p.edge_distance == doctest::Approx(90));
                    CHECK(p.edge == "edge of window");
                }
}

TEST_CASE("a rotationally sprung edge lies between hinged and held and goes to both")
{
    const auto w = [](const std::string& edge) {
        const Edits edits{{"edges: {left: held, right: held, bottom: held, top: held}", "edges: {left: " + edge + ", right: " + edge + ", bottom: " + edge + ", top: " + edge + "}"}};
        return tests::check_case("plain_panel", edits).skin.front().max_deflection_mm;
    };
    const auto sprung = [&w](const std::string& stiffness) { return w("{rotational_stiffness: " + stiffness + " N·m/rad per m}"); };
    const double held = w("held"), hinged = w("hinged");
    CHECK(std::abs(sprung("10000000") - held) <= 1e-4 * held);
    CHECK(std::abs(sprung("0.001") - hinged) <= 1e-3 * hinged);
    CHECK(sprung("120") > held);
    CHECK(sprung("120") < hinged);
    CHECK(sprung("1000") < sprung("120"));
}

TEST_CASE("the grid's error is estimated from a second grid, and the fine grid lies near it")
{
    const tests::Analysed normal = tests::analyse_anew(tests::edited_text("plain_panel"));
    results::Outcome o = *normal.analysis.outcome;
    CHECK(o.grid.error_estimate == "not run");
    studies::add_grid_error(*normal.source, o);
    REQUIRE(o.grid.error.deflection);
    CHECK(o.grid.error.other_spacing_mm == 45);
    CHECK(o.grid.error_estimate.find("normal against quick grid") != std::string::npos);
    model::Case fine = *normal.source;
    fine.grid = model::GridSize::fine;
    pipeline::Workspace w;
    const auto a = pipeline::analyse(fine, w, pipeline::Depth::margins);
    REQUIRE(a.outcome);
    CHECK(a.outcome->grid.spacing_mm == 20);
    const double here = o.skin.front().max_deflection_mm, there = a.outcome->skin.front().max_deflection_mm;
    CHECK(std::abs(here - there) <= 3 * *o.grid.error.deflection * here); // an estimate, no bound
    CHECK(*o.grid.error.deflection < 0.01);
}

TEST_SUITE_END();
