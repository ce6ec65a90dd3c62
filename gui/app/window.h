#pragma once
#include "app/commands.h"

#include <functional>
#include <string>
#include <vector>

struct GLFWwindow;

namespace thinskin::gui {

/// The one window, its OpenGL 3.3 context and Dear ImGui's backends. Nothing else in the program sees GLFW or OpenGL.
class Window {
public:
    struct Options {
        int width = 1280, height = 800;
        bool visible = true;
        bool vsync = true;          ///< false for tests and pictures
    };
    explicit Window(const Options& o);  ///< throws std::runtime_error with what is missing (no display, no OpenGL 3.3)
    ~Window();
    Window(const Window&) = delete;
    Window& operator=(const Window&) = delete;

    /// Events, then backend frames; waits for an event at most `seconds` when there is nothing to do.
    void begin_frame(double seconds);
    /// Renders and shows; the picture goes into `into` too when it is given.
    struct Picture { std::vector<unsigned char> rgb; int width = 0, height = 0; }; ///< first row on top
    void end_frame(Picture* into = nullptr);
    void fonts_changed();               ///< after the atlas was built anew

    [[nodiscard]] bool close_asked() const;
    void refuse_close();
    void resize(int width, int height);
    void title(const std::string& words);
    [[nodiscard]] float display_scale() const;
    std::vector<std::string> dropped;   ///< paths dropped on the window since last cleared
    std::vector<KeyPress> pressed;      ///< keys since last cleared

private:
    GLFWwindow* handle_ = nullptr;
};

} // namespace thinskin::gui
