#include "base/nearest.h"
#include "casefile/rule_kit.h"

#include <algorithm>

namespace thinskin::casefile {
namespace {

bool is_copy(const model::Bracket& b) { return !b.copy_of.empty() || !b.mirror_of.empty(); }
bool is_copy(const model::Angle& a) { return !a.copy_of.empty(); }

/// The original a copy names; reports an unknown one, itself, and another copy.
template <class T>
const T* original(RuleKit& k, const std::vector<T>& all, const T& copy, const std::string& name, const std::string& path, const char* what)
{
    std::vector<std::string> names;
    for (const T& x : all) names.push_back(x.name);
    if (name == copy.name) {
        k.error(path, fmt::format("the {} \"{}\" cannot be a copy of itself", what, name));
        return nullptr;
    }
    const auto found = std::find_if(all.begin(), all.end(), [&](const T& x) { return x.name == name; });
    if (found == all.end()) {
        k.error(path, fmt::format("there is no {} \"{}\" to copy", what, name), base::did_you_mean(name, names));
        return nullptr;
    }
    if (is_copy(*found)) {
        k.error(path, fmt::format("\"{}\" is a copy itself: name the {} it was copied from", name, what));
        return nullptr;
    }
    return &*found;
}

void check_rename(RuleKit& k, const model::Bracket& b, const model::Bracket* from, const std::string& path)
{
    if (!is_copy(b) && !b.rename.empty()) k.error(path + ".rename", "rename belongs to a copy (copy_of or mirror_of)");
    if (!from) return;
    std::vector<std::string> names;
    for (const model::Fastener& f : from->fasteners) names.push_back(f.name);
    for (const auto& entry : b.rename)
        if (std::find(names.begin(), names.end(), entry.first) == names.end())
            k.error(path + ".rename", fmt::format("the bracket \"{}\" has no fastener \"{}\" to rename", from->name, entry.first),
                    base::did_you_mean(entry.first, names));
}

} // namespace

void check_copies(RuleKit& k)
{
    const auto& brackets = k.c.brackets;
    for (std::size_t i = 0; i < brackets.size(); ++i) {
        const model::Bracket& b = brackets[i];
        const std::string path = fmt::format("brackets[{}]", i);
        const model::Bracket* from = nullptr;
        if (!b.copy_of.empty() && !b.mirror_of.empty()) k.error(path + ".mirror_of", "give either copy_of or mirror_of, not both");
        else if (!b.copy_of.empty()) from = original(k, brackets, b, b.copy_of, path + ".copy_of", "bracket");
        else if (!b.mirror_of.empty()) from = original(k, brackets, b, b.mirror_of, path + ".mirror_of", "bracket");
        check_rename(k, b, from, path);
    }
    const auto& angles = k.c.reinforcement.angles;
    for (std::size_t i = 0; i < angles.size(); ++i)
        if (is_copy(angles[i])) original(k, angles, angles[i], angles[i].copy_of, fmt::format("reinforcement.angles[{}].copy_of", i), "angle");
}

} // namespace thinskin::casefile
