#include "strength/cards.h"

#include "strength/aluminium.h"
#include "strength/angles.h"
#include "strength/bearing.h"
#include "strength/bolts.h"
#include "strength/fatigue.h"
#include "strength/inch_bolts.h"
#include "strength/members.h"
#include "strength/openings.h"
#include "strength/plates.h"
#include "strength/pull_over.h"
#include "strength/ribs.h"
#include "strength/rivets.h"
#include "strength/screens.h"
#include "strength/screw_combinations.h"
#include "strength/screws.h"
#include "strength/sheet.h"
#include "strength/spacing.h"
#include "strength/welds.h"
#include "strength/wood.h"

namespace thinskin::strength {

const std::vector<const base::Card*>& cards()
{
    static const std::vector<const base::Card*> all{
        // docs/theory/sheet.md
        &bolt_bearing_card(), &bolt_bearing_deformation_card(), &hot_rolled_bearing_card(), &sheet_tear_out_card(), &pull_over_card(), &punching_card(),
        &minimum_edge_distance_card(), &minimum_spacing_card(), &sheet_stress_card(), &opening_corner_card(), &shear_flow_card(), &repeated_load_card(),
        // docs/theory/bolts.md
        &bolt_tension_card(), &bolt_shear_card(), &bolt_tension_with_shear_card(), &bolt_bending_over_gap_card(),
        &inch_bolt_tension_card(), &inch_bolt_shear_card(), &inch_bolt_tension_with_shear_card(),
        // docs/theory/angles.md
        &angle_bending_card(), &open_section_torsion_card(), &lying_leg_card(),
        // docs/theory/members.md
        &tension_yield_card(), &tension_rupture_card(), &compression_card(), &interaction_card(), &box_bending_card(), &bar_bending_card(), &clause<ThinRib>().card(),
        &hinge_index_card(),
        // docs/theory/welds.md
        &fillet_throat_card(), &sheet_beside_fillet_card(),
        // docs/theory/screws.md
        &screw_shear_card(), &screw_pull_out_card(), &screw_pull_over_card(), &screw_own_shear_card(), &screw_own_tension_card(),
        &screw_shear_with_pull_over_card(), &screw_shear_with_pull_out_card(), &screw_shear_with_tension_card(), &straight_line_card(),
        &screw_tear_out_card(), &screw_edge_distance_card(), &screw_spacing_card(),
        // docs/theory/rivets_and_inserts.md
        &rivet_shear_card(), &rivet_tension_card(), &rivet_pull_through_card(), &rivet_bearing_card(), &rivet_edge_distance_card(),
        &rivet_spacing_card(), &insert_skin_bound_card(), &insert_tested_card(), &insert_edge_distance_card(), &insert_spacing_card(),
        // docs/theory/plates.md
        &countersunk_thickness_card(), &clause<CountersunkPullThrough>().card(), &washer_reach_card(), &plate_bending_card(), &plate_rim_card(),
        // docs/theory/wood.md
        &wood_screw_withdrawal_card(), &wood_head_pull_through_card(), &wood_screw_lateral_card(), &wood_screw_combined_card(),
        // docs/theory/aluminium.md
        &clause<AluminiumBearing>().card(), &clause<AluminiumScrewShear>().card(), &clause<AluminiumPullOut>().card(), &clause<AluminiumPullOver>().card(),
        &clause<AluminiumPunching>().card(), &clause<AluminiumAngleBending>().card(), &clause<AluminiumCompression>().card(), &clause<AluminiumTension>().card(),
        // docs/theory/fatigue.md
        &clause<BlockDamage>().card(), &clause<RandomDamage>().card(), &clause<ThreeBandDamage>().card(), &clause<DistanceToLimit>().card(), &clause<YearsToLimit>().card()};
    return all;
}

} // namespace thinskin::strength
