#pragma once
#include "document/document.h"

#include <optional>
#include <string>
#include <vector>

/// Files of a document. Nothing here asks the user: a window asks and calls again.
namespace thinskin::gui {

struct Opened { std::optional<Document> document; std::string why; }; ///< a file with errors opens: the document has its diagnostics
[[nodiscard]] Opened open_file(const std::string& path);

/// Starter cases as `thinskin new` writes them.
struct Starter { std::string kind, title; };
[[nodiscard]] std::vector<Starter> starters();
[[nodiscard]] Document new_document(const std::string& kind);

enum class Disk { same, changed, gone, unsaved };  ///< the file against the text last opened or saved; unsaved: never on disk
[[nodiscard]] Disk compare_with_disk(const Document& d);

struct Saved {
    enum class Kind { ok, changed_outside, failed } kind = Kind::ok;
    std::string why = {};
};
/// Writes beside the file and renames, so that a file is whole or untouched. `changed_outside`: somebody else wrote the file
/// since it was opened; call again with `overwrite` when the user wants that.
Saved save(Document& d, bool overwrite = false);
Saved save_as(Document& d, const std::string& path);
/// Takes the file's text as a step that can be undone. False: it cannot be read, see `why`.
bool reload(Document& d, std::string& why);

} // namespace thinskin::gui
