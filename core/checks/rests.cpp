#include "checks/rests.h"
#include "checks/rows.h"

#include <cmath>
#include <fmt/core.h>

namespace thinskin::checks {

namespace {

using results::Check;
using results::RestsOn;

bool of_slam(const Check& c) { return c.load_case.rfind("slam", 0) == 0; }

bool of_the_road(const results::Outcome& o, const Check& c)
{
    for (const results::LoadCase& lc : o.load_cases)
        if (lc.name == c.load_case) return !lc.turns && !lc.on_item && lc.name != "parked";
    return false;
}

base::Verdict worse(base::Verdict so_far, base::Status row)
{
    if (so_far == base::Verdict::fail || row == base::Status::fail) return base::Verdict::fail;
    return row == base::Status::not_covered ? base::Verdict::not_covered : so_far;
}

/// The least margin of the required rows that `belongs` to, and what they say together: one without a figure leaves it not covered.
template <class F> void add(std::vector<RestsOn>& out, const results::Outcome& o, const std::string& what, const std::string& key, F belongs)
{
    const Check* least = nullptr;
    base::Verdict verdict = base::Verdict::pass;
    bool any = false;
    for (const Check& c : o.checks) {
        if (!c.required || c.load_case == "geometry" || !belongs(c)) continue;
        any = true;
        verdict = worse(verdict, c.status);
        if (c.has_numbers() && (!least || in_steps(c.utilisation()) > in_steps(least->utilisation()))) least = &c;
    }
    if (any) out.push_back({what, key, least ? least->title : "", least ? std::optional(least->margin()) : std::nullopt, verdict});
}

bool measured(const model::Case& c, const std::string& key)
{
    const auto from = c.measured_from.find(key);
    return from != c.measured_from.end() && from->second != "assumed";
}

std::string slam_words(const model::Case& c)
{
    return fmt::format("a slam at {} that stops in {}, {}", c.door->slam->edge_speed.text, c.door->slam->stop.text, measured(c, "door.slam.stop") ? "as it was measured" : "as typed in and not measured");
}

std::string hinge_words(const model::HingeEvidence& e)
{
    const std::string kind = e.kind == model::HingeEvidence::Kind::maker_limit ? "a maker's limit" : e.kind == model::HingeEvidence::Kind::proof_hang ? "a proof hang" : "the regulation's test";
    return fmt::format("{} for the hinges{}", kind, e.note.empty() ? "" : " (" + e.note + ")");
}

} // namespace

std::vector<RestsOn> rests_on(const layout::Layout& l, const results::Outcome& o)
{
    const model::Case& c = *l.source;
    std::vector<RestsOn> out;
    if (c.door && c.door->slam) add(out, o, slam_words(c), "door.slam", of_slam);
    if (c.door && c.door->hinges && c.door->hinges->evidence.kind != model::HingeEvidence::Kind::none) add(out, o, hinge_words(c.door->hinges->evidence), "door.hinges.evidence", [](const Check& k) { return k.group == "door" && !of_slam(k); });
    if (c.road) add(out, o, fmt::format("no road worse than {}", c.road->surface), "road.surface", [&o](const Check& k) { return of_the_road(o, k); });
    return out;
}

} // namespace thinskin::checks
