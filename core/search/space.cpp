#include "search/space.h"

#include "catalogue/catalogue.h"
#include "catalogue/sections.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <fmt/core.h>
#include <set>

namespace thinskin::search {

namespace {

std::string plain(const std::string& text)
{
    std::string out;
    for (const char ch : text)
        if (!std::isspace(static_cast<unsigned char>(ch))) out += static_cast<char>(std::tolower(static_cast<unsigned char>(ch)));
    return out;
}

/// What may be chosen for each question, in order.
struct Lists {
    std::vector<std::string> sections, some_sections;
    std::vector<double> plates;
    std::vector<EndFixing> ends;
    std::vector<Bolt> bolts;
    std::vector<double> down, up, apart, rooms;
    std::vector<std::string> legs;        ///< of two bolts side by side
    bool nothing = true, one_angle = true, two_angles = true, floating = true, two_in_a_row = true, straps = false;
};

bool may_use(const model::Propose& p, const std::string& word) { return !listed(p.not_use, word) && (!p.stock_only || listed(p.stock, word)); }

bool inch_case(const model::Case& c)
{
    return std::any_of(c.fastener_kinds.begin(), c.fastener_kinds.end(), [](const model::FastenerKind& k) { return k.type == "bolt" && k.size.find("in") != std::string::npos; });
}

/// Angles whose standing leg goes into the cavity.
std::vector<std::string> sections_of(const model::Case& c, const model::Propose& p)
{
    const double deep = c.panel.cavity && c.panel.cavity->depth.value > 0 ? c.panel.cavity->depth.value : 1e9;
    std::vector<std::string> names;
    for (const std::string& s : p.stock)
        if (s.rfind("angle", 0) == 0) names.push_back(s);
    if (!p.stock_only)
        for (const catalogue::AngleSize& a : catalogue::angle_sizes())
            if (std::find(names.begin(), names.end(), a.designation) == names.end()) names.push_back(a.designation);
    std::vector<std::string> out;
    for (const std::string& n : names)
        if (const auto read = catalogue::read_section(n); read.ok && read.section.h <= deep && !listed(p.not_use, n)) out.push_back(n);
    return out;
}

/// Whether the lying leg takes washers of that room clear of its root and its toe.
bool fits(const std::string& section, double room, double side_by_side)
{
    const auto read = catalogue::read_section(section);
    return read.ok && gauge_for(section, room, side_by_side) + (side_by_side + room) / 2 <= read.section.b;
}

void add_bolts(const model::Propose& p, const std::string& size, const std::vector<std::string>& grades, std::vector<Bolt>& out)
{
    const catalogue::BoltSize* bolt = catalogue::bolt_size(size);
    if (!bolt || !may_use(p, size)) return;
    for (const char* series : {"normal", "large"})
        for (const std::string& grade : grades) {
            const catalogue::WasherRow* w = catalogue::washer(size, series);
            if (w && !listed(p.not_use, grade)) out.push_back({size, grade, series, bolt->d, w->diameter, w->thickness});
        }
}

bool is_insert(const Bolt& b) { return b.series == "insert"; }

std::vector<Bolt> bolts_of(const model::Case& c, const model::Propose& p)
{
    std::vector<Bolt> out;
    const bool inch = inch_case(c);
    const std::vector<std::string> sizes = inch ? std::vector<std::string>{"1/4 in", "5/16 in", "3/8 in", "1/2 in"} : std::vector<std::string>{"M6", "M8", "M10", "M12"};
    const std::vector<std::string> grades = inch ? std::vector<std::string>{"SAE 2", "SAE 5", "SAE 8"} : std::vector<std::string>{"8.8", "10.9", "A2-70"};
    for (const std::string& size : sizes) add_bolts(p, size, grades, out);
    for (Bolt& b : own_fasteners(c, p)) out.push_back(std::move(b));
    return out;
}

/// Nothing, then the named shares of the most.
std::vector<double> steps(double most, const std::vector<double>& shares)
{
    std::vector<double> out{0};
    for (double s : shares)
        if (most > 0) out.push_back(std::round(s * most));
    return out;
}

Lists lists_of(const model::Case& c, const model::Propose& p)
{
    Lists l;
    l.sections = sections_of(c, p);
    const auto wide = [](const std::string& s) { return fits(s, 18, 0); };
    std::erase_if(l.sections, [&](const std::string& s) { return !wide(s); });
    for (std::size_t i = 0; i < l.sections.size(); i += std::max<std::size_t>(1, l.sections.size() / 3)) l.some_sections.push_back(l.sections[i]);
    for (double t : {2.0, 3.0, 5.0})
        if (may_use(p, fmt::format("plate {:g}", t)) && !listed(p.not_use, "plates")) l.plates.push_back(t);
    const bool inch = inch_case(c);
    for (const EndFixing& e : {EndFixing{1, inch ? "1/4 in" : "M6"}, EndFixing{1, inch ? "5/16 in" : "M8"}, EndFixing{2, inch ? "1/4 in" : "M6"}, EndFixing{2, inch ? "5/16 in" : "M8"}})
        if (may_use(p, e.size)) l.ends.push_back(e);
    l.bolts = bolts_of(c, p);
    const bool brackets = !c.brackets.empty();
    l.down = steps(brackets ? p.leg_down.value : 0, {1.0 / 3, 1});
    l.up = steps(brackets ? p.leg_up.value : 0, {1});
    l.apart = steps(c.brackets.size() > 1 && !p.on_ribs ? p.sideways.value : 0, {0.5, 1});
    l.rooms = {18, 24, 37};
    l.two_in_a_row = brackets && !listed(p.not_use, "two in a row");
    if (may_use(p, "angle 60x60x6")) l.legs.push_back("angle 60x60x6");
    l.nothing = !listed(p.not_use, "nothing");
    l.one_angle = !listed(p.not_use, "angles") && !listed(p.not_use, "one angle");
    l.two_angles = !listed(p.not_use, "angles");
    l.floating = !listed(p.not_use, "floating");
    l.straps = !listed(p.not_use, "straps") && !p.stock_only && straps_possible(c);
    return l;
}

/// The narrowest of the rooms that takes the washer.
bool belongs(const Bolt& b, double room) { return room <= 18 ? b.washer <= 18 : room <= 24 ? b.washer > 18 && b.washer <= 24 : b.washer > 24 && b.washer <= 37; }

void add_sisters(const Lists& l, Choices k, std::vector<Choices>& out)
{
    const double side_by_side = k.per_row == 1 ? 0 : 1;
    for (double room : l.rooms)
        for (const Bolt& b : l.bolts)
            if (belongs(b, room) && !(is_insert(b) && k.behind != Behind::nothing) && (k.section.empty() || fits(k.section, room, 0)) && (k.leg.empty() || fits(k.leg, room, side_by_side * row_spacing(room)))) {
                k.room = room;
                k.bolt = b;
                out.push_back(k);
            }
}

/// All positions, or only the shortest and the longest legs.
void add_positions(const Lists& l, Choices k, bool all, std::vector<Choices>& out)
{
    for (double down : l.down)
        for (double up : l.up)
            for (double apart : l.apart) {
                const bool shortest = down == 0 && up == 0, longest = down == l.down.back() && up == l.up.back();
                if (!all && (apart > 0 || !(shortest || longest))) continue;
                k.down = down, k.up = up, k.apart = apart;
                k.per_row = 1;
                k.leg.clear();
                add_sisters(l, k, out);
                if (!all || !l.two_in_a_row) continue;
                k.per_row = 2;
                for (const std::string& leg : l.legs) {
                    k.leg = leg;
                    add_sisters(l, k, out);
                }
            }
}

/// With straps, in fewer sections and positions.
void add_strapped(const Lists& l, Choices k, std::vector<Choices>& out)
{
    if (!l.straps) return;
    k.straps = true;
    for (const std::string& s : l.some_sections)
        for (const EndFixing& e : l.ends) {
            k.section = s;
            k.ends = e;
            add_positions(l, k, false, out);
        }
}

void add_angles(const Lists& l, Behind behind, std::vector<Choices>& out)
{
    Choices k;
    k.behind = behind;
    const bool two = behind == Behind::two_angles;
    for (const std::string& s : two ? l.sections : l.some_sections) {
        k.section = s;
        for (const EndFixing& e : l.ends) {
            k.ends = e;
            add_positions(l, k, two, out);
        }
    }
    add_strapped(l, k, out);
    k.ends = {};
    for (const std::string& s : l.some_sections)
        if (l.floating) {
            k.section = s;
            add_positions(l, k, false, out);
        }
}

std::set<std::string> known_words()
{
    std::set<std::string> out;
    for (const char* w : {"nothing", "plates", "angles", "one angle", "floating", "two in a row", "straps", "screws", "rivets", "inserts", "plate 2", "plate 3", "plate 5"}) out.insert(plain(w));
    for (const auto& b : catalogue::bolt_sizes()) out.insert(plain(b.name));
    for (const auto& g : catalogue::bolt_grades()) out.insert(plain(g.name));
    for (const auto& a : catalogue::angle_sizes()) out.insert(plain(a.designation));
    return out;
}

void caution_unknown(const model::Case& c, const std::vector<std::string>& list, const char* key, std::vector<std::string>& out)
{
    std::set<std::string> known = known_words();
    for (const model::FastenerKind& k : c.fastener_kinds) known.insert(plain(k.name));
    for (const std::string& w : list)
        if (known.count(plain(w)) == 0 && !catalogue::read_section(w).ok) out.push_back(fmt::format("propose.{}: nothing here is called \"{}\"", key, w));
}

} // namespace

bool listed(const std::vector<std::string>& list, const std::string& word)
{
    return std::any_of(list.begin(), list.end(), [&](const std::string& w) { return plain(w) == plain(word); });
}

std::vector<Bolt> own_fasteners(const model::Case& c, const model::Propose& p)
{
    std::vector<Bolt> out;
    for (const model::FastenerKind& k : c.fastener_kinds) {
        const bool known = k.type == "screw" || k.type == "rivet" || k.type == "insert";
        if (!known || listed(p.not_use, k.type + "s") || !may_use(p, k.name)) continue;
        const double room = k.head_washer ? k.head_washer->diameter.value : 0;
        out.push_back({k.size, k.grade, k.type, 0, room, 0, k.name});
    }
    return out;
}

bool straps_possible(const model::Case& c)
{
    const auto& above = c.panel.frame[static_cast<std::size_t>(model::Side::top)];
    return above && above->inner && !c.brackets.empty() && std::all_of(c.brackets.begin(), c.brackets.end(), [](const model::Bracket& b) { return b.arm || !b.copy_of.empty() || !b.mirror_of.empty(); });
}

model::Propose default_wishes()
{
    model::Propose p;
    p.leg_down.value = 150;
    p.leg_up.value = 120;
    p.sideways.value = 60;
    return p;
}

model::Propose wishes_of(const model::Case& c) { return c.propose ? *c.propose : default_wishes(); }

Space space_of(const model::Case& c)
{
    Space s;
    const model::Propose p = wishes_of(c);
    caution_unknown(c, p.stock, "stock", s.cautions);
    caution_unknown(c, p.not_use, "not_use", s.cautions);
    if (c.brackets.empty() && !(c.item && !c.item->fixings.empty())) {
        s.why_empty = "nothing hangs on the panel: there is no bracket and no foot to fix";
        return s;
    }
    const Lists l = lists_of(c, p);
    Choices k;
    if (l.nothing) add_positions(l, k, false, s.schemes);
    for (double t : l.plates) {
        k.behind = Behind::plates;
        k.plate = t;
        add_positions(l, k, false, s.schemes);
    }
    if (l.one_angle) add_angles(l, Behind::one_angle, s.schemes);
    if (l.two_angles) add_angles(l, Behind::two_angles, s.schemes);
    if (s.schemes.empty()) s.why_empty = "propose.stock and propose.not_use leave nothing to build with";
    return s;
}

} // namespace thinskin::search
