// Stress on the fine grid beside footprints (ID-16), against plate theory.
#include "support/near.h"
#include "support/settled.h"

#include <fmt/format.h>

using namespace thinskin;
using tests::check_near_rel;

namespace {

/// A hinged square plate of 600 mm, 1 mm thick, with `force` on a central square: one state of linear size, settled.
tests::Settled central_square(double side, double force, double spacing, double local_grid)
{
    const std::string text = fmt::format("format: 1\njob: {{title: plate}}\nrules: allowable_strength\npanel: {{kind: wall, faces: left, width: 600 mm, height: 600 mm, "
                                         "skin: {{material: DC04, thickness: 1 mm, coating: 0 mm}}, edges: {{left: hinged, right: hinged, bottom: hinged, top: hinged}}}}\n"
                                         "forces: [{{at: [300 mm, 300 mm], force: [0 N, 0 N, {} N], spread_over: [{} mm, {} mm]}}]\n",
                                         force, side, side);
    return tests::settled(text, "applied", false, {spacing, local_grid});
}

} // namespace

TEST_CASE("ID-16: stress under a force on a central square of a hinged plate is 6 M/t2 with Navier's moment")
{
    // M at the centre over the force, side of the square over that of the plate 0.05, 0.10, 0.20: Navier's series, as in tests/published/plates.cpp
    // (Timoshenko and Woinowsky-Krieger, art. 29; computed from the formula; Roark's 6 M / W = 1.28 for 0.2 was read). 0.01 N: linear size.
    for (const auto& row : {std::pair{0.05, 0.355821}, {0.10, 0.284115}, {0.20, 0.212411}}) {
        const double share = row.first, M = row.second;
        CAPTURE(share);
        const tests::Settled both = central_square(share * 600, 0.01, 30, 2.5);
        const results::SkinState& k = both.settled;
        CHECK(both.shown.stress_at_most_MPa > 0.995 * 6 * M * 0.01); // what the grid of 30 mm shows and may hide bounds it
        check_near_rel(k.max_von_mises_MPa, 6 * M * 0.01, 0.01); // M_x = M_y there: von Mises is either
        check_near_rel(k.stress_at_mm[0], 300, 1e-9);
        check_near_rel(k.stress_at_mm[1], 300, 1e-9);
    }
}

TEST_CASE("ID-16: halving the fine grid or the panel's moves the stress by less than 2 %")
{
    const double small = central_square(12, 0.01, 30, 2.5).settled.max_von_mises_MPa;
    check_near_rel(central_square(12, 0.01, 30, 1.25).settled.max_von_mises_MPa, small, 0.02);
    check_near_rel(central_square(12, 0.01, 15, 2.5).settled.max_von_mises_MPa, small, 0.02);
}
