#include "support/cases.h"

// Unequal and upright angles, and metals other than steel.
using namespace thinskin;
using tests::check_case;

TEST_SUITE_BEGIN("behaviour: angles");

TEST_CASE("an unequal angle is judged by the equal angle inside it and by its elastic stress, as judgement")
{
    const auto o = check_case("condenser_door_made_good", {{"      section: angle 40x40x4\n", "      section: angle 50x40x4\n"}});
    const auto* bending = tests::row(o, "bending and axial force/upper rail");
    REQUIRE(bending);
    CHECK(bending->note.find("equal angle inside") != std::string::npos);
    CHECK(bending->status != base::Status::pass);
    const auto* stress = tests::row(o, "stress/upper rail");
    REQUIRE(stress);
    CHECK(stress->has_numbers());
    CHECK(stress->status != base::Status::pass);
    CHECK_FALSE(tests::row(check_case("condenser_door_made_good"), "stress/upper rail"));
}

TEST_CASE("aluminium: skin and rails say that they belong to another rule set, and nothing passes on them")
{
    const auto skin = check_case("condenser_door_made_good", {{"skin: {material: DC04", "skin: {material: 5754-H22"}});
    CHECK(skin.verdict != base::Verdict::pass);
    REQUIRE(tests::row(skin, "skin stress"));
    CHECK(tests::row(skin, "skin stress")->status == base::Status::not_covered);
    bool told = false;
    for (const auto& c : skin.checks) {
        told = told || c.note.find("EN 1999-1-4") != std::string::npos;
        if (c.id.find("/skin") != std::string::npos && c.id.rfind("edge distance", 0) != 0) CHECK(c.status == base::Status::not_covered);
    }
    CHECK(told);
}

TEST_SUITE_END();
