#include "app/drive.h"
#include "app/png.h"
#include "app/program.h"
#include "app/theme.h"
#include "app/window.h"
#include "panels/probe.h"
#include "panels/widgets.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <chrono>
#include <fmt/format.h>
#include <fstream>
#include <sstream>
#include <thread>

namespace {

using namespace thinskin::gui;

using Clock = std::chrono::steady_clock;

struct Options {
    std::string file, screenshot, size, load_case, script, frame_times;
    double scale = 0;
    bool remember = false;
};

bool read(const std::string& path, std::string& into)
{
    std::ifstream in(path, std::ios::binary);
    std::stringstream all;
    all << in.rdbuf();
    into = all.str();
    return in.good();
}

void look_anew(Window& w, float scale)
{
    look() = {load_fonts(scale), scale};
    apply_theme(scale);
    w.fonts_changed();
}

/// What simulated input runs without, unless --remember: settings, recent files, copies kept; always: waiting for the screen.
bool simulated(const Options& o) { return !o.screenshot.empty() || !o.script.empty(); }

std::string script_of(const Options& o)
{
    std::string s;
    if (!o.script.empty() && !read(o.script, s)) throw std::runtime_error(o.script + " cannot be read");
    if (!o.screenshot.empty()) s += "\nwait\nshot " + o.screenshot + "\n";
    return s;
}

class FrameTimes {
public:
    explicit FrameTimes(std::string file) : file_(std::move(file)) {}
    void add(double ms) { if (!file_.empty()) all_.push_back(ms); }
    void age(double ms) { if (!file_.empty()) ages_.push_back(ms); }
    ~FrameTimes()
    {
        if (all_.empty()) return;
        std::ofstream out(file_);
        out << fmt::format("frames {}, ms without showing them: {}\n", all_.size(), spread(all_));
        if (!ages_.empty()) out << fmt::format("age of the figures while dragging, ms, in {} frames: {}\n", ages_.size(), spread(ages_));
    }

private:
    static std::string spread(std::vector<double>& all)
    {
        std::sort(all.begin(), all.end());
        const auto at = [&all](double share) { return all[static_cast<std::size_t>(share * static_cast<double>(all.size() - 1))]; };
        return fmt::format("median {:.2f}, 95 % {:.2f}, longest {:.2f}", at(0.5), at(0.95), all.back());
    }

    std::string file_;
    std::vector<double> all_, ages_;
};

int loop(Window& window, Program& program, Drive* drive, const Options& o)
{
    FrameTimes times(o.frame_times);
    float scale = 0;
    double asked_scale = o.scale;
    bool ended = false;
    Clock::time_point shown = Clock::now();
    while (!ended) {
        const float wanted = asked_scale > 0 ? static_cast<float>(asked_scale) * program.wanted_scale(1) : program.wanted_scale(window.display_scale());
        if (wanted != scale) look_anew(window, scale = wanted);
        const bool busy = !program.settled();
        window.begin_frame(drive || busy ? 0 : 0.25);
        if (drive && drive->pace_ms() > 0) std::this_thread::sleep_until(shown + std::chrono::duration_cast<Clock::duration>(std::chrono::duration<double, std::milli>(drive->pace_ms())));
        else if (drive && drive->waiting()) std::this_thread::sleep_for(std::chrono::milliseconds(15)); // nothing to show: the solver has the processor
        shown = Clock::now();
        if (drive) drive->input(program);
        const auto start = std::chrono::steady_clock::now();
        ImGui::NewFrame();
        probe::start_frame(drive != nullptr);
        for (const std::string& path : window.dropped) program.dropped(path);
        window.dropped.clear();
        for (const KeyPress& k : window.pressed) note_key(k);
        window.pressed.clear();
        if (window.close_asked()) {
            window.refuse_close();
            program.close_asked();
        }
        program.frame();
        ImGui::Render();
        times.add(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
        if (const auto age = program.figures_age()) times.age(*age);
        window.title(program.window_title());
        if (const Drive::Size size = drive ? drive->take_size() : Drive::Size{}; size.width > 0) {
            window.resize(size.width, size.height);
            asked_scale = size.scale;
        }
        const std::string shot = drive ? drive->take_shot() : "";
        Window::Picture picture;
        window.end_frame(shot.empty() ? nullptr : &picture);
        if (!shot.empty())
            if (const std::string why = write_png(shot, picture.rgb, picture.width, picture.height); !why.empty()) drive->failures.push_back(why);
        ended = program.ended() || (drive && drive->done());
    }
    if (!drive) return 0;
    for (const std::string& f : drive->failures) fmt::print(stderr, "{}\n", f);
    return drive->failures.empty() ? 0 : 1;
}

int run(const Options& o)
{
    Session session;
    const bool remember = !simulated(o) || o.remember;
    if (remember) {
        session.settings = load_settings();
        session.state = load_state();
        if (const std::string folder = autosave_folder(); !folder.empty()) {
            session.autosave = std::make_unique<Autosave>(folder);
            session.autosave->pause = std::chrono::seconds(session.settings.autosave_seconds);
        }
    }
    Window::Options w;
    w.width = session.state.window_width;
    w.height = session.state.window_height;
    if (!o.size.empty() && std::sscanf(o.size.c_str(), "%dx%d", &w.width, &w.height) != 2) throw std::runtime_error("--size: expected something like 1280x800");
    w.vsync = !simulated(o);
    ImGui::CreateContext();
    ImGui::GetIO().IniFilename = nullptr;
    ImGui::GetIO().ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
    int code = 0;
    {
        Window window(w);
        Program program(session);
        if (!o.file.empty() && !open_into(session, o.file) && simulated(o)) throw std::runtime_error(session.message);
        session.load_case = o.load_case;
        if (remember && !Autosave::find(autosave_folder()).empty()) program.ask_recovery();
        std::optional<Drive> drive;
        if (simulated(o)) drive.emplace(script_of(o));
        code = loop(window, program, drive ? &*drive : nullptr, o);
        if (remember) {
            session.state.window_width = static_cast<int>(ImGui::GetIO().DisplaySize.x);
            session.state.window_height = static_cast<int>(ImGui::GetIO().DisplaySize.y);
            save_settings(session.settings);
            save_state(session.state);
        }
    }
    ImGui::DestroyContext();
    return code;
}

} // namespace

int main(int count, char** words)
{
    CLI::App app{"The window of thinskin: drag the hole, watch the margin.\nA screening calculation, not a certificate: the local code, the vehicle maker's body-builder instructions and a licensed engineer decide."};
    Options o;
    app.add_option("CASE", o.file, "case file to open");
    app.add_option("--screenshot", o.screenshot, "write the screen to this PNG file when all is worked out, and end");
    app.add_option("--size", o.size, "size of the window, such as 1280x800");
    app.add_option("--scale", o.scale, "size of the letters; 1 = 96 dots an inch. Default: the display's")->check(CLI::Range(0.5, 4.0));
    app.add_option("--case", o.load_case, "load case on the drawing");
    app.add_option("--drive", o.script, "simulated mouse and keyboard from a file (gui/app/drive.h), then end; ends with 1 when a step fails");
    app.add_flag("--remember", o.remember, "with --drive: settings, recent files, copies kept and recovery as in use");
    app.add_option("--frame-times", o.frame_times, "write how long the frames took to this file");
    CLI11_PARSE(app, count, words);
    try {
        return run(o);
    } catch (const std::exception& e) {
        fmt::print(stderr, "error: {}\n", e.what());
        return 3;
    }
}
