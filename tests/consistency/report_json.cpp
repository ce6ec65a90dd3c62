#include "consistency/report_sample.h"
#include "report/json.h"

#include <doctest/doctest.h>
#include <fstream>
#include <iterator>
#include <limits>
#include <nlohmann/json.hpp>

using namespace thinskin;
using nlohmann::json;
using tests::sample_outcome;

namespace {

json read_back(const results::Outcome& o) { return json::parse(report::check_json(o)); }

void has_keys(const json& object, std::initializer_list<const char*> keys)
{
    for (const char* key : keys) {
        CAPTURE(key);
        CHECK(object.contains(key));
    }
}

} // namespace

TEST_SUITE_BEGIN("report as JSON");

// The keys other programs rely on: extend, never rename.
TEST_CASE("the result file has every key of its format")
{
    const json j = read_back(sample_outcome());
    has_keys(j, {"format", "tool", "case", "rules", "verdict", "governing", "groups", "load_cases", "dynamic_factor", "checks", "fasteners", "members",
                 "member_ends", "mounts", "contacts", "load_path", "gauges", "hinges", "latches", "stops", "door_ratios", "skin", "weight",
                 "natural_frequencies_Hz", "frequency_bound", "balance", "grid", "assumptions", "cautions", "not_covered", "exclusions", "not_solved"});
    has_keys(j["tool"], {"name", "version"});
    has_keys(j["case"], {"file", "sha256", "title"});
    has_keys(j["governing"], {"check", "part", "load_case", "margin"});
    has_keys(j["groups"][0], {"name", "required", "status", "least_margin", "part", "lift_with"});
    has_keys(j["load_cases"][0], {"name", "acceleration_g", "source", "theory"});
    has_keys(j["dynamic_factor"], {"value", "basis", "derivation"});
    has_keys(j["checks"][0], {"id", "formula", "title", "group", "part", "load_case", "demand", "capacity", "unit", "utilisation", "margin", "status",
                              "rule", "source", "edition", "label", "range", "inputs", "note"});
    has_keys(j["skin"], {"max_deflection_mm", "max_von_mises_MPa", "theory"});
    has_keys(j["weight"], {"item_kg", "brackets_kg", "reinforcement_kg", "door_kg", "total_kg"});
    has_keys(j["balance"], {"worst_relative_error", "bodies"});
    has_keys(j["grid"], {"nodes", "unknowns", "error_estimate"});
    has_keys(j["assumptions"][0], {"what", "value", "from", "effect_on_governing_margin"});
}

TEST_CASE("the force lists have every key of their format")
{
    const json j = read_back(sample_outcome());
    has_keys(j["fasteners"][0], {"name", "load_case", "tension_N", "shear_x_N", "shear_y_N", "prying_N", "hand_tension_N", "hand_shear_N", "shear_rule", "plies"});
    has_keys(j["members"][0], {"name", "load_case", "axial_N", "shear_N", "moment_y_Nm", "moment_z_Nm", "torsion_Nm", "stress_MPa"});
    has_keys(j["member_ends"][0], {"name", "end", "load_case", "force_N", "moment_Nm", "fastener_forces"});
    has_keys(j["contacts"][0], {"part", "load_case", "resultant_N", "at_mm"});
    has_keys(j["load_path"][0], {"from", "to", "force_N"});
    has_keys(j["gauges"][0], {"name", "load_case", "displacement_mm", "relative_to"});
    has_keys(j["hinges"][0], {"name", "state", "load_case", "force_N"});
    CHECK(j["member_ends"][0]["force_N"].size() == 3);
    CHECK(j["contacts"][0]["at_mm"].size() == 2);
    CHECK(j["gauges"][0]["displacement_mm"][2] == 0.4);
}

TEST_CASE("docs/result_file.md names every key of the file")
{
    std::ifstream in(THINSKIN_SOURCE_DIR "/docs/result_file.md");
    const std::string page{std::istreambuf_iterator<char>(in), {}};
    REQUIRE_FALSE(page.empty());
    const json j = read_back(sample_outcome());
    const auto named = [&page](const json& object) {
        for (auto it = object.begin(); it != object.end(); ++it) CHECK_MESSAGE(page.find(it.key()) != std::string::npos, it.key());
    };
    named(j);
    for (const char* list : {"groups", "load_cases", "checks", "fasteners", "members", "member_ends", "mounts", "joints", "contacts", "gauges", "hinges", "assumptions"})
        named(j[list][0]);
}

