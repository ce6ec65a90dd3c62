#include "document/files.h"

#include "casefile/starter.h"
#include "casefile/starter_texts.h"
#include "document/write_file.h"

#include <filesystem>

namespace thinskin::gui {
namespace {

/// Somewhat more than a case file may have, so that the reader can say that it is too large.
constexpr std::size_t largest_file = (std::size_t{1} << 20) + 1;

std::string absolute(const std::string& path)
{
    std::error_code none;
    const auto p = std::filesystem::absolute(path, none);
    return none ? path : p.lexically_normal().string();
}

} // namespace

Opened open_file(const std::string& path)
{
    Opened out;
    if (auto text = read_whole(path, out.why, largest_file)) out.document.emplace(std::move(*text), absolute(path));
    return out;
}

std::vector<Starter> starters()
{
    std::vector<Starter> out;
    for (const casefile::StarterText& s : casefile::starter_texts()) out.push_back({std::string(s.kind), std::string(s.purpose)});
    return out;
}

Document new_document(const std::string& kind) { return {casefile::starter(kind), ""}; }

Disk compare_with_disk(const Document& d)
{
    if (d.file().empty() || !d.saved_text()) return Disk::unsaved;
    std::error_code none;
    if (!std::filesystem::exists(d.file(), none)) return Disk::gone;
    std::string why;
    const auto now = read_whole(d.file(), why, largest_file);
    return now && *now == *d.saved_text() ? Disk::same : Disk::changed;
}

Saved save(Document& d, bool overwrite)
{
    if (d.file().empty()) return {Saved::Kind::failed, "the case has no file yet: save it under a name"};
    if (!overwrite && compare_with_disk(d) == Disk::changed) return {Saved::Kind::changed_outside, "another program has changed the file since it was opened"};
    std::string why;
    if (!write_whole(d.file(), d.text(), why)) return {Saved::Kind::failed, why};
    d.mark_saved(d.file());
    return {};
}

Saved save_as(Document& d, const std::string& path)
{
    if (path.empty()) return {Saved::Kind::failed, "a file needs a name"};
    std::string why;
    const std::string place = absolute(path);
    if (!write_whole(place, d.text(), why)) return {Saved::Kind::failed, why};
    d.mark_saved(place);
    return {};
}

bool reload(Document& d, std::string& why)
{
    auto text = read_whole(d.file(), why, largest_file);
    if (!text) return false;
    d.replace_text("Take the file as it is on disk", *text);
    d.mark_saved(d.file());
    return true;
}

} // namespace thinskin::gui
