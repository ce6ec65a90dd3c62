// Life under repeated stress in a whole case: its stresses are those of the load cases, its shake is that of the road.
#include "support/cases.h"
#include "support/near.h"

#include <algorithm>
#include <cmath>

using namespace thinskin;
using tests::check_case;
using tests::check_near_rel;

namespace {

const std::pair<std::string, std::string> linear{"skin: automatic", "skin: linear, grid: quick"};

const results::Life* life(const results::Outcome& o, const std::string& kind, const std::string& detail)
{
    const auto it = std::find_if(o.fatigue.lives.begin(), o.fatigue.lives.end(), [&](const results::Life& l) { return l.kind == kind && l.detail == detail; });
    return it == o.fatigue.lives.end() ? nullptr : &*it;
}

double down(const results::Outcome& o, const std::string& name)
{
    for (const results::LoadCase& c : o.load_cases)
        if (c.name == name) return std::abs(c.acceleration_g[1]);
    return NAN;
}

} // namespace

TEST_SUITE_BEGIN("behaviour: life");

TEST_CASE("shaken condenser: threads and hole edges from the forces of the pothole, M10 by its printed stress area of 58.0 mm2")
{
    const results::Outcome& o = check_case("condenser_door_shaken", {linear});
    REQUIRE(o.fatigue.run);
    for (const results::FastenerForce& f : o.fasteners) {
        if (f.load_case != "pothole") continue;
        CAPTURE(f.name);
        const results::Life* threads = life(o, "bolt threads", f.name);
        const results::Life* edge = life(o, "sheet hole edges", "skin at " + f.name);
        REQUIRE(threads);
        REQUIRE(edge);
        if (threads->why_not.empty()) CHECK(threads->per_g_MPa >= 0.998 * std::max(0.0, f.tension_N) / 58.0 / down(o, "pothole"));
        const double shear = std::max(std::hypot(f.shear_x_N, f.shear_y_N), f.row_shear_N);
        check_near_rel(edge->per_g_MPa, shear / ((3 * 10 - 11) * 0.76) / down(o, "pothole"), 0.02); // shear is in proportion but for contacts
        CHECK(edge->sigma_MPa <= edge->per_g_MPa * (down(o, "pothole") - 1) / 4); // a year's largest peak is more than 4 times the rms
        REQUIRE(edge->km);
        check_near_rel(*edge->years, *edge->km / 15000, 1e-9);
    }
    CHECK(std::find_if(o.cautions.begin(), o.cautions.end(), [](const std::string& c) { return c.find("hot-rolled") != std::string::npos; }) != o.cautions.end());
    CHECK(life(o, "arm roots", "weld of arm and leg of left"));
    CHECK(tests::group(o, "fatigue")->required); // it fails
}

TEST_CASE("a weld that is not given has no life, and a compressor that is known only adds")
{
    const results::Outcome& o = check_case("condenser_door_shaken", {linear});
    const results::Outcome& running = check_case("condenser_door_shaken", {linear, {"\nitem:\n", "\nitem:\n  running_acceleration: 1.5 g\n  running_time_per_year: 800 h\n"}});
    const results::Outcome& unknown = check_case("condenser_door_shaken", {linear, {"arm_leg: {weld: 3 mm}, ", ""}});
    CHECK_FALSE(life(unknown, "arm roots", "weld of arm and leg of left")->why_not.empty());
    REQUIRE(o.fatigue.lives.size() == running.fatigue.lives.size());
    bool more = false;
    for (std::size_t i = 0; i < o.fatigue.lives.size(); ++i) {
        if (!o.fatigue.lives[i].why_not.empty()) continue;
        check_near_rel(running.fatigue.lives[i].damage, o.fatigue.lives[i].damage + running.fatigue.lives[i].damage_running, 1e-9);
        more = more || running.fatigue.lives[i].damage_running > 0;
    }
    CHECK(more);
    CHECK(std::any_of(o.checks.begin(), o.checks.end(), [](const results::Check& c) { return c.id == "fatigue/running" && !c.required; }));
    CHECK(std::none_of(running.checks.begin(), running.checks.end(), [](const results::Check& c) { return c.id == "fatigue/running"; }));
}

TEST_CASE("a quasi-static road has no spectrum: not covered, said, and no matter of the verdict")
{
    const results::Outcome& o = check_case("condenser_door_made_good", {linear});
    const results::Group* g = tests::group(o, "fatigue");
    REQUIRE(g);
    CHECK(g->status == base::Verdict::not_covered);
    CHECK_FALSE(g->required);
    CHECK(o.verdict == base::Verdict::pass);
}

TEST_SUITE_END();
