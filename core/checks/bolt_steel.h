#pragma once
#include "checks/rows.h"

namespace thinskin::checks {

/// The steel of a bolt: by the cold-formed clause's own table where it knows the bolt (inch bolts of 1/4 in to below 1/2 in of A307, A449,
/// A354 BD; threads taken as in the shear plane), else by the rule for threaded parts, as judgement.
[[nodiscard]] results::Check bolt_tension_row(Place p, const layout::Hardware& h, const std::vector<Demand>& pulls);
[[nodiscard]] results::Check bolt_shear_row(Place p, const layout::Hardware& h, const std::vector<Demand>& shears);
/// Tension beside the shear of the same load case: both in the same order, not empty.
[[nodiscard]] results::Check bolt_tension_beside_shear_row(Place p, const layout::Hardware& h, const std::vector<Demand>& pulls, const std::vector<Demand>& shears);

} // namespace thinskin::checks
