#pragma once
#include <string>
#include <vector>

namespace thinskin::gui {

/// RGB pixels, first row on top, as a PNG file. Empty = written, else what went wrong.
[[nodiscard]] std::string write_png(const std::string& path, const std::vector<unsigned char>& rgb, int width, int height);

} // namespace thinskin::gui
