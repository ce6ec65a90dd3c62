#pragma once
#include "fem/types.h"

namespace thinskin::fem {

/// Unsupported dofs with the same neighbours are one group: the symbolic work is done on groups, about a sixth of the dofs.
struct Groups {
    std::vector<std::vector<int>> dofs;       ///< per group, ascending
    std::vector<std::vector<int>> neighbours; ///< per group, ascending, itself left out
};
[[nodiscard]] Groups group_dofs(const Sparse& K, const std::vector<char>& supported);

/// Supernodes over groups in elimination order; by analyse(): approximate minimum degree, then postorder of the elimination tree.
struct Symbolic {
    std::vector<int> order;                   ///< per place: group
    std::vector<int> first;                   ///< per supernode: first place; one more entry closes the last
    std::vector<std::vector<int>> below;      ///< per supernode: later places touched
    std::vector<int> parent;                  ///< per supernode, -1 at a root
};
[[nodiscard]] Symbolic analyse(const Groups& groups);
/// The same by nested dissection of the places where the groups lie, one a group: for grids, in a third of the time and with larger
/// blocks. Any finite spots give a right order, good ones a fast factor. Throws std::invalid_argument when they are not one a group.
[[nodiscard]] Symbolic dissect(const Groups& groups, const std::vector<Spot>& spots);

} // namespace thinskin::fem
