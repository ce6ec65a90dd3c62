// Notation (AISI S100-16 J4.4.2, J6.1): d'w effective pull-over diameter, worked out by PO-1; e_net clear distance to the edge
#include "strength/pull_over.h"
#include "strength/screw_parts.h"
#include "strength/screw_symbols.h"
#include "strength/screws.h"

#include <algorithm>

namespace thinskin::strength {

namespace {

constexpr double Omega = 3.00;

PullOver as_pull_over(const ScrewPullOver& in)
{
    return {.t1_mm = in.t1_mm, .Fu1_MPa = in.Fu1_MPa, .dh_mm = in.dh_mm, .washer = in.washer == no_separate_washer ? 0.0 : 1.0, .dw_mm = in.dw_mm, .tw_mm = in.tw_mm};
}

base::Resistance screw_pull_over_formula(const ScrewPullOver& in)
{
    base::Resistance all_round = pull_over(as_pull_over(in));
    if (!all_round.covered) return all_round;
    return base::covered((in.eccentric == eccentric_pull ? 0.5 : 1.0) * all_round.nominal, Omega);
}

base::Resistance screw_tear_out_formula(const ScrewTearOut& in)
{
    constexpr double thickest = 4.76; // the clause's own limit: of a thicker part no more counts
    return base::covered(parts::tear_out(std::min(in.t_mm, thickest), in.Fu_MPa, in.e_net_mm, in.n), Omega);
}

} // namespace

template <> const Clause<ScrewPullOver>& clause<ScrewPullOver>()
{
    static const Clause<ScrewPullOver> c{
        {.id = "SC-3",
         .title = "Pull-over of a sheet under a screw's head or washer",
         .formula = "Pnov = 1.5 t1 d'w Fu1, half of it where eccentric; d'w = min(dh, 19.1 mm) without a separate washer, min(dh + 2 tw + t1, dw, 19.1 mm) "
                    "with one, solid or domed",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J4.4.2",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "PO-1 for a screw, with its demands on head and washer and what is ours in them; read in a copy made by others, the form agrees with published tables",
         .not_for = "sheet of low ductility (tests came out low in thin and hard sheet), countersunk heads, plastic washers, a plate's own bending, "
                    "repeated load, aluminium"},
        {{&ScrewPullOver::t1_mm, {.name = "t1", .unit = "mm", .meaning = "core thickness of the sheet under the head", .lower = 0.5, .upper = 4.76}},
         {&ScrewPullOver::Fu1_MPa, symbols::tensile("Fu1", "tensile strength of that sheet")},
         {&ScrewPullOver::dh_mm, symbols::head()},
         {&ScrewPullOver::washer, symbols::washer()},
         {&ScrewPullOver::dw_mm, symbols::washer_diameter()},
         {&ScrewPullOver::tw_mm, symbols::washer_thickness()},
         {&ScrewPullOver::eccentric, symbols::eccentric()}},
        &screw_pull_over_formula};
    return c;
}

template <> const Clause<ScrewTearOut>& clause<ScrewTearOut>()
{
    static const Clause<ScrewTearOut> c{
        {.id = "TO-2",
         .title = "Tear-out of a sheet behind screws",
         .formula = "Pnv = 0.6 Fu Anv, Anv = 2 n min(t, 4.76 mm) e_net",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J6.1, factor of screws",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "read in a copy made by others, for parts of up to 4.76 mm: of a thicker one no more than that counts; from 0.45 mm on (judgement)",
         .not_for = "bolts (TO-1), block shear across a pattern, tilting and bearing (SC-1)"},
        {{&ScrewTearOut::t_mm, symbols::sheet("t", "core thickness of the sheet")},
         {&ScrewTearOut::Fu_MPa, symbols::tensile("Fu", "tensile strength of the sheet")},
         {&ScrewTearOut::e_net_mm,
          {.name = "e_net", .unit = "mm", .meaning = "clear distance from the screw's rim to the sheet's edge, along the force", .lower = 0}},
         {&ScrewTearOut::n, {.name = "n", .unit = "-", .meaning = "screws in the tear-out", .choices = {1, 2, 3, 4, 5, 6}}}},
        &screw_tear_out_formula};
    return c;
}

base::Resistance screw_pull_over(const ScrewPullOver& in) { return resistance(in); }
base::Resistance screw_tear_out(const ScrewTearOut& in) { return resistance(in); }

const base::Card& screw_pull_over_card() { return clause<ScrewPullOver>().card(); }
const base::Card& screw_tear_out_card() { return clause<ScrewTearOut>().card(); }

} // namespace thinskin::strength
