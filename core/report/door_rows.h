#pragma once
#include "results/results.h"

#include <string>
#include <vector>

/// Inside report: hinge, latch, stop and check strap of each state of the door, with the direction in words.
namespace thinskin::report {

struct DoorRow { std::string place, state, load_case, words; };

/// Closed: of each place the load case with the largest force. Open at rest: every angle. On a rest: parked, hinges relieved by it. Other states of the open door: the widest
/// angle, as the size is the same at each. `all`: every row there is.
[[nodiscard]] std::vector<DoorRow> door_rows(const results::Outcome& o, bool all);

/// "Sag of the free edge 2.1 mm, of which the bare leaf made 0.9 mm ..."
[[nodiscard]] std::string door_sag_sentence(const results::DoorSag& sag);

} // namespace thinskin::report
