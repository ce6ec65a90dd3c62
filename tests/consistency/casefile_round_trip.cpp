#include "casefile/reader.h"
#include "casefile/schema.h"
#include "casefile/write_visitor.h"
#include "casefile/writer.h"
#include "consistency/casefile_full.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <set>

namespace {

using namespace thinskin;

std::vector<std::string> case_files()
{
    std::vector<std::string> out;
    for (const auto& entry : std::filesystem::directory_iterator(THINSKIN_SOURCE_DIR "/cases"))
        if (entry.path().extension() == ".yaml") out.push_back(entry.path().string());
    std::sort(out.begin(), out.end());
    return out;
}

model::Case must_read(const casefile::ReadResult& r)
{
    for (const base::Diagnostic& d : r.diagnostics) MESSAGE(base::format(d));
    REQUIRE(r.value.has_value());
    return *r.value;
}

std::vector<std::string> defaults_of(const model::Case& c)
{
    std::vector<std::string> out;
    for (const model::DefaultTaken& d : c.defaults) out.push_back(d.key_path + " = " + d.value + ", " + d.why);
    return out;
}

void check_same(const model::Case& a, const model::Case& b)
{
    CHECK(casefile::list_values(a) == casefile::list_values(b));
    CHECK(defaults_of(a) == defaults_of(b));
    CHECK(a.measured_from == b.measured_from);
}

/// "panel.ribs[0].ends.left.to: none" -> the keys in it: {panel, ribs, ends, left, to}
std::set<std::string> keys_in(const std::vector<std::string>& values)
{
    std::set<std::string> keys;
    for (const std::string& line : values) {
        std::string path = line.substr(0, line.find(": "));
        for (std::size_t from = 0; from < path.size();) {
            const std::size_t to = std::min(path.find('.', from), path.size());
            const std::string part = path.substr(from, to - from);
            keys.insert(part.substr(0, part.find('[')));
            from = to + 1;
        }
    }
    return keys;
}

TEST_SUITE_BEGIN("case file: reading and writing");

TEST_CASE("each shipped case reads without a word of complaint and is written so that it reads the same")
{
    REQUIRE(case_files().size() >= 4);
    for (const std::string& file : case_files()) {
        CAPTURE(file);
        const casefile::ReadResult first = casefile::read_file(file);
        CHECK(first.diagnostics.empty());
        const model::Case c = must_read(first);
        check_same(c, must_read(casefile::read_text(casefile::write(c), "again.yaml")));
    }
}

TEST_CASE("a case with every key is written so that it reads the same, and its second writing is the same text")
{
    const model::Case c = must_read(casefile::read_text(tests::full_case, "full.yaml"));
    const std::string text = casefile::write(c);
    CAPTURE(text);
    const model::Case again = must_read(casefile::read_text(text, "again.yaml"));
    check_same(c, again);
    CHECK(casefile::write(again) == text);
}

TEST_CASE("the case with every key holds every key of the schema, and the writer writes each")
{
    const model::Case c = must_read(casefile::read_text(tests::full_case, "full.yaml"));
    std::set<std::string> keys = keys_in(casefile::list_values(c));
    for (const char* road : {"basis: base_pulse, pulse: half-sine 15 g", "basis: random_vibration, roughness: D"}) // rule each other and `density` out
        keys.merge(keys_in(casefile::list_values(must_read(casefile::read_text(tests::full_case_on(road), "road.yaml")))));
    for (const casefile::Row& row : casefile::schema()) {
        CAPTURE(row.path);
        CHECK(keys.count(row.key()) == (row.path == "catalogue.file" ? 0 : 1)); // needs a file beside the case: casefile_own_rows.cpp
    }
}

TEST_CASE("values of the case with every key arrive in their fields")
{
    const model::Case c = must_read(casefile::read_text(tests::full_case, "full.yaml"));
    CHECK(c.job.notes == "two\nlines # and no comment");
    CHECK(c.rules == model::Rules::partial_factors);
    CHECK(c.road->basis == model::Basis::random_vibration);
    REQUIRE(c.road->density.size() == 3);
    CHECK(c.road->density[0].value.value == doctest::Approx(0.2 / 96.1703842225).epsilon(1e-9)); // 9.80665 squared
    CHECK(c.road->density[1].value.value == doctest::Approx(0.1 / 96.1703842225).epsilon(1e-9));
    CHECK(c.road->density[2].value.value == 0.001);
    CHECK(c.road->load == model::VehicleLoad::laden);
    CHECK(c.item->natural_frequency->value == 17.5);
    CHECK(c.panel.faces == model::Faces::front);
    CHECK(c.panel.skin.thickness.value == doctest::Approx(0.759).epsilon(1e-12));
    CHECK(c.panel.edges[static_cast<std::size_t>(model::Side::right)].kind == model::EdgeCondition::Kind::sprung);
    CHECK(c.panel.edges[static_cast<std::size_t>(model::Side::right)].rotational_stiffness.value == doctest::Approx(120).epsilon(1e-12));
    CHECK(c.panel.edges[static_cast<std::size_t>(model::Side::top)].kind == model::EdgeCondition::Kind::hinged);
    CHECK(c.panel.frame[static_cast<std::size_t>(model::Side::left)]->inner->coating.value == 0.03);
    CHECK_FALSE(c.panel.frame[static_cast<std::size_t>(model::Side::right)].has_value());
    CHECK(c.panel.ribs[0].lying == model::Way::left);
    CHECK(c.panel.ribs[0].ends.first.to == model::MemberEnd::To::none);
    CHECK(c.panel.ribs[0].ends.second.rotational_stiffness->value == doctest::Approx(5e5).epsilon(1e-12));
    CHECK(c.panel.ribs[0].ends.second.turning == "free");
    CHECK(c.panel.ribs[1].ends.first.turning == "fixed");
    CHECK(c.door->hinges->evidence.kind == model::HingeEvidence::Kind::proof_hang);
    CHECK(c.door->rest->x.value == 700);
    CHECK(c.brackets[1].mirror_of == "left");
    CHECK(c.brackets[2].rename.at("L1") == "C1");
    CHECK(c.fastener_kinds[0].head == model::Face::inside);
    CHECK(c.fastener_kinds[0].fitted);
    CHECK(c.fastener_kinds[0].sleeve);
    CHECK(c.fastener_kinds[0].nut_washer->diameter.value == doctest::Approx(25.4 * 15 / 16).epsilon(1e-12));
    CHECK(c.reinforcement.angles[0].lying == model::Way::down);
    CHECK(c.reinforcement.angles[0].ends.first.same_as_other);
    CHECK_FALSE(c.reinforcement.angles[1].to.has_value());
    CHECK(c.pressures[0].value.value == doctest::Approx(-1.2e-4).epsilon(1e-12));
    CHECK(c.skin == model::SkinTheory::linear);
    CHECK(c.grid == model::GridSize::quick);
    REQUIRE(c.panel.openings.size() == 2);
    CHECK(c.panel.openings[0].box.size.y.value == 250);
    CHECK(c.panel.openings[0].edge->section == "flat 20x2");
    CHECK_FALSE(c.panel.openings[1].edge.has_value());
    CHECK(c.measured_from.at("panel.skin.thickness") == "offcut");
    CHECK(c.measured_from.at("panel.frame.left.depth") == "hole_lip");
    CHECK(c.measured_from.at("panel.ribs[1].from") == "drawing");
    CHECK(c.measured_from.at("brackets[2].x") == "drawing");
}

TEST_CASE("one frame block stands for all four edges, and comes back as one")
{
    const model::Case c = must_read(casefile::read_file(THINSKIN_SOURCE_DIR "/cases/condenser_door.yaml"));
    for (const auto& frame : c.panel.frame) {
        REQUIRE(frame.has_value());
        CHECK(frame->width.value == 70);
        CHECK(frame->seen == model::Seen::tapped);
    }
    const std::string text = casefile::write(c);
    CHECK(text.find("  frame:\n    width: 70 mm\n") != std::string::npos);
}

TEST_CASE("a quantity set by a program is written with its unit and all its digits")
{
    model::Case c = must_read(casefile::read_file(THINSKIN_SOURCE_DIR "/cases/condenser_door.yaml"));
    c.panel.skin.thickness = {1.0 / 3.0, ""};
    c.item->mass_tolerance = {0.1, ""};
    const model::Case again = must_read(casefile::read_text(casefile::write(c), "again.yaml"));
    CHECK(again.panel.skin.thickness.value == 1.0 / 3.0);
    CHECK(again.item->mass_tolerance.value == doctest::Approx(0.1).epsilon(1e-15));
}

TEST_CASE("a default that a program has replaced is written")
{
    model::Case c = must_read(casefile::read_file(THINSKIN_SOURCE_DIR "/cases/condenser_door_bare.yaml"));
    REQUIRE(std::any_of(c.defaults.begin(), c.defaults.end(), [](const auto& d) { return d.key_path == "panel.frame.inner.coating"; }));
    for (auto& frame : c.panel.frame) frame->inner->coating = {0.02, ""};
    const model::Case again = must_read(casefile::read_text(casefile::write(c), "again.yaml"));
    CHECK(again.panel.frame[0]->inner->coating.value == 0.02);
}

TEST_CASE("keys are written in the order of the schema")
{
    const std::string text = casefile::write(must_read(casefile::read_text(tests::full_case, "full.yaml")));
    std::size_t last = 0;
    for (const casefile::Row* row : casefile::rows_in("")) {
        const std::size_t at = text.find("\n" + row->key() + ":");
        if (row->key() == "format") continue; // the first line has no line end before it
        CAPTURE(row->key());
        REQUIRE(at != std::string::npos);
        CHECK(at > last);
        last = at;
    }
}

TEST_SUITE_END();

} // namespace
