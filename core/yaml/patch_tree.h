#pragma once
#include "yaml/patch.h"

/// Inside yaml: a patch worked out on the tree, with all that is needed to do the same to the bytes.
namespace thinskin::yaml {

struct Planned {
    enum class Do { replace, replace_lines, insert_key, append, remove, rename, nothing } what = Do::nothing;
    std::vector<std::size_t> way;   ///< to the node that is replaced, or whose child is added or removed: child numbers from the root
    std::size_t child = 0;          ///< insert_key, remove, rename: number of the child
    std::string key;                ///< insert_key, rename
    Node value;
    std::string why;                ///< nothing: why
};

[[nodiscard]] Planned plan(const Node& root, const Patch& p, const KeyOrder& order);
/// The tree after the patch.
void apply(Node& root, const Planned& p);
[[nodiscard]] const Node& child(const Node& n, std::size_t i);
/// Same kinds, texts, keys and order; places do not count.
[[nodiscard]] bool same(const Node& a, const Node& b);

} // namespace thinskin::yaml
