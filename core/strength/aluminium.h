#pragma once
#include "strength/clause.h"

/// Aluminium parts under allowable strength: the US aluminium design manual (ADM) of 2020, parts of it read in a copy made by others.
/// Parts without welds: beside a weld most tempers lose a third to a half, and nothing here holds there.
namespace thinskin::strength {

/// AL-1, in N: bolt or rivet bearing on an aluminium ply: Rn = min(e, 2 d) t Ftu, Omega 1.95.
///   e from the hole's centre to the edge, along the force; tear-out is in it.
struct AluminiumBearing { double d_mm, t_mm, Ftu_MPa, e_mm; };
template <> const Clause<AluminiumBearing>& clause<AluminiumBearing>();

/// AL-2, in N: screw in shear where a sheet is aluminium, Omega 3.00. Least of
///   min(e1, 2 d) t1 Fu1, min(e2, 2 d) t2 Fu2, 4.2 (t2^3 d)^0.5 Fu2 (tilting); 1 under the head, 2 at the tip.
struct AluminiumScrewShear { double d_mm, t1_mm, t2_mm, Fu1_MPa, Fu2_MPa, e1_mm, e2_mm; };
template <> const Clause<AluminiumScrewShear>& clause<AluminiumScrewShear>();

/// AL-3, in N: screw pulled out of aluminium: Rn = k Ks d t Fty, Omega 3.00; Ks 1.01 below 2.03 mm and 1.20 from there on;
///   k 0.60 and 0.85, the least ratio of laboratory values to the formula.  t 0.97 .. 3.18 mm.  Jump at 2.03 mm.
struct AluminiumPullOut { double d_mm, t_mm, Fty_MPa; };
template <> const Clause<AluminiumPullOut>& clause<AluminiumPullOut>();

/// AL-4, in N: head or washer pulled through aluminium, Omega 3.00: the smaller of t (D - dh) Ftu and (1 + 1.7 t/D) D t Fty,
///   both forms are printed; D at most 15.9 mm; half of it where the pull is on one side of the head (eccentric 1).
struct AluminiumPullOver { double t_mm, Ftu_MPa, Fty_MPa, D_mm, dh_mm, eccentric; };
template <> const Clause<AluminiumPullOver>& clause<AluminiumPullOver>();

/// AL-5, in N: punching of a thick aluminium ply: Rn = 0.6 pi dm t Ftu, factor 3.00 (judgement).  t >= 3 mm.
struct AluminiumPunching { double t_mm, Ftu_MPa, dm_mm; };
template <> const Clause<AluminiumPunching>& clause<AluminiumPunching>();

/// AL-6, in N mm: bending of an equal-leg aluminium angle about an axis parallel to a leg, no restraint, toe in compression,
///   Omega 1.65: least of leg buckling and lateral-torsional buckling, on 0.80 S.
struct AluminiumAngleBending { double b_mm, t_mm, Sx_mm3, Fcy_MPa, E_MPa, Lb_mm; };
template <> const Clause<AluminiumAngleBending>& clause<AluminiumAngleBending>();

/// AL-7, in N: aluminium in compression, Omega 1.65: buckling curve of tempers T5 to T9 (aged 1) or of all others (aged 0);
///   legs of an angle buckle together with it (b_t > 0): the slendernesses add as squares (safe side).
struct AluminiumCompression { double A_mm2, r_mm, L_mm, b_t, Fcy_MPa, E_MPa, aged; };
template <> const Clause<AluminiumCompression>& clause<AluminiumCompression>();

/// AL-8, in N: aluminium in tension: the smaller of Fty A/1.65 and Ftu U (A - n dh t)/1.95.
struct AluminiumTension { double A_mm2, t_mm, n, dh_mm, U, Fty_MPa, Ftu_MPa; };
template <> const Clause<AluminiumTension>& clause<AluminiumTension>();

} // namespace thinskin::strength
