#pragma once
#include "drawing/primitives.h"
#include "results/results.h"

#include <functional>
#include <map>
#include <string>
#include <vector>

namespace thinskin::drawing {

/// "420" or "420.5".
[[nodiscard]] std::string millimetres(double v);
/// "722 N".
[[nodiscard]] std::string newtons(double v);

/// One line of the parts list: the number written at the part, what it is in words, where its margin is looked up.
struct LegendRow {
    int number = 0;
    Part part;
    std::string name;          ///< "lower rail"
    std::string text;          ///< "angle 40x40x4, S235, inside, from [10, 420] to [730, 420] mm; both ends tied to the frame"
    std::string checked_as;    ///< the part as the checks call it; empty: nothing is checked by that name
};

/// numbers: each part's number at the part, with what is noted about it, and the parts list tells what it is (paper).
/// callouts: name and note of the parts that have a note, in a column beside the elevation, in the order of their heights (window).
enum class Labels { numbers, callouts };

/// A figure written at a point of the elevation.
struct PointNote { Point at; std::string text; };

/// How lengths in mm and forces in N are written at dimensions and arrows; the caller chooses the units.
struct Figures {
    std::function<std::string(double)> length = millimetres, force = newtons;
};

struct Options {
    double text_height = 25;   ///< mm of the real thing: 2.5 mm on paper at a scale of 1 : 10
    /// Written beside the number of a part, by `LegendRow::checked_as`: "-0.20 fail". The caller rounds.
    std::map<std::string, std::string> notes;
    bool every_dimension = true; ///< false: only the panel's width and height, for a window that measures what is chosen
    Labels labels = Labels::numbers; ///< with callouts a fastener's name that finds no place near it is left out
    std::vector<PointNote> at_points = {};
    Figures figures = {};
    std::string load_case = {}; ///< whose forces are drawn; empty: that of the load path
};

struct Drawing {
    View elevation, side;
    std::vector<LegendRow> legend;
};

/// Elevation, side view and parts list of a case. With an outcome the forces of its load path's load case are on the side view.
/// Texts do not overlap each other as long as there is room for them; places are found in a fixed order, so the same case
/// gives the same drawing. What the layout does not resolve (plates, boards, what is fixed to them) is drawn as the case gives it. Errors: none; a layout of no size gives empty views.
[[nodiscard]] Drawing draw(const layout::Layout& l, const results::Outcome* outcome, const Options& options);

/// Radius round hinges and latches where no hole is drilled, as layout::resolve refuses it.
inline constexpr double edge_zone_radius = 150;

} // namespace thinskin::drawing
