#include "casefile/schema.h"

#include "casefile/row_maker.h"

#include <fmt/format.h>

namespace thinskin::casefile {
namespace {

std::vector<Row> all_rows()
{
    std::vector<Row> all;
    for (const auto part : {job_rows, catalogue_rows, road_rows, panel_rows, door_rows, item_rows, bracket_rows, fastener_rows, reinforcement_rows, load_rows, propose_rows, shared_rows})
        for (Row& row : part()) all.push_back(std::move(row));
    return all;
}

std::string an_example(const Row& row)
{
    switch (row.type) {
    case Type::integer: return row.range.upper == 1 ? "the number 1" : "a whole number such as 8";
    case Type::text: return "a text";
    case Type::texts: return "a list of texts such as [angle 40x40x4, M8]";
    case Type::kind_name: return "the name of a fastener kind";
    case Type::section: return "a section such as \"angle 40x40x4\"";
    case Type::washer: return "a washer such as \"24x2 mm\" (diameter x thickness)";
    case Type::foot: return "a foot such as \"60x60x4 mm\" (width x height x thickness)";
    case Type::renames: return "names such as {L1: R1, L2: R2}";
    case Type::blocks: return "a list with a dash before each entry";
    case Type::named_blocks: return "a block of named blocks";
    default: return "a block of keys";
    }
}

std::string an_amount(const Row& row)
{
    using base::Dimension;
    const std::string example(base::example(row.dimension));
    const bool force = row.dimension == Dimension::force;
    switch (row.type) {
    case Type::quantities: return fmt::format("a list such as [{}]", row.dimension == Dimension::length ? "210 mm, 1290 mm" : example);
    case Type::point2: return "two lengths such as [150 mm, 420 mm]";
    case Type::point3: return force ? "three forces such as [0 N, 0 N, 5 N]" : "three lengths such as [352 mm, 965 mm, 205 mm]";
    default: return fmt::format("{} {} such as \"{}\"", row.dimension == Dimension::angle ? "an" : "a", base::name(row.dimension), example);
    }
}

} // namespace

const std::vector<Row>& schema()
{
    static const std::vector<Row> rows = all_rows();
    return rows;
}

std::string Row::key() const
{
    const std::size_t dot = path.rfind('.');
    return dot == std::string::npos ? path : path.substr(dot + 1);
}

std::string Row::parent() const
{
    const std::size_t dot = path.rfind('.');
    return dot == std::string::npos ? std::string{} : path.substr(0, dot);
}

std::string Row::inside() const
{
    if (!shared.empty()) return shared;
    if (type == Type::blocks) return path + "[]";
    if (type == Type::named_blocks) return path + "{}";
    return path;
}

bool Row::measured() const
{
    switch (type) {
    case Type::quantity:
    case Type::sheet_thickness:
    case Type::quantities:
    case Type::point2:
    case Type::point3: return true;
    default: return false;
    }
}

const Row* find_row(std::string_view block, std::string_view key)
{
    for (const Row& row : schema()) {
        const std::string_view path = row.path;
        const std::size_t head = block.empty() ? 0 : block.size() + 1;
        if (path.size() != head + key.size() || path.substr(head) != key) continue;
        if (block.empty() || (path.substr(0, block.size()) == block && path[block.size()] == '.')) return &row;
    }
    return nullptr;
}

std::vector<const Row*> rows_in(std::string_view block)
{
    std::vector<const Row*> out;
    for (const Row& row : schema())
        if (row.parent() == block) out.push_back(&row);
    return out;
}

const std::vector<std::string>& measured_words()
{
    static const std::vector<std::string> words = {"offcut", "hole_lip", "ultrasonic", "scales", "drawing", "assumed"};
    return words;
}

std::string expected(const Row& row)
{
    const std::string words = fmt::format("{}", fmt::join(row.words, ", "));
    if (row.type == Type::word) return row.words.size() == 1 ? words : "one of " + words;
    if (row.type == Type::word_or_block) return fmt::format("{}, or a block of keys", words);
    if (row.measured()) return an_amount(row);
    return an_example(row);
}

} // namespace thinskin::casefile
