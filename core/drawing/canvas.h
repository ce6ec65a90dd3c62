#pragma once
#include "drawing/drawing.h"

#include <string>
#include <vector>

/// Inside drawing: marks are added to a view through it.
namespace thinskin::drawing {

class Canvas {
public:
    explicit Canvas(View& v) : view_(v) {}
    void line(const Part& p, Style s, Point a, Point b) { view_.lines.push_back({a, b, s, p}); }
    void path(const Part& p, Style s, std::vector<Point> points) { view_.polylines.push_back({std::move(points), false, false, s, p}); }
    void outline(const Part& p, Style s, std::vector<Point> points) { view_.polylines.push_back({std::move(points), true, false, s, p}); }
    void filled(const Part& p, Style s, std::vector<Point> points) { view_.polylines.push_back({std::move(points), true, true, s, p}); }
    void rectangle(const Part& p, Style s, Point a, Point b) { outline(p, s, corners(a, b)); }
    void circle(const Part& p, Style s, Point c, double r) { view_.circles.push_back({c, r, false, s, p}); }
    void disc(const Part& p, Point c, double r) { view_.circles.push_back({c, r, true, Style::visible, p}); }
    void cross(const Part& p, Style s, Point c, double r)
    {
        line(p, s, {c.x - r, c.y}, {c.x + r, c.y});
        line(p, s, {c.x, c.y - r}, {c.x, c.y + r});
    }
    /// A force: shaft and head, tip at `to`.
    void arrow(const Part& p, Point from, Point to, double head);
    static std::vector<Point> corners(Point a, Point b) { return {{a.x, a.y}, {b.x, a.y}, {b.x, b.y}, {a.x, b.y}}; }
    View& view() { return view_; }

private:
    View& view_;
};

/// A name or number that belongs near a point. clear: room left round the point; a leader ends there, else with a dot in the point.
struct Label { Point target; std::string text; Part part; double height = 25; double clear = 0; bool leader = false; };

/// Puts labels where they meet no text, as few lines as possible and stay near their point, within `room`. furthest: text heights
/// from the point; a label that finds no free place within is left out. 0: anywhere in the room.
void place_labels(View& v, const std::vector<Label>& labels, const Box& room, double furthest = 0);

/// One line of a column of callouts: its words, and the point of the part that its leader goes to.
struct Callout { Point target; std::string text; Part part; };

/// Callouts in a column that starts at x, as near to the heights of their points as the line pitch lets them; `mark`: room left
/// before the words for a mark of their status; none lies above `top`.
void place_callouts(View& v, std::vector<Callout> all, double x, double mark, double top, double height);

/// A position to be measured from the datum edge: value on the axis, where its extension line starts, words after the figure.
struct Ordinate { double value = 0; Point from; std::string words; Part part; };

/// Running dimensions along one edge: figures upright under the view (level) or beside it, pushed apart where they are close,
/// kinked extension lines. `at`: where the figures begin; away from the view is -1 (below, left) or +1 (right).
void place_ordinates(View& v, std::vector<Ordinate> all, bool level, double at, double away, double text_height, const Figures& figures);

/// Positions nearest to the wanted ones (ascending) with at least `pitch` between neighbours.
[[nodiscard]] std::vector<double> spread_out(const std::vector<double>& wanted, double pitch);

// What is drawn, folder of parts by folder of parts. e: elevation, s: side view.
void draw_panel(const layout::Layout& l, Canvas& e, Canvas& s, double h);
void draw_door(const layout::Layout& l, Canvas& e, Canvas& s, double h);
void draw_zones(const layout::Layout& l, Canvas& e);
void draw_reinforcement(const layout::Layout& l, Canvas& e, Canvas& s);
void draw_brackets(const layout::Layout& l, Canvas& e, Canvas& s);
void draw_fasteners(const layout::Layout& l, Canvas& e, Canvas& s, double h);
void draw_item(const layout::Layout& l, Canvas& e, Canvas& s, double h);
/// Figures of forces come back as labels: they find their place when everything is drawn.
[[nodiscard]] std::vector<Label> draw_loads(const layout::Layout& l, const results::Outcome* o, const std::string& load_case, Canvas& e, Canvas& s, double h, const Figures& figures);
void overall_dimensions(const layout::Layout& l, View& e, double h, const Figures& figures);
void dimension(const layout::Layout& l, View& e, View& s, double h, const Figures& figures);

/// Numbers and words of the parts, and where their numbers point in the two views.
struct Numbered { LegendRow row; std::vector<Point> in_elevation, in_side; };
[[nodiscard]] std::vector<Numbered> parts_list(const layout::Layout& l);
/// Names of fasteners, hinges, latches, gauges at their places.
[[nodiscard]] std::vector<Label> names(const layout::Layout& l, double h);

} // namespace thinskin::drawing
