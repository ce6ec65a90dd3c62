// What the natural frequencies do to the rows and words of a case.
#include "checks/checks.h"
#include "idealise/vibration.h"
#include "report/json.h"
#include "report/text.h"
#include "support/cases.h"
#include "support/near.h"

#include <algorithm>
#include <cmath>

using namespace thinskin;

TEST_SUITE_BEGIN("behaviour: vibration");

namespace {

results::Outcome full(const std::string& name, const tests::Edits& edits = {}) { return tests::check_case(name, edits, pipeline::Depth::full); }

const results::Outcome& demo()
{
    static const results::Outcome o = full("condenser_door", {{"skin: automatic", "skin: linear"}}); // large deflection takes its time and changes nothing here
    return o;
}

const results::Check& row(const std::vector<results::Check>& rows, const std::string& id)
{
    const auto it = std::find_if(rows.begin(), rows.end(), [&](const results::Check& c) { return c.id == id; });
    REQUIRE(it != rows.end());
    return *it;
}

results::NaturalMode mode(double hertz)
{
    results::NaturalMode m;
    m.frequency_Hz = hertz;
    m.what = "condenser unit swings in and out";
    m.hung_share = 1;
    return m;
}

/// The rows for given frequencies, a door's lowest with its own frame or none.
std::vector<results::Check> rows(const model::Case& c, std::vector<double> hertz, double with_frame = 0)
{
    const layout::Result l = layout::resolve(c);
    REQUIRE(l.layout);
    results::Vibration v;
    v.run = true;
    for (const double f : hertz) v.modes.push_back(mode(f));
    if (with_frame > 0) v.with_frame = {mode(with_frame)};
    checks::Demands d;
    d.layout = &*l.layout;
    d.vibration = &v;
    return checks::vibration(d);
}

const model::Case& door()
{
    static const model::Case c = tests::read_case(tests::edited_text("condenser_door"));
    return c;
}

} // namespace

TEST_CASE("A rigid door edge never clears the wheel hop by itself")
{
    for (const double f : {13.1, 20.0, 30.0, 38.9}) {
        CAPTURE(f);
        const auto open = rows(door(), {f, 100});
        CHECK(row(open, "vibration/wheel hop").status == base::Status::not_covered);
        CHECK_FALSE(row(open, "vibration/wheel hop").lift_with.empty());
        CHECK(row(rows(door(), {f, 100}, 12), "vibration/wheel hop").status == base::Status::not_covered);
        CHECK(row(rows(door(), {f, 100}, 13.05), "vibration/wheel hop").status == base::Status::judgement);
    }
    CHECK(row(rows(door(), {40, 100}), "vibration/wheel hop").status == base::Status::judgement); // three times the band: a ninth of the stiffness would do
}

TEST_CASE("Inside a band is a fail, at its limits as well, and no number never passes")
{
    for (const double f : {8.0, 10.0, 12.99}) {
        CAPTURE(f);
        CHECK(row(rows(door(), {f, 100}), "vibration/wheel hop").status == base::Status::fail);
    }
    CHECK(row(rows(door(), {7.9, 100}), "vibration/wheel hop").status == base::Status::judgement);
    CHECK(row(rows(door(), {1.5, 100}), "vibration/body").status == base::Status::fail);
    CHECK(row(rows(door(), {0.9, 100}), "vibration/body").status == base::Status::fail); // softer than the van on its springs
    CHECK(row(rows(door(), {45, 100}), "vibration/running 48 Hz").status == base::Status::fail);
    CHECK(row(rows(door(), {38.3, 57.7, 100}), "vibration/running 48 Hz").status == base::Status::judgement);
    const auto unknown = rows(door(), {std::nan(""), 100});
    for (const char* id : {"vibration/wheel hop", "vibration/body", "vibration/running 48 Hz"}) CHECK(row(unknown, id).status == base::Status::not_covered);
}

TEST_CASE("A leaf whose latch lies on the line of its hinges nearly swings freely: so says its own frequency, and nothing rests on the rigid edge")
{
    const results::Outcome o = full("condenser_door", {{"skin: automatic", "skin: linear"}, {"latches: [{at: [0 mm, 580 mm]}]", "latches: [{at: [740 mm, 580 mm]}]"}});
    REQUIRE_FALSE(o.vibration.with_frame.empty());
    CHECK(o.vibration.with_frame.front().frequency_Hz < 1);
    const results::Check* hop = tests::row(o, "vibration/wheel hop");
    REQUIRE(hop);
    CHECK(hop->status == base::Status::not_covered);
    CHECK(idealise::lowest_hung_Hz(o.vibration).value_or(0) < 2);
}

