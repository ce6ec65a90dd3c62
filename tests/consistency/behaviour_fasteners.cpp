#include "support/cases.h"
#include "support/stack_rows.h"

#include <algorithm>
#include <cmath>

// Screws, rivets and inserts from stack to margin: which sheet is which, which clause is asked, and what is said when an input is missing.
using namespace thinskin;
using layout::Hardware;
using layout::Ply;
using tests::stack_rows;
using tests::find_row;

namespace {

Ply ply(const std::string& part, Ply::Role role, const char* material, double t)
{
    return {part, role, *catalogue::material(material), t, INFINITY, ""};
}
const auto leg = [](double t) { return ply("leg", Ply::Role::leg, "S235", t); };
const auto skin = [](double t) { return ply("skin", Ply::Role::skin, "DC04", t); };
const auto rail = [](double t) { return ply("rail", Ply::Role::angle, "S235", t); };

Hardware screw()
{
    Hardware h;
    h.type = Hardware::Type::screw;
    h.kind = "4.8 screw";
    h.d = h.hole = h.tip_diameter = 4.8;
    h.across_flats = h.mean_diameter = 9.8;
    h.own_shear = 5200;
    h.own_tension = 7900;
    return h;
}

Hardware rivet()
{
    Hardware h = screw();
    h.type = Hardware::Type::rivet;
    h.kind = "rivet";
    h.tip_diameter = 7.2;
    h.own_shear = 2900;
    h.own_tension = 3100;
    return h;
}

Hardware insert()
{
    Hardware h;
    h.type = Hardware::Type::insert;
    h.kind = "M6 insert";
    h.d = 6;
    h.stress_area = 20.1;
    h.across_flats = 10;
    h.mean_diameter = 10.5;
    h.hole = 9;
    h.tip_diameter = 13;
    h.flange_given = true;
    h.play = 0.3;
    h.fub = 800;
    h.fyb = 640;
    h.own_shear = 3000;
    return h;
}

bool any(const std::vector<results::Check>& all, const std::string& formula)
{
    return std::any_of(all.begin(), all.end(), [&](const results::Check& c) { return c.formula == formula; });
}

} // namespace

TEST_SUITE_BEGIN("behaviour: screws, rivets, inserts");

TEST_CASE("the sheet under the head is t1 and the sheet at the tip t2: turning the screw round changes its shear, pull-out and pull-over")
{
    const auto out = stack_rows(screw(), {leg(3), skin(0.76)}), in = stack_rows(screw(), {skin(0.76), leg(3)});
    CHECK(find_row(out, "screw shear/X").inputs.at("t1") == 3);
    CHECK(find_row(in, "screw shear/X").inputs.at("t1") == 0.76);
    CHECK(find_row(in, "screw shear/X").capacity > find_row(out, "screw shear/X").capacity); // no tilting of a thick sheet at the tip
    CHECK(find_row(out, "pull-out at the tip/X/skin").capacity < find_row(in, "pull-out at the tip/X/leg").capacity);
    CHECK(find_row(out, "pull-over at the head/X/leg").inputs.at("eccentric") == 1); // a lying leg pulls at one side of the head
    CHECK(find_row(in, "pull-over at the head/X/skin").inputs.at("eccentric") == 0);
}

TEST_CASE("three sheets: the worse of the two neighbouring pairs counts, with the whole shear, and says so")
{
    const auto three = stack_rows(screw(), {leg(3), skin(0.76), rail(4)});
    const double first = find_row(stack_rows(screw(), {leg(3), skin(0.76)}), "screw shear/X").capacity, second = find_row(stack_rows(screw(), {skin(0.76), rail(4)}), "screw shear/X").capacity;
    CHECK(find_row(three, "screw shear/X").capacity == std::min(first, second));
    CHECK(find_row(three, "screw shear/X").note.find("each neighbouring pair") != std::string::npos);
}

TEST_CASE("without a maker's strength of the screw itself these rows alone are not covered and name the key")
{
    Hardware h = screw();
    h.own_shear = h.own_tension = 0;
    const auto all = stack_rows(h, {leg(3), skin(0.76)});
    for (const auto& c : all) {
        CAPTURE(c.id);
        const bool own = c.id.rfind("screw own", 0) == 0;
        CHECK((c.status == base::Status::not_covered) == own);
    }
    CHECK(find_row(all, "screw own shear/X").lift_with == "fastener_kinds.4.8 screw.shear_strength");
    CHECK(find_row(all, "screw own tension/X").lift_with == "fastener_kinds.4.8 screw.tension_strength");
}

TEST_CASE("shear and tension together: the clauses in their boxes, the straight line outside, nothing without a force")
{
    Hardware no12 = screw();
    no12.d = no12.hole = 5.486;
    CHECK(any(stack_rows(no12, {skin(0.9), leg(3)}), "SC-6"));
    CHECK(any(stack_rows(no12, {skin(0.9), leg(3)}), "SC-9")); // the tip is outside the box of pull-out
    CHECK(any(stack_rows(screw(), {skin(0.9), leg(3)}), "SC-9"));
    CHECK_FALSE(any(stack_rows(screw(), {skin(0.9), leg(3)}), "SC-6"));
    CHECK(any(stack_rows(screw(), {leg(3), skin(0.76)}), "SC-8"));
    const auto line = find_row(stack_rows(screw(), {leg(3), skin(0.76)}), "shear with tension/X");
    CHECK(line.utilisation() == doctest::Approx(180 / line.inputs.at("Qa") + 90 / line.inputs.at("Ta")).epsilon(1e-12));
}

