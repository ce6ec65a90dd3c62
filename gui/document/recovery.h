#pragma once
#include "document/document.h"

#include <chrono>
#include <memory>
#include <string>
#include <vector>

namespace thinskin::gui {

/// An autosaved text whose program is no longer running.
struct Recoverable { std::string slot, file, time, text; bool was_on_disk = false; }; ///< file: where it belonged, may be empty; time: UTC, YYYY-MM-DD HH:MM

/// One slot of a folder for one open document. The slot is locked while this object lives; a killed program leaves an unlocked
/// slot with its text, which another start finds.
class Autosave {
public:
    explicit Autosave(std::string folder);
    ~Autosave();                         ///< a program that ends by itself leaves no slot behind
    Autosave(Autosave&&) noexcept;
    Autosave& operator=(Autosave&&) noexcept;

    /// Call often: writes when the document is dirty, its text is new and `pause` has passed since the last write (a first text
    /// is written at once). Clears the slot when the document is no longer dirty. Returns true when it wrote.
    bool tick(const Document& d, std::chrono::steady_clock::time_point now);
    void clear();                        ///< the user discarded the changes
    std::chrono::milliseconds pause{5000};

    [[nodiscard]] static std::vector<Recoverable> find(const std::string& folder);
    [[nodiscard]] static Document recover(const Recoverable& r); ///< dirty; saved text = what is on disk now, where it was on disk
    static void discard(const std::string& folder, const Recoverable& r);

private:
    struct Slot;
    std::unique_ptr<Slot> slot_;
};

} // namespace thinskin::gui
