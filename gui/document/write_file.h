#pragma once
#include <optional>
#include <string>

/// Inside document: whole files in and out.
namespace thinskin::gui {

/// Writes beside the file and renames, so that the file is whole or untouched even when power fails; keeps the file's permissions
/// and follows a symbolic link. `mode` is that of a new file. False: see `why`.
bool write_whole(const std::string& path, const std::string& text, std::string& why, unsigned mode = 0666);

/// At most `limit` bytes, else nothing.
[[nodiscard]] std::optional<std::string> read_whole(const std::string& path, std::string& why, std::size_t limit);

/// Makes a folder and those above it; for the owner alone. False: it is not there and cannot be made.
bool make_folder(const std::string& folder);

} // namespace thinskin::gui
