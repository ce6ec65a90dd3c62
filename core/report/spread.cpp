#include "report/spread.h"

#include "report/figures.h"
#include "report/html.h"
#include "report/record_parts.h"
#include "report/table.h"

#include <cmath>
#include <cstdlib>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace thinskin::report {
namespace {

using Json = nlohmann::ordered_json;

Json number(double x) { return std::isfinite(x) ? Json(std::strtod(fmt::format("{:.9g}", x).c_str(), nullptr)) : Json(nullptr); }

std::string what_was_run(const results::Spread& s)
{
    return fmt::format("{} runs of the whole case, all unmeasured figures drawn from their ranges at once (Latin hypercube, fixed seed): {} pass, {} fail, {} not covered, {} not solved. "
                       "The ranges are engineering judgement: this says what to measure first, not how likely the job is to hold.", s.samples, s.pass, s.fail, s.not_covered, s.not_solved);
}

} // namespace

std::string spread_text(const results::Spread& s, int width)
{
    std::string out = heading("Spread over what nobody measured");
    out += wrapped("", s.headline, width);
    out += wrapped("", what_was_run(s), width);
    Table margins({{"share of the runs below", Align::right}, {"least margin", Align::right}});
    for (const results::Quantile& q : s.quantiles) margins.row({fmt::format("{:.0f} %", 100 * q.share), margin_text(q.margin)});
    Table inputs({{"what nobody measured"}, {"range"}, {"rank correlation with the least margin", Align::right}});
    for (const results::SpreadInput& i : s.inputs) inputs.row({i.what, i.range, fmt::format("{:+.2f}", i.rank_correlation)});
    return out + margins.text() + "\n" + inputs.text();
}

std::string record_spread(const results::Spread* s)
{
    if (!s) return html_paragraph("Not run: how far the least margin spreads over what nobody measured, and what to measure first, is not part of this record. thinskin record --spread 100 runs it.");
    HtmlTable margins({{"share of the runs below", true}, {"least margin", true}}), inputs({{"what nobody measured, the one that matters most first"}, {"range"}, {"rank correlation with the least margin", true}});
    for (const results::Quantile& q : s->quantiles) margins.row({fmt::format("{:.0f} %", 100 * q.share), margin_text(q.margin)});
    for (const results::SpreadInput& i : s->inputs) inputs.row({i.what, i.range, fmt::format("{:+.2f}", i.rank_correlation)});
    return html_paragraph(s->headline) + html_paragraph(what_was_run(*s)) + margins.html() + inputs.html();
}

std::string with_spread(const std::string& check_json, const results::Spread& s)
{
    Json j = Json::parse(check_json);
    Json quantiles = Json::array(), inputs = Json::array();
    for (const results::Quantile& q : s.quantiles) quantiles.push_back({{"share", number(q.share)}, {"margin", number(q.margin)}});
    for (const results::SpreadInput& i : s.inputs) inputs.push_back({{"what", i.what}, {"range", i.range}, {"rank_correlation", number(i.rank_correlation)}});
    j["spread"] = {{"headline", s.headline}, {"samples", s.samples}, {"pass", s.pass}, {"fail", s.fail}, {"not_covered", s.not_covered}, {"not_solved", s.not_solved},
                   {"nominal_margin", number(s.nominal_margin)}, {"quantiles", quantiles}, {"inputs", inputs}};
    return j.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace thinskin::report
