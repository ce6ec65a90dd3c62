#include "presentation/proposals.h"

#include "casefile/exchange.h"
#include "presentation/part_edits.h"
#include "report/figures.h"
#include "report/proposal.h"

#include <cmath>
#include <fmt/format.h>

namespace thinskin::gui {
namespace {

using results::ProposedScheme;

/// Up to the next tenth of a kilogram or pound.
std::string mass(double kg, UnitSystem units)
{
    constexpr double pound = 0.45359237;
    const double shown = units == UnitSystem::us ? kg / pound : kg;
    return fmt::format("{} {}", report::fixed(std::ceil(shown * 10 - 1e-6) / 10, 1), units == UnitSystem::us ? "lb" : "kg");
}

std::string row_words(const results::TightRow& t) { return fmt::format("{} ({})", t.check, t.load_case); }

std::string robust_words(const ProposedScheme& s)
{
    const ProposedScheme::Robust& r = *s.robust;
    std::string words = r.margin < s.margin ? fmt::format("worst assumption {}: {} ({})", report::margin_text(r.margin), r.with, base::name(r.verdict)) : "no assumption at its bad end makes it worse";
    words += fmt::format("; all at their bad ends at once {} ({})", report::margin_text(r.together.margin), base::name(r.together.verdict));
    return r.hinges_unknown ? words + fmt::format("; nothing known of the hinges: {}", base::name(*r.hinges_unknown)) : words;
}

SchemeRow scheme_row(const ProposedScheme& s, UnitSystem units)
{
    SchemeRow r;
    r.number = s.number;
    r.words = s.words;
    r.figures = fmt::format("{} holes, {} of them in the skin; {} added; cost class {} of 9", s.holes, s.skin_holes, mass(s.added_kg, units), s.cost_class);
    r.margin = report::margin_text(s.margin);
    r.mark = mark_of(s.verdict);
    if (!s.tight.empty()) r.governing = row_words(s.tight.front());
    for (std::size_t i = 1; i < s.tight.size(); ++i) r.tight.push_back(fmt::format("{}, margin {}", row_words(s.tight[i]), report::margin_text(s.tight[i].margin)));
    for (const results::SchemePart& p : s.parts) r.parts.push_back(fmt::format("{} x {}{}{}", p.count, p.what, p.kg > 0 ? ", " + mass(p.kg, units) + " together" : "", p.on_hand ? ", on hand" : ""));
    for (const ProposedScheme::RestsOn& x : s.rests_on) r.rests_on.push_back(report::rest_heading(x) + ": " + report::rest_words(x));
    if (s.robust) r.robust = robust_words(s);
    if (s.loss) r.loss = fmt::format("holds with {} of {} single losses; worst without {}", s.loss->survived, s.loss->of, s.loss->worst);
    if (s.shaking) r.shaking = s.shaking->words;
    r.next_step = s.next_step;
    return r;
}

std::string count_words(const results::ProposalCounts& n)
{
    return fmt::format("{} schemes looked at: {} cannot be built there, {} beyond the limits given, {} cannot have the margin wanted, {} beaten by others, {} solved to the end{}.", n.space, n.impossible, n.over_limit, n.discarded, n.beaten, n.fail + n.hold,
                       n.open > 0 ? fmt::format(", {} not reached", n.open) : "");
}

} // namespace

ProposalShown proposal_shown(const results::Proposal& p, UnitSystem units)
{
    ProposalShown s{p.headline, p.advice, count_words(p.counts), {}, {}, p.cautions, p.not_covered, !p.front.empty()};
    for (const ProposedScheme& k : p.front) s.schemes.push_back(scheme_row(k, units));
    if (p.front.empty() && p.closest) {
        s.schemes.push_back(scheme_row(*p.closest, units));
        s.schemes.back().number = 0;
    }
    for (const results::Relaxation& r : p.relaxations) s.changes.push_back(fmt::format("{}: {}{}", r.what, r.enough ? "enough" : "not enough", r.margin ? ", margin " + report::margin_text(*r.margin) : ""));
    return s;
}

FieldEdit take_scheme(const model::Case& now, const model::Case& scheme, const SchemeRow& row)
{
    return edit_called(row.number > 0 ? fmt::format("Scheme {}", row.number) : "Closest scheme", casefile::exchange(now, scheme));
}

SpreadShown spread_shown(const results::Spread& s)
{
    SpreadShown out{s.headline, fmt::format("{} runs: {} pass, {} fail, {} not covered, {} not solved; as the case stands {}", s.samples, s.pass, s.fail, s.not_covered, s.not_solved, report::margin_text(s.nominal_margin)), {}, {}};
    for (const results::Quantile& q : s.quantiles) out.quantiles.push_back({fmt::format("{:.0f} of 100 runs below", 100 * q.share), report::margin_text(q.margin)});
    for (const results::SpreadInput& i : s.inputs) out.inputs.push_back({i.what + ", " + i.range, fmt::format("{:+.2f}", i.rank_correlation)});
    return out;
}

std::string progress_words(const std::string& stage, std::size_t done, std::size_t of, double seconds_left)
{
    std::string s = stage.empty() ? "begins" : stage;
    if (of > 0) s += fmt::format(": {} of {}", done, of);
    return seconds_left < 0 ? s + ", time left not known yet" : s + fmt::format(", about {:.0f} s left", std::ceil(seconds_left));
}

} // namespace thinskin::gui
