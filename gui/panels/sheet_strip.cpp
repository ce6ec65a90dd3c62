#include "panels/palette.h"
#include "panels/sheet.h"
#include "panels/widgets.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

/// The strip below the views: scale bar, what the contours mean, or why there are no figures.
namespace thinskin::gui {

void Sheet::scale_bar(UnitSystem units)
{
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const float k = look().scale;
    const double unit = units == UnitSystem::us ? inch : 1;
    double length = unit;
    for (const double step : {1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0})
        if (step * unit * static_cast<double>(view_scale_) <= static_cast<double>(110 * k)) length = step * unit;
    const float half = static_cast<float>(length) * view_scale_ / 2, y = hi_.y + 24 * k, x = lo_.x + 4 * k;
    d.AddRectFilled({x, y}, {x + half, y + 5 * k}, palette::ink);
    d.AddRect({x, y}, {x + 2 * half, y + 5 * k}, palette::ink);
    ImFont* font = look().fonts.small;
    widgets::letters({x, y - font->FontSize - 2 * k}, fmt::format("{:g} {}", length / unit, units == UnitSystem::us ? "in" : "mm"), palette::ink, font);
}

/// Small boxes from inward to outward with the limits between them.
void Sheet::legend(const SheetContents& c)
{
    if (!c.contours || contours_.step_mm <= 0 || contours_.patches.empty()) return;
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const float k = look().scale, y = hi_.y + 24 * k, h = 8 * k;
    ImFont* font = look().fonts.small;
    const int bands = contours_.last - contours_.first + 1;
    const float room = hi_.x - lo_.x - 170 * k, w = std::min(36 * k, room / static_cast<float>(bands));
    const float x0 = hi_.x - w * static_cast<float>(bands) - 12 * k;
    const double unit = c.units == UnitSystem::us ? inch : 1, step = contours_.step_mm / unit;
    const auto figure = [step](int limit) { return limit == 0 ? std::string("0") : fmt::format("{:+.{}f}", limit * step, step < 0.0099 ? 3 : step < 0.099 ? 2 : step < 0.99 ? 1 : 0); };
    float written_to = -1e9f;
    for (int i = 0; i <= bands; ++i) {
        const float x = x0 + w * static_cast<float>(i);
        if (i < bands) {
            d.AddRectFilled({x, y}, {x + w, y + h}, band_colour(contours_, contours_.first + i));
            d.AddRect({x, y}, {x + w, y + h}, palette::rule);
        }
        const std::string words = figure(contours_.first + i);
        const float wide = widgets::size_of(words, font).x, left = x - wide / 2;
        const bool zero_follows = contours_.first + i < 0 && left + wide + 4 * k > x0 + w * static_cast<float>(-contours_.first) - 4 * k;
        if (left < written_to + 5 * k || zero_follows) continue;
        widgets::letters({left, y + h + 1 * k}, words, palette::ink, font);
        written_to = left + wide;
    }
    widgets::letters_right(x0 + w * static_cast<float>(bands), y - font->FontSize - 2 * k, fmt::format("movement of the skin, {}: - inward, + outward", c.units == UnitSystem::us ? "in" : "mm"), palette::ink, font);
}

/// Why there are no figures: in the strip below the views, where the legend has nothing to say then; in the middle where there are no views.
/// The right column has all of it.
void Sheet::trouble(const SheetContents& c)
{
    if (c.trouble.empty()) return;
    ImDrawList& d = *ImGui::GetWindowDrawList();
    const float k = look().scale, pad = 7 * k, wide = c.layout ? hi_.x - lo_.x - 150 * k : std::min(520 * k, hi_.x - lo_.x - 40 * k);
    ImFont* font = c.layout ? look().fonts.small : look().fonts.plain;
    const std::size_t most = c.layout ? 3 : 12;
    std::vector<std::string> lines{!c.outcome ? "No result for this case" : c.layout ? "Not solved; figures of the last state that was solved:" : "Not solved"};
    for (const std::string& words : c.trouble)
        for (std::string& line : widgets::lines_of(words, wide - 2 * pad, font)) lines.push_back(std::move(line));
    if (lines.size() > most) {
        lines.resize(most);
        lines.back() += " ...";
    }
    const float line = font->FontSize * 1.2f, tall = line * static_cast<float>(lines.size()) + pad;
    const ImVec2 a = c.layout ? ImVec2{hi_.x - wide, hi_.y + sheet_strip_px * k + 8 * k - tall} : ImVec2{(lo_.x + hi_.x - wide) / 2, lo_.y + 0.3f * (hi_.y - lo_.y)}, b{a.x + wide, a.y + tall};
    d.AddRectFilled(a, b, palette::paper);
    d.AddRect(a, b, palette::fail, 0, 0, 1.6f * k);
    for (std::size_t i = 0; i < lines.size(); ++i) widgets::letters_within({a.x + pad, a.y + pad / 2 + line * static_cast<float>(i)}, wide - 2 * pad, lines[i], i == 0 ? palette::fail : palette::ink, font);
}

/// A ring round what the errors speak of.
void Sheet::rings(const SheetContents& c)
{
    using drawing::PartKind;
    for (const std::string& path : c.wrong)
        for (const PartKind kind : {PartKind::fastener, PartKind::end_fixing, PartKind::angle, PartKind::bracket, PartKind::plate, PartKind::strap}) {
            const std::optional<drawing::Point> at = centre_of({kind, path.substr(path.rfind('.') + 1)});
            if (!at) continue;
            const ImVec2 px = elevation_.of(*at);
            ImGui::GetWindowDrawList()->AddCircle(px, 13 * look().scale, palette::fail, 0, 2.5f * look().scale);
            break;
        }
}

} // namespace thinskin::gui
