// The table as a JSON Schema (draft 2020-12), for editors that complete and check while typing. It says less than the
// reader: units, ranges and rules between keys are not in it.
#include "casefile/schema.h"
#include "casefile/shapes.h"

#include <algorithm>
#include <fmt/format.h>

namespace thinskin::casefile {
namespace {

std::string quoted(std::string_view text)
{
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') out += '\\';
        out += c;
    }
    return out + "\"";
}

std::string words(const std::vector<std::string>& all)
{
    std::string out;
    for (const std::string& w : all) out += (out.empty() ? "" : ", ") + quoted(w);
    return fmt::format("\"enum\": [{}]", out);
}

std::string object(const std::string& block, int indent, bool nested);

std::string tuple(std::size_t n)
{
    return fmt::format(R"("type": "array", "items": {{"type": "string"}}, "minItems": {0}, "maxItems": {0})", n);
}

std::string reference(const std::string& block) { return fmt::format("\"$ref\": {}", quoted("#/$defs/" + block.substr(1, block.size() - 2))); }

std::string of_block(const Row& row, int indent)
{
    return row.shared.empty() ? object(row.inside(), indent, true) : reference(row.shared);
}

std::string body(const Row& row, int indent)
{
    switch (row.type) {
    case Type::integer: return row.range.upper == 1 ? "\"const\": 1" : "\"type\": \"integer\"";
    case Type::word: return words(row.words);
    case Type::texts:
    case Type::quantities: return R"("type": "array", "items": {"type": "string"})";
    case Type::point2: return tuple(2);
    case Type::point3: return tuple(3);
    case Type::renames: return R"("type": "object", "additionalProperties": {"type": "string"})";
    case Type::block: return of_block(row, indent);
    case Type::word_or_block: return fmt::format("\"anyOf\": [{{{}}}, {{{}}}]", words(row.words), reference(row.shared));
    case Type::block_or_edges: return fmt::format("\"anyOf\": [{{{}}}, {{{}}}]", reference(row.shared), reference(frames_block));
    case Type::blocks: return fmt::format("\"type\": \"array\", \"items\": {{{}}}", of_block(row, indent));
    case Type::named_blocks: return fmt::format("\"type\": \"object\", \"additionalProperties\": {{{}}}", of_block(row, indent));
    default: return "\"type\": \"string\"";
    }
}

std::string property(const std::string& key, const std::string& text, const std::string& help, int indent)
{
    const std::string blanks(static_cast<std::size_t>(indent), ' ');
    return fmt::format("{}{}: {{{}, \"description\": {}}}", blanks, quoted(key), text, quoted(help));
}

/// Copies leave required keys out, and ends come in one of two pairs: there the reader alone decides.
bool all_required_hold(const std::string& block)
{
    return block != "brackets[]" && block != "reinforcement.angles[]" && block != "<ends>";
}

std::string object(const std::string& block, int indent, bool nested)
{
    const int inner = indent + (nested ? 2 : 0);
    std::vector<std::string> properties, required;
    for (const Row* row : rows_in(block)) {
        properties.push_back(property(row->key(), body(*row, inner + 2), row->help, inner + 2));
        if (row->measured()) properties.push_back(property(row->key() + "_from", words(measured_words()), "How it was measured.", inner + 2));
        if (row->required && all_required_hold(block)) required.push_back(quoted(row->key()));
    }
    const std::string blanks(static_cast<std::size_t>(inner), ' ');
    return fmt::format("\"type\": \"object\", \"additionalProperties\": false, \"required\": [{}], \"properties\": {{\n{}\n{}}}",
                       fmt::join(required, ", "), fmt::join(properties, ",\n"), blanks);
}

} // namespace

std::string schema_json()
{
    std::vector<std::string> blocks, definitions;
    for (const Row& row : schema())
        if (row.path.front() == '<' && row.parent().back() == '>' && std::find(blocks.begin(), blocks.end(), row.parent()) == blocks.end())
            blocks.push_back(row.parent());
    for (const std::string& b : blocks)
        definitions.push_back(fmt::format("    {}: {{{}}}", quoted(b.substr(1, b.size() - 2)), object(b, 4, false)));
    return fmt::format("{{\n  \"$schema\": \"https://json-schema.org/draft/2020-12/schema\",\n  \"title\": \"case file, format 1\",\n  {},\n  \"$defs\": {{\n{}\n  }}\n}}\n",
                       object("", 2, false), fmt::join(definitions, ",\n"));
}

} // namespace thinskin::casefile
