// Notation (AISI S100-16 F3.1 and Appendix 1; AISC 360-16 F11, H2)
//   h, b, t     box: depth, width of the compression flange (outside), wall
//   w           width of the flange between webs, b - 2t   c      depth of a web between flanges, h - 2t (both taken as flat: safe)
//   lambda      (f/Fcr)^0.5     rho  effective part of w    k      plate buckling coefficient
//   yc          neutral axis from the compression face      psi    |tension|/compression at the web's ends
// The neutral axis never lies nearer the compression face than h/2, so that face yields first and no iteration is needed.
#include "strength/members.h"

#include <array>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace thinskin::strength {

namespace {

constexpr double Omega = 1.67;
constexpr double poisson = 0.3;
constexpr double fully_effective = 0.673;

double plate_slenderness(double k, double width_over_t, double f, double E)
{
    const double Fcr = k * std::numbers::pi * std::numbers::pi * E / (12 * (1 - poisson * poisson)) / (width_over_t * width_over_t);
    return std::sqrt(f / Fcr);
}

double effective_part(double lambda) { return lambda <= fully_effective ? 1.0 : (1 - 0.22 / lambda) / lambda; }

struct EffectiveBox { double yc, I; };

struct Piece { double area, depth, y; }; // y from the compression face; depth for its own inertia

/// Two flanges (the pushed one less what buckles) and two webs with square corners, less what rounding to 2t takes off the corners:
/// a corner loses (3 - 3 pi/4) t^2, with its centroid 0.188 t from the face.
EffectiveBox effective_box(const BoxBending& in, double rho)
{
    const double h = in.h_mm, t = in.t_mm, w = in.b_mm - 2 * t, c = h - 2 * t;
    const double lost = 2 * (3 - 0.75 * std::numbers::pi) * t * t; // two corners of a flange
    const std::array<Piece, 5> pieces{{{(in.b_mm - (1 - rho) * w) * t, t, t / 2},
                                       {in.b_mm * t, t, h - t / 2},
                                       {2 * c * t, c, h / 2},
                                       {-lost, 0, 0.188 * t},
                                       {-lost, 0, h - 0.188 * t}}};
    double area = 0, first_moment = 0, I = 0;
    for (const Piece& p : pieces) { area += p.area; first_moment += p.area * p.y; }
    const double yc = first_moment / area;
    for (const Piece& p : pieces) I += p.area * (p.depth * p.depth / 12 + (p.y - yc) * (p.y - yc));
    return {yc, I};
}

double web_slenderness(const BoxBending& in, double yc)
{
    const double c = in.h_mm - 2 * in.t_mm;
    const double f1 = in.Fy_MPa * (yc - in.t_mm) / yc, f2 = in.Fy_MPa * (in.h_mm - yc - in.t_mm) / yc;
    const double psi = f2 / f1;
    const double k = 4 + 2 * std::pow(1 + psi, 3) + 2 * (1 + psi); // Appendix 1, 1.1.2
    return plate_slenderness(k, c / in.t_mm, f1, in.E_MPa);
}

base::Resistance box_bending_formula(const BoxBending& in)
{
    const double w_t = in.b_mm / in.t_mm - 2, c_t = in.h_mm / in.t_mm - 2;
    if (!(w_t >= 2 && w_t <= 500)) return base::not_covered(fmt::format("w/t = {:.4g} is outside 2 .. 500", w_t));
    if (!(c_t >= 2 && c_t <= 200)) return base::not_covered(fmt::format("web flat/t = {:.4g} is outside 2 .. 200", c_t));
    const EffectiveBox box = effective_box(in, effective_part(plate_slenderness(4, w_t, in.Fy_MPa, in.E_MPa)));
    const double web = web_slenderness(in, box.yc);
    if (!(web <= fully_effective)) return base::not_covered(fmt::format("the webs buckle first (lambda = {:.4g} is above {:g})", web, fully_effective));
    return base::covered(in.Fy_MPa * box.I / box.yc, Omega);
}

base::Resistance bar_bending_formula(const BarBending& in)
{
    const double b = in.b_mm, h = in.h_mm, My = in.Fy_MPa * b * h * h / 6;
    if (!(h > b)) return base::covered(My, Omega); // bent the weak way it cannot tip
    if (!(in.Lb_mm * in.Fy_MPa <= 1.9 * b * in.E_MPa)) return base::not_covered("a bar more than 1.9 E/Fy times as long as wide"); // there the clause jumps at h = b
    const double lateral = in.Lb_mm * h / (b * b), yields = in.Fy_MPa / in.E_MPa;
    const double share = lateral <= 1.9 / yields ? 1.52 - 0.274 * lateral * yields : 1.9 / (lateral * yields); // F11-2, F11-3, Cb = 1
    return base::covered(My * std::min(1.0, share), Omega);
}

base::Resistance interaction_formula(const Interaction&) { return base::covered(1, 1); }

base::Symbol ratio(const char* name, const char* meaning) { return {.name = name, .unit = "-", .meaning = meaning, .lower = 0}; }
base::Symbol modulus() { return {.name = "E", .unit = "MPa", .meaning = "modulus of elasticity, steel", .lower = 190000, .upper = 215000}; }

} // namespace

