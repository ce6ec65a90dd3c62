#include "casefile/edit.h"
#include "casefile/writer.h"
#include "document/document.h"
#include "layout/offered.h"
#include "presentation/part_edits.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <optional>
#include <set>

/// Whole parts with places and sizes to start from. Sizes are those of the shipped examples (common practice, no source); what
/// they carry, and where they may stand, is the core's business, and every figure is there to be changed.
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

/// A bolt of the case that end fixings can use, or a new kind with the change that makes it.
std::string end_bolt(const model::Case& c, std::vector<casefile::Change>& changes)
{
    for (const model::FastenerKind& k : c.fastener_kinds)
        if (k.type == "bolt" && k.size == "M6") return k.name;
    changes.push_back(casefile::set_block("fastener_kinds[M6 bolt]", "{type: bolt, size: M6, grade: \"8.8\", head_washer: 18x1.6 mm, nut_washer: 18x1.6 mm}"));
    return "M6 bolt";
}

/// The stem of a name without its number: "L" of "L12".
std::string stem_of(const std::string& name) { return name.substr(0, name.find_last_not_of("0123456789") + 1); }

FieldEdit making(const std::string& part, std::vector<casefile::Change> changes)
{
    FieldEdit e = edit_called("Add " + part, std::move(changes));
    e.part = part;
    return e;
}

/// The case after an edit; none: the edit does not fit.
std::optional<model::Case> after(const model::Case& c, const FieldEdit& e)
{
    const casefile::Edited t = casefile::edit_text(casefile::write(c), e.edit.changes);
    const auto reading = t.ok ? read_case_text(t.text, c.file) : nullptr;
    return reading && reading->value ? std::optional(*reading->value) : std::nullopt;
}

/// The first of these edits that leads to a case whose geometry has no error more than before; else refused, with what is in the way.
FieldEdit first_that_fits(const model::Case& c, const std::string& part, const std::vector<FieldEdit>& all)
{
    std::string why;
    for (const FieldEdit& e : all) {
        const std::optional<model::Case> then = after(c, e);
        const std::vector<std::string> wrong = then ? layout::new_errors(c, *then) : std::vector<std::string>{"it does not fit into the file"};
        if (wrong.empty()) return e;
        if (why.empty()) why = wrong.front();
    }
    return refused("No free place for " + part + (why.empty() ? "" : ": " + why));
}

/// The same angle at another height, with its end bolts.
void lift_to(model::Angle& a, double y)
{
    const double by = y - a.from.y.value;
    a.from.y.value = y;
    if (a.to) a.to->y.value += by;
    for (model::MemberEnd* end : {&a.ends.first, &a.ends.second})
        for (model::EndFastener& f : end->fasteners) f.at.y.value += by;
}

/// A level angle at a height: a copy of the first that there is, else one with sizes to start from.
FieldEdit angle_at(const model::Case& c, double y)
{
    const std::string name = new_name(all_names(c), "angle", " ");
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

/// Heights along the leg: the middle of the widest gap between its fasteners first, then every 10 mm.
std::vector<double> heights_on(const model::Bracket& b)
{
    std::vector<double> y, out;
    for (const model::Fastener& f : b.fasteners) y.push_back(f.at.y.value);
    std::sort(y.begin(), y.end());
    std::vector<std::pair<double, double>> gaps; // how wide, its middle
    for (std::size_t k = 0; k + 1 < y.size(); ++k) gaps.emplace_back(y[k + 1] - y[k], std::round((y[k] + y[k + 1]) / 2 / 5) * 5);
    std::stable_sort(gaps.begin(), gaps.end(), [](const auto& a, const auto& z) { return a.first > z.first; });
    for (const auto& [wide, middle] : gaps) out.push_back(middle);
    out.push_back(y.front() + 50);
    if (!b.leg) return out;
    const double low = std::min(b.leg->from.value, b.leg->to.value), high = std::max(b.leg->from.value, b.leg->to.value);
    for (double h = high - 10; h > low; h -= 10) out.push_back(h);
    return out;
}

FieldEdit fastener_at(const model::Case& c, const Found& o, double y)
{
    const model::Fastener& like = o.bracket->fasteners.front();
    const std::set<std::string> taken = all_names(c);
    const std::string name = new_name(taken, stem_of(like.name), "");
    std::vector<casefile::Change> changes = {casefile::append(o.path + ".fasteners", fmt::format("{{name: {}, at: {}, use: {}}}", quoted(name), at(like.at.x.value, y), quoted(like.use)))};
    for (std::size_t i = 0; i < c.brackets.size(); ++i) {
        const auto renamed = c.brackets[i].rename.find(like.name);
        if (renamed != c.brackets[i].rename.end() && (c.brackets[i].copy_of == o.bracket->name || c.brackets[i].mirror_of == o.bracket->name))
            changes.push_back(casefile::set(fmt::format("brackets[{}].rename.{}", i, name), new_name(taken, stem_of(renamed->second), "")));
    }
    return making(name, std::move(changes));
}

FieldEdit bracket_copy_at(const model::Case& c, const model::Bracket& original, double x)
{
    std::set<std::string> taken = all_names(c);
    std::string renames; // each fastener has a name of its own, those of a copy too
    for (const model::Fastener& f : original.fasteners) {
        const std::string fresh = new_name(taken, stem_of(f.name), "");
        taken.insert(fresh);
        renames += fmt::format("{}{}: {}", renames.empty() ? "" : ", ", quoted(f.name), quoted(fresh));
    }
    const std::string name = new_name(all_names(c), "bracket", " ");
    return making(name, {casefile::append("brackets", fmt::format("{{name: {}, mirror_of: {}, x: {}, rename: {{{}}}}}", name, quoted(original.name), mm(x), renames))});
}

FieldEdit strap_at(const model::Case& c, const model::Bracket& original, double x, double top)
{
    const std::string name = new_name(all_names(c), "strap", " ");
    std::vector<casefile::Change> changes;
    const std::string bolt = quoted(end_bolt(c, changes));
    const double arm = original.arm->at.value, out = std::round(0.9 * original.arm->length.value / 5) * 5;
    changes.push_back(casefile::append("reinforcement.straps", fmt::format("{{name: {}, from: [{}, {}, 0 mm], to: [{}, {}, {}], section: flat 30x3, material: S235, slack: 0 mm, ends: {{top: {{to: frame, fasteners: [{{at: {}, use: {}}}]}}, bottom: {{to: bracket, fasteners: [{{at: {}, use: {}}}]}}}}}}",
                                                                           name, mm(x), mm(top), mm(x), mm(arm), mm(out), at(x, top), bolt, at(x, arm), bolt)));
    return making(name, std::move(changes));
}

} // namespace

