#include "search/prepare.h"

#include "actions/load_cases.h"
#include "layout/layout.h"
#include "search/apply.h"
#include "search/bounds.h"
#include "search/counted.h"
#include "search/parallel.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <map>
#include <unordered_map>

namespace thinskin::search {

namespace {

struct Rect { double x0, y0, x1, y1; };

bool overlap(const Rect& a, const Rect& b) { return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1; }

Rect round(const layout::Stack& s)
{
    const double r = std::max({s.hardware.hole, s.hardware.across_flats, s.hardware.head_washer ? s.hardware.head_washer->diameter : 0.0}) / 2;
    return {s.at.x - r, s.at.y - r, s.at.x + r, s.at.y + r};
}

Rect round(const layout::AngleBar& b)
{
    Rect r{INFINITY, INFINITY, -INFINITY, -INFINITY};
    for (const layout::Point& p : {b.heel(0), b.toe(0), b.heel(b.length()), b.toe(b.length())})
        r = {std::min(r.x0, p.x), std::min(r.y0, p.y), std::max(r.x1, p.x), std::max(r.y1, p.y)};
    return r;
}

/// Every rectangle of the panel that the scheme takes up.
std::vector<Rect> taken(const layout::Layout& l)
{
    std::vector<Rect> out;
    for (const layout::Stack* s : l.outer_stacks()) out.push_back(round(*s));
    for (const layout::Bracket& b : l.brackets) out.push_back(round(b.leg));
    for (const layout::Angle& a : l.angles) {
        out.push_back(round(a.bar));
        for (const layout::MemberEnd& e : a.ends)
            for (const layout::Stack& s : e.fasteners) out.push_back(round(s));
    }
    for (const layout::Plate& p : l.plates) out.push_back({p.low.x, p.low.y, p.high.x, p.high.y});
    return out;
}

std::string kept_out(const layout::Layout& l, const model::Propose& wishes)
{
    for (const model::KeepOut& k : wishes.keep_out) {
        const Rect r{k.box.from.x.value, k.box.from.y.value, k.box.from.x.value + k.box.size.x.value, k.box.from.y.value + k.box.size.y.value};
        for (const Rect& t : taken(l))
            if (overlap(t, r)) return fmt::format("lies over {}", k.why.empty() ? "a place to keep out of" : k.why);
    }
    return "";
}

/// Where the case wants ribs hit: the first fastener of an outer part that misses them all.
std::string misses_ribs(const layout::Layout& l)
{
    for (const layout::Stack* s : l.outer_stacks())
        if (std::none_of(s->plies.begin(), s->plies.end(), [](const layout::Ply& p) { return p.role == layout::Ply::Role::rib; })) return s->name + " does not hit a rib";
    return "";
}

/// A strap that would run through the item's box; looked at every hundredth of its length.
std::string through_item(const layout::Layout& l)
{
    if (!l.item || !l.item->has_box) return "";
    const layout::Item& i = *l.item;
    for (const layout::Strap& s : l.straps)
        for (int k = 0; k <= 100; ++k) {
            bool inside = true;
            for (std::size_t d = 0; d < 3; ++d) {
                const double x = s.from[d] + 0.01 * k * (s.to[d] - s.from[d]);
                inside = inside && x > i.box_from[d] && x < i.box_from[d] + i.box_size[d];
            }
            if (inside) return s.name + " would run through the item";
        }
    return "";
}

std::string out_of_place(const layout::Layout& l, const model::Propose& wishes)
{
    std::string why = wishes.on_ribs ? misses_ribs(l) : "";
    if (why.empty()) why = through_item(l);
    return why.empty() ? kept_out(l, wishes) : why;
}

std::string over_limit(const Candidate& k, const model::Propose& wishes)
{
    if (wishes.added_mass && !(k.mass_kg <= wishes.added_mass->value)) return fmt::format("{:.1f} kg are more than the {:.1f} kg allowed", k.mass_kg, wishes.added_mass->value);
    if (wishes.holes && k.skin_holes > *wishes.holes) return fmt::format("{} holes through the skin are more than the {} allowed", k.skin_holes, *wishes.holes);
    return "";
}

std::string first_error(const layout::Result& r)
{
    for (const base::Diagnostic& d : r.diagnostics)
        if (d.severity == base::Severity::error) return d.message;
    return r.layout ? "" : "it cannot be built";
}

/// Twins lie in one place: resolved once.
void look_at(const model::Case& written, const model::Propose& wishes, const std::vector<std::size_t>& twins, std::vector<Candidate>& all)
{
    const model::Case edited = applied(written, all[twins.front()].choices);
    const layout::Result r = layout::resolve(edited);
    std::string cannot_be = first_error(r);
    if (cannot_be.empty()) cannot_be = out_of_place(*r.layout, wishes);
    const auto broken = cannot_be.empty() ? broken_rule(*r.layout) : std::nullopt;
    for (const std::size_t i : twins) {
        Candidate& k = all[i];
        if (k.why = cannot_be; !k.why.empty()) {
            k.state = State::impossible;
            continue;
        }
        take_worth(*r.layout, wishes, k);
        if (k.why = over_limit(k, wishes); !k.why.empty()) k.state = State::over_limit;
        else if (broken) k.state = State::discarded, k.upper = broken->margin(), k.why = broken->title;
    }
}

using Groups = std::vector<std::vector<std::size_t>>;

/// Candidates with the same words; `number` takes the group's number.
Groups grouped(std::vector<Candidate>& all, std::string (*words)(const Choices&), std::size_t Candidate::* number)
{
    std::unordered_map<std::string, std::size_t> known;
    Groups out;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].state == State::impossible) continue;
        const auto [at, fresh] = known.emplace(words(all[i].choices), out.size());
        if (fresh) out.emplace_back();
        all[i].*number = at->second;
        out[at->second].push_back(i);
    }
    return out;
}

