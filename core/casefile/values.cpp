#include "casefile/values.h"

#include "casefile/edit.h"
#include "casefile/write_visitor.h"

#include <algorithm>

namespace thinskin::casefile {
namespace {

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

bool is_measured_from(const model::Case& c, const std::string& path)
{
    return path.size() > 5 && path.ends_with("_from") && c.measured_from.count(path.substr(0, path.size() - 5)) != 0;
}

} // namespace

std::string measured_from(const model::Case& c, const std::string& path)
{
    const auto how = c.measured_from.find(path);
    if (how != c.measured_from.end()) return how->second;
    const bool by_default = std::any_of(c.defaults.begin(), c.defaults.end(), [&](const model::DefaultTaken& d) { return d.key_path == path; });
    if (by_default) return "default";
    if (path.rfind("catalogue.", 0) == 0) return ""; // a row of the case's own says itself how it is known
    const Row* row = row_at(path);
    return row != nullptr && row->measured() ? "assumed (not stated)" : "";
}

std::vector<Value> case_values(const model::Case& c)
{
    std::vector<Value> out;
    for (const std::string& line : list_values(c)) {
        const std::size_t at = colon(line);
        const std::string path = line.substr(0, at), key = with_brackets(without_index(path)), text = at + 2 <= line.size() ? line.substr(at + 2) : "";
        const bool of_list = without_index(path) != path;
        if (of_list && !out.empty() && out.back().list && out.back().path == key) out.back().items.push_back(text);
        else if (!is_measured_from(c, key)) out.push_back({key, of_list, {text}});
    }
    return out;
}

} // namespace thinskin::casefile
