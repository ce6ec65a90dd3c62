#pragma once
#include "layout/layout.h"

#include <optional>
#include <string>

namespace thinskin::actions {

/// What the mounted item answers to the half-sine stop of a slammed door, over the peak of the stop: AC-4, absolute acceleration, which
/// spring and damper hand on together. The load cases `slam inward` and `slam outward` hold the stop itself, on a rigidly held item.
///   lowest   largest of the mounts whose frequency lies between `from_Hz` and `to_Hz`: measured (item.natural_frequency) 15 % lower to 15 %
///            higher, of the solver half of its lowest to all of it, as it is an upper bound (judgement); no frequency: any mount
///   any      largest of all mounts with that damping: 1.77 without damping, 1.65 with 5 % (the known maximum, at f D = 0.82)
/// Damping: road.damping, else 5 %. Of one mode; what higher modes answer is no more than `any`.
/// Nothing for a door without a slam, or outside of AC-4.
struct SlamAnswer { double lowest = 0, any = 0, from_Hz = 0, to_Hz = 0; std::string words; };
/// A door that is slammed with an item on it.
[[nodiscard]] bool slams(const layout::Layout& l);
[[nodiscard]] std::optional<SlamAnswer> slam_answer(const layout::Layout& l, std::optional<double> solver_Hz);

} // namespace thinskin::actions
