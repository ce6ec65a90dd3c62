#include "support/cases.h"

#include <cmath>

// Plates, straps, ribs, feet, inserts and screws: taking something away, thinning it or loading it harder never raises the least margin
// nor turns a fail into a pass. Linear theory on the quick grid: solved fast, and the rule has to hold there as well. What is not covered by it
// (rows that need large deflection) has no margin to raise.
// The door's group counts only where no metal is taken off: less weight hangs on the hinges then. The frequencies are not among them:
// bands to keep out of have two sides, and a softer job may lie below one.
using namespace thinskin;
using base::Verdict;
using tests::check_case;

namespace {

struct Row { const char* what; tests::Edits edits; bool same_metal = false; };

bool counts(const results::Group& g, bool door) { return g.required && (door || g.name != "door"); }

double least(const results::Outcome& o, bool door)
{
    double out = INFINITY;
    for (const results::Group& g : o.groups)
        if (counts(g, door) && g.least_margin) out = std::min(out, *g.least_margin);
    return out;
}

const results::Outcome& linear(const std::string& name, tests::Edits edits = {})
{
    edits.push_back({"skin: automatic", "skin: linear, grid: quick"});
    return check_case(name, edits);
}

/// Part of 1 + margin (capacity over demand) by which the least one rose; negative: it fell.
double rise(const results::Outcome& from, const results::Outcome& to, bool door) { return (least(to, door) - least(from, door)) / (1 + least(from, door)); }

void never_better(const std::string& name, const std::vector<Row>& rows)
{
    constexpr double solver = 1e-3;
    const results::Outcome& whole = linear(name);
    REQUIRE(std::isfinite(least(whole, false)));
    for (const Row& r : rows) {
        CAPTURE(name);
        CAPTURE(r.what);
        const results::Outcome& o = linear(name, r.edits);
        REQUIRE(o.not_solved.empty());
        REQUIRE(o.groups.size() == whole.groups.size());
        CHECK(rise(whole, o, r.same_metal) <= solver);
        if (whole.verdict != Verdict::pass) CHECK(o.verdict != Verdict::pass);
        for (const results::Group& g : whole.groups)
            if (counts(g, r.same_metal) && g.status == Verdict::fail) CHECK(tests::group(o, g.name)->status != Verdict::pass);
    }
}

/// The whole line of an item's foot or of a plate's fastener.
std::pair<std::string, std::string> without(const std::string& name, const std::string& at, const std::string& rest)
{
    return {"- {name: " + name + ", at: [" + at + "], " + rest + "}\n", "\n"};
}

const std::string wheel = "use: M10 through bolt, foot: 40x40x8 mm", own = "use: M6 bolt", insert = "use: M6 insert, foot: 50x50x3 mm", cassette = "use: M8 bolt, foot: 60x40x5 mm";

} // namespace

TEST_SUITE_BEGIN("behaviour: breadth");

TEST_CASE("small plate: a bolt less, thinner skin, thinner plate, heavier wheel")
{
    never_better("spare_wheel_small_plate", {{"no W1", {without("W1", "342 mm, 700 mm", wheel)}},
                                             {"skin 0.7", {{"skin: {material: DC04, thickness: 0.8 mm", "skin: {material: DC04, thickness: 0.7 mm"}}},
                                             {"plate 3", {{"thickness: 5 mm", "thickness: 3 mm"}}},
                                             {"heavier", {{"mass: 31 kg", "mass: 34 kg"}}, true}});
}

TEST_CASE("large plate tied to the frame: bolts of its own less, thinner skin, heavier wheel")
{
    never_better("spare_wheel_large_plate", {{"no F3", {without("F3", "50 mm, 750 mm", own)}},
                                             {"no G1", {without("G1", "750 mm, 620 mm", own)}},
                                             {"skin 0.7", {{"skin: {material: DC04, thickness: 0.8 mm", "skin: {material: DC04, thickness: 0.7 mm"}}},
                                             {"heavier", {{"mass: 31 kg", "mass: 34 kg"}}, true}});
}

TEST_CASE("exception: the bolt at a plate's corner pries most; a softer plate, or none there, pries less, and still fails")
{
    const results::Outcome& whole = linear("spare_wheel_large_plate");
    const results::Check* corner = tests::row(whole, "pull-through at the nut/F1/frame left inner");
    REQUIRE(corner);
    CHECK(corner->margin() == doctest::Approx(least(whole, false)).epsilon(1e-9)); // the corner governs
    const Row rows[] = {{"no F1", {without("F1", "50 mm, 620 mm", own)}}, {"plate 1.5", {{"thickness: 2 mm", "thickness: 1.5 mm"}}}};
    for (const Row& r : rows) {
        CAPTURE(r.what);
        const results::Outcome& o = linear("spare_wheel_large_plate", r.edits);
        CHECK(rise(whole, o, false) > 0);
        CHECK(o.verdict == Verdict::fail);
        CHECK(tests::group(o, "reinforcement")->status == Verdict::fail);
    }
}

