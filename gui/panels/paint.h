#pragma once
#include "drawing/contours.h"
#include "drawing/drawing.h"

#include <imgui.h>

#include <map>
#include <optional>
#include <string>
#include <vector>

/// core/drawing's marks in pixels: the same lists as in the record. Line widths, dashes and letters keep their size in pixels at
/// every zoom.
namespace thinskin::gui {

/// From mm of a view to pixels of the screen: x to the right, y up becomes y down.
struct Place {
    ImVec2 origin;              ///< where the view's (0, 0) is
    float px_per_mm = 1;
    [[nodiscard]] ImVec2 of(drawing::Point p) const { return {origin.x + static_cast<float>(p.x) * px_per_mm, origin.y - static_cast<float>(p.y) * px_per_mm}; }
    [[nodiscard]] drawing::Point back(ImVec2 p) const { return {static_cast<double>((p.x - origin.x) / px_per_mm), static_cast<double>((origin.y - p.y) / px_per_mm)}; }
};

enum class Manner {
    full,                       ///< as drawn
    greyed,                     ///< an older state's lines, figures greyed
    ghost,                      ///< outlines of what was accepted last, no letters
};

/// The mark before a callout, by what the checks call its part and by its part on the drawing.
using Marks = std::map<std::pair<drawing::PartKind, std::string>, base::Status>;

struct PaintOptions {
    Manner manner = Manner::full;
    std::optional<drawing::Part> chosen, pointed;
    bool letters = true;
    bool loads = true;
    const Marks* marks = nullptr;
    std::vector<drawing::Box> no_letters_in = {}; ///< what is written there later lies over the view's own texts
};

void paint(const drawing::View& v, const Place& place, const PaintOptions& options);

/// Bands and limits of equal movement; strength by amount, orange outward, blue inward.
void paint(const drawing::Contours& c, const Place& place);
/// Colour of a band: k >= 0 outward.
[[nodiscard]] ImU32 band_colour(const drawing::Contours& c, int band);

/// The part nearest to the pointer, within reach (pixels): small marks before large ones; the inside of the item counts when nothing else is near.
[[nodiscard]] std::optional<drawing::Part> part_at(const drawing::View& v, const Place& place, ImVec2 pointer, float reach);

/// Letters at any place, upright ones turned by a quarter, with a breath of paper behind them.
void lettering(const drawing::Text& t, const Place& place, ImU32 colour);

[[nodiscard]] bool same(const std::optional<drawing::Part>& a, const drawing::Part& b);

} // namespace thinskin::gui
