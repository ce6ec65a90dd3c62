#pragma once
#include "checks/checks.h"

namespace thinskin::checks {

/// What tires in this case, each with its stress per g and its category; those that cannot be judged carry the reason.
///   threads of bolts      tension, prying included, on the stress area; 36: prying and bending cannot be excluded
///   edges of sheet holes  plies under 3 mm: shear of the fastener on the net width 3 d - hole; 36 stands in for a test
///   the skin              its largest stress on either face outside washers; 36 stands in for a test
///   arm roots             weld throat 36; the arm beside the weld 56
///   strap ends            net section at the holes; 50, under 3 mm 36
[[nodiscard]] std::vector<results::Life> fatigue_details(const Demands& d);

} // namespace thinskin::checks
