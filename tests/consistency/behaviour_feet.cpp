#include "checks/checks.h"
#include "support/cases.h"

#include <cmath>

// An item on feet without brackets, and forces on the item as load cases of their own.
using namespace thinskin;
using tests::check_case;

namespace {

const tests::Edits one_way{{", both_ways: yes}", "}"}};

results::Vec3 sum(const results::Outcome& o, const std::string& load_case)
{
    results::Vec3 f{};
    for (const auto& x : o.fasteners)
        if (x.load_case == load_case) f[0] += x.shear_x_N, f[1] += x.shear_y_N, f[2] += x.own_pull_N;
    return f;
}

} // namespace

TEST_SUITE_BEGIN("behaviour: feet and forces on the item");

TEST_CASE("the feet carry the item: shear adds up to weight and force on the item, the pull to nothing")
{
    const auto o = check_case("awning_wall");
    const double weight = 29 * 1.05 * base::gravity_m_s2, wind = 450;
    CHECK(o.balance.worst_relative_error <= 1e-8);
    CHECK(sum(o, "parked")[1] == doctest::Approx(-weight).epsilon(1e-6));
    CHECK(sum(o, "pothole")[1] == doctest::Approx(-3 * weight).epsilon(1e-6));
    CHECK(sum(o, "wind on the unfolded awning")[1] == doctest::Approx(-weight - wind).epsilon(1e-6));
    CHECK(sum(o, "wind on the unfolded awning, turned round")[1] == doctest::Approx(-weight + wind).epsilon(1e-6));
    CHECK(o.stacks.front().line == "head, washer | foot A1 5.00 | skin 0.66 | upper rail 4.00 | washer, nut");
    for (const auto& f : o.fasteners) CHECK(f.part == "awning");
}

TEST_CASE("unfolded, the wind governs both ways; it is no road state and does not count as repeated")
{
    const auto o = check_case("awning_wall");
    REQUIRE(o.governing);
    CHECK(o.governing->load_case.rfind("wind on the unfolded awning", 0) == 0);
    for (const auto& c : o.checks)
        if (c.id.rfind("repeated", 0) == 0) CHECK(c.load_case.find("wind") == std::string::npos);
    const auto once = check_case("awning_wall", one_way);
    CHECK(once.load_cases.size() + 1 == o.load_cases.size());
}

TEST_CASE("a row of feet alone: the item's whole shear on the smallest row, unless its holes are fitted")
{
    const auto o = check_case("awning_wall", one_way);
    const double weight = 29 * 1.05 * base::gravity_m_s2;
    CHECK(tests::fastener(o, "A1", "parked").row_shear_N == doctest::Approx(weight / 3).epsilon(1e-6));
    const auto fitted = check_case("awning_wall", {{", both_ways: yes}", "}"}, {"fit: clearance", "fit: fitted"}});
    CHECK(tests::fastener(fitted, "A1", "parked").row_shear_N == 0);
}

TEST_CASE("a sliding door is never a pass: every group that has rows is not covered or fails")
{
    const auto o = check_case("sliding_door");
    CHECK(o.verdict == base::Verdict::not_covered);
    for (const results::Group& g : o.groups) CHECK(g.status == base::Verdict::not_covered);
}

TEST_CASE("a force on the item may not take the name of another load case; a foot stays on the panel")
{
    const auto wrong = [](const tests::Edits& e) {
        pipeline::Workspace w;
        const auto a = pipeline::analyse(tests::read_case(tests::edited_text("awning_wall", e)), w);
        CHECK_FALSE(a.outcome);
        return base::has_errors(a.diagnostics);
    };
    CHECK(wrong({{"name: wind on the unfolded awning", "name: pothole"}}));
    CHECK(wrong({{"at: [350 mm, 745 mm], use: M8 bolt, foot: 60x40x5 mm", "at: [350 mm, 745 mm], use: M8 bolt, foot: 800x40x5 mm"}}));
}

TEST_CASE("on a door, what is known of the hinges says nothing about a force on the item")
{
    const std::string load = "  running_frequency: [48 Hz]\n  loads: [{name: a person on it, force: [0 N, -1000 N, 0 N], at: [352 mm, 1200 mm, 205 mm]}]\n";
    const auto o = check_case("condenser_door_made_good", {{"  running_frequency: [48 Hz]\n", load}});
    CHECK(tests::group(o, "door")->status != base::Verdict::pass);
    REQUIRE(tests::row(o, "hinges/a person on it"));
    CHECK(tests::row(o, "hinges/a person on it")->status == base::Status::not_covered);
}

TEST_CASE("what would help a skin: feet are called feet, brackets have bolts")
{
    layout::Layout l;
    l.item.emplace().feet.emplace_back();
    results::Check c;
    c.id = "skin stress/panel";
    c.status = base::Status::fail;
    CHECK(checks::help(c, l).words.find("upper feet") != std::string::npos);
    CHECK(checks::help(c, l).words.find("bolts") == std::string::npos);
    l.brackets.emplace_back();
    CHECK(checks::help(c, l).words.find("top bolts") != std::string::npos);
    CHECK(checks::help(c, l).words.find("feet") == std::string::npos);
}

TEST_SUITE_END();
