#include "document/write_file.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <sys/stat.h>
#include <unistd.h>

namespace thinskin::gui {

namespace fs = std::filesystem;

namespace {

std::string reason() { return std::strerror(errno); }

bool write_all(int fd, const std::string& text)
{
    for (std::size_t done = 0; done < text.size();) {
        const ssize_t n = ::write(fd, text.data() + done, text.size() - done);
        if (n < 0 && errno == EINTR) continue;
        if (n <= 0) return false;
        done += static_cast<std::size_t>(n);
    }
    return ::fsync(fd) == 0;
}

/// The file a symbolic link leads to, so that saving does not turn the link into a file.
std::string true_place(const std::string& path)
{
    std::error_code none;
    const fs::path p = fs::canonical(path, none);
    return none ? path : p.string();
}

} // namespace

bool write_whole(const std::string& path, const std::string& text, std::string& why, unsigned mode)
{
    const std::string place = true_place(path), beside = fmt::format("{}.part-{}", place, ::getpid());
    struct stat old {};
    const bool exists = ::stat(place.c_str(), &old) == 0;
    if (exists && !S_ISREG(old.st_mode)) {
        why = "this is not a file";
        return false;
    }
    if (exists && ::access(place.c_str(), W_OK) != 0) {
        why = "the file may not be written: " + reason();
        return false;
    }
    const int fd = ::open(beside.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, mode);
    if (fd < 0) {
        why = "nothing can be written in this folder: " + reason();
        return false;
    }
    if (exists) (void)::fchmod(fd, old.st_mode & 07777);
    bool ok = write_all(fd, text);
    ok = ::close(fd) == 0 && ok;
    ok = ok && ::rename(beside.c_str(), place.c_str()) == 0;
    if (!ok) {
        why = "the file cannot be written: " + reason();
        (void)::unlink(beside.c_str());
    }
    return ok;
}

std::optional<std::string> read_whole(const std::string& path, std::string& why, std::size_t limit)
{
    std::error_code none;
    if (fs::is_directory(path, none)) {
        why = "this is a folder";
        return std::nullopt;
    }
    std::ifstream in(path, std::ios::binary);
    if (!in) {
        why = "the file cannot be opened: check its name and whether it may be read";
        return std::nullopt;
    }
    std::string text(limit + 1, '\0');
    in.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (in.bad()) {
        why = "the file cannot be read";
        return std::nullopt;
    }
    text.resize(static_cast<std::size_t>(in.gcount()));
    if (text.size() > limit) {
        why = fmt::format("the file has more than {} bytes", limit);
        return std::nullopt;
    }
    return text;
}

bool make_folder(const std::string& folder)
{
    if (folder.empty()) return false;
    std::error_code none;
    if (fs::is_directory(folder, none)) return true;
    fs::create_directories(folder, none);
    if (!fs::is_directory(folder, none)) return false;
    fs::permissions(folder, fs::perms::owner_all, none);
    return true;
}

} // namespace thinskin::gui
