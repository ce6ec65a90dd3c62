#pragma once
#include "strength/clause.h"

/// Arms, braces, straps and frame boxes.
namespace thinskin::strength {

/// TN-1, in N: Pn = Fy Ag, Omega 1.67.  Source: AISC 360-16 D2.
struct TensionYield { double Ag_mm2, Fy_MPa; };
[[nodiscard]] base::Resistance tension_yield(const TensionYield& in);
[[nodiscard]] const base::Card& tension_yield_card();
template <> const Clause<TensionYield>& clause<TensionYield>();

/// TN-2, in N: Pn = Fu U An, An = Ag - n (dh + 1.6 mm) t, Omega 2.00.  Source: AISC 360-16 D2, D3.
///   n holes across the section (0 = none, then An = Ag);  U = 1 flat bar, 0.60 angle by one leg with 2-3 bolts.
struct TensionRupture { double Ag_mm2, t_mm, n, dh_mm, U, Fu_MPa; };
[[nodiscard]] base::Resistance tension_rupture(const TensionRupture& in);
[[nodiscard]] const base::Card& tension_rupture_card();
template <> const Clause<TensionRupture>& clause<TensionRupture>();

inline constexpr double loaded_concentrically = 0, angle_loaded_by_one_leg = 1;

/// BC-1, in N: flexural buckling, Omega 1.67.  Lc/r <= 200, legs not slender (b/t <= 0.45 (E/Fy)^0.5), else not covered.
///   ends = 0: Lc/r = L/r, r the LEAST radius of gyration (an angle: iv)
///   ends = 1: equal angle by one leg (E5): r about the axis parallel to the leg;
///             L/r <= 80: Lc/r = 72 + 0.75 L/r, else 32 + 1.25 L/r
/// Source: AISC 360-16 E3, E5. b_over_t = 0 for a solid bar.
struct Compression { double A_mm2, r_mm, L_mm, b_over_t, Fy_MPa, E_MPa, ends; };
[[nodiscard]] base::Resistance compression(const Compression& in);
[[nodiscard]] const base::Card& compression_card();
template <> const Clause<Compression>& clause<Compression>();
/// Lc/r as BC-1 uses it; and Fcr of E3 in MPa for a slenderness (no range check).
[[nodiscard]] double effective_slenderness(const Compression& in);
[[nodiscard]] double flexural_buckling_stress(double slenderness, double Fy_MPa, double E_MPa);

/// IA-1, "-": axial force with bending about two axes: P/Pc + Mx/Mcx + My/Mcy <= 1; the ratios are utilisations >= 0.
/// The capacity is 1; the demand is interaction_sum().  Source: linear form of AISC 360-16 H2.
struct Interaction { double axial, bending_x, bending_y; };
[[nodiscard]] base::Resistance interaction(const Interaction& in);
[[nodiscard]] const base::Card& interaction_card();
template <> const Clause<Interaction>& clause<Interaction>();
[[nodiscard]] double interaction_sum(const Interaction& in);

/// BX-1, in N mm: closed cold-formed box, initiation of yielding on the effective section, Omega 1.67.
///   compression flange b wide outside: w = b - 2t, lambda = (Fy/Fcr)^0.5, Fcr = 4 pi^2 E/(12 (1 - 0.3^2)) (t/w)^2,
///   rho = (1 - 0.22/lambda)/lambda above 0.673; webs (depth h outside) must be fully effective, else not covered.
/// w/t 2 .. 500, web flat/t 2 .. 200. Corners rounded to 2t outside, seam as strong as the sheet.
/// Source: AISI S100-16 F3.1 with Appendix 1 (from memory).
struct BoxBending { double h_mm, b_mm, t_mm, Fy_MPa, E_MPa; };
[[nodiscard]] base::Resistance box_bending(const BoxBending& in);
[[nodiscard]] const base::Card& box_bending_card();
template <> const Clause<BoxBending>& clause<BoxBending>();

/// CF-1, in N mm: solid rectangle, Mn = My = Fy b h^2/6, Omega 1.67; h in the direction of bending. Bent the strong way (h > b), with
/// s = Lb h/b^2: at most (1.52 - 0.274 s Fy/E) My up to s = 1.9 E/Fy, 1.9 E/(s Fy) My beyond.  Source: AISC 360-16 F11, elastic part only.
struct BarBending { double b_mm, h_mm, Lb_mm, Fy_MPa, E_MPa; };
[[nodiscard]] base::Resistance bar_bending(const BarBending& in);
[[nodiscard]] const base::Card& bar_bending_card();
template <> const Clause<BarBending>& clause<BarBending>();

} // namespace thinskin::strength
