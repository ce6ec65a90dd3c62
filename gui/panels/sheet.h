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

inline constexpr double inch = 25.4; // mm, exact by definition

constexpr float sheet_strip_px = 40;         ///< tall, at scale 1: the strip below the views

/// What the sheet shows. Pointers live as long as the call.
struct SheetContents {
    const layout::Layout* layout = nullptr;
    const results::Outcome* outcome = nullptr;  ///< of this layout, or of an older one (stale)
    std::uint64_t version = 0;                  ///< changes whenever layout, outcome or notes change
    std::uint64_t opened = 0;                   ///< changes when another file is opened: it is fitted anew
    bool settled = false;                       ///< the file just opened has its last figures: it is fitted once more, to their words
    std::map<std::string, std::string> notes;   ///< margins at the parts, by the parts list's `checked_as`
    std::map<std::string, base::Status> statuses; ///< of the parts that have a note, for the mark before it
    std::string load_case;                      ///< whose forces and contours; empty: the load path's
    bool stale = false;                         ///< figures belong to an older state
    std::vector<std::string> trouble;           ///< why there is no result; written below the views
    std::vector<std::string> wrong;             ///< key paths or names of the parts that the errors speak of
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
    enum class Notes { whole, short_ones, none }; ///< what stands beside the parts: the less, the larger the panel in a narrow room
    /// Fills the room that is left in the current window.
    SheetEvents show(const SheetContents& c);
    void fit() { view_scale_ = 0; }
    void zoom(float factor);
    /// Where a part's handle is on the screen; x < 0: not there. For simulated input.
    [[nodiscard]] ImVec2 handle_of(const drawing::Part& part) const;
    /// Where the grip of this label was drawn last, in the view it moves in; x < 0: not there.
    [[nodiscard]] ImVec2 grip_called(const std::string& label) const;
    [[nodiscard]] float px_per_mm() const { return elevation_.px_per_mm; }
    [[nodiscard]] const Place& elevation_place() const { return elevation_; }
    [[nodiscard]] const Place& side_place() const { return side_; }

private:
    void draw_anew(const SheetContents& c);
    void contours_anew(const SheetContents& c);
    void fit_into(const SheetContents& c);
    [[nodiscard]] bool to_fit(const SheetContents& c);
    void place_views();
    void move_and_zoom(bool hovered);
    void drag(SheetEvents& e, bool hovered);
    void legend(const SheetContents& c);
    void scale_bar(UnitSystem units);
    void paper();
    void trouble(const SheetContents& c);
    void rings(const SheetContents& c);
    void peaks();
    [[nodiscard]] std::vector<drawing::Dimension> measures(const SheetContents& c) const;
    void draw_measures(const std::vector<drawing::Dimension>& all) const;
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
    /// What the scale was chosen for: it is chosen anew when the user changes one of these, and never because figures came.
    struct Fit { float wide = 0, tall = 0, letters = 0; std::uint64_t opened = 0; double panel_wide = 0, panel_tall = 0; bool dimensions = false; UnitSystem units = UnitSystem::metric; bool settled = false; bool operator==(const Fit&) const = default; };
    [[nodiscard]] Fit fit_of(const SheetContents& c) const;
    Fit fit_;
    Notes notes_ = Notes::whole;                ///< as they were when the scale was chosen
    std::size_t parts_ = 0;                     ///< of the drawing when it was fitted
    bool placed_ = false;                       ///< the views stand where they were put when they were fitted
    ImVec2 apart_{0, 0};                        ///< from the origin of the elevation to that of the side view, mm, without the gap
    float apart_scale_ = 0;                     ///< letters keep their size, so it belongs to one scale
    std::optional<SheetDrag> drag_;
    std::optional<drawing::Part> pressed_;
    std::vector<GripMark> grips_;
    std::string pressed_grip_;
    std::optional<drawing::Part> part_of_grips_;
    bool pressed_side_ = false;
    ImVec2 pressed_at_{0, 0};
};

} // namespace thinskin::gui
