#pragma once
#include <string_view>

namespace thinskin::report {

/// Same as in the top CMakeLists.txt; tests/layout_test holds them equal.
inline constexpr std::string_view tool_name = "thinskin";
inline constexpr std::string_view tool_version = "0.1.0";
/// Number of the result file's format; grows when a key changes its meaning, not when one is added.
inline constexpr int result_format = 1;

} // namespace thinskin::report
