#pragma once
#include "model/case.h"
#include "yaml/document.h"

#include <array>
#include <cmath>
#include <string>
#include <string_view>

/// What reader and writer must agree on beyond the schema table.
namespace thinskin::casefile {

/// In the order of model::Side.
inline constexpr std::array<std::string_view, 4> side_names = {"left", "right", "bottom", "top"};

/// Block of the schema that a frame per edge is listed under.
inline const std::string frames_block = "<frames>";

/// Ends of a member that is steeper than 45 degrees are bottom and top, otherwise left and right.
inline bool stands_upright(const model::Point2& from, const model::Point2& to)
{
    return std::abs(to.y.value - from.y.value) > std::abs(to.x.value - from.x.value);
}

inline std::array<std::string_view, 2> end_names(bool upright)
{
    if (upright) return {"bottom", "top"};
    return {"left", "right"};
}

inline bool is_per_edge(const yaml::Node& frame)
{
    for (const std::string_view side : side_names)
        if (frame.find(side)) return true;
    return false;
}

/// Keys of the block a door rests on.
template <class V> void rest_block(V& v, model::Rest& r)
{
    v("at", static_cast<model::Point2&>(r));
    v("gap", r.gap);
    v("stiffness", r.stiffness);
}

inline std::string kind_path(const std::string& name) { return "fastener_kinds[" + name + "]"; }

} // namespace thinskin::casefile
