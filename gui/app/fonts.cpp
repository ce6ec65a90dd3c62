#include "app/fonts.h"

#include <cmath>
#include <imgui.h>
#include <imgui_freetype.h>

// Written by CMake: the font files that were found; begin == end where one is not installed.
extern "C" {
extern const char thinskin_font_plain_begin[], thinskin_font_plain_end[];
extern const char thinskin_font_bold_begin[], thinskin_font_bold_end[];
extern const char thinskin_font_lettering_begin[], thinskin_font_lettering_end[];
extern const char thinskin_font_fallback_begin[], thinskin_font_fallback_end[];
extern const char thinskin_font_fallback_bold_begin[], thinskin_font_fallback_bold_end[];
}

namespace thinskin::gui {
namespace {

struct File { const char *begin, *end; };

/// Latin, Greek, dashes and quotes, superscripts, arrows, mathematical signs, geometric shapes, ticks.
constexpr ImWchar ranges[] = {0x20, 0x17f, 0x2c6, 0x2dd, 0x370, 0x3ff, 0x2010, 0x205e, 0x2070, 0x209f, 0x20a0, 0x20bf, 0x2100, 0x218f, 0x2190, 0x22ff, 0x25a0, 0x25ff, 0x2700, 0x27bf, 0};

void add(const File& f, float px, bool merge)
{
    if (f.begin == f.end) return;
    ImFontConfig c;
    c.FontDataOwnedByAtlas = false;
    c.MergeMode = merge;
    c.OversampleH = c.OversampleV = 1;
    c.PixelSnapH = true;
    // The atlas keeps the pointer and does not write through it.
    ImGui::GetIO().Fonts->AddFontFromMemoryTTF(const_cast<char*>(f.begin), static_cast<int>(f.end - f.begin), px, &c, ranges);
}

/// The face with the fallback behind it; without either the library's own letters.
ImFont* face(const File& first, const File& fallback, float px)
{
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    const int before = atlas.Fonts.Size;
    add(first, px, false);
    add(fallback, px, atlas.Fonts.Size > before);
    if (atlas.Fonts.Size == before) atlas.AddFontDefault();
    return atlas.Fonts.back();
}

} // namespace

Fonts load_fonts(float scale)
{
    const File plain{thinskin_font_plain_begin, thinskin_font_plain_end}, bold{thinskin_font_bold_begin, thinskin_font_bold_end},
        lettering{thinskin_font_lettering_begin, thinskin_font_lettering_end}, fallback{thinskin_font_fallback_begin, thinskin_font_fallback_end},
        fallback_bold{thinskin_font_fallback_bold_begin, thinskin_font_fallback_bold_end};
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    atlas.Clear();
    atlas.FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
    atlas.FontBuilderFlags = ImGuiFreeTypeBuilderFlags_LightHinting;
    const auto px = [scale](float size) { return std::round(size * scale); };
    Fonts f;
    f.plain = face(plain, fallback, px(14));
    f.bold = face(bold, fallback_bold, px(14));
    f.small = face(plain, fallback, px(12));
    f.large = face(bold, fallback_bold, px(20));
    f.lettering = face(lettering, fallback, px(lettering_px));
    atlas.Build();
    ImGui::GetIO().FontDefault = f.plain;
    return f;
}

} // namespace thinskin::gui
