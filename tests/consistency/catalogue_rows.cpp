#include "catalogue/catalogue.h"
#include "catalogue/data.h"
#include "catalogue/sections.h"
#include "catalogue/thickness.h"

#include "base/units.h"

#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <limits>
#include <set>
#include <sstream>
#include <stdexcept>

TEST_SUITE_BEGIN("catalogue rows");

using namespace thinskin::catalogue;

namespace {

std::string file_bytes(const std::string& path)
{
    std::ifstream in(path, std::ios::binary);
    REQUIRE_MESSAGE(in.good(), path);
    std::ostringstream all;
    all << in.rdbuf();
    return all.str();
}

void check_origin(const Origin& o)
{
    CHECK(!o.source.empty());
    CHECK(!o.note.empty());
    if (o.label == thinskin::base::Label::published_read) CHECK(o.source != "no document");
}

/// The message read_rows throws for a bad text; empty when it does not throw.
std::string complaint(const char* text)
{
    try {
        (void)read_rows("probe", text);
    } catch (const std::logic_error& e) {
        return e.what();
    }
    return {};
}

} // namespace

TEST_CASE("the data compiled in is byte for byte what the files hold")
{
    for (const DataFile& d : data_files()) {
        CAPTURE(d.name);
        const std::string bytes = file_bytes(std::string(THINSKIN_SOURCE_DIR) + "/core/catalogue/data/" + std::string(d.name) + ".yaml");
        CHECK(bytes == d.text);
        CHECK(bytes.back() == '\n');
    }
}

TEST_CASE("every table is listed, every row has a source, a label and as many cells as there are columns")
{
    CHECK(tables().size() == data_files().size());
    for (const TableInfo& info : tables()) {
        CAPTURE(info.name);
        const auto t = table(info.name);
        REQUIRE(t.has_value());
        CHECK(!t->info.title.empty());
        CHECK(!t->rows.empty());
        REQUIRE(t->columns.size() > 3);
        CHECK(t->columns[t->columns.size() - 3] == "source");
        CHECK(t->columns[t->columns.size() - 2] == "label");
        CHECK(t->columns.back() == "note");
        for (const auto& row : t->rows) {
            CHECK(row.size() == t->columns.size());
            for (const std::string& cell : row) CHECK(!cell.empty());
        }
    }
}

TEST_CASE("every row of every file loads into its struct with an origin")
{
    std::size_t bands = 0;
    for (const Material& m : materials()) {
        CAPTURE(m.name);
        check_origin(m.elastic);
        bands += m.strengths.size();
        for (const StrengthBand& b : m.strengths) check_origin(b.origin);
    }
    CHECK(bands == table("materials")->rows.size());
    for (const BoltSize& b : bolt_sizes()) {
        check_origin(b.thread);
        check_origin(b.head);
        check_origin(b.hole);
    }
    CHECK(bolt_sizes().size() == table("bolt_threads")->rows.size());
    for (const BoltGrade& g : bolt_grades()) check_origin(g.origin);
    for (const WasherRow& w : washers()) check_origin(w.origin);
    for (const RoadSurface& r : road_surfaces()) check_origin(r.origin);
    for (const SecuringFactor& f : securing_factors()) check_origin(f.origin);
    CHECK(securing_factors().size() == table("securing_factors")->rows.size());
    for (const AngleSize& a : angle_sizes()) check_origin(a.origin);
    for (const SheetGauge& g : sheet_gauges()) check_origin(g.origin);
    for (const ScrewSize& x : screw_sizes()) check_origin(x.origin);
    for (const BlindRivet& x : blind_rivets()) check_origin(x.origin);
    for (const WoodScrewSize& x : wood_screw_sizes()) check_origin(x.origin);
    for (const Wood& x : woods()) check_origin(x.origin);
    CHECK(screw_sizes().size() == table("screws")->rows.size());
    CHECK(blind_rivets().size() == table("blind_rivets")->rows.size());
    CHECK(washers().size() == table("washers")->rows.size());
    CHECK(bolt_grades().size() == table("bolt_grades")->rows.size());
}