FieldEdit add_angle(const model::Case& c)
{
    const std::optional<model::Case> one_more = after(c, angle_at(c, c.panel.height.value / 2));
    if (!one_more) return refused("No angle can be added to this case");
    const std::optional<double> y = layout::height_for_angle(c, [&one_more](double height) {
        model::Case tried = *one_more;
        lift_to(tried.reinforcement.angles.back(), height);
        return tried;
    });
    if (!y) return refused("No free height for a further angle: hinges, latch, no-drill points, bolts and the parts that are there leave no room for one from edge to edge");
    return angle_at(c, *y);
}

FieldEdit add_fastener(const model::Case& c, const std::string& bracket)
{
    const Found o = original_of(c, bracket);
    if (!o.bracket || o.bracket->fasteners.empty()) return refused("there is no bracket " + bracket);
    std::vector<FieldEdit> all;
    for (const double y : heights_on(*o.bracket)) all.push_back(fastener_at(c, o, y));
    return first_that_fits(c, "a further fastener in the leg of " + o.bracket->name, all);
}

FieldEdit add_bracket_copy(const model::Case& c, const std::string& bracket)
{
    const Found o = original_of(c, bracket);
    if (!o.bracket) return refused("there is no bracket " + bracket);
    const auto stands_there = [&c](double place) { return std::any_of(c.brackets.begin(), c.brackets.end(), [place](const model::Bracket& b) { return std::abs(b.x.value - place) < 50; }); };
    std::vector<FieldEdit> all;
    double x = c.panel.width.value - o.bracket->x.value;
    for (int k = 0; k < 40; ++k, x = std::fmod(x + 60, c.panel.width.value))
        if (!stands_there(x)) all.push_back(bracket_copy_at(c, *o.bracket, x));
    return first_that_fits(c, "a further bracket", all);
}

FieldEdit add_strap(const model::Case& c, const std::string& bracket)
{
    const Found o = original_of(c, bracket);
    const model::Bracket* here = bracket_of(c, bracket);
    if (!o.bracket || !here || !o.bracket->arm) return refused("there is no bracket " + bracket + " with an arm");
    std::vector<FieldEdit> all;
    for (const double aside : {0.0, 20.0, -20.0, 40.0, -40.0, 60.0, -60.0})
        for (const double below : {35.0, 25.0, 45.0}) all.push_back(strap_at(c, *o.bracket, here->x.value + aside, c.panel.height.value - below));
    return first_that_fits(c, "a strap", all);
}

FieldEdit add_gauge(const model::Case& c, double x_mm, double y_mm, UnitSystem units)
{
    if (!std::isfinite(x_mm) || !std::isfinite(y_mm)) return refused("this is no place");
    const std::string name = new_name(all_names(c), "gauge", " ");
    return edit_called("Add " + name, {casefile::append("gauges", fmt::format("{{name: {}, at: [{}, {}], relative_to: frame}}", name, written_length(x_mm, units), written_length(y_mm, units)))});
}

} // namespace thinskin::gui
