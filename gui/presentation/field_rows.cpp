#include "presentation/field_rows.h"

#include "catalogue/catalogue.h"

#include <algorithm>

namespace thinskin::gui {

using casefile::Row;
using casefile::Type;

std::string in_words(std::string key)
{
    for (char& c : key)
        if (c == '_' || c == '.') c = ' ';
    return key;
}

namespace {

FieldKind kind_of(const Row& row)
{
    switch (row.type) {
    case Type::word:
    case Type::word_or_block: return FieldKind::choice;
    case Type::kind_name: return FieldKind::fastener_kind;
    case Type::section: return FieldKind::section;
    case Type::quantity:
    case Type::sheet_thickness: return FieldKind::quantity;
    case Type::texts:
    case Type::quantities: return FieldKind::list;
    case Type::point2:
    case Type::point3: return FieldKind::point;
    case Type::washer:
    case Type::foot: return FieldKind::washer;
    default: return row.path == "road.surface" ? FieldKind::choice : row.key() == "material" ? FieldKind::material : FieldKind::text;
    }
}

/// Names once each, in the order of the catalogue.
template <class Rows> std::vector<std::string> names_of(const Rows& rows)
{
    std::vector<std::string> out;
    for (const auto& r : rows)
        if (std::find(out.begin(), out.end(), r.name) == out.end()) out.emplace_back(r.name);
    return out;
}

std::vector<std::string> angle_sections()
{
    std::vector<std::string> out;
    for (const catalogue::AngleSize& a : catalogue::angle_sizes()) out.push_back(a.designation);
    return out;
}

/// The program's rows, then the case's own.
template <class Rows, class Own> std::vector<std::string> names_of(const Rows& rows, const Own& own)
{
    std::vector<std::string> out = names_of(rows), more = names_of(own);
    out.insert(out.end(), more.begin(), more.end());
    return out;
}

std::vector<std::string> choices_of(const Row& row, const model::Case& c)
{
    switch (kind_of(row)) {
    case FieldKind::choice: return row.words.empty() ? names_of(catalogue::road_surfaces(), c.own.roads) : row.words;
    case FieldKind::section: return angle_sections();
    case FieldKind::material: return names_of(catalogue::materials(), c.own.materials);
    case FieldKind::fastener_kind: return kinds_to_choose(c);
    default: return row.key() == "wood" ? names_of(catalogue::woods()) : std::vector<std::string>{};
    }
}

std::string shown_item(const std::string& text, const Row& row, UnitSystem units)
{
    const base::ReadQuantity q = base::read_quantity(text, row.dimension);
    return q.ok ? shown(q.quantity, row.dimension, units) : text;
}

/// Three stand side by side: converted ones are as short as those on the drawing.
std::string shown_coordinate(const std::string& text, const Row& row, UnitSystem units)
{
    const std::string whole = shown_item(text, row, units);
    const base::ReadQuantity q = base::read_quantity(text, row.dimension);
    return whole == text || !q.ok || row.dimension != base::Dimension::length ? whole : drawn_length(q.quantity.value, units) + " " + std::string(shown_unit(row.dimension, units));
}

/// A plain number takes the unit beside it on the screen; a new one that of the system. Distances a year are in kilometres.
std::string unit_for(const Row& row, const std::string& shown_text, UnitSystem units)
{
    const std::string_view beside = unit_of(shown_text);
    if (!beside.empty()) return std::string(beside);
    return std::string(row.path == "road.distance_per_year" ? "km" : shown_unit(row.dimension, units));
}

/// Copies have few keys of their own.
std::string taken_from(const model::Case& c, const std::string& path)
{
    for (std::size_t i = 0; i < c.brackets.size(); ++i) {
        const model::Bracket& b = c.brackets[i];
        const bool copy = !b.copy_of.empty() || !b.mirror_of.empty();
        const std::string here = "brackets[" + std::to_string(i) + "]";
        if (copy && (path == here + ".copy_of" || path == here + ".mirror_of")) return b.copy_of.empty() ? "a mirror of " + b.mirror_of : "a copy of " + b.copy_of;
    }
    return "";
}

void take_row(Field& f, const Row& row, const model::Case& c, const casefile::Value& v, UnitSystem units)
{
    f.kind = kind_of(row);
    f.help = row.help;
    f.dimension = row.dimension;
    f.required = row.required;
    f.choices = choices_of(row, c);
    f.can_be_removed = !row.required;
    f.assumed = f.is_default && !row.why.empty();
    if (!row.measured()) {
        f.value = v.items.front();
        return;
    }
    f.measured_from = casefile::measured_from(c, v.path);
    for (const std::string& item : v.items) f.coordinates.push_back(f.kind == FieldKind::point ? shown_coordinate(item, row, units) : shown_item(item, row, units));
    f.unit = unit_for(row, f.coordinates.front(), units);
    f.value = f.coordinates.front();
    for (std::size_t k = 1; k < f.coordinates.size(); ++k) f.value += ", " + f.coordinates[k];
    if (f.kind == FieldKind::quantity) f.coordinates.clear();
}

std::string written(const casefile::Value& v)
{
    std::string s;
    for (const std::string& item : v.items) s += (s.empty() ? "" : ", ") + item;
    return v.list ? "[" + s + "]" : s;
}

std::string first_error(const Document& d, const std::string& path)
{
    for (const base::Diagnostic& k : d.diagnostics())
        if (k.key_path == path || k.key_path.starts_with(path + "[")) return k.message + (k.hint.empty() ? "" : " (" + k.hint + ")");
    return "";
}

} // namespace

Field field_of(const Document& d, const model::Case& c, const casefile::Value& v, const std::string& section, UnitSystem units)
{
    Field f;
    f.path = v.path;
    f.label = in_words(v.path.starts_with(section + ".") ? v.path.substr(section.size() + 1) : v.path);
    f.is_default = d.reading() == nullptr || d.reading()->places.count(v.path) == 0;
    if (!f.is_default) f.as_written = written(v);
    if (const Row* row = casefile::row_at(v.path)) take_row(f, *row, c, v, units);
    else { // a name that the schema leaves open, such as the new name of a fastener
        f.value = v.items.front();
        f.is_default = false;
        f.as_written = f.value;
    }
    f.read_only = taken_from(c, v.path);
    f.error = first_error(d, v.path);
    return f;
}

Field empty_field(const model::Case& c, const Row& row, const std::string& path, const std::string& label, UnitSystem units)
{
    Field f;
    f.path = path;
    f.label = label;
    f.help = row.help;
    f.kind = kind_of(row);
    f.dimension = row.dimension;
    f.required = row.required;
    f.choices = choices_of(row, c);
    if (f.kind == FieldKind::point) f.help += row.type == Type::point3 ? " (x, y, z)" : " (x, y)";
    if (row.measured()) f.unit = unit_for(row, "", units);
    return f;
}

std::string block_of_section(const std::string& path)
{
    if (path.starts_with("fastener_kinds[")) return "fastener_kinds{}";
    if (const Row* row = casefile::row_at(path)) return row->inside();
    const Row* list = path.ends_with("]") ? casefile::row_at(path.substr(0, path.rfind('['))) : nullptr;
    return list ? list->inside() : path;
}

} // namespace thinskin::gui
