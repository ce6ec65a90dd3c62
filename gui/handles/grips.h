#pragma once
#include "handles/handles.h"

/// Inside handles: a handle with the coordinates of the file that it moves.
namespace thinskin::gui {

/// When the handle moves by d along `axis`, the length at `path` becomes value + sign d.
struct Binding {
    int axis = 0;
    std::string path;
    double value = 0, sign = 1;
    UnitSystem written_in = UnitSystem::metric;
};
[[nodiscard]] Binding bind(int axis, std::string path, const model::Quantity& q, double sign = 1);

struct Grip { Handle handle; std::vector<Binding> bindings; };

using Grips = std::vector<Grip>;

void bracket_grips(const model::Case& c, Grips& out);
void angle_grips(const model::Case& c, Grips& out);
void member_grips(const model::Case& c, Grips& out);   ///< ribs, straps, plates, boards
void other_grips(const model::Case& c, Grips& out);    ///< item, door, gauges, loads

/// Adds a handle that moves along the axes of its bindings.
Grip& add(Grips& out, HandleKind kind, std::string id, std::string name, std::string label, const Vec3& at, std::vector<Binding> bindings);

/// Bindings of a point of the file to the axes 0, 1 (and 2).
[[nodiscard]] std::vector<Binding> of_point(const std::string& path, const model::Point2& p);
[[nodiscard]] std::vector<Binding> of_point(const std::string& path, const model::Point3& p);
void join(std::vector<Binding>& to, const std::vector<Binding>& more);

} // namespace thinskin::gui
