// A gap between a member's end and the frame, countersunk heads, washers that bend up, ribs with fixed ends, angles that stop short.
#include "support/cases.h"

#include <algorithm>

using namespace thinskin;
using tests::check_case;
using tests::Edits;
using tests::group;
using tests::row;

namespace {

bool says(const std::vector<std::string>& all, const std::string& words)
{
    return std::any_of(all.begin(), all.end(), [&](const std::string& s) { return s.find(words) != std::string::npos; });
}

const Edits with_gap{{"left: {to: frame, fasteners: [{at: [50 mm, 565 mm]", "left: {to: frame, gap: 12 mm, fasteners: [{at: [50 mm, 565 mm]"}};
const char* const m6 = "M6 bolt: {type: bolt, size: M6,";

} // namespace

TEST_SUITE_BEGIN("consistency: gap, countersink, washers, ends");

TEST_CASE("gap at an angle's end: its bolts bend by V gap/2, and without a sleeve they cannot be tightened")
{
    const results::Outcome plain = check_case("ladder_rack_no_straps"), gap = check_case("ladder_rack_no_straps", with_gap);
    CHECK(row(plain, "bolt bending/lower rail left 1") == nullptr);
    for (const char* name : {"lower rail left 1", "lower rail right 2", "upper rail left 2"}) { // mirrored and copied with the end
        CAPTURE(name);
        const results::Check* bends = row(gap, std::string("bolt bending/") + name);
        REQUIRE(bends != nullptr);
        CHECK(bends->formula == "BG-1");
        CHECK(bends->inputs.at("gap") == 12);
        const results::Check* tight = row(gap, std::string("gap/") + name);
        REQUIRE(tight != nullptr);
        CHECK(tight->status == base::Status::not_covered);
        CHECK(tight->lift_with == "fastener_kinds.M6 bolt.sleeve: yes");
    }
    CHECK(group(gap, "reinforcement")->not_covered == group(plain, "reinforcement")->not_covered + 8);
    CHECK(group(gap, "fixing")->not_covered == group(plain, "fixing")->not_covered);
    CHECK(std::any_of(gap.stacks.begin(), gap.stacks.end(), [](const results::StackLine& s) { return s.line.find("; gap 12.00") != std::string::npos; }));
}

TEST_CASE("gap at an angle's end with a sleeve: bending of the bolt remains")
{
    Edits edits = with_gap;
    edits.push_back({m6, std::string(m6) + " sleeve: yes,"});
    const results::Outcome o = check_case("ladder_rack_no_straps", edits);
    CHECK(row(o, "gap/lower rail left 1") == nullptr);
    CHECK(row(o, "bolt bending/lower rail left 1") != nullptr);
}

TEST_CASE("countersunk bolt: half the countersink is taken off what bears; it pulls through as on its hole; its tension counts more; a thin part is refused")
{
    const results::Outcome o = check_case("ladder_rack_no_straps", {{m6, std::string(m6) + " countersink: 3 mm,"}});
    const results::Check* bearing = row(o, "bearing/lower rail left 1/lower rail");
    REQUIRE(bearing != nullptr);
    CHECK(bearing->inputs.at("t") == 5 - 3 / 2.0);
    CHECK(bearing->status != base::Status::pass); // CS-1 is judgement
    CHECK(row(o, "pull-through at the head/lower rail left 1/lower rail")->formula == "CS-2");
    const results::Check *sunk = row(o, "bolt tension/lower rail left 1"), *flat = row(check_case("ladder_rack_no_straps"), "bolt tension/lower rail left 1");
    CHECK(sunk->demand == doctest::Approx(flat->demand / 0.7).epsilon(1e-9));
    CHECK(row(o, "pull-through at the head/lower rail left 1/lower rail")->status != base::Status::pass);
    const results::Outcome deep = check_case("ladder_rack_no_straps", {{m6, std::string(m6) + " countersink: 6 mm,"}});
    CHECK(row(deep, "bearing/lower rail left 1/lower rail")->status == base::Status::not_covered);
    CHECK(row(deep, "pull-through at the head/lower rail left 1/lower rail")->status == base::Status::not_covered);
    CHECK(row(deep, "bearing/lower rail left 1/lower rail")->note.find("thinner than the countersink") != std::string::npos);
}

TEST_CASE("a washer counts as far as it reaches without bending up: a thin wide one holds less than a thick one")
{
    const auto capacity = [](const char* washer) {
        const results::Outcome o = check_case("ladder_rack_no_straps", {{"nut_washer: 18x1.6 mm", std::string("nut_washer: ") + washer}});
        return row(o, "pull-through at the nut/lower rail left 1/frame left inner")->capacity;
    };
    const double thin = capacity("18x1.6 mm"), wide = capacity("22x1.6 mm"), thick = capacity("18x3 mm");
    CHECK(thin == wide);
    CHECK(thick > thin);
}

TEST_CASE("a rib tied to the frame where the skin is held: the reinforcement is not covered, with the key; a rib that just stops is not mentioned")
{
    const std::string rib = "section: flat 20x2, material: DC04, seen: seen";
    const std::string plain_text = tests::edited_text("plain_panel");
    const auto with_rib = [&](const std::string& ends) {
        std::string text = plain_text;
        const std::string before = "\n  edges";
        REQUIRE(text.find(before) != std::string::npos);
        text.insert(text.find(before), "\n  ribs: [{name: post, from: [200 mm, 0 mm], to: [200 mm, 300 mm], " + rib + ends + "}]");
        pipeline::Workspace w;
        const pipeline::Analysis a = pipeline::analyse(tests::read_case(text), w, pipeline::Depth::margins);
        REQUIRE(a.outcome);
        return *a.outcome;
    };
    const auto mentioned = [](const results::Outcome& o) {
        return std::count_if(o.checks.begin(), o.checks.end(), [](const results::Check& c) { return c.note.find("is fixed to the frame and may turn") != std::string::npos && c.status == base::Status::not_covered; });
    };
    CHECK(mentioned(with_rib("")) == 0);
    CHECK(mentioned(with_rib(", ends: {bottom: {to: frame}, top: {to: none}}")) == 1);
}

TEST_CASE("where a rib stops in the skin it is read on its own side: the bare skin's kink beyond is not its own")
{
    const std::string before = "\n  edges";
    std::string text = tests::edited_text("plain_panel");
    text.insert(text.find(before), "\n  ribs: [{name: post, from: [200 mm, 0 mm], to: [200 mm, 300 mm], section: flat 20x2, material: DC04, seen: seen}]");
    const results::Outcome o = *tests::analyse_anew(text).analysis.outcome;
    const auto post = std::find_if(o.members.begin(), o.members.end(), [](const results::MemberForce& m) { return m.name == "post"; });
    REQUIRE(post != o.members.end());
    // [formula] 5 N pulled 150 mm beyond its end cannot bend it by more than 5 x 450 N mm, on a modulus of 2 x 20^2/6 mm3
    CHECK(post->stress_MPa < 5 * 450 / (2 * 400 / 6.0));
    CHECK(post->stress_MPa > 0);
}

TEST_CASE("an angle that stops short, and an insert in bare skin, are cautions of their own")
{
    const results::Outcome rails = check_case("condenser_door_short_angles"), tied = check_case("ladder_rack_no_straps");
    CHECK(says(rails.cautions, "stops in the skin at its left end"));
    CHECK_FALSE(says(tied.cautions, "stops in the skin"));
    CHECK_FALSE(says(tied.cautions, "insert in bare skin"));
}

TEST_SUITE_END();
