#include "catalogue/sections.h"
#include "checks/bar_rows.h"
#include "checks/checks.h"
#include "support/cases.h"
#include "support/stack_rows.h"

#include <algorithm>
#include <cmath>

// Aluminium skins and angles: which clause each row asks, what stays not covered and says why, and a whole case.
using namespace thinskin;
using layout::Hardware;
using layout::Ply;
using tests::stack_rows;
using tests::find_row;

namespace {

Ply ply(const std::string& part, Ply::Role role, const char* material, double t, double edge = INFINITY) { return {part, role, *catalogue::material(material), t, edge, ""}; }
const auto skin = [](double t) { return ply("skin", Ply::Role::skin, "5754-H22", t); };
const auto steel_leg = ply("leg", Ply::Role::leg, "S235", 4);
const auto rail = ply("rail", Ply::Role::angle, "6060-T66", 5);

Hardware hardware(Hardware::Type type, double d)
{
    Hardware h;
    h.type = type;
    h.kind = "kind";
    h.d = d;
    h.hole = type == Hardware::Type::bolt ? d + 1 : d;
    h.stress_area = 36.6;
    h.across_flats = type == Hardware::Type::bolt ? 13 : 9.8;
    h.mean_diameter = type == Hardware::Type::bolt ? 13.9 : 9.8;
    h.tip_diameter = h.across_flats;
    h.fub = 800, h.fyb = 640;
    h.own_shear = 5200, h.own_tension = 7900;
    return h;
}

/// No clause for steel sheet may speak about an aluminium ply.
void check_all_covered(const std::vector<results::Check>& all)
{
    static const std::string steel_only[] = {"BB-1", "BB-2", "BB-3", "TO-1", "TO-2", "PO-1", "PU-1", "SC-1", "SC-6", "SC-7", "RV-3"};
    for (const auto& c : all) {
        CAPTURE(c.id);
        CAPTURE(c.note);
        CHECK(c.has_numbers());
        if (c.id.find("/skin") != std::string::npos || c.id.find("/rail") != std::string::npos)
            CHECK(std::find(std::begin(steel_only), std::end(steel_only), c.formula) == std::end(steel_only));
    }
}

} // namespace

TEST_SUITE_BEGIN("behaviour: aluminium");

TEST_CASE("bolt, screw and rivet through aluminium: every row has figures, each aluminium ply by the aluminium clauses")
{
    const auto bolt = stack_rows(hardware(Hardware::Type::bolt, 8), {steel_leg, skin(1.5), rail});
    check_all_covered(bolt);
    CHECK(find_row(bolt, "bearing/X/leg").formula == "BB-3");
    CHECK(find_row(bolt, "bearing/X/skin").formula == "AL-1");
    CHECK(find_row(bolt, "pull-through at the nut/X/rail").formula == "AL-5");
    const auto screw = stack_rows(hardware(Hardware::Type::screw, 4.8), {steel_leg, skin(1.5)});
    check_all_covered(screw);
    CHECK(find_row(screw, "screw shear/X").formula == "AL-2");
    CHECK(find_row(screw, "pull-out at the tip/X/skin").formula == "AL-3");
    CHECK(find_row(screw, "pull-over at the head/X/leg").formula == "SC-3");
    const auto rivet = stack_rows(hardware(Hardware::Type::rivet, 4.8), {skin(1.5), skin(2)});
    check_all_covered(rivet);
    CHECK(find_row(rivet, "pull-through at the head/X/skin").formula == "AL-4");
}

TEST_CASE("a thin bolted skin of aluminium: pull-through by the clause for screws, marked as judgement; repeated load at a third")
{
    const auto all = stack_rows(hardware(Hardware::Type::bolt, 8), {skin(1.5), steel_leg});
    CHECK(find_row(all, "pull-through at the head/X/skin").formula == "AL-4");
    CHECK(find_row(all, "pull-through at the head/X/skin").status == base::Status::judgement);
    const auto repeated = find_row(all, "repeated bearing/X/skin"), bearing = find_row(all, "bearing/X/skin");
    CHECK(repeated.capacity == doctest::Approx(0.10 * bearing.capacity * 1.95 / 3).epsilon(1e-12));
}

TEST_CASE("a screw in aluminium thinner than the clause knows is not covered, never a pass")
{
    CHECK(find_row(stack_rows(hardware(Hardware::Type::screw, 4.8), {steel_leg, skin(0.8)}), "pull-out at the tip/X/skin").status == base::Status::not_covered);
}

