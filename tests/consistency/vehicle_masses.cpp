// Plated masses: what is given is compared, what is not is said, a plate never governs while it is kept.
#include "actions/added_mass.h"
#include "checks/checks.h"
#include "support/demo_layout.h"
#include "support/near.h"

#include <cmath>
#include <doctest/doctest.h>

namespace {

using namespace thinskin;

model::Quantity is(double value)
{
    model::Quantity q;
    q.value = value;
    q.text = "given";
    return q;
}

struct Weighed {
    tests::Demo demo = tests::demo();
    results::Added added;
    checks::Demands demands;

    explicit Weighed(const model::Vehicle& v, bool overhang = true)
    {
        demo.source->vehicle = v;
        if (overhang) {
            demo.source->road->wheelbase = is(3000);
            demo.source->road->overhang = is(1000);
        }
        added = actions::added(demo.layout);
        demands.layout = &demo.layout;
        demands.added = &added;
    }
};

model::Vehicle plates(double payload, double plate, double weighed)
{
    model::Vehicle v;
    v.payload_left = is(payload);
    v.rear_axle_plate = is(plate);
    v.rear_axle_weighed = is(weighed);
    return v;
}

TEST_SUITE_BEGIN("plated masses");

TEST_CASE("moments about the front axle: what hangs one metre behind a wheelbase of three loads the rear axle with four thirds")
{
    const Weighed w(plates(500, 1800, 1500));
    REQUIRE(w.added.rear_axle_kg);
    tests::check_near_rel(*w.added.rear_axle_kg * 3.0, w.added.kg * (3.0 + 1.0), 1e-12);
    tests::check_near_rel(*w.added.rear_axle_kg + *w.added.front_axle_kg, w.added.kg, 1e-12);
    CHECK(*w.added.front_axle_kg < 0);
    CHECK(w.added.kg > w.demo.layout.item->mass); // brackets and rails, too
}

TEST_CASE("kept plates pass and do not govern, broken ones fail the verdict")
{
    const auto verdict = [](const Weighed& w) { return checks::verdict(checks::groups(checks::vehicle(w.demands))); };
    const Weighed kept(plates(500, 1800, 1500)), no_payload(plates(20, 1800, 1500)), none_left(plates(0, 1800, 1500)), axle(plates(500, 1510, 1500));
    CHECK(checks::vehicle(kept.demands).size() == 2);
    CHECK(verdict(kept) == base::Verdict::pass);
    CHECK_FALSE(checks::governing(checks::vehicle(kept.demands)).has_value());
    for (const Weighed* w : {&no_payload, &none_left, &axle}) {
        CHECK(verdict(*w) == base::Verdict::fail);
        CHECK(checks::governing(checks::vehicle(w->demands)).has_value());
    }
}

TEST_CASE("what is not given is no row and said as not checked; an axle without its overhang is not covered")
{
    const Weighed nothing{model::Vehicle{}};
    CHECK(checks::vehicle(nothing.demands).empty());
    CHECK(checks::vehicle_not_checked(nothing.demands).size() == 3);
    model::Vehicle payload_only;
    payload_only.payload_left = is(500);
    CHECK(checks::vehicle_not_checked(Weighed(payload_only).demands).size() == 2);
    const Weighed no_overhang(plates(500, 1800, 1500), false);
    const auto rows = checks::vehicle(no_overhang.demands);
    REQUIRE(rows.size() == 2);
    CHECK(rows[1].status == base::Status::not_covered);
    CHECK(rows[1].lift_with.find("road.overhang") == 0);
    CHECK(checks::vehicle_not_checked(no_overhang.demands).size() == 1); // the steering axle
}

TEST_CASE("steering axle: what hangs behind the rear axle lifts it; the least it has to keep is kept or not")
{
    const auto row = [](double least, double weighed, bool overhang = true) {
        model::Vehicle v;
        v.front_axle_least = is(least);
        v.front_axle_weighed = is(weighed);
        const Weighed w(v, overhang);
        const auto rows = checks::vehicle(w.demands);
        REQUIRE(rows.size() == 1);
        return rows[0];
    };
    const Weighed w(model::Vehicle{});
    const double lifted = w.added.kg / 3; // one metre behind a wheelbase of three
    tests::check_near_rel(row(900, 1300).capacity, 1300 - lifted, 1e-12);
    CHECK(row(900, 1300).status == base::Status::pass);
    CHECK(row(900, 900 + 0.99 * lifted).status == base::Status::fail);
    CHECK(row(900, 0.5 * lifted).status == base::Status::fail);
    CHECK(row(900, 1300, false).status == base::Status::not_covered);
    CHECK(row(NAN, 1300).status == base::Status::not_covered);
}

TEST_SUITE_END();

} // namespace
