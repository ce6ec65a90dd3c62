#pragma once
#include "drawing/canvas.h"

/// Inside drawing: an angle section, behind the skin or as the leg of a bracket.
namespace thinskin::drawing {

/// Outline of the lying leg and the edge of the standing one.
void bar_in_elevation(Canvas& e, const Part& part, const layout::AngleBar& b, Style style);

/// A level bar shows its section; any other the rectangle it covers and, as `inner`, the edge between its legs.
void bar_from_the_side(Canvas& s, const Part& part, const layout::AngleBar& b, Style style, Style inner);

} // namespace thinskin::drawing
