#pragma once
#include "yaml/document.h"

#include <functional>
#include <optional>

namespace thinskin::yaml {

/// One step down a tree: a key, or (in brackets in a path) the number of a list entry or a key that may hold dots.
struct PathPart { std::string name; bool bracket = false; };

/// "brackets[0].fasteners[1].at[0]", "fastener_kinds[4.8 screw].hole"; empty = not a path.
[[nodiscard]] std::vector<PathPart> path_parts(std::string_view path);

/// The node at a path; nullptr = none there.
[[nodiscard]] const Node* find_node(const Node& root, const std::vector<PathPart>& path);

/// Keys of the block at a path in the order in which they should stand: where a new key goes.
using KeyOrder = std::function<std::vector<std::string>(const std::string& block_path)>;

struct Patch {
    enum class Kind { set, set_lines, append, remove, rename } kind = Kind::set;
    std::string path;
    Node value;                 ///< set, set_lines, append; rename: the new key
};

struct Patched {
    bool ok = false;
    std::string text, why;      ///< the new text; or what is wrong with the path or the value
    bool rewritten = false;     ///< the bytes could not be patched: the text comes from emit(), comments and layout are lost
};

/// Changes the bytes of one node and no others. The result is parsed and compared with the tree that the patch should give; only
/// when they differ (a shape that Spans does not know) is the whole text written anew.
/// set: replaces the value, or adds the key and the blocks above it that are missing; a block in the place of another is written on one
/// line, with set_lines on as many as emit() takes. append: adds to the list, or makes it. remove: takes away key and value, or a list
/// entry; the last one leaves {} or []. rename: another key for the same value; refused where the block has that key.
[[nodiscard]] Patched patch(const std::string& text, const Patch& p, const KeyOrder& order = {});

/// Many single values at once, with one parse before and one after: what a drag does many times a second. ok = false without a reason
/// when it is not that simple (a key that is missing, a block, one path twice): use patch() one after the other.
[[nodiscard]] Patched set_values(const std::string& text, const std::vector<Patch>& all);

} // namespace thinskin::yaml
