#include "panels/probe.h"

#include <algorithm>
#include <fmt/format.h>
#include <imgui_internal.h>

namespace thinskin::gui::probe {
namespace {

struct State { bool collect = false, moved = false; std::vector<Placed> all; };

/// One window, one thread: the frame that is being drawn.
State& state()
{
    static State s;
    return s;
}

void add(const std::string& words, ImVec2 min, ImVec2 max, bool target)
{
    if (!state().collect || words.empty()) return;
    const ImGuiWindow* w = ImGui::GetCurrentWindowRead();
    const ImVec4 clip = w->DrawList->_ClipRectStack.back();
    bool scrolls = false;
    for (const ImGuiWindow* up = w; up; up = up->ParentWindow) scrolls = scrolls || up->ScrollMax.y > 0;
    state().all.push_back({words, min, max, {clip.x, clip.y}, {clip.z, clip.w}, w->RootWindow->Name, scrolls, state().moved, target});
}

bool seen(const Placed& p) { return p.max.x > p.clip_min.x && p.min.x < p.clip_max.x && p.max.y > p.clip_min.y && p.min.y < p.clip_max.y; }

std::string cut(const Placed& p)
{
    constexpr float slack = 1.01f;
    const bool sideways = p.min.x < p.clip_min.x - slack || p.max.x > p.clip_max.x + slack;
    const bool upright = p.min.y < p.clip_min.y - slack || p.max.y > p.clip_max.y + slack;
    if (p.moves) return "";
    if (sideways || (upright && !p.scrolls)) return fmt::format("cut: \"{}\" at {:.0f} {:.0f} .. {:.0f} {:.0f} by {:.0f} {:.0f} .. {:.0f} {:.0f} in {}", p.text, p.min.x, p.min.y, p.max.x, p.max.y, p.clip_min.x, p.clip_min.y, p.clip_max.x, p.clip_max.y, p.window);
    return "";
}

/// What is seen of a text.
ImRect visible(const Placed& p) { return {ImMax(p.min, p.clip_min), ImMin(p.max, p.clip_max)}; }

bool over_each_other(const Placed& a, const Placed& b)
{
    if (a.window != b.window) return false;
    const ImRect x = visible(a), y = visible(b);
    constexpr float slack = 1;
    return x.Min.x + slack < y.Max.x && y.Min.x + slack < x.Max.x && x.Min.y + slack < y.Max.y && y.Min.y + slack < x.Max.y;
}

} // namespace

void start_frame(bool collect)
{
    state().collect = collect;
    state().all.clear();
}

const std::vector<Placed>& all() { return state().all; }
void on_moved_drawing(bool yes) { state().moved = yes; }
void text(const std::string& words, ImVec2 min, ImVec2 max) { add(words, min, max, false); }
void target(const std::string& name, ImVec2 min, ImVec2 max) { add(name, min, max, true); }

std::vector<std::string> problems()
{
    std::vector<std::string> out;
    std::vector<const Placed*> texts;
    for (const Placed& p : state().all)
        if (!p.target && seen(p)) texts.push_back(&p);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        if (std::string c = cut(*texts[i]); !c.empty()) out.push_back(std::move(c));
        for (std::size_t k = i + 1; k < texts.size(); ++k)
            if (over_each_other(*texts[i], *texts[k]))
                out.push_back(fmt::format("over each other: \"{}\" and \"{}\" at {:.0f} {:.0f} and {:.0f} {:.0f}", texts[i]->text, texts[k]->text, texts[i]->min.x, texts[i]->min.y, texts[k]->min.x, texts[k]->min.y));
    }
    return out;
}

ImVec2 find(const std::string& name)
{
    const auto middle = [](const Placed& p) { return ImVec2{(p.min.x + p.max.x) / 2, (p.min.y + p.max.y) / 2}; };
    // What was drawn last lies on top.
    for (auto p = state().all.rbegin(); p != state().all.rend(); ++p)
        if (p->target && p->text == name && seen(*p)) return middle(*p);
    for (auto p = state().all.rbegin(); p != state().all.rend(); ++p)
        if (p->text.rfind(name, 0) == 0 && seen(*p)) return middle(*p);
    return {-1, -1};
}

Hidden find_hidden(const std::string& name)
{
    for (const Placed& p : state().all) {
        if (!p.target || p.text != name || !p.scrolls || seen(p)) continue;
        return {{(p.clip_min.x + p.clip_max.x) / 2, (p.clip_min.y + p.clip_max.y) / 2}, p.max.y <= p.clip_min.y ? 1.0f : -1.0f};
    }
    return {};
}

} // namespace thinskin::gui::probe
