#pragma once
#include <optional>
#include <string_view>

namespace thinskin::catalogue {

/// A range of thickness in mm as the data writes it: "< 3", "<= 16", "3 .. 16" (both limits in), "> 16 .. 40" (16 out).
struct ThicknessRange {
    double lower = 0, upper = 0;
    bool lower_in = false, upper_in = true;
    [[nodiscard]] bool contains(double t) const
    {
        return (t > lower || (lower_in && t == lower)) && (t < upper || (upper_in && t == upper)); // NaN: false
    }
};
[[nodiscard]] std::optional<ThicknessRange> read_thickness_range(std::string_view text);

} // namespace thinskin::catalogue
