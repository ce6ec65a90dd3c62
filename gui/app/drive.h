#pragma once
#include <imgui.h>

#include <chrono>
#include <deque>
#include <string>
#include <vector>

namespace thinskin::gui {

class Program;

/// Simulated mouse and keyboard from a text, one step a line; `#` begins a comment. For tests and for the pictures in the docs: the
/// events go in where the window's own would, the program cannot tell them apart.
///
///     wait                       until everything is worked out (at most 400 s)
///     drawn                      until the drawing and the figures of linear theory are those of the document
///     frames N
///     click NAME                 a button, field, row, menu or text of that name; a column is scrolled until it is seen
///     pick FIELD | WORD          opens a choice and takes a word
///     enter FIELD | TEXT         clicks a field, types, Enter
///     part KIND NAME             clicks a part on the drawing (fastener, angle, bracket, item, gauge, ...)
///     drag KIND NAME DX DY       takes hold of it and lets go DX, DY mm away (x right, y up)
///     drag grip LABEL DX DY      the same with a grip of the chosen part: "upper end of the leg of bracket left"
///     hold KIND NAME DX DY       the same without letting go
///     release
///     slide NAME DX DY           takes hold of a target or text and lets go DX, DY pixels away (y down): dividers, the paper
///     over KIND NAME             points at a part
///     wheel N                    where the pointer is
///     key Ctrl+S                 also Left, Right, Up, Down, Enter, Escape, Tab, Home, F1, F2, Page down
///     type TEXT
///     drop FILE
///     size W H SCALE             of the window and its letters (needs a window)
///     shot FILE                  the screen as PNG (needs a window)
///     json FILE                  the result as `thinskin check --json` writes it
///     text FILE                  the document's bytes
///     see TEXT                   fails unless a text that holds it is on the screen
///     miss TEXT                  fails if one is
///     note view                  remembers where the views stand and how large they are
///     same view                  fails if that is not so any more
///     twice KEY                  two presses within one frame
///     clean                      fails if a text is cut or lies over another one
///     quit                       through the program's own question
///     until TEXT                 until a text that holds it is on the screen (at most 400 s)
///     swing KIND NAME DX DY      takes hold of it and swings it there and back, 5 times in 300 frames, then lets go where it was
///     pace MS                    frames from here on are at least so far apart, as on a screen of 60 a second; for measuring
///     stay                       until somebody ends the process: for tests of recovery
///
/// Time goes on by a sixtieth of a second a frame, and two clicks are never a double click, however slow the machine is.
class Drive {
public:
    explicit Drive(const std::string& script);
    /// Before ImGui::NewFrame(), after the backend's: sets the frame's input.
    void input(Program& p);
    [[nodiscard]] bool done() const { return at_ >= steps_.size() && keys_.empty() && mouse_.empty() && !waiting_ && !staying_; }
    /// File to write the picture of the frame that was just drawn to; empty: none.
    [[nodiscard]] std::string take_shot();
    /// What the window should be like from now on; width 0: as it is.
    struct Size { int width = 0, height = 0; double scale = 1; };
    [[nodiscard]] Size take_size();
    [[nodiscard]] double pace_ms() const { return pace_ms_; }
    [[nodiscard]] bool waiting() const { return waiting_; }
    std::vector<std::string> failures;

private:
    struct Step { int line = 0; std::string word, rest; };
    struct Mouse { ImVec2 at; bool down = false; float wheel = 0; };
    struct Key { std::string name; bool down = false; };
    void begin(Program& p, const Step& s);
    void click(ImVec2 at);
    void press(const std::string& key);
    void fail(const Step& s, const std::string& why);
    void drag(Program& p, const Step& s, bool let_go);
    void slide(const Step& s);
    void pull(ImVec2 from, ImVec2 to, bool let_go);
    void swing(Program& p, const Step& s);
    bool scroll_to(const Step& s);
    bool waits(Program& p);
    void checks(Program& p, const Step& s);

    std::vector<Step> steps_;
    std::size_t at_ = 0;
    std::deque<Mouse> mouse_;
    std::deque<Key> keys_;
    std::string typed_, shot_;
    Size size_;
    std::vector<int> held_;
    ImVec2 noted_[2]{};                         ///< origins of the views
    float noted_scale_ = 0;
    ImVec2 pointer_{-1, -1};
    bool down_ = false;
    int frames_ = 0, turns_ = 0;
    bool waiting_ = false, staying_ = false, for_drawing_ = false;
    std::string awaited_;                       ///< text that a wait ends with
    double pace_ms_ = 0;
    std::chrono::steady_clock::time_point since_;  ///< of a wait; only to end one that does not end
};

} // namespace thinskin::gui
