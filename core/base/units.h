#pragma once
#include "base/quantity.h"

#include <optional>
#include <string>
#include <string_view>

namespace thinskin::base {

/// A unit as an exact ratio to the inner unit: inner = number * numerator / denominator.
struct Unit {
    double numerator = 1;
    double denominator = 1;
};

/// Blanks trimmed and folded, "·" and the other multiplication dots written as "*".
[[nodiscard]] std::string tidy_unit(std::string_view text);

/// The unit of a tidy text for one dimension; empty = this dimension has no such unit.
[[nodiscard]] std::optional<Unit> find_unit(std::string_view tidy, Dimension d);

/// Some dimension that does have this unit; empty = no such unit at all.
[[nodiscard]] std::optional<Dimension> dimension_of(std::string_view tidy);

/// Units of a dimension as they are written: "mm, cm, m, km, in, ft".
[[nodiscard]] std::string_view unit_list(Dimension d);

/// Thickness in mm of US steel sheet, Manufacturers' Standard gauge 10 to 26, bare steel.
/// Source: printed gauge table of a fastener guide, metric column rounded to 0.001 mm; published (read).
[[nodiscard]] std::optional<double> steel_gauge_mm(int gauge);

/// Why a gauge of another system is refused, for "galv ga", "swg", "awg", "al ga", "gauge" and their kin; empty = not a gauge.
[[nodiscard]] std::string other_gauge(std::string_view tidy);

} // namespace thinskin::base
