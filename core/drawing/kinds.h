#pragma once
#include "layout/layout.h"

#include <string>

/// Inside drawing: small questions that several files ask.
namespace thinskin::drawing {

inline constexpr double pi = 3.14159265358979323846;

[[nodiscard]] inline std::string type_of(layout::Hardware::Type t)
{
    switch (t) {
    case layout::Hardware::Type::bolt: return "bolt";
    case layout::Hardware::Type::screw: return "screw";
    case layout::Hardware::Type::rivet: return "rivet";
    case layout::Hardware::Type::insert: return "insert";
    }
    return "bolt";
}

/// "bolt", "screw", "rivet", "insert", "wood_screw" of a fastener kind; "bolt" when the case does not name it.
[[nodiscard]] inline std::string type_of(const layout::Layout& l, const std::string& kind)
{
    if (l.source)
        for (const auto& k : l.source->fastener_kinds)
            if (k.name == kind && !k.type.empty()) return k.type;
    return "bolt";
}

} // namespace thinskin::drawing
