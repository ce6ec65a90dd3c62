#include "app/window.h"

#include <algorithm>
#include <stdexcept>

#define GL_GLEXT_PROTOTYPES
#include <GLFW/glfw3.h>
#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

namespace thinskin::gui {
namespace {

std::string last_error()
{
    const char* words = nullptr;
    glfwGetError(&words);
    return words ? words : "no reason given";
}

void on_drop(GLFWwindow* w, int count, const char** paths)
{
    auto* self = static_cast<Window*>(glfwGetWindowUserPointer(w));
    for (int i = 0; i < count; ++i) self->dropped.emplace_back(paths[i]);
}

/// The letter that the key has on this keyboard: GLFW names keys by their place on a US one.
int on_this_keyboard(int key, int scan)
{
    const char* name = key >= GLFW_KEY_A && key <= GLFW_KEY_Z ? glfwGetKeyName(key, scan) : nullptr;
    return name && name[0] >= 'a' && name[0] <= 'z' && name[1] == 0 ? name[0] - 'a' + GLFW_KEY_A : key;
}

/// Every press, also of a key that came up again before the next frame: the library's 1.86 only looks whether it is down then.
void on_key(GLFWwindow* w, int key, int scan, int action, int mods)
{
    auto* self = static_cast<Window*>(glfwGetWindowUserPointer(w));
    if (action != GLFW_RELEASE) self->pressed.push_back({on_this_keyboard(key, scan), (mods & GLFW_MOD_CONTROL) != 0, (mods & GLFW_MOD_SHIFT) != 0, (mods & GLFW_MOD_ALT) != 0, action == GLFW_REPEAT});
}

/// Of the picture just rendered: after it is shown its buffer is undefined.
void read_pixels(Window::Picture& out, int width, int height)
{
    const auto row = static_cast<std::size_t>(width) * 3, rows = static_cast<std::size_t>(height);
    std::vector<unsigned char> upside_down(row * rows);
    glPixelStorei(GL_PACK_ALIGNMENT, 1);
    glReadPixels(0, 0, width, height, GL_RGB, GL_UNSIGNED_BYTE, upside_down.data());
    out = {std::vector<unsigned char>(upside_down.size()), width, height};
    for (std::size_t y = 0; y < rows; ++y) std::copy_n(upside_down.data() + (rows - 1 - y) * row, row, out.rgb.data() + y * row);
}

} // namespace

Window::Window(const Options& o)
{
    if (!glfwInit()) throw std::runtime_error("no window: " + last_error() + " (is there a display?)");
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_VISIBLE, o.visible ? GLFW_TRUE : GLFW_FALSE);
    glfwWindowHint(GLFW_SAMPLES, 0); // lines are smoothed by the library
    handle_ = glfwCreateWindow(o.width, o.height, "thinskin", nullptr, nullptr);
    if (!handle_) {
        const std::string why = last_error();
        glfwTerminate();
        throw std::runtime_error("no window with OpenGL 3.3: " + why);
    }
    glfwSetWindowSizeLimits(handle_, 1000, 640, GLFW_DONT_CARE, GLFW_DONT_CARE);
    glfwSetWindowUserPointer(handle_, this);
    glfwSetDropCallback(handle_, on_drop);
    glfwSetKeyCallback(handle_, on_key); // before the library's, which calls it first
    glfwMakeContextCurrent(handle_);
    glfwSwapInterval(o.vsync ? 1 : 0);
    ImGui_ImplGlfw_InitForOpenGL(handle_, true);
    ImGui_ImplOpenGL3_Init("#version 330 core");
}

Window::~Window()
{
    ImGui_ImplOpenGL3_Shutdown();
    ImGui_ImplGlfw_Shutdown();
    glfwDestroyWindow(handle_);
    glfwTerminate();
}

void Window::begin_frame(double seconds)
{
    if (seconds > 0) glfwWaitEventsTimeout(seconds);
    else glfwPollEvents();
    ImGui_ImplOpenGL3_NewFrame();
    ImGui_ImplGlfw_NewFrame();
}

void Window::end_frame(Picture* into)
{
    int w = 0, h = 0;
    glfwGetFramebufferSize(handle_, &w, &h);
    glViewport(0, 0, w, h);
    glClearColor(0.91f, 0.90f, 0.88f, 1);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    if (into) read_pixels(*into, w, h);
    glfwSwapBuffers(handle_);
}

void Window::fonts_changed()
{
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    ImGui_ImplOpenGL3_CreateFontsTexture();
}

bool Window::close_asked() const { return glfwWindowShouldClose(handle_) != 0; }
void Window::refuse_close() { glfwSetWindowShouldClose(handle_, GLFW_FALSE); }
void Window::resize(int width, int height) { glfwSetWindowSize(handle_, width, height); }
void Window::title(const std::string& words) { glfwSetWindowTitle(handle_, words.c_str()); }

float Window::display_scale() const
{
    float x = 1, y = 1;
    glfwGetWindowContentScale(handle_, &x, &y);
    return std::clamp(std::max(x, y), 1.0f, 4.0f);
}

} // namespace thinskin::gui
