#pragma once
#include "strength/clause.h"

/// Fillet welds, per millimetre of length; the weld group is the caller's matter.
namespace thinskin::strength {

/// WE-1, in N/mm: rn = 0.60 FEXX 0.707 w, Omega 2.00; w leg size.  Source: AISC 360-16 J2.4 (from memory).
struct FilletThroat { double w_mm, FEXX_MPa; };
[[nodiscard]] base::Resistance fillet_throat(const FilletThroat& in);
[[nodiscard]] const base::Card& fillet_throat_card();
template <> const Clause<FilletThroat>& clause<FilletThroat>();

inline constexpr double weld_along_force = 0, weld_across_force = 1;

/// WE-2, in N/mm: sheet beside a fillet weld of length L, t 0.61 .. 4.76 mm.
///   across the force: t Fu, Omega 2.35
///   along the force, L/t < 25: (1 - 0.01 L/t) t Fu, Omega 2.55; L/t >= 25: 0.75 t Fu, Omega 3.05 (the factor jumps)
/// Source: AISI S100-16 J2.5 (from memory).
struct SheetBesideFillet { double t_mm, Fu_MPa, L_mm, direction; };
[[nodiscard]] base::Resistance sheet_beside_fillet(const SheetBesideFillet& in);
[[nodiscard]] const base::Card& sheet_beside_fillet_card();
template <> const Clause<SheetBesideFillet>& clause<SheetBesideFillet>();

} // namespace thinskin::strength
