// Notation: Rn static nominal of a sheet joint; Fn, Ft, Fz forces of one hinge; n hinges; F,Rk = F,system/n
#include "strength/screens.h"

#include <cmath>

namespace thinskin::strength {

namespace {

// UN R11 (03 series) 6.1.5.1, whole hinge set, in vehicle directions
constexpr double longitudinal = 11000, transverse = 9000, vertical_back_door = 9000;

base::Resistance repeated_load_formula(const RepeatedLoad& in) { return base::covered(0.10 * in.Rn_N, 1); }

base::Resistance hinge_index_formula(const HingeIndex& in)
{
    const HingeFigures rk = hinge_figures(in.n_hinges, in.door);
    if (!rk.vertical_known && in.Fz_N != 0) return base::not_covered("a side door has no vertical hinge load in the regulation");
    const double vertical = rk.vertical_known ? std::abs(in.Fz_N) / rk.vertical_N : 0;
    return base::covered(std::abs(in.Fn_N) / rk.normal_N + std::abs(in.Ft_N) / rk.in_plane_N + vertical, 1);
}

base::Symbol force(const char* name, const char* meaning) { return {.name = name, .unit = "N", .meaning = meaning}; }

} // namespace

HingeFigures hinge_figures(double n_hinges, double door)
{
    const double n = n_hinges;
    if (door == rear_door) return {longitudinal / n, transverse / n, vertical_back_door / n, true};
    return {transverse / n, longitudinal / n, 0, false};
}

template <> const Clause<RepeatedLoad>& clause<RepeatedLoad>()
{
    static const Clause<RepeatedLoad> c{
        {.id = "RL-1",
         .title = "Screen for years of shaking",
         .formula = "one-sigma force amplitude <= 0.10 Rn",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "engineering judgement, no source",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "joints in unclamped thin sheet; Rn is the nominal before its factor",
         .not_for = "fatigue proper: a pass is not a life in kilometres; threads, welds and strap ends"},
        {{&RepeatedLoad::Rn_N, {.name = "Rn", .unit = "N", .meaning = "static nominal of the governing sheet clause", .lower = 0}}},
        &repeated_load_formula};
    return c;
}

template <> const Clause<HingeIndex>& clause<HingeIndex>()
{
    static const Clause<HingeIndex> c{
        {.id = "HI-1",
         .title = "Hinge screening index",
         .formula = "U = |Fn|/Fn,Rk + |Ft|/Ft,Rk + |Fz|/Fz,Rk; rear door 11000/n, 9000/n, 9000/n N; side door 9000/n, 11000/n, none",
         .unit = "-",
         .rule = "allowable_strength",
         .source = "UN R11 (03 series) 6.1.5.1, 6.1.5.3; linear sum is judgement",
         .edition = "03 series",
         .label = base::Label::judgement,
         .range = "the loads were read as clause extracts; they are for the whole hinge set, one-time, ultimate, each alone, in a fixture; "
                  "whether this door was approved to them has to be shown",
         .not_for = "a strength of this vehicle's hinges: pillar and door sheet, sag, wear, fatigue are not in it. Never a pass"},
        {{&HingeIndex::n_hinges, {.name = "n", .unit = "-", .meaning = "hinges that share the set's load", .choices = {2, 3, 4, 5, 6}}},
         {&HingeIndex::door, {.name = "door", .unit = "-", .meaning = "0 rear door, 1 side door", .choices = {rear_door, side_door}}},
         {&HingeIndex::Fn_N, force("Fn", "force on one hinge, out of the door's plane")},
         {&HingeIndex::Ft_N, force("Ft", "force on one hinge, in the door's plane across the pins")},
         {&HingeIndex::Fz_N, force("Fz", "force on one hinge, along the pins")}},
        &hinge_index_formula};
    return c;
}

base::Resistance repeated_load(const RepeatedLoad& in) { return resistance(in); }
base::Resistance hinge_index(const HingeIndex& in) { return resistance(in); }

const base::Card& repeated_load_card() { return clause<RepeatedLoad>().card(); }
const base::Card& hinge_index_card() { return clause<HingeIndex>().card(); }

} // namespace thinskin::strength
