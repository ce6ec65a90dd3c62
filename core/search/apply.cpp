#include "search/apply.h"

#include "catalogue/sections.h"
#include "search/space.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <optional>

namespace thinskin::search {

namespace {

using model::Case;

constexpr double short_of_edge = 10;   ///< mm that an angle ends before the edge of the skin
constexpr double past_bolts = 60;      ///< mm that a floating angle or a plate's end reaches past the outermost bolts
constexpr double first_end_bolt = 20, next_end_bolt = 25; ///< mm from the panel's edge, and from one to the next

struct Rows { double low = 0, high = 0, left = 0, right = 0; };

Rows rows_of(const Case& c)
{
    Rows r{INFINITY, -INFINITY, INFINITY, -INFINITY};
    const auto see = [&r](const model::Point2& p) {
        r.low = std::min(r.low, p.y.value), r.high = std::max(r.high, p.y.value);
        r.left = std::min(r.left, p.x.value), r.right = std::max(r.right, p.x.value);
    };
    for (const model::Bracket& b : c.brackets)
        for (const model::Fastener& f : b.fasteners) see(f.at);
    if (c.brackets.empty() && c.item)
        for (const model::ItemFixing& f : c.item->fixings) see(f.at);
    return r;
}

std::string outer_kind(const Bolt& b) { return !b.own.empty() ? b.own : fmt::format("{} {} washers {:g}x{:g}", b.size, b.grade, b.washer, b.washer_t); }
std::string end_kind(const std::string& size) { return size + " at the frame"; }

model::Washer washer(double d, double t) { return {mm(d), mm(t), fmt::format("{:g}x{:g} mm", d, t)}; }

/// A kind of that name, made new.
model::FastenerKind& fresh_kind(Case& c, const std::string& name)
{
    std::erase_if(c.fastener_kinds, [&](const model::FastenerKind& k) { return k.name == name; });
    c.fastener_kinds.emplace_back().name = name;
    return c.fastener_kinds.back();
}

void add_outer_kind(Case& c, const Choices& k)
{
    model::FastenerKind& outer = fresh_kind(c, outer_kind(k.bolt));
    outer.type = "bolt";
    outer.size = k.bolt.size;
    outer.grade = k.bolt.grade;
    outer.head_washer = outer.nut_washer = washer(k.bolt.washer, k.bolt.washer_t);
}

void add_kinds(Case& c, const Choices& k)
{
    if (k.bolt.own.empty()) add_outer_kind(c, k);
    if (k.ends.bolts == 0) return;
    model::FastenerKind& end = fresh_kind(c, end_kind(k.ends.size));
    end.type = "bolt";
    end.size = k.ends.size;
    end.grade = k.bolt.size.find("in") == std::string::npos ? "8.8" : "SAE 5";
    end.nut_washer = k.ends.size == "M6" ? washer(18, 1.6) : k.ends.size == "M8" ? washer(24, 2) : k.ends.size == "1/4 in" ? washer(18.64, 1.65) : washer(22.22, 2.11);
}

double mean_x(const Case& c)
{
    double sum = 0;
    for (const model::Bracket& b : c.brackets) sum += b.x.value;
    return c.brackets.empty() ? 0 : sum / static_cast<double>(c.brackets.size());
}

/// One row of a bracket: its first fastener keeps the name it has.
void add_row(model::Bracket& b, const Choices& k, const std::string& name, double y)
{
    const double s = row_spacing(k.room);
    for (int i = 0; i < k.per_row; ++i) {
        const double x = b.x.value + (k.per_row == 1 ? 0 : (i - 0.5) * s);
        b.fasteners.push_back({i == 0 ? name : name + " beside", {mm(x), mm(y)}, outer_kind(k.bolt), {}});
    }
}

/// Where a bolt goes through an upright rib: the middle of each foot of a hat, the middle of any other section.
std::vector<double> lines_of(const model::Rib& rib)
{
    if (rib.from.x.value != rib.to.x.value) return {};
    const auto read = catalogue::read_section(rib.section);
    if (!read.ok || read.section.kind != catalogue::Section::Kind::hat) return {rib.from.x.value};
    const double off = read.section.b / 2 + read.section.foot / 2;
    return {rib.from.x.value - off, rib.from.x.value + off};
}

/// To the nearest such line within reach; it stays where there is none.
void move_to_rib(const Case& c, model::Bracket& b)
{
    std::optional<double> best;
    for (const model::Rib& rib : c.panel.ribs)
        for (const double x : lines_of(rib))
            if (std::abs(x - b.x.value) <= wishes_of(c).sideways.value && (!best || std::abs(x - b.x.value) < std::abs(*best - b.x.value))) best = x;
    if (best) b.x = mm(*best);
}

void apply_to(model::Bracket& b, const Choices& k, double mean)
{
    if (!b.leg || b.fasteners.empty()) return;
    const auto higher = [](const model::Fastener& p, const model::Fastener& q) { return p.at.y.value < q.at.y.value; };
    const model::Fastener low = *std::min_element(b.fasteners.begin(), b.fasteners.end(), higher), high = *std::max_element(b.fasteners.begin(), b.fasteners.end(), higher);
    if (k.down > 0) b.leg->from = mm(b.leg->from.value - k.down);
    if (k.up > 0) b.leg->to = mm(b.leg->to.value + k.up);
    if (k.apart > 0) b.x = mm(b.x.value + (b.x.value > mean ? k.apart : b.x.value < mean ? -k.apart : 0));
    if (!k.leg.empty()) b.leg->section = k.leg;
    b.leg->gauge = mm(gauge_for(b.leg->section, k.room, k.per_row == 1 ? 0 : row_spacing(k.room)));
    b.fasteners.clear();
    add_row(b, k, low.name, low.at.y.value - k.down);
    if (high.at.y.value - low.at.y.value > 1) add_row(b, k, high.name, high.at.y.value + k.up);
}

model::MemberEnd end_of(const Case& c, const Choices& k, bool right, double y)
{
    model::MemberEnd e;
    if (k.ends.bolts == 0) return e;
    e.to = model::MemberEnd::To::frame;
    for (int i = k.ends.bolts - 1; i >= 0; --i) {
        const double off = first_end_bolt + i * next_end_bolt;
        e.fasteners.push_back({"", {mm(right ? c.panel.width.value - off : off), mm(y)}, end_kind(k.ends.size), {}});
    }
    return e;
}

model::Angle angle_at(const Case& c, const Choices& k, const std::string& name, const Rows& r, double y)
{
    const bool floats = k.ends.bolts == 0;
    model::Angle a;
    a.name = name;
    a.from = {mm(floats ? std::max(short_of_edge, r.left - past_bolts) : short_of_edge), mm(y)};
    a.to = model::Point2{mm(floats ? std::min(c.panel.width.value - short_of_edge, r.right + past_bolts) : c.panel.width.value - short_of_edge), mm(y)};
    a.gauge = mm(gauge_for(k.section, k.room, 0));
    a.section = k.section;
    a.material = "S235";
    a.lying = model::Way::up;
    a.ends = {end_of(c, k, false, y), end_of(c, k, true, y)};
    return a;
}

void add_angles(Case& c, const Choices& k, const Rows& r)
{
    if (k.behind == Behind::two_angles) c.reinforcement.angles.push_back(angle_at(c, k, "lower rail", r, r.low));
    if (k.behind == Behind::one_angle || k.behind == Behind::two_angles) c.reinforcement.angles.push_back(angle_at(c, k, "upper rail", r, r.high));
}

void add_plate(Case& c, const Choices& k, const std::string& name, const Rows& r)
{
    constexpr double half_width = 45, past_row = 35;
    model::BackingPlate p;
    p.name = name;
    p.box.from = {mm(r.left - half_width), mm(r.low - past_row)};
    p.box.size = {mm(r.right - r.left + 2 * half_width), mm(r.high - r.low + 2 * past_row)};
    p.thickness = mm(k.plate);
    p.material = "S235";
    c.reinforcement.backing_plates.push_back(std::move(p));
}

void add_plates(Case& c, const Choices& k, const Rows& all)
{
    for (const model::Bracket& b : c.brackets) {
        Case only;
        only.brackets = {b};
        add_plate(c, k, "plate " + b.name, rows_of(only));
    }
    if (c.brackets.empty()) add_plate(c, k, "plate", all);
}

/// From the outer end of the arm straight up to the frame, with one bolt at each end.
void add_straps(Case& c, const Choices& k)
{
    constexpr double below_edge = 35, short_of_arm_end = 20;
    for (const model::Bracket& b : c.brackets) {
        if (!b.arm) continue;
        const double top = c.panel.height.value - below_edge, z = b.arm->length.value - short_of_arm_end;
        model::Strap s;
        s.name = "strap " + b.name;
        s.from = {b.x, mm(top), mm(0)};
        s.to = {b.x, b.arm->at, mm(z)};
        s.section = "flat 30x3";
        s.material = "S235";
        s.slack = mm(0);
        s.ends.second.to = model::MemberEnd::To::frame;
        s.ends.second.fasteners = {{s.name + " top", {b.x, mm(top)}, end_kind(k.ends.size), {}}};
        s.ends.first.to = model::MemberEnd::To::bracket;
        s.ends.first.fasteners = {{s.name + " bottom", {b.x, b.arm->at}, end_kind(k.ends.size), {}}};
        c.reinforcement.straps.push_back(std::move(s));
    }
}

/// What was said of parts that are replaced: measured how, taken by default.
void forget(Case& c, const Choices& k)
{
    const auto replaced = [&k](const std::string& path) { return path.rfind("reinforcement", 0) == 0 || path.rfind("brackets", 0) == 0 || (k.bolt.own.empty() && path.rfind("fastener_kinds", 0) == 0); };
    std::erase_if(c.measured_from, [&](const auto& m) { return replaced(m.first); });
    std::erase_if(c.defaults, [&](const model::DefaultTaken& d) { return replaced(d.key_path); });
}

} // namespace

model::Quantity mm(double value) { return {value, fmt::format("{:g} mm", value)}; }

model::Case applied(const model::Case& written, const Choices& k)
{
    Case c = written;
    forget(c, k);
    c.reinforcement = {};
    add_kinds(c, k);
    const double mean = mean_x(c);
    if (wishes_of(c).on_ribs)
        for (model::Bracket& b : c.brackets) move_to_rib(c, b);
    for (model::Bracket& b : c.brackets) apply_to(b, k, mean);
    if (c.brackets.empty() && c.item)
        for (model::ItemFixing& f : c.item->fixings) f.use = outer_kind(k.bolt);
    const Rows r = rows_of(c);
    if (k.behind == Behind::plates) add_plates(c, k, r);
    else add_angles(c, k, r);
    if (k.straps) add_straps(c, k);
    return c;
}

} // namespace thinskin::search
