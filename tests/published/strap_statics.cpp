// A strap by statics: a pinned arm held by an inclined strap, as in any textbook on mechanics. [formula] worked out by hand.
#include "support/cases.h"
#include "support/near.h"

#include <cmath>

using namespace thinskin;
using tests::check_case;

namespace {

/// Pull of the straps in one load case.
double pull(const results::Outcome& o, const std::string& load_case)
{
    double all = 0;
    for (const results::MemberForce& m : o.members)
        if (m.load_case == load_case && m.name.ends_with("strap")) all += m.axial_N;
    return all;
}

} // namespace

TEST_SUITE_BEGIN("published: strap by statics");

TEST_CASE("inclined strap: between the pull of pinned arms and nothing, and its fastener gets all of it")
{
    // [formula] item 38 kg x 1.05 at 180 mm, two arms 330 mm of 40x40x4 (2.42 kg/m): moment at the wall at 1 g
    // 39.9 x 9.80665 x 180 + 2 x 0.799 x 9.80665 x 165 = 73 010 N mm; strap from z = 310 mm up 565 mm: lever about the arm's root
    // 310 sin, sin = 565/(565^2 + 310^2)^0.5 = 0.8767: 271.8 mm; pull of pinned arms 268.6 N together. Arms stiff at the root leave less.
    const results::Outcome o = check_case("ladder_rack");
    const double got = pull(o, "parked");
    CHECK(got < 268.6 * 1.01);
    CHECK(got > 0.5 * 268.6);
    for (const results::EndForce& e : o.member_ends)
        if (e.name == "left strap" && e.end == "top" && e.load_case == "parked") {
            REQUIRE(e.fasteners.size() == 1);
            double whole = 0;
            for (const double f : e.force_N) whole = std::hypot(whole, f);
            const results::FastenerForce& f = e.fasteners.front();
            tests::check_near_rel(std::hypot(f.shear_x_N, f.shear_y_N, f.tension_N), whole, 1e-9); // one bolt carries its end: statics
        }
}

TEST_SUITE_END();
