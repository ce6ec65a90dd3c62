#include "strength/cards.h"

#include "strength/angles.h"
#include "strength/bearing.h"
#include "strength/bolts.h"
#include "strength/members.h"
#include "strength/pull_over.h"
#include "strength/screens.h"
#include "strength/sheet.h"
#include "strength/welds.h"

namespace thinskin::strength {

const std::vector<const base::Card*>& cards()
{
    static const std::vector<const base::Card*> all{
        // docs/theory/sheet.md
        &bolt_bearing_card(), &bolt_bearing_deformation_card(), &hot_rolled_bearing_card(), &sheet_tear_out_card(), &pull_over_card(), &punching_card(),
        &minimum_edge_distance_card(), &minimum_spacing_card(), &sheet_stress_card(), &shear_flow_card(), &repeated_load_card(),
        // docs/theory/bolts.md
        &bolt_tension_card(), &bolt_shear_card(), &bolt_tension_with_shear_card(), &bolt_bending_over_gap_card(),
        // docs/theory/angles.md
        &angle_bending_card(), &open_section_torsion_card(), &lying_leg_card(),
        // docs/theory/members.md
        &tension_yield_card(), &tension_rupture_card(), &compression_card(), &interaction_card(), &box_bending_card(), &bar_bending_card(),
        &hinge_index_card(),
        // docs/theory/welds.md
        &fillet_throat_card(), &sheet_beside_fillet_card()};
    return all;
}

} // namespace thinskin::strength