TEST_CASE("names are unique and each is found under its own name")
{
    std::set<std::string> seen;
    for (const Material& m : materials()) {
        CHECK(seen.insert(m.name).second);
        CHECK(material(m.name) == &m);
    }
    for (const BoltSize& b : bolt_sizes()) CHECK(bolt_size(b.name) == &b);
    for (const BoltGrade& g : bolt_grades()) CHECK(bolt_grade(g.name) == &g);
    for (const RoadSurface& r : road_surfaces()) CHECK(road_surface(r.name) == &r);
    for (const WasherRow& w : washers()) CHECK(washer(w.size, w.series) == &w);
    for (const ScrewSize& x : screw_sizes()) CHECK(screw_size(x.name) == &x);
    for (const BlindRivet& x : blind_rivets()) CHECK(blind_rivet(x.size, x.material) == &x);
    for (const WoodScrewSize& x : wood_screw_sizes()) CHECK(wood_screw_size(x.name) == &x);
    for (const Wood& x : woods()) CHECK(wood(x.name) == &x);
}

TEST_CASE("figures are possible: yield below tensile, pitch below diameter, fine hole below coarse, washer on its bolt")
{
    for (const Material& m : materials())
        for (const StrengthBand& b : m.strengths) {
            CAPTURE(m.name);
            CHECK(b.fy < b.fu);
            CHECK(m.E_strength <= m.E);
        }
    for (const BoltGrade& g : bolt_grades()) CHECK(g.fyb < g.fub);
    for (const BoltSize& b : bolt_sizes()) {
        CAPTURE(b.name);
        CHECK(b.pitch < b.d / 4);
        CHECK(b.d < b.hole_fine);
        CHECK(b.hole_fine < b.hole_medium);
        CHECK(b.hole_medium < b.hole_coarse);
        CHECK(b.across_flats < b.mean_diameter);
        CHECK(b.mean_diameter < b.across_points);
        const WasherRow* normal = washer(b.name, "normal");
        const WasherRow* large = washer(b.name, "large");
        REQUIRE(normal != nullptr);
        REQUIRE(large != nullptr);
        CHECK(normal->hole > b.d);
        CHECK(normal->diameter > b.across_flats);
        CHECK(large->diameter > normal->diameter);
        CHECK(large->thickness >= normal->thickness);
    }
    for (const ScrewSize& x : screw_sizes()) CHECK(x.head > x.d);
    for (const BlindRivet& x : blind_rivets()) {
        CHECK(x.head > x.d);
        CHECK(x.tension > x.shear);
    }
    for (const WoodScrewSize& x : wood_screw_sizes()) {
        CHECK(x.root < x.d);
        CHECK(x.head > x.d);
    }
    for (const Wood& x : woods()) CHECK((x.G >= 0.31 && x.G <= 0.73));
    for (std::size_t i = 1; i < sheet_gauges().size(); ++i) CHECK(sheet_gauges()[i].t < sheet_gauges()[i - 1].t);
}

