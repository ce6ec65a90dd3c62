// Notation (AISC 360-16 D2, D3, E3, E5)
//   Ag, An   gross and net area      U   shear lag factor      Lc/r   effective slenderness
//   Fe       elastic buckling stress, Fcr critical stress
#include "strength/members.h"

#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace thinskin::strength {

namespace {

constexpr double hole_allowance = 1.6; // 1/16 in beyond the hole itself
constexpr double slenderness_limit = 200;

base::Resistance tension_yield_formula(const TensionYield& in) { return base::covered(in.Fy_MPa * in.Ag_mm2, 1.67); }

base::Resistance tension_rupture_formula(const TensionRupture& in)
{
    const double An = in.n == 0 ? in.Ag_mm2 : in.Ag_mm2 - in.n * (in.dh_mm + hole_allowance) * in.t_mm;
    if (!(An > 0)) return base::not_covered(fmt::format("the holes leave no net area (An = {:.4g} mm2)", An));
    return base::covered(in.Fu_MPa * in.U * An, 2.00);
}

base::Resistance compression_formula(const Compression& in)
{
    const double Lc_r = effective_slenderness(in), leg_limit = 0.45 * std::sqrt(in.E_MPa / in.Fy_MPa);
    if (!(in.b_over_t <= leg_limit)) return base::not_covered(fmt::format("b/t = {:.4g} is a slender leg (above {:.4g})", in.b_over_t, leg_limit));
    if (!(Lc_r <= slenderness_limit)) return base::not_covered(fmt::format("Lc/r = {:.4g} is outside 0 .. {:g}: too slender to push", Lc_r, slenderness_limit));
    return base::covered(flexural_buckling_stress(Lc_r, in.Fy_MPa, in.E_MPa) * in.A_mm2, 1.67);
}

base::Symbol yield() { return {.name = "Fy", .unit = "MPa", .meaning = "yield strength", .lower = 100, .upper = 700}; }
base::Symbol gross(const char* name) { return {.name = name, .unit = "mm2", .meaning = "gross area", .lower = 0, .lower_open = true}; }

} // namespace

double effective_slenderness(const Compression& in)
{
    const double L_r = in.L_mm / in.r_mm;
    if (in.ends == loaded_concentrically) return L_r;
    return L_r <= 80 ? 72 + 0.75 * L_r : 32 + 1.25 * L_r; // E5-1, E5-2
}

double flexural_buckling_stress(double slenderness, double Fy, double E)
{
    if (slenderness == 0) return Fy;
    const double Fe = std::numbers::pi * std::numbers::pi * E / (slenderness * slenderness);
    if (slenderness <= 4.71 * std::sqrt(E / Fy)) return std::pow(0.658, Fy / Fe) * Fy; // E3-2
    return 0.877 * Fe;                                                                 // E3-3
}

template <> const Clause<TensionYield>& clause<TensionYield>()
{
    static const Clause<TensionYield> c{
        {.id = "TN-1",
         .title = "Tension member, yielding",
         .formula = "Pn = Fy Ag",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISC 360-16 D2(a)",
         .edition = "2016",
         .label = base::Label::from_memory,
         .range = "hot-rolled straps, flats and angles",
         .not_for = "rupture at holes (TN-2), bending from eccentric ends, fatigue"},
        {{&TensionYield::Ag_mm2, gross("Ag")}, {&TensionYield::Fy_MPa, yield()}},
        &tension_yield_formula};
    return c;
}

template <> const Clause<TensionRupture>& clause<TensionRupture>()
{
    static const Clause<TensionRupture> c{
        {.id = "TN-2",
         .title = "Tension member, rupture at holes",
         .formula = "Pn = Fu U An, An = Ag - n (dh + 1.6 mm) t",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISC 360-16 D2(b), D3",
         .edition = "2016",
         .label = base::Label::from_memory,
         .range = "holes in one line across the section; U = 1 for a flat bar, 0.60 for an angle by one leg with two or three bolts",
         .not_for = "staggered holes, an angle on a single bolt, block shear, fatigue"},
        {{&TensionRupture::Ag_mm2, gross("Ag")},
         {&TensionRupture::t_mm, {.name = "t", .unit = "mm", .meaning = "thickness at the hole", .lower = 0.5, .upper = 40}},
         {&TensionRupture::n, {.name = "n", .unit = "-", .meaning = "holes across the section", .choices = {0, 1, 2, 3, 4}}},
         {&TensionRupture::dh_mm, {.name = "dh", .unit = "mm", .meaning = "hole diameter (0 without)", .lower = 0, .upper = 60}},
         {&TensionRupture::U, {.name = "U", .unit = "-", .meaning = "shear lag factor", .lower = 0, .upper = 1, .lower_open = true}},
         {&TensionRupture::Fu_MPa, {.name = "Fu", .unit = "MPa", .meaning = "tensile strength", .lower = 200, .upper = 850}}},
        &tension_rupture_formula};
    return c;
}

template <> const Clause<Compression>& clause<Compression>()
{
    static const Clause<Compression> c{
        {.id = "BC-1",
         .title = "Compression member, flexural buckling",
         .formula = "Pn = Fcr A, Fcr = 0.658^(Fy/Fe) Fy up to Lc/r = 4.71 (E/Fy)^0.5, 0.877 Fe above; one-leg angle: Lc/r = 72 + 0.75 L/r or 32 + 1.25 L/r",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISC 360-16 E3, E5",
         .edition = "2016",
         .label = base::Label::from_memory,
         .range = "Lc/r up to 200, legs not slender (b/t up to 0.45 (E/Fy)^0.5); by one leg: equal legs, same leg at both ends, welded or two bolts, "
                  "no load between (conditions read)",
         .not_for = "slender legs, flexural-torsional buckling of open sections, a bent or one-bolt brace, aluminium"},
        {{&Compression::A_mm2, gross("A")},
         {&Compression::r_mm,
          {.name = "r", .unit = "mm", .meaning = "radius of gyration: least one; by one leg: axis parallel to the leg", .lower = 0, .lower_open = true}},
         {&Compression::L_mm, {.name = "L", .unit = "mm", .meaning = "length between the ends' work points", .lower = 0, .upper = 20000}},
         {&Compression::b_over_t, {.name = "b_t", .unit = "-", .meaning = "widest leg, width over thickness (0 for a solid bar)", .lower = 0, .upper = 100}},
         {&Compression::Fy_MPa, yield()},
         {&Compression::E_MPa, {.name = "E", .unit = "MPa", .meaning = "modulus of elasticity, steel", .lower = 190000, .upper = 215000}},
         {&Compression::ends,
          {.name = "ends",
           .unit = "-",
           .meaning = "0 force along the centroid, 1 equal angle held by one leg",
           .choices = {loaded_concentrically, angle_loaded_by_one_leg}}}},
        &compression_formula};
    return c;
}

base::Resistance tension_yield(const TensionYield& in) { return resistance(in); }
base::Resistance tension_rupture(const TensionRupture& in) { return resistance(in); }
base::Resistance compression(const Compression& in) { return resistance(in); }

const base::Card& tension_yield_card() { return clause<TensionYield>().card(); }
const base::Card& tension_rupture_card() { return clause<TensionRupture>().card(); }
const base::Card& compression_card() { return clause<Compression>().card(); }

} // namespace thinskin::strength
