#pragma once
#include "document/edit.h"
#include "document/units.h"
#include "model/case.h"

#include <array>
#include <string>
#include <vector>

namespace thinskin::gui {

using Vec3 = std::array<double, 3>;

enum class HandleKind { fastener, foot, end_fastener, bracket, bracket_leg_end, arm, brace, mount, angle, angle_end, rib_end, plate, plate_corner, board, board_corner, strap_end, item, item_centre, gauge, latch, rest, hinge, force, mass, no_drill };

/// A thing on the drawing that can be taken hold of. Plain values: it may outlive the case it was made from.
struct Handle {
    std::string id;                      ///< stable while nothing is added or removed: "brackets[0].fasteners[1]"
    HandleKind kind = HandleKind::fastener;
    std::string name;                    ///< as the drawing and the margins call it: "R2", "upper rail"
    std::string label;                   ///< "fastener R2", "left end of upper rail": for tips and the undo list
    Vec3 at{};                           ///< mm, panel axes; elevation shows x and y, the side view z and y
    std::array<bool, 3> moves{};         ///< along x, y, z
    std::string follows;                 ///< what moves with it: "follows L2 (bracket right is a mirror of left): moving it moves both"; empty = nothing
};

/// All handles of a case, large things first, so that the last one near the pointer wins. Copies and mirrors are expanded. Needs
/// no layout: a case whose geometry cannot be is dragged right again.
[[nodiscard]] std::vector<Handle> handles(const model::Case& c);

struct Snap { bool on = true; UnitSystem units = UnitSystem::metric; };  ///< 5 mm or 1/4 in; off: 0.1 mm or 1/100 in
[[nodiscard]] double snap_step(const Snap& s);                           ///< mm
[[nodiscard]] double snapped(double mm, const Snap& s);

/// The edit that puts a handle at a place (mm, panel axes; axes it does not move along are ignored). Coordinates that do not change
/// are not written. `edit.changes` empty with `why` set: it cannot be moved so.
struct Moved {
    Edit edit;
    Vec3 to{};                           ///< where it goes, snapped
    std::string why;
    [[nodiscard]] bool ok() const { return why.empty(); }
};
/// `edit.drag` is set, so that the moves of one drag are one step; call Document::end_drag() on release. `c` may already hold
/// earlier moves of the drag.
[[nodiscard]] Moved move_to(const model::Case& c, const Handle& h, const Vec3& to, const Snap& snap);

/// One arrow key: by a step (Shift: a tenth of it), from where it is, to the next multiple of the step.
[[nodiscard]] Moved nudge(const model::Case& c, const Handle& h, int dx, int dy, int dz, const Snap& snap, bool fine = false);

/// Typed coordinates, not snapped: text for each axis ("420", "16 1/2 in"); empty = leave. The text is kept as written where the
/// coordinate stands in the file as such; a mirrored one is worked out and written in the same system.
[[nodiscard]] Moved place_at(const model::Case& c, const Handle& h, const std::array<std::string, 3>& typed_text, UnitSystem units);

/// The handle with this id in a new list; nullptr when it is gone.
[[nodiscard]] const Handle* find(const std::vector<Handle>& all, const std::string& id);

} // namespace thinskin::gui
