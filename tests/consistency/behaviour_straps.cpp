#include "support/cases.h"

#include <cmath>

// Straps: they pull and never push, slack lets go, and each end asks for its own fixing.
using namespace thinskin;
using tests::check_case;

namespace {

double pull(const results::Outcome& o, const std::string& name, const std::string& load_case)
{
    for (const auto& m : o.members)
        if (m.name == name && m.load_case == load_case) return m.axial_N;
    FAIL("no strap " << name << " in " << load_case);
    return 0;
}

} // namespace

TEST_SUITE_BEGIN("behaviour: straps");

TEST_CASE("a strap pulls when the load goes down and lets go when it goes up")
{
    const auto o = check_case("ladder_rack");
    CHECK(o.verdict == base::Verdict::pass);
    CHECK(pull(o, "left strap", "pothole") > 0);
    CHECK(pull(o, "left strap", "rebound") == 0);
    for (const auto& m : o.members)
        if (m.name.find("strap") != std::string::npos) CHECK(m.axial_N >= 0);
    CHECK(pull(o, "left strap", "pothole") == doctest::Approx(pull(o, "right strap", "pothole")).epsilon(1e-6)); // mirror
}

TEST_CASE("the force on the frame runs along the strap, towards its other end")
{
    const auto o = check_case("ladder_rack");
    const double length = std::hypot(565, 310), N = pull(o, "left strap", "pothole");
    bool seen = false;
    for (const auto& e : o.member_ends)
        if (e.name == "left strap" && e.end == "top" && e.load_case == "pothole") {
            seen = true;
            CHECK(e.force_N[1] == doctest::Approx(-N * 565 / length).epsilon(1e-9));
            CHECK(e.force_N[2] == doctest::Approx(N * 310 / length).epsilon(1e-9));
        }
    CHECK(seen);
}

TEST_CASE("slack lets the strap hang: more slack, less pull, and the top bolts take it back")
{
    const auto tight = check_case("ladder_rack"), slack = check_case("ladder_rack", {{"slack: 0 mm", "slack: 0.05 mm"}}), loose = check_case("ladder_rack", {{"slack: 0 mm", "slack: 5 mm"}});
    CHECK(pull(slack, "left strap", "pothole") < pull(tight, "left strap", "pothole"));
    CHECK(pull(loose, "left strap", "pothole") == 0);
    CHECK(tests::fastener(loose, "L2", "pothole").tension_N > tests::fastener(tight, "L2", "pothole").tension_N);
    REQUIRE(tests::row(loose, "strap yield/left strap"));
    CHECK(tests::row(loose, "strap yield/left strap")->note.find("pulls in no load case") != std::string::npos);
}

TEST_CASE("an end without fasteners or without anything to hang on turns the reinforcement to not covered, and nothing else")
{
    const auto whole = check_case("ladder_rack");
    struct Row { tests::Edits edits; };
    const Row rows[] = {{{{"fasteners: [{name: LS1, at: [300 mm, 1265 mm], use: M6 bolt}]", "fasteners: []"}}},
                        {{{"top: {to: frame, fasteners: [{name: LS1, at: [300 mm, 1265 mm], use: M6 bolt}]}", "top: {to: none}"}}}};
    for (const Row& r : rows) {
        const auto o = check_case("ladder_rack", r.edits);
        CHECK(o.verdict == base::Verdict::not_covered);
        for (const results::Group& g : o.groups) CHECK(g.status == (g.name == "reinforcement" ? base::Verdict::not_covered : tests::group(whole, g.name)->status));
        CHECK(tests::group(o, "reinforcement")->lift_with.rfind("reinforcement.straps.left strap.ends.top", 0) == 0);
    }
}

TEST_CASE("a strap's end that is not at a bracket, or not on the frame, is an error with its place")
{
    for (const tests::Edits& e : {tests::Edits{{"to: [300 mm, 700 mm, 310 mm]", "to: [600 mm, 300 mm, 310 mm]"}}, tests::Edits{{"from: [300 mm, 1265 mm, 0 mm]", "from: [300 mm, 1000 mm, 0 mm]"}}}) {
        pipeline::Workspace w;
        const auto a = pipeline::analyse(tests::read_case(tests::edited_text("ladder_rack", e)), w);
        CHECK_FALSE(a.outcome);
        CHECK(base::has_errors(a.diagnostics));
    }
}

TEST_SUITE_END();
