#pragma once
#include "casefile/schema.h"

#include <string>
#include <string_view>
#include <vector>

namespace thinskin::casefile {

/// One change of the text of a case file, at a key path as the reader writes it: "panel.width", "brackets[0].fasteners[1].at[0]",
/// "fastener_kinds[M8 bolt].hole". Blocks on the way that are not there yet are made.
struct Change {
    enum class Kind {
        set,       ///< a single value, as the user typed it: "420 mm"; the key is added where it is missing
        set_block, ///< the same with a block or list in flow form: "{weld: 3 mm}", "[1 mm, 2 mm]"
        set_lines, ///< the same, written on as many lines as the writer takes: for whole parts of a case
        append,    ///< one more entry of the list at `path`, in flow form
        remove,    ///< the key or the list entry with all that is in it
        rename,    ///< the key itself: "fastener_kinds[M8 bolt]" becomes `text`; those who use the name are changed beside it
    } kind = Kind::set;
    std::string path, text;

    bool operator==(const Change&) const = default;
};

[[nodiscard]] inline Change set(std::string path, std::string text) { return {Change::Kind::set, std::move(path), std::move(text)}; }
[[nodiscard]] inline Change set_block(std::string path, std::string flow) { return {Change::Kind::set_block, std::move(path), std::move(flow)}; }
[[nodiscard]] inline Change set_lines(std::string path, std::string flow) { return {Change::Kind::set_lines, std::move(path), std::move(flow)}; }
[[nodiscard]] inline Change rename(std::string path, std::string key) { return {Change::Kind::rename, std::move(path), std::move(key)}; }
[[nodiscard]] inline Change append(std::string path, std::string flow) { return {Change::Kind::append, std::move(path), std::move(flow)}; }
[[nodiscard]] inline Change remove(std::string path) { return {Change::Kind::remove, std::move(path), {}}; }

struct Edited {
    bool ok = false;
    std::string text;           ///< the new text; the old one when not ok
    std::string why;            ///< set when not ok: no such place, not a list, the text cannot be read as YAML
    bool comments_lost = false; ///< the bytes could not be patched: the file was written anew, without comments and layout
};

/// Applies the changes one after the other; all or none. Only the bytes of the nodes concerned change: comments, layout, order,
/// line ends and a byte order mark stay. A removed part takes the comments inside it and behind it on its lines with it. New
/// keys go where the schema has them. Each step is parsed again and compared with the tree it should give.
[[nodiscard]] Edited edit_text(const std::string& text, const std::vector<Change>& changes);

/// The row of the schema for a concrete key path ("brackets[0].leg.gauge"); nullptr for what stands under a name that the
/// schema leaves open, and for an element of a point or list ("...at[0]": use the path without its index).
[[nodiscard]] const Row* row_at(std::string_view path);

} // namespace thinskin::casefile
