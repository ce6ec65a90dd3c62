// Notation (AISC 360-16 J3.6, J3.7; AISI S100-16 J3.4, threaded parts)
//   d    bolt diameter      Ab   gross area pi d^2/4      Fu   tensile strength of the BOLT
//   Fnt  0.75 Fu, 0.675 Fu below 12 mm      Fnv  0.450 Fu, 0.400 Fu below 12 mm (threads in the shear plane)
#include "strength/bolts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thinskin::strength {

namespace {

constexpr double Omega = 2.00;

double gross_area(double d) { return std::numbers::pi * d * d / 4; }

struct Shares { double tension, shear; }; ///< of Fu, on the gross area

/// Threaded parts: of a thin bolt the thread takes more away.
Shares shares(double d)
{
    constexpr double thin = 12;
    return d < thin ? Shares{0.675, 0.400} : Shares{0.75, 0.450};
}

base::Resistance bolt_tension_formula(const BoltTension& in) { return base::covered(shares(in.d_mm).tension * in.Fu_MPa * gross_area(in.d_mm), Omega); }
base::Resistance bolt_shear_formula(const BoltShear& in) { return base::covered(shares(in.d_mm).shear * in.Fu_MPa * gross_area(in.d_mm), Omega); }

base::Resistance bolt_tension_with_shear_formula(const BoltTensionWithShear& in)
{
    const double Ab = gross_area(in.d_mm), Fnt = shares(in.d_mm).tension * in.Fu_MPa, Fnv = shares(in.d_mm).shear * in.Fu_MPa;
    const double frv = in.V_N / Ab;
    const double reduced = 1.3 * Fnt - Omega * Fnt / Fnv * frv; // J3-3b
    return base::covered(std::clamp(reduced, 0.0, Fnt) * Ab, Omega);
}

base::Resistance bolt_bending_over_gap_formula(const BoltBendingOverGap& in)
{
    const double ds = std::sqrt(4 * in.As_mm2 / std::numbers::pi);
    const double M = in.fy_MPa * std::numbers::pi * ds * ds * ds / 32;
    return base::covered(2 * M / in.gap_mm, 1.67);
}

constexpr auto property_classes =
    "metric property-class bolts M5 and larger are judgement under this rule set: they are taken as threaded parts. 0.75 and 0.450 Fu were read in copies of the hot-rolled "
    "table of 2010 (0.40 Fu in shear until 2005), of worked examples, and with 0.675 and 0.400 Fu below 12 mm in a copy of the cold-formed table of 2016, which starts at 6.4 mm and changes at \"1/2 in (12 mm)\"";

base::Symbol diameter() { return {.name = "d", .unit = "mm", .meaning = "bolt diameter", .lower = 5, .upper = 36}; }
base::Symbol strength() { return {.name = "Fu", .unit = "MPa", .meaning = "tensile strength of the bolt", .lower = 300, .upper = 1040}; }

} // namespace

template <> const Clause<BoltTension>& clause<BoltTension>()
{
    static const Clause<BoltTension> c{
        {.id = "BT-1",
         .title = "Bolt in tension",
         .formula = "Rn = 0.75 Fu pi d^2/4, 0.675 Fu below 12 mm",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISC 360-16 J3.6 and AISI S100-16 J3.4, threaded parts",
         .edition = "2016",
         .label = base::Label::judgement,
         .range = property_classes,
         .not_for = "stripping of a thin nut, prying (it belongs in the demand), fatigue of the thread"},
        {{&BoltTension::d_mm, diameter()}, {&BoltTension::Fu_MPa, strength()}},
        &bolt_tension_formula};
    return c;
}

template <> const Clause<BoltShear>& clause<BoltShear>()
{
    static const Clause<BoltShear> c{
        {.id = "BV-1",
         .title = "Bolt in shear, threads in the shear plane",
         .formula = "Rn = 0.45 Fu pi d^2/4, 0.40 Fu below 12 mm, one shear plane",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISC 360-16 J3.6 and AISI S100-16 J3.4, threaded parts",
         .edition = "2016",
         .label = base::Label::judgement,
         .range = property_classes,
         .not_for = "a bolt bent across a gap (BG-1), slip, fatigue"},
        {{&BoltShear::d_mm, diameter()}, {&BoltShear::Fu_MPa, strength()}},
        &bolt_shear_formula};
    return c;
}

template <> const Clause<BoltTensionWithShear>& clause<BoltTensionWithShear>()
{
    static const Clause<BoltTensionWithShear> c{
        {.id = "BI-1",
         .title = "Bolt in tension beside a shear",
         .formula = "Rn = F'nt Ab, F'nt = 1.3 Fnt - Omega (Fnt/Fnv) V/Ab, 0 <= F'nt <= Fnt, Fnt = 0.75 Fu, Fnv = 0.45 Fu, below 12 mm 0.675 and 0.40 Fu",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISC 360-16 J3.7 and AISI S100-16 J3.4",
         .edition = "2016",
         .label = base::Label::judgement,
         .range = property_classes,
         .not_for = "the shear itself, which has its own check (BV-1); prying"},
        {{&BoltTensionWithShear::d_mm, diameter()},
         {&BoltTensionWithShear::Fu_MPa, strength()},
         {&BoltTensionWithShear::V_N, {.name = "V", .unit = "N", .meaning = "shear on the bolt in the same load case", .lower = 0}}},
        &bolt_tension_with_shear_formula};
    return c;
}

template <> const Clause<BoltBendingOverGap>& clause<BoltBendingOverGap>()
{
    static const Clause<BoltBendingOverGap> c{
        {.id = "BG-1",
         .title = "Bolt bent by shear across a gap",
         .formula = "V = 2 M/gap, M = fy pi ds^3/32, ds = (4 As/pi)^0.5",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "statics of a bolt held at both faces of the gap; elastic bending, factor 1.67",
         .edition = "-",
         .label = base::Label::judgement,
         .range = "both ends of the bolt held against rotation by clamped plies",
         .not_for = "a bolt held at one end only (its moment is twice as large), tightening across an open gap, fatigue"},
        {{&BoltBendingOverGap::As_mm2, {.name = "As", .unit = "mm2", .meaning = "stress area of the thread", .lower = 10, .upper = 1000}},
         {&BoltBendingOverGap::fy_MPa, {.name = "fy", .unit = "MPa", .meaning = "yield strength of the bolt", .lower = 180, .upper = 940}},
         {&BoltBendingOverGap::gap_mm,
          {.name = "gap", .unit = "mm", .meaning = "clear gap between the plies", .lower = 0, .upper = 100, .lower_open = true}}},
        &bolt_bending_over_gap_formula};
    return c;
}

base::Resistance bolt_tension(const BoltTension& in) { return resistance(in); }
base::Resistance bolt_shear(const BoltShear& in) { return resistance(in); }
base::Resistance bolt_tension_with_shear(const BoltTensionWithShear& in) { return resistance(in); }
base::Resistance bolt_bending_over_gap(const BoltBendingOverGap& in) { return resistance(in); }

const base::Card& bolt_tension_card() { return clause<BoltTension>().card(); }
const base::Card& bolt_shear_card() { return clause<BoltShear>().card(); }
const base::Card& bolt_tension_with_shear_card() { return clause<BoltTensionWithShear>().card(); }
const base::Card& bolt_bending_over_gap_card() { return clause<BoltBendingOverGap>().card(); }

} // namespace thinskin::strength
