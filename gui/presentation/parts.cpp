#include "casefile/edit.h"
#include "casefile/values.h"
#include "presentation/part_edits.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <optional>
#include <set>

/// Whole parts with places and sizes to start from. Sizes are those of the shipped examples (common practice, no source); what
/// they carry is the core's business, and every figure is there to be changed.
namespace thinskin::gui {
namespace {

std::string mm(double x) { return written_length(x, UnitSystem::metric); }
std::string at(double x, double y) { return fmt::format("[{}, {}]", mm(x), mm(y)); }

struct Found { const model::Bracket* bracket = nullptr; std::string path; };

/// The bracket of this name, or the one it is a copy of.
Found original_of(const model::Case& c, const std::string& name)
{
    std::string wanted = name;
    for (int hop = 0; hop < 2; ++hop)
        for (std::size_t i = 0; i < c.brackets.size(); ++i) {
            const model::Bracket& b = c.brackets[i];
            if (b.name != wanted) continue;
            if (b.copy_of.empty() && b.mirror_of.empty()) return {&b, fmt::format("brackets[{}]", i)};
            wanted = b.copy_of.empty() ? b.mirror_of : b.copy_of;
            break;
        }
    return {};
}

const model::Bracket* bracket_of(const model::Case& c, const std::string& name)
{
    for (const model::Bracket& b : c.brackets)
        if (b.name == name) return &b;
    return nullptr;
}

/// Heights with fasteners of brackets and feet, the top first: there an angle does most.
std::vector<double> rows_of(const model::Case& c)
{
    std::set<double, std::greater<>> rows;
    for (const model::Bracket& b : c.brackets)
        for (const model::Fastener& f : b.fasteners) rows.insert(f.at.y.value);
    if (c.item)
        for (const model::ItemFixing& f : c.item->fixings) rows.insert(f.at.y.value);
    return {rows.begin(), rows.end()};
}

bool angle_within(const model::Case& c, double y, double mm)
{
    return std::any_of(c.reinforcement.angles.begin(), c.reinforcement.angles.end(), [y, mm](const model::Angle& a) { return std::abs(a.from.y.value - y) < mm; });
}

/// Where an angle's end bolts, at both edges, come nearer to a hinge or latch than layout lets them.
bool beside_door_parts(const model::Case& c, double y)
{
    constexpr double zone = 155;
    const auto near = [y](double other) { return std::abs(other - y) < zone; };
    if (!c.door) return false;
    const bool latch = std::any_of(c.door->latches.begin(), c.door->latches.end(), [&near](const auto& l) { return near(l.at.y.value); });
    return latch || (c.door->hinges && std::any_of(c.door->hinges->heights.begin(), c.door->hinges->heights.end(), [&near](const model::Quantity& h) { return near(h.value); }));
}

/// The height nearest to the middle of the rows (of the panel, where there are none) at which nothing is in the way: no angle, no
/// bolt that the angle's heel would stand on, no hinge or latch beside its ends. Where there is none, the last is left out.
double free_height(const model::Case& c, const std::vector<double>& rows)
{
    constexpr double apart = 60, off_a_row = 45, from_edge = 60;
    const double middle = rows.empty() ? c.panel.height.value / 2 : (rows.front() + rows.back()) / 2;
    std::optional<double> best, best_beside;
    for (double y = from_edge; y <= c.panel.height.value - from_edge; y += 5) {
        const bool on_bolts = std::any_of(rows.begin(), rows.end(), [y](double r) { return std::abs(r - y) < off_a_row; });
        if (on_bolts || angle_within(c, y, apart)) continue;
        std::optional<double>& place = beside_door_parts(c, y) ? best_beside : best;
        if (!place || std::abs(y - middle) < std::abs(*place - middle)) place = y;
    }
    return best ? *best : best_beside.value_or(middle);
}

/// The top and the bottom row first, then those between; then a free height.
double height_for_angle(const model::Case& c)
{
    constexpr double room_for_two = 45;
    const std::vector<double> all = rows_of(c);
    std::vector<double> rows = all;
    if (rows.size() > 2) std::rotate(rows.begin() + 1, rows.end() - 1, rows.end());
    for (const double y : rows)
        if (!angle_within(c, y, room_for_two)) return y;
    return free_height(c, all);
}

/// A bolt of the case that end fixings can use, or a new kind with the change that makes it.
std::string end_bolt(const model::Case& c, std::vector<casefile::Change>& changes)
{
    for (const model::FastenerKind& k : c.fastener_kinds)
        if (k.type == "bolt" && k.size == "M6") return k.name;
    changes.push_back(casefile::set_block("fastener_kinds[M6 bolt]", "{type: bolt, size: M6, grade: \"8.8\", head_washer: 18x1.6 mm, nut_washer: 18x1.6 mm}"));
    return "M6 bolt";
}

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

/// The stem of a name without its number: "L" of "L12".
std::string stem_of(const std::string& name) { return name.substr(0, name.find_last_not_of("0123456789") + 1); }

} // namespace

namespace {

FieldEdit making(const std::string& part, std::vector<casefile::Change> changes)
{
    FieldEdit e = edit_called("Add " + part, std::move(changes));
    e.part = part;
    return e;
}

} // namespace

FieldEdit add_angle(const model::Case& c)
{
    const std::string name = new_name(all_names(c), "angle", " ");
    const double y = height_for_angle(c);
    for (const model::Angle& a : c.reinforcement.angles)
        if (a.copy_of.empty() && a.to && a.from.y.value == a.to->y.value)
            return making(name, {casefile::append("reinforcement.angles", fmt::format("{{name: {}, copy_of: {}, from: {}}}", name, quoted(a.name), at(a.from.x.value, y)))});
    std::vector<casefile::Change> changes;
    const std::string bolt = quoted(end_bolt(c, changes));
    // As in the shipped examples: 10 mm short of the edges, end bolts 20 mm and 45 mm from the edge.
    const std::string end = fmt::format("{{to: frame, fasteners: [{{at: {}, use: {}}}, {{at: {}, use: {}}}]}}", at(45, y), bolt, at(20, y), bolt);
    changes.push_back(casefile::append("reinforcement.angles", fmt::format("{{name: {}, from: {}, to: {}, gauge: 25 mm, section: angle 40x40x4, material: S235, face: inside, lying: up, ends: {{left: {}, right: same_as_left}}}}", name,
                                                                           at(10, y), at(c.panel.width.value - 10, y), end)));
    return making(name, std::move(changes));
}

FieldEdit add_fastener(const model::Case& c, const std::string& bracket)
{
    const Found o = original_of(c, bracket);
    if (!o.bracket || o.bracket->fasteners.empty()) return refused("there is no bracket " + bracket);
    std::vector<double> y;
    for (const model::Fastener& f : o.bracket->fasteners) y.push_back(f.at.y.value);
    std::sort(y.begin(), y.end());
    double best = y.front() + 50, widest = 0;
    for (std::size_t k = 0; k + 1 < y.size(); ++k)
        if (y[k + 1] - y[k] > widest) {
            widest = y[k + 1] - y[k];
            best = std::round((y[k] + y[k + 1]) / 2 / 5) * 5;
        }
    const model::Fastener& like = o.bracket->fasteners.front();
    const std::set<std::string> taken = all_names(c);
    const std::string name = new_name(taken, stem_of(like.name), "");
    std::vector<casefile::Change> changes = {casefile::append(o.path + ".fasteners", fmt::format("{{name: {}, at: {}, use: {}}}", quoted(name), at(like.at.x.value, best), quoted(like.use)))};
    for (std::size_t i = 0; i < c.brackets.size(); ++i) {
        const auto renamed = c.brackets[i].rename.find(like.name);
        if (renamed != c.brackets[i].rename.end() && (c.brackets[i].copy_of == o.bracket->name || c.brackets[i].mirror_of == o.bracket->name))
            changes.push_back(casefile::set(fmt::format("brackets[{}].rename.{}", i, name), new_name(taken, stem_of(renamed->second), "")));
    }
    return making(name, std::move(changes));
}

FieldEdit add_bracket_copy(const model::Case& c, const std::string& bracket)
{
    const Found o = original_of(c, bracket);
    if (!o.bracket) return refused("there is no bracket " + bracket);
    const std::string name = new_name(all_names(c), "bracket", " ");
    double x = c.panel.width.value - o.bracket->x.value;
    const auto stands_there = [&c](double place) { return std::any_of(c.brackets.begin(), c.brackets.end(), [place](const model::Bracket& b) { return std::abs(b.x.value - place) < 50; }); };
    for (int k = 0; k < 40 && stands_there(x); ++k) x = std::fmod(x + 60, c.panel.width.value);
    std::set<std::string> taken = all_names(c);
    std::string renames; // each fastener has a name of its own, those of a copy too
    for (const model::Fastener& f : o.bracket->fasteners) {
        const std::string fresh = new_name(taken, stem_of(f.name), "");
        taken.insert(fresh);
        renames += fmt::format("{}{}: {}", renames.empty() ? "" : ", ", quoted(f.name), quoted(fresh));
    }
    return making(name, {casefile::append("brackets", fmt::format("{{name: {}, mirror_of: {}, x: {}, rename: {{{}}}}}", name, quoted(o.bracket->name), mm(x), renames))});
}

FieldEdit add_strap(const model::Case& c, const std::string& bracket)
{
    const Found o = original_of(c, bracket);
    const model::Bracket* here = bracket_of(c, bracket);
    if (!o.bracket || !here || !o.bracket->arm) return refused("there is no bracket " + bracket + " with an arm");
    const std::set<std::string> taken = all_names(c);
    const std::string name = new_name(taken, "strap", " ");
    std::vector<casefile::Change> changes;
    const std::string bolt = quoted(end_bolt(c, changes));
    const double x = here->x.value, top = c.panel.height.value - 35, arm = o.bracket->arm->at.value, out = std::round(0.9 * o.bracket->arm->length.value / 5) * 5;
    changes.push_back(casefile::append("reinforcement.straps", fmt::format("{{name: {}, from: [{}, {}, 0 mm], to: [{}, {}, {}], section: flat 30x3, material: S235, slack: 0 mm, ends: {{top: {{to: frame, fasteners: [{{at: {}, use: {}}}]}}, bottom: {{to: bracket, fasteners: [{{at: {}, use: {}}}]}}}}}}",
                                                                           name, mm(x), mm(top), mm(x), mm(arm), mm(out), at(x, top), bolt, at(x, arm), bolt)));
    return making(name, std::move(changes));
}

FieldEdit add_gauge(const model::Case& c, double x_mm, double y_mm, UnitSystem units)
{
    if (!std::isfinite(x_mm) || !std::isfinite(y_mm)) return refused("this is no place");
    const std::string name = new_name(all_names(c), "gauge", " ");
    return edit_called("Add " + name, {casefile::append("gauges", fmt::format("{{name: {}, at: [{}, {}], relative_to: frame}}", name, written_length(x_mm, units), written_length(y_mm, units)))});
}

FieldEdit remove_part(const model::Case& c, const std::string& path)
{
    const std::string why = needed_by(c, path);
    if (!why.empty()) return refused(why);
    std::vector<casefile::Change> changes = without_renames(c, path);
    changes.push_back(casefile::remove(path));
    return edit_called("Remove " + name_at(c, path), std::move(changes));
}

} // namespace thinskin::gui
