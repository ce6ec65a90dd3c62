#include "support/cases.h"

#include <algorithm>
#include <cmath>

// Backing plates: they push on the skin and never pull, balance holds, and each input of their load path has its own group.
using namespace thinskin;
using tests::check_case;

namespace {

double rim_push(const results::Outcome& o, const std::string& load_case)
{
    for (const results::Contact& c : o.contacts)
        if (c.part == "plate backing plate" && c.load_case == load_case) return c.resultant_N;
    FAIL("no contact of the plate in " << load_case);
    return 0;
}

const tests::Edits linear{{"skin: automatic", "skin: linear"}};

tests::Edits with(tests::Edits more)
{
    more.insert(more.end(), linear.begin(), linear.end());
    return more;
}

} // namespace

TEST_SUITE_BEGIN("behaviour: plates");

TEST_CASE("a plate pushes on the skin and never pulls it; every body balances")
{
    for (const char* name : {"spare_wheel_small_plate", "spare_wheel_large_plate"}) {
        CAPTURE(name);
        const results::Outcome& o = check_case(name, linear);
        CHECK(o.balance.worst_relative_error <= 1e-8);
        const bool listed = std::any_of(o.balance.bodies.begin(), o.balance.bodies.end(), [](const results::BodyBalance& b) { return b.body == "backing plate"; });
        CHECK(listed);
        for (const results::Contact& c : o.contacts) CHECK(c.resultant_N >= 0);
        CHECK(rim_push(o, "pothole") > 0);
    }
}

TEST_CASE("a plate tied to the frame takes the pull off the skin")
{
    const results::Outcome &loose = check_case("spare_wheel_small_plate", linear), &tied = check_case("spare_wheel_large_plate", linear);
    const auto pull_on_skin = [](const results::Outcome& o) {
        double sum = 0;
        for (const results::FastenerForce& f : o.fasteners)
            if (f.load_case == "pothole") sum += std::abs(f.skin_share_N);
        return sum;
    };
    CHECK(pull_on_skin(tied) < 0.5 * pull_on_skin(loose));
    REQUIRE(tests::row(tied, "rim stress/backing plate"));
    REQUIRE(tests::row(loose, "rim stress/backing plate"));
}

TEST_CASE("only the plate that is small and stiff has the caution for its rim")
{
    const auto warned = [](const results::Outcome& o) {
        return std::any_of(o.cautions.begin(), o.cautions.end(), [](const std::string& c) { return c.find("small and stiff") != std::string::npos; });
    };
    CHECK(warned(check_case("spare_wheel_small_plate", linear)));
    CHECK_FALSE(warned(check_case("spare_wheel_large_plate", linear)));
}

TEST_CASE("taking an input of the plate's load path away turns the reinforcement to not covered, and no other group")
{
    const results::Outcome& whole = check_case("spare_wheel_large_plate", linear);
    struct Row { const char* what; tests::Edits edits; };
    const Row rows[] = {{"inner sheet of the frame", {{"inner: {material: DC04, thickness: 1.0 mm}, section: box 60x25x1.0, ", ""}}},
                        {"section of the frame", {{"section: box 60x25x1.0, ", ""}}},
                        {"grade of the plate", {{"      material: S235\n", "      material: 5754-H22\n"}}}};
    for (const Row& r : rows) {
        CAPTURE(r.what);
        const results::Outcome& o = check_case("spare_wheel_large_plate", with(r.edits));
        for (const results::Group& g : o.groups) {
            CAPTURE(g.name);
            if (g.name == "reinforcement") CHECK((g.status == base::Verdict::not_covered || g.status == base::Verdict::fail));
            else if (r.what != std::string("grade of the plate")) CHECK(g.status == tests::group(whole, g.name)->status);
        }
        if (r.what == std::string("grade of the plate")) CHECK(tests::row(o, "plate/backing plate")->status == base::Status::not_covered);
        else CHECK(tests::group(o, "reinforcement")->not_covered > tests::group(whole, "reinforcement")->not_covered);
    }
}

TEST_CASE("a plate on the outer face, and a board, are left out and say so")
{
    const results::Outcome& outside = check_case("spare_wheel_small_plate", with({{"face: inside}\ngauges", "face: outside}\ngauges"}}));
    CHECK(tests::group(outside, "reinforcement")->status == base::Verdict::not_covered);
    const results::Outcome& board = check_case("spare_wheel_small_plate", with({{"gauges:", "  boards:\n    - {name: board, box: {from: [100 mm, 1000 mm], size: [300 mm, 200 mm]}, thickness: 15 mm, wood: plywood}\ngauges:"}}));
    CHECK(tests::group(board, "reinforcement")->not_covered > 0);
}

TEST_CASE("a plate that cannot be is an error with its place")
{
    const tests::Edits wrong[] = {{{"from: [332 mm, 690 mm], size: [120 mm, 120 mm]", "from: [100 mm, 900 mm], size: [80 mm, 80 mm]"}},   // no fastener through it
                                  {{"from: [332 mm, 690 mm], size: [120 mm, 120 mm]", "from: [337 mm, 695 mm], size: [110 mm, 110 mm]"}}, // washers over its edge
                                  {{"from: [332 mm, 690 mm], size: [120 mm, 120 mm]", "from: [332 mm, 690 mm], size: [520 mm, 120 mm]"}}}; // over the panel's edge
    for (const tests::Edits& e : wrong) {
        CAPTURE(e.front().second);
        pipeline::Workspace w;
        const auto a = pipeline::analyse(tests::read_case(tests::edited_text("spare_wheel_small_plate", e)), w);
        CHECK_FALSE(a.outcome);
        CHECK(base::has_errors(a.diagnostics));
    }
}
