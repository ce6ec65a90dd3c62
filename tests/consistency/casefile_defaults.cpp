#include "casefile/reader.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace {

using namespace thinskin;

const std::string bare_job = R"yaml(format: 1
road: {surface: unsealed}
panel:
  kind: door
  faces: rear
  width: 740 mm
  height: 1520 mm
  skin: {material: DC04, thickness: 0.8 mm}
  frame: {width: 70 mm, depth: 32 mm, inner: {material: DC04, thickness: 0.7 mm}}
  ribs: [{name: rib, from: [0 mm, 100 mm], to: [740 mm, 100 mm], section: hat 40x25x1.0, material: DC04}]
door:
  mass: 27 kg
  centre_of_mass: [370 mm, 760 mm, -20 mm]
  hinges: {side: right, heights: [210 mm, 1290 mm], pin: {x: 752 mm, z: -30 mm}}
item: {name: unit, mass: 36 kg, centre_of_mass: [352 mm, 965 mm, 205 mm], fixings: [{at: [350 mm, 900 mm], use: M8, foot: 60x60x4 mm}]}
fastener_kinds: {M8: {type: bolt, size: M8, grade: "8.8"}}
reinforcement:
  angles: [{name: rail, from: [10 mm, 420 mm], to: [730 mm, 420 mm], gauge: 25 mm, section: angle 40x40x4, material: S235, lying: up}]
  straps: [{name: strap, from: [0 mm, 0 mm, 0 mm], to: [90 mm, 0 mm, 90 mm], section: flat 30x3, material: S235}]
)yaml";

bool listed(const model::Case& c, const std::string& path)
{
    return std::any_of(c.defaults.begin(), c.defaults.end(), [&](const model::DefaultTaken& d) { return d.key_path == path && !d.why.empty(); });
}

TEST_SUITE_BEGIN("case file: defaults");

TEST_CASE("each default that stands for an unmeasured fact is listed with its reason, once, and nothing else is")
{
    const auto r = casefile::read_text(bare_job, "bare.yaml");
    REQUIRE(r.value.has_value());
    const std::vector<std::string> expected = {
        "panel.skin.coating", "panel.edges.left", "panel.edges.right", "panel.edges.bottom", "panel.edges.top", "panel.edges_in_plane",
        "panel.frame.inner.coating", "panel.frame.seen", "panel.ribs[0].seen", "panel.ribs[0].ends", "door.hinges.evidence", "door.rest",
        "item.mass_tolerance", "reinforcement.angles[0].ends", "reinforcement.straps[0].slack", "reinforcement.straps[0].ends"};
    for (const std::string& path : expected) {
        CAPTURE(path);
        CHECK(listed(*r.value, path));
    }
    CHECK(r.value->defaults.size() == expected.size());
}

TEST_CASE("defaults have the values the page says, and no text of a user")
{
    const auto c = casefile::read_text(bare_job, "bare.yaml").value;
    REQUIRE(c.has_value());
    CHECK(c->panel.skin.coating.value == 0.04);
    CHECK(c->panel.skin.coating.text.empty());
    CHECK(c->panel.skin.crown.value == 0);
    CHECK(c->item->mass_tolerance.value == 0.05);
    CHECK(c->rules == model::Rules::allowable_strength);
    CHECK(c->road->basis == model::Basis::quasi_static);
    CHECK(c->panel.edges_in_plane == model::InPlane::fixed);
    CHECK(c->panel.frame[3]->seen == model::Seen::assumed);
    CHECK(c->door->hinges->evidence.kind == model::HingeEvidence::Kind::none);
    CHECK_FALSE(c->door->rest.has_value());
    CHECK(c->fastener_kinds[0].head == model::Face::outside);
    CHECK(c->reinforcement.angles[0].face == model::Face::inside);
    CHECK(c->reinforcement.angles[0].ends.first.to == model::MemberEnd::To::none);
    CHECK(c->skin == model::SkinTheory::automatic);
}

TEST_CASE("a value that equals its default is a statement, not an assumption, once it stands in the file")
{
    std::string text = bare_job;
    text.replace(text.find("thickness: 0.8 mm}"), 18, "thickness: 0.8 mm, coating: 0.04 mm}");
    const auto c = casefile::read_text(text, "bare.yaml").value;
    REQUIRE(c.has_value());
    CHECK_FALSE(listed(*c, "panel.skin.coating"));
    CHECK(c->panel.skin.coating.text == "0.04 mm");
}

TEST_CASE("thin sheet measured with ultrasonic gets a caution about the double echo, thick sheet does not")
{
    std::string text = bare_job;
    const std::size_t at = text.find("thickness: 0.8 mm}");
    const auto thin = casefile::read_text(std::string(text).replace(at, 18, "thickness: 1.5 mm, thickness_from: ultrasonic}"), "a.yaml");
    REQUIRE(thin.value.has_value());
    REQUIRE(thin.diagnostics.size() == 1);
    CHECK(thin.diagnostics[0].severity == base::Severity::caution);
    CHECK(thin.diagnostics[0].message.find("second echo") != std::string::npos);
    const auto thick = casefile::read_text(std::string(text).replace(at, 18, "thickness: 2 mm, thickness_from: ultrasonic}"), "a.yaml");
    CHECK(thick.diagnostics.empty());
}

TEST_CASE("places name the line of each value")
{
    const auto r = casefile::read_text(bare_job, "bare.yaml");
    CHECK(r.places.at("panel.skin.thickness").line == 8);
    CHECK(r.places.at("panel.skin.thickness").column == 37);
    CHECK(r.value->panel.ribs[0].at.line == 10);
    CHECK(r.places.count("panel.skin.coating") == 0);
}

TEST_SUITE_END();

} // namespace
