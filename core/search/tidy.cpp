#include "search/tidy.h"

#include "layout/layout.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <set>

namespace thinskin::search {

namespace {

using model::Bracket;
using model::Case;

constexpr double alike_mm = 1e-6;

bool near(const model::Quantity& a, const model::Quantity& b) { return std::abs(a.value - b.value) < alike_mm; }

const Bracket* called(const std::vector<Bracket>& all, const std::string& name)
{
    const auto it = std::find_if(all.begin(), all.end(), [&](const Bracket& b) { return b.name == name; });
    return it == all.end() ? nullptr : &*it;
}

const std::string& original_name(const Bracket& b) { return b.copy_of.empty() ? b.mirror_of : b.copy_of; }

/// The fastener that stands where a copy of `f` would stand.
const model::Fastener* partner(const Bracket& of, const Bracket& copy, const model::Fastener& f, bool mirror)
{
    const double off = f.at.x.value - of.x.value, x = copy.x.value + (mirror ? -off : off);
    const auto it = std::find_if(copy.fasteners.begin(), copy.fasteners.end(), [&](const model::Fastener& g) { return std::abs(g.at.x.value - x) < alike_mm && near(g.at.y, f.at.y) && g.use == f.use; });
    return it == copy.fasteners.end() ? nullptr : &*it;
}

/// A copy takes the whole leg from its original, turned where it is a mirror.
bool same_leg(const Bracket& a, const Bracket& b)
{
    return a.leg && b.leg && near(a.leg->from, b.leg->from) && near(a.leg->to, b.leg->to) && near(a.leg->gauge, b.leg->gauge) && a.leg->section == b.leg->section;
}

/// The bracket as a copy of its original; itself where the scheme has the pair differ.
Bracket as_copy(const Bracket& before, const Bracket& of, const Bracket& now)
{
    if (!same_leg(of, now) || of.fasteners.size() != now.fasteners.size()) return now;
    Bracket out = before;
    out.x = now.x;
    out.rename.clear();
    for (const model::Fastener& f : of.fasteners) {
        const model::Fastener* p = partner(of, now, f, !before.mirror_of.empty());
        if (!p) return now;
        out.rename[f.name] = p->name;
    }
    return out;
}

void add_ends(const model::Ends& e, std::set<std::string>& out)
{
    for (const model::MemberEnd* end : {&e.first, &e.second})
        for (const model::EndFastener& f : end->fasteners) out.insert(f.use);
}

void add_bracket(const Bracket& b, std::set<std::string>& out)
{
    for (const model::Fastener& f : b.fasteners) out.insert(f.use);
    for (const model::Mount& m : b.mounts) out.insert(m.use);
    for (const auto& j : {b.joints.arm_leg, b.joints.brace_leg, b.joints.brace_arm})
        if (j) out.insert(j->bolt);
}

std::set<std::string> used_kinds(const Case& c)
{
    std::set<std::string> out;
    for (const Bracket& b : c.brackets) add_bracket(b, out);
    for (const model::Rib& r : c.panel.ribs) add_ends(r.ends, out);
    for (const model::Angle& a : c.reinforcement.angles) add_ends(a.ends, out);
    for (const model::Strap& s : c.reinforcement.straps) add_ends(s.ends, out);
    for (const model::BackingPlate& p : c.reinforcement.backing_plates)
        for (const model::Fastener& f : p.fasteners) out.insert(f.use);
    for (const model::Board& p : c.reinforcement.boards)
        for (const model::Fastener& f : p.fasteners) out.insert(f.use);
    if (c.item)
        for (const model::ItemFixing& f : c.item->fixings) out.insert(f.use);
    return out;
}

bool has_kind(const Case& c, const std::string& name)
{
    return std::any_of(c.fastener_kinds.begin(), c.fastener_kinds.end(), [&](const model::FastenerKind& k) { return k.name == name; });
}

} // namespace

Case tidied(const Case& original, const Case& scheme)
{
    Case out = scheme;
    for (const Bracket& before : original.brackets) {
        if (original_name(before).empty()) continue;
        const Bracket *of = called(scheme.brackets, original_name(before)), *now = called(scheme.brackets, before.name);
        if (!of || !now) continue;
        const Bracket copy = as_copy(before, *of, *now);
        for (Bracket& b : out.brackets)
            if (b.name == before.name) b = copy;
    }
    const std::set<std::string> before = used_kinds(layout::written_out(original)), now = used_kinds(scheme);
    std::erase_if(out.fastener_kinds, [&](const model::FastenerKind& k) { return before.count(k.name) > 0 && now.count(k.name) == 0; });
    return out;
}

std::vector<std::string> replaced(const Case& original, const Case& tidy)
{
    std::vector<std::string> out;
    if (!original.brackets.empty()) out.push_back("the block brackets is written anew, without the comments inside it");
    const auto written_out = [&](const Bracket& b) {
        const Bracket* now = called(tidy.brackets, b.name);
        return now && !original_name(b).empty() && original_name(*now).empty();
    };
    for (const Bracket& b : original.brackets)
        if (written_out(b)) out.push_back(fmt::format("bracket {} no longer repeats {}: it is written out", b.name, original_name(b)));
    const model::Reinforcement& r = original.reinforcement;
    if (!(r.angles.empty() && r.backing_plates.empty() && r.straps.empty() && r.boards.empty())) out.push_back("all of reinforcement is replaced, with the comments inside it");
    for (const model::FastenerKind& k : original.fastener_kinds)
        if (!has_kind(tidy, k.name)) out.push_back(fmt::format("fastener kind {} is no longer used and goes", k.name));
    return out;
}

} // namespace thinskin::search
