// Which theory stands behind a load case is said wherever it is listed, and a load case that large deflection does not solve has no figures.
#include "report/json.h"
#include "report/record_parts.h"
#include "report/text.h"
#include "support/cases.h"

#include <algorithm>
#include <cmath>

using namespace thinskin;

TEST_SUITE_BEGIN("behaviour: not solved");

namespace {

/// Pressed in its plane far past buckling, flat: no equilibrium near the flat state.
results::Outcome pressed() { return tests::check_case("plain_panel", {{"force: [0 N, 0 N, 5 N]", "force: [0 N, -20000 N, 0 N]"}}); }

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

} // namespace

TEST_CASE("A load case without a solution is not solved, with its step and reason, and without a number")
{
    const auto o = pressed();
    CHECK(o.verdict == base::Verdict::not_solved);
    REQUIRE(o.not_solved.size() == 1);
    CHECK(has(o.not_solved[0], "load case applied: Newton step "));
    CHECK(has(o.not_solved[0], "the skin has buckled"));
    REQUIRE(o.skin.size() == 1);
    CHECK_FALSE(o.skin[0].stands);
    CHECK(has(o.skin[0].why_not, "not solved: Newton step "));
    for (const double figure : {o.skin[0].max_deflection_mm, o.skin[0].max_von_mises_MPa, o.skin[0].hem_shear_flow_N_mm}) CHECK(std::isnan(figure));
    CHECK(o.gauges.empty());
    CHECK(std::none_of(o.checks.begin(), o.checks.end(), [](const results::Check& c) { return c.has_numbers() && c.load_case == "applied"; }));
    const std::string json = report::check_json(o);
    CHECK(has(json, "\"max_deflection_mm\": null"));
    CHECK(has(json, "\"verdict\": \"not solved\""));
    CHECK(has(report::check_text(o, {}), "NOT SOLVED: load case applied: Newton step "));
}

TEST_CASE("The theory of each load case stands in the text, in the JSON and in the record")
{
    const auto large = tests::check_case("plain_panel"), linear = tests::check_case("plain_panel", {{"skin: automatic", "skin: linear"}, {"[0 N, 0 N, 5 N]", "[0 N, 0 N, 0.5 N]"}});
    REQUIRE(large.load_cases.size() == 1);
    CHECK(large.load_cases[0].theory == "large deflection");
    CHECK(linear.load_cases[0].theory == "linear");
    for (const results::Outcome* o : {&large, &linear}) {
        const std::string theory = o->load_cases[0].theory;
        CAPTURE(theory);
        CHECK(has(report::check_json(*o), "\"theory\": \"" + theory + "\",\n      \"applied_only\""));
        CHECK(has(report::record_load_cases(*o), "<td>" + theory + "</td>"));
        report::TextOptions detail;
        detail.detail = true;
        CHECK(has(report::check_text(*o, detail), "  " + theory + "  "));
    }
}

TEST_SUITE_END();