TEST_CASE("ladder rack: thinner strap, slack, thinner skin, thinner rails, heavier ladders, rougher roads")
{
    never_better("ladder_rack", {{"strap 2", {{"flat 30x3", "flat 30x2"}}},
                                 {"slack", {{"slack: 0 mm", "slack: 1 mm"}}},
                                 {"skin 0.7", {{"skin: {material: DC04, thickness: 0.8 mm", "skin: {material: DC04, thickness: 0.7 mm"}}},
                                 {"rails 4", {{"section: angle 50x50x5\n      material: S235\n      face", "section: angle 50x50x4\n      material: S235\n      face"}}},
                                 {"heavier", {{"mass: 38 kg", "mass: 42 kg"}}, true},
                                 {"unsealed", {{"surface: sealed", "surface: unsealed"}}, true},
                                 {"track", {{"surface: sealed", "surface: track"}}, true}});
}

TEST_CASE("locker on inserts beside ribs: a foot less, thinner skin, thinner ribs, a rib less, heavier, rougher")
{
    never_better("bottle_locker_wall", {{"no T1", {without("T1", "490 mm, 540 mm", insert)}},
                                        {"no B3", {without("B3", "1310 mm, 360 mm", insert)}},
                                        {"skin 0.65", {{"thickness: 0.75 mm", "thickness: 0.65 mm"}}},
                                        {"ribs 0.8", {{"hat 40x25x40x1.0", "hat 40x25x40x0.8"}}},
                                        {"no rib 2", {{"- {name: rib 2, from: [900 mm, 0 mm], to: [900 mm, 900 mm], section: hat 40x25x40x1.0, material: DC04, seen: tapped}\n", "\n"}}},
                                        {"heavier", {{"mass: 22 kg", "mass: 25 kg"}}, true},
                                        {"rougher", {{"down: 3.4 g", "down: 4 g"}}, true}});
}

TEST_CASE("awning on rails: a foot less, thinner skin, thinner rails")
{
    never_better("awning_wall", {{"no A1", {without("A1", "350 mm, 745 mm", cassette)}},
                                 {"no B1", {without("B1", "1700 mm, 745 mm", cassette)}},
                                 {"skin 0.6", {{"thickness: 0.7 mm", "thickness: 0.6 mm"}}},
                                 {"rails 3", {{"section: angle 40x40x4", "section: angle 40x40x3"}}}});
}

TEST_CASE("awning on rails: heavier, more wind, rougher")
{
    never_better("awning_wall", {{"heavier", {{"mass: 29 kg", "mass: 33 kg"}}, true},
                                 {"wind", {{"-450 N", "-550 N"}}, true},
                                 {"track", {{"surface: unsealed", "surface: track"}}, true}});
}

TEST_CASE("exception: an end is held at the middle of its bolts; without the outer one the rail's span is shorter, without the inner one longer")
{
    const results::Outcome& whole = linear("awning_wall");
    const results::Outcome& no_outer = linear("awning_wall", {{", {at: [22 mm, 745 mm], use: M6 bolt}", ""}});
    const results::Outcome& no_inner = linear("awning_wall", {{"{at: [45 mm, 745 mm], use: M6 bolt}, ", ""}});
    CHECK(rise(whole, no_outer, false) > 0);
    CHECK(rise(whole, no_outer, false) < 0.035); // 11.5 mm of the 316 mm from the end to the nearest foot: 3.6 % of the moment there
    CHECK(rise(whole, no_inner, false) < 0);
    for (const results::Outcome* o : {&no_outer, &no_inner}) CHECK(o->verdict == Verdict::fail);
}

TEST_CASE("exception: a thinner leg weighs less, and a strap at its arm takes over a little more: the bolts' share falls by no more than that")
{
    const results::Outcome& whole = linear("ladder_rack");
    const results::Outcome& thin = linear("ladder_rack", {{"section: angle 50x50x5, material: S235, lying", "section: angle 50x50x4, material: S235, lying"}});
    CHECK(rise(whole, thin, false) > 0);
    CHECK(rise(whole, thin, false) < 0.02); // 0.157 kg a bracket at 2.5 g: 3.9 N of about 267 N on its two bolts, 1.5 %
    CHECK(tests::group(thin, "bracket")->least_margin < tests::group(whole, "bracket")->least_margin); // the leg itself has less left
}

TEST_CASE("screws in the bare door: thinner skin, heavier unit")
{
    never_better("condenser_door_screws", {{"skin 0.7", {{"thickness: 0.8 mm, coating", "thickness: 0.7 mm, coating"}}},
                                           {"heavier", {{"mass: 36 kg", "mass: 40 kg"}}, true}});
}

TEST_SUITE_END();
