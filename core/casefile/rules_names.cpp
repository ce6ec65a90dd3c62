#include "base/nearest.h"
#include "casefile/rule_kit.h"
#include "casefile/shapes.h"

#include <algorithm>
#include <functional>
#include <set>

namespace thinskin::casefile {
namespace {

/// Calls `see` for every use of a fastener kind with its key path.
using See = std::function<void(const std::string& use, const std::string& path)>;

template <class List> void uses_in(const List& list, const std::string& path, const See& see)
{
    for (std::size_t i = 0; i < list.size(); ++i) see(list[i].use, fmt::format("{}[{}].use", path, i));
}

void uses_in_ends(const model::Ends& ends, const model::Point2& from, const model::Point2& to, const std::string& path, const See& see)
{
    const auto names = end_names(stands_upright(from, to));
    uses_in(ends.first.fasteners, fmt::format("{}.ends.{}.fasteners", path, names[0]), see);
    uses_in(ends.second.fasteners, fmt::format("{}.ends.{}.fasteners", path, names[1]), see);
}

void uses_in_bracket(const model::Bracket& b, const std::string& path, const See& see)
{
    uses_in(b.mounts, path + ".mounts", see);
    uses_in(b.fasteners, path + ".fasteners", see);
    const std::pair<const char*, const std::optional<model::JointWeld>*> joints[] = {
        {"arm_leg", &b.joints.arm_leg}, {"brace_leg", &b.joints.brace_leg}, {"brace_arm", &b.joints.brace_arm}};
    for (const auto& [name, joint] : joints)
        if (*joint) see((*joint)->bolt, fmt::format("{}.joints.{}.bolt", path, name));
}

void every_use(const model::Case& c, const See& see)
{
    const auto& r = c.reinforcement;
    for (std::size_t i = 0; i < c.panel.ribs.size(); ++i)
        uses_in_ends(c.panel.ribs[i].ends, c.panel.ribs[i].from, c.panel.ribs[i].to, fmt::format("panel.ribs[{}]", i), see);
    if (c.item) uses_in(c.item->fixings, "item.fixings", see);
    for (std::size_t i = 0; i < c.brackets.size(); ++i) uses_in_bracket(c.brackets[i], fmt::format("brackets[{}]", i), see);
    for (std::size_t i = 0; i < r.angles.size(); ++i)
        uses_in_ends(r.angles[i].ends, r.angles[i].from, r.angles[i].to.value_or(r.angles[i].from), fmt::format("reinforcement.angles[{}]", i), see);
    for (std::size_t i = 0; i < r.backing_plates.size(); ++i)
        uses_in(r.backing_plates[i].fasteners, fmt::format("reinforcement.backing_plates[{}].fasteners", i), see);
    for (std::size_t i = 0; i < r.straps.size(); ++i)
        uses_in_ends(r.straps[i].ends, {r.straps[i].from.x, r.straps[i].from.y}, {r.straps[i].to.x, r.straps[i].to.y}, fmt::format("reinforcement.straps[{}]", i), see);
    for (std::size_t i = 0; i < r.boards.size(); ++i) uses_in(r.boards[i].fasteners, fmt::format("reinforcement.boards[{}].fasteners", i), see);
}

void check_uses(RuleKit& k)
{
    std::vector<std::string> kinds;
    for (const model::FastenerKind& kind : k.c.fastener_kinds) kinds.push_back(kind.name);
    every_use(k.c, [&](const std::string& use, const std::string& path) {
        if (use.empty() || std::find(kinds.begin(), kinds.end(), use) != kinds.end()) return;
        std::string hint = base::did_you_mean(use, kinds);
        if (hint.empty() && !kinds.empty()) hint = fmt::format("kinds here: {}", fmt::join(kinds, ", "));
        k.error(path, fmt::format("fastener_kinds has no \"{}\"", use), hint);
    });
}

template <class List> void names_in(const List& list, const std::string& path, std::vector<NameAt>& out)
{
    for (std::size_t i = 0; i < list.size(); ++i) out.push_back({list[i].name, fmt::format("{}[{}].name", path, i)});
}

void refuse_twins(RuleKit& k, const std::vector<NameAt>& names)
{
    std::map<std::string, std::string> first;
    for (const NameAt& n : names) {
        if (n.name.empty()) continue;
        const auto [twin, fresh] = first.emplace(n.name, n.path);
        if (!fresh) k.error(n.path, fmt::format("the name \"{}\" stands twice, first at {}", n.name, twin->second));
    }
}

const model::Bracket* original_of(const model::Case& c, const model::Bracket& b)
{
    const std::string& name = b.copy_of.empty() ? b.mirror_of : b.copy_of;
    for (const model::Bracket& other : c.brackets)
        if (!name.empty() && other.name == name && &other != &b) return &other;
    return nullptr;
}

void bracket_fasteners(const model::Case& c, std::vector<NameAt>& out)
{
    for (std::size_t i = 0; i < c.brackets.size(); ++i) {
        const model::Bracket& b = c.brackets[i];
        const std::string path = fmt::format("brackets[{}]", i);
        const model::Bracket* original = original_of(c, b);
        if (!original) names_in(b.fasteners, path + ".fasteners", out);
        else
            for (const model::Fastener& f : original->fasteners) {
                const auto renamed = b.rename.find(f.name);
                out.push_back({renamed == b.rename.end() ? f.name : renamed->second, path + ".rename"});
            }
    }
}

void end_fasteners(const model::Ends& ends, const model::Point2& from, const model::Point2& to, const std::string& path, std::vector<NameAt>& out)
{
    const auto names = end_names(stands_upright(from, to));
    names_in(ends.first.fasteners, fmt::format("{}.ends.{}.fasteners", path, names[0]), out);
    names_in(ends.second.fasteners, fmt::format("{}.ends.{}.fasteners", path, names[1]), out);
}

void all_fasteners(const model::Case& c, std::vector<NameAt>& out)
{
    const auto& r = c.reinforcement;
    bracket_fasteners(c, out);
    for (std::size_t i = 0; i < c.panel.ribs.size(); ++i)
        end_fasteners(c.panel.ribs[i].ends, c.panel.ribs[i].from, c.panel.ribs[i].to, fmt::format("panel.ribs[{}]", i), out);
    for (std::size_t i = 0; i < r.angles.size(); ++i)
        end_fasteners(r.angles[i].ends, r.angles[i].from, r.angles[i].to.value_or(r.angles[i].from), fmt::format("reinforcement.angles[{}]", i), out);
    for (std::size_t i = 0; i < r.backing_plates.size(); ++i)
        names_in(r.backing_plates[i].fasteners, fmt::format("reinforcement.backing_plates[{}].fasteners", i), out);
    for (std::size_t i = 0; i < r.boards.size(); ++i) names_in(r.boards[i].fasteners, fmt::format("reinforcement.boards[{}].fasteners", i), out);
}

} // namespace

void check_names(RuleKit& k)
{
    check_uses(k);
    std::vector<NameAt> members, brackets, fasteners, gauges;
    const auto& r = k.c.reinforcement;
    names_in(k.c.panel.ribs, "panel.ribs", members);
    names_in(k.c.panel.openings, "panel.openings", members);
    names_in(r.angles, "reinforcement.angles", members);
    names_in(r.backing_plates, "reinforcement.backing_plates", members);
    names_in(r.straps, "reinforcement.straps", members);
    names_in(r.boards, "reinforcement.boards", members);
    names_in(k.c.brackets, "brackets", brackets);
    names_in(k.c.gauges, "gauges", gauges);
    all_fasteners(k.c, fasteners);
    for (const auto* list : {&members, &brackets, &fasteners, &gauges}) refuse_twins(k, *list);
}

} // namespace thinskin::casefile
