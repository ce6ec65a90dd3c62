#include "search/prepare.h"

#include "actions/load_cases.h"
#include "layout/layout.h"
#include "search/apply.h"
#include "search/bounds.h"
#include "search/parallel.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <map>

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

std::string over_limit(const Candidate& k, const model::Propose& wishes)
{
    if (wishes.added_mass && !(k.mass_kg <= wishes.added_mass->value)) return fmt::format("{:.1f} kg are more than the {:.1f} kg allowed", k.mass_kg, wishes.added_mass->value);
    if (wishes.holes && k.skin_holes > *wishes.holes) return fmt::format("{} holes through the skin are more than the {} allowed", k.skin_holes, *wishes.holes);
    return "";
}

void look_at(const model::Case& written, const model::Propose& wishes, Candidate& k)
{
    const model::Case edited = applied(written, k.choices);
    const layout::Result r = layout::resolve(edited);
    if (!r.layout || base::has_errors(r.diagnostics)) {
        k.state = State::impossible;
        for (const base::Diagnostic& d : r.diagnostics)
            if (d.severity == base::Severity::error && k.why.empty()) k.why = d.message;
        return;
    }
    take_worth(*r.layout, wishes, k);
    if (k.why = kept_out(*r.layout, wishes); !k.why.empty()) k.state = State::impossible;
    else if (k.why = over_limit(k, wishes); !k.why.empty()) k.state = State::over_limit;
}

/// Which candidates share a structure; the first of each stands for its geometry.
std::vector<std::vector<std::size_t>> families(std::vector<Candidate>& all)
{
    std::map<std::string, std::size_t> known;
    std::vector<std::vector<std::size_t>> out;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].state == State::impossible) continue;
        const auto [at, fresh] = known.emplace(structure_words(all[i].choices), out.size());
        if (fresh) out.emplace_back();
        all[i].structure = at->second;
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
        if (by_door) k.upper = *door;
        else if (bolts) k.upper = *bolts;
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
    in_parallel(s.candidates.size(), threads, [&](std::size_t i, unsigned) {
        if (!stop.stop_requested()) look_at(s.written, wishes, s.candidates[i]);
    });
    if (stop.stop_requested()) return;
    const auto all_families = families(s.candidates);
    const Strengths strengths = strengths_of(s.written, s.candidates, threads);
    in_parallel(all_families.size(), threads, [&](std::size_t f, unsigned) {
        if (!stop.stop_requested()) bound_family(s.written, strengths, wishes.margin.value, all_families[f], s.candidates);
    });
}

} // namespace thinskin::search
