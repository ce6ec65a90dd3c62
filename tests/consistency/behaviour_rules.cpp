#include "report/json.h"
#include "support/cases.h"
#include "support/near.h"

#include <cmath>

// The monotone rules, symmetry, units, and the same bytes from a warm and a cold workspace. Over the shipped cases.
using namespace thinskin;
using tests::check_case;

namespace {

double least_margin(const results::Outcome& o)
{
    double least = INFINITY;
    for (const results::Check& c : o.checks)
        if (c.required && c.has_numbers() && c.load_case != "geometry") least = std::min(least, c.margin());
    return least;
}

double number(const model::Case& c) { return c.panel.width.value; }

/// The case in US units: every "N mm" length becomes inches with all its digits, masses pounds.
std::string in_us_units(std::string text)
{
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
        std::size_t end = i;
        while (end < text.size() && (std::isdigit(static_cast<unsigned char>(text[end])) || text[end] == '.')) ++end;
        const bool starts_a_number = end > i && (i == 0 || !(std::isalnum(static_cast<unsigned char>(text[i - 1])) || text[i - 1] == '.' || text[i - 1] == 'x'));
        const auto convert = [&](const char* unit, double factor, const char* to) {
            const std::string u = std::string(" ") + unit;
            if (text.compare(end, u.size(), u) != 0 || std::isalpha(static_cast<unsigned char>(text[end + u.size()]))) return false;
            char buffer[64];
            std::snprintf(buffer, sizeof buffer, "%.15g %s", std::stod(text.substr(i, end - i)) / factor, to);
            out += buffer;
            i = end + u.size();
            return true;
        };
        if (starts_a_number && (convert("mm", 25.4, "in") || convert("kg", 0.45359237, "lb"))) continue;
        if (end == i) ++end;
        out += text.substr(i, end - i);
        i = end;
    }
    return out;
}

} // namespace

TEST_SUITE_BEGIN("behaviour: rules");

TEST_CASE("each shipped case: forces and moments balance to 1e-8, or nothing is printed")
{
    for (const std::string& name : tests::shipped_cases()) {
        CAPTURE(name);
        const auto o = check_case(name);
        CHECK(o.verdict != base::Verdict::not_solved);
        CHECK(o.balance.worst_relative_error <= 1e-8);
        CHECK(o.balance.bodies.size() >= 2);
    }
}

TEST_CASE("the same bytes from a cold and a warm workspace, whatever was checked in between")
{
    pipeline::Workspace w;
    const auto json = [&w](const std::string& name) { return report::check_json(*pipeline::analyse(tests::read_case(tests::edited_text(name)), w).outcome); };
    const std::string first = json("condenser_door");
    CHECK(json("condenser_door") == first);
    (void)json("condenser_door_bare");
    (void)json("plain_panel");
    CHECK(json("condenser_door") == first);
    pipeline::Workspace other;
    CHECK(report::check_json(*pipeline::analyse(tests::read_case(tests::edited_text("condenser_door")), other).outcome) == first);
}

TEST_CASE("a heavier item never raises a margin; utilisations of strength grow with the load")
{
    const auto light = check_case("condenser_door_made_good"), heavy = check_case("condenser_door_made_good", {{"mass: 36 kg", "mass: 44 kg"}});
    for (const results::Check& c : light.checks) {
        if (!c.has_numbers() || c.load_case == "geometry") continue;
        const results::Check* other = tests::row(heavy, c.id);
        CAPTURE(c.id);
        if (!other || !other->has_numbers() || c.utilisation() < 0.2) continue;
        // Prying and pivots move a little between the weight of the brackets and that of the item: 2 % of grace on each row.
        CHECK(other->utilisation() >= 0.98 * c.utilisation());
    }
    CHECK(least_margin(heavy) < least_margin(light));
}

