// Angles that stand upright behind the bolt lines of the brackets, tied to the frame at bottom and top; a channel as a rib.
#include "drawing/drawing.h"
#include "support/cases.h"

#include <algorithm>
#include <cmath>

using namespace thinskin;
using tests::analysed;

namespace {

/// The made-good demo with its level rails taken away and a post behind each bracket.
tests::Analysed with_posts()
{
    std::string text = tests::edited_text("condenser_door_made_good");
    const std::size_t from = text.find("  angles:"), to = text.find("gauges:");
    REQUIRE(from != std::string::npos);
    REQUIRE(to != std::string::npos);
    text.replace(from, to - from, R"(  angles:
    - name: left post
      from: [150 mm, 10 mm]
      to: [150 mm, 1510 mm]
      gauge: 22 mm
      section: angle 40x40x4
      material: S235
      lying: right
      ends:
        bottom: {to: frame, fasteners: [{at: [150 mm, 45 mm], use: M6 bolt}, {at: [150 mm, 20 mm], use: M6 bolt}]}
        top: same_as_bottom
    - {name: right post, copy_of: left post, from: [554 mm, 10 mm]}
)");
    return tests::analyse_anew(text);
}

} // namespace

TEST_SUITE_BEGIN("consistency: upright angles and channels");

TEST_CASE("upright angles: bolts of a bracket pull on its own post, whose ends at bottom and top balance that pull")
{
    const tests::Analysed a = with_posts();
    const results::Outcome& o = *a.analysis.outcome;
    CHECK(o.balance.worst_relative_error <= 1e-8);
    const auto through = [&o](const char* bolt, const char* post) {
        return std::any_of(o.stacks.begin(), o.stacks.end(), [&](const results::StackLine& s) { return s.fastener == bolt && s.line.find(post) != std::string::npos; });
    };
    CHECK((through("L1", "left post") && through("L2", "left post") && through("R1", "right post") && through("R2", "right post")));
    for (const char* post : {"left post", "right post"}) {
        CAPTURE(post);
        double ends = 0;
        for (const results::EndForce& e : o.member_ends)
            if (e.name == post && e.load_case == "pothole") {
                CHECK((e.end == "bottom" || e.end == "top"));
                ends += e.force_N[2];
            }
        double path = 0, scale = 0;
        const std::string bracket = post == std::string("left post") ? "L" : "R";
        for (const results::PathStep& p : o.load_path)
            for (const char* n : {"1", "2"})
                if (p.from == "bolt " + bracket + n && p.to == std::string(post) + ", net pull") {
                    path += p.force_N;
                    scale = std::max(scale, std::abs(p.force_N));
                }
        REQUIRE(scale > 0);
        CHECK(std::abs(ends - path) <= 0.1 * scale); // the rest goes into the skin beside the post
        CHECK(tests::row(o, std::string("bending and axial force/") + post) != nullptr);
    }
}

TEST_CASE("an angle written from its right end, or from its top, is the same angle: its ends are named by their sides")
{
    const std::string one_bolt = "right: {to: frame, fasteners: [{at: [705 mm, 420 mm], use: M6 bolt}]}";
    const tests::Edits uneven{{"right: same_as_left", one_bolt}};
    const tests::Edits backward{{"right: same_as_left", one_bolt}, {"from: [10 mm, 420 mm]", "from: [730 mm, 420 mm]"}, {"to: [730 mm, 420 mm]", "to: [10 mm, 420 mm]"}, {"from: [10 mm, 740 mm]", "from: [730 mm, 740 mm]"}};
    const results::Outcome &a = tests::check_case("condenser_door_made_good", uneven), &b = tests::check_case("condenser_door_made_good", backward);
    REQUIRE(a.checks.size() == b.checks.size());
    for (const results::Check& c : a.checks) {
        CAPTURE(c.id);
        const results::Check* other = tests::row(b, c.id);
        REQUIRE(other);
        CHECK(other->status == c.status);
        CHECK(std::abs(other->demand - c.demand) <= 1e-9 * std::abs(c.demand));
    }
    const auto end_of = [](const results::Outcome& o, const std::string& side) {
        for (const results::EndForce& e : o.member_ends)
            if (e.name == "lower rail" && e.end == side) return e.fasteners.size();
        return std::size_t{0};
    };
    CHECK((end_of(b, "left") == 2 && end_of(b, "right") == 1));
}

TEST_CASE("upright angles stand on the drawing from bottom to top")
{
    const tests::Analysed a = with_posts();
    const drawing::Drawing d = drawing::draw(*a.analysis.layout, &*a.analysis.outcome, {});
    double low = INFINITY, high = -INFINITY;
    for (const drawing::Polyline& p : d.elevation.polylines)
        if (p.part.name == "left post")
            for (const drawing::Point& q : p.points) {
                low = std::min(low, q.y);
                high = std::max(high, q.y);
            }
    CHECK(low <= 10 + 1e-9);
    CHECK(high >= 1510 - 1e-9);
}

TEST_CASE("a channel as a rib: a fastener through its web has it as a ply; its stress is held against the thin-walled ribs' rule, on judgement")
{
    const results::Outcome& o = tests::check_case("bottle_locker_wall", {{"hat 40x25x40x1.0", "channel 100x25x1.0"}});
    const auto rib = std::count_if(o.stacks.begin(), o.stacks.end(), [](const results::StackLine& s) { return s.line.find("rib ") != std::string::npos; });
    CHECK(rib == 6);
    int judged = 0;
    for (const results::Check& c : o.checks)
        if (c.group == "reinforcement" && c.formula == "RB-1") {
            CHECK(c.status == base::Status::judgement);
            CHECK(c.demand > 0);
            ++judged;
        }
    CHECK(judged >= 3);
}

TEST_SUITE_END();
