#pragma once
#include "document/units.h"
#include "handles/handles.h"
#include "panels/paint.h"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace thinskin::gui {

/// What the sheet shows. Pointers live as long as the call.
struct SheetContents {
    const layout::Layout* layout = nullptr;
    const results::Outcome* outcome = nullptr;  ///< of this layout, or of an older one (stale)
    std::uint64_t version = 0;                  ///< changes whenever layout, outcome or notes change
    std::map<std::string, std::string> notes;   ///< margins at the parts, by the parts list's `checked_as`
    std::map<std::string, base::Status> statuses; ///< of the parts that have a note, for the mark before it
    std::string load_case;                      ///< whose forces and contours; empty: the load path's
    bool stale = false;                         ///< figures belong to an older state
    std::vector<std::string> trouble;           ///< why there is no result; written across the sheet
    const layout::Layout* ghost = nullptr;      ///< the last accepted state
    std::optional<drawing::Part> chosen;
    std::vector<Handle> grips;                  ///< points of the chosen part that can be dragged by themselves
    UnitSystem units = UnitSystem::metric;      ///< of the chosen part's measures
    bool contours = true, forces = true, labels = true;
    bool dimensions = false;                    ///< all running dimensions; else only those of what is chosen
};

/// A drag on the sheet, in mm of the view it began in. grip: id of the grip that was taken; empty: the part itself.
struct SheetDrag { drawing::Part part; bool side = false; drawing::Point from, to; bool began = false, ended = false; std::string grip; };

struct SheetEvents {
    std::optional<drawing::Part> chosen;        ///< a part was clicked
    bool chosen_nothing = false;
    std::optional<drawing::Part> pointed;
    std::string pointed_grip;                   ///< what it is called
    std::optional<SheetDrag> drag;
};

/// The paper in the middle: elevation and side view on one height axis, scale bar, contours with their legend. Keeps zoom and place.
class Sheet {
public:
    /// Fills the room that is left in the current window.
    SheetEvents show(const SheetContents& c);
    void fit() { fitted_ = true; view_scale_ = 0; }
    void zoom(float factor);
    /// Where a part's handle is on the screen; x < 0: not there. For simulated input.
    [[nodiscard]] ImVec2 handle_of(const drawing::Part& part) const;
    /// Where the grip of this label was drawn last, in the view it moves in; x < 0: not there.
    [[nodiscard]] ImVec2 grip_called(const std::string& label) const;
    [[nodiscard]] float px_per_mm() const { return elevation_.px_per_mm; }

private:
    void draw_anew(const SheetContents& c);
    void contours_anew(const SheetContents& c);
    void fit_into(const SheetContents& c);
    void place_views();
    void move_and_zoom(bool hovered);
    void drag(SheetEvents& e, bool hovered);
    void legend(const SheetContents& c);
    void scale_bar(UnitSystem units);
    void paper();
    void trouble(const SheetContents& c);
    void peaks();
    void measure(const SheetContents& c);
    [[nodiscard]] std::optional<drawing::Point> centre_of(const drawing::Part& part) const;

    struct GripMark { std::string id, label; bool side = false; ImVec2 at; };
    void place_grips(const SheetContents& c);
    void draw_grips(const std::string& pointed) const;
    [[nodiscard]] const GripMark* grip_at(ImVec2 p) const;

    struct Key { std::uint64_t version = 0; float scale = 0; std::string load_case; bool contours = true, dimensions = false; UnitSystem units = UnitSystem::metric; bool operator==(const Key&) const = default; };
    Key key_;
    drawing::Drawing drawing_, ghost_;
    drawing::Contours contours_;
    Place elevation_, side_;
    ImVec2 lo_{0, 0}, hi_{0, 0};               ///< room for the views, pixels
    float view_scale_ = 0;                      ///< pixels a mm
    ImVec2 shift_{0, 0};                        ///< moved by hand, pixels
    bool fitted_ = true, below_ = false;        ///< below: the side view lies under the elevation
    ImVec2 fitted_room_{0, 0};
    std::uint64_t fitted_version_ = 0;
    std::optional<SheetDrag> drag_;
    std::optional<drawing::Part> pressed_;
    std::vector<GripMark> grips_;
    std::string pressed_grip_;
    std::optional<drawing::Part> part_of_grips_;
    bool pressed_side_ = false;
    ImVec2 pressed_at_{0, 0};
};

} // namespace thinskin::gui
