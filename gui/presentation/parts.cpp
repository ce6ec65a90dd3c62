#include "casefile/edit.h"
#include "casefile/values.h"
#include "presentation/part_edits.h"

#include <algorithm>
#include <fmt/format.h>

/// Parts that go, and what keeps them.
namespace thinskin::gui {
namespace {

bool is_used(const model::Case& c, const std::string& kind, std::string& where)
{
    for (const casefile::Value& v : casefile::case_values(c)) {
        const casefile::Row* row = casefile::row_at(v.path);
        if (row && row->type == casefile::Type::kind_name && v.items.front() == kind) {
            where = v.path;
            return true;
        }
    }
    return false;
}

/// What keeps a part from being removed; empty: nothing.
std::string needed_by(const model::Case& c, const std::string& path)
{
    for (std::size_t i = 0; i < c.brackets.size(); ++i) {
        if (path == fmt::format("brackets[{}].fasteners[0]", i) && c.brackets[i].fasteners.size() == 1) return "a bracket needs at least one fastener";
        if (path != fmt::format("brackets[{}]", i)) continue;
        for (const model::Bracket& b : c.brackets)
            if (b.copy_of == c.brackets[i].name || b.mirror_of == c.brackets[i].name) return fmt::format("bracket {} is made from it: remove that first", b.name);
    }
    for (std::size_t i = 0; i < c.reinforcement.angles.size(); ++i)
        if (path == fmt::format("reinforcement.angles[{}]", i))
            for (const model::Angle& a : c.reinforcement.angles)
                if (a.copy_of == c.reinforcement.angles[i].name) return fmt::format("{} is a copy of it: remove that first", a.name);
    std::string where;
    for (const model::FastenerKind& k : c.fastener_kinds)
        if (path == "fastener_kinds[" + k.name + "]" && is_used(c, k.name, where)) return fmt::format("{} uses it", where);
    return "";
}

/// Renames in copies of a fastener that goes.
std::vector<casefile::Change> without_renames(const model::Case& c, const std::string& path)
{
    std::vector<casefile::Change> out;
    for (std::size_t i = 0; i < c.brackets.size(); ++i)
        for (std::size_t k = 0; k < c.brackets[i].fasteners.size(); ++k)
            if (path == fmt::format("brackets[{}].fasteners[{}]", i, k))
                for (std::size_t m = 0; m < c.brackets.size(); ++m)
                    if ((c.brackets[m].copy_of == c.brackets[i].name || c.brackets[m].mirror_of == c.brackets[i].name) && c.brackets[m].rename.count(c.brackets[i].fasteners[k].name) != 0)
                        out.push_back(casefile::remove(fmt::format("brackets[{}].rename.{}", m, c.brackets[i].fasteners[k].name)));
    return out;
}

/// What the part at a path is called, for the undo list.
std::string name_at(const model::Case& c, const std::string& path)
{
    for (const casefile::Value& v : casefile::case_values(c))
        if (v.path == path + ".name") return v.items.front();
    const auto open = path.rfind('[');
    return path.starts_with("fastener_kinds[") ? path.substr(open + 1, path.size() - open - 2) : path;
}

} // namespace

FieldEdit remove_part(const model::Case& c, const std::string& path)
{
    const std::string why = needed_by(c, path);
    if (!why.empty()) return refused(why);
    std::vector<casefile::Change> changes = without_renames(c, path);
    changes.push_back(casefile::remove(path));
    return edit_called("Remove " + name_at(c, path), std::move(changes));
}

} // namespace thinskin::gui
