// Notation (ADM 2020 J.3, J.4, J.5)
//   d, t, e    fastener, thickness of the sheet, distance from the hole's centre to its edge, mm
//   Ftu, Fty   tensile and yield strength of the sheet      D, dh   head or washer, hole under it
#include "strength/aluminium.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thinskin::strength {

namespace {

constexpr const char* not_welded = "sheet beside a weld, steel alone, repeated load";

double bearing(double d, double t, double Fu, double e) { return std::min(e, 2 * d) * t * Fu; }

base::Resistance bearing_formula(const AluminiumBearing& in) { return base::covered(bearing(in.d_mm, in.t_mm, in.Ftu_MPa, in.e_mm), 1.95); }

base::Resistance screw_shear_formula(const AluminiumScrewShear& in)
{
    const double d = in.d_mm, t2 = in.t2_mm;
    const double tilting = 4.2 * std::sqrt(t2 * t2 * t2 * d) * in.Fu2_MPa;
    return base::covered(std::min({bearing(d, in.t1_mm, in.Fu1_MPa, in.e1_mm), bearing(d, t2, in.Fu2_MPa, in.e2_mm), tilting}), 3.00);
}

base::Resistance pull_out_formula(const AluminiumPullOut& in)
{
    const bool thin = in.t_mm < 2.03;
    return base::covered((thin ? 0.60 * 1.01 : 0.85 * 1.20) * in.d_mm * in.t_mm * in.Fty_MPa, 3.00);
}

base::Resistance pull_over_formula(const AluminiumPullOver& in)
{
    constexpr double counted = 15.9; // mm, 5/8 in
    const double D = std::min(in.D_mm, counted), t = in.t_mm;
    if (!(D > in.dh_mm)) return base::not_covered("the head or washer is not larger than the hole under it");
    const double Rn = std::min(t * (D - in.dh_mm) * in.Ftu_MPa, (1 + 1.7 * t / D) * D * t * in.Fty_MPa);
    return base::covered(in.eccentric == 1 ? 0.5 * Rn : Rn, 3.00);
}

base::Resistance punching_formula(const AluminiumPunching& in)
{
    return base::covered(0.6 * std::numbers::pi * in.dm_mm * in.t_mm * in.Ftu_MPa, 3.00);
}

base::Symbol length(const char* name, const char* meaning, double lower, double upper) { return {.name = name, .unit = "mm", .meaning = meaning, .lower = lower, .upper = upper}; }
base::Symbol stress(const char* name, const char* meaning, double lower, double upper) { return {.name = name, .unit = "MPa", .meaning = meaning, .lower = lower, .upper = upper}; }
base::Symbol edge(const char* name, const char* meaning) { return {.name = name, .unit = "mm", .meaning = meaning, .lower = 0, .lower_open = true}; }

base::Card card(const char* id, const char* title, const char* formula, const char* source, base::Label label, const char* range)
{
    return {.id = id, .title = title, .formula = formula, .unit = "N", .rule = "allowable_strength", .source = source, .edition = "2020", .label = label, .range = range, .not_for = not_welded};
}

} // namespace

template <> const Clause<AluminiumBearing>& clause<AluminiumBearing>()
{
    static const Clause<AluminiumBearing> c{
        card("AL-1", "Bolt or rivet bearing on an aluminium ply", "Rn = min(e, 2 d) t Ftu", "ADM J.4.6, and J.3 for bolts", base::Label::read_in_copy,
             "read in a worked example for rivets, in a copy made by others; that the bolts' clause is the same is from memory; bolts below 6.35 mm and sheet below 1 mm are ours"),
        {{&AluminiumBearing::d_mm, length("d", "bolt or rivet diameter", 2.4, 24)}, {&AluminiumBearing::t_mm, length("t", "thickness of the ply", 0.5, 25)},
         {&AluminiumBearing::Ftu_MPa, stress("Ftu", "tensile strength of the ply", 80, 400)}, {&AluminiumBearing::e_mm, edge("e", "from the hole's centre to the edge, along the force")}},
        &bearing_formula};
    return c;
}