TEST_CASE("a thinner skin and a removed fastener never raise the least margin of a shipped case")
{
    const std::string skin = "skin: {material: DC04, thickness: 0.8 mm", thinner = "skin: {material: DC04, thickness: 0.7 mm";
    for (const std::string name : {"condenser_door", "condenser_door_made_good", "condenser_door_short_angles", "condenser_door_bare"}) {
        CAPTURE(name);
        const double as_is = least_margin(check_case(name));
        CHECK(least_margin(check_case(name, {{skin, thinner}})) <= as_is + 1e-9);
        const bool tied = name == "condenser_door" || name == "condenser_door_made_good";
        if (tied) {
            CHECK(least_margin(check_case(name, {{"{at: [45 mm, 420 mm], use: M6 bolt}, ", ""}})) <= as_is + 1e-9);
            // Exception: without the outer end fastener the rail is held at the inner one alone, 12 mm nearer to the load; its span is
            // shorter and its end pull a little less. Not compared.
        }
        // A bracket on one bolt: the lower ones taken out on both sides.
        const bool large = name == "condenser_door_made_good";
        const std::string bolt = std::string("      - {name: L1, at: [150 mm, 420 mm], use: ") + (large ? "M10" : "M8") + " through bolt}\n";
        const auto one = check_case(name, {{bolt, ""}, {"rename: {L1: R1, L2: R2}", "rename: {L2: R2}"}});
        CHECK((one.verdict == base::Verdict::not_solved || least_margin(one) <= as_is + 1e-9));
    }
}

TEST_CASE("a change of units changes no margin")
{
    const auto metric = check_case("condenser_door");
    const std::string us = in_us_units(tests::edited_text("condenser_door"));
    REQUIRE(us.find(" in") != std::string::npos);
    const model::Case c = tests::read_case(us);
    tests::check_near_rel(number(c), 740, 1e-12);
    pipeline::Workspace w;
    const auto o = *pipeline::analyse(c, w, pipeline::Depth::margins).outcome;
    REQUIRE(o.checks.size() == metric.checks.size());
    for (const results::Check& m : metric.checks) {
        const results::Check* u = tests::row(o, m.id);
        CAPTURE(m.id);
        REQUIRE(u);
        CHECK(u->status == m.status);
        if (m.has_numbers() && m.demand > 1e-3) tests::check_near_rel(u->utilisation(), m.utilisation(), 1e-6);
    }
}

TEST_CASE("a door hinged on the other side with everything mirrored gives the mirrored answer")
{
    // Panel 740 wide: x -> 740 - x for pin, latch, masses, item and brackets; legs lie the other way.
    const auto original = check_case("condenser_door");
    const auto mirrored = check_case("condenser_door", {{"side: right", "side: left"},
                                                        {"pin: {x: 752 mm", "pin: {x: -12 mm"},
                                                        {"latches: [{at: [0 mm, 580 mm]}]", "latches: [{at: [740 mm, 580 mm]}]"},
                                                        {"centre_of_mass: [352 mm", "centre_of_mass: [388 mm"},
                                                        {"from: [27 mm, 700 mm, 60 mm]", "from: [23 mm, 700 mm, 60 mm]"},
                                                        {"    x: 150 mm", "    x: 590 mm"},
                                                        {"lying: right", "lying: left"},
                                                        {"[150 mm, 420 mm]", "[590 mm, 420 mm]"},
                                                        {"[150 mm, 740 mm]", "[590 mm, 740 mm]"},
                                                        {"x: 554 mm", "x: 186 mm"}});
    for (const char* lc : {"parked", "pothole", "slam inward", "slam outward", "accelerating"})
        for (const char* bolt : {"L1", "L2", "R1", "R2"}) {
            CAPTURE(lc);
            CAPTURE(bolt);
            const auto &a = tests::fastener(original, bolt, lc), &b = tests::fastener(mirrored, bolt, lc);
            tests::check_near_abs(b.tension_N, a.tension_N, 1e-5 * (1 + a.tension_N));
            tests::check_near_abs(b.shear_x_N, -a.shear_x_N, 1e-5 * (1 + a.row_shear_N));
            tests::check_near_abs(b.shear_y_N, a.shear_y_N, 1e-5 * (1 + a.row_shear_N));
        }
}

TEST_CASE("strict turns every judgement into not covered and never improves a verdict")
{
    auto o = check_case("condenser_door_made_good");
    REQUIRE(o.verdict == base::Verdict::pass);
    pipeline::apply_strict(o);
    CHECK(o.verdict == base::Verdict::not_covered);
    for (const results::Check& c : o.checks) CHECK(c.status != base::Status::judgement);
}

TEST_SUITE_END();
