#include "record_rows.h"

#include "casefile/schema.h"
#include "casefile/write_visitor.h"

#include <algorithm>
#include <string_view>

namespace thinskin::cli {
namespace {

/// End of the part of a key path that starts at `at`: a dot outside of brackets, for names in brackets may hold dots.
std::size_t end_of_part(std::string_view path, std::size_t at)
{
    int depth = 0;
    for (; at < path.size(); ++at) {
        if (path[at] == '[') ++depth;
        if (path[at] == ']') --depth;
        if (path[at] == '.' && depth <= 0) return at;
    }
    return at;
}

/// The row of the schema for a key path; null for what stands under a name that the schema leaves open.
const casefile::Row* row_of(std::string_view path)
{
    std::string block;
    const casefile::Row* row = nullptr;
    for (std::size_t at = 0; at <= path.size();) {
        const std::size_t end = end_of_part(path, at);
        const std::string_view part = path.substr(at, end - at);
        row = casefile::find_row(block, part.substr(0, part.find('[')));
        if (row == nullptr) return nullptr;
        block = row->inside();
        at = end + 1;
    }
    return row;
}

std::string measured_from(const model::Case& c, const std::string& key)
{
    const auto how = c.measured_from.find(key);
    if (how != c.measured_from.end()) return how->second;
    const bool by_default = std::any_of(c.defaults.begin(), c.defaults.end(), [&](const model::DefaultTaken& d) { return d.key_path == key; });
    if (by_default) return "default";
    const casefile::Row* row = row_of(key);
    return row != nullptr && row->measured() ? "assumed (not stated)" : "";
}

/// Key path as the rest of the program writes it: fastener_kinds.NAME.key -> fastener_kinds[NAME].key; a name may hold dots.
std::string with_brackets(const std::string& key)
{
    const std::string kinds = "fastener_kinds.";
    const std::size_t last = key.rfind('.');
    if (key.rfind(kinds, 0) != 0 || last <= kinds.size()) return key;
    return "fastener_kinds[" + key.substr(kinds.size(), last - kinds.size()) + "]" + key.substr(last);
}

/// "item.box.size[2]" -> "item.box.size"; other paths unchanged.
std::string without_index(const std::string& key)
{
    if (key.empty() || key.back() != ']') return key;
    const std::size_t open = key.rfind('[');
    const std::string inside = key.substr(open + 1, key.size() - open - 2);
    const bool number = !inside.empty() && std::all_of(inside.begin(), inside.end(), [](char ch) { return ch >= '0' && ch <= '9'; });
    return number ? key.substr(0, open) : key;
}

/// The colon after the path; one inside of brackets belongs to a name.
std::size_t colon(const std::string& line)
{
    int depth = 0;
    for (std::size_t i = 0; i < line.size(); ++i) {
        if (line[i] == '[') ++depth;
        if (line[i] == ']') --depth;
        if (line[i] == ':' && depth <= 0) return i;
    }
    return line.size();
}

} // namespace

std::vector<report::InputRow> record_rows(const model::Case& c)
{
    std::vector<report::InputRow> rows;
    bool open = false; // the last row is a list whose bracket is not closed yet
    const auto close = [&] {
        if (open) rows.back().value += "]";
        open = false;
    };
    for (const std::string& line : casefile::list_values(c)) {
        const std::size_t at = colon(line);
        const std::string path = line.substr(0, at), key = with_brackets(without_index(path)), value = at + 2 <= line.size() ? line.substr(at + 2) : "";
        const bool of_list = without_index(path) != path;
        if (open && of_list && rows.back().key == key) {
            rows.back().value += ", " + value;
            continue;
        }
        close();
        if (key.size() > 5 && key.compare(key.size() - 5, 5, "_from") == 0 && c.measured_from.count(key.substr(0, key.size() - 5)) != 0) continue; // told beside its value
        open = of_list;
        rows.push_back({key, (open ? "[" : "") + value, measured_from(c, key)});
    }
    close();
    return rows;
}

} // namespace thinskin::cli
