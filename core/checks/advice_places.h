#pragma once
#include "layout/layout.h"
#include "results/results.h"

/// Inside checks: from a piece of advice about a row to the key of the case file that it speaks about.
namespace thinskin::checks {

/// What a piece of advice names, seen from the row it is about.
enum class At {
    section,       ///< of the member, or the plate's thickness
    gauge,         ///< from the heel to the bolt
    plate_box,
    washer, size, grade, ///< of the fastener's kind
    use,           ///< which kind the fastener is of
    hole,          ///< the fastener's place
    fasteners,     ///< the list it stands in
    sheet,         ///< what is thin: a plate on the skin, or the frame's inner sheet
    joint, arm, brace, brace_foot, mounts, ///< of the bracket
    first_leg,     ///< upper end of the first bracket's leg
    mass, item_place, tether, latches, new_angle, first_angle, frame_sheet, frame_section
};

/// Key paths with names in brackets; what the row has no place for is left out.
[[nodiscard]] std::vector<std::string> places_of(const std::vector<At>& all, const results::Check& c, const layout::Layout& l);

/// The keys that the words of a Check::lift_with name: "fastener_kinds.4.8 screw.grade" -> "fastener_kinds[4.8 screw].grade".
[[nodiscard]] std::vector<std::string> places_to_lift(const std::string& lift_with, const layout::Layout& l);

} // namespace thinskin::checks
