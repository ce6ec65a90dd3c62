#include "document/recovery.h"

#include "document/files.h"
#include "document/write_file.h"

#include <algorithm>
#include <atomic>
#include <ctime>
#include <fcntl.h>
#include <filesystem>
#include <fmt/format.h>
#include <sys/file.h>
#include <unistd.h>

namespace thinskin::gui {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t largest = std::size_t{2} << 20;

std::string path_of(const std::string& folder, const std::string& slot, const char* ending) { return folder + "/" + slot + ending; }

std::string now_utc()
{
    const std::time_t t = std::time(nullptr);
    std::tm parts{};
    ::gmtime_r(&t, &parts);
    char text[32];
    return {text, std::strftime(text, sizeof text, "%Y-%m-%d %H:%M", &parts)};
}

std::string new_slot_name()
{
    static std::atomic<int> count = 0;
    const auto ticks = std::chrono::system_clock::now().time_since_epoch().count();
    return fmt::format("case-{}-{}-{}", ::getpid(), ++count, ticks);
}

void remove_slot(const std::string& folder, const std::string& slot)
{
    std::error_code none;
    for (const char* ending : {".yaml", ".about", ".lock"}) fs::remove(path_of(folder, slot, ending), none);
}

/// A lock goes with the process that holds it, however it ends.
class Lock {
public:
    explicit Lock(const std::string& path) : fd_(::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600)) {}
    ~Lock() { if (fd_ >= 0) ::close(fd_); }
    Lock(const Lock&) = delete;
    Lock& operator=(const Lock&) = delete;
    [[nodiscard]] bool take() const { return fd_ >= 0 && ::flock(fd_, LOCK_EX | LOCK_NB) == 0; }

private:
    int fd_;
};

std::optional<Recoverable> read_slot(const std::string& folder, const std::string& slot)
{
    std::string why;
    auto text = read_whole(path_of(folder, slot, ".yaml"), why, largest);
    const auto about = read_whole(path_of(folder, slot, ".about"), why, largest);
    if (!text) return std::nullopt;
    Recoverable r;
    r.slot = slot;
    r.text = std::move(*text);
    std::vector<std::string> lines(1);
    for (const char c : about.value_or("")) {
        if (c == '\n') lines.emplace_back();
        else lines.back() += c;
    }
    lines.resize(3);
    r.time = lines[0];
    r.was_on_disk = lines[1] == "on disk";
    r.file = lines[2];
    return r;
}

} // namespace

struct Autosave::Slot {
    explicit Slot(std::string f) : folder(std::move(f)), name(new_slot_name()) {}
    std::string folder, name, written;
    std::unique_ptr<Lock> lock;
    std::optional<std::chrono::steady_clock::time_point> last;

    bool write(const Document& d)
    {
        if (!make_folder(folder)) return false;
        if (!lock) {
            lock = std::make_unique<Lock>(path_of(folder, name, ".lock"));
            if (!lock->take()) return false;
        }
        const bool line = d.file().find('\n') == std::string::npos; // a file name with a line end is saved under no name
        const std::string about = fmt::format("{}\n{}\n{}", now_utc(), d.saved_text() ? "on disk" : "new", line ? d.file() : "");
        std::string why;
        return write_whole(path_of(folder, name, ".about"), about, why, 0600) && write_whole(path_of(folder, name, ".yaml"), d.text(), why, 0600);
    }

    void clear()
    {
        if (lock) remove_slot(folder, name);
        lock.reset();
        last.reset();
        written.clear();
    }
};

Autosave::Autosave(std::string folder) : slot_(std::make_unique<Slot>(std::move(folder))) {}
Autosave::~Autosave() { if (slot_) slot_->clear(); }
Autosave::Autosave(Autosave&&) noexcept = default;

Autosave& Autosave::operator=(Autosave&& other) noexcept
{
    if (this != &other) {
        if (slot_) slot_->clear();
        slot_ = std::move(other.slot_);
        pause = other.pause;
    }
    return *this;
}

bool Autosave::tick(const Document& d, std::chrono::steady_clock::time_point now)
{
    if (!d.dirty()) {
        clear();
        return false;
    }
    if (slot_->last && (now - *slot_->last < pause || d.text() == slot_->written)) return false;
    if (!slot_->write(d)) return false;
    slot_->last = now;
    slot_->written = d.text();
    return true;
}

void Autosave::clear()
{
    if (slot_) slot_->clear();
}

std::vector<Recoverable> Autosave::find(const std::string& folder)
{
    std::vector<Recoverable> out;
    std::error_code none;
    for (fs::directory_iterator i(folder, none), end; !none && i != end; i.increment(none)) {
        if (i->path().extension() != ".lock") continue;
        const std::string slot = i->path().stem().string();
        if (!Lock(i->path().string()).take()) continue; // its program still runs
        if (auto r = read_slot(folder, slot)) out.push_back(std::move(*r));
        else remove_slot(folder, slot);
    }
    std::sort(out.begin(), out.end(), [](const Recoverable& a, const Recoverable& b) { return a.time != b.time ? a.time > b.time : a.slot < b.slot; });
    return out;
}

Document Autosave::recover(const Recoverable& r)
{
    Document d(r.text, r.file);
    std::string why;
    d.set_saved_text(r.was_on_disk && !r.file.empty() ? read_whole(r.file, why, largest) : std::nullopt);
    return d;
}

void Autosave::discard(const std::string& folder, const Recoverable& r) { remove_slot(folder, r.slot); }

} // namespace thinskin::gui
