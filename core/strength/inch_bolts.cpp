// Notation (AISI S100-16 J3.4): Ab gross area pi d^2/4, Fnt, Fnv nominal stresses of the table, V service shear
#include "strength/inch_bolts.h"

#include <algorithm>
#include <numbers>

namespace thinskin::strength {

namespace {

constexpr double ksi = 6.894757;
constexpr double Omega = 2.00; // in tension and in shear since the edition of 2016; before it 2.25 and 2.40, with other stresses

struct Stresses { double Fnt, Fnv; };

/// Table J3.4-1, 1/4 in <= d < 1/2 in; where its columns in ksi and MPa differ, the lower.
Stresses stresses(double grade, double threads)
{
    const bool out = threads == threads_out_of_shear_plane;
    if (grade == grade_A307) return {40 * ksi, 24 * ksi};
    if (grade == grade_A449) return {81 * ksi, out ? 457.0 : 48 * ksi};
    return {101 * ksi, out ? 579.0 : 411.0};
}

double gross_area(double d) { return std::numbers::pi * d * d / 4; }

base::Resistance inch_bolt_tension_formula(const InchBoltTension& in)
{
    return base::covered(gross_area(in.d_mm) * stresses(in.grade, threads_in_shear_plane).Fnt, Omega);
}

base::Resistance inch_bolt_shear_formula(const InchBoltShear& in)
{
    return base::covered(gross_area(in.d_mm) * stresses(in.grade, in.threads).Fnv, Omega);
}

base::Resistance inch_bolt_tension_with_shear_formula(const InchBoltTensionWithShear& in)
{
    const double Ab = gross_area(in.d_mm);
    const Stresses s = stresses(in.grade, in.threads);
    const double reduced = 1.3 * s.Fnt - Omega * s.Fnt / s.Fnv * in.V_N / Ab; // J3.4-2
    return base::covered(std::clamp(reduced, 0.0, s.Fnt) * Ab, Omega);
}

constexpr auto sizes = "bolts from 1/4 in to below 1/2 in, stresses of the clause's table on the gross area, one factor for tension and shear; read in a copy made by others, of ksi and MPa the lower. Editions before 2016 have other stresses with 2.25 and 2.40";

base::Symbol diameter() { return {.name = "d", .unit = "mm", .meaning = "bolt diameter, below 1/2 in", .lower = 6.34, .upper = 12.69}; }

base::Symbol grade()
{
    return {.name = "grade", .unit = "-", .meaning = "307 A307 grade A, 449 A449, 354 A354 grade BD", .choices = {grade_A307, grade_A354_BD, grade_A449}};
}

base::Symbol threads()
{
    return {.name = "threads", .unit = "-", .meaning = "0 in the shear plane, 1 out of it", .choices = {threads_in_shear_plane, threads_out_of_shear_plane}};
}

} // namespace

template <> const Clause<InchBoltTension>& clause<InchBoltTension>()
{
    static const Clause<InchBoltTension> c{
        {.id = "BT-2",
         .title = "Inch bolt below 1/2 in in tension",
         .formula = "Pn = Ab Fnt, Fnt = 40 ksi A307, 81 ksi A449, 101 ksi A354 BD",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 Appendix A, J3.4",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = sizes,
         .not_for = "property classes and SAE grades (BT-1), stripping of a thin nut, prying (it belongs in the demand), fatigue of the thread"},
        {{&InchBoltTension::d_mm, diameter()}, {&InchBoltTension::grade, grade()}},
        &inch_bolt_tension_formula};
    return c;
}

template <> const Clause<InchBoltShear>& clause<InchBoltShear>()
{
    static const Clause<InchBoltShear> c{
        {.id = "BV-2",
         .title = "Inch bolt below 1/2 in in shear",
         .formula = "Pn = Ab Fnv, one shear plane; threads in it: Fnv = 24 ksi, 48 ksi, 411 MPa for A307, A449, A354 BD; out of it: 24 ksi, 457 MPa, 579 MPa",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 Appendix A, J3.4",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = sizes,
         .not_for = "property classes and SAE grades (BV-1), a bolt bent across a gap (BG-1), slip, fatigue"},
        {{&InchBoltShear::d_mm, diameter()}, {&InchBoltShear::grade, grade()}, {&InchBoltShear::threads, threads()}},
        &inch_bolt_shear_formula};
    return c;
}

template <> const Clause<InchBoltTensionWithShear>& clause<InchBoltTensionWithShear>()
{
    static const Clause<InchBoltTensionWithShear> c{
        {.id = "BI-2",
         .title = "Inch bolt below 1/2 in in tension beside a shear",
         .formula = "Pn = Ab F'nt, F'nt = 1.3 Fnt - 2.00 (Fnt/Fnv) V/Ab, 0 <= F'nt <= Fnt, Fnt of BT-2, Fnv of BV-2",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 Appendix A, J3.4",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = sizes,
         .not_for = "the shear itself, which has its own check (BV-2); prying"},
        {{&InchBoltTensionWithShear::d_mm, diameter()},
         {&InchBoltTensionWithShear::grade, grade()},
         {&InchBoltTensionWithShear::threads, threads()},
         {&InchBoltTensionWithShear::V_N, {.name = "V", .unit = "N", .meaning = "shear on the bolt in the same load case", .lower = 0}}},
        &inch_bolt_tension_with_shear_formula};
    return c;
}

base::Resistance inch_bolt_tension(const InchBoltTension& in) { return resistance(in); }
base::Resistance inch_bolt_shear(const InchBoltShear& in) { return resistance(in); }
base::Resistance inch_bolt_tension_with_shear(const InchBoltTensionWithShear& in) { return resistance(in); }

const base::Card& inch_bolt_tension_card() { return clause<InchBoltTension>().card(); }
const base::Card& inch_bolt_shear_card() { return clause<InchBoltShear>().card(); }
const base::Card& inch_bolt_tension_with_shear_card() { return clause<InchBoltTensionWithShear>().card(); }

} // namespace thinskin::strength