TEST_CASE("What is beyond the highest frequency worked out is not covered")
{
    CHECK(row(rows(door(), {3, 20}), "vibration/running 48 Hz").status == base::Status::not_covered);
    CHECK(row(rows(door(), {}), "vibration/wheel hop").status == base::Status::not_covered);
}

TEST_CASE("Frequencies of the demo: ascending, the item's three named, the wheel hop open between two estimates, the verdict unmoved")
{
    const results::Outcome& o = demo();
    REQUIRE(o.vibration.run);
    CHECK(std::is_sorted(o.vibration.modes.begin(), o.vibration.modes.end(), [](const auto& a, const auto& b) { return a.frequency_Hz < b.frequency_Hz; }));
    CHECK(std::count_if(o.vibration.modes.begin(), o.vibration.modes.end(), results::is_hung) >= 3);
    REQUIRE_FALSE(o.vibration.with_frame.empty());
    CHECK(o.vibration.with_frame.front().frequency_Hz < o.vibration.modes.front().frequency_Hz);
    const results::Check* hop = tests::row(o, "vibration/wheel hop");
    REQUIRE(hop);
    CHECK(hop->status == base::Status::not_covered);
    CHECK_FALSE(hop->required);
    CHECK(o.vibration.bound.find("upper bound") != std::string::npos);
    const auto quick = tests::check_case("condenser_door", {{"skin: automatic", "skin: linear"}});
    CHECK(quick.verdict == o.verdict);
    REQUIRE(quick.governing);
    CHECK(quick.governing->margin() == o.governing->margin());
    CHECK_FALSE(quick.vibration.run);
}

TEST_CASE("Text and JSON carry the frequencies, their bound and what moves")
{
    const std::string json = report::check_json(demo());
    for (const char* word : {"\"natural_frequencies_Hz\"", "\"frequency_bound\": \"upper bound", "condenser unit swings in and out", "\"natural_modes_on_door_frame\""}) {
        CAPTURE(word);
        CHECK(json.find(word) != std::string::npos);
    }
    CHECK(json.find("\"natural_frequencies_Hz\": []") == std::string::npos);
    const std::string text = report::check_text(demo(), {});
    for (const char* word : {"Natural frequencies", "upper bound", "swings in and out", "wheel hop, 8 to 13 Hz: not covered"}) {
        CAPTURE(word);
        CHECK(text.find(word) != std::string::npos);
    }
}

TEST_CASE("A bare panel reports its frequencies and has no rows of the road; where it needs large deflection it says what they belong to")
{
    const auto o = full("plain_panel");
    REQUIRE(o.vibration.run);
    CHECK(o.vibration.large_deflection);
    CHECK(o.vibration.bound.find("unloaded skin by linear theory") != std::string::npos);
    CHECK(std::none_of(o.checks.begin(), o.checks.end(), [](const results::Check& c) { return c.group == "vibration"; }));
}

TEST_CASE("Contacts all closed and all open bound the frequency of the state in between")
{
    for (const std::string name : {"condenser_door", "ladder_rack"}) {
        CAPTURE(name);
        const tests::Analysed& a = tests::analysed(name, {}, pipeline::Depth::full);
        results::Outcome o = *a.analysis.outcome;
        pipeline::add_contact_bounds(*a.source, o);
        REQUIRE(o.vibration.all_closed_Hz);
        REQUIRE(o.vibration.all_open_Hz);
        const auto hung = std::find_if(o.vibration.modes.begin(), o.vibration.modes.end(), results::is_hung);
        CHECK(*o.vibration.all_open_Hz <= *o.vibration.all_closed_Hz);
        if (hung == o.vibration.modes.end()) continue; // the rack's lie above those looked at
        CHECK(*o.vibration.all_open_Hz <= hung->frequency_Hz * (1 + 1e-9)); // a joint more never lowers a frequency (Rayleigh)
        CHECK(hung->frequency_Hz <= *o.vibration.all_closed_Hz * (1 + 1e-9));
        const std::string text = report::check_text(o, [] { report::TextOptions t; t.detail = true; return t; }());
        CHECK(text.find("with every contact and strap closed") != std::string::npos);
    }
}

TEST_SUITE_END();