TEST_CASE("a rivet without material and strength is not covered by itself; its sheets still are judged")
{
    Hardware h = rivet();
    CHECK(find_row(stack_rows(h, {leg(3), skin(0.76)}), "rivet own shear/X").status == base::Status::judgement);
    h.own_shear = h.own_tension = 0;
    const auto all = stack_rows(h, {leg(3), skin(0.76)});
    CHECK(find_row(all, "rivet own shear/X").lift_with == "fastener_kinds.rivet.grade");
    CHECK(find_row(all, "rivet bearing/X").has_numbers());
    CHECK(find_row(all, "rivet bearing/X").inputs.at("t") == 0.76);
    CHECK(find_row(all, "pull-through at the blind side/X/skin").inputs.at("dh") == 7.2);
}

TEST_CASE("an insert: tested pull when given, else the bound for the skin as judgement; bare skin is named")
{
    Hardware h = insert();
    const auto bound = find_row(stack_rows(h, {leg(3), skin(0.76)}), "pull of the insert out/X/skin");
    CHECK(bound.formula == "IN-1");
    CHECK(bound.status == base::Status::judgement);
    CHECK(bound.note.find("bare skin") != std::string::npos);
    h.sheet_strength = 2400;
    const auto tested = find_row(stack_rows(h, {leg(3), skin(0.76)}), "pull of the insert out/X/skin");
    CHECK(tested.formula == "IN-2");
    CHECK(tested.capacity == 800);
    CHECK(find_row(stack_rows(h, {leg(3), skin(0.76), rail(2)}), "pull of the insert out/X/rail").note.find("bare skin") == std::string::npos);
    h.fub = 0;
    CHECK(find_row(stack_rows(h, {leg(3), skin(0.76)}), "bolt tension/X").lift_with == "fastener_kinds.M6 insert.grade");
    h.own_shear = 0;
    CHECK(find_row(stack_rows(h, {leg(3), skin(0.76)}), "insert own shear/X").lift_with == "fastener_kinds.M6 insert.shear_strength");
}

TEST_CASE("a gap between plies is not covered for screws, rivets and inserts, and asks a bolt for a sleeve")
{
    for (const Hardware& h : {screw(), rivet(), insert()}) {
        const auto all = stack_rows(h, {leg(3), skin(0.76)}, 20);
        CHECK(find_row(all, "gap/X").status == base::Status::not_covered);
    }
    Hardware bolt = insert();
    bolt.type = Hardware::Type::bolt;
    bolt.kind = "M6";
    CHECK(find_row(stack_rows(bolt, {leg(3), skin(0.76)}, 20), "gap/X").lift_with == "fastener_kinds.M6.sleeve: yes");
    bolt.sleeve = true;
    for (const auto& c : stack_rows(bolt, {leg(3), skin(0.76)}, 20)) CHECK(c.id != "gap/X");
}

TEST_CASE("a door on screws: the stack ends in the tip, the case fails in the skin, removing the screw's strength opens the fixing alone")
{
    const auto o = tests::check_case("condenser_door_screws");
    REQUIRE_FALSE(o.stacks.empty());
    CHECK(o.stacks.front().line == "head | leg left 4.00 | skin 0.76 | tip");
    const auto less = tests::check_case("condenser_door_screws", {{"shear_strength: 5.2 kN, ", ""}});
    for (const results::Group& g : less.groups) CHECK(g.not_covered == tests::group(o, g.name)->not_covered + (g.name == "fixing" ? 8 : 0));
}

TEST_CASE("inch bolts below 1/2 in of a grade of the cold-formed table go by it and are no judgement; all other bolts by the threaded part's rule")
{
    const auto tension_of = [](const char* size, double d, const char* grade, double fub) {
        Hardware h;
        h.type = Hardware::Type::bolt;
        h.kind = "bolt", h.size = size, h.grade = grade;
        h.d = d, h.hole = d + 0.8, h.across_flats = h.tip_diameter = h.mean_diameter = 1.6 * d;
        h.fub = fub, h.fyb = 0.8 * fub;
        return stack_rows(h, {leg(4), skin(0.76), rail(4)});
    };
    const auto inch = tension_of("5/16", 7.9375, "A307", 413), half = tension_of("1/2", 12.7, "A307", 413), sae = tension_of("5/16", 7.9375, "SAE 5", 827), metric = tension_of("M8", 8, "A307", 413);
    for (const char* id : {"bolt tension/X", "bolt shear/X", "bolt tension with shear/X"}) CHECK(find_row(inch, id).status == base::Status::pass);
    CHECK(find_row(inch, "bolt tension/X").formula == "BT-2");
    CHECK(find_row(inch, "bolt shear/X").formula == "BV-2");
    CHECK(find_row(inch, "bolt tension with shear/X").formula == "BI-2");
    for (const auto* other : {&half, &sae, &metric}) {
        CHECK(find_row(*other, "bolt tension/X").formula == "BT-1");
        CHECK(find_row(*other, "bolt tension/X").status == base::Status::judgement);
    }
    CHECK(find_row(inch, "bolt tension/X").capacity < find_row(metric, "bolt tension/X").capacity); // the table is the lower one
}

TEST_SUITE_END();
