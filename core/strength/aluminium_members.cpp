// Notation (ADM 2020 B.4, D.2, E.2, F.5; the manual counts in ksi, one root and one cube root of a stress need it)
//   Fcy, E     yield strength in compression, modulus of elasticity, MPa
//   B, D, C    where the straight line of inelastic buckling starts, its slope, where it meets the elastic curve
//   lambda     slenderness
#include "strength/aluminium.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thinskin::strength {

namespace {

constexpr double Omega = 1.65, ksi = 6.894757;
constexpr double pi2 = std::numbers::pi * std::numbers::pi;

struct Line { double B, D, C; };

/// Columns of tempers T5 to T9 (Table B.4.2), and of all others (Table B.4.1).
Line aged_column(double Fcy, double E)
{
    const double B = Fcy * (1 + std::sqrt(Fcy / ksi / 2250)), D = B / 10 * std::sqrt(B / E);
    return {B, D, 0.41 * B / D};
}
Line other_column(double Fcy, double E)
{
    const double B = Fcy * (1 + std::sqrt(Fcy / ksi / 1000)), D = B / 20 * std::sqrt(6 * B / E);
    return {B, D, 2 * B / (3 * D)};
}

/// E.2; the elastic curve bounds the line, so that both meet without a step.
double column_stress(const Line& l, double Fcy, double E, double lambda)
{
    const double elastic = 0.85 * pi2 * E / (lambda * lambda), first = (l.B - Fcy) / l.D;
    if (lambda <= first) return Fcy;
    if (lambda >= l.C) return elastic;
    return std::min({Fcy, elastic, (l.B - l.D * lambda) * (0.85 + 0.15 * (l.C - lambda) / (l.C - first))});
}

base::Resistance compression_formula(const AluminiumCompression& in)
{
    const double lambda = std::hypot(in.L_mm / in.r_mm, 5.0 * in.b_t);
    const Line line = in.aged == 1 ? aged_column(in.Fcy_MPa, in.E_MPa) : other_column(in.Fcy_MPa, in.E_MPa);
    return base::covered(column_stress(line, in.Fcy_MPa, in.E_MPa, lambda) * in.A_mm2, Omega);
}

/// F.5a: a leg whose tip is pressed most, in units of Sc.
double leg_stress(double b_t, double Fcy, double E)
{
    const double B = 1.3 * Fcy * (1 + std::cbrt(Fcy / ksi) / 7), D = B / 20 * std::sqrt(6 * B / E), C = 2 * B / (3 * D);
    const double elastic = pi2 * E / (16.0 * b_t * b_t); // 0.07 % below the line where they meet: it bounds it
    return 4.0 * b_t >= C ? elastic : std::min({1.5 * Fcy, elastic, B - 4.0 * D * b_t});
}

/// F.5c with the elastic moment of F.5-6, toe in compression.
double lateral_moment(const AluminiumAngleBending& in, double My)
{
    const double b2 = in.b_mm * in.b_mm, slope = in.Lb_mm * in.t_mm / b2, root = std::sqrt(1 + 0.88 * slope * slope);
    const double Me = 0.58 * in.E_MPa * b2 * b2 * in.t_mm / (in.Lb_mm * in.Lb_mm) * (0.88 * slope * slope / (root + 1));
    if (Me <= My) return (0.92 - 0.17 * Me / My) * Me;
    return std::min(1.92 - 1.17 * std::sqrt(My / Me), 1.3) * My;
}

base::Resistance angle_bending_formula(const AluminiumAngleBending& in)
{
    const double Sc = 0.80 * in.Sx_mm3;
    return base::covered(std::min(leg_stress((in.b_mm - in.t_mm) / in.t_mm, in.Fcy_MPa, in.E_MPa) * Sc, lateral_moment(in, Sc * in.Fcy_MPa)), Omega);
}

base::Resistance tension_formula(const AluminiumTension& in)
{
    const double net = in.A_mm2 - in.n * in.dh_mm * in.t_mm;
    if (!(net > 0)) return base::not_covered("the holes are wider than the part");
    const double yielding = in.Fty_MPa * in.A_mm2, rupture = in.Ftu_MPa * in.U * net;
    return yielding / Omega <= rupture / 1.95 ? base::covered(yielding, Omega) : base::covered(rupture, 1.95);
}

base::Symbol size(const char* name, const char* unit, const char* meaning, double lower, double upper) { return {.name = name, .unit = unit, .meaning = meaning, .lower = lower, .upper = upper}; }
base::Symbol above_zero(const char* name, const char* unit, const char* meaning) { return {.name = name, .unit = unit, .meaning = meaning, .lower = 0, .lower_open = true}; }
base::Symbol yield(const char* name) { return size(name, "MPa", "yield strength", 35, 350); }
base::Symbol modulus() { return size("E", "MPa", "modulus of elasticity, aluminium", 65000, 73000); }

} // namespace

