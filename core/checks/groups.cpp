#include "checks/checks.h"
#include "checks/rows.h"

#include <algorithm>
#include <array>

namespace thinskin::checks {

namespace {

using base::Status;
using base::Verdict;

constexpr const char* vibration_group = "vibration";

constexpr const char* vehicle_group = "vehicle";
constexpr const char* fatigue_group = "fatigue";

/// Edge distances, spacings and plated masses are kept or not; how much they are kept by says nothing about strength, so they govern only
/// when they fail. Distances between frequencies say nothing about strength at all, and damage grows with a power of the stress.
bool competes(const results::Check& c)
{
    const bool kept_or_not = c.load_case == "geometry" || c.group == vehicle_group;
    return c.has_numbers() && c.group != vibration_group && c.group != fatigue_group && (!kept_or_not || c.status == Status::fail);
}

constexpr std::array names{"fixing", "reinforcement", "bracket", "panel", "door", fatigue_group, vehicle_group, vibration_group};

/// What fails comes first, whatever the rounding says.
int rank(const results::Check& c)
{
    if (competes(c)) return c.status == Status::fail ? 0 : 1;
    return c.has_numbers() ? 2 : 3;
}

bool tighter(const results::Check& a, const results::Check& b)
{
    if (rank(a) != rank(b)) return rank(a) < rank(b);
    return a.has_numbers() && in_steps(a.utilisation()) > in_steps(b.utilisation());
}

void count(results::Group& g, const results::Check& c)
{
    if (c.status == Status::pass) ++g.passed;
    if (c.status == Status::judgement) ++g.judgements;
    if (c.status == Status::fail) ++g.failed;
    if (c.status == Status::not_covered) {
        ++g.not_covered;
        if (g.lift_with.empty()) g.lift_with = c.lift_with;
    }
    if ((competes(c) || (!g.required && c.has_numbers())) && (!g.least_margin || in_steps(c.utilisation()) > in_steps(1 / (1 + *g.least_margin)))) {
        g.least_margin = c.margin();
        g.part = c.part;
        g.check = c.title;
    }
}

/// A group passes only when every required row of it does.
Verdict status_of(const results::Group& g)
{
    if (g.failed > 0) return Verdict::fail;
    if (g.not_covered > 0 || g.passed + g.judgements == 0) return Verdict::not_covered;
    return Verdict::pass;
}

} // namespace

void sort_rows(std::vector<results::Check>& rows)
{
    std::stable_sort(rows.begin(), rows.end(), tighter);
}

std::vector<results::Group> groups(const std::vector<results::Check>& rows)
{
    std::vector<results::Group> out;
    for (const char* name : names) {
        results::Group g;
        g.name = name;
        g.required = g.name != vibration_group && g.name != fatigue_group;
        bool any = false;
        for (const results::Check& c : rows)
            if (c.group == name && (c.required || !g.required)) {
                any = true;
                count(g, c);
            }
        g.status = status_of(g);
        if (g.name == fatigue_group) g.required = g.failed > 0; // on judgement at best: it can only fail a job
        if (any) out.push_back(g);
    }
    return out;
}

base::Verdict verdict(const std::vector<results::Group>& all)
{
    const auto any = [&](Verdict v) { return std::any_of(all.begin(), all.end(), [v](const results::Group& g) { return g.required && g.status == v; }); };
    if (any(Verdict::fail)) return Verdict::fail;
    if (any(Verdict::not_solved)) return Verdict::not_solved;
    if (all.empty() || any(Verdict::not_covered)) return Verdict::not_covered;
    return Verdict::pass;
}

std::optional<results::Check> governing(const std::vector<results::Check>& rows)
{
    std::optional<results::Check> best;
    for (const results::Check& c : rows)
        if (c.required && competes(c) && (!best || tighter(c, *best))) best = c;
    if (best && best->status == Status::fail) return best;
    for (const results::Check& c : rows) // what holds once may still tire
        if (c.group == fatigue_group && c.status == Status::fail && (!best || best->status != Status::fail || in_steps(c.utilisation()) > in_steps(best->utilisation()))) best = c;
    return best;
}

void apply_strict(results::Outcome& o)
{
    for (results::Check& c : o.checks)
        if (c.status == Status::judgement) {
            c.status = Status::not_covered;
            c.note = "passes on judgement only; --strict does not count it" + (c.note.empty() ? "" : "; " + c.note);
        }
    sort_rows(o.checks);
    o.groups = groups(o.checks);
    o.governing = governing(o.checks);
    if (o.verdict != Verdict::not_solved) o.verdict = verdict(o.groups);
    o.aside = aside(o);
    o.headline = headline(o);
    if (o.verdict != Verdict::not_covered) return;
    o.advice = "What would lift it: a test of the very joint, or a clause for it; without --strict the stated analogies count.";
    o.advice_at.clear();
}

} // namespace thinskin::checks
