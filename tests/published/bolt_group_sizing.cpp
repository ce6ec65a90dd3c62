// The least number of bolts for a shear force, by a published strength of one bolt: what the search's bound must come to.
#include "layout/layout.h"
#include "search/bounds.h"
#include "search/candidate.h"
#include "strength/bearing.h"
#include "support/cases.h"
#include "support/near.h"

using namespace thinskin;
using namespace thinskin::search;

namespace {

constexpr double in_mm = 25.4, kip_N = 4448.2216, ksi_MPa = 6.894757;

/// Two brackets with so many bolts side by side in each row.
layout::Layout with_rows(layout::Layout l, int left, int right)
{
    const int wanted[] = {left, right};
    for (std::size_t b = 0; b < 2; ++b) {
        const std::vector<layout::Stack> once = l.brackets[b].fasteners;
        for (int n = 1; n < wanted[b]; ++n) l.brackets[b].fasteners.insert(l.brackets[b].fasteners.end(), once.begin(), once.end());
    }
    return l;
}

} // namespace

TEST_SUITE_BEGIN("published: bolt group sizing");

TEST_CASE("3/8 in bolts in 0.06 in sheet of 55 ksi, 2.24 kip nominal each: 3.5 kip take four, and the search takes no fewer and no more")
{
    // The clause itself is counted where it is compared, in strength_bearing.cpp. [read] the nominal 2.24 kip: engineers' mail archive, November 2004, worked example to AISI 2001 E3.3. By hand: Omega 2.22, 1.009 kip
    // allowable, 3.5/1.009 = 3.47, so the least whole number is 4.
    const base::Resistance one = strength::bolt_bearing_deformation({0.375 * in_mm, 0.06 * in_mm, 55 * ksi_MPa});
    tests::check_near_rel(one.nominal / kip_N, 2.24, 0.0025);
    const model::Case c = tests::read_case(tests::edited_text("condenser_door"));
    const layout::Result r = layout::resolve(c);
    REQUIRE(r.layout);
    std::vector<Place> holding;
    for (int bolts = 2; bolts <= 8; ++bolts) {
        const double bound = *bolts_bound(with_rows(*r.layout, bolts / 2, bolts - bolts / 2), {{.shear_N = 3.5 * kip_N / bound_slack}}, {1e9, one.capacity});
        CAPTURE(bolts);
        tests::check_near_rel(1 + bound, bolts * 2.24 / 2.22 / 3.5, 0.003); // the clause against the printed figure: 0.25 %
        if (bound >= 0) holding.push_back({{2 * bolts, 10 * bolts, 1}, as_printed(bound), static_cast<std::size_t>(bolts)});
    }
    REQUIRE(!holding.empty());
    CHECK(holding.front().worth.holes == 2 * 4);
    for (const Place& p : holding) CHECK_FALSE((p.order != 4 && beats(p, holding.front())));
}

TEST_SUITE_END();
