#include "base/status.h"
#include "report/proposal.h"
#include "report/standing.h"
#include "report/version.h"

#include <cmath>
#include <cstdlib>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace thinskin::report {
namespace {

using Json = nlohmann::ordered_json;
using results::ProposedScheme;

/// Nine significant digits; no infinity and no NaN.
Json number(double x) { return std::isfinite(x) ? Json(std::strtod(fmt::format("{:.9g}", x).c_str(), nullptr)) : Json(nullptr); }

template <class Rows, class Write> Json list(const Rows& rows, Write write)
{
    Json all = Json::array();
    for (const auto& r : rows) all.push_back(write(r));
    return all;
}

Json robust(const ProposedScheme& s)
{
    if (!s.robust) return nullptr;
    return {{"margin", number(s.robust->margin)}, {"verdict", base::name(s.robust->verdict)}, {"with", s.robust->with},
            {"together", {{"margin", number(s.robust->together.margin)}, {"verdict", base::name(s.robust->together.verdict)}}},
            {"hinges_unknown", s.robust->hinges_unknown ? Json(base::name(*s.robust->hinges_unknown)) : Json(nullptr)}};
}

Json loss(const ProposedScheme& s)
{
    if (!s.loss) return nullptr;
    return {{"survived", s.loss->survived}, {"of", s.loss->of}, {"rank", s.loss->rank}, {"worst", s.loss->worst}, {"worst_margin", number(s.loss->worst_margin)}};
}

Json shaking(const ProposedScheme& s)
{
    if (!s.shaking) return nullptr;
    return {{"lowest_Hz", s.shaking->lowest_Hz ? number(*s.shaking->lowest_Hz) : Json(nullptr)}, {"clear", s.shaking->clear}, {"words", s.shaking->words}};
}

Json scheme(const ProposedScheme& s)
{
    const auto row = [](const results::TightRow& t) { return Json{{"check", t.check}, {"part", t.part}, {"load_case", t.load_case}, {"margin", number(t.margin)}}; };
    const auto rests = [](const ProposedScheme::RestsOn& r) { return Json{{"what", r.what}, {"key", r.key}, {"margin", number(r.then.margin)}, {"verdict", base::name(r.then.verdict)}, {"bad_end", r.bad_end}}; };
    const auto part = [](const results::SchemePart& p) { return Json{{"count", p.count}, {"what", p.what}, {"mass_kg", number(p.kg)}, {"on_hand", p.on_hand}}; };
    return {{"number", s.number}, {"words", s.words}, {"holes", s.holes}, {"holes_in_skin", s.skin_holes}, {"added_kg", number(s.added_kg)}, {"cost_class", s.cost_class}, {"verdict", base::name(s.verdict)},
            {"margin", number(s.margin)}, {"tight", list(s.tight, row)}, {"parts", list(s.parts, part)}, {"next_step", s.next_step}, {"rests_on", list(s.rests_on, rests)}, {"robust", robust(s)}, {"single_loss", loss(s)}, {"natural_frequency", shaking(s)}};
}

Json counts(const results::ProposalCounts& n)
{
    return {{"space", n.space}, {"impossible", n.impossible}, {"over_limit", n.over_limit}, {"discarded", n.discarded}, {"discarded_by_bounds", n.by_bounds}, {"beaten", n.beaten},
            {"fail", n.fail}, {"hold", n.hold}, {"not_reached", n.open}, {"analyses", {{"forces", n.forces}, {"parked", n.parked}, {"without_skin_stress", n.without_stress}, {"whole", n.settled}}}};
}

} // namespace

std::string proposal_json(const results::Proposal& p)
{
    const auto change = [](const results::Relaxation& r) { return Json{{"what", r.what}, {"verdict", base::name(r.verdict)}, {"margin", r.margin ? number(*r.margin) : Json(nullptr)}, {"enough", r.enough}}; };
    Json j{{"format", 1}, {"tool", {{"name", tool_name}, {"version", tool_version}}}, {"caution", base::caution_text}};
    j["case"] = {{"file", p.case_file}, {"sha256", p.sha256}, {"title", p.title}};
    j["headline"] = p.headline;
    j["advice"] = p.advice;
    j["margin_wanted"] = number(p.margin_wanted);
    j["stopped"] = p.stopped;
    j["cost_class_note"] = "relative and invented: an order of work and money, no price";
    j["front"] = list(p.front, scheme);
    j["closest"] = p.closest ? scheme(*p.closest) : Json(nullptr);
    j["relaxations"] = list(p.relaxations, change);
    j["counts"] = counts(p.counts);
    j["cautions"] = p.cautions;
    j["not_covered"] = p.not_covered;
    j["see_to_on_the_vehicle"] = see_to_on_the_vehicle;
    j["exclusions"] = p.exclusions;
    return j.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace thinskin::report
