#include "studies/single_loss.h"

#include "layout/layout.h"

#include <algorithm>
#include <fmt/core.h>

/// Which single losses a case can suffer, as edits of its values.
namespace thinskin::studies {

namespace {

using Edits = std::vector<LossEdit>;

/// Longer than any strap can stretch: it never comes tight.
constexpr double hangs_loose_mm = 1000;

template <class List>
void take_out(List& list, std::size_t i) { list.erase(list.begin() + static_cast<std::ptrdiff_t>(i)); }

/// "fastener LS1 of left strap"; a name that holds its owner's is enough.
std::string fastener_of(const std::string& name, const std::string& owner)
{
    return name.find(owner) == std::string::npos ? fmt::format("fastener {} of {}", name, owner) : "fastener " + name;
}

void add_bracket_fasteners(const model::Case& c, Edits& out)
{
    for (std::size_t b = 0; b < c.brackets.size(); ++b)
        for (std::size_t f = 0; f < c.brackets[b].fasteners.size(); ++f) {
            LossEdit e{fastener_of(c.brackets[b].fasteners[f].name, c.brackets[b].name), "fastener", c};
            take_out(e.edited.brackets[b].fasteners, f);
            if (e.edited.brackets[b].fasteners.empty()) e.alone = fmt::format("it is the only fastener of {}", c.brackets[b].name);
            out.push_back(std::move(e));
        }
}

void add_mounts(const model::Case& c, Edits& out)
{
    for (std::size_t b = 0; b < c.brackets.size(); ++b)
        for (std::size_t m = 0; m < c.brackets[b].mounts.size(); ++m) {
            LossEdit e{c.brackets[b].mounts[m].name, "mount", c};
            take_out(e.edited.brackets[b].mounts, m);
            if (e.edited.brackets[b].mounts.empty()) e.alone = fmt::format("it is the only mount on {}", c.brackets[b].name);
            out.push_back(std::move(e));
        }
}

void add_feet(const model::Case& c, Edits& out)
{
    if (!c.item) return;
    for (std::size_t f = 0; f < c.item->fixings.size(); ++f) {
        LossEdit e{fmt::format("fastener of foot {}", c.item->fixings[f].name), "fastener", c};
        take_out(e.edited.item->fixings, f);
        if (e.edited.item->fixings.empty()) e.alone = "it is the only foot of the item";
        out.push_back(std::move(e));
    }
}

/// Ends of members that `list` reaches in a case; the list is asked again in each edited copy.
template <class List>
void add_ends(const model::Case& c, List list, Edits& out)
{
    const auto& members = list(c);
    for (std::size_t m = 0; m < members.size(); ++m)
        for (model::MemberEnd model::Ends::*side : {&model::Ends::first, &model::Ends::second}) {
            const model::MemberEnd& end = members[m].ends.*side;
            for (std::size_t f = 0; f < end.fasteners.size(); ++f) {
                LossEdit e{fastener_of(end.fasteners[f].name, members[m].name), "fastener", c};
                model::MemberEnd& edited = list(e.edited)[m].ends.*side;
                take_out(edited.fasteners, f);
                if (edited.fasteners.empty()) edited.to = model::MemberEnd::To::none;
                out.push_back(std::move(e));
            }
        }
}

/// A strap end with one fastener is lost with it: the strap then hangs as if slack, and is told as that.
void add_strap(const model::Case& c, std::size_t s, Edits& out)
{
    const model::Strap& strap = c.reinforcement.straps[s];
    LossEdit slack{strap.name + " slack", "strap", c};
    slack.edited.reinforcement.straps[s].slack.value = hangs_loose_mm;
    for (const model::MemberEnd* end : {&strap.ends.first, &strap.ends.second})
        if (end->fasteners.size() == 1) slack.what += fmt::format(", or without {}", end->fasteners.front().name);
    out.push_back(std::move(slack));
    for (model::MemberEnd model::Ends::*side : {&model::Ends::first, &model::Ends::second}) {
        const model::MemberEnd& end = strap.ends.*side;
        for (std::size_t f = 0; end.fasteners.size() > 1 && f < end.fasteners.size(); ++f) {
            LossEdit e{fastener_of(end.fasteners[f].name, strap.name), "fastener", c};
            take_out((e.edited.reinforcement.straps[s].ends.*side).fasteners, f);
            out.push_back(std::move(e));
        }
    }
}

template <class List>
void add_plates(const model::Case& c, List list, Edits& out)
{
    const auto& plates = list(c);
    for (std::size_t p = 0; p < plates.size(); ++p)
        for (std::size_t f = 0; f < plates[p].fasteners.size(); ++f) {
            LossEdit e{fastener_of(plates[p].fasteners[f].name, plates[p].name), "fastener", c};
            take_out(list(e.edited)[p].fasteners, f);
            if (list(e.edited)[p].fasteners.empty()) e.alone = fmt::format("it is the only fastener of {}", plates[p].name);
            out.push_back(std::move(e));
        }
}

void add_rust(const model::Case& c, double rust_mm, Edits& out)
{
    if (!(rust_mm > 0)) return;
    LossEdit e{fmt::format("{:g} mm of the skin to corrosion", rust_mm), "skin", c};
    model::Quantity& t = e.edited.panel.skin.thickness;
    t.value -= rust_mm;
    if (!(t.value > c.panel.skin.coating.value)) e.alone = "nothing of the skin is left";
    out.push_back(std::move(e));
}

} // namespace

std::vector<LossEdit> single_losses(const model::Case& original, double rust_mm)
{
    const model::Case c = layout::written_out(original);
    Edits out;
    add_bracket_fasteners(c, out);
    add_mounts(c, out);
    add_feet(c, out);
    add_ends(c, [](auto& of) -> auto& { return of.reinforcement.angles; }, out);
    add_ends(c, [](auto& of) -> auto& { return of.panel.ribs; }, out);
    for (std::size_t s = 0; s < c.reinforcement.straps.size(); ++s) add_strap(c, s, out);
    add_plates(c, [](auto& of) -> auto& { return of.reinforcement.backing_plates; }, out);
    add_plates(c, [](auto& of) -> auto& { return of.reinforcement.boards; }, out);
    add_rust(c, rust_mm, out);
    return out;
}

} // namespace thinskin::studies