/// All that the strength of a bolt hangs on.
std::string strength_key(const Choices& k)
{
    return fmt::format("{}|{}|{}|{}|{}|{}|{}", bolt_words(k.bolt), k.leg, k.per_row, k.room, static_cast<int>(k.behind), k.section, k.plate);
}

using Strengths = std::map<std::string, BoltCapacity>;

Strengths strengths_of(const model::Case& written, const std::vector<Candidate>& all, unsigned threads)
{
    std::map<std::string, std::size_t> first;
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].state != State::impossible) first.emplace(strength_key(all[i].choices), i);
    const std::vector<std::pair<std::string, std::size_t>> keys(first.begin(), first.end());
    std::vector<BoltCapacity> found(keys.size());
    in_parallel(keys.size(), threads, [&](std::size_t k, unsigned) {
        const model::Case edited = applied(written, all[keys[k].second].choices);
        if (const layout::Result r = layout::resolve(edited); r.layout) found[k] = strongest_bolt(*r.layout);
    });
    Strengths out;
    for (std::size_t k = 0; k < keys.size(); ++k) out[keys[k].first] = found[k];
    return out;
}

void bound_family(const model::Case& written, const Strengths& strengths, double wanted, const std::vector<std::size_t>& family, std::vector<Candidate>& all)
{
    const model::Case edited = applied(written, all[family.front()].choices);
    const layout::Result r = layout::resolve(edited);
    if (!r.layout) return;
    const std::vector<results::LoadCase> cases = actions::load_cases(*r.layout).cases;
    const std::vector<WholeDemand> demands = whole_demands(*r.layout, cases);
    const std::optional<double> door = door_margin(*r.layout, cases);
    for (std::size_t i : family) {
        Candidate& k = all[i];
        k.bolt = strengths.at(strength_key(k.choices));
        const std::optional<double> bolts = bolts_bound(*r.layout, demands, k.bolt);
        const bool by_door = door && (!bolts || *door <= *bolts);
        k.upper = std::min({k.upper, door.value_or(INFINITY), bolts.value_or(INFINITY)});
        if (k.state != State::waiting || k.upper >= wanted) continue;
        k.state = State::discarded;
        k.why = by_door ? "the door's hinges" : "the bolts through the skin, by equilibrium alone";
    }
}

} // namespace

void prepare(const model::Case& c, const Options& options, Searched& s, std::stop_token stop)
{
    const model::Propose wishes = wishes_of(c);
    const unsigned threads = threads_of(options);
    const Groups twins = grouped(s.candidates, twin_words, &Candidate::twins);
    const std::size_t space = s.candidates.size();
    const auto size_in = [](const Groups& groups) { return [&groups](std::size_t i) { return groups[i].size(); }; };
    in_parallel(twins.size(), threads, counted(options, {stage_geometry, 1, 0, space}, size_in(twins), stop, [&](std::size_t t) { look_at(s.written, wishes, twins[t], s.candidates); }));
    if (stop.stop_requested()) return;
    const Groups families = grouped(s.candidates, structure_words, &Candidate::structure);
    const Strengths strengths = strengths_of(s.written, s.candidates, threads);
    std::size_t can_be_built = 0;
    for (const auto& f : families) can_be_built += f.size();
    in_parallel(families.size(), threads, counted(options, {stage_bounds, 2, space - can_be_built, space}, size_in(families), stop, [&](std::size_t f) { bound_family(s.written, strengths, wishes.margin.value, families[f], s.candidates); }));
}

} // namespace thinskin::search