template <> const Clause<Interaction>& clause<Interaction>()
{
    static const Clause<Interaction> c{
        {.id = "IA-1",
         .title = "Axial force with bending about two axes",
         .formula = "P/Pc + Mx/Mcx + My/Mcy <= 1",
         .unit = "-",
         .rule = "allowable_strength",
         .source = "linear form of AISC 360-16 H2",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "each ratio is a demand over its allowable capacity; the value is the limit 1 for their sum; read in a worked example of 2022, in a copy made by others",
         .not_for = "a part not covered by itself; moments that grow with the deflection (slender pushed bars)"},
        {{&Interaction::axial, ratio("P/Pc", "axial force over its capacity")},
         {&Interaction::bending_x, ratio("Mx/Mcx", "moment over its capacity, first axis")},
         {&Interaction::bending_y, ratio("My/Mcy", "moment over its capacity, second axis")}},
        &interaction_formula};
    return c;
}

template <> const Clause<BoxBending>& clause<BoxBending>()
{
    static const Clause<BoxBending> c{
        {.id = "BX-1",
         .title = "Bending of a closed box of sheet",
         .formula = "Mn = Fy Se; compression flange rho w, rho = (1 - 0.22/lambda)/lambda above lambda = 0.673, k = 4; webs fully effective",
         .unit = "N mm",
         .rule = "allowable_strength",
         .source = "AISI S100-16 F3.1, Appendix 1",
         .edition = "2016",
         .label = base::Label::from_memory,
         .range = "flange w/t from 2 to 500, web flat/t from 2 to 200, webs fully effective; corners rounded to 2 t outside; the seam as strong as the sheet; the flange's "
                  "effective width and its limit of 500 were read in a design manual, the webs' rule is from memory",
         .not_for = "open hems, spot-welded seams that slip, local crushing where a bolt pulls, torsion, holes in the compression flange"},
        {{&BoxBending::h_mm, {.name = "h", .unit = "mm", .meaning = "depth outside, in the direction of bending", .lower = 8, .upper = 300}},
         {&BoxBending::b_mm, {.name = "b", .unit = "mm", .meaning = "width of the compression flange outside", .lower = 8, .upper = 300}},
         {&BoxBending::t_mm, {.name = "t", .unit = "mm", .meaning = "core thickness of the wall", .lower = 0.4, .upper = 6}},
         {&BoxBending::Fy_MPa, {.name = "Fy", .unit = "MPa", .meaning = "yield strength", .lower = 80, .upper = 550}},
         {&BoxBending::E_MPa, modulus()}},
        &box_bending_formula};
    return c;
}

template <> const Clause<BarBending>& clause<BarBending>()
{
    static const Clause<BarBending> c{
        {.id = "CF-1",
         .title = "Bending of a solid flat or square bar",
         .formula = "Mn = My = Fy b h^2/6; the strong way (h > b), s = Lb h/b^2: at most (1.52 - 0.274 s Fy/E) My up to s = 1.9 E/Fy, 1.9 E/(s Fy) My beyond",
         .unit = "N mm",
         .rule = "allowable_strength",
         .source = "AISC 360-16 F11, elastic part only",
         .edition = "2016",
         .label = base::Label::from_memory,
         .range = "elastic: a short bar may be taken up to 1.6 times this; moment constant over Lb (Cb = 1); bent the strong way at most 1.9 E/Fy times as long as wide",
         .not_for = "holes at the greatest moment, torsion (AT-1), loads above the shear centre"},
        {{&BarBending::b_mm, {.name = "b", .unit = "mm", .meaning = "width across the bending", .lower = 1, .upper = 200}},
         {&BarBending::h_mm, {.name = "h", .unit = "mm", .meaning = "depth in the direction of bending", .lower = 1, .upper = 200}},
         {&BarBending::Lb_mm, {.name = "Lb", .unit = "mm", .meaning = "length between sideways restraints", .lower = 0, .upper = 20000}},
         {&BarBending::Fy_MPa, {.name = "Fy", .unit = "MPa", .meaning = "yield strength", .lower = 100, .upper = 700}},
         {&BarBending::E_MPa, modulus()}},
        &bar_bending_formula};
    return c;
}

double interaction_sum(const Interaction& in) { return in.axial + in.bending_x + in.bending_y; }

base::Resistance interaction(const Interaction& in) { return resistance(in); }
base::Resistance box_bending(const BoxBending& in) { return resistance(in); }
base::Resistance bar_bending(const BarBending& in) { return resistance(in); }

const base::Card& interaction_card() { return clause<Interaction>().card(); }
const base::Card& box_bending_card() { return clause<BoxBending>().card(); }
const base::Card& bar_bending_card() { return clause<BarBending>().card(); }

} // namespace thinskin::strength
