#pragma once
#include "strength/clause.h"

/// Stress in the skin away from fasteners, and shear flow in its edges.
namespace thinskin::strength {

/// SK-1, in MPa: von Mises stress of the sheet against Fy, factor 1.67 (judgement).
struct SheetStress { double Fy_MPa; };
[[nodiscard]] base::Resistance sheet_stress(const SheetStress& in);
[[nodiscard]] const base::Card& sheet_stress_card();
template <> const Clause<SheetStress>& clause<SheetStress>();

/// SF-1, in N/mm: shear flow q = 0.6 Fy t, factor 1.67. Shear buckling is NOT included.
/// Source: yield branch of AISI S100-16 G2.1 (from memory; the clause's own factor is 1.60).
struct ShearFlow { double t_mm, Fy_MPa; };
[[nodiscard]] base::Resistance shear_flow(const ShearFlow& in);
[[nodiscard]] const base::Card& shear_flow_card();
template <> const Clause<ShearFlow>& clause<ShearFlow>();

} // namespace thinskin::strength
