#include "app/png.h"

#include <png.h>

namespace thinskin::gui {

std::string write_png(const std::string& path, const std::vector<unsigned char>& rgb, int width, int height)
{
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    image.width = static_cast<png_uint_32>(width);
    image.height = static_cast<png_uint_32>(height);
    image.format = PNG_FORMAT_RGB;
    if (png_image_write_to_file(&image, path.c_str(), 0, rgb.data(), 0, nullptr) == 0) return path + " could not be written: " + image.message;
    return "";
}

} // namespace thinskin::gui
