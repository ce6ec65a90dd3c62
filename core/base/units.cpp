#include "base/units.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <numbers>
#include <vector>

namespace thinskin::base {
namespace {

// Exact by definition: inch 25.4 mm, pound 0.45359237 kg, standard gravity 9.80665 m/s2.
constexpr double inch = 25.4, foot = 304.8, pound = 0.45359237;
constexpr double pound_force = pound * gravity_m_s2;

struct Named {
    std::string_view name;
    Unit unit;
};
using Names = std::vector<Named>;

const Names lengths = {{"mm", {}}, {"cm", {10, 1}}, {"m", {1e3, 1}}, {"km", {1e6, 1}}, {"in", {inch, 1}}, {"ft", {foot, 1}}};
const Names masses = {{"kg", {}}, {"lb", {pound, 1}}};
const Names forces = {{"N", {}}, {"kN", {1e3, 1}}, {"lbf", {pound_force, 1}}};
const Names stresses = {{"Pa", {1, 1e6}}, {"kPa", {1, 1e3}}, {"MPa", {}}, {"psi", {pound_force, inch * inch}},
                        {"ksi", {1e3 * pound_force, inch * inch}}};
const Names moments = {{"N*mm", {}}, {"N*m", {1e3, 1}}, {"Nm", {1e3, 1}}, {"kN*m", {1e6, 1}}, {"kNm", {1e6, 1}},
                       {"lbf*in", {pound_force * inch, 1}}, {"lbf*ft", {pound_force * foot, 1}}};
const Names angles = {{"deg", {std::numbers::pi, 180}}, {"rad", {}}};
const Names frequencies = {{"Hz", {}}, {"rpm", {1, 60}}};
const Names accelerations = {{"g", {}}, {"m/s2", {1, gravity_m_s2}}};
const Names speeds = {{"mm/s", {}}, {"m/s", {1e3, 1}}, {"km/h", {1e6, 3600}}, {"mph", {1609344, 3600}}};
const Names times = {{"s", {}}, {"ms", {1, 1e3}}, {"h", {3600, 1}}};
const Names densities = {{"g2/Hz", {}}, {"m2/s3", {1, gravity_m_s2 * gravity_m_s2}}, {"(m/s2)2/Hz", {1, gravity_m_s2 * gravity_m_s2}}};
const Names ratios = {{"%", {1, 100}}};

std::optional<Unit> lookup(const Names& names, std::string_view unit)
{
    for (const Named& n : names)
        if (n.name == unit) return n.unit;
    return std::nullopt;
}

Unit over(Unit a, Unit b) { return {a.numerator * b.denominator, a.denominator * b.numerator}; }

/// "A<separator>B" with A from one list and B from another.
std::optional<Unit> quotient(std::string_view unit, std::string_view separator, const Names& above, const Names& below)
{
    const std::size_t at = unit.find(separator);
    if (at == std::string_view::npos) return std::nullopt;
    const auto a = lookup(above, unit.substr(0, at));
    const auto b = lookup(below, unit.substr(at + separator.size()));
    if (!a || !b) return std::nullopt;
    return over(*a, *b);
}

std::optional<Unit> spring_of_one_end(std::string_view unit)
{
    const std::string_view tail = "/rad";
    if (unit.size() <= tail.size() || unit.substr(unit.size() - tail.size()) != tail) return std::nullopt;
    return lookup(moments, unit.substr(0, unit.size() - tail.size()));
}

constexpr std::array all_dimensions = {
    Dimension::length, Dimension::mass, Dimension::force, Dimension::stress, Dimension::moment,
    Dimension::rotational_stiffness, Dimension::angle, Dimension::frequency, Dimension::acceleration, Dimension::speed,
    Dimension::time, Dimension::ratio, Dimension::stiffness, Dimension::rotational_spring, Dimension::acceleration_density};

std::string lower(std::string_view text)
{
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return out;
}

} // namespace

std::string tidy_unit(std::string_view text)
{
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text.substr(i, 2) == "\xC2\xB7") { // middle dot
            out += '*';
            ++i;
        } else if (text.substr(i, 3) == "\xE2\x8B\x85") { // dot operator
            out += '*';
            i += 2;
        } else if (text[i] == ' ') {
            if (!out.empty() && out.back() != ' ') out += ' ';
        } else {
            out += text[i];
        }
    }
    while (!out.empty() && out.back() == ' ') out.pop_back();
    return out;
}

