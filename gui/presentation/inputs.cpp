#include "presentation/inputs.h"

#include "presentation/field_rows.h"
#include "presentation/keys.h"

#include <algorithm>
#include <fmt/format.h>

namespace thinskin::gui {
namespace {

using casefile::Row;
using casefile::Type;

/// The part of a path that has a section of its own: up to its last list entry or name; below panel and door one block further.
std::string section_of(const std::string& path)
{
    if (const auto close = path.rfind(']'); close != std::string::npos) return path.substr(0, close + 1);
    const auto first = path.find('.');
    if (first == std::string::npos) return path == "rules" ? "road" : path;
    const std::string top = path.substr(0, first);
    const auto second = path.find('.', first + 1);
    return (top == "panel" || top == "door") && second != std::string::npos ? path.substr(0, second) : top;
}

std::string last_word(const std::string& path)
{
    const std::string open = path.substr(0, path.rfind('['));
    return open.substr(open.rfind('.') + 1);
}

std::string inside_brackets(const std::string& path)
{
    const auto open = path.rfind('[');
    return path.substr(open + 1, path.size() - open - 2);
}

struct Maker {
    const Document& document;
    const model::Case& c;
    UnitSystem units;
    std::vector<InputGroup> groups{{"Vehicle and panel", {}}, {"Item", {}}, {"Fixing", {}}, {"Road", {}}};

    Section& section(const std::string& path)
    {
        std::vector<Section>& all = groups[group_of(path)].sections;
        const auto found = std::find_if(all.begin(), all.end(), [&path](const Section& s) { return s.path == path; });
        if (found != all.end()) return *found;
        Section s;
        s.path = path;
        s.can_be_removed = path.ends_with("]");
        s.title = path.ends_with("]") ? singular(last_word(path)) : in_words(last_word(path));
        all.push_back(std::move(s));
        return all.back();
    }

    void take(const casefile::Value& v)
    {
        if (v.path == "format") return;
        Section& s = section(section_of(v.path));
        s.fields.push_back(field_of(document, c, v, s.path, units));
    }

    /// Named entries by their names, the others by their number.
    void name_sections()
    {
        for (InputGroup& g : groups)
            for (Section& s : g.sections) {
                if (!s.path.ends_with("]")) continue;
                const auto named = std::find_if(s.fields.begin(), s.fields.end(), [&s](const Field& f) { return f.path == s.path + ".name"; });
                s.part = named != s.fields.end() ? named->value : s.path.starts_with("fastener_kinds") ? inside_brackets(s.path) : "";
                const std::string number = inside_brackets(s.path);
                const bool counted = number.find_first_not_of("0123456789") == std::string::npos;
                if (s.part.starts_with(s.title + " ")) s.title = s.part; // "angle 1" is no angle angle 1
                else s.title += " " + (!s.part.empty() || !counted ? s.part : std::to_string(std::stoi(number) + 1) + of_whom(s.path));
            }
    }

    /// The name of a fastener kind is its key in the file.
    void name_kinds()
    {
        for (Section& s : groups[2].sections) {
            if (!s.path.starts_with("fastener_kinds[")) continue;
            Field f;
            f.path = s.path;
            f.label = "name";
            f.help = "Name that fasteners use it by; all of them follow when it gets another one.";
            f.value = f.as_written = s.part;
            f.required = true;
            s.fields.insert(s.fields.begin(), std::move(f));
        }
    }

    /// " of left": whose fastener or mount it is.
    std::string of_whom(const std::string& path) const
    {
        for (std::size_t i = 0; i < c.brackets.size(); ++i)
            if (path.starts_with(fmt::format("brackets[{}].", i))) return " of " + c.brackets[i].name;
        for (std::size_t i = 0; i < c.reinforcement.angles.size(); ++i)
            if (path.starts_with(fmt::format("reinforcement.angles[{}].", i))) return fmt::format(" at the {} of {}", path.find(".left.") != std::string::npos ? "left" : path.find(".right.") != std::string::npos ? "right" : path.find(".top.") != std::string::npos ? "top" : "bottom", c.reinforcement.angles[i].name);
        return "";
    }

    void additions()
    {
        for (InputGroup& g : groups)
            for (Section& s : g.sections) {
                s.can_add = keys_to_add(s);
                s.can_remove = keys_to_remove(s);
            }
        for (std::size_t i = 0; i < groups.size(); ++i) groups[i].can_add = lists_to_add(groups, i);
    }
};

} // namespace

std::size_t group_of(const std::string& path)
{
    const std::string top = path.substr(0, path.find_first_of(".["));
    for (const char* fixing : {"brackets", "fastener_kinds", "reinforcement"})
        if (top == fixing) return 2;
    for (const char* item : {"item", "forces", "pressures", "masses"})
        if (top == item) return 1;
    return top == "road" || top == "vehicle" || top == "rules" || top == "analysis" || top == "propose" ? 3 : 0;
}

std::string singular(const std::string& list)
{
    static const std::map<std::string, std::string> words = {{"brackets", "bracket"}, {"fastener_kinds", "fastener kind"}, {"angles", "angle"}, {"backing_plates", "plate"}, {"boards", "board"}, {"straps", "strap"}, {"ribs", "rib"},
                                                             {"fasteners", "fastener"}, {"mounts", "mount"}, {"fixings", "foot"}, {"latches", "latch"}, {"gauges", "gauge"}, {"masses", "small mass"}, {"forces", "force"},
                                                             {"pressures", "pressure"}, {"loads", "load"}, {"no_drill", "no-drill zone"}};
    const auto found = words.find(list);
    return found == words.end() ? in_words(list) : found->second;
}

std::vector<InputGroup> input_groups(const Document& d, UnitSystem units)
{
    const auto c = d.current();
    if (!c) return {};
    Maker m{d, *c, units};
    for (const casefile::Value& v : casefile::case_values(*c)) m.take(v);
    m.name_sections();
    m.additions();
    m.name_kinds();
    return m.groups;
}

} // namespace thinskin::gui
