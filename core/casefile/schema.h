#pragma once
#include "base/quantity.h"

#include <limits>
#include <string>
#include <string_view>
#include <vector>

/// The one table of the case file: a row per key. Reader, writer order, hints, starter comments, docs/case_file.md and
/// the JSON Schema come from it.
namespace thinskin::casefile {

enum class Type {
    integer,
    text,
    word,            ///< one of `words`
    kind_name,       ///< the name of a row under fastener_kinds
    section,         ///< "angle 40x40x4"; what it means is the catalogue's business
    quantity,        ///< number and unit
    sheet_thickness, ///< a length where `22 ga` is read too
    quantities,      ///< list of number and unit
    texts,           ///< list of texts
    point2,          ///< [x, y]
    point3,          ///< [x, y, z]
    washer,          ///< "24x2 mm"
    foot,            ///< "60x60x4 mm"
    renames,         ///< {old: new}
    block,           ///< keys of its own
    word_or_block,   ///< one of `words`, or keys of its own
    block_or_edges,  ///< keys of its own, once or under left, right, bottom, top
    blocks,          ///< list of blocks
    named_blocks,    ///< {name: block}
};

/// Range of a single value in the inner unit; for a point it holds for each coordinate.
struct Range {
    double lower = -std::numeric_limits<double>::infinity();
    bool lower_open = false; ///< true: must be more than `lower`
    double upper = std::numeric_limits<double>::infinity();
    bool upper_open = false;
};

struct Row {
    std::string path;      ///< "panel.skin.thickness"; [] = a list entry, {} = a named block, <ends> = a block used in several places
    Type type = Type::text;
    base::Dimension dimension = base::Dimension::length;
    bool required = false;
    std::string fallback;  ///< default as it would be written; empty = none (the thing is absent)
    std::string why;       ///< not empty: the default stands for an unmeasured fact and is listed as an assumption, with this reason
    std::string spread;    ///< low and high value an unmeasured figure is run at: "-10 % .. +10 %", "0 mm .. 0.06 mm"
    Range range;
    std::vector<std::string> words;
    std::string shared;    ///< name of the block used in several places: "<ends>"; empty = the keys follow under `path`
    std::string help;      ///< one plain sentence

    [[nodiscard]] std::string key() const;    ///< last part of the path
    [[nodiscard]] std::string parent() const; ///< path of the block this key stands in; empty = top level
    [[nodiscard]] std::string inside() const; ///< where the keys of this block are listed: "panel.skin", "brackets[]", "<ends>"
    [[nodiscard]] bool measured() const;      ///< may have a sister key `<key>_from`
};

[[nodiscard]] const std::vector<Row>& schema();

/// Row of a key in a block, or nullptr. find_row("panel.skin", "thickness").
[[nodiscard]] const Row* find_row(std::string_view block, std::string_view key);

/// Rows that stand directly in a block, in order.
[[nodiscard]] std::vector<const Row*> rows_in(std::string_view block);

/// How a figure came about: words of every `<key>_from`.
[[nodiscard]] const std::vector<std::string>& measured_words();

/// "a length such as "0.8 mm"", "one of held, hinged, free": the end of "expected ...".
[[nodiscard]] std::string expected(const Row& row);

/// Help, words and default of a key on one line, as a starter case prints it above the key.
[[nodiscard]] std::string comment_of(const Row& row);

[[nodiscard]] std::string schema_markdown();    ///< docs/case_file.md
[[nodiscard]] std::string schema_json();        ///< docs/case_file.schema.json, JSON Schema draft 2020-12

} // namespace thinskin::casefile
