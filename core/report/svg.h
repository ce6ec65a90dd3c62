#pragma once
#include "drawing/drawing.h"

#include <string>
#include <string_view>

namespace thinskin::report {

/// Text for an element or a quoted attribute of HTML and SVG: & < > " ' become entities, control characters and bytes that are
/// not UTF-8 become U+FFFD (tab and line feed stay).
[[nodiscard]] std::string escaped(std::string_view text);

/// The room on paper in mm, text height there, and what is written at the parts (drawing::Options::notes).
struct SheetSize { double width = 183, height = 205, text_height = 2.4; std::map<std::string, std::string> notes; };

struct Sheet {
    double scale = 10;          ///< drawn 1 : scale
    double side_scale = 10;     ///< of the side view: below a wide elevation there is room for a larger one
    bool stacked = false;       ///< the side view stands below the elevation: a wide panel is drawn larger that way
    drawing::Drawing drawing;
};

/// Draws a case at the largest usual scale (1, 2, 2.5, 5, 7.5, 10, ... : 1) at which both views fit, side by side on
/// one height axis or, where that lets a wide panel be drawn larger, the side view below, up to twice as large where there is room.
[[nodiscard]] Sheet draw_to_fit(const layout::Layout& l, const results::Outcome* outcome, const SheetSize& room);

/// Both views as one <svg> element, sizes in mm on paper. `caption` is its accessible name.
/// Each mark carries its part in data-part. Figures have two decimals: the same drawing gives the same bytes.
[[nodiscard]] std::string svg(const Sheet& sheet, std::string_view caption);

} // namespace thinskin::report
