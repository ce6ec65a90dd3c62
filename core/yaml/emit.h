#pragma once
#include "yaml/document.h"

namespace thinskin::yaml {

/// Writes a tree so that parse() gives the same tree back. Maps and lists that hold no comment and fit on a line
/// are written on one line ({a: 1, b: 2}); the top level is always one key a line.
[[nodiscard]] std::string emit(const Node& root, int width = 110);

/// The whole node in flow form: {a: 1, b: [2, 3]}.
[[nodiscard]] std::string one_line(const Node& n);

/// The scalar as it must stand in a file: plain where that is safe, otherwise in double quotes.
[[nodiscard]] std::string scalar_text(const std::string& text);

[[nodiscard]] Node scalar(std::string text);
[[nodiscard]] Node list();
[[nodiscard]] Node map();
void put(Node& map, std::string key, Node value);

} // namespace thinskin::yaml
