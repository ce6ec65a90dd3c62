#include "app/drive.h"
#include "app/commands.h"
#include "app/dialogs.h"
#include "app/program.h"
#include "panels/probe.h"
#include "report/json.h"

#include <GLFW/glfw3.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <fmt/format.h>
#include <fstream>
#include <map>
#include <sstream>
#include <utility>

namespace thinskin::gui {
namespace {

constexpr int settle_frames = 3;            ///< a click is seen one frame, acted on the next, drawn in the third
constexpr double longest_wait = 400;

std::string trimmed(const std::string& s)
{
    const auto a = s.find_first_not_of(" \t\r"), b = s.find_last_not_of(" \t\r");
    return a == std::string::npos ? "" : s.substr(a, b - a + 1);
}

std::pair<std::string, std::string> at_bar(const std::string& s)
{
    const auto bar = s.find('|');
    return bar == std::string::npos ? std::pair{s, std::string()} : std::pair{trimmed(s.substr(0, bar)), trimmed(s.substr(bar + 1))};
}

/// PartKind::note, which nobody takes hold of, for an unknown word.
drawing::PartKind kind_of(const std::string& word)
{
    using drawing::PartKind;
    static const std::map<std::string, PartKind> all{{"fastener", PartKind::fastener}, {"angle", PartKind::angle}, {"bracket", PartKind::bracket}, {"item", PartKind::item}, {"centre", PartKind::mass_centre},
                                                     {"gauge", PartKind::gauge}, {"end", PartKind::end_fixing}, {"hinge", PartKind::hinge}, {"latch", PartKind::latch}, {"skin", PartKind::skin}};
    const auto it = all.find(word);
    return it == all.end() ? PartKind::note : it->second;
}

int code_of(const std::string& name)
{
    static const std::map<std::string, int> named{{"Ctrl", GLFW_KEY_LEFT_CONTROL}, {"Shift", GLFW_KEY_LEFT_SHIFT}, {"Left", GLFW_KEY_LEFT}, {"Right", GLFW_KEY_RIGHT}, {"Up", GLFW_KEY_UP}, {"Down", GLFW_KEY_DOWN},
                                                  {"Enter", GLFW_KEY_ENTER}, {"Escape", GLFW_KEY_ESCAPE}, {"Tab", GLFW_KEY_TAB}, {"Home", GLFW_KEY_HOME}, {"F1", GLFW_KEY_F1}, {"F2", GLFW_KEY_F2}, {"F5", GLFW_KEY_F5},
                                                  {"Page down", GLFW_KEY_PAGE_DOWN}, {"Page up", GLFW_KEY_PAGE_UP}, {".", GLFW_KEY_PERIOD}, {",", GLFW_KEY_COMMA}, {"plus", GLFW_KEY_EQUAL}, {"-", GLFW_KEY_MINUS}};
    const auto it = named.find(name);
    if (it != named.end()) return it->second;
    return name.size() == 1 ? std::toupper(static_cast<unsigned char>(name[0])) : -1;
}

bool write_file(const std::string& path, const std::string& bytes)
{
    std::ofstream out(path, std::ios::binary | std::ios::trunc);
    out << bytes;
    out.close();
    return out.good();
}

bool on_screen(const std::string& words)
{
    const auto& all = probe::all();
    return std::any_of(all.begin(), all.end(), [&words](const probe::Placed& p) { return !p.target && p.text.find(words) != std::string::npos; });
}

/// "fastener L1 0 -20": kind, name (which may hold blanks), two numbers.
struct PartMove { std::optional<drawing::Part> part; std::string grip; double dx = 0, dy = 0; };

PartMove part_move(const std::string& rest, bool numbers)
{
    PartMove m;
    std::istringstream in(rest);
    std::vector<std::string> words;
    for (std::string w; in >> w;) words.push_back(w);
    const std::size_t tail = numbers ? 2 : 0;
    if (words.size() < 1 + tail) return m;
    const drawing::PartKind kind = kind_of(words[0]);
    if (kind == drawing::PartKind::note && words[0] != "grip") return m;
    std::string name;
    for (std::size_t i = 1; i + tail < words.size(); ++i) name += (i > 1 ? " " : "") + words[i];
    if (numbers) {
        m.dx = std::strtod(words[words.size() - 2].c_str(), nullptr);
        m.dy = std::strtod(words.back().c_str(), nullptr);
    }
    if (words[0] == "grip") m.grip = name;
    else m.part = drawing::Part{kind, name};
    return m;
}

} // namespace

Drive::Drive(const std::string& script)
{
    std::istringstream in(script);
    int n = 0;
    for (std::string line; std::getline(in, line);) {
        ++n;
        line = trimmed(line);
        if (line.empty() || line[0] == '#') continue;
        const auto blank = line.find(' ');
        steps_.push_back({n, line.substr(0, blank), blank == std::string::npos ? "" : trimmed(line.substr(blank))});
    }
}

void Drive::fail(const Step& s, const std::string& why) { failures.push_back(fmt::format("line {}: {} {}: {}", s.line, s.word, s.rest, why)); }

void Drive::click(ImVec2 at)
{
    for (const bool down : {false, true, false}) mouse_.push_back({at, down, 0});
    frames_ = settle_frames;
}

void Drive::press(const std::string& key)
{
    std::vector<std::string> names;
    std::string rest = key;
    for (const std::string modifier : {"Ctrl", "Shift"})
        if (rest.rfind(modifier + "+", 0) == 0) {
            names.push_back(modifier);
            rest = rest.substr(modifier.size() + 1);
        }
    names.push_back(rest == "+" ? "plus" : rest);
    for (const std::string& n : names) keys_.push_back({n, true});
    for (auto n = names.rbegin(); n != names.rend(); ++n) keys_.push_back({*n, false});
    frames_ = settle_frames;
}

/// Turns the wheel over the column that hides the target and comes back to the step.
bool Drive::scroll_to(const Step& s)
{
    constexpr int most = 200;
    const probe::Hidden h = probe::find(s.rest).x >= 0 ? probe::Hidden{} : probe::find_hidden(s.rest);
    if (h.turn == 0 || ++turns_ > most) {
        turns_ = 0;
        return false;
    }
    for (const float turn : {0.0f, h.turn, 0.0f}) mouse_.push_back({h.at, false, turn});
    steps_.insert(steps_.begin() + static_cast<std::ptrdiff_t>(at_), s);
    return true;
}

void Drive::drag(Program& p, const Step& s, bool let_go)
{
    const PartMove m = part_move(s.rest, true);
    const ImVec2 from = !m.grip.empty() ? p.sheet().grip_called(m.grip) : m.part ? p.sheet().handle_of(*m.part) : ImVec2{-1, -1};
    if (from.x < 0) {
        fail(s, "no such part on the drawing");
        return;
    }
    const float scale = p.sheet().px_per_mm();
    pull(from, {from.x + static_cast<float>(m.dx) * scale, from.y - static_cast<float>(m.dy) * scale}, let_go);
}

void Drive::slide(const Step& s)
{
    std::istringstream in(s.rest.substr(std::min(s.rest.size(), s.rest.rfind(' ', s.rest.rfind(' ') - 1))));
    const ImVec2 from = probe::find(s.rest.substr(0, s.rest.rfind(' ', s.rest.rfind(' ') - 1)));
    float dx = 0, dy = 0;
    if (from.x < 0 || !(in >> dx >> dy)) fail(s, "is not on the screen, or not two numbers behind it");
    else pull(from, {from.x + dx, from.y + dy}, true);
}

void Drive::pull(ImVec2 from, ImVec2 to, bool let_go)
{
    mouse_.push_back({from, false, 0});
    mouse_.push_back({from, true, 0});
    constexpr int way = 12;
    for (int i = 1; i <= way; ++i) {
        const float f = static_cast<float>(i) / way;
        mouse_.push_back({{from.x + f * (to.x - from.x), from.y + f * (to.y - from.y)}, true, 0});
    }
    if (let_go) mouse_.push_back({to, false, 0});
    frames_ = settle_frames;
}

void Drive::swing(Program& p, const Step& s)
{
    const PartMove m = part_move(s.rest, true);
    const ImVec2 from = m.part ? p.sheet().handle_of(*m.part) : ImVec2{-1, -1};
    if (from.x < 0) {
        fail(s, "no such part on the drawing");
        return;
    }
    constexpr int swings = 5, frames_each = 60, half = frames_each / 2;
    const float scale = p.sheet().px_per_mm();
    mouse_.push_back({from, false, 0});
    mouse_.push_back({from, true, 0});
    for (int i = 1; i <= swings * frames_each; ++i) {
        const int at = i % frames_each;
        const float f = static_cast<float>(at <= half ? at : frames_each - at) / half;
        mouse_.push_back({{from.x + f * static_cast<float>(m.dx) * scale, from.y - f * static_cast<float>(m.dy) * scale}, true, 0});
    }
    mouse_.push_back({from, false, 0});
    frames_ = settle_frames;
}

void Drive::begin(Program& p, const Step& s)
{
    const auto target = [&](const std::string& name) {
        const ImVec2 at = probe::find(name);
        if (at.x < 0) fail(s, "\"" + name + "\" is not on the screen");
        return at;
    };
    if (s.word == "wait" || s.word == "stay" || s.word == "until" || s.word == "drawn") {
        for_drawing_ = s.word == "drawn";
        awaited_ = s.word == "until" ? s.rest : "";
        (s.word == "stay" ? staying_ : waiting_) = true;
        since_ = std::chrono::steady_clock::now();
    }
    else if (s.word == "frames") frames_ = std::atoi(s.rest.c_str());
    else if (s.word == "click") {
        if (scroll_to(s)) return;
        if (const ImVec2 at = target(s.rest); at.x >= 0) click(at);
    } else if (s.word == "part" || s.word == "over") {
        const PartMove m = part_move(s.rest, false);
        const ImVec2 at = m.part ? p.sheet().handle_of(*m.part) : ImVec2{-1, -1};
        if (at.x < 0) fail(s, "no such part on the drawing");
        else if (s.word == "part") click(at);
        else mouse_.push_back({at, false, 0});
    } else if (s.word == "swing") swing(p, s);
    else if (s.word == "pace") pace_ms_ = std::strtod(s.rest.c_str(), nullptr);
    else if (s.word == "drag" || s.word == "hold") drag(p, s, s.word == "drag");
    else if (s.word == "slide") slide(s);
    else if (s.word == "release") mouse_.push_back({pointer_, false, 0});
    else if (s.word == "wheel") {
        for (const float turn : {0.0f, std::strtof(s.rest.c_str(), nullptr), 0.0f}) mouse_.push_back({pointer_, false, turn});
        frames_ = settle_frames;
    }
    else if (s.word == "key") press(s.rest);
    else if (s.word == "twice") { // within one frame
        const bool ctrl = s.rest.rfind("Ctrl+", 0) == 0;
        for (int k = 0; k < 2; ++k) note_key({code_of(s.rest.substr(ctrl ? 5 : 0)), ctrl, false, false, false});
        frames_ = settle_frames;
    }
    else if (s.word == "type") typed_ = s.rest;
    else if (s.word == "drop") p.dropped(s.rest);
    else if (s.word == "shot") shot_ = s.rest;
    else if (s.word == "size") {
        std::istringstream in(s.rest);
        if (!(in >> size_.width >> size_.height >> size_.scale)) fail(s, "expected width, height, scale");
        frames_ = 3 * settle_frames; // the screen takes a moment to make it so
    }
    else if (s.word == "quit") press("Ctrl+Q");
    else if (s.word == "pick" || s.word == "enter") {
        // Written out as single steps, so that the second click is looked for when the list is open.
        const auto [first, second] = at_bar(s.rest);
        std::vector<Step> parts;
        const auto then = [&parts, &s](const char* word, const std::string& rest) { parts.push_back({s.line, word, rest}); };
        then("click", first);
        then("frames", "3");
        if (s.word == "pick") then("click", second);
        else {
            then("key", "Ctrl+A");
            then("type", second);
            then("key", "Enter");
        }
        steps_.insert(steps_.begin() + static_cast<std::ptrdiff_t>(at_), parts.begin(), parts.end());
    } else checks(p, s);
}

void Drive::checks(Program& p, const Step& s)
{
    if (s.word == "json") {
        const auto a = p.session().results.shown();
        if (!a || !a->outcome() || !write_file(s.rest, report::check_json(filed(*a)))) fail(s, "no result, or it could not be written");
    } else if (s.word == "text") {
        if (!write_file(s.rest, p.session().document.text())) fail(s, "could not be written");
    } else if (s.word == "see") {
        if (!on_screen(s.rest)) fail(s, "is not on the screen");
    } else if (s.word == "miss") {
        if (on_screen(s.rest)) fail(s, "is on the screen");
    } else if (s.word == "note" || s.word == "same") {
        const Place &e = p.sheet().elevation_place(), &side = p.sheet().side_place();
        const auto moved = [](ImVec2 a, ImVec2 b) { return std::abs(a.x - b.x) > 0.01f || std::abs(a.y - b.y) > 0.01f; };
        if (s.word == "same" && (moved(noted_[0], e.origin) || moved(noted_[1], side.origin) || std::abs(noted_scale_ - e.px_per_mm) > 1e-6f)) fail(s, "the picture moved");
        noted_[0] = e.origin;
        noted_[1] = side.origin;
        noted_scale_ = e.px_per_mm;
    } else if (s.word == "clean") {
        for (const std::string& problem : probe::problems()) fail(s, problem);
    } else fail(s, "no such step");
}

bool Drive::waits(Program& p)
{
    if (!waiting_ && !staying_) return false;
    const bool too_long = std::chrono::duration<double>(std::chrono::steady_clock::now() - since_).count() > longest_wait;
    if (too_long) failures.push_back(fmt::format("line {}: {} after {:.0f} s", steps_[at_ - 1].line, staying_ ? "nobody ended the program" : "still working", longest_wait));
    const bool there = for_drawing_ ? p.is_drawn() : awaited_.empty() ? p.settled() : on_screen(awaited_);
    if (!too_long && (staying_ || !there)) return true;
    waiting_ = staying_ = false;
    frames_ = settle_frames;
    return true;
}

void Drive::input(Program& p)
{
    ImGuiIO& io = ImGui::GetIO();
    io.DeltaTime = 1.0f / 60;
    io.MouseDoubleClickTime = 0;
    const bool quiet = mouse_.empty() && keys_.empty() && typed_.empty() && shot_.empty();
    if (quiet && frames_ > 0) --frames_;
    else if (quiet && !waits(p) && at_ < steps_.size()) {
        const Step s = steps_[at_++];
        begin(p, s);
    }
    if (!mouse_.empty()) {
        pointer_ = mouse_.front().at;
        down_ = mouse_.front().down;
        io.MouseWheel = mouse_.front().wheel;
        mouse_.pop_front();
    }
    io.MousePos = pointer_.x < 0 ? ImVec2{-FLT_MAX, -FLT_MAX} : pointer_;
    io.MouseDown[0] = down_;
    if (!keys_.empty()) {
        const int code = code_of(keys_.front().name);
        if (code < 0) failures.push_back("no such key: " + keys_.front().name);
        else if (keys_.front().down) {
            const auto is_held = [this](int k) { return std::find(held_.begin(), held_.end(), k) != held_.end(); };
            note_key({code, is_held(GLFW_KEY_LEFT_CONTROL), is_held(GLFW_KEY_LEFT_SHIFT), false, false});
            held_.push_back(code);
        }
        else held_.erase(std::remove(held_.begin(), held_.end(), code), held_.end());
        keys_.pop_front();
    }
    for (bool& k : io.KeysDown) k = false;
    for (const int code : held_) io.KeysDown[code] = true;
    io.KeyCtrl = io.KeysDown[GLFW_KEY_LEFT_CONTROL];
    io.KeyShift = io.KeysDown[GLFW_KEY_LEFT_SHIFT];
    io.KeyAlt = io.KeySuper = false;
    if (typed_.empty()) return;
    io.AddInputCharactersUTF8(typed_.c_str());
    typed_.clear();
}

Drive::Size Drive::take_size() { return std::exchange(size_, {}); }

std::string Drive::take_shot() { return std::exchange(shot_, {}); }

} // namespace thinskin::gui