template <> const Clause<AluminiumScrewShear>& clause<AluminiumScrewShear>()
{
    static const Clause<AluminiumScrewShear> c{
        card("AL-2", "Screw in shear where a sheet is aluminium", "Rn = least of min(e1, 2 d) t1 Fu1, min(e2, 2 d) t2 Fu2, 4.2 (t2^3 d)^0.5 Fu2", "ADM J.5.5", base::Label::read_in_copy,
             "read in a worked example, in a copy made by others, and in printed tables; the clause drops tilting where t2 > t1, here it always counts; a steel sheet in the pair is taken by the same rule (below its own)"),
        {{&AluminiumScrewShear::d_mm, length("d", "screw diameter", 4.1, 6.4)}, {&AluminiumScrewShear::t1_mm, length("t1", "thickness under the head", 0.5, 6.4)},
         {&AluminiumScrewShear::t2_mm, length("t2", "thickness at the tip", 0.5, 6.4)}, {&AluminiumScrewShear::Fu1_MPa, stress("Fu1", "tensile strength under the head", 80, 690)},
         {&AluminiumScrewShear::Fu2_MPa, stress("Fu2", "tensile strength at the tip", 80, 690)}, {&AluminiumScrewShear::e1_mm, edge("e1", "screw's centre to the edge, sheet under the head")},
         {&AluminiumScrewShear::e2_mm, edge("e2", "screw's centre to the edge, sheet at the tip")}},
        &screw_shear_formula};
    return c;
}

template <> const Clause<AluminiumPullOut>& clause<AluminiumPullOut>()
{
    static const Clause<AluminiumPullOut> c{
        card("AL-3", "Screw pulled out of aluminium", "Rn = k Ks d t Fty; below 2.03 mm Ks 1.01 and k 0.60, from there on Ks 1.20 and k 0.85", "ADM J.5.4.1; k: a maker's laboratory values", base::Label::judgement,
             "Ks 1.01 was read in a worked example, both Ks agree with a printed table; laboratory values reached only 0.62 to 0.71 of it in 1.6 mm and 0.85 in 2.4 mm: k is that; at 2.03 mm it steps up by 1.68"),
        {{&AluminiumPullOut::d_mm, length("d", "screw diameter", 4.1, 6.4)}, {&AluminiumPullOut::t_mm, length("t", "thickness that the thread holds in", 0.97, 3.18)},
         {&AluminiumPullOut::Fty_MPa, stress("Fty", "yield strength of that sheet", 35, 350)}},
        &pull_out_formula};
    return c;
}

template <> const Clause<AluminiumPullOver>& clause<AluminiumPullOver>()
{
    static const Clause<AluminiumPullOver> c{
        card("AL-4", "Head or washer pulled through aluminium", "Rn = smaller of t (D - dh) Ftu and (1 + 1.7 t/D) D t Fty, D at most 15.9 mm; half where the pull is on one side", "ADM J.5.4.2", base::Label::read_in_copy,
             "the first form was read in a worked example of 2020, in a copy made by others, the second agrees with a printed table calculated by the edition of 2015: the smaller counts; written for screws up to 6.35 mm: under a larger bolt it is judgement; half for one side by analogy with steel"),
        {{&AluminiumPullOver::t_mm, length("t", "thickness under the head", 0.5, 3.2)}, {&AluminiumPullOver::Ftu_MPa, stress("Ftu", "tensile strength of that sheet", 80, 400)},
         {&AluminiumPullOver::Fty_MPa, stress("Fty", "its yield strength", 35, 350)}, {&AluminiumPullOver::D_mm, length("D", "head or washer that counts", 5, 500)},
         {&AluminiumPullOver::dh_mm, edge("dh", "hole under the head")}, {&AluminiumPullOver::eccentric, {.name = "eccentric", .unit = "-", .meaning = "1: the pull is on one side of the head", .choices = {0, 1}}}},
        &pull_over_formula};
    return c;
}

template <> const Clause<AluminiumPunching>& clause<AluminiumPunching>()
{
    static const Clause<AluminiumPunching> c{
        card("AL-5", "Punching of a thick aluminium ply", "Rn = 0.6 pi dm t Ftu", "form of EN 1999-1-1 Table 8.5, punching", base::Label::judgement, "plies of 3 mm and more; the form is that of steel (PU-1), for aluminium it is from memory; the factor is ours"),
        {{&AluminiumPunching::t_mm, length("t", "thickness of the ply", 3, 25)}, {&AluminiumPunching::Ftu_MPa, stress("Ftu", "tensile strength of the ply", 80, 400)},
         {&AluminiumPunching::dm_mm, length("dm", "mean of across flats and across points of head or nut", 5, 60)}},
        &punching_formula};
    return c;
}

} // namespace thinskin::strength