std::optional<Unit> find_unit(std::string_view tidy, Dimension d)
{
    switch (d) {
    case Dimension::length: return lookup(lengths, tidy);
    case Dimension::mass: return lookup(masses, tidy);
    case Dimension::force: return lookup(forces, tidy);
    case Dimension::stress: return lookup(stresses, tidy);
    case Dimension::moment: return lookup(moments, tidy);
    case Dimension::rotational_stiffness: return quotient(tidy, "/rad per ", moments, lengths);
    case Dimension::angle: return lookup(angles, tidy);
    case Dimension::frequency: return lookup(frequencies, tidy);
    case Dimension::acceleration: return lookup(accelerations, tidy);
    case Dimension::speed: return lookup(speeds, tidy);
    case Dimension::time: return lookup(times, tidy);
    case Dimension::ratio: return lookup(ratios, tidy);
    case Dimension::stiffness: return quotient(tidy, "/", forces, lengths);
    case Dimension::rotational_spring: return spring_of_one_end(tidy);
    case Dimension::acceleration_density: return lookup(densities, tidy);
    }
    return std::nullopt;
}

std::optional<Dimension> dimension_of(std::string_view tidy)
{
    for (const Dimension d : all_dimensions)
        if (find_unit(tidy, d)) return d;
    return std::nullopt;
}

std::string_view unit_list(Dimension d)
{
    switch (d) {
    case Dimension::length: return "mm, cm, m, km, in, ft";
    case Dimension::mass: return "kg, lb";
    case Dimension::force: return "N, kN, lbf";
    case Dimension::stress: return "Pa, kPa, MPa, psi, ksi";
    case Dimension::moment: return "N·mm, N·m (also N*m, Nm), kN·m, lbf·in, lbf·ft";
    case Dimension::rotational_stiffness: return "N·m/rad per m, lbf·in/rad per in, lbf·ft/rad per ft";
    case Dimension::angle: return "deg, rad";
    case Dimension::frequency: return "Hz, rpm";
    case Dimension::acceleration: return "g, m/s2";
    case Dimension::speed: return "mm/s, m/s, km/h, mph";
    case Dimension::time: return "s, ms, h";
    case Dimension::ratio: return "%";
    case Dimension::stiffness: return "N/mm, N/m, kN/m, lbf/in";
    case Dimension::rotational_spring: return "N·m/rad, lbf·in/rad, lbf·ft/rad";
    case Dimension::acceleration_density: return "(m/s2)2/Hz, m2/s3, g2/Hz";
    }
    return "";
}

std::optional<double> steel_gauge_mm(int gauge)
{
    constexpr int first = 10;
    constexpr std::array mm = {3.416, 3.038, 2.657, 2.278, 1.897, 1.709, 1.519, 1.367, 1.214,
                               1.062, 0.912, 0.836, 0.759, 0.683, 0.607, 0.531, 0.454};
    const int last = first + static_cast<int>(mm.size()) - 1;
    if (gauge < first || gauge > last) return std::nullopt;
    return mm[static_cast<std::size_t>(gauge - first)];
}

std::string other_gauge(std::string_view tidy)
{
    const std::string unit = lower(tidy);
    const auto has = [&](std::string_view part) { return unit.find(part) != std::string::npos; };
    if (has("swg")) return "British wire gauge is another table than steel sheet gauge: measure the sheet and write it in mm or in";
    if (has("awg") || has("al ga") || has("alu") || has("b&s"))
        return "aluminium gauge is another table than steel sheet gauge: measure the sheet and write it in mm or in";
    if (has("galv") || has("gsg"))
        return "galvanised gauge has the zinc in it, so the steel below is thinner than it says: measure the sheet and write it in mm or in";
    if (unit == "gauge" || unit == "gage" || unit == "g." || has("ga "))
        return "write 22 ga for steel manufacturers' standard gauge; other gauges are other thicknesses: write those in mm or in";
    return {};
}

} // namespace thinskin::base
