// Notation (AISC 360-16 F10)
//   b, t    leg length and thickness      Sx   elastic modulus to the toe, axis parallel to a leg
//   My      yield moment, Mcr elastic lateral-torsional buckling moment, Mn nominal moment
// Accuracy: the formulas are closed; tests/published/strength_angles.cpp recomputes them to 4 digits.
#include "strength/angles.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace thinskin::strength {

namespace {

constexpr double Omega = 1.67;
constexpr double infinite = std::numeric_limits<double>::infinity();

/// F10.2, geometric axis: 0.80 Fy Sx without lateral-torsional restraint.
double yield_moment(const AngleBending& in)
{
    return (in.restraint == unrestrained ? 0.80 : 1.00) * in.Fy_MPa * in.Sx_mm3;
}

/// F10-5a (toe in compression), F10-5b (toe in tension).
double buckling_moment(const AngleBending& in)
{
    if (in.restraint == restrained_continuously) return infinite;
    const double b2 = in.b_mm * in.b_mm, Lb2 = in.Lb_mm * in.Lb_mm;
    const double slope = in.Lb_mm * in.t_mm / b2;
    const double root = std::sqrt(1 + 0.88 * slope * slope);
    const double bracket = in.toe == toe_in_tension ? root + 1 : 0.88 * slope * slope / (root + 1); // root - 1 without cancellation
    const double Mcr = 0.58 * in.E_MPa * b2 * b2 * in.t_mm * in.Cb / Lb2 * bracket;
    return in.restraint == restrained_at_maximum ? 1.25 * Mcr : Mcr;
}

/// F10-2, F10-3.
double lateral_moment(double My, double Mcr)
{
    if (std::isinf(Mcr)) return infinite;
    if (My <= Mcr) return std::min((1.92 - 1.17 * std::sqrt(My / Mcr)) * My, 1.5 * My);
    return (0.92 - 0.17 * Mcr / My) * Mcr;
}

/// F10.3, toe in compression only; Sc carries the 0.80 of My.
double leg_moment(const AngleBending& in, double My)
{
    const double b_t = in.b_mm / in.t_mm, root = std::sqrt(in.E_MPa / in.Fy_MPa);
    if (in.toe == toe_in_tension || b_t <= 0.54 * root) return infinite;
    if (b_t <= 0.91 * root) return My * (2.43 - 1.72 * b_t / root);      // F10-6
    return My * 0.71 * in.E_MPa / (b_t * b_t) / in.Fy_MPa;               // F10-7, F10-8
}

AngleBendingDetail modes(const AngleBending& in)
{
    AngleBendingDetail d;
    d.My_Nmm = yield_moment(in);
    d.Mcr_Nmm = buckling_moment(in);
    d.yielding_Nmm = 1.5 * d.My_Nmm;
    d.lateral_Nmm = lateral_moment(d.My_Nmm, d.Mcr_Nmm);
    d.leg_Nmm = leg_moment(in, d.My_Nmm);
    const double least = std::min({d.yielding_Nmm, d.lateral_Nmm, d.leg_Nmm});
    d.governs = least == d.yielding_Nmm ? "yielding" : least == d.lateral_Nmm ? "lateral-torsional buckling" : "leg local buckling";
    d.resistance = base::covered(least, Omega);
    return d;
}

base::Resistance angle_bending_formula(const AngleBending& in) { return modes(in).resistance; }

base::Resistance open_section_torsion_formula(const OpenSectionTorsion& in)
{
    return base::covered(0.6 * in.Fy_MPa * in.J_mm4 / in.t_mm, Omega);
}

base::Resistance lying_leg_formula(const LyingLeg& in)
{
    const double w = std::min(in.washer_mm + 2 * in.a_mm, in.available_mm); // 45 degrees to both sides
    const double Mp = in.Fy_MPa * w * in.t_mm * in.t_mm / 4;
    return base::covered(Mp / in.a_mm, Omega);
}

base::Symbol yield() { return {.name = "Fy", .unit = "MPa", .meaning = "yield strength", .lower = 100, .upper = 700}; }

} // namespace