TEST_CASE("figures have nine significant digits and no negative zero")
{
    results::Outcome o = sample_outcome();
    o.weight.item_kg = 100.0 / 3.0;
    o.weight.brackets_kg = -0.0;
    o.weight.door_kg = 0.1 + 0.2;
    const std::string text = report::check_json(o);
    CHECK(text.find("\"item_kg\": 33.3333333,") != std::string::npos);
    CHECK(text.find("\"brackets_kg\": 0.0,") != std::string::npos);
    CHECK(text.find("\"door_kg\": 0.3,") != std::string::npos);
}

TEST_CASE("the margin of a check without demand is null")
{
    results::Outcome o = sample_outcome();
    o.checks[0].demand = 0;
    o.governing = o.checks[0];
    const json j = read_back(o);
    CHECK(j["checks"][0]["margin"].is_null());
    CHECK(j["checks"][0]["utilisation"] == 0.0);
    CHECK(j["governing"]["margin"].is_null());
}

TEST_CASE("a figure that is not finite is null and named in the notes")
{
    results::Outcome o = sample_outcome();
    o.skin[0].buckling_factor = std::numeric_limits<double>::infinity();
    o.fasteners[0].tension_N = std::numeric_limits<double>::quiet_NaN();
    const json j = read_back(o);
    CHECK(j["skin"]["states"][0]["buckling_factor"].is_null());
    CHECK(j["fasteners"][0]["tension_N"].is_null());
    CHECK(j["notes"] == json({"fasteners[0].tension_N: no figure", "skin.states[0].buckling_factor: infinite"}));
    CHECK(read_back(sample_outcome())["notes"].empty());
}

TEST_CASE("what is not covered or not solved carries no margin")
{
    results::Outcome o = sample_outcome();
    CHECK(read_back(o)["checks"][2]["margin"].is_null());
    CHECK(read_back(o)["checks"][2]["utilisation"].is_null());
    o.verdict = base::Verdict::not_solved;
    const json j = read_back(o);
    for (const json& c : j["checks"]) CHECK(c["margin"].is_null());
    CHECK(j["groups"][0]["least_margin"].is_null());
    CHECK(j["governing"]["margin"].is_null());
}

TEST_CASE("same outcome, same bytes; the time it took does not show")
{
    results::Outcome slow = sample_outcome();
    slow.timing = {1, 2, 3, 4, 5, 6};
    CHECK(report::check_json(sample_outcome()) == report::check_json(slow));
}

TEST_CASE("bytes that are no UTF-8 do not break the file")
{
    results::Outcome o = sample_outcome();
    o.title = "caf\xe9";
    CHECK(read_back(o)["case"]["title"] == "caf\xef\xbf\xbd");
}

TEST_CASE("several results make one array of the same objects")
{
    const std::string one = report::check_json(sample_outcome());
    const json all = json::parse(report::json_array({one, one}));
    REQUIRE(all.size() == 2);
    CHECK(all[0] == json::parse(one));
    CHECK(json::parse(report::json_array({})).empty());
}

TEST_CASE("the caution and what to see to stand in the result file")
{
    const json j = read_back(sample_outcome());
    CHECK(j["caution"] == std::string(base::caution_text));
    CHECK(j["see_to_on_the_vehicle"].size() == 12);
}

TEST_CASE("a formula card shows its ranges, an open side as null, and a result out of range has no figure")
{
    base::Card card;
    card.id = "XX-1";
    card.unit = "N";
    base::Symbol t;
    t.name = "t";
    t.unit = "mm";
    t.lower = 0.61;
    card.symbols = {t};
    const json listed = json::parse(report::cards_json({&card}));
    CHECK(listed["formulas"][0]["symbols"][0]["lower"] == 0.61);
    CHECK(listed["formulas"][0]["symbols"][0]["upper"].is_null());
    base::Resistance r;
    r.reason = "t = 0.5 mm is below 0.61 mm";
    const json worked = json::parse(report::evaluation_json(card, {0.5}, r));
    CHECK(worked["capacity"].is_null());
    CHECK(worked["reason"] == r.reason);
    CHECK(worked["inputs"]["t"] == 0.5);
}

TEST_SUITE_END();
