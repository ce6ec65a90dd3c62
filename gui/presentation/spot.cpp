#include "casefile/edit.h"
#include "presentation/field_rows.h"
#include "presentation/keys.h"

#include <algorithm>
#include <fmt/format.h>

/// From a key with names in it ("reinforcement.angles[upper rail].section") to the field of the window.
namespace thinskin::gui {
namespace {

/// Number of the entry of this name; of a copy, that of the one it is made from when it has no such key itself.
template <class T> std::string numbered(const std::vector<T>& all, const std::string& name)
{
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].name == name) return std::to_string(i);
    return name;
}

template <class T> std::string original(const std::vector<T>& all, const std::string& name)
{
    for (const T& x : all)
        if (x.name == name) {
            if (!x.copy_of.empty()) return x.copy_of;
            if constexpr (requires { x.mirror_of; })
                if (!x.mirror_of.empty()) return x.mirror_of;
        }
    return name;
}

/// Replaces the name in "LIST[NAME]rest".
template <class T> std::string with_number(const std::string& key, const std::string& list, const std::vector<T>& all, bool of_original)
{
    if (!key.starts_with(list + "[")) return key;
    const std::size_t from = list.size() + 1, to = key.find(']', from);
    if (to == std::string::npos) return key;
    std::string name = key.substr(from, to - from);
    if constexpr (requires { all.front().copy_of; })
        if (of_original) name = original(all, name);
    return list + "[" + numbered(all, name) + key.substr(to);
}

/// "...fasteners[L1].at": the fastener of this name; those without a name stand in the order of the drawing's numbers.
std::string with_fastener(const std::string& key, const std::vector<model::Fastener>& all)
{
    const std::size_t from = key.rfind(".fasteners[");
    if (from == std::string::npos) return key;
    const std::size_t name = from + 11, to = key.find(']', name);
    if (to == std::string::npos) return key;
    return key.substr(0, name) + numbered(all, key.substr(name, to - name)) + key.substr(to);
}

/// A fastener of a copy under the name it has in the original: the copy has no field for it.
std::string with_original_name(const model::Case& c, const std::string& key)
{
    for (const model::Bracket& b : c.brackets) {
        const std::string list = "brackets[" + b.name + "].fasteners[";
        if (!key.starts_with(list)) continue;
        for (const auto& [old, name] : b.rename)
            if (key.starts_with(list + name + "]")) return list + old + key.substr(list.size() + name.size());
    }
    return key;
}

std::string in_the_file(const model::Case& c, std::string key, bool of_original)
{
    if (of_original) key = with_original_name(c, key);
    key = with_number(key, "brackets", c.brackets, of_original);
    for (std::size_t i = 0; i < c.brackets.size(); ++i)
        if (key.starts_with(fmt::format("brackets[{}].fasteners[", i))) key = with_fastener(key, c.brackets[i].fasteners);
    if (c.item) key = with_number(key, "item.fixings", c.item->fixings, of_original);
    key = with_number(key, "reinforcement.angles", c.reinforcement.angles, of_original);
    key = with_number(key, "reinforcement.straps", c.reinforcement.straps, of_original);
    key = with_number(key, "reinforcement.backing_plates", c.reinforcement.backing_plates, of_original);
    key = with_number(key, "reinforcement.boards", c.reinforcement.boards, of_original);
    key = with_number(key, "panel.openings", c.panel.openings, of_original);
    return with_number(key, "panel.ribs", c.panel.ribs, of_original);
}

bool below(const std::string& path, const std::string& key) { return path == key || path.starts_with(key + ".") || path.starts_with(key + "["); }

std::string label_of(const Section& s, const std::string& field) { return s.title + ": " + field; }

Spot in_groups(const std::vector<InputGroup>& groups, const std::string& key)
{
    for (const InputGroup& g : groups)
        for (const Section& s : g.sections) {
            for (const Field& f : s.fields)
                if (below(f.path, key)) return {label_of(s, f.label), s.path, f.path, ""};
            if (std::find(s.can_add.begin(), s.can_add.end(), key) != s.can_add.end()) return {label_of(s, "add " + key_words(s.path, key)), s.path, "", key};
            if (s.path == key) return {s.title, s.path, "", ""};
        }
    return {};
}

/// A list by itself: one more of it.
Spot one_more(const std::vector<InputGroup>& groups, const std::string& key)
{
    const casefile::Row* row = casefile::row_at(key);
    if (!row || row->type != casefile::Type::blocks) return {};
    for (const InputGroup& g : groups) {
        for (const Section& s : g.sections)
            if (std::find(s.can_add.begin(), s.can_add.end(), key) != s.can_add.end()) return {label_of(s, key_words(s.path, key)), s.path, "", key};
        if (std::find(g.can_add.begin(), g.can_add.end(), key) != g.can_add.end()) return {"+ " + singular(row->key()), "", "", key};
    }
    return {};
}

std::string parent_of(const std::string& key)
{
    const std::size_t at = key.find_last_of(".[");
    return at == std::string::npos ? "" : key.substr(0, at);
}

} // namespace

Spot spot_of(const std::vector<InputGroup>& groups, const model::Case& c, const std::string& key)
{
    if (Spot more = one_more(groups, in_the_file(c, key, true)); more.found()) return more;
    for (const bool of_original : {false, true})
        if (Spot s = in_groups(groups, in_the_file(c, key, of_original)); s.found()) return s;
    for (std::string k = in_the_file(c, key, true); !k.empty(); k = parent_of(k)) // a key below one that is not there yet
        if (Spot s = in_groups(groups, k); s.found()) return s;
    return {};
}

} // namespace thinskin::gui