template <> const Clause<AluminiumAngleBending>& clause<AluminiumAngleBending>()
{
    static const Clause<AluminiumAngleBending> c{
        {.id = "AL-6", .title = "Bending of an equal-leg aluminium angle about an axis parallel to a leg", .formula = "Mn = least of leg buckling (F.5a) and lateral-torsional buckling (F.5c), on 0.80 Sx",
         .unit = "N mm", .rule = "allowable_strength", .source = "ADM F.5", .edition = "2020", .label = base::Label::read_in_copy,
         .range = "read in a copy made by others, the buckling constants through a worked example (B and D of 186 MPa yield); leg width without its root fillet: b - t, a little too wide",
         .not_for = "unequal legs, part beside a weld, torsion, holes in the tension leg"},
        {{&AluminiumAngleBending::b_mm, size("b", "mm", "leg length", 15, 150)}, {&AluminiumAngleBending::t_mm, size("t", "mm", "leg thickness", 1.5, 20)},
         {&AluminiumAngleBending::Sx_mm3, above_zero("Sx", "mm3", "elastic modulus to the toe")}, {&AluminiumAngleBending::Fcy_MPa, yield("Fcy")}, {&AluminiumAngleBending::E_MPa, modulus()},
         {&AluminiumAngleBending::Lb_mm, {.name = "Lb", .unit = "mm", .meaning = "length between lateral-torsional restraints", .lower = 0, .upper = 20000, .lower_open = true}}},
        &angle_bending_formula};
    return c;
}

template <> const Clause<AluminiumCompression>& clause<AluminiumCompression>()
{
    static const Clause<AluminiumCompression> c{
        {.id = "AL-7", .title = "Aluminium in compression", .formula = "Pn = Fc A, lambda = ((L/r)^2 + (5 b/t)^2)^0.5; Fc = Fcy, (B - D lambda)(0.85 + 0.15 (C - lambda)/(C - lambda1)), 0.85 pi^2 E/lambda^2",
         .unit = "N", .rule = "allowable_strength", .source = "ADM E.2, B.5.4.1", .edition = "2020", .label = base::Label::read_in_copy,
         .range = "the curve was read in a copy made by others; B, D and C are from memory and agree with its worked examples; bending and twisting together by sum of squares (ours, safe side)",
         .not_for = "part beside a weld, an angle pushed by one leg, walls supported at both edges"},
        {{&AluminiumCompression::A_mm2, above_zero("A", "mm2", "gross area")}, {&AluminiumCompression::r_mm, above_zero("r", "mm", "least radius of gyration")},
         {&AluminiumCompression::L_mm, above_zero("L", "mm", "length between supports")}, {&AluminiumCompression::b_t, size("b_t", "-", "free width over thickness of the widest leg, 0 for a solid bar", 0, 60)},
         {&AluminiumCompression::Fcy_MPa, yield("Fcy")}, {&AluminiumCompression::E_MPa, modulus()},
         {&AluminiumCompression::aged, {.name = "aged", .unit = "-", .meaning = "1 tempers T5 to T9, 0 all others", .choices = {0, 1}}}},
        &compression_formula};
    return c;
}

template <> const Clause<AluminiumTension>& clause<AluminiumTension>()
{
    static const Clause<AluminiumTension> c{
        {.id = "AL-8", .title = "Aluminium in tension", .formula = "Rn/Omega = smaller of Fty A/1.65 and Ftu U (A - n dh t)/1.95", .unit = "N", .rule = "allowable_strength", .source = "ADM D.2", .edition = "2020",
         .label = base::Label::read_in_copy, .range = "read in a copy made by others; drilled holes; alloys of the 3000, 5000 and 6000 series", .not_for = "part beside a weld, punched holes (0.8 mm more), staggered holes"},
        {{&AluminiumTension::A_mm2, above_zero("A", "mm2", "gross area")}, {&AluminiumTension::t_mm, size("t", "mm", "thickness at the holes", 0.5, 25)},
         {&AluminiumTension::n, size("n", "-", "holes in one line across", 0, 6)}, {&AluminiumTension::dh_mm, size("dh", "mm", "hole diameter", 0, 30)},
         {&AluminiumTension::U, size("U", "-", "share of the section that the end holds", 0.3, 1)}, {&AluminiumTension::Fty_MPa, yield("Fty")},
         {&AluminiumTension::Ftu_MPa, size("Ftu", "MPa", "tensile strength", 80, 400)}},
        &tension_formula};
    return c;
}

} // namespace thinskin::strength
