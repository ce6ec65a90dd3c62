#include "support/cases.h"

#include <cmath>

// Ribs as plies of a fastener, and their stress from the skin's field.
using namespace thinskin;
using tests::check_case;

namespace {

const std::string through_crown = "at: [450 mm, 540 mm]", through_foot = "at: [490 mm, 540 mm]", beside = "at: [560 mm, 540 mm]";

tests::Edits bolts(const std::string& place, const std::string& more = "")
{
    return {{through_foot, place}, {"type: insert, size: M6, grade: \"8.8\", hole: 9 mm, flange: 13 mm, head_washer: 18x1.6 mm, shear_strength: 3 kN", "type: bolt, size: M6, grade: \"8.8\", nut_washer: 18x1.6 mm" + more}};
}

} // namespace

TEST_SUITE_BEGIN("behaviour: ribs");

TEST_CASE("through the foot of a hat its wall is a ply; through the crown there is a gap; beside it the skin is alone")
{
    const auto foot = check_case("bottle_locker_wall");
    CHECK(foot.stacks.front().line == "head, washer | foot T1 3.00 | skin 0.71 | rib 1 1.00 | insert");
    CHECK(tests::row(foot, "edge distance/T1/rib 1"));
    const auto bare = check_case("bottle_locker_wall", {{through_foot, beside}});
    CHECK(bare.stacks.front().line == "head, washer | foot T1 3.00 | skin 0.71 | insert");
    CHECK(tests::row(bare, "pull of the insert out/T1/skin")->note.find("bare skin") != std::string::npos);
    const auto crown = check_case("bottle_locker_wall", bolts(through_crown));
    REQUIRE(tests::row(crown, "gap/T1"));
    CHECK(tests::row(crown, "gap/T1")->note.rfind("24 mm", 0) == 0);
    CHECK(tests::row(crown, "bolt bending/T1"));
    CHECK_FALSE(tests::row(check_case("bottle_locker_wall", bolts(through_crown, ", sleeve: yes")), "gap/T1"));
}

TEST_CASE("a hat is judged by its largest stress and its walls; a lying flat as a bar")
{
    const auto hat = check_case("bottle_locker_wall");
    const auto* row = tests::row(hat, "rib/rib 2");
    REQUIRE(row);
    CHECK(row->formula == "RB-1");
    CHECK(row->has_numbers());
    CHECK(row->status != base::Status::pass); // judgement at best
    const auto flat = check_case("bottle_locker_wall", {{"section: hat 40x25x40x1.0, material: DC04", "section: flat 40x5, material: S235, lying: left"}});
    REQUIRE(tests::row(flat, "rib/rib 2"));
    CHECK(tests::row(flat, "rib/rib 2")->formula == "CF-1");
    CHECK(tests::row(flat, "rib/rib 2")->has_numbers());
}

TEST_CASE("ribs stand among the members with a stress in every load case")
{
    const auto o = check_case("bottle_locker_wall");
    std::size_t n = 0;
    for (const auto& m : o.members)
        if (m.name == "rib 2") {
            ++n;
            CHECK(m.stress_MPa > 0);
        }
    CHECK(n == o.load_cases.size());
}

TEST_SUITE_END();
