#pragma once
#include "base/status.h"

#include <imgui.h>

/// Colours after Okabe and Ito (Color Universal Design, 2008): told apart with any of the usual kinds of colour blindness. The
/// inks are darkened so that letters in them have a contrast of at least 4.5 : 1 on the paper.
namespace thinskin::gui::palette {

inline constexpr ImU32 paper = IM_COL32(0xFC, 0xFB, 0xF7, 255);
inline constexpr ImU32 desk = IM_COL32(0xE9, 0xE7, 0xE0, 255);       ///< round the sheet, behind the columns
inline constexpr ImU32 card = IM_COL32(0xF5, 0xF3, 0xED, 255);
inline constexpr ImU32 rule = IM_COL32(0xC6, 0xC2, 0xB6, 255);       ///< hairlines between groups
inline constexpr ImU32 ink = IM_COL32(0x1B, 0x1F, 0x24, 255);
inline constexpr ImU32 faint = IM_COL32(0x5C, 0x60, 0x66, 255);      ///< notes, units
inline constexpr ImU32 grey = IM_COL32(0x74, 0x76, 0x78, 255);       ///< numbers of an older state
inline constexpr ImU32 chosen = IM_COL32(0xF0, 0xE4, 0x42, 90);      ///< yellow marker over what is chosen
inline constexpr ImU32 pointed = IM_COL32(0x56, 0xB4, 0xE9, 60);     ///< sky blue under the pointer
inline constexpr ImU32 pass = IM_COL32(0x00, 0x6F, 0x52, 255);       ///< bluish green, darkened
inline constexpr ImU32 fail = IM_COL32(0xB8, 0x46, 0x00, 255);       ///< vermillion, darkened
inline constexpr ImU32 judgement = IM_COL32(0x00, 0x62, 0xA3, 255);  ///< blue, darkened
inline constexpr ImU32 not_covered = IM_COL32(0x94, 0x4E, 0x7A, 255); ///< reddish purple, darkened
inline constexpr ImU32 hidden = IM_COL32(0x7A, 0x4E, 0x00, 255);     ///< what lies behind the skin: brown, the darkest orange
inline constexpr ImU32 bracket = IM_COL32(0x10, 0x3C, 0x62, 255);
inline constexpr ImU32 item = IM_COL32(0x56, 0xB4, 0xE9, 255);
inline constexpr ImU32 caution = IM_COL32(0xF0, 0xE4, 0x42, 255);

[[nodiscard]] inline ImU32 of(base::Status s)
{
    switch (s) {
    case base::Status::pass: return pass;
    case base::Status::judgement: return judgement;
    case base::Status::fail: return fail;
    case base::Status::not_covered: return not_covered;
    }
    return not_covered;
}

[[nodiscard]] inline ImU32 of(base::Verdict v)
{
    switch (v) {
    case base::Verdict::pass: return pass;
    case base::Verdict::fail: return fail;
    case base::Verdict::not_covered: return not_covered;
    case base::Verdict::not_solved: return grey;
    }
    return grey;
}

[[nodiscard]] inline ImU32 with_alpha(ImU32 c, float alpha)
{
    const auto a = static_cast<ImU32>(255 * alpha);
    return (c & ~IM_COL32_A_MASK) | (a << IM_COL32_A_SHIFT);
}

} // namespace thinskin::gui::palette
