#include "presentation/part_edits.h"

#include "casefile/edit.h"
#include "casefile/values.h"

#include <algorithm>
#include <fmt/format.h>
#include <string_view>

/// Fastener kinds and names: what is used in many places of a file and changes in all of them at once.
namespace thinskin::gui {

FieldEdit refused(std::string why)
{
    FieldEdit e;
    e.why = std::move(why);
    return e;
}

FieldEdit edit_called(std::string name, std::vector<casefile::Change> changes)
{
    FieldEdit e;
    e.edit.name = std::move(name);
    e.edit.changes = std::move(changes);
    return e;
}

/// In double quotes, for the flow form.
std::string quoted(const std::string& text)
{
    std::string out = "\"";
    for (const char c : text) out += (c == '"' || c == '\\' ? "\\" : "") + std::string(1, c);
    return out + "\"";
}

/// "angle 3": the first number that no name of the case has.
std::string new_name(const std::set<std::string>& taken, const std::string& stem, const std::string& between)
{
    for (int k = 1;; ++k) {
        std::string name = fmt::format("{}{}{}", stem, between, k);
        if (taken.count(name) == 0) return name;
    }
}

std::set<std::string> all_names(const model::Case& c)
{
    std::set<std::string> out;
    for (const casefile::Value& v : casefile::case_values(c))
        if (v.path.ends_with(".name") || v.path.find(".rename.") != std::string::npos) out.insert(v.items.front());
    for (const model::FastenerKind& k : c.fastener_kinds) out.insert(k.name);
    return out;
}

namespace {

/// Kinds to start from, of sizes that are common for such jobs; every figure is there to be changed.
struct Start { std::string_view type, name, flow; };
constexpr Start starts[] = {
    {"bolt", "M8 through bolt", "{type: bolt, size: M8, grade: \"8.8\", head: outside, head_washer: 24x2 mm, nut_washer: 24x2 mm, hole: 9 mm, fit: clearance}"},
    {"bolt", "M6 through bolt", "{type: bolt, size: M6, grade: \"8.8\", head: outside, head_washer: 18x1.6 mm, nut_washer: 18x1.6 mm, hole: 7 mm, fit: clearance}"},
    {"bolt", "M10 through bolt", "{type: bolt, size: M10, grade: \"8.8\", head: outside, head_washer: 24x2.5 mm, nut_washer: 24x2.5 mm, hole: 11 mm, fit: clearance}"},
    {"screw", "4.8 screw", "{type: screw, size: 4.8 mm, head: outside}"},
    {"rivet", "4.8 rivet", "{type: rivet, size: 4.8 mm, head: outside}"},
    {"insert", "M6 insert", "{type: insert, size: M6, grade: \"8.8\", hole: 9 mm, head_washer: 18x1.6 mm}"},
};

bool has_kind(const model::Case& c, std::string_view name)
{
    return std::any_of(c.fastener_kinds.begin(), c.fastener_kinds.end(), [name](const model::FastenerKind& k) { return k.name == name; });
}

bool is_through_skin(const std::string& path)
{
    return path.ends_with(".use") && ((path.starts_with("brackets[") && path.find(".fasteners[") != std::string::npos) || path.starts_with("item.fixings["));
}

/// Copies call the fasteners of their original by name.
void rename_in_copies(const model::Case& c, const model::Bracket& b, const std::string& old, const std::string& name, std::vector<casefile::Change>& out)
{
    for (std::size_t m = 0; m < c.brackets.size(); ++m) {
        const model::Bracket& copy = c.brackets[m];
        const auto renamed = copy.rename.find(old);
        if ((copy.copy_of != b.name && copy.mirror_of != b.name) || renamed == copy.rename.end()) continue;
        out.push_back(casefile::remove(fmt::format("brackets[{}].rename.{}", m, old)));
        out.push_back(casefile::set(fmt::format("brackets[{}].rename.{}", m, name), renamed->second));
    }
}

/// A bracket that others are made from, or one of its fasteners.
void rename_in_brackets(const model::Case& c, const std::string& path, const std::string& old, const std::string& name, std::vector<casefile::Change>& out)
{
    for (std::size_t i = 0; i < c.brackets.size(); ++i) {
        const model::Bracket& b = c.brackets[i];
        for (std::size_t k = 0; k < b.fasteners.size(); ++k)
            if (path == fmt::format("brackets[{}].fasteners[{}].name", i, k)) rename_in_copies(c, b, old, name, out);
        if (path != fmt::format("brackets[{}].name", i)) continue;
        for (std::size_t m = 0; m < c.brackets.size(); ++m) {
            if (c.brackets[m].copy_of == old) out.push_back(casefile::set(fmt::format("brackets[{}].copy_of", m), name));
            if (c.brackets[m].mirror_of == old) out.push_back(casefile::set(fmt::format("brackets[{}].mirror_of", m), name));
        }
    }
}

void rename_in_angles(const model::Case& c, const std::string& path, const std::string& old, const std::string& name, std::vector<casefile::Change>& out)
{
    const auto& all = c.reinforcement.angles;
    for (std::size_t i = 0; i < all.size(); ++i)
        for (std::size_t m = 0; path == fmt::format("reinforcement.angles[{}].name", i) && m < all.size(); ++m)
            if (all[m].copy_of == old) out.push_back(casefile::set(fmt::format("reinforcement.angles[{}].copy_of", m), name));
}

} // namespace

std::vector<std::string> kinds_to_choose(const model::Case& c)
{
    std::vector<std::string> out;
    for (const model::FastenerKind& k : c.fastener_kinds) out.push_back(k.name);
    for (const Start& s : starts)
        if (!has_kind(c, s.name)) out.push_back(std::string(new_kind_mark) + std::string(s.name));
    return out;
}

std::string kind_chosen(const std::string& choice, std::vector<casefile::Change>& changes)
{
    if (!choice.starts_with(new_kind_mark)) return choice;
    const std::string name = choice.substr(new_kind_mark.size());
    for (const Start& s : starts)
        if (s.name == name) changes.push_back(casefile::set_block("fastener_kinds[" + name + "]", std::string(s.flow)));
    return name;
}

FieldEdit add_fastener_kind(const model::Case& c, const std::string& type)
{
    const std::set<std::string> taken = all_names(c);
    for (const Start& s : starts) {
        if (type != s.type) continue;
        const std::string first(s.name), name = taken.count(first) == 0 ? first : new_name(taken, first, " ");
        return edit_called("Add " + name, {casefile::set_block("fastener_kinds[" + name + "]", std::string(s.flow))});
    }
    return refused("expected one of bolt, screw, rivet, insert");
}

std::vector<std::string> kinds_through_skin(const model::Case& c)
{
    std::vector<std::string> out;
    for (const casefile::Value& v : casefile::case_values(c))
        if (is_through_skin(v.path) && std::find(out.begin(), out.end(), v.items.front()) == out.end()) out.push_back(v.items.front());
    return out;
}

FieldEdit swap_kind(const model::Case& c, const std::string& from, const std::string& to)
{
    std::vector<casefile::Change> changes;
    const std::string name = kind_chosen(to, changes);
    if (changes.empty() && !has_kind(c, name)) return refused("there is no fastener kind " + name);
    const std::size_t first = changes.size();
    for (const casefile::Value& v : casefile::case_values(c))
        if (is_through_skin(v.path) && (from.empty() ? v.items.front() != name : v.items.front() == from)) changes.push_back(casefile::set(v.path, name));
    if (changes.size() == first) return refused("nothing through the skin uses " + (from.empty() ? "another kind" : from));
    return edit_called(from.empty() ? name + " everywhere" : fmt::format("{} instead of {}", name, from), std::move(changes));
}

namespace {

FieldEdit rename_kind(const model::Case& c, const std::string& path, const std::string& name)
{
    const std::string old = path.substr(path.find('[') + 1, path.size() - path.find('[') - 2);
    if (name.empty()) return refused("a fastener kind needs a name");
    if (name == old) return edit_called("Name", {});
    if (all_names(c).count(name) != 0) return refused(fmt::format("\"{}\" is another part's name", name));
    std::vector<casefile::Change> changes;
    for (const casefile::Value& v : casefile::case_values(c)) {
        const casefile::Row* row = casefile::row_at(v.path);
        if (row && row->type == casefile::Type::kind_name && v.items.front() == old) changes.push_back(casefile::set(v.path, name));
    }
    changes.push_back(casefile::rename(path, name));
    return edit_called(fmt::format("{} is now {}", old, name), std::move(changes));
}

} // namespace

FieldEdit rename_part(const model::Case& c, const std::string& path, const std::string& name)
{
    if (path.starts_with("fastener_kinds[")) return rename_kind(c, path, name);
    std::string old;
    for (const casefile::Value& v : casefile::case_values(c))
        if (v.path == path) old = v.items.front();
    if (old.empty() || name.empty()) return refused("a part needs a name");
    if (name == old) return edit_called("Name", {});
    if (all_names(c).count(name) != 0) return refused(fmt::format("\"{}\" is another part's name", name));
    std::vector<casefile::Change> changes = {casefile::set(path, name)};
    rename_in_brackets(c, path, old, name, changes);
    rename_in_angles(c, path, old, name, changes);
    return edit_called(fmt::format("{} is now {}", old, name), std::move(changes));
}

} // namespace thinskin::gui
