#pragma once
#include "strength/clause.h"

/// Inch bolts below 1/2 in by the table of the cold-formed clause. Stresses are on the GROSS area pi d^2/4.
/// Other grades (property classes, SAE J429): bolts.h, as judgement.
namespace thinskin::strength {

inline constexpr double grade_A307 = 307, grade_A449 = 449, grade_A354_BD = 354;
inline constexpr double threads_in_shear_plane = 0, threads_out_of_shear_plane = 1;

/// BT-2, in N: Pn = Ab Fnt, Omega 2.00; Fnt 40, 81, 101 ksi for A307, A449, A354 BD; 1/4 <= d < 1/2 in.
/// Source: AISI S100-16 J3.4, Table J3.4-1 (read in a copy made by others).
struct InchBoltTension { double d_mm, grade; };
[[nodiscard]] base::Resistance inch_bolt_tension(const InchBoltTension& in);
[[nodiscard]] const base::Card& inch_bolt_tension_card();
template <> const Clause<InchBoltTension>& clause<InchBoltTension>();

/// BV-2, in N: Pn = Ab Fnv per shear plane, Omega 2.00; threads in the plane: Fnv 24 ksi, 48 ksi, 411 MPa; out of it: 24 ksi, 457 MPa, 579 MPa.
/// Source: as BT-2.
struct InchBoltShear { double d_mm, grade, threads; };
[[nodiscard]] base::Resistance inch_bolt_shear(const InchBoltShear& in);
[[nodiscard]] const base::Card& inch_bolt_shear_card();
template <> const Clause<InchBoltShear>& clause<InchBoltShear>();

/// BI-2, in N: tension left beside a service shear V: Pn = Ab F'nt, Omega 2.00;
///   F'nt = 1.3 Fnt - 2.00 (Fnt/Fnv) V/Ab, between 0 and Fnt.  BV-2 is a check of its own.  Source: AISI S100-16 J3.4 (read in a copy made by others).
struct InchBoltTensionWithShear { double d_mm, grade, threads, V_N; };
[[nodiscard]] base::Resistance inch_bolt_tension_with_shear(const InchBoltTensionWithShear& in);
[[nodiscard]] const base::Card& inch_bolt_tension_with_shear_card();
template <> const Clause<InchBoltTensionWithShear>& clause<InchBoltTensionWithShear>();

} // namespace thinskin::strength
