#include "search/describe.h"

#include "search/space.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::search {

namespace {

using results::SchemePart;

void add_part(std::vector<SchemePart>& parts, SchemePart one)
{
    for (SchemePart& p : parts)
        if (p.what == one.what) {
            p.count += one.count;
            p.kg += one.kg;
            return;
        }
    parts.push_back(std::move(one));
}

void add_bolt(std::vector<SchemePart>& parts, const layout::Hardware& h, const model::Propose& wishes)
{
    std::string what = h.type == layout::Hardware::Type::bolt ? fmt::format("bolt {} {} with nut", h.size, h.grade) : h.kind;
    if (h.head_washer) what += fmt::format(", washer {:g}x{:g} under the head", h.head_washer->diameter, h.head_washer->thickness);
    if (h.nut_washer) what += fmt::format(", {:g}x{:g} under the nut", h.nut_washer->diameter, h.nut_washer->thickness);
    add_part(parts, {1, what + fmt::format(", hole {:g} mm", h.hole), 0, listed(wishes.stock, h.type == layout::Hardware::Type::bolt ? h.size : h.kind)});
}

std::vector<SchemePart> parts_of(const layout::Layout& l, const model::Propose& wishes)
{
    std::vector<SchemePart> out;
    for (const layout::Angle& a : l.angles) add_part(out, {1, fmt::format("{}, {:.0f} mm, behind the skin", a.bar.section.designation, a.bar.length()), a.bar.mass(), listed(wishes.stock, a.bar.section.designation)});
    for (const layout::Plate& p : l.plates)
        add_part(out, {1, fmt::format("plate {:.0f} x {:.0f} x {:g} mm, behind the skin", p.high.x - p.low.x, p.high.y - p.low.y, p.thickness), p.mass(), listed(wishes.stock, fmt::format("plate {:g}", p.thickness))});
    for (const layout::Bracket& b : l.brackets) add_part(out, {1, fmt::format("bracket with a leg of {}, {:.0f} mm, bolt line {:g} mm from its heel", b.leg.section.designation, b.leg.length(), b.leg.gauge), b.mass(), false});
    for (const layout::Stack* s : l.outer_stacks()) add_bolt(out, s->hardware, wishes);
    for (const layout::Angle& a : l.angles)
        for (const layout::MemberEnd& e : a.ends)
            for (const layout::Stack& s : e.fasteners) add_bolt(out, s.hardware, wishes);
    for (const layout::Strap& s : l.straps) {
        add_part(out, {1, fmt::format("strap {}, {:.0f} mm and what its ends need", s.section.designation, s.length()), s.mass(), listed(wishes.stock, s.section.designation)});
        for (const layout::StrapEnd& e : s.ends)
            for (const layout::Stack& f : e.fasteners) add_bolt(out, f.hardware, wishes);
    }
    return out;
}

/// The least margins, each part and check once.
std::vector<results::TightRow> tight_rows(const results::Outcome& o)
{
    constexpr std::size_t enough = 3;
    std::vector<results::TightRow> out;
    for (const results::Check& c : o.checks) {
        if (out.size() == enough) break;
        if (!c.required || !c.has_numbers() || (c.load_case == "geometry" && c.status != base::Status::fail)) continue;
        if (std::none_of(out.begin(), out.end(), [&](const results::TightRow& t) { return t.part == c.part && std::abs(t.margin - c.margin()) < 1e-9; })) out.push_back({c.title, c.part, c.load_case, c.margin()});
    }
    return out;
}

std::string more(double by, const char* unit, const char* digits) { return std::abs(by) < 0.05 ? "" : by > 0 ? fmt::format(fmt::runtime(digits), by) + unit + " more" : fmt::format(fmt::runtime(digits), -by) + unit + " less"; }

std::string step_words(const results::ProposedScheme& from, const results::ProposedScheme& to)
{
    const auto counted = [](double by, const char* one) { return more(by, std::abs(by) == 1 ? one : (std::string(one) + (std::string_view(one).ends_with("s") ? "es" : "s")).c_str(), "{:g}"); };
    std::string price = more(to.added_kg - from.added_kg, " kg", "{:.1f}");
    for (const std::string& s : {counted(to.holes - from.holes, " hole"), counted(to.cost_class - from.cost_class, " cost class")})
        if (!s.empty()) price += (price.empty() ? "" : ", ") + s;
    return fmt::format("scheme {}: {} for a margin of {}", to.number, price.empty() ? "nothing" : price, margin_words(to.margin));
}

} // namespace

std::string margin_words(double margin) { return !(margin <= 5) ? "more than +5" : fmt::format("{:+.2f}", std::floor(margin * 100) / 100); }

results::ProposedScheme described(const Candidate& k, const layout::Layout& l, const results::Outcome& o, const model::Propose& wishes)
{
    results::ProposedScheme s;
    s.words = words(k.choices);
    s.holes = k.worth.holes;
    s.skin_holes = k.skin_holes;
    s.added_kg = k.mass_kg;
    s.cost_class = k.worth.cost;
    s.verdict = o.verdict;
    s.margin = o.governing ? o.governing->margin() : -1;
    s.tight = tight_rows(o);
    s.parts = parts_of(l, wishes);
    return s;
}

void add_next_steps(std::vector<results::ProposedScheme>& front)
{
    for (results::ProposedScheme& s : front) {
        const results::ProposedScheme* next = nullptr;
        for (const results::ProposedScheme& t : front)
            if (as_printed(t.margin) > as_printed(s.margin) && (!next || t.margin < next->margin)) next = &t;
        if (next) s.next_step = step_words(s, *next);
    }
}

} // namespace thinskin::search
