#include "document/settings.h"

#include "document/write_file.h"

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <filesystem>
#include <fmt/format.h>

namespace thinskin::gui {
namespace {

constexpr std::size_t most_recent = 12, largest = std::size_t{1} << 18;

std::string folder_of(const char* variable, const char* below_home)
{
    const char* set = std::getenv(variable);
    if (set != nullptr && *set == '/') return std::string(set) + "/thinskin";
    const char* home = std::getenv("HOME");
    return home != nullptr && *home == '/' ? std::string(home) + below_home + "/thinskin" : "";
}

using Lines = std::vector<std::pair<std::string, std::string>>;

/// "key = value", one a line; what is not of this form is passed over.
Lines read_lines(const std::string& path)
{
    Lines out;
    std::string why, line;
    const std::string text = read_whole(path, why, largest).value_or("") + "\n";
    for (const char c : text) {
        if (c != '\n') {
            line += c;
            continue;
        }
        const auto at = line.find(" = ");
        if (at != std::string::npos) out.emplace_back(line.substr(0, at), line.substr(at + 3));
        line.clear();
    }
    return out;
}

bool write_lines(const std::string& folder, const char* name, const Lines& lines)
{
    if (!make_folder(folder)) return false;
    std::string text, why;
    for (const auto& [key, value] : lines)
        if (value.find('\n') == std::string::npos && key.find('\n') == std::string::npos) text += fmt::format("{} = {}\n", key, value);
    return write_whole(folder + "/" + name, text, why, 0600);
}

/// Left as it is when the text is no number in the range.
template <class T> void take(const std::string& text, T lower, T upper, T& x)
{
    T read{};
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), read);
    if (error == std::errc{} && end == text.data() + text.size() && read >= lower && read <= upper) x = read;
}

void take_flag(const std::string& text, bool& x)
{
    if (text == "yes" || text == "no") x = text == "yes";
}

std::string flag(bool x) { return x ? "yes" : "no"; }

} // namespace

std::string config_folder() { return folder_of("XDG_CONFIG_HOME", "/.config"); }
std::string state_folder() { return folder_of("XDG_STATE_HOME", "/.local/state"); }

std::string autosave_folder()
{
    const std::string state = state_folder();
    return state.empty() ? "" : state + "/unsaved";
}

Settings load_settings(const std::string& folder)
{
    Settings s;
    for (const auto& [key, value] : read_lines(folder + "/settings")) {
        if (key == "units" && (value == "metric" || value == "us")) s.units = value == "us" ? UnitSystem::us : UnitSystem::metric;
        if (key == "font_scale") take(value, 0.75, 3.0, s.font_scale);
        if (key == "snap") take_flag(value, s.snap);
        if (key == "autosave_seconds") take(value, 1, 600, s.autosave_seconds);
    }
    return s;
}

bool save_settings(const Settings& s, const std::string& folder)
{
    return write_lines(folder, "settings", {{"units", s.units == UnitSystem::us ? "us" : "metric"}, {"font_scale", fmt::format("{}", s.font_scale)}, {"snap", flag(s.snap)}, {"autosave_seconds", fmt::format("{}", s.autosave_seconds)}});
}

State load_state(const std::string& folder)
{
    State s;
    for (const auto& [key, value] : read_lines(folder + "/state")) {
        if (key == "recent" && s.recent.size() < most_recent && !value.empty() && value.front() == '/') s.recent.push_back(value);
        if (key == "window_x") take(value, -1, 100000, s.window_x);
        if (key == "window_y") take(value, -1, 100000, s.window_y);
        if (key == "window_width") take(value, 320, 20000, s.window_width);
        if (key == "window_height") take(value, 240, 20000, s.window_height);
        if (key == "window_maximised") take_flag(value, s.window_maximised);
        if (key.starts_with("layout.")) s.layout[key.substr(7)] = value;
    }
    return s;
}

bool save_state(const State& s, const std::string& folder)
{
    Lines lines;
    for (const std::string& file : s.recent) lines.emplace_back("recent", file);
    const auto number = [&lines](const char* key, int value) { lines.emplace_back(key, fmt::format("{}", value)); };
    number("window_x", s.window_x);
    number("window_y", s.window_y);
    number("window_width", s.window_width);
    number("window_height", s.window_height);
    lines.emplace_back("window_maximised", flag(s.window_maximised));
    for (const auto& [name, value] : s.layout) lines.emplace_back("layout." + name, value);
    return write_lines(folder, "state", lines);
}

void remember_file(State& s, const std::string& path)
{
    std::error_code none;
    const auto absolute = std::filesystem::absolute(path, none);
    if (none || path.empty()) return;
    const std::string place = absolute.lexically_normal().string();
    forget_file(s, place);
    s.recent.insert(s.recent.begin(), place);
    if (s.recent.size() > most_recent) s.recent.resize(most_recent);
}

void forget_file(State& s, const std::string& path) { s.recent.erase(std::remove(s.recent.begin(), s.recent.end(), path), s.recent.end()); }

} // namespace thinskin::gui