template <> const Clause<AngleBending>& clause<AngleBending>()
{
    static const Clause<AngleBending> c{
        {.id = "AB-1",
         .title = "Bending of a single equal-leg angle about an axis parallel to a leg",
         .formula = "Mn = least of 1.5 My, lateral-torsional buckling (F10.2), leg local buckling (F10.3); My = 0.80 Fy Sx, or Fy Sx where restrained",
         .unit = "N mm",
         .rule = "allowable_strength",
         .source = "AISC 360-16 F10",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "rolled equal-leg angles; the equations were read in their 2010 form, the constants 0.58 and 0.88 in worked examples of 2022, in a copy made by others",
         .not_for = "unequal legs, bending about principal axes, torsion (AT-1), holes in the tension leg, aluminium"},
        {{&AngleBending::b_mm, {.name = "b", .unit = "mm", .meaning = "leg length", .lower = 15, .upper = 250}},
         {&AngleBending::t_mm, {.name = "t", .unit = "mm", .meaning = "leg thickness", .lower = 2, .upper = 35}},
         {&AngleBending::Sx_mm3, {.name = "Sx", .unit = "mm3", .meaning = "elastic modulus to the toe", .lower = 0, .lower_open = true}},
         {&AngleBending::Fy_MPa, yield()},
         {&AngleBending::E_MPa, {.name = "E", .unit = "MPa", .meaning = "modulus of elasticity, steel", .lower = 190000, .upper = 215000}},
         {&AngleBending::Lb_mm,
          {.name = "Lb", .unit = "mm", .meaning = "length between lateral-torsional restraints", .lower = 0, .upper = 20000, .lower_open = true}},
         {&AngleBending::Cb, {.name = "Cb", .unit = "-", .meaning = "moment shape factor, 1 is safe", .lower = 1, .upper = 1.5}},
         {&AngleBending::toe,
          {.name = "toe", .unit = "-", .meaning = "1 toe in compression, -1 toe in tension", .choices = {toe_in_compression, toe_in_tension}}},
         {&AngleBending::restraint,
          {.name = "restraint",
           .unit = "-",
           .meaning = "0 none, 1 at the point of greatest moment, 2 continuous",
           .choices = {unrestrained, restrained_at_maximum, restrained_continuously}}}},
        &angle_bending_formula};
    return c;
}

template <> const Clause<OpenSectionTorsion>& clause<OpenSectionTorsion>()
{
    static const Clause<OpenSectionTorsion> c{
        {.id = "AT-1",
         .title = "Torque on an open section",
         .formula = "T = 0.6 Fy J/t",
         .unit = "N mm",
         .rule = "allowable_strength",
         .source = "Saint-Venant torsion, shear yield 0.6 Fy, factor 1.67",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "thin-walled open sections (angle, flat): greatest shear T t/J at the middle of the wall",
         .not_for = "warping restraint, twist (an open section turns a long way first), closed sections"},
        {{&OpenSectionTorsion::J_mm4,
          {.name = "J", .unit = "mm4", .meaning = "torsion constant, sum of b t^3/3", .lower = 0, .lower_open = true}},
         {&OpenSectionTorsion::t_mm, {.name = "t", .unit = "mm", .meaning = "greatest wall thickness", .lower = 0.5, .upper = 40}},
         {&OpenSectionTorsion::Fy_MPa, yield()}},
        &open_section_torsion_formula};
    return c;
}

template <> const Clause<LyingLeg>& clause<LyingLeg>()
{
    static const Clause<LyingLeg> c{
        {.id = "LL-1",
         .title = "Lying leg of an angle pulled at its bolt",
         .formula = "F = Fy w t^2/(4 a), w = min(washer + 2 a, available)",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "plastic strip held at the heel, load spread under 45 degrees, factor 1.67",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "one bolt; strips of neighbouring bolts may not overlap (that is what `available` is for)",
         .not_for = "prying at the toe (it belongs in the demand), bending of the whole angle (AB-1)"},
        {{&LyingLeg::t_mm, {.name = "t", .unit = "mm", .meaning = "leg thickness", .lower = 2, .upper = 35}},
         {&LyingLeg::Fy_MPa, yield()},
         {&LyingLeg::a_mm,
          {.name = "a", .unit = "mm", .meaning = "lever from the standing leg's inner face to the bolt line", .lower = 0, .upper = 250, .lower_open = true}},
         {&LyingLeg::washer_mm, {.name = "washer", .unit = "mm", .meaning = "diameter of head or washer on the leg", .lower = 0, .upper = 100}},
         {&LyingLeg::available_mm,
          {.name = "available", .unit = "mm", .meaning = "length of leg that belongs to this bolt", .lower = 0, .lower_open = true}}},
        &lying_leg_formula};
    return c;
}

AngleBendingDetail angle_bending_detail(const AngleBending& in)
{
    base::Resistance checked = angle_bending(in);
    if (checked.covered) return modes(in);
    AngleBendingDetail refused;
    refused.resistance = std::move(checked);
    return refused;
}

base::Resistance angle_bending(const AngleBending& in) { return resistance(in); }
base::Resistance open_section_torsion(const OpenSectionTorsion& in) { return resistance(in); }
base::Resistance lying_leg(const LyingLeg& in) { return resistance(in); }

const base::Card& angle_bending_card() { return clause<AngleBending>().card(); }
const base::Card& open_section_torsion_card() { return clause<OpenSectionTorsion>().card(); }
const base::Card& lying_leg_card() { return clause<LyingLeg>().card(); }

} // namespace thinskin::strength
