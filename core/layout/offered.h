#pragma once
#include "layout/layout.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

/// Where a further part can stand. Places are tried through resolve(), so they hold by the rules that a file is read with.
namespace thinskin::layout {

/// The parts at the places they were given, even where the geometry cannot be: for a drawing and for nothing else. None: names or
/// sections are wrong. Points at `c`, as a layout does.
[[nodiscard]] std::optional<Layout> drawable(const model::Case& c);

/// What is wrong with `after` that was not wrong with `before`, in words; empty: nothing.
[[nodiscard]] std::vector<std::string> new_errors(const model::Case& before, const model::Case& after);

/// A case with one more angle, its bolt line at this height, mm; the angle is the last of the list.
using WithAngle = std::function<model::Case(double)>;

/// Height for a further level angle: the top row of fasteners first (there it does most), the bottom row, those between, then a height
/// without a row, nearest to the middle of the rows. Clear of hinges, latch, no-drill points, openings, and of the angles, plates
/// and level ribs that lie there already. None: nothing is free.
[[nodiscard]] std::optional<double> height_for_angle(const model::Case& c, const WithAngle& with);

} // namespace thinskin::layout
