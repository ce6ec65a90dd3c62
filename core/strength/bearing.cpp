// Notation (AISI S100-16 J3, J6; AISC 360-16 J3.10)
//   d      bolt diameter, mm              t      core thickness of the ply, mm
//   Fu     tensile strength of the PLY    C      bearing factor          mf   type of connection
//   lc     clear distance, hole to edge or to the next hole, along the force
#include "strength/bearing.h"
#include "strength/screw_parts.h"

#include <algorithm>

namespace thinskin::strength {

namespace {

/// Table J3.3.1-1, standard holes.
double bearing_factor(double d_over_t)
{
    if (d_over_t < 10) return 3.0;
    if (d_over_t <= 22) return 4 - 0.1 * d_over_t;
    return 1.8;
}

base::Resistance bolt_bearing_formula(const BoltBearing& in)
{
    const double d = in.d_mm, t = in.t_mm, Fu = in.Fu_MPa;
    return base::covered(bearing_factor(d / t) * in.mf * d * t * Fu, 2.50);
}

base::Resistance bolt_bearing_deformation_formula(const BoltBearingDeformation& in)
{
    const double d = in.d_mm, t = in.t_mm, Fu = in.Fu_MPa;
    constexpr double alpha = 0.0394; // per mm; 1 with inches
    return base::covered((4.64 * alpha * t + 1.53) * d * t * Fu, 2.22);
}

base::Resistance hot_rolled_bearing_formula(const HotRolledBearing& in)
{
    const double d = in.d_mm, t = in.t_mm, Fu = in.Fu_MPa;
    return base::covered(std::min(1.2 * in.lc_mm * t * Fu, 2.4 * d * t * Fu), 2.00);
}

base::Resistance sheet_tear_out_formula(const SheetTearOut& in)
{
    return base::covered(parts::tear_out(in.t_mm, in.Fu_MPa, in.e_net_mm, in.n), 2.22);
}

} // namespace

template <> const Clause<BoltBearing>& clause<BoltBearing>()
{
    static const Clause<BoltBearing> c{
        {.id = "BB-1",
         .title = "Bolt bearing in thin sheet, hole deformation not considered",
         .formula = "Pnb = C mf d t Fu, C = 3 for d/t < 10, 4 - 0.1 d/t to 22, 1.8 above",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J3.3.1",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "sheet 0.61 to 4.76 mm, standard holes; read in a copy made by others; C = 3 agrees with a published worked example; bolts below 6.35 mm are below the size "
                  "of the clause's bolt table",
         .not_for = "plies apart from each other (a cavity), oversize or slotted holes, aluminium, repeated load, edge tear-out (TO-1)"},
        {{&BoltBearing::d_mm, {.name = "d", .unit = "mm", .meaning = "bolt diameter", .lower = 5, .upper = 25.4}},
         {&BoltBearing::t_mm, {.name = "t", .unit = "mm", .meaning = "core thickness of the sheet", .lower = 0.61, .upper = 4.76}},
         {&BoltBearing::Fu_MPa, {.name = "Fu", .unit = "MPa", .meaning = "tensile strength of the sheet", .lower = 200, .upper = 690}},
         {&BoltBearing::mf,
          {.name = "mf",
           .unit = "-",
           .meaning = "1 washers under head and nut, 0.75 none or one washer, 1.33 inner sheet of double shear",
           .choices = {mf_bare_or_one_washer, mf_washers_both_sides, mf_inner_sheet}}}},
        &bolt_bearing_formula};
    return c;
}

template <> const Clause<BoltBearingDeformation>& clause<BoltBearingDeformation>()
{
    static const Clause<BoltBearingDeformation> c{
        {.id = "BB-2",
         .title = "Bolt bearing in thin sheet, hole deformation considered",
         .formula = "Pnb = (4.64 alpha t + 1.53) d t Fu, alpha = 0.0394 per mm",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J3.3.2",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "sheet 0.61 to 4.76 mm; read in a copy made by others, agrees with a published worked example; about 6 mm of movement at the nominal force",
         .not_for = "plies apart from each other (a cavity), oversize or slotted holes, aluminium, repeated load, edge tear-out (TO-1)"},
        {{&BoltBearingDeformation::d_mm, {.name = "d", .unit = "mm", .meaning = "bolt diameter", .lower = 5, .upper = 25.4}},
         {&BoltBearingDeformation::t_mm, {.name = "t", .unit = "mm", .meaning = "core thickness of the sheet", .lower = 0.61, .upper = 4.76}},
         {&BoltBearingDeformation::Fu_MPa,
          {.name = "Fu", .unit = "MPa", .meaning = "tensile strength of the sheet", .lower = 200, .upper = 690}}},
        &bolt_bearing_deformation_formula};
    return c;
}

template <> const Clause<HotRolledBearing>& clause<HotRolledBearing>()
{
    static const Clause<HotRolledBearing> c{
        {.id = "BB-3",
         .title = "Bolt bearing and tear-out in a hot-rolled part",
         .formula = "Rn = 1.2 lc t Fu, at most 2.4 d t Fu",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISC 360-16 J3.10",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "parts of 3 mm and more, standard holes; read in a worked example of 2022, in a copy made by others; the clause knows bolts of 1/2 in and more, smaller ones are taken with it",
         .not_for = "sheet below 3 mm (BB-1, BB-2), slotted holes, aluminium, repeated load"},
        {{&HotRolledBearing::d_mm, {.name = "d", .unit = "mm", .meaning = "bolt diameter", .lower = 5, .upper = 36}},
         {&HotRolledBearing::t_mm, {.name = "t", .unit = "mm", .meaning = "thickness of the part", .lower = 3, .upper = 40}},
         {&HotRolledBearing::Fu_MPa, {.name = "Fu", .unit = "MPa", .meaning = "tensile strength of the part", .lower = 300, .upper = 700}},
         {&HotRolledBearing::lc_mm,
          {.name = "lc", .unit = "mm", .meaning = "clear distance from the hole to the edge or the next hole, along the force", .lower = 0}}},
        &hot_rolled_bearing_formula};
    return c;
}

template <> const Clause<SheetTearOut>& clause<SheetTearOut>()
{
    static const Clause<SheetTearOut> c{
        {.id = "TO-1",
         .title = "Tear-out of a sheet behind bolts",
         .formula = "Pnv = 0.6 Fu Anv, Anv = 2 n t e_net",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J6.1",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "sheet up to 4.76 mm, from 0.61 mm on as for bearing (ours); read with its factor 2.22 in a copy made by others",
         .not_for = "screws (their factor is 3.00), block shear across a pattern, bearing (BB-1, BB-2)"},
        {{&SheetTearOut::t_mm, {.name = "t", .unit = "mm", .meaning = "core thickness of the sheet", .lower = 0.61, .upper = 4.76}},
         {&SheetTearOut::Fu_MPa, {.name = "Fu", .unit = "MPa", .meaning = "tensile strength of the sheet", .lower = 200, .upper = 690}},
         {&SheetTearOut::e_net_mm,
          {.name = "e_net", .unit = "mm", .meaning = "clear distance from the hole's rim to the sheet's edge, along the force", .lower = 0}},
         {&SheetTearOut::n, {.name = "n", .unit = "-", .meaning = "bolts in the tear-out", .choices = {1, 2, 3, 4, 5, 6}}}},
        &sheet_tear_out_formula};
    return c;
}

base::Resistance bolt_bearing(const BoltBearing& in) { return resistance(in); }
base::Resistance bolt_bearing_deformation(const BoltBearingDeformation& in) { return resistance(in); }
base::Resistance hot_rolled_bearing(const HotRolledBearing& in) { return resistance(in); }
base::Resistance sheet_tear_out(const SheetTearOut& in) { return resistance(in); }

const base::Card& bolt_bearing_card() { return clause<BoltBearing>().card(); }
const base::Card& bolt_bearing_deformation_card() { return clause<BoltBearingDeformation>().card(); }
const base::Card& hot_rolled_bearing_card() { return clause<HotRolledBearing>().card(); }
const base::Card& sheet_tear_out_card() { return clause<SheetTearOut>().card(); }

} // namespace thinskin::strength
