#pragma once
#include "base/card.h"

namespace thinskin::statics {

/// ST-1 hinge couple in plane, ST-2 out of plane, ST-3 latch or stop, ST-4 lever rule of a bolt row, ST-5 end reaction of a
/// simple beam, ST-6 polar bolt group, ST-7 prying bound, ST-8 brace, ST-9 hinge index, ST-10 inertia about the hinge line, ST-11 .. ST-14 open door, ST-15 rest.
[[nodiscard]] const std::vector<base::Card>& cards();

} // namespace thinskin::statics
