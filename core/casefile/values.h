#pragma once
#include "model/case.h"

#include <string>
#include <vector>

namespace thinskin::casefile {

/// A value of a case under its key path, as text of the case file. A point or a list has one item a coordinate.
struct Value {
    std::string path;                ///< "panel.skin.thickness", "fastener_kinds[M8 bolt].hole"
    bool list = false;
    std::vector<std::string> items;  ///< one unless it is a list
};

/// Every value of a case, defaults too, in the order of the schema; without `<key>_from`, which is told by measured_from().
[[nodiscard]] std::vector<Value> case_values(const model::Case& c);

/// How a value came about: the case's word, "default", "assumed (not stated)"; empty: not a measured value.
[[nodiscard]] std::string measured_from(const model::Case& c, const std::string& path);

} // namespace thinskin::casefile
