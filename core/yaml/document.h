#pragma once
#include "base/location.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// The only folder that sees the YAML library. Scalars stay text: what a value means is the reader's business.
namespace thinskin::yaml {

struct Entry;

struct Node {
    enum class Kind { null, scalar, list, map } kind = Kind::null;
    base::Location at;          ///< line and column, counted in characters
    std::size_t offset = 0;     ///< byte offset in the text (after a byte order mark)
    std::string text;           ///< scalar only
    bool quoted = false;        ///< "..." or '...' or a text block
    bool refused = false;       ///< an error about this node is already reported: do not report another
    std::vector<Node> items;    ///< list only
    std::vector<Entry> entries; ///< map only, in the order of the file, each key once
    std::string comment;        ///< written above the node by emit(); never filled by parse()

    [[nodiscard]] const Node* find(std::string_view key) const; ///< map only; nullptr = no such key
};

struct Entry {
    std::string key;
    base::Location at;
    Node value;
    std::size_t offset = 0; ///< of the key, as Node::offset
};

struct Limits {
    std::size_t bytes = std::size_t{1} << 20;
    int depth = 32;
    int nodes = 100000;
};

/// What became of a text. `usable` is false after a syntax error or a broken limit: then there is exactly one error.
/// Otherwise `errors` lists every duplicate key, anchor, alias, merge key, tag and second document.
struct Document {
    bool usable = false;
    Node root;
    std::vector<base::Diagnostic> errors;
};

[[nodiscard]] Document parse(std::string_view text, const std::string& file_name, const Limits& limits = {});

} // namespace thinskin::yaml
