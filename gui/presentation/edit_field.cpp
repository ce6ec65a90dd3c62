#include "presentation/part_edits.h"

#include <algorithm>
#include <cctype>
#include <fmt/format.h>

namespace thinskin::gui {
namespace {

/// "slam" of "door.slam.stop"; none of what stands in a list, whose parts have names of their own.
std::string block_of(const std::string& path)
{
    const auto last = path.rfind('.');
    if (last == std::string::npos) return "";
    const auto before = path.rfind('.', last - 1);
    const std::string block = path.substr(before == std::string::npos ? 0 : before + 1, last - (before == std::string::npos ? 0 : before + 1));
    return block.back() == ']' ? "" : block + " ";
}

/// Named by what is changed to what: "Slam stop: 20 ms".
FieldEdit edit(const Field& f, const std::string& text, std::vector<casefile::Change> changes)
{
    FieldEdit e;
    e.edit.name = block_of(f.path) + f.label + (text.empty() ? "" : ": " + text);
    std::replace(e.edit.name.begin(), e.edit.name.end(), '_', ' ');
    if (!e.edit.name.empty()) e.edit.name[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(e.edit.name[0])));
    e.edit.changes = std::move(changes);
    return e;
}

std::string trimmed(const std::string& s)
{
    const auto from = s.find_first_not_of(" \t"), to = s.find_last_not_of(" \t");
    return from == std::string::npos ? std::string{} : s.substr(from, to - from + 1);
}

/// "420, 17 in" in its parts.
std::vector<std::string> parts(std::string text)
{
    for (const char c : {'[', ']'}) text.erase(std::remove(text.begin(), text.end(), c), text.end());
    std::vector<std::string> out(1);
    for (const char c : text) {
        if (c == ',') out.emplace_back();
        else out.back() += c;
    }
    return out;
}

/// The whole point or list: what does not change keeps its text as written.
FieldEdit whole_list(const Field& f, const std::string& text)
{
    std::string flow;
    const std::vector<std::string> now = parts(text), was = parts(f.as_written);
    for (std::size_t i = 0; i < now.size(); ++i) {
        const bool same = i < f.coordinates.size() && i < was.size() && !f.as_written.empty() && trimmed(now[i]) == f.coordinates[i];
        const Typed t = typed_in(same ? was[i] : now[i], f.dimension, f.unit);
        if (!t.ok) return refused(t.expected);
        flow += (flow.empty() ? "" : ", ") + t.text;
    }
    return edit(f, text, {casefile::set_block(f.path, "[" + flow + "]")});
}

FieldEdit one_of_list(const Field& f, const std::string& text, std::size_t i)
{
    if (i >= f.coordinates.size() && f.kind != FieldKind::list) return refused("there is no such coordinate");
    const std::string path = fmt::format("{}[{}]", f.path, i);
    if (text.empty() && f.kind == FieldKind::list && i < f.coordinates.size() && f.coordinates.size() > 1) return edit(f, text, {casefile::remove(path)});
    const Typed t = typed_in(text, f.dimension, f.unit);
    if (!t.ok) return refused(t.expected);
    if (i < f.coordinates.size() && t.text == f.coordinates[i]) return edit(f, text, {}); // shown and left as it is: the file keeps its units
    return edit(f, text, {i < f.coordinates.size() ? casefile::set(path, t.text) : casefile::append(f.path, t.text)});
}

} // namespace

FieldEdit edit_field(const Field& f, const std::string& typed_text, UnitSystem /*the field has its unit*/, int coordinate)
{
    const std::string text = trimmed(typed_text);
    if (!f.read_only.empty()) return refused(f.read_only);
    if (coordinate >= 0) return one_of_list(f, text, static_cast<std::size_t>(coordinate));
    if (text == f.value) return edit(f, text, {});
    if (text.empty() && f.kind != FieldKind::text) return f.can_be_removed ? edit(f, text, f.is_default ? std::vector<casefile::Change>{} : std::vector{casefile::remove(f.path)}) : refused("this is needed");
    if (f.kind == FieldKind::point || f.kind == FieldKind::list) return whole_list(f, text);
    if (f.kind == FieldKind::choice && std::find(f.choices.begin(), f.choices.end(), text) == f.choices.end()) return refused(fmt::format("expected one of {}", fmt::join(f.choices, ", ")));
    if (f.kind == FieldKind::fastener_kind) {
        std::vector<casefile::Change> changes;
        const std::string name = kind_chosen(text, changes);
        changes.push_back(casefile::set(f.path, name));
        return edit(f, text, std::move(changes));
    }
    if (f.kind != FieldKind::quantity) return edit(f, text, {casefile::set(f.path, text)});
    const Typed t = typed_in(text, f.dimension, f.unit);
    if (!t.ok) return refused(t.expected);
    return edit(f, text, t.text == f.value ? std::vector<casefile::Change>{} : std::vector{casefile::set(f.path, t.text)});
}

FieldEdit set_measured_from(const Field& f, const std::string& word)
{
    const auto& words = casefile::measured_words();
    if (f.measured_from.empty()) return refused("this is not a measured value");
    if (f.is_default) return refused("write the value first: this is a default");
    if (std::find(words.begin(), words.end(), word) == words.end()) return refused(fmt::format("expected one of {}", fmt::join(words, ", ")));
    FieldEdit e = edit(f, word, {casefile::set(f.path + "_from", word)});
    e.edit.name = "How " + f.label + " was measured";
    return e;
}

} // namespace thinskin::gui
