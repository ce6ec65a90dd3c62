#include "support/cases.h"
#include "support/near.h"

// The solved demo against the sheet worked by hand before the program was written (rigid bracket, angle ends pinned, no mass
// tolerance; the sheet's own figures are held in demo_hand_sums.cpp). Each difference has its reason beside it.
using namespace thinskin;
using tests::check_near_rel;

namespace {

results::Outcome without_tolerance() { return tests::check_case("condenser_door", {{"mass_tolerance: 5 %", "mass_tolerance: 0 %"}}); }

const results::EndForce& end(const results::Outcome& o, const std::string& name, const std::string& side, const std::string& load_case)
{
    for (const auto& e : o.member_ends)
        if (e.name == name && e.end == side && e.load_case == load_case) return e;
    FAIL("no such end");
    return o.member_ends.front();
}

double step(const results::Outcome& o, const std::string& from, const std::string& to)
{
    for (const auto& s : o.load_path)
        if (s.from == from && s.to == to) return s.force_N;
    FAIL("no step " << from << " -> " << to);
    return 0;
}

} // namespace

TEST_SUITE_BEGIN("demo by hand");

TEST_CASE("3 g down: what the top bolts pull on the rail, 341 N by hand, within 10 %")
{
    const auto o = without_tolerance();
    // Within 10 %: the solver's pivot is where the foot presses on the lower rail, 10 to 20 mm above the leg's end, and the
    // unequal spans of the rail give the two brackets unequal shares; both brackets together are closer.
    const double left = tests::fastener(o, "L2", "pothole").own_pull_N, right = tests::fastener(o, "R2", "pothole").own_pull_N;
    check_near_rel(left, 341, 0.10);
    check_near_rel(right, 341, 0.10);
    check_near_rel((left + right) / 2, 341, 0.03);
}

TEST_CASE("3 g down: the bolts themselves carry prying on top, never more than the lever's 2.67 times")
{
    const auto o = without_tolerance();
    for (const char* bolt : {"L2", "R2"}) {
        const auto& f = tests::fastener(o, bolt, "pothole");
        CHECK(f.tension_N >= f.own_pull_N);
        CHECK(f.tension_N <= 2.67 * f.own_pull_N);
        check_near_rel(f.tension_N, f.own_pull_N + f.prying_N, 1e-9);
    }
}

TEST_CASE("3 g down: brace 598 N within 8 %, heel push 361 N a bracket within 10 %, all shear of a bracket on one row 596 N within 1 %")
{
    const auto o = without_tolerance();
    for (const auto& m : o.members)
        if (m.load_case == "pothole" && m.name.rfind("brace", 0) == 0) check_near_rel(-m.axial_N, 598, 0.08); // the arm is fixed at its root, not pinned
    double push = 0;
    for (const auto& c : o.contacts)
        if (c.load_case == "pothole") push += c.resultant_N;
    double prying = 0;
    for (const char* b : {"L1", "L2", "R1", "R2"}) prying += tests::fastener(o, b, "pothole").prying_N;
    check_near_rel((push - prying) / 2, 361, 0.10); // contact less what only pries
    for (const char* b : {"L1", "L2", "R1", "R2"}) check_near_rel(tests::fastener(o, b, "pothole").row_shear_N, 596, 0.01);
}

TEST_CASE("3 g down with half fore and aft: end reactions of the upper angle, 521 and 468 N by hand, within 10 %; their sum within 4 %")
{
    const auto o = without_tolerance();
    // The sheet has no lateral part: the mean of the two combined states, whose lateral parts cancel.
    double left = 0, right = 0;
    for (const char* lc : {"combined: down, out, left", "combined: down, out, right"}) {
        left += end(o, "upper rail", "left", lc).force_N[2] / 2;
        right += end(o, "upper rail", "right", lc).force_N[2] / 2;
    }
    check_near_rel(left, 521, 0.10);
    check_near_rel(right, 468, 0.10);
    check_near_rel(left + right, 521 + 468, 0.04);
}

TEST_CASE("what the sheet distrusts: skin share of the pull is about 2 %, angle forces do not hang on the skin, a rail moves tenths of a millimetre")
{
    const auto o = without_tolerance();
    const double pull = step(o, "bracket left", "bolt L2, pull");
    CHECK(std::abs(step(o, "bolt L2", "skin in bending")) <= 0.03 * pull);
    for (const auto& f : o.fasteners) CHECK(f.stands);
    for (const auto& s : o.skin)
        if (s.load_case == "pothole") {
            CHECK(s.max_deflection_mm > 0.3);  // not 0.07 mm: the ends are pinned, not clamped by accident
            CHECK(s.max_deflection_mm < 0.8);
        }
    REQUIRE(o.governing);
    CHECK(o.governing->id.find("bolt tension") == std::string::npos);
    CHECK(o.governing->id.find("pull-through") == std::string::npos);
}

TEST_CASE("road states alone: the hinge evidence governs with about +0.05, as the sheet expects; the slam is what fails the demo")
{
    // The sheet gives the slam inward of 5.1 g at the item's x. A door turns: the item, 235 mm off the pin line, is thrown across
    // the panel as well, 3.0 g, and that is what one row of bolts in 0.76 mm does not hold.
    const auto o = tests::check_case("condenser_door");
    const results::Check* hinge = tests::row(o, "hinges/moment");
    REQUIRE(hinge);
    tests::check_near_abs(hinge->margin(), 0.05, 0.01);
    REQUIRE(o.governing);
    CHECK(o.governing->load_case == "slam inward");
    tests::check_near_abs(tests::row(o, "hinges/mass")->margin(), 0.10, 0.01);
    tests::check_near_abs(tests::row(o, "hinges/outreach")->margin(), 0.30, 0.01);
}

TEST_SUITE_END();
