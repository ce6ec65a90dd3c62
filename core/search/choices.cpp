#include "search/choices.h"

#include "catalogue/catalogue.h"
#include "catalogue/sections.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::search {

namespace {

/// "angle 40x40x4" -> "angles 40x40x4"
std::string several(const std::string& section)
{
    const std::size_t blank = section.find(' ');
    return blank == std::string::npos ? section : section.substr(0, blank) + "s" + section.substr(blank);
}

std::string behind_words(const Choices& k, const std::string& end_size)
{
    const std::string ends = k.ends.bolts == 0 ? "ends floating in the skin" : fmt::format("each end {} x {} on the frame", k.ends.bolts, end_size);
    switch (k.behind) {
    case Behind::nothing: return "nothing behind the skin";
    case Behind::plates: return fmt::format("a plate of {:g} mm behind each bracket", k.plate);
    case Behind::one_angle: return fmt::format("one {} behind the upper bolts, {}", k.section, ends);
    case Behind::two_angles: return fmt::format("two {} behind the bolts, {}", several(k.section), ends);
    }
    return "";
}

std::string strap_words(const Choices& k) { return k.straps ? ", a strap from each arm to the frame above" : ""; }

std::string moved(const Choices& k)
{
    std::string out;
    if (k.down > 0) out += fmt::format(", legs {:g} mm farther down", k.down);
    if (k.up > 0) out += fmt::format(", legs {:g} mm farther up", k.up);
    if (k.apart > 0) out += fmt::format(", brackets {:g} mm farther out, each", k.apart);
    if (!k.leg.empty()) out += ", legs of " + k.leg;
    return out;
}

} // namespace

std::string bolt_words(const Bolt& b) { return !b.own.empty() ? b.own : fmt::format("{} {} with washers {:g}x{:g}", b.size, b.grade, b.washer, b.washer_t); }

std::string structure_words(const Choices& k)
{
    return fmt::format("{}{}; {} a row{}; room for washers of {:g}", behind_words(k, "bolt"), strap_words(k), k.per_row, moved(k), k.room);
}

std::string twin_words(const Choices& k) { return structure_words(k) + fmt::format("; {}, {} {}, washers {:g}x{:g}", k.ends.size, k.bolt.own, k.bolt.size, k.bolt.washer, k.bolt.washer_t); }

std::string kind_words(const Choices& k)
{
    return fmt::format("{}, {}{}, {} a row{}", static_cast<int>(k.behind), k.ends.bolts > 0 ? "tied" : "floating", strap_words(k), k.per_row, moved(k));
}

std::string words(const Choices& k)
{
    return fmt::format("{}{}; {} x {} in each row{}", behind_words(k, k.ends.size), strap_words(k), k.per_row, bolt_words(k.bolt), moved(k));
}

double row_spacing(double room) { return room <= 18 ? 24 : room <= 24 ? 30 : room; }

double gauge_for(const std::string& section, double room, double side_by_side)
{
    const catalogue::ReadSection read = catalogue::read_section(section);
    if (!read.ok) return NAN;
    double root = read.section.t;
    for (const catalogue::AngleSize& a : catalogue::angle_sizes())
        if (a.designation == section) root = a.root_radius;
    return std::ceil(read.section.t + root + room / 2 + side_by_side / 2 - 1e-9);
}

} // namespace thinskin::search
