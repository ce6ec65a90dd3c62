#pragma once
#include "strength/clause.h"

/// Thin-walled ribs: hats, channels, boxes and angles of sheet on a skin.
namespace thinskin::strength {

/// RB-1, in MPa: largest stress in a thin-walled rib, Fn = rho Fy, factor 1.67: the whole section is taken down by what its widest
/// wall loses to buckling (safe side: only the pressed wall does).
///   rho = (1 - 0.22/l)/l above l = 0.673, l = 1.052 (w/t) (Fy/(k E))^0.5; k = 4 between two edges, 0.43 with a free edge.
struct ThinRib { double w_held_mm, w_free_mm, t_mm, Fy_MPa, E_MPa; };
template <> const Clause<ThinRib>& clause<ThinRib>();

} // namespace thinskin::strength