TEST_CASE("a material covers each thickness at most once, never a NaN, zero or a thickness beyond its rows")
{
    for (const Material& m : materials()) {
        CAPTURE(m.name);
        for (double t = 0.05; t < 60; t += 0.05) {
            int bands = 0;
            for (const StrengthBand& b : m.strengths) bands += read_thickness_range(b.t)->contains(t) ? 1 : 0;
            CHECK(bands <= 1);
            CHECK(m.strength(t).covered == (bands == 1));
        }
        for (const double t : {0.0, -1.0, 61.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
            const Strength s = m.strength(t);
            CHECK(!s.covered);
            CHECK(s.fy == 0);
            CHECK(s.fu == 0);
            CHECK(s.reason.find(m.name) != std::string::npos);
        }
    }
}

TEST_CASE("a thicker part of one material is never stronger")
{
    for (const Material& m : materials())
        for (std::size_t i = 1; i < m.strengths.size(); ++i) {
            CAPTURE(m.name);
            CHECK(m.strengths[i].fy <= m.strengths[i - 1].fy);
            CHECK(m.strengths[i].fu <= m.strengths[i - 1].fu);
        }
}

TEST_CASE("limits of a range of thickness are in or out as written")
{
    CHECK(!read_thickness_range("< 3")->contains(3));
    CHECK(read_thickness_range("<= 3")->contains(3));
    CHECK(read_thickness_range("3 .. 16")->contains(3));
    CHECK(read_thickness_range("3 .. 16")->contains(16));
    CHECK(!read_thickness_range("> 16 .. 40")->contains(16));
    CHECK(read_thickness_range("> 16 .. 40")->contains(16.001));
    CHECK(!read_thickness_range("<= 3")->contains(0));
    for (const char* bad : {"", "3", "<3", "16 .. 3", "nan .. 3", "0 .. 3", "3 .. inf", "< -1", "3 .. 16 mm"}) {
        CAPTURE(bad);
        CHECK(!read_thickness_range(bad).has_value());
    }
}

TEST_CASE("a rolled angle's name is the section it describes")
{
    for (const AngleSize& a : angle_sizes()) {
        CAPTURE(a.designation);
        const ReadSection r = read_section(a.designation);
        REQUIRE(r.ok);
        CHECK(r.section.b == a.h); // the longer leg is named first
        CHECK(r.section.h == a.b);
        CHECK(r.section.t == a.t);
        CHECK(a.h >= a.b);
        CHECK(a.root_radius > 0);
    }
}

TEST_CASE("the gauge table printed by the catalogue is the one that quantities are read with")
{
    for (const SheetGauge& g : sheet_gauges()) {
        CAPTURE(g.number);
        const auto t = thinskin::base::steel_gauge_mm(g.number);
        REQUIRE(t.has_value());
        CHECK(*t == g.t);
    }
}

TEST_CASE("an unknown name is answered with the near one, or with what there is")
{
    CHECK(no_such_row(Lookup::material, "DC4") == "no material called DC4; did you mean DC04?");
    CHECK(no_such_row(Lookup::material, "dc04") == "no material called dc04; did you mean DC04?");
    CHECK(no_such_row(Lookup::bolt_size, "M80") == "no bolt size called M80; did you mean M8?");
    CHECK(no_such_row(Lookup::road_surface, "gravel") == "no road surface called gravel; there are sealed, unsealed, track");
    CHECK(no_such_table("material") == "no table called material; did you mean materials?");
    CHECK(no_such_row(Lookup::bolt_size, "M7") == "no bolt size called M7; did you mean M6 or M8?");
    CHECK(no_such_row(Lookup::bolt_size, "M9") == "no bolt size called M9; did you mean M8 or M10?");
    CHECK(no_such_row(Lookup::bolt_size, "M11") == "no bolt size called M11; did you mean M10 or M12?");
    CHECK(no_such_row(Lookup::material, "S240") == "no material called S240; did you mean S235?");
    CHECK(nearest(Lookup::bolt_grade, "88") == "8.8");
    CHECK(!nearest(Lookup::material, "").has_value());
    CHECK(material("DC4") == nullptr);
    CHECK(material("dc04") == nullptr);
    CHECK(bolt_grade("8.8 ") == nullptr);
    CHECK(!table("bolts").has_value());
}

TEST_CASE("a mistake in a data file is named with file and line")
{
    CHECK(complaint("# only a comment\n") == "probe.yaml:1: no rows");
    CHECK(complaint("- {a: 1, source: s, label: l, note: n}\n- {b: 1, source: s, label: l, note: n}\n") ==
          "probe.yaml:2: the keys or their order differ from the first row");
    CHECK(complaint("- {a: 1, label: l, note: n}\n") == "probe.yaml:1: a row ends with source, label, note");
    CHECK(complaint("\na: 1\n") == "probe.yaml:2: expected `- {key: value, ...}`");
    CHECK(complaint("- {a: \"1, source: s, label: l, note: n}\n").find("a quote is not closed") != std::string::npos);
    CHECK(complaint("- {a: , source: s, label: l, note: n}\n").find("a is empty") != std::string::npos);
    CHECK(complaint("- {a: 1,source: s, label: l, note: n}\n").find("expected a comma and a space") != std::string::npos);
    CHECK(complaint("- {a: \"x, y\", source: s, label: from memory, note: \"-\"}\n").empty());
}

TEST_CASE("a cell that is not a finite number above zero, or not a label, is refused")
{
    const Rows rows = read_rows("probe", "- {a: nan, b: -1, c: 1.5x, d: 2.5, e: 1e999, source: s, label: sure, note: n}\n");
    const RowView r(rows, 0);
    CHECK(r.number("d") == 2.5);
    for (const char* column : {"a", "b", "c", "e", "missing"}) {
        CAPTURE(column);
        CHECK_THROWS_AS((void)r.number(column), std::logic_error);
    }
    CHECK_THROWS_WITH((void)r.label(), "probe.yaml, row nan, label: not one of the six labels");
}

TEST_SUITE_END();
