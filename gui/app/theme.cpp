#include "app/theme.h"
#include "panels/palette.h"

namespace thinskin::gui {
namespace {

ImVec4 colour(ImU32 c) { return ImGui::ColorConvertU32ToFloat4(c); }

void colours(ImGuiStyle& s)
{
    ImGui::StyleColorsLight(&s);
    using namespace palette;
    const struct { ImGuiCol_ slot; ImU32 value; } all[] = {
        {ImGuiCol_Text, ink}, {ImGuiCol_TextDisabled, grey}, {ImGuiCol_WindowBg, card}, {ImGuiCol_ChildBg, IM_COL32(0, 0, 0, 0)}, {ImGuiCol_PopupBg, paper}, {ImGuiCol_Border, rule},
        {ImGuiCol_FrameBg, paper}, {ImGuiCol_FrameBgHovered, IM_COL32(0xE4, 0xEF, 0xF6, 255)}, {ImGuiCol_FrameBgActive, IM_COL32(0xD3, 0xE7, 0xF3, 255)}, {ImGuiCol_MenuBarBg, desk},
        {ImGuiCol_Button, IM_COL32(0xEA, 0xE7, 0xDD, 255)}, {ImGuiCol_ButtonHovered, IM_COL32(0xD3, 0xE7, 0xF3, 255)}, {ImGuiCol_ButtonActive, IM_COL32(0xB4, 0xD8, 0xEE, 255)},
        {ImGuiCol_Header, IM_COL32(0xE6, 0xE2, 0xD4, 255)}, {ImGuiCol_HeaderHovered, IM_COL32(0xD3, 0xE7, 0xF3, 255)}, {ImGuiCol_HeaderActive, IM_COL32(0xB4, 0xD8, 0xEE, 255)},
        {ImGuiCol_CheckMark, judgement}, {ImGuiCol_Separator, rule}, {ImGuiCol_ScrollbarBg, IM_COL32(0, 0, 0, 0)}, {ImGuiCol_ScrollbarGrab, rule}, {ImGuiCol_TitleBg, desk}, {ImGuiCol_TitleBgActive, desk},
        {ImGuiCol_NavHighlight, judgement}, {ImGuiCol_ModalWindowDimBg, IM_COL32(0x40, 0x40, 0x40, 90)}, {ImGuiCol_TextSelectedBg, IM_COL32(0x9C, 0xCF, 0xEC, 255)},
    };
    for (const auto& c : all) s.Colors[c.slot] = colour(c.value);
}

} // namespace

void apply_theme(float scale)
{
    ImGuiStyle s;
    colours(s);
    s.WindowPadding = {10, 8};
    s.FramePadding = {6, 3};
    s.ItemSpacing = {7, 4};
    s.ItemInnerSpacing = {5, 4};
    s.IndentSpacing = 14;
    s.ScrollbarSize = 11;
    s.FrameBorderSize = 1;
    s.WindowBorderSize = 0;
    s.PopupBorderSize = 1;
    s.WindowRounding = s.FrameRounding = s.ScrollbarRounding = s.GrabRounding = 0;
    s.PopupRounding = 0;
    s.ScaleAllSizes(scale);
    ImGui::GetStyle() = s;
}

} // namespace thinskin::gui
