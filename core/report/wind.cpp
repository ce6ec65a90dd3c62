#include "report/figures.h"
#include "report/html.h"
#include "report/record_parts.h"
#include "report/table.h"
#include "report/text_parts.h"

#include <fmt/format.h>

/// The wind that may not be exceeded, for what is unfolded or flat.
namespace thinskin::report {
namespace {

std::string sentence(const results::WindLimit& w)
{
    const std::string head = fmt::format("{}, worked out for {} m/s", w.load_case, fixed(w.given_mm_s / 1000, 1));
    if (!w.limit_mm_s) return head + ": no limit can be given, " + w.why_not;
    return fmt::format("{}: {} to {:.1f} m/s ({:.0f} km/h){}, then {} ({}) is used up (AC-17)", head, w.estimate ? "by an estimate (large deflection)" : "holds", *w.limit_mm_s / 1000 - 0.05, *w.limit_mm_s * 3.6e-3 - 0.5,
                       *w.limit_mm_s < w.given_mm_s ? ", less than that" : "", w.check, w.part);
}

std::vector<std::string> sentences(const Outcome& o)
{
    std::vector<std::string> out;
    for (const results::WindLimit& w : o.wind_limits) out.push_back(sentence(w));
    if (!out.empty()) out.push_back("gusts count, not the mean wind of a forecast, which they pass by about a half (from memory); fold or take off above the limit, and before you drive");
    return out;
}

} // namespace

std::string wind_lines(const Outcome& o, const TextOptions& t) { return o.wind_limits.empty() ? "" : heading("Wind that may not be exceeded") + bullet_list(sentences(o), t.width); }

std::string record_wind(const Outcome& o) { return html_list(sentences(o)); }

} // namespace thinskin::report
