#include "presentation/keys.h"

#include "casefile/edit.h"
#include "presentation/field_rows.h"
#include "presentation/part_edits.h"

#include <algorithm>
#include <fmt/format.h>

namespace thinskin::gui {

using casefile::Row;
using casefile::Type;

namespace {

bool holds_keys(const Row& row) { return row.type == Type::block || row.type == Type::block_or_edges || row.type == Type::blocks || (row.type == Type::word_or_block && row.words.empty()); }

/// The keys that a block needs, those of its blocks too; of a block that needs none, all its single values.
void take_fields(const model::Case& c, const std::string& path, const std::string& label, const std::string& block, UnitSystem units, std::vector<Field>& out)
{
    const std::vector<const Row*> rows = casefile::rows_in(block);
    const bool needs_some = std::any_of(rows.begin(), rows.end(), [](const Row* r) { return r->required; });
    for (const Row* row : rows) {
        if (row->required != needs_some) continue;
        const std::string here = path + "." + row->key(), words = label.empty() ? in_words(row->key()) : label + " " + in_words(row->key());
        if (!holds_keys(*row)) out.push_back(empty_field(c, *row, here, words, units));
        else if (row->required) take_fields(c, here + (row->type == Type::blocks ? "[0]" : ""), words, row->inside(), units, out);
    }
}

/// What is below the new key, as blocks in one another, in the order of the fields.
struct Tree { std::string key, text; bool list = false; std::vector<Tree> below; };

Tree& under(Tree& t, const std::string& key)
{
    for (Tree& k : t.below)
        if (k.key == key) return k;
    t.below.emplace_back();
    t.below.back().key = key;
    return t.below.back();
}

void put(Tree& t, const std::string& way, std::string text)
{
    Tree* at = &t;
    for (std::size_t i = 0; i < way.size();) {
        const std::size_t dot = std::min(way.find('.', i), way.size());
        std::string key = way.substr(i, dot - i);
        const bool list = key.ends_with("[0]");
        if (list) key.resize(key.size() - 3);
        at = &under(*at, key);
        at->list = at->list || list;
        i = dot + 1;
    }
    at->text = std::move(text);
}

std::string flow(const Tree& t)
{
    if (t.below.empty()) return t.text;
    std::string s;
    for (const Tree& k : t.below) s += (s.empty() ? "" : ", ") + k.key + ": " + flow(k);
    return t.list ? "[{" + s + "}]" : "{" + s + "}";
}

bool is_list(const Field& f) { return f.kind == FieldKind::point || f.kind == FieldKind::list; }

/// What a typed text is in the file, in flow form, with the fastener kind that it may need made; `why`: what was expected.
struct Filled { std::string text, plain, why; std::vector<casefile::Change> first; };
Filled filled(Field f, const std::string& text)
{
    f.value.clear();
    FieldEdit e = edit_field(f, text, UnitSystem::metric);
    if (!e.ok() || e.edit.changes.empty()) return {"", "", e.ok() ? "this is needed" : e.why, {}};
    Filled out;
    out.plain = e.edit.changes.back().text;
    out.text = is_list(f) || f.kind == FieldKind::quantity ? out.plain : quoted(out.plain);
    e.edit.changes.pop_back();
    out.first = std::move(e.edit.changes);
    return out;
}

std::string parent_of(const std::string& path)
{
    const std::size_t at = path.find_last_of(".[");
    return at == std::string::npos ? "" : path.substr(0, at);
}

std::string last_of(const std::string& path) { return path.substr(path.rfind('.') + 1); }

} // namespace

NewKey new_key(const model::Case& c, const std::string& path, UnitSystem units)
{
    NewKey k{path, in_words(last_of(path)), false, {}};
    const Row* row = casefile::row_at(path);
    if (!row) return k;
    k.entry = row->type == Type::blocks;
    if (k.entry) k.label = singular(row->key());
    if (holds_keys(*row)) take_fields(c, path, "", row->inside(), units, k.fields);
    else if (row->type != Type::renames && row->type != Type::named_blocks) k.fields.push_back(empty_field(c, *row, path, k.label, units));
    for (Field& f : k.fields)
        if (f.path == path + ".name") f.value = new_name(all_names(c), k.label, " ");
    return k;
}

std::string how_to_fill(const Field& f)
{
    const bool us = f.unit == "in";
    const std::string size = f.path.ends_with(".size") ? "Width and height" : "Across and up from the lower left corner of the skin";
    std::string how;
    if (f.kind == FieldKind::point) how = f.coordinates.size() > 2 ? std::string("Three figures with commas between") : size + ", with a comma between: " + (us ? "5, 15" : "120, 380");
    else if (f.kind == FieldKind::list) how = "Figures with commas between";
    return f.help + (f.help.empty() || how.empty() ? "" : " ") + how + (how.empty() ? "" : ".") + (f.required ? "" : " May stay empty.");
}

FieldEdit add_key(const NewKey& k, const std::vector<std::string>& typed_texts)
{
    Tree all;
    std::string part;
    std::vector<casefile::Change> changes;
    for (std::size_t i = 0; i < k.fields.size(); ++i) {
        const Field& f = k.fields[i];
        const std::string text = i < typed_texts.size() ? typed_texts[i] : "";
        const bool alone = f.path == k.path;
        if (text.empty() && !f.required && !alone) continue;
        Filled t = filled(f, text);
        if (!t.why.empty()) return refused(f.label + ": " + t.why);
        changes.insert(changes.end(), t.first.begin(), t.first.end());
        if (alone) changes.push_back(is_list(f) ? casefile::set_block(k.path, t.plain) : casefile::set(k.path, t.plain));
        else put(all, f.path.substr(k.path.size() + 1), t.text);
        if (k.entry && f.path == k.path + ".name") part = t.plain;
    }
    const bool alone = k.fields.size() == 1 && k.fields.front().path == k.path;
    if (!alone && all.below.empty()) return refused("fill in at least one of them");
    if (!alone) changes.push_back(k.entry ? casefile::append(k.path, flow(all)) : casefile::set_block(k.path, flow(all)));
    FieldEdit e = edit_called("Add " + (part.empty() ? k.label : part), std::move(changes));
    e.part = part;
    return e;
}

FieldEdit remove_key(const model::Case& c, const std::string& path)
{
    const Row* row = casefile::row_at(path);
    if (!row || row->required) return refused("this is needed");
    std::vector<casefile::Change> changes;
    if (c.measured_from.count(path) != 0) changes.push_back(casefile::remove(path + "_from"));
    changes.push_back(casefile::remove(path));
    return edit_called("Remove " + in_words(last_of(path)), std::move(changes));
}

std::string key_words(const std::string& section, const std::string& path)
{
    const Row* row = casefile::row_at(path);
    if (row && row->type == Type::blocks) return "another " + singular(row->key());
    return in_words(path.starts_with(section + ".") ? path.substr(section.size() + 1) : path);
}

std::vector<std::string> keys_to_add(const Section& s)
{
    const bool copy = std::any_of(s.fields.begin(), s.fields.end(), [](const Field& f) { return f.label == "copy of" || f.label == "mirror of"; });
    if (copy) return {};
    std::vector<std::string> out;
    for (const Row* row : casefile::rows_in(block_of_section(s.path))) {
        const std::string path = s.path + "." + row->key();
        const bool begun = std::any_of(s.fields.begin(), s.fields.end(), [&path](const Field& f) { return f.path == path || f.path.starts_with(path + ".") || f.path.starts_with(path + "["); });
        const bool known = row->type != Type::renames && row->type != Type::named_blocks && row->key() != "copy_of" && row->key() != "mirror_of";
        if (known && (row->type == Type::blocks || (!row->required && !begun && row->fallback.empty()))) out.push_back(path);
    }
    return out;
}

std::vector<std::string> keys_to_remove(const Section& s)
{
    std::vector<std::string> out;
    for (const Field& f : s.fields) {
        if (f.as_written.empty() || !f.read_only.empty()) continue;
        for (std::string path = f.path; path.size() > s.path.size() && path.starts_with(s.path); path = parent_of(path)) {
            const Row* row = casefile::row_at(path);
            if (row && !row->required && row->key() != "copy_of" && row->key() != "mirror_of" && std::find(out.begin(), out.end(), path) == out.end()) out.push_back(path);
        }
    }
    return out;
}

std::vector<std::string> lists_to_add(const std::vector<InputGroup>& groups, std::size_t group)
{
    std::vector<std::string> out;
    for (const Row& row : casefile::schema()) {
        const bool nested = row.path.find_first_of("[{<") != std::string::npos, top = row.path.find('.') == std::string::npos;
        if (nested || group_of(row.path) != group || row.type == Type::named_blocks) continue;
        const bool has_section = std::any_of(groups.begin(), groups.end(), [&row](const InputGroup& g) {
            return std::any_of(g.sections.begin(), g.sections.end(), [&row](const Section& s) { return s.path == row.path || s.path == row.parent(); });
        });
        const std::vector<const Row*> inside = casefile::rows_in(row.inside());
        const bool own_values = std::any_of(inside.begin(), inside.end(), [](const Row* r) { return r->required || !holds_keys(*r); });
        if (row.type == Type::blocks ? !has_section : top && !row.required && !has_section && own_values) out.push_back(row.path);
    }
    return out;
}

} // namespace thinskin::gui
