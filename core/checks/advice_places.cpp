#include "checks/advice_places.h"

#include <algorithm>

namespace thinskin::checks {

namespace {

/// "bearing/L1/skin" -> bearing, L1, skin.
std::vector<std::string> pieces(const std::string& id)
{
    std::vector<std::string> out(1);
    for (const char ch : id)
        if (ch == '/') out.emplace_back();
        else out.back() += ch;
    return out;
}

template <class T> bool has(const std::vector<T>& all, const std::string& name)
{
    return std::any_of(all.begin(), all.end(), [&name](const T& x) { return x.name == name; });
}

/// Key of the block that a part is written in; empty: none.
std::string block_of(const std::string& part, const layout::Layout& l)
{
    if (has(l.brackets, part)) return "brackets[" + part + "]";
    if (std::any_of(l.angles.begin(), l.angles.end(), [&part](const layout::Angle& a) { return a.bar.name == part; })) return "reinforcement.angles[" + part + "]";
    if (has(l.straps, part)) return "reinforcement.straps[" + part + "]";
    if (has(l.plates, part)) return l.source && has(l.source->reinforcement.boards, part) ? "reinforcement.boards[" + part + "]" : "reinforcement.backing_plates[" + part + "]";
    if (l.source && has(l.source->panel.ribs, part)) return "panel.ribs[" + part + "]";
    return l.item && l.item->name == part ? "item" : "";
}

/// A fastener of the row: its kind and the list it stands in.
struct Fastener { std::string name, kind, list; };

/// Calls visit(name, kind, a function that gives the name of its list) with each fastener until one visit says yes.
template <class Visit> void each_fastener(const layout::Layout& l, const Visit& visit)
{
    const auto any_stack = [&visit](const auto& all, const auto& list) {
        return std::any_of(all.begin(), all.end(), [&](const layout::Stack& s) { return visit(s.name, s.hardware.kind, list); });
    };
    for (const layout::Bracket& b : l.brackets) {
        if (any_stack(b.fasteners, [&b] { return "brackets[" + b.name + "].fasteners"; })) return;
        for (const layout::Mount& m : b.mounts)
            if (visit(m.name, m.use, [&b] { return "brackets[" + b.name + "].mounts"; })) return;
    }
    for (const layout::Angle& a : l.angles)
        for (const layout::MemberEnd& e : a.ends)
            if (any_stack(e.fasteners, [&] { return "reinforcement.angles[" + a.bar.name + "].ends." + e.side + ".fasteners"; })) return;
    for (const layout::Plate& p : l.plates)
        for (const layout::PlateFastener& f : p.fasteners)
            if (visit(f.stack.name, f.stack.hardware.kind, [&] { return block_of(p.name, l) + ".fasteners"; })) return;
    if (!l.item) return;
    for (const layout::Foot& f : l.item->feet)
        if (visit(f.stack.name, f.stack.hardware.kind, [] { return std::string("item.fixings"); })) return;
}

class Row {
public:
    Row(const results::Check& c, const layout::Layout& l) : c_(c), l_(l), id_(pieces(c.id)), block_(block_of(c.part, l))
    {
        each_fastener(l, [this](const std::string& name, const std::string& kind, const auto& list) {
            if (std::find(id_.begin() + 1, id_.end(), name) == id_.end()) return false;
            fastener_ = {name, kind, list()};
            return true;
        });
    }

    [[nodiscard]] std::string key(At at) const
    {
        switch (at) {
        case At::section: return section();
        case At::gauge: return gauge();
        case At::plate_box: return of_block("reinforcement.backing_plates", ".box");
        case At::washer: return of_kind(c_.id.find("at the nut") != std::string::npos ? ".nut_washer" : ".head_washer");
        case At::size: return of_kind(".size");
        case At::grade: return of_kind(".grade");
        case At::hole: return of_fastener(".at");
        case At::use: return of_fastener(".use");
        case At::fasteners: return fastener_.list;
        case At::sheet: return sheet();
        case At::joint: return joint();
        case At::arm: return of_block("brackets", ".arm.length");
        case At::brace: return of_block("brackets", ".brace.section");
        case At::brace_foot: return of_block("brackets", ".brace.from");
        case At::first_leg: return l_.brackets.empty() ? "" : "brackets[" + l_.brackets.front().name + "].leg.to";
        case At::mounts: return of_block("brackets", ".mounts");
        case At::mass: return "item.mass";
        case At::item_place: return "item.centre_of_mass";
        case At::tether: return "item.tether";
        case At::latches: return "door.latches";
        case At::new_angle: return "reinforcement.angles";
        case At::first_angle: return l_.angles.empty() ? "" : "reinforcement.angles[" + l_.angles.front().bar.name + "].section";
        case At::frame_sheet: return "panel.frame.inner.thickness";
        case At::frame_section: return "panel.frame.section";
        }
        return "";
    }

private:
    [[nodiscard]] std::string of_block(const char* list, const char* key) const { return block_.rfind(list, 0) == 0 ? block_ + key : ""; }
    [[nodiscard]] std::string of_fastener(const char* key) const { return fastener_.list.empty() ? "" : fastener_.list + "[" + fastener_.name + "]" + key; }
    [[nodiscard]] std::string of_kind(const char* key) const { return fastener_.kind.empty() ? "" : "fastener_kinds[" + fastener_.kind + "]" + key; }

