#include "checks/fastener_rows.h"
#include "support/cases.h"

#include <set>

// Taking one input of the load path away turns exactly the named group to not covered; four stacks, four governing checks.
using namespace thinskin;
using tests::check_case;

namespace {

struct Removal { std::string what; tests::Edits edits; std::string group; };

// The latch is not among them: it also holds the frame member that the rails pull on, so taking it away moves two groups.
const Removal removals[] = {
    {"fasteners of the angle ends", {{"fasteners: [{at: [45 mm, 420 mm], use: M6 bolt}, {at: [20 mm, 420 mm], use: M6 bolt}]", "fasteners: []"}}, "reinforcement"},
    {"inner sheet of the frame", {{"inner: {material: DC04, thickness: 0.7 mm}, section: box 60x25x0.7, ", ""}}, "reinforcement"},
    {"section of the frame", {{"section: box 60x25x0.7, ", ""}}, "reinforcement"},
    {"weld of arm and leg", {{"arm_leg: {weld: 3 mm}, ", ""}}, "bracket"},
    {"weld of brace and arm", {{", brace_arm: {weld: 3 mm}", ""}}, "bracket"},
    {"weld of brace and leg", {{", brace_leg: {weld: 3 mm}", ""}}, "bracket"},
    {"hinge evidence", {{"evidence: {kind: maker_limit, mass: 50 kg, at: [370 mm, 900 mm, 220 mm], note: invented for the demo}", "evidence: {kind: none}"}}, "door"},
    {"slam", {{"  slam: {edge_speed: 1.2 m/s, stop: 40 ms}\n", ""}}, "door"},
};

} // namespace

TEST_SUITE_BEGIN("behaviour: removals");

TEST_CASE("removing any one input of the load path turns exactly its group to not covered")
{
    const auto whole = check_case("condenser_door_made_good");
    REQUIRE(whole.verdict == base::Verdict::pass);
    for (const Removal& r : removals) {
        CAPTURE(r.what);
        const auto o = check_case("condenser_door_made_good", r.edits);
        CHECK(o.verdict == base::Verdict::not_covered);
        REQUIRE(o.groups.size() == whole.groups.size());
        for (const results::Group& g : o.groups) {
            CAPTURE(g.name);
            if (g.name == "fatigue") { // a quasi-static road has no spectrum: not covered before and after, and not required
                CHECK_FALSE(g.required);
                CHECK(g.status == base::Verdict::not_covered);
                continue;
            }
            CHECK(g.status == (g.name == r.group ? base::Verdict::not_covered : base::Verdict::pass));
        }
        CHECK_FALSE(tests::group(o, r.group)->lift_with.empty());
    }
}

namespace {

/// The check that governs one stack under a given pull and shear.
std::string governs(std::vector<layout::Ply> plies, bool washers)
{
    layout::Stack s;
    s.name = "X";
    s.hardware.d = 8;
    s.hardware.stress_area = 36.6;
    s.hardware.across_flats = 13;
    s.hardware.mean_diameter = 13.69;
    s.hardware.hole = 9;
    s.hardware.fub = 800;
    s.hardware.fyb = 640;
    if (washers) s.hardware.head_washer = s.hardware.nut_washer = layout::WasherSize{24, 2};
    s.plies = std::move(plies);
    results::FastenerForce f;
    f.name = "X";
    f.load_case = "pull and shear";
    f.tension_N = 1500;
    f.shear_y_N = 1100;
    const auto rows = checks::stack_rows({&s, "fixing", "bracket", {f}});
    const results::Check* worst = nullptr;
    for (const auto& c : rows)
        if (c.has_numbers() && c.load_case != "geometry" && (!worst || c.margin() < worst->margin())) worst = &c;
    REQUIRE(worst);
    return worst->id;
}

layout::Ply ply(const std::string& part, layout::Ply::Role role, const char* material, double t) { return {part, role, *catalogue::material(material), t, role == layout::Ply::Role::skin ? 100.0 : 15.0, "toe"}; }

} // namespace

TEST_CASE("four stacks under the same pull and shear have four different governing checks: bare, washer, thicker ply, angle")
{
    using Role = layout::Ply::Role;
    const auto leg = ply("leg", Role::leg, "S235", 4), skin = ply("skin", Role::skin, "DC04", 0.76);
    const std::string bare = governs({leg, skin}, false), washer = governs({leg, skin}, true);
    const std::string thick = governs({leg, ply("plate", Role::plate, "S235", 2.5)}, true), angle = governs({leg, ply("angle", Role::angle, "S235", 4)}, true);
    CAPTURE(bare);
    CAPTURE(washer);
    CAPTURE(thick);
    CAPTURE(angle);
    CHECK(bare.rfind("pull-through at the nut", 0) == 0);
    CHECK(washer.rfind("bearing with hole growth", 0) == 0);
    CHECK(std::set<std::string>{bare, washer, thick, angle}.size() == 4);
}

TEST_SUITE_END();