TEST_CASE("a whole case: skin of 1.5 mm, unequal aluminium angles tied to the frame: skin and rails are judged, the contact with steel is warned of")
{
    const tests::Edits edits{{"skin: {material: DC04, thickness: 0.8 mm, coating: 0.04 mm, crown: 0 mm}", "skin: {material: 5754-H22, thickness: 1.5 mm, coating: 0 mm, crown: 0 mm}"},
                             {"      section: angle 40x40x4\n      material: S235", "      section: angle 40x35x5\n      material: 6060-T66"}};
    const results::Outcome& o = tests::check_case("condenser_door_made_good", edits);
    for (const auto& c : o.checks) {
        if (c.group != "fixing" && c.group != "reinforcement" && c.part != "skin") continue;
        CAPTURE(c.id);
        CAPTURE(c.note);
        CHECK(c.status != base::Status::not_covered);
    }
    REQUIRE(tests::row(o, "bending and axial force/upper rail"));
    CHECK(tests::row(o, "bending and axial force/upper rail")->note.find("unequal legs") != std::string::npos);
    CHECK(tests::row(o, "stress/upper rail")->has_numbers());
    CHECK(tests::row(o, "skin stress")->capacity == doctest::Approx(130 / 1.67).epsilon(1e-9));
    CHECK(std::any_of(o.cautions.begin(), o.cautions.end(), [](const std::string& s) { return s.find("upper rail (6060-T66)") != std::string::npos && s.find("corrodes") != std::string::npos; }));
}

TEST_CASE("repeated stress of an aluminium skin is not covered: the S-N lines are those of steel")
{
    const results::Outcome& o = tests::check_case("condenser_door_shaken", {{"skin: {material: DC04, thickness: 0.8 mm, coating: 0.04 mm, crown: 0 mm}", "skin: {material: 5754-H22, thickness: 1.5 mm, coating: 0 mm, crown: 0 mm}"}});
    const results::Check* beside = tests::row(o, "fatigue/the skin beside what is fixed to it");
    REQUIRE(beside);
    CHECK(beside->status == base::Status::not_covered);
    CHECK(beside->note.find("EN 1999-1-3") != std::string::npos);
    // The steel sheet of the frame has hole edges of its own, which may fail first.
    const results::Check* edges = tests::row(o, "fatigue/sheet hole edges");
    REQUIRE(edges);
    CHECK((edges->status == base::Status::not_covered || edges->status == base::Status::fail));
    REQUIRE(tests::row(o, "fatigue/bolt threads"));
    CHECK(tests::row(o, "fatigue/bolt threads")->note.find("EN 1999-1-3") == std::string::npos);
}

TEST_CASE("welds and braces of aluminium have no clause here and say so: beside a weld most of its strength is gone")
{
    const results::Outcome& o = tests::check_case("condenser_door_made_good", {{"arm: {at: 700 mm, length: 400 mm, section: angle 40x40x4, material: S235}", "arm: {at: 700 mm, length: 400 mm, section: angle 40x40x4, material: 6060-T66}"},
                                                                               {"brace: {from: 430 mm, to_arm: 270 mm, section: angle 25x25x3, material: S235}", "brace: {from: 430 mm, to_arm: 270 mm, section: angle 25x25x3, material: 6060-T66}"}});
    REQUIRE(tests::row(o, "arm to leg/left"));
    CHECK(tests::row(o, "arm to leg/left")->status == base::Status::not_covered);
    CHECK(tests::row(o, "arm to leg/left")->note.find("weld") != std::string::npos);
    CHECK(tests::row(o, "compression/brace left")->status == base::Status::not_covered);
    CHECK(tests::row(o, "mount bearing/" + o.mounts.front().name)->formula == "AL-1");
}

TEST_CASE("a box of aluminium, a backing plate of aluminium: not covered, with the reason")
{
    const catalogue::Material alu = *catalogue::material("6060-T66");
    const catalogue::Section box = catalogue::read_section("box 40x40x2").section;
    const auto bar = checks::bar_rows({"arm left", "bracket", "left", &box, &alu, 400, {results::MemberForce{}}});
    REQUIRE(bar.size() == 1);
    CHECK(bar.front().status == base::Status::not_covered);
    CHECK(bar.front().note == "6060-T66 is aluminium: a section that is no angle has no clause here");

    const model::Case c = tests::read_case(tests::edited_text("spare_wheel_large_plate", {{"thickness: 2 mm\n      material: S235", "thickness: 2 mm\n      material: 5754-H22"}}));
    const layout::Result l = layout::resolve(c);
    REQUIRE(l.layout);
    std::vector<results::Check> plates;
    checks::Demands d;
    d.layout = &*l.layout;
    checks::plate_rows(d, plates);
    REQUIRE(plates.size() == 1);
    CHECK(plates.front().status == base::Status::not_covered);
    CHECK(plates.front().note.find("is aluminium: how far a plate's rim reaches (PL-2) has no clause here") != std::string::npos);
}

TEST_SUITE_END();
