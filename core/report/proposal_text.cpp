#include "base/status.h"
#include "report/figures.h"
#include "report/proposal.h"
#include "report/standing.h"
#include "report/table.h"
#include "report/text_parts.h"

#include <cmath>
#include <fmt/format.h>

namespace thinskin::report {
namespace {

using results::Proposal;
using results::ProposedScheme;

constexpr std::size_t schemes_in_full = 8; ///< of the front, with their parts

std::string mass(double kg) { return fixed(std::ceil(kg * 10 - 1e-6) / 10, 1); }

std::string robust(const ProposedScheme& s) { return s.robust ? margin_text(s.robust->margin) + (s.robust->verdict == base::Verdict::pass ? "" : fmt::format(" {}", base::name(s.robust->verdict))) : "not run"; }
std::string loss(const ProposedScheme& s) { return s.loss ? fmt::format("{} of {}", s.loss->survived, s.loss->of) : "not run"; }
std::string lowest_Hz(const ProposedScheme& s) { return !s.shaking ? "not run" : s.shaking->lowest_Hz ? fixed(std::floor(*s.shaking->lowest_Hz * 10) / 10, 1) : "-"; }

std::string front_table(const Proposal& p)
{
    Table t({{"no.", Align::right}, {"holes", Align::right}, {"of them in the skin", Align::right}, {"added, kg", Align::right}, {"cost class", Align::right}, {"least margin", Align::right}, {"worst assumption", Align::right}, {"losses survived", Align::right}, {"lowest, Hz", Align::right}, {"tightest"}});
    for (const ProposedScheme& s : p.front)
        t.row({fmt::format("{}", s.number), fmt::format("{}", s.holes), fmt::format("{}", s.skin_holes), mass(s.added_kg), fmt::format("{}", s.cost_class), margin_text(s.margin), robust(s), loss(s), lowest_Hz(s), s.tight.empty() ? "" : s.tight.front().check});
    return t.text();
}

std::string tight_lines(const ProposedScheme& s, int width)
{
    std::string out;
    for (const results::TightRow& t : s.tight) out += wrapped("    tight: ", fmt::format("{} ({}), margin {}", t.check, t.load_case, margin_text(t.margin)), width);
    return out;
}

std::string part_lines(const ProposedScheme& s, int width)
{
    std::string out;
    for (const results::SchemePart& p : s.parts) out += wrapped("    ", fmt::format("{} x {}{}{}", p.count, p.what, p.kg > 0 ? fmt::format(", {} kg together", mass(p.kg)) : "", p.on_hand ? ", on hand" : ""), width);
    return out;
}

std::string bad_end_words(const ProposedScheme::Robust& r)
{
    std::string out = fmt::format("{}: margin {}, {}; all together: margin {}, {}", r.with, margin_text(r.margin), base::name(r.verdict), margin_text(r.together.margin), base::name(r.together.verdict));
    if (r.hinges_unknown) out += fmt::format("; if nobody knew the hinges: {}", base::name(*r.hinges_unknown));
    return out;
}

std::string rest_lines(const ProposedScheme& s, int width)
{
    std::string out;
    for (const ProposedScheme::RestsOn& r : s.rests_on) out += wrapped("    " + rest_heading(r) + ": ", rest_words(r), width);
    return out;
}

std::string scheme_lines(const ProposedScheme& s, int width)
{
    std::string out = "\n" + wrapped(s.number > 0 ? fmt::format("  {}: ", s.number) : "  ", s.words, width) + tight_lines(s, width) + rest_lines(s, width) + part_lines(s, width);
    if (s.robust) out += wrapped("    bad ends: ", bad_end_words(*s.robust), width);
    if (s.loss) out += wrapped("    losses: ", fmt::format("holds with {} of {} single losses, place {} among the schemes looked at; worst without {}, margin {}", s.loss->survived, s.loss->of, s.loss->rank, s.loss->worst, margin_text(s.loss->worst_margin)), width);
    if (s.shaking) out += wrapped("    shaking: ", s.shaking->words, width);
    if (!s.next_step.empty()) out += wrapped("    next step up: ", s.next_step, width);
    return out;
}

std::string front_lines(const Proposal& p, int width)
{
    if (p.front.empty()) return "";
    std::string out = heading("Schemes that hold and that no other beats");
    out += wrapped("", fmt::format("Margin wanted {}. Holes: to drill altogether. Added: brackets and what is behind the skin, without bolts. Cost class 1 to 9: relative and invented, an order of work and money, no price.", margin_text(p.margin_wanted)), width);
    out += front_table(p);
    for (std::size_t i = 0; i < p.front.size() && i < schemes_in_full; ++i) out += scheme_lines(p.front[i], width);
    return out;
}

std::string closest_lines(const Proposal& p, int width)
{
    std::string out = p.closest ? heading("Closest scheme, which does not hold") + scheme_lines(*p.closest, width) : "";
    if (p.relaxations.empty()) return out;
    Table t({{"change, cheapest first (judgement)"}, {"verdict then"}, {"least margin", Align::right}, {"enough"}});
    for (const results::Relaxation& r : p.relaxations) t.row({r.what, std::string(base::name(r.verdict)), r.margin ? margin_text(*r.margin) : "-", r.enough ? "yes" : "no"});
    return out + heading("What would make it hold") + t.text();
}

std::string count_lines(const Proposal& p, int width)
{
    const results::ProposalCounts& n = p.counts;
    std::string out = heading("How it was found");
    out += wrapped("", fmt::format("{} schemes: {} cannot be built there, {} are beyond the limits given, {} cannot have the margin wanted ({} of them by closed formulas alone), {} are beaten whatever their margin, {} were solved to the end, {} of which hold{}. "
                                   "Analyses: {} of forces, {} parked, {} without the skin's stress on fine grids, {} whole.",
                                   n.space, n.impossible, n.over_limit, n.discarded, n.by_bounds, n.beaten, n.fail + n.hold, n.hold, n.open > 0 ? fmt::format(", {} were not reached", n.open) : "", n.forces, n.parked, n.without_stress, n.settled), width);
    return out;
}

std::string standing_lines(const Proposal& p, int width)
{
    std::string out;
    if (!p.cautions.empty()) out += heading("Cautions") + bullet_list(p.cautions, width);
    if (!p.not_covered.empty()) out += heading("Not covered, whichever scheme") + bullet_list(p.not_covered, width);
    out += heading("See to on the vehicle") + bullet_list({see_to_on_the_vehicle.begin(), see_to_on_the_vehicle.end()}, width);
    if (!p.exclusions.empty()) out += heading("Never part of this result") + bullet_list(p.exclusions, width);
    return out;
}

} // namespace

std::string rest_heading(const ProposedScheme::RestsOn& r) { return r.bad_end ? "holds only without" : "rests on"; }

std::string rest_words(const ProposedScheme::RestsOn& r)
{
    const std::string verdict(base::name(r.then.verdict));
    if (r.bad_end) return fmt::format("{}: margin {}, {}", r.what, margin_text(r.then.margin), verdict);
    return fmt::format("{}, {}{} ({})", r.what, margin_text(r.then.margin), r.then.verdict == base::Verdict::pass ? "" : ", " + verdict, r.key);
}

std::string proposal_text(const Proposal& p, const TextOptions& t)
{
    const std::string caution = wrapped("", base::caution_text, t.width);
    std::string s = p.headline + "\n" + wrapped("", p.advice, t.width) + caution;
    s += fmt::format("\nCase    {}{}\n", p.case_file, p.title.empty() ? "" : "  (" + p.title + ")");
    s += front_lines(p, t.width) + closest_lines(p, t.width) + count_lines(p, t.width) + standing_lines(p, t.width);
    if (p.front.empty() && !p.closest) return s + "\n" + caution;
    return s + "\n" + wrapped("", "Put a scheme in a case file with --write and check it; check --detail, single losses and the record belong to it before anything is drilled.", t.width) + caution;
}

} // namespace thinskin::report