    /// A bracket's row names the bar: "torsion of arm left".
    [[nodiscard]] std::string bar() const
    {
        for (const char* k : {"arm", "brace"})
            if (c_.title.find(std::string(k) + " " + c_.part) != std::string::npos) return k;
        return "leg";
    }

    [[nodiscard]] std::string section() const
    {
        if (block_.empty()) return "";
        if (block_.rfind("brackets", 0) == 0) return block_ + "." + bar() + ".section";
        return block_ + (block_.rfind("reinforcement.backing_plates", 0) == 0 || block_.rfind("reinforcement.boards", 0) == 0 ? ".thickness" : block_ == "item" ? ".fixings" : ".section");
    }

    [[nodiscard]] std::string gauge() const { return block_.rfind("brackets", 0) == 0 ? block_ + ".leg.gauge" : of_block("reinforcement.angles", ".gauge"); }

    [[nodiscard]] std::string sheet() const
    {
        if (id_.size() < 3) return "";
        return id_[2] == "skin" ? "reinforcement.backing_plates" : id_[2].rfind("frame", 0) == 0 ? "panel.frame.inner.thickness" : "";
    }

    [[nodiscard]] std::string joint() const
    {
        if (block_.rfind("brackets", 0) != 0) return "";
        const auto is = [this](const char* with) { return c_.id.rfind(with, 0) == 0; };
        return block_ + (is("brace to leg") ? ".joints.brace_leg" : is("brace to arm") ? ".joints.brace_arm" : ".joints.arm_leg");
    }

    const results::Check& c_;
    const layout::Layout& l_;
    std::vector<std::string> id_;
    std::string block_;
    Fastener fastener_;
};

/// "NAME.rest" behind a list's key: the longest name of the list that it begins with.
template <class T> std::string with_name(const std::string& rest, const std::vector<T>& all)
{
    std::string name;
    for (const T& x : all)
        if (rest.rfind(x.name, 0) == 0 && x.name.size() > name.size()) name = x.name;
    return name.empty() ? "" : "[" + name + "]" + rest.substr(name.size());
}

/// Up to where words begin: "door.hinges.evidence: {kind: regulation}".
std::string key_alone(const std::string& s)
{
    const std::size_t close = s.rfind(']');
    return s.substr(0, s.find_first_not_of("abcdefghijklmnopqrstuvwxyz_0123456789.", close == std::string::npos ? 0 : close + 1));
}

std::string place_to_lift(const std::string& words, const layout::Layout& l)
{
    const model::Case& c = *l.source;
    const auto behind = [&words](const std::string& list) { return words.rfind(list + ".", 0) == 0 ? words.substr(list.size() + 1) : std::string(); };
    const auto named = [&](const std::string& list, const auto& all) {
        const std::string rest = behind(list), found = rest.empty() ? "" : with_name(rest, all);
        return found.empty() ? std::string() : key_alone(list + found);
    };
    for (const std::string& k : {named("fastener_kinds", c.fastener_kinds), named("brackets", c.brackets), named("reinforcement.straps", c.reinforcement.straps), named("reinforcement.backing_plates", c.reinforcement.backing_plates),
                                 named("reinforcement.angles", c.reinforcement.angles), named("panel.openings", c.panel.openings), named("panel.ribs", c.panel.ribs)})
        if (!k.empty()) return k;
    const std::string key = key_alone(words);
    return key.find('.') == std::string::npos && key != "road" && key != "rules" && key != "forces" ? "" : key;
}

} // namespace

std::vector<std::string> places_of(const std::vector<At>& all, const results::Check& c, const layout::Layout& l)
{
    const Row row(c, l);
    std::vector<std::string> out;
    for (const At at : all)
        if (std::string k = row.key(at); !k.empty() && std::find(out.begin(), out.end(), k) == out.end()) out.push_back(std::move(k));
    return out;
}

std::vector<std::string> places_to_lift(const std::string& lift_with, const layout::Layout& l)
{
    if (!l.source) return {};
    std::string k = place_to_lift(lift_with, l);
    return k.empty() ? std::vector<std::string>{} : std::vector{std::move(k)};
}

} // namespace thinskin::checks
