#pragma once
#include "layout/layout.h"

#include <string>
#include <vector>

/// A drawing as plain marks in mm of the real thing, each with the part it belongs to. No backend: report turns it into SVG,
/// a window turns it into pixels and finds the part under the pointer by it.
/// A view has two axes: right and up. Elevation: panel x and y, seen from outside. Side view: panel z and y, seen from the
/// panel's left edge, so that outside is on the right and both views share the height axis (first-angle projection).
namespace thinskin::drawing {

using layout::Point;

enum class PartKind {
    skin, frame, rib, angle, plate, board, strap, bracket, fastener, end_fixing, item, mass_centre, hinge, latch, rest, gauge, zone, load, dimension, note,
    check_strap ///< of the open door, and its end stop
};

/// What a mark belongs to; `name` as in the case file ("upper rail", "L1"), "" where there is only one of its kind.
struct Part { PartKind kind = PartKind::note; std::string name; };

/// Line types after the habits of ISO 128-2: continuous wide for visible edges, dashed narrow for hidden ones, long-dash dotted
/// for axes, long-dash double-dotted for neighbouring and moving things, continuous narrow for dimensions and leaders.
enum class Style { visible, thin, hidden, centre, phantom, dimension };

struct Line { Point a, b; Style style = Style::visible; Part part; };
struct Polyline { std::vector<Point> points; bool closed = false, filled = false; Style style = Style::visible; Part part; };
struct Circle { Point centre; double radius = 0; bool filled = false; Style style = Style::visible; Part part; };

enum class Anchor { start, middle, end };

/// `at` lies half way up the letters, at their start, middle or end. `upright`: turned by 90 degrees, read from the right.
struct Text { Point at; std::string text; double height = 25; Anchor anchor = Anchor::start; bool upright = false; Part part; };

/// A length between a and b. level: measured along the first axis, its line lies at height `at`; else along the second, its
/// line lies at `at` on the first axis.
struct Dimension { Point a, b; bool level = true; double at = 0; std::string text; double text_height = 25; Part part; };

/// What a dimension is drawn with, so that every backend draws the same: two extension lines and the dimension line, two
/// arrow heads, the text beside the line.
struct DimensionMarks { std::vector<Line> lines; std::vector<Polyline> heads; Text text; };
[[nodiscard]] DimensionMarks marks(const Dimension& d);

struct Box { double x0 = 0, y0 = 0, x1 = 0, y1 = 0; };
[[nodiscard]] bool intersect(const Box& a, const Box& b);
[[nodiscard]] Box joined(const Box& a, const Box& b);

/// Width of a letter over its height, for boxes: that of the figures of a wide upright sans-serif face (0.636), more than the
/// mean of its small letters, so that texts that do not touch here do not touch on paper. Source: engineering judgement.
inline constexpr double letter_width = 0.64;

/// The room a text takes, estimated by its number of letters. Line pitch included: 1.2 times the height.
[[nodiscard]] Box box_of(const Text& t);

/// Number of characters of UTF-8 text.
[[nodiscard]] std::size_t letters(const std::string& text);

struct View {
    std::string title;
    std::vector<Polyline> polylines;
    std::vector<Circle> circles;
    std::vector<Line> lines;
    std::vector<Dimension> dimensions;
    std::vector<Text> texts;

    /// All texts, those of the dimensions too.
    [[nodiscard]] std::vector<Text> all_texts() const;
    /// Everything, texts and dimensions too. An empty view gives an empty box.
    [[nodiscard]] Box extent() const;
};

} // namespace thinskin::drawing
