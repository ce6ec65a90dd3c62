#include "presentation/compare.h"

#include "casefile/values.h"
#include "report/figures.h"

#include <cmath>
#include <cstdlib>
#include <fmt/format.h>
#include <map>
#include <optional>

namespace thinskin::gui {
namespace {

std::string text_of(const casefile::Value& v) { return v.list ? fmt::format("[{}]", fmt::join(v.items, ", ")) : v.items.front(); }

/// A margin as it is shown, as a number; none for "> 5", "no load", "no figure".
std::optional<double> as_shown(double margin)
{
    const std::string text = report::margin_text(margin);
    char* end = nullptr;
    const double x = std::strtod(text.c_str(), &end);
    return end != text.c_str() && *end == '\0' ? std::optional(x) : std::nullopt;
}

std::string governing(const results::Outcome& o) { return o.governing ? fmt::format("{} ({})", o.governing->title, o.governing->load_case) : "nothing"; }

} // namespace

std::vector<InputChange> input_changes(const model::Case& before, const model::Case& after)
{
    std::vector<InputChange> out;
    std::map<std::string, std::string> was;
    for (const casefile::Value& v : casefile::case_values(before)) was[v.path] = text_of(v);
    for (const casefile::Value& v : casefile::case_values(after)) {
        const auto old = was.find(v.path);
        const std::string now = text_of(v);
        if (old == was.end() || old->second != now) out.push_back({v.path, old == was.end() ? "" : old->second, now});
        if (old != was.end()) was.erase(old);
    }
    for (const auto& [path, text] : was) out.push_back({path, text, ""});
    return out;
}

std::string delta_text(double before, double after)
{
    const auto was = as_shown(before), is = as_shown(after);
    if (!was || !is) return "";
    const double hundredths = std::round((*is - *was) * 100);
    return hundredths == 0 ? "" : fmt::format("{:+.2f}", hundredths / 100);
}

Comparison compare(const results::Outcome& before, const results::Outcome& after)
{
    Comparison c;
    c.verdict_before = base::name(before.verdict);
    c.verdict_after = base::name(after.verdict);
    c.governing_before = governing(before);
    c.governing_after = governing(after);
    if (before.governing) c.margin_before = report::margin_text(before.governing->margin());
    if (after.governing) c.margin_after = report::margin_text(after.governing->margin());
    if (!before.governing || !after.governing) return c;
    c.delta = delta_text(before.governing->margin(), after.governing->margin());
    if (!c.delta.empty()) c.better = after.governing->margin() > before.governing->margin() ? 1 : -1;
    return c;
}

} // namespace thinskin::gui
