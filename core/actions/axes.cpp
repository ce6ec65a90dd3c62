#include "actions/axes.h"

namespace thinskin::actions {

results::Vec3 to_panel(model::Faces faces, const results::Vec3& vehicle)
{
    const auto [forward, left, up] = vehicle;
    // 0.0 - a and not -a: no negative zero in the output.
    switch (faces) {
    case model::Faces::rear: return {0.0 - left, up, 0.0 - forward};
    case model::Faces::front: return {left, up, forward};
    case model::Faces::left: return {0.0 - forward, up, left};
    case model::Faces::right: return {forward, up, 0.0 - left};
    }
    return {0.0 - left, up, 0.0 - forward};
}

std::string panel_words(const results::Vec3& panel)
{
    const auto [x, y, z] = panel;
    std::string words;
    const auto add = [&words](double value, const char* negative, const char* positive) {
        if (value == 0) return;
        if (!words.empty()) words += ", ";
        words += value < 0 ? negative : positive;
    };
    add(y, "down", "up");
    add(z, "in", "out");
    add(x, "left", "right");
    return words;
}

} // namespace thinskin::actions
